package main

import (
	"math"

	"rowlight/sim/scenario"
)

// yardstickSheet has a line for each form.
func yardstickSheet(all []measured) sheet {
	rows := sheet{columns: []column{
		{"form", "form", "", 0},
		{"faces", "faces a side", "", 0},
		{"leaves", "gap by leaves", "", 3},
		{"even", "grid, Ω = 1", "", 3},
		{"grid", "grid", "", 3},
		{"clumping", "Ω", "", 2},
		{"bias", "worst bias", "", 3},
		{"rms", "worst rms", "", 3},
		{"dayBias", "bias, hot day", "", 3},
		{"spellLeaves_min", "spell by leaves", "min", 0},
		{"spell_min", "spell", "min", 0},
		{"moment_min", "moment", "min", 1},
	}}
	for i := range all {
		r, t := &all[i].Report, &all[i].Timing
		between, even, grid := r.Means()
		rows.rows = append(rows.rows, []any{
			r.Form, math.Round(r.Faces), between, even, grid, r.Clumping, r.Worst(false).Bias, r.WorstRMS(), r.Worst(true).Bias,
			t.Leaves.LitMinute_min, t.Field.LitMinute_min, t.Moment_min,
		})
	}
	return rows
}

// sideNames are those of the sides in the row frame.
var sideNames = [2]string{scenario.Left: "left", scenario.Right: "right"}

// directionSheet has a line for each form and direction.
func directionSheet(all []measured) sheet {
	rows := sheet{columns: []column{
		{"form", "form", "", 0}, {"clumping", "", "", 0}, {"side", "side", "", 0},
		{"elevation_deg", "", "", 0}, {"azimuth_deg", "", "", 0}, {"hotDay", "", "", 0},
		{"gapLeaves", "", "", 0}, {"gapEven", "", "", 0}, {"gapSingle", "", "", 0}, {"gapGrid", "", "", 0},
		{"bias", "", "", 0}, {"biasError", "", "", 0}, {"rms", "", "", 0}, {"samplingError", "", "", 0},
	}}
	for i := range all {
		r := &all[i].Report
		for _, d := range r.Directions {
			rows.rows = append(rows.rows, []any{
				r.Form, r.Clumping, sideNames[d.Side], d.Elevation_deg, d.Azimuth_deg, d.Day,
				d.Leaves, d.Even, d.Single, d.Grid, d.Bias, d.BiasSE, d.RMS, d.Sampling,
			})
		}
	}
	return rows
}
