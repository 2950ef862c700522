package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// seasonCommand is the flags of rowlight season.
type seasonCommand struct {
	output output
	span   span
}

// newSeason makes rowlight season.
func newSeason() *cobra.Command {
	var flags seasonCommand
	command := &cobra.Command{
		Use:   "season SCENARIO.json",
		Short: "Hot hours of the fruit over a season, for every option and side, with worst days and heat waves",
		Long: "Computes every day from fruit set to harvest, or from --from to --to, with canopy and berries as far as they have\n" +
			"grown. The table shows sums, worst days and a calendar of the hottest hours; csv lists every day, json all.\n" +
			"A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.output.addFlags(command)
	flags.output.addUnits(command)
	flags.span.addFlags(command)
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads a scenario, computes its season and writes it.
func (c seasonCommand) run(command *cobra.Command, path string) error {
	if err := errors.Join(c.span.check(), c.span.shard.check(&c.output)); err != nil {
		return err
	}
	s, err := readScenario(command, path)
	if err != nil {
		return err
	}
	c.span.whole = true
	sweep, err := c.span.sweep(&s, command.ErrOrStderr())
	if err != nil {
		return err
	}
	w := sim.NewEngine().Sweep(s, sweep)
	if c.output.format.value == "csv" {
		days, err := c.days(command, s, w, &sweep)
		if err != nil {
			return inputFault(err, path)
		}
		return c.output.write(command.OutOrStdout(), func(w io.Writer) error { return days.writePiece(w, c.span.shard) })
	}
	season, err := w.Whole(command.Context().Err, onTerminal(command.ErrOrStderr()))
	if err != nil {
		return inputFault(err, path)
	}
	return c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.writeSeason(w, season) })
}

// writeSeason writes a season in the chosen format.
func (c seasonCommand) writeSeason(w io.Writer, season *result.Season) error {
	if c.output.format.value == "json" {
		return json.NewEncoder(w).Encode(season)
	}
	units := c.output.system()
	first, last := season.Days[0], season.Days[len(season.Days)-1]
	fmt.Fprintf(w, "%s, %d days from %s to %s\n", season.Name, len(season.Days), first.Date[5:], last.Date[5:])
	if note := season.Scenario.Note; note != "" {
		fmt.Fprintln(w, note)
	}
	for _, wave := range season.Waves {
		fmt.Fprintf(w, "Heat wave of %d days from %s to %s, air up to %s.\n", wave.Days, wave.From[5:], wave.To[5:], words.Quantity(wave.AirMax_C, "degC", 1, units))
	}
	fmt.Fprintf(w, "\nSums over all days, means over the fruit; the limits are assumptions.\n\n")
	if err := seasonSheet(season, units).writeTable(w, units); err != nil {
		return err
	}
	fmt.Fprintf(w, "\nThe hottest fruit by day and hour: + over %s, # over %s, · below.\n",
		words.Quantity(season.Scenario.Limits.Hot_C, "degC", -1, units), words.Quantity(season.Scenario.Limits.Burn_C, "degC", -1, units))
	for o, option := range season.Options {
		for _, side := range option.Sides {
			fmt.Fprintf(w, "\n%s  %s side        0     6     12    18\n", letter(o), side.Compass)
			writeCalendar(w, season, side)
		}
	}
	return nil
}

// writeCalendar writes a line for each day on which fruit is over the hot limit at some hour.
func writeCalendar(w io.Writer, season *result.Season, side result.SeasonSide) {
	limits := season.Scenario.Limits
	for i, day := range side.Days {
		if day.Hottest_C <= limits.Hot_C {
			continue
		}
		var hours strings.Builder
		for _, temperature := range day.Hourly_C {
			switch {
			case temperature > limits.Burn_C:
				hours.WriteString("#")
			case temperature > limits.Hot_C:
				hours.WriteString("+")
			default:
				hours.WriteString("·")
			}
		}
		fmt.Fprintf(w, "   %s %-9s %s\n", season.Days[i].Date[5:], season.Days[i].Stage, hours.String())
	}
}

// seasonSheet lists the sums of every option and side.
func seasonSheet(season *result.Season, units words.Units) sheet {
	over := "over " + words.Quantity(season.Scenario.Limits.Hot_C, "degC", -1, units)
	table := sheet{columns: []column{
		{"", "option", "", 0}, {"", "side", "", 0}, {"", over, "h", 1}, {"", "heat over it", "K h", 1}, {"", "at risk", "share", 0}, {"", "worst days", "", 0},
	}}
	for o, option := range season.Options {
		for _, side := range option.Sides {
			var worst []string
			for _, i := range side.Worst {
				worst = append(worst, season.Days[i].Date[5:])
			}
			table.rows = append(table.rows, []any{letter(o), side.Compass, side.OverHot_h, side.Heat_Kh, side.AtRisk, strings.Join(worst, ", ")})
		}
	}
	return table
}

// days lists every option, day and side, or the shard of them that is asked for.
func (c seasonCommand) days(command *cobra.Command, s scenario.Scenario, w *sim.Sweeping, sweep *sim.Sweep) (sheet, error) {
	table := sheet{columns: []column{
		{"date", "", "", 0}, {"stage", "", "", 0}, {"airMax_C", "", "degC", 1}, {"option", "", "", 0}, {"name", "", "", 0}, {"side", "", "", 0}, {"sunSide", "", "", 0},
		{"overWatch_h", "", "h", 1}, {"overHot_h", "", "h", 1}, {"overBurn_h", "", "h", 1}, {"heatOverHot_K_h", "", "K h", 1},
		{"atRisk", "", "share", 0}, {"hottest_C", "", "degC", 1}, {"hottestAt_h", "", "h", 1},
	}}
	var parts []result.SeasonPart
	known := func(part result.SeasonPart) { parts = append(parts, part) }
	single := pick(c.span.shard, sweep.Courses(s, 1))
	if err := w.Course(single, command.Context().Err, known, onTerminal(command.ErrOrStderr())); err != nil {
		return table, err
	}
	for _, part := range parts {
		day, err := w.Day(part.From)
		if err != nil {
			return table, err
		}
		o := s.Options[part.Option]
		for side, of := range part.Sides {
			at := of.Days[0]
			azimuth := o.Rows.SideAzimuth(scenario.Side(side))
			table.rows = append(table.rows, []any{
				day.Date, day.Stage, day.AirMax_C, letter(part.Option), o.Called(), scenario.Compass(azimuth),
				string(o.Rows.SunSideOf(scenario.Side(side), s.Site.Latitude_deg)),
				at.OverWatch_h, at.OverHot_h, at.OverBurn_h, at.Heat_Kh, at.AtRisk, at.Hottest_C, at.HottestAt_h,
			})
		}
	}
	return table, nil
}
