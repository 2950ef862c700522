package result

import "rowlight/sim/scenario"

// Directions is the answer to how the rows of a site should run: every option turned through the compass, over a day
// or the days of a season.
type Directions struct {
	ModelVersion string            `json:"modelVersion"`
	Name         string            `json:"name"`
	From         string            `json:"from"`     // first day, month-day
	To           string            `json:"to"`       // last day
	Days         int               `json:"days"`     // that were run, from first to last
	Step_deg     float64           `json:"step_deg"` // between azimuths [deg]
	Options      []DirectionOption `json:"options"`  // in the order of the scenario
	Yours        Sentence          `json:"yours"`    // what else decides, and is not computed
	Scenario     scenario.Scenario `json:"scenario"` // the document after defaults
}

// DirectionOption is one option turned through the compass.
type DirectionOption struct {
	Name     string      `json:"name"`
	Form     string      `json:"form"`
	Own_deg  float64     `json:"own_deg"`  // the azimuth of its rows as they are planned [deg]
	Rows     []Direction `json:"rows"`     // by rising azimuth, its own among them
	TradeOff Sentence    `json:"tradeOff"` // what a turn gives and takes
}

// Direction is an option with its rows at one azimuth. Hours, light and heat are means per day.
type Direction struct {
	Azimuth_deg      float64          `json:"azimuth_deg"`
	Sides            [2]DirectionSide `json:"sides"`            // scenario.Left, scenario.Right
	Intercepted_MJm2 float64          `json:"intercepted_MJm2"` // sunlight that the leaves take in, per ground area and day
	InterceptedShare float64          `json:"interceptedShare"` // of the sunlight on the ground area [0–1]
}

// DirectionSide is the fruit on one side of the rows.
type DirectionSide struct {
	Compass          string           `json:"compass"`
	Azimuth_deg      float64          `json:"azimuth_deg"` // direction that the side faces
	SunSide          scenario.SunSide `json:"sunSide"`
	Lit_h            float64          `json:"lit_h"`             // in direct sun, mean over faces
	Light_MJm2       float64          `json:"light_MJm2"`        // sunlight on the face
	LightBefore_MJm2 float64          `json:"lightBefore_MJm2"`  // of it, before the sun stands highest
	LightAfter_MJm2  float64          `json:"lightAfter_MJm2"`   // of it, after
	OverWatch_h      float64          `json:"overWatch_h"`       // hours over limits.watch_C, mean over faces
	OverHot_h        float64          `json:"overHot_h"`         // over limits.hot_C
	OverBurn_h       float64          `json:"overBurn_h"`        // over limits.burn_C
	HeatOverWatch_Kh float64          `json:"heatOverWatch_K_h"` // degree-hours over limits.watch_C, mean over faces
	HeatOverHot_Kh   float64          `json:"heatOverHot_K_h"`   // over limits.hot_C
	HeatOverBurn_Kh  float64          `json:"heatOverBurn_K_h"`  // over limits.burn_C
	AtRisk           float64          `json:"atRisk"`            // share of fruit at risk of necrosis, each face by its worst day [0–1]
	Hottest_C        float64          `json:"hottest_C"`         // highest mean of the hottest tenth of faces
	HottestOn        string           `json:"hottestOn"`         // the day of it
	HottestAt_h      float64          `json:"hottestAt_h"`       // clock hour of it
}

// WorstHeat_Kh is the degree-hours over a limit (0 watch, 1 hot, 2 burn) on the worse side [K h per day].
func (d *Direction) WorstHeat_Kh(limit int) float64 {
	return max(d.Sides[0].Heat_Kh(limit), d.Sides[1].Heat_Kh(limit))
}

// Heat_Kh is the degree-hours over a limit (0 watch, 1 hot, 2 burn) [K h per day].
func (s *DirectionSide) Heat_Kh(limit int) float64 {
	return [3]float64{s.HeatOverWatch_Kh, s.HeatOverHot_Kh, s.HeatOverBurn_Kh}[limit]
}
