package result

import "rowlight/sim/scenario"

// Preview is what a change makes of the numbers of a day, nearly: it is there before the day has been run. It has no
// sentences, which tell of courses that are not known yet.
type Preview struct {
	Options []OptionPreview `json:"options"` // in the order of the scenario
}

// OptionPreview is the preview of one option.
type OptionPreview struct {
	Sides [2]SidePreview `json:"sides"` // scenario.Left, scenario.Right
}

// SidePreview is a Side without its courses.
type SidePreview struct {
	Compass     string           `json:"compass"`
	Azimuth_deg float64          `json:"azimuth_deg"`
	SunSide     scenario.SunSide `json:"sunSide"`
	Summary     Summary          `json:"summary"`
}
