package scenario

// Crop is what the vines of the site can carry, what fruit brings and how fast hands work, shared by all options.
// All numbers are assumptions that the user may change.
type Crop struct {
	// Prunings is the weight of one-year wood cut off in winter per metre of row, as the vines of the site grow now:
	// their vigour, whatever the form. The middle of the balanced range of one curtain, 0.5 to 1.0 (Kliewer &
	// Dokoozlian 2005).
	Prunings_kg_per_m float64 `json:"prunings_kg_per_m" jsonschema:"minimum=0.05,maximum=3,default=0.75" jsonschema_extras:"x-unit=kg/m,x-step=0.05"`
	// FirstNodes are the nodes that balanced pruning keeps for the first pound of prunings of a vine.
	FirstNodes float64 `json:"firstNodes" jsonschema:"minimum=0,maximum=100,default=20" jsonschema_extras:"x-unit=nodes,x-step=5"`
	// MoreNodes are the nodes that it keeps for each further pound.
	MoreNodes float64 `json:"moreNodes" jsonschema:"minimum=0,maximum=60,default=20" jsonschema_extras:"x-unit=nodes,x-step=5"`
	// Spread is how far a yield may lie off either way, as a share of it: the seasons and what is counted wrong.
	Spread float64 `json:"spread" jsonschema:"minimum=0,maximum=0.8,default=0.25" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// Price is what a tonne of fruit brings, in the user's own money; 0 computes no income.
	Price_per_t float64 `json:"price_per_t" jsonschema:"minimum=0,maximum=100000,default=0" jsonschema_extras:"x-unit=per t,x-step=50"`
	// SpurTime is the time to cut one spur.
	SpurTime_s float64 `json:"spurTime_s" jsonschema:"minimum=0,maximum=120,default=8" jsonschema_extras:"x-unit=s,x-step=1"`
	// CaneTime is the time to choose, cut and tie one cane.
	CaneTime_s float64 `json:"caneTime_s" jsonschema:"minimum=0,maximum=600,default=45" jsonschema_extras:"x-unit=s,x-step=5"`
	// ShootTime is the time to put one shoot in its place, or to take it out.
	ShootTime_s float64 `json:"shootTime_s" jsonschema:"minimum=0,maximum=60,default=3" jsonschema_extras:"x-unit=s,x-step=1"`
	// LeafTime is the time to pull all leaves of the fruit zone on one metre of one side.
	LeafTime_s float64 `json:"leafTime_s" jsonschema:"minimum=0,maximum=120,default=20" jsonschema_extras:"x-unit=s,x-step=1"`
}

// Cost is what an option costs.
type Cost struct {
	// Year is what a hectare costs in a year, the trellis paid off over its life included, in the user's own money;
	// 0 computes no income.
	Year_per_ha float64 `json:"year_per_ha" jsonschema:"minimum=0,maximum=1000000,default=0" jsonschema_extras:"x-unit=per ha,x-step=100"`
}

// Weights are what matters to the reader, each against the others; with all at 0 nothing is ranked.
type Weights struct {
	// Heat is how much it matters that the hottest fruit stays cool.
	Heat float64 `json:"heat" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.1"`
	// Light is how much it matters that the fruit has the light that is wished.
	Light float64 `json:"light" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.1"`
	// LightWish is whether more light on the fruit is better, or less.
	LightWish LightWish `json:"lightWish" jsonschema:"enum=more,enum=less,default=more"`
	// Frost is how much it matters that buds stay above the temperatures that kill them.
	Frost float64 `json:"frost" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.1"`
	// Crop is how much the weight of fruit matters.
	Crop float64 `json:"crop" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.1"`
	// Work is how much it matters that the work by hand is little.
	Work float64 `json:"work" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.1"`
}

// LightWish is whether more light on the fruit is better, or less.
type LightWish string

// The wishes.
const (
	MoreLight LightWish = "more"
	LessLight LightWish = "less"
)
