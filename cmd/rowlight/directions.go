package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/words"
)

// directionsCommand is the flags of rowlight rows.
type directionsCommand struct {
	output   output
	span     span
	step_deg float64
}

// newDirections makes rowlight rows.
func newDirections() *cobra.Command {
	var flags directionsCommand
	command := &cobra.Command{
		Use:   "rows SCENARIO.json",
		Short: "Which way the rows should run: heat and light on both sides, for every row azimuth",
		Long: "Turns the rows of every option through the compass, its own direction among them, and computes the day of\n" +
			"the scenario, or every day of a span, at each. Hours, light and degree-hours are means per day and over\n" +
			"the fruit of a side; fruit at risk is that by the worst day. A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.output.addFlags(command)
	flags.output.addUnits(command)
	flags.span.addFlags(command)
	command.Flags().Float64Var(&flags.step_deg, "step", 5, "degrees from one azimuth to the next")
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads a scenario, turns its rows and writes what comes of it.
func (c directionsCommand) run(command *cobra.Command, path string) error {
	if err := errors.Join(c.span.check(), c.span.shard.check(&c.output)); err != nil {
		return err
	}
	if c.step_deg < 1 || c.step_deg > 90 {
		return fmt.Errorf("--step %g is outside 1 to 90", c.step_deg)
	}
	s, err := readScenario(command, path)
	if err != nil {
		return err
	}
	sweep, err := c.span.sweep(&s, command.ErrOrStderr())
	if err != nil {
		return err
	}
	rows := make([][]result.Direction, len(s.Options))
	drawn := func(option int, d result.Direction) { rows[option] = append(rows[option], d) }
	parts := pick(c.span.shard, sweep.Turns(s, c.step_deg))
	if err := sim.NewEngine().Sweep(s, sweep).Turn(parts, command.Context().Err, drawn, onTerminal(command.ErrOrStderr())); err != nil {
		return inputFault(err, path)
	}
	out := sim.NewDirections(s, sweep, c.step_deg, rows)
	return c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.writeDirections(w, out) })
}

// writeDirections writes the answer in the chosen format.
func (c directionsCommand) writeDirections(w io.Writer, out *result.Directions) error {
	switch c.output.format.value {
	case "json":
		return json.NewEncoder(w).Encode(out)
	case "csv":
		return azimuthSheet(out, words.Metric).writePiece(w, c.span.shard)
	}
	units := c.output.system()
	if out.Days == 1 {
		fmt.Fprintf(w, "%s, %s\n", out.Name, out.From)
	} else {
		fmt.Fprintf(w, "%s, %d days from %s to %s\n", out.Name, out.Days, out.From, out.To)
	}
	if note := out.Scenario.Note; note != "" {
		fmt.Fprintln(w, note)
	}
	style := words.Style{Units: units}
	fmt.Fprintln(w)
	for i, option := range out.Options {
		fmt.Fprintf(w, "%s  %s\n", letter(i), style.Sentence(option.TradeOff))
	}
	fmt.Fprintf(w, "%s\n\nPer day, means over the fruit of a side; the limits are assumptions.\n\n", style.Sentence(out.Yours))
	return azimuthSheet(out, units).writeTable(w, units)
}
