package main

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// frostAnswer is a night and the buds of every option in it.
type frostAnswer struct {
	Night   result.Night         `json:"night"`
	Options []result.OptionFrost `json:"options"`
}

// newFrost makes rowlight frost.
func newFrost() *cobra.Command {
	var out output
	command := &cobra.Command{
		Use:   "frost SCENARIO.json",
		Short: "The air of a spring night by height, and the buds of every option in it",
		Long: "Compares the heights of the buds of every option in the night of a scenario, without running a day. It is no\n" +
			"frost warning. A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	out.addFlags(command)
	out.addUnits(command)
	command.RunE = func(command *cobra.Command, args []string) error {
		s, err := readScenario(command, args[0])
		if err != nil {
			return err
		}
		var answer frostAnswer
		if answer.Night, answer.Options, err = sim.NewEngine().Frost(s); err != nil {
			return inputFault(err, args[0])
		}
		return out.write(command.OutOrStdout(), func(w io.Writer) error { return writeFrost(w, s, answer, out) })
	}
	return command
}

// writeFrost writes a night in the chosen format; csv holds the buds of the options.
func writeFrost(w io.Writer, s scenario.Scenario, answer frostAnswer, out output) error {
	units := out.system()
	switch out.format.value {
	case "json":
		return json.NewEncoder(w).Encode(answer)
	case "csv":
		return frostSheet(s, answer).writeCSV(w)
	}
	writeNight(w, answer.Night, units)
	fmt.Fprintln(w)
	if err := heightSheet(answer.Night).writeTable(w, units); err != nil {
		return err
	}
	fmt.Fprintln(w)
	if err := frostSheet(s, answer).writeTable(w, units); err != nil {
		return err
	}
	fmt.Fprintln(w)
	for i, option := range answer.Options {
		fmt.Fprintf(w, "%s  %s\n", letter(i), words.Style{Units: units}.Sentence(option.Verdict))
	}
	fmt.Fprintf(w, "\n%s %s\n", columnText("frost.source", sim.Terms(), units), words.Text("en", answer.Night.KillSource, nil, nil))
	return nil
}

// shownHeights is how many of the night's heights lie between two that are shown.
const shownHeights = 10

// heightSheet lists the air by height.
func heightSheet(night result.Night) sheet {
	out := sheet{columns: []column{
		{"height_m", "height", "m", 1}, {"air_C", "air", "degC", 1},
		{"weak_C", "weakest inversion", "degC", 1}, {"strong_C", "strongest", "degC", 1},
	}}
	for i := 0; i < len(night.Height_m); i += shownHeights {
		out.rows = append(out.rows, []any{night.Height_m[i], night.Air_C[i], night.Weak_C[i], night.Strong_C[i]})
	}
	return out
}

// frostSheet lists the buds of the options.
func frostSheet(s scenario.Scenario, answer frostAnswer) sheet {
	out := sheet{columns: []column{
		{"option", "option", "", 0}, {"name", "", "", 0}, {"budsLowest_m", "", "", 0}, {"buds_m", "buds at", "m", 2}, {"budsHighest_m", "", "", 0},
		{"air_C", "air", "degC", 1}, {"air_low_C", "least", "degC", 1}, {"air_high_C", "most", "degC", 1}, {"margin_K", "margin", "K", 1},
		{"killed", "killed", "share", 0}, {"killed_low", "least", "share", 0}, {"killed_high", "most", "share", 0},
	}}
	for i, f := range answer.Options {
		out.rows = append(out.rows, []any{
			letter(i), optionTitle(s.Options[i]), f.Lowest_m, f.Buds_m, f.Highest_m, f.Air.Value, f.Air.Low, f.Air.High, f.Margin.Value,
			f.Killed.Value, f.Killed.Low, f.Killed.High,
		})
	}
	return out
}

// optionTitle is the name of an option, or that of its form.
func optionTitle(o scenario.Option) string {
	if form, ok := scenario.FormByKey(o.Form); ok && o.Name == "" {
		return form.Name
	}
	return o.Name
}
