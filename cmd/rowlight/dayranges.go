package main

import (
	"context"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// dayRanges is the flags of rowlight day that ask how far its numbers may be off.
type dayRanges struct {
	wanted bool
	draws  int
}

// The numbers of draws that a user may ask for, and that of one who does not.
const (
	leastDraws = 20
	mostDraws  = 2000
	usualDraws = 100
)

func (r *dayRanges) addFlags(command *cobra.Command) {
	command.Flags().BoolVar(&r.wanted, "ranges", false, "also how far the numbers may be off, for table and json")
	command.Flags().IntVar(&r.draws, "draws", usualDraws, "draws of the uncertain inputs that the ranges come from")
}

// check tells what does not go together.
func (r *dayRanges) check(format string) error {
	if r.draws < leastDraws || r.draws > mostDraws {
		return fmt.Errorf("--draws %d is outside %d to %d", r.draws, leastDraws, mostDraws)
	}
	if r.wanted && format == "csv" {
		return fmt.Errorf("--ranges has no place in csv: choose --format table or json")
	}
	return nil
}

// compute runs a day, and its ranges if they are wanted.
func (r *dayRanges) compute(ctx context.Context, s scenario.Scenario, source string) (result.Day, error) {
	if !r.wanted {
		return computeDay(ctx, s, source)
	}
	engine := sim.NewEngine()
	run, err := engine.Day(s, ctx.Err, nil)
	if err != nil {
		return result.Day{}, inputFault(err, source)
	}
	if run.Result.Ranges, err = engine.Ranges(s, run, r.draws, ctx.Err, nil); err != nil {
		return result.Day{}, inputFault(err, source)
	}
	run.Result.Ranges.Inputs = words.Style{}.Inputs(run.Result.Ranges.Inputs)
	return run.Result, nil
}

// writeRanges writes the ranges of a day for reading.
func writeRanges(w io.Writer, day result.Day, units words.Units) error {
	fmt.Fprintf(w, "\nHow far the numbers may be off, by %d draws of the uncertain inputs: four fifths of the draws lie between\nlow and high, whose standard error is given. The draws are the same for all options.\n\n", day.Ranges.Draws)
	for _, sheet := range rangeSheets(day, units) {
		if err := sheet.writeTable(w, units); err != nil {
			return err
		}
		fmt.Fprintln(w)
	}
	if len(day.Ranges.Differences) > 0 {
		fmt.Fprintf(w, "Against the compared option, each on its worse side:\n\n")
		for _, sheet := range differenceSheets(day, units) {
			if err := sheet.writeTable(w, units); err != nil {
				return err
			}
			fmt.Fprintln(w)
		}
	}
	fmt.Fprintf(w, "The ranges of the inputs:\n\n")
	return inputSheet(day).writeTable(w, units)
}

// inputSheet lists the inputs that were drawn.
func inputSheet(day result.Day) sheet {
	out := sheet{columns: []column{
		{"", "input", "", 0}, {"", "low", "", 2}, {"", "usual", "", 2}, {"", "high", "", 2}, {"", "unit", "", 0}, {"", "where from", "", 0},
	}}
	for _, in := range day.Ranges.Inputs {
		out.rows = append(out.rows, []any{in.Name, in.Low, in.Usual, in.High, in.Unit, in.Source})
	}
	return out
}
