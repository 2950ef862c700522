package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
	"rowlight/sim/words"
)

// dayCommand is the flags of rowlight day.
type dayCommand struct {
	output   output
	measured measuredDay
	ranges   dayRanges
	summary  bool
}

// newDay makes rowlight day.
func newDay() *cobra.Command {
	var flags dayCommand
	command := &cobra.Command{
		Use:   "day SCENARIO.json",
		Short: "Light and fruit temperature over one day, for every option and side",
		Long: "Computes the day of a scenario: for every option, side of the row and 5 minutes the share of fruit in the\n" +
			"sun, the light on it and its temperature. The table shows a summary and full hours; csv and json hold\n" +
			"every instant. A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.output.addFlags(command)
	flags.output.addUnits(command)
	flags.measured.addFlags(command)
	flags.ranges.addFlags(command)
	command.Flags().BoolVar(&flags.summary, "summary", false, "only the summary, for table and csv")
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads a scenario, computes its day and writes it.
func (c dayCommand) run(command *cobra.Command, path string) error {
	if err := c.measured.check(); err != nil {
		return err
	}
	if err := c.ranges.check(c.output.format.value); err != nil {
		return err
	}
	s, err := readScenario(command, path)
	if err != nil {
		return err
	}
	if c.measured.file != "" {
		if err := c.measured.into(&s, command.ErrOrStderr()); err != nil {
			return err
		}
	}
	day, err := c.ranges.compute(command.Context(), s, path)
	if err != nil {
		return err
	}
	return c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.writeDay(w, day) })
}

// computeDay runs the simulation until it is done or the context is.
func computeDay(ctx context.Context, s scenario.Scenario, source string) (result.Day, error) {
	run, err := sim.NewEngine().Day(s, ctx.Err, nil)
	if err != nil {
		return result.Day{}, inputFault(err, source)
	}
	return run.Result, nil
}

// inputFault tells a weather that the simulation cannot run under as a fault of the input.
func inputFault(err error, source string) error {
	if fault, ok := weather.FaultIn(err); ok {
		return &faultsError{source, []scenario.Fault{fault}}
	}
	return err
}

// writeDay writes a day in the chosen format.
func (c dayCommand) writeDay(w io.Writer, day result.Day) error {
	switch c.output.format.value {
	case "json":
		return json.NewEncoder(w).Encode(day)
	case "csv":
		if c.summary {
			return summarySheet(day, words.Metric).writeCSV(w)
		}
		return stepSheet(day, 1).writeCSV(w)
	default:
		return writeDayTable(w, day, c.output.system(), c.summary)
	}
}

// letter is how an option is called in every output: A, B, C, D.
func letter(option int) string { return string(rune('A' + option)) }

// moment is a clock hour of the day as a moment on the clock of the site; hour 24 is midnight of the next date.
func moment(day result.Day, hour float64) time.Time {
	date, err := time.Parse(time.DateOnly, day.Date)
	if err != nil { // the scenario was checked
		panic(err)
	}
	zone := time.FixedZone("", int(day.UTCOffset_h*3600))
	midnight := time.Date(date.Year(), date.Month(), date.Day(), 0, 0, 0, 0, zone)
	return midnight.Add(time.Duration(hour * float64(time.Hour)).Round(time.Second))
}

// clockName names the clock of a day, as UTC-08:00.
func clockName(day result.Day) string { return fmt.Sprintf("UTC%s", moment(day, 0).Format("-07:00")) }
