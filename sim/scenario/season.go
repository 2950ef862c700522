package scenario

import "time"

// Season is when the vines of a year reach their stages, and whether canopy and berries follow them.
type Season struct {
	// Growth says whether the day shows vines and berries as the scenario gives them, or as far as they have grown by
	// its date; the scenario then gives them full-grown.
	Growth Growth `json:"growth" jsonschema:"enum=as-given,enum=by-date,default=as-given"`
	// FruitSet is the day of fruit set; without one it is usual for a hot district. Years do not count.
	FruitSet string `json:"fruitSet" jsonschema:"default="`
	// Veraison is the day of first colour; without one it is usual for a hot district.
	Veraison string `json:"veraison" jsonschema:"default="`
	// Harvest is the day of harvest; without one it is usual for a hot district.
	Harvest string `json:"harvest" jsonschema:"default="`
}

// Growth says which vines a day shows.
type Growth string

// The ways to show them.
const (
	AsGiven Growth = "as-given"
	ByDate  Growth = "by-date"
)

// mostDays is how far apart two stages of a season that follow each other may lie [days]; an assumption that only
// tells swapped dates.
const mostDays = 183

const commonYear = 365 // [days]

// validate checks that the dates are dates, and that those given follow each other: over the turn of the year too, so
// what lies too far behind lies before.
func (s Season) validate() []Fault {
	var faults []Fault
	var last time.Time
	for _, d := range []struct{ field, text string }{{"fruitSet", s.FruitSet}, {"veraison", s.Veraison}, {"harvest", s.Harvest}} {
		if d.text == "" {
			continue
		}
		day, err := time.Parse(time.DateOnly, d.text)
		if err != nil {
			faults = append(faults, Fault{"fault.date", "/season/" + d.field, map[string]any{"value": d.text}})
			continue
		}
		if after := daysAfter(last, day); !last.IsZero() && (after == 0 || after > mostDays) {
			faults = append(faults, Fault{"fault.season-order", "/season/" + d.field, map[string]any{
				"value": d.text, "before": last.Format(time.DateOnly), "max": mostDays}})
		}
		last = day
	}
	return faults
}

// daysAfter is the number of days from one date to the next time that another comes; years do not count.
func daysAfter(from, to time.Time) int {
	return (inCommonYear(to) - inCommonYear(from) + commonYear) % commonYear
}
