package result

import "rowlight/sim/scenario"

// Season is the answer over many days: every option with its rows as planned.
type Season struct {
	ModelVersion string            `json:"modelVersion"`
	Name         string            `json:"name"`
	Days         []SeasonDay       `json:"days"`    // in their order
	Waves        []HeatWave        `json:"waves"`   // in the air, in their order
	Options      []SeasonOption    `json:"options"` // in the order of the scenario
	Scenario     scenario.Scenario `json:"scenario"`
}

// SeasonDay is what all options share of a day.
type SeasonDay struct {
	Date     string  `json:"date"`  // with the year that a weather file took it from
	Stage    string  `json:"stage"` // how far vines and fruit have grown
	AirMax_C float64 `json:"airMax_C"`
}

// HeatWave is a run of days whose highest air temperature lies above that of nine days in ten of the span, three days
// long at least (the TX90p reading of a hot spell, after Perkins & Alexander 2013, J. Climate 26:4500, from memory; here of the span
// and not of a climate normal, so that it marks the worst of these days).
type HeatWave struct {
	From     string  `json:"from"`
	To       string  `json:"to"`
	Days     int     `json:"days"`
	AirMax_C float64 `json:"airMax_C"` // highest of its days
}

// SeasonOption is one option over the days.
type SeasonOption struct {
	Name  string        `json:"name"`
	Form  string        `json:"form"`
	Sides [2]SeasonSide `json:"sides"` // scenario.Left, scenario.Right
}

// SeasonSide is the fruit on one side of the rows over the days.
type SeasonSide struct {
	Compass   string           `json:"compass"`
	SunSide   scenario.SunSide `json:"sunSide"`
	Days      []SideDay        `json:"days"`      // as Season.Days
	OverHot_h float64          `json:"overHot_h"` // summed over the days, mean over faces
	Heat_Kh   float64          `json:"heat_K_h"`  // degree-hours over limits.hot_C, summed
	AtRisk    float64          `json:"atRisk"`    // share of fruit at risk, each face by its worst day [0–1]
	Worst     []int            `json:"worst"`     // indices of the days with most heat, at most five, worst first
}

// SideDay is one side on one day.
type SideDay struct {
	OverWatch_h float64     `json:"overWatch_h"`
	OverHot_h   float64     `json:"overHot_h"`
	OverBurn_h  float64     `json:"overBurn_h"`
	Heat_Kh     float64     `json:"heat_K_h"` // over limits.hot_C
	AtRisk      float64     `json:"atRisk"`   // by this day alone
	Hottest_C   float64     `json:"hottest_C"`
	HottestAt_h float64     `json:"hottestAt_h"`
	Hourly_C    [24]float64 `json:"hourly_C"` // highest of the hottest tenth of faces in each hour of the clock
}

// SeasonPart is some days of one option: a piece of a season as a worker hands it back.
type SeasonPart struct {
	Option int         `json:"option"`
	From   int         `json:"from"`  // index of the first of its days
	Sides  [2]PartSide `json:"sides"` // scenario.Left, scenario.Right
}

// PartSide is one side over the days of a part.
type PartSide struct {
	Days       []SideDay `json:"days"`
	WorstDoses []float64 `json:"worstDoses"` // of damage, of every face of the sample by the worst of the days
}
