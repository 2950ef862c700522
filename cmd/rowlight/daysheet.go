package main

import (
	"fmt"
	"io"
	"math"

	"rowlight/sim/result"
	"rowlight/sim/words"
)

// stepSheet lists every so many instants of every option and side. All values belong to the instant.
func stepSheet(day result.Day, every int) sheet {
	out := sheet{columns: []column{
		{"time", "", "", 0},
		{"sampling", "", "", 0},
		{"", "time", "", 0},
		{"option", "option", "", 0},
		{"name", "", "", 0},
		{"side", "side", "", 0},
		{"sunSide", "", "", 0},
		{"sunElevation_deg", "sun", "deg", 0},
		{"sunAzimuth_deg", "from", "deg", 0},
		{"air_C", "air", "degC", 1},
		{"litShare", "in the sun", "share", 0},
		{"light_Wm2", "light", "W/m2", 0},
		{"mean_C", "mean", "degC", 1},
		{"hottest_C", "hottest", "degC", 1},
		{"coolest_C", "coolest", "degC", 1},
		{"berry_C", "berry", "degC", 1},
		{"airNear_C", "air near", "degC", 1},
		{"windNear_ms", "wind near", "m/s", 1},
	}}
	for o, option := range day.Options {
		for _, side := range option.Sides {
			for i := 0; i < len(day.Hour); i += every {
				steps := side.Steps
				out.rows = append(out.rows, []any{
					moment(day, day.Hour[i]), "instant", words.Clock(day.Hour[i]), letter(o), option.Name, side.Compass, string(side.SunSide),
					day.Sun.Elevation_deg[i], day.Sun.Azimuth_deg[i], day.Air.Temperature_C[i],
					steps.LitShare[i], steps.Light_Wm2[i], steps.Mean_C[i], steps.Hottest_C[i], steps.Coolest_C[i],
					steps.Berry_C[i], steps.AirNear_C[i], steps.Wind_ms[i],
				})
			}
		}
	}
	return out
}

// summarySheet lists the day of every option and side in a few numbers.
func summarySheet(day result.Day, units words.Units) sheet {
	limits := day.Scenario.Limits
	over := func(limit float64) string { return "over " + words.Quantity(limit, "degC", -1, units) }
	out := sheet{columns: []column{
		{"date", "", "", 0},
		{"option", "option", "", 0},
		{"name", "", "", 0},
		{"side", "side", "", 0},
		{"sunSide", "", "", 0},
		{"lit_h", "in the sun", "h", 1},
		{"light_MJm2", "light", "MJ/m²", 1},
		{"hottest_C", "hottest", "degC", 1},
		{"hottestAt", "", "", 0},
		{"", "at", "", 0},
		{"hottestOverWatch_h", "", "h", 1},
		{"hottestOverHot_h", over(limits.Hot_C), "h", 1},
		{"hottestOverBurn_h", over(limits.Burn_C), "h", 1},
		{"meanMax_C", "mean at most", "degC", 1},
		{"overWatch_h", "", "h", 1},
		{"overHot_h", "mean " + over(limits.Hot_C), "h", 1},
		{"overBurn_h", "mean " + over(limits.Burn_C), "h", 1},
		{"atRisk", "at risk", "share", 0},
		{"browning", "browning", "", 1},
	}}
	for o, option := range day.Options {
		for _, side := range option.Sides {
			s := side.Summary
			out.rows = append(out.rows, []any{
				day.Date, letter(o), option.Name, side.Compass, string(side.SunSide),
				s.Lit_h, s.Light_MJm2, s.Hottest_C, moment(day, s.HottestAt_h), words.Clock(s.HottestAt_h),
				s.HottestOverWatch_h, s.HottestOverHot_h, s.HottestOverBurn_h, s.MeanMax_C,
				s.OverWatch_h, s.OverHot_h, s.OverBurn_h, s.AtRisk, s.Browning,
			})
		}
	}
	return out
}

// writeDayTable writes a day for reading: what was computed, the verdicts, the summary, then the full hours.
func writeDayTable(w io.Writer, day result.Day, units words.Units, summaryOnly bool) error {
	writeHeading(w, day, units)
	writeVerdicts(w, day, units)
	fmt.Fprintf(w, "\nThe day on each side of the rows. Hours over a limit stand after the fruit that they are of: the hottest tenth of the bunch sides, then the mean. The limits are assumptions.\n\n")
	if err := summarySheet(day, units).writeTable(w, units); err != nil {
		return err
	}
	fmt.Fprintf(w, "\nThe canopy, as growers measure it; light is the share of the day's that does not reach the floor.\n\n")
	if err := canopySheet(day).writeTable(w, units); err != nil {
		return err
	}
	if day.Ranges != nil {
		if err := writeRanges(w, day, units); err != nil {
			return err
		}
	}
	if summaryOnly {
		return nil
	}
	fmt.Fprintf(w, "\nFull hours on the clock of the site, %s.\n\n", clockName(day))
	return stepSheet(day, stepsOfHour(day)).writeTable(w, units)
}

// writeHeading says which place and day was computed.
func writeHeading(w io.Writer, day result.Day, units words.Units) {
	fmt.Fprintf(w, "%s, %s, %s\n", day.Name, day.Date, clockName(day))
	if note := day.Scenario.Note; note != "" {
		fmt.Fprintln(w, note)
	}
	if source := day.Scenario.Weather.Source; source != "" {
		fmt.Fprintf(w, "Hours and place are those of %s.\n", source)
	}
	lowest, highest := math.Inf(1), math.Inf(-1)
	for _, air := range day.Air.Temperature_C {
		lowest, highest = math.Min(lowest, air), math.Max(highest, air)
	}
	air := fmt.Sprintf("Air %s to %s.", words.Quantity(lowest, "degC", 1, units), words.Quantity(highest, "degC", 1, units))
	switch day.Sun.Polar {
	case "":
		fmt.Fprintf(w, "Sun up from %s to %s, highest at %s. %s\n",
			words.Clock(day.Sun.Rise_h), words.Clock(day.Sun.Set_h), words.Clock(day.Sun.Transit_h), air)
	case "day":
		fmt.Fprintf(w, "The sun stays up all day. %s\n", air)
	default:
		fmt.Fprintf(w, "The sun stays down all day. %s\n", air)
	}
}

// writeVerdicts writes a sentence for each option and for each comparison.
func writeVerdicts(w io.Writer, day result.Day, units words.Units) {
	style := words.Style{Units: units}
	fmt.Fprintln(w)
	for i, option := range day.Options {
		fmt.Fprintf(w, "%s  %s: %s\n", letter(i), option.Name, style.Sentence(option.Verdict))
		for _, notice := range option.Notices {
			fmt.Fprintf(w, "   %s\n", style.Fault(notice))
		}
	}
	for _, comparison := range day.Comparison {
		fmt.Fprintln(w, style.Sentence(comparison))
	}
}

// stepsOfHour is how many instants apart full hours are.
func stepsOfHour(day result.Day) int { return max(int(math.Round(60/day.Step_min)), 1) }
