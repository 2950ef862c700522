package result

// Chain is how one number of a day came about: the surface temperature of one bunch face at one
// instant, link by link from the sun to the berry.
type Chain struct {
	Option  string  `json:"option"`  // letter, A is the first
	Side    string  `json:"side"`    // compass direction that the face looks to
	Bunch   int     `json:"bunch"`   // of the side, from 1
	Bunches int     `json:"bunches"` // of the side
	Date    string  `json:"date"`
	Hour_h  float64 `json:"hour_h"` // of the instant
	Links   []Link  `json:"links"`
}

// Link is one number of a chain. Part and Source are codes, and Meaning is empty, until sim/words puts them in words.
type Link struct {
	Part    string  `json:"part"`              // of the chain that it belongs to
	Symbol  string  `json:"symbol"`            // name by which relations call it
	Meaning string  `json:"meaning,omitempty"` // what it is
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"` // empty without one

	// Relation is how it follows from links before it, as a formula in their symbols: angles of sin, cos and acos in
	// degrees, comparisons 1 or 0. Empty for what is given, or found in the stand, by a longer calculation, or in a table.
	Relation string `json:"relation,omitempty"`
	Source   string `json:"source,omitempty"` // of the relation, or where the value is from
}

// Value is the number of a symbol; ok is false where the chain has none of that name.
func (c Chain) Value(symbol string) (value float64, ok bool) {
	for _, link := range c.Links {
		if link.Symbol == symbol {
			return link.Value, true
		}
	}
	return 0, false
}
