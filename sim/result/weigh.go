package result

// Estimate is a number with the range that its sources and assumptions leave. Where the range is not known, low and
// high are the value.
type Estimate struct {
	Low   float64 `json:"low"`
	Value float64 `json:"value"`
	High  float64 `json:"high"`
}

// Weighing is what is to be weighed when a form is chosen: the frost of a night, the crop, the work and the water of
// every option, beside the day's light and heat.
type Weighing struct {
	Night   Night     `json:"night"`
	Options []Weighed `json:"options"` // in the order of the scenario
	// Order lists the options by the weights of the reader, the best first; empty when all weights are 0.
	Order []Placed `json:"order"`
	// Terms are the numbers that the texts of the columns name.
	Terms map[string]float64 `json:"terms"`
}

// Placed is one option in the order of the reader's weights.
type Placed struct {
	Option  int      `json:"option"`  // index in the scenario
	Score   Estimate `json:"score"`   // 0 when worst, 1 when best in all that has weight
	Decided bool     `json:"decided"` // its range lies above that of the next one
}

// Weighed is one option.
type Weighed struct {
	Name  string      `json:"name"`
	Heat  Estimate    `json:"heat_C"`     // hottest fruit of the day, on the worse side
	Light Estimate    `json:"light_MJm2"` // sunlight on the fruit of the day, mean of both sides
	Frost OptionFrost `json:"frost"`
	Crop  OptionCrop  `json:"crop"`
	Work  OptionWork  `json:"work"`
	Water OptionWater `json:"water"`
	// Colour is how long the berries are over 35 °C, on the worse side: colour fails to form and fades there [h].
	Colour_h float64 `json:"colour_h"`
}

// Night is the air of the frost night by height.
type Night struct {
	Lowest_C   float64   `json:"lowest_C"` // at screen height
	Screen_m   float64   `json:"screen_m"`
	Wind_ms    float64   `json:"wind_ms"`     // at 10 m
	Inversion  Estimate  `json:"inversion_K"` // warming for each growth of the height by the factor e; 0 in wind or under clouds
	Height_m   []float64 `json:"height_m"`
	Air_C      []float64 `json:"air_C"`    // at these heights
	Weak_C     []float64 `json:"weak_C"`   // with the weakest published inversion
	Strong_C   []float64 `json:"strong_C"` // with the strongest
	Kill10_C   float64   `json:"kill10_C"` // kills a tenth of the buds
	Kill50_C   float64   `json:"kill50_C"`
	Kill90_C   float64   `json:"kill90_C"`
	KillSource string    `json:"killSource"` // code of the text that says where these are from
}

// OptionFrost is the buds of an option in the night.
type OptionFrost struct {
	Lowest_m  float64  `json:"lowest_m"`  // a twentieth of the buds is lower
	Buds_m    float64  `json:"buds_m"`    // mean
	Highest_m float64  `json:"highest_m"` // a twentieth is higher
	Air       Estimate `json:"air_C"`     // at the buds
	Margin    Estimate `json:"margin_K"`  // above the temperature that kills a tenth of the buds
	Killed    Estimate `json:"killed"`    // share of the buds
	Raised    Estimate `json:"raised_K"`  // what a cordon raised by Raise_m buys
	Raise_m   float64  `json:"raise_m"`
	Verdict   Sentence `json:"verdict"`
}

// OptionCrop is the crop of an option, by its own numbers: full-grown vines, and as many of them as the option says.
type OptionCrop struct {
	VinesPerHa       float64   `json:"vinesPerHa"`
	Canopy_m         float64   `json:"canopy_m"`      // length of canopy of one vine
	NodesPerVine     float64   `json:"nodesPerVine"`  // kept at pruning, on a full-grown vine
	Spurs            float64   `json:"spurs"`         // of one vine; 0 on canes
	Canes            float64   `json:"canes"`         // of one vine; 0 on spurs
	ShootsPerVine    float64   `json:"shootsPerVine"` // on the vines that are there, blind nodes and thinned shoots off
	BunchesPerVine   float64   `json:"bunchesPerVine"`
	Bunch_g          float64   `json:"bunch_g"`
	Berry_g          float64   `json:"berry_g"`
	BerriesPerBunch  float64   `json:"berriesPerBunch"`
	PerVine_kg       Estimate  `json:"perVine_kg"` // mean over all places, missing vines too
	PerHa_t          Estimate  `json:"perHa_t"`
	PerAcre_ton      Estimate  `json:"perAcre_ton"`       // US tons
	Prunings_kgm     float64   `json:"prunings_kg_per_m"` // of canopy: those of the site spread over it
	YieldToPrunings  Estimate  `json:"yieldToPrunings"`
	LeafToFruit_m2kg Estimate  `json:"leafToFruit_m2_per_kg"`
	BalancedNodes    float64   `json:"balancedNodes"` // that balanced pruning would keep
	Filled           float64   `json:"filled"`        // share of the canopy that the vigour of the site fills
	Balance          Sentence  `json:"balance"`       // leaves and wood against fruit
	Verdict          Sentence  `json:"verdict"`
	FourArms         *FourArms `json:"fourArms,omitempty"` // only where the vines have two arms
	Income           *Income   `json:"income,omitempty"`   // only with a price and a cost
}

// FourArms is what four arms on two wires would make of a vine with two.
type FourArms struct {
	SameNodes  Estimate `json:"sameNodes_t_per_ha"`  // as many nodes in all
	TwiceNodes Estimate `json:"twiceNodes_t_per_ha"` // as many nodes on each arm
	Prunings   float64  `json:"prunings_kg_per_m"`   // of the longer canopy
	Filled     float64  `json:"filled"`              // share of the four arms that the vigour of the site fills
	Verdict    Sentence `json:"verdict"`
}

// Income is in the user's own money.
type Income struct {
	PerHa       Estimate `json:"perHa"` // price times yield, less cost
	BreakEven_t float64  `json:"breakEven_t_per_ha"`
}

// OptionWork is the work by hand that forms differ in [h/ha and year]; picking, sprays and mowing are not in it.
type OptionWork struct {
	Prune_h  float64  `json:"prune_h"`
	Shoots_h float64  `json:"shoots_h"`
	Leaves_h float64  `json:"leaves_h"`
	Total    Estimate `json:"total_h"`
}

// OptionWater is what the canopy drinks, by its shade.
type OptionWater struct {
	Shaded          float64  `json:"shaded"` // share of the ground that is in shade at noon
	CropCoefficient Estimate `json:"cropCoefficient"`
}
