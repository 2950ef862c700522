package scenario

// Shade is the nets that hang, the films that are sprayed and the mist that is let go against sun and heat. Their
// physical properties belong to the physics packages.
type Shade struct {
	// NetSides are the sides of the row whose fruit zone a net covers. On east-west rows the side that faces away from
	// the equator counts as the morning side.
	NetSides NetSides `json:"netSides" jsonschema:"enum=none,enum=morning,enum=afternoon,enum=both,default=none"`
	// NetShade is the share of light that the threads of that net stop where it comes straight on: the shade factor.
	NetShade float64 `json:"netShade" jsonschema:"minimum=0.05,maximum=0.9,default=0.4" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// NetColour of that net sets how much of what its threads stop goes on as diffuse light.
	NetColour ClothColour `json:"netColour" jsonschema:"enum=black,enum=green,enum=white,enum=pearl,default=black"`
	// NetFrom is the height of its lower edge where NetTo gives a band of its own.
	NetFrom_m float64 `json:"netFrom_m" jsonschema:"minimum=0,maximum=3.5,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// NetTo is the height of its upper edge; 0 covers the fruit zone, from just above to just below the bunches.
	NetTo_m float64 `json:"netTo_m" jsonschema:"minimum=0,maximum=3.5,default=0" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// NetDistance is how far from the row line it hangs, or where the fruit reaches farther, against the fruit.
	NetDistance_m float64 `json:"netDistance_m" jsonschema:"minimum=0.05,maximum=1.5,default=0.25" jsonschema_extras:"x-unit=m,x-step=0.05"`
	// BirdNet is a net of thin thread and wide mesh that lies over each row.
	BirdNet BirdNet `json:"birdNet" jsonschema:"enum=none,enum=draped,default=none"`
	// OverheadShade is the shade factor of a net over all rows; 0 for none.
	OverheadShade float64 `json:"overheadShade" jsonschema:"minimum=0,maximum=0.9,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// OverheadColour is that of the net over all rows.
	OverheadColour ClothColour `json:"overheadColour" jsonschema:"enum=black,enum=green,enum=white,enum=pearl,default=white"`
	// OverheadHeight is how high the net over all rows hangs. It must clear the wires; light and heat are the same for
	// every height above the canopy.
	OverheadHeight_m float64 `json:"overheadHeight_m" jsonschema:"minimum=1.5,maximum=8,default=4" jsonschema_extras:"x-unit=m,x-step=0.1"`
	// Film is how much of fruit and leaves a sprayed particle film whitens.
	Film Film `json:"film" jsonschema:"enum=none,enum=light,enum=full,default=none"`
	// MistRate is the water that misters spread over the ground area while they run; 0 for none.
	MistRate_mmh float64 `json:"mistRate_mmh" jsonschema:"minimum=0,maximum=3,default=0" jsonschema_extras:"x-unit=mm/h,x-step=0.1"`
	// MistAbove is the air temperature above which they run.
	MistAbove_C float64 `json:"mistAbove_C" jsonschema:"minimum=15,maximum=50,default=35" jsonschema_extras:"x-unit=degC,x-step=0.5"`
	// MistFrom is the clock hour from which they may run.
	MistFrom_h float64 `json:"mistFrom_h" jsonschema:"minimum=0,maximum=24,default=11" jsonschema_extras:"x-unit=h,x-step=0.5"`
	// MistTo is the clock hour up to which they may run.
	MistTo_h float64 `json:"mistTo_h" jsonschema:"minimum=0,maximum=24,default=18" jsonschema_extras:"x-unit=h,x-step=0.5"`
}

// NetSides names the sides of a row with a net.
type NetSides string

// The sides that a net can cover.
const (
	NoSide        NetSides = "none"
	MorningSide   NetSides = "morning"
	AfternoonSide NetSides = "afternoon"
	BothSides     NetSides = "both"
)

// ClothColour is the colour of the threads of a net.
type ClothColour string

// The colours of nets that the model knows.
const (
	BlackCloth ClothColour = "black"
	GreenCloth ClothColour = "green"
	WhiteCloth ClothColour = "white"
	PearlCloth ClothColour = "pearl"
)

// BirdNet is how a bird net hangs.
type BirdNet string

// The ways to hang a bird net.
const (
	NoBirdNet BirdNet = "none"
	DrapedNet BirdNet = "draped"
)

// Film is how thick a particle film lies on fruit and leaves.
type Film string

// The films that the model knows.
const (
	NoFilm    Film = "none"
	LightFilm Film = "light"
	FullFilm  Film = "full"
)

// Netted tells whether a net covers the fruit zone on a side of the row.
func (o Option) Netted(s Side, latitude_deg float64) bool {
	switch o.Shade.NetSides {
	case BothSides:
		return true
	case MorningSide:
		return o.Rows.countsAsMorning(s, latitude_deg)
	case AfternoonSide:
		return !o.Rows.countsAsMorning(s, latitude_deg)
	}
	return false
}

// Cautions names what nets, film and mist of an option may do to posts, people and fruit: no fault, but to be said where
// they are chosen. Path is the JSON pointer of the option.
func (o Option) Cautions(path string) []Fault {
	var cautions []Fault
	add := func(holds bool, code string) {
		if holds {
			cautions = append(cautions, Fault{Code: code, Path: path})
		}
	}
	s := o.Shade
	add(s.NetSides != NoSide && s.NetSides != "" || s.BirdNet == DrapedNet || s.OverheadShade > 0, "notice.nets")
	add(s.Film == LightFilm || s.Film == FullFilm, "notice.film")
	add(s.MistRate_mmh > 0, "notice.mist")
	return cautions
}
