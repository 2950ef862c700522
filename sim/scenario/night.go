package scenario

// Frost is the cold night of spring and the buds that meet it, shared by all options. All numbers are assumptions
// that the user may change; none is a forecast.
type Frost struct {
	// Lowest says where the lowest air temperature comes from: typed here, or that of the day of the weather.
	Lowest Lowest `json:"lowest" jsonschema:"enum=typed,enum=weather,default=typed"`
	// AirMin is the lowest air temperature of the night, 1.5 m above the ground, as typed.
	AirMin_C float64 `json:"airMin_C" jsonschema:"minimum=-25,maximum=20,default=-2" jsonschema_extras:"x-unit=degC,x-step=0.1"`
	// Wind is that of the coldest hours, 10 m above open ground, as typed.
	Wind_ms float64 `json:"wind_ms" jsonschema:"minimum=0,maximum=15,default=0.3" jsonschema_extras:"x-unit=m/s,x-step=0.1"`
	// Cloud is the share of the sky that clouds cover.
	Cloud float64 `json:"cloud" jsonschema:"minimum=0,maximum=1,default=0" jsonschema_extras:"x-unit=1,x-step=0.05"`
	// Inversion is how much the air of a calm clear night warms when the height grows by the factor e; published
	// nights run from 0.3 to 2.4 K, about 0.6 K is typical.
	Inversion_K float64 `json:"inversion_K" jsonschema:"minimum=0,maximum=3,default=0.6" jsonschema_extras:"x-unit=K,x-step=0.1"`
	// Stage is how far the buds have come.
	Stage BudStage `json:"stage" jsonschema:"enum=first-swell,enum=full-swell,enum=bud-burst,enum=first-leaf,enum=second-leaf,enum=third-leaf,enum=fourth-leaf,default=first-leaf"`
	// Group is the group of cultivars, by the cold that its buds stand.
	Group BudGroup `json:"group" jsonschema:"enum=vinifera,enum=american,default=vinifera"`
	// HalfKilled is the temperature that kills half of the buds; 0 takes that of the stage and the group.
	HalfKilled_C float64 `json:"halfKilled_C" jsonschema:"minimum=-25,maximum=0,default=0" jsonschema_extras:"x-unit=degC,x-step=0.1"`
}

// Lowest says where the lowest air temperature of a night comes from.
type Lowest string

// The ways to give a night.
const (
	LowestTyped   Lowest = "typed"
	LowestWeather Lowest = "weather"
)

// BudStage is how far buds have come in spring.
type BudStage string

// The stages of buds, in their order.
const (
	FirstSwell BudStage = "first-swell"
	FullSwell  BudStage = "full-swell"
	BudBurst   BudStage = "bud-burst"
	FirstLeaf  BudStage = "first-leaf"
	SecondLeaf BudStage = "second-leaf"
	ThirdLeaf  BudStage = "third-leaf"
	FourthLeaf BudStage = "fourth-leaf"
)

// BudGroup is a group of cultivars by the cold that its buds stand.
type BudGroup string

// The groups of cultivars.
const (
	Vinifera BudGroup = "vinifera"
	American BudGroup = "american"
)
