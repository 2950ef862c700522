package result

import "rowlight/sim/scenario"

// Preview is what a change makes of the numbers of a day, nearly: it is there before the day has been run.
type Preview struct {
	Options    []OptionPreview `json:"options"` // in the order of the scenario
	Comparison []Sentence      `json:"comparison"`
}

// OptionPreview is the preview of one option.
type OptionPreview struct {
	Name    string         `json:"name"`
	Sides   [2]SidePreview `json:"sides"` // scenario.Left, scenario.Right
	Verdict Sentence       `json:"verdict"`
}

// SidePreview is a Side without its courses.
type SidePreview struct {
	Compass     string           `json:"compass"`
	Azimuth_deg float64          `json:"azimuth_deg"`
	SunSide     scenario.SunSide `json:"sunSide"`
	Summary     Summary          `json:"summary"`
}

// PreviewOf takes from a day what a preview has.
func PreviewOf(day *Day) *Preview {
	p := &Preview{Comparison: day.Comparison}
	for _, o := range day.Options {
		of := OptionPreview{Name: o.Name, Verdict: o.Verdict}
		for i, side := range o.Sides {
			of.Sides[i] = SidePreview{side.Compass, side.Azimuth_deg, side.SunSide, side.Summary}
		}
		p.Options = append(p.Options, of)
	}
	return p
}
