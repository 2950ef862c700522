package main

import (
	"rowlight/sim/result"
	"rowlight/sim/words"
)

// ranged is one number of a summary with its band and its difference.
type ranged struct {
	title      string
	unit       string // of the number
	apart      string // of a difference
	decimals   int
	central    func(*result.Summary) float64
	band       func(*result.SummaryBands) result.Band
	difference func(*result.Difference) result.Versus
}

// rangedNumbers are those shown for reading; json holds them all.
func rangedNumbers(day result.Day, units words.Units) []ranged {
	limits := day.Scenario.Limits
	over := func(limit float64) string { return "hottest fruit over " + words.Quantity(limit, "degC", -1, units) }
	return []ranged{
		{"hottest fruit", "degC", "K", 1, func(s *result.Summary) float64 { return s.Hottest_C },
			func(b *result.SummaryBands) result.Band { return b.Hottest_C }, func(d *result.Difference) result.Versus { return d.Hottest }},
		{over(limits.Watch_C), "h", "h", 1, func(s *result.Summary) float64 { return s.HottestOverWatch_h },
			func(b *result.SummaryBands) result.Band { return b.HottestOverWatch_h }, func(d *result.Difference) result.Versus { return d.HottestOverWatch }},
		{over(limits.Hot_C), "h", "h", 1, func(s *result.Summary) float64 { return s.HottestOverHot_h },
			func(b *result.SummaryBands) result.Band { return b.HottestOverHot_h }, func(d *result.Difference) result.Versus { return d.HottestOverHot }},
		{over(limits.Burn_C), "h", "h", 1, func(s *result.Summary) float64 { return s.HottestOverBurn_h },
			func(b *result.SummaryBands) result.Band { return b.HottestOverBurn_h }, func(d *result.Difference) result.Versus { return d.HottestOverBurn }},
		{"at risk", "share", "share", 0, func(s *result.Summary) float64 { return s.AtRisk },
			func(b *result.SummaryBands) result.Band { return b.AtRisk }, func(d *result.Difference) result.Versus { return d.AtRisk }},
	}
}

// rangeSheets are a sheet per number: every option and side with its band and the input that matters most.
func rangeSheets(day result.Day, units words.Units) []sheet {
	names := map[string]string{"": "none"}
	for _, in := range day.Ranges.Inputs {
		names[in.Key] = in.Name
	}
	var all []sheet
	for _, n := range rangedNumbers(day, units) {
		out := sheet{columns: []column{
			{"", n.title, "", 0}, {"", "side", "", 0},
			{"", "central", n.unit, n.decimals}, {"", "low", n.unit, n.decimals}, {"", "high", n.unit, n.decimals}, {"", "error", n.apart, n.decimals + 1},
			{"", "follows most", "", 0},
		}}
		for o, option := range day.Ranges.Options {
			for side := range option.Sides {
				of, band := &day.Options[o].Sides[side], n.band(&option.Sides[side])
				out.rows = append(out.rows, []any{letter(o), of.Compass, n.central(&of.Summary), band.Low, band.High, band.Error, names[band.Most]})
			}
		}
		all = append(all, out)
	}
	return all
}

// differenceSheets are a sheet per number: how each option differs from the compared one, and how often.
func differenceSheets(day result.Day, units words.Units) []sheet {
	var all []sheet
	for _, n := range rangedNumbers(day, units) {
		out := sheet{columns: []column{
			{"", n.title, "", 0}, {"", "central", n.apart, n.decimals}, {"", "low", n.apart, n.decimals}, {"", "high", n.apart, n.decimals},
			{"", "worse in", "share", 0}, {"", "better in", "share", 0},
		}}
		for _, d := range day.Ranges.Differences {
			v := n.difference(&d)
			out.rows = append(out.rows, []any{letter(d.Option) + " against " + letter(d.Compared), v.Central, v.Low, v.High, v.Worse, v.Better})
		}
		all = append(all, out)
	}
	return all
}
