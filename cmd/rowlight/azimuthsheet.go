package main

import (
	"rowlight/sim/result"
	"rowlight/sim/words"
)

// azimuthColumns are those of one side of the rows at an azimuth; over titles the heat over each limit.
func azimuthColumns(over [3]string) []column {
	return []column{
		{"azimuth_deg", "rows", "deg", 0}, {"side", "side", "", 0}, {"sunSide", "", "", 0},
		{"lit_h", "in the sun", "h", 1},
		{"light_MJm2", "light", "MJ/m²", 1},
		{"lightBefore_MJm2", "before noon", "MJ/m²", 1}, {"lightAfter_MJm2", "after", "MJ/m²", 1},
		{"overWatch_h", "", "h", 1}, {"overHot_h", "", "h", 1}, {"overBurn_h", "", "h", 1},
		{"heatOverWatch_K_h", over[0], "K h", 1},
		{"heatOverHot_K_h", over[1], "K h", 1},
		{"heatOverBurn_K_h", over[2], "K h", 1},
		{"atRisk", "at risk", "share", 0},
		{"hottest_C", "hottest", "degC", 1}, {"hottestOn", "", "", 0}, {"hottestAt_h", "", "h", 1},
		{"intercepted_MJm2", "", "MJ/m²", 1}, {"interceptedShare", "leaves take", "share", 0},
	}
}

// azimuthCells are the cells of azimuthColumns.
func azimuthCells(d result.Direction, s result.DirectionSide) []any {
	return []any{
		d.Azimuth_deg, s.Compass, string(s.SunSide),
		s.Lit_h, s.Light_MJm2, s.LightBefore_MJm2, s.LightAfter_MJm2, s.OverWatch_h, s.OverHot_h, s.OverBurn_h,
		s.HeatOverWatch_Kh, s.HeatOverHot_Kh, s.HeatOverBurn_Kh, s.AtRisk, s.Hottest_C, s.HottestOn, s.HottestAt_h,
		d.Intercepted_MJm2, d.InterceptedShare,
	}
}

// azimuthSheet lists every azimuth of every option and side.
func azimuthSheet(out *result.Directions, units words.Units) sheet {
	limits := out.Scenario.Limits
	over := func(limit float64) string { return "over " + words.Quantity(limit, "degC", -1, units) }
	table := sheet{columns: append([]column{
		{"from", "", "", 0}, {"to", "", "", 0}, {"days", "", "", 0}, {"option", "option", "", 0}, {"name", "", "", 0},
	}, azimuthColumns([3]string{over(limits.Watch_C), over(limits.Hot_C), over(limits.Burn_C)})...)}
	for o, option := range out.Options {
		for _, row := range option.Rows {
			for _, side := range row.Sides {
				table.rows = append(table.rows, append([]any{out.From, out.To, out.Days, letter(o), option.Name}, azimuthCells(row, side)...))
			}
		}
	}
	return table
}
