// Package result holds every result as plain structs. It imports nothing of the project but scenario.
package result

import "rowlight/sim/scenario"

// ModelVersion names the physics that made a result; it changes whenever numbers change.
const ModelVersion = "0.3.0"

// Day is the answer to one scenario on one day.
type Day struct {
	ModelVersion string            `json:"modelVersion"`
	Name         string            `json:"name"`
	Date         string            `json:"date"`
	UTCOffset_h  float64           `json:"utcOffset_h"`
	Step_min     float64           `json:"step_min"`           // between instants [min]
	Hour         []float64         `json:"hour"`               // clock hours of the instants, 0 … 24 [h]
	Sun          Sun               `json:"sun"`                // at the instants
	Air          Air               `json:"air"`                // at the instants
	Options      []Option          `json:"options"`            // in the order of the scenario
	Comparison   []Sentence        `json:"comparison"`         // one per option other than the compared one
	Ranges       *Ranges           `json:"ranges,omitempty"`   // none when they were not asked for
	Weighing     *Weighing         `json:"weighing,omitempty"` // frost, crop, work and water beside light and heat
	Scenario     scenario.Scenario `json:"scenario"`           // the document after defaults
}

// Sun is its course on the day.
type Sun struct {
	Elevation_deg []float64 `json:"elevation_deg"` // true, geometric
	Azimuth_deg   []float64 `json:"azimuth_deg"`   // from true north, clockwise
	Rise_h        float64   `json:"rise_h"`        // clock hour; NaN is never written: see Polar
	Transit_h     float64   `json:"transit_h"`
	Set_h         float64   `json:"set_h"`
	Polar         string    `json:"polar,omitempty"` // "day" or "night" when the sun does not rise and set
}

// Air is the weather at the instants.
type Air struct {
	Temperature_C []float64 `json:"temperature_C"`
	DewPoint_C    []float64 `json:"dewPoint_C"`
	Wind_ms       []float64 `json:"wind_ms"` // at 10 m
	GHI_Wm2       []float64 `json:"ghi_Wm2"`
	DNI_Wm2       []float64 `json:"dni_Wm2"`
	DHI_Wm2       []float64 `json:"dhi_Wm2"`
}

// Option is the answer for one option.
type Option struct {
	Name    string   `json:"name"`
	Form    string   `json:"form"`
	Canopy  Canopy   `json:"canopy"`
	Sides   [2]Side  `json:"sides"` // scenario.Left, scenario.Right
	Verdict Sentence `json:"verdict"`
	// Notices are what a grower would find wrong with the design; none keeps the option from being computed.
	Notices []scenario.Fault `json:"notices"`
}

// Canopy is what the stand of the option measures.
type Canopy struct {
	LeafArea_m2_per_m     float64 `json:"leafArea_m2_per_m"`  // per metre of canopy
	LeafArea_m2_per_ha    float64 `json:"leafArea_m2_per_ha"` // of ground
	LeafAreaIndex         float64 `json:"leafAreaIndex"`      // leaf area per ground area
	LeafDensity_m2_m3     float64 `json:"leafDensity_m2_m3"`
	LeafLayers            float64 `json:"leafLayers"`            // mean contacts of a horizontal probe at fruit height
	Gaps                  float64 `json:"gaps"`                  // share of such probes that touch neither leaf nor bunch
	Exterior              float64 `json:"exteriorBunches"`       // share of bunches with no leaf in front of at least one face
	ExposedLeaf_m2_per_ha float64 `json:"exposedLeaf_m2_per_ha"` // outside of the canopy by tape, less its gaps
	HeightToGap           float64 `json:"heightToGap"`           // height of the canopy over the free width between rows; 0 without an alley
	LeafToFruit_m2_per_kg float64 `json:"leafToFruit_m2_per_kg"` // leaf area over the mass of fruit; 0 without fruit
	Intercepted           float64 `json:"intercepted"`           // share of the day's light (PAR) that does not reach the floor [0–1]
	FruitHeight_m         float64 `json:"fruitHeight_m"`         // mean
	Top_m                 float64 `json:"top_m"`
	Width_m               float64 `json:"width_m"` // of the middle 90 % of the leaf area
	ShootsPerVine         float64 `json:"shootsPerVine"`
	BunchesPerVine        float64 `json:"bunchesPerVine"`
	Faces                 int     `json:"faces"` // bunch faces per side in the sample
}

// Side is the fruit that looks to one side of the row.
type Side struct {
	Compass     string           `json:"compass"`     // "west", "south-west"
	Azimuth_deg float64          `json:"azimuth_deg"` // direction that the side faces
	SunSide     scenario.SunSide `json:"sunSide"`
	Steps       Steps            `json:"steps"`
	Summary     Summary          `json:"summary"`
}

// Steps are the courses over the day, one value per instant.
type Steps struct {
	LitShare  []float64 `json:"litShare"`    // share of faces in the direct sun [0–1]
	Light_Wm2 []float64 `json:"light_Wm2"`   // mean sunlight on the face, direct and diffuse, on its outward surface
	Mean_C    []float64 `json:"mean_C"`      // mean over faces of the berry surface temperature at its hottest point
	Hottest_C []float64 `json:"hottest_C"`   // mean of the hottest tenth of faces at the instant
	Coolest_C []float64 `json:"coolest_C"`   // mean of the coolest tenth
	Berry_C   []float64 `json:"berry_C"`     // mean over faces of the whole-berry temperature
	AirNear_C []float64 `json:"airNear_C"`   // air at fruit height
	Wind_ms   []float64 `json:"windNear_ms"` // wind at the fruit
}

// Summary is the day in a few numbers. Hours over a limit are the mean over faces of the time that the hottest point of
// the berry spends over it; those of the hottest fruit are the time that Steps.Hottest_C is over it, whichever faces
// make up that tenth at the moment.
type Summary struct {
	Lit_h              float64 `json:"lit_h"`              // mean over faces of the hours in direct sun
	Light_MJm2         float64 `json:"light_MJm2"`         // daily sunlight on the face
	Hottest_C          float64 `json:"hottest_C"`          // highest of Steps.Hottest_C
	HottestAt_h        float64 `json:"hottestAt_h"`        // clock hour of it
	MeanMax_C          float64 `json:"meanMax_C"`          // highest of Steps.Mean_C
	OverWatch_h        float64 `json:"overWatch_h"`        // hours over limits.watch_C, mean over faces
	OverHot_h          float64 `json:"overHot_h"`          // hours over limits.hot_C
	OverBurn_h         float64 `json:"overBurn_h"`         // hours over limits.burn_C
	HottestOverWatch_h float64 `json:"hottestOverWatch_h"` // hours of the hottest fruit over limits.watch_C
	HottestOverHot_h   float64 `json:"hottestOverHot_h"`   // over limits.hot_C
	HottestOverBurn_h  float64 `json:"hottestOverBurn_h"`  // over limits.burn_C
	AtRisk             float64 `json:"atRisk"`             // share of fruit at risk of sunburn necrosis [0–1]
	Browning           float64 `json:"browning"`           // browning dose, mean over faces
}

// Sentence is a verdict or comparison as a code of the text catalogue and its parameters.
type Sentence struct {
	Code   string             `json:"code"`
	Words  map[string]string  `json:"words,omitempty"`
	Values map[string]float64 `json:"values,omitempty"`
}
