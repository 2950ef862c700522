package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// weighCommand is the flags of rowlight weigh.
type weighCommand struct {
	output  output
	ranges  dayRanges
	weights string
	summary bool
}

// newWeigh makes rowlight weigh.
func newWeigh() *cobra.Command {
	var flags weighCommand
	command := &cobra.Command{
		Use:   "weigh SCENARIO.json",
		Short: "Heat, light, frost, crop and work of every option in one table",
		Long: "Computes the day of a scenario, its spring night, and the crop and the work of every option, and puts them side\n" +
			"by side with their ranges and sources. Options are put in order only by weights: those of the scenario, or\n" +
			"--weights heat=1,light=0,frost=0.5,crop=1,work=0. A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.output.addFlags(command)
	flags.output.addUnits(command)
	flags.ranges.addFlags(command)
	command.Flags().StringVar(&flags.weights, "weights", "", "what matters, each from 0 to 1, as heat=1,crop=0.5; more-light or less-light says what is wished")
	command.Flags().BoolVar(&flags.summary, "summary", false, "only night, numbers and order, for table")
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads a scenario, weighs its options and writes what comes of it.
func (c weighCommand) run(command *cobra.Command, path string) error {
	if err := c.ranges.check("json"); err != nil {
		return err
	}
	s, err := readScenario(command, path)
	if err != nil {
		return err
	}
	if c.weights != "" {
		if s.Weights, err = parseWeights(c.weights); err != nil {
			return err
		}
	}
	day, err := c.ranges.compute(command.Context(), s, path)
	if err != nil {
		return err
	}
	sim.FillWeighing(day.Weighing, &day)
	return c.output.write(command.OutOrStdout(), func(w io.Writer) error {
		switch c.output.format.value {
		case "json":
			return json.NewEncoder(w).Encode(day.Weighing)
		case "csv":
			return weighSheet(day).writeCSV(w)
		default:
			return writeWeighing(w, day, c.output.system(), c.summary)
		}
	})
}

// parseWeights reads heat=1,crop=0.5,less-light.
func parseWeights(text string) (scenario.Weights, error) {
	weights := scenario.Weights{LightWish: scenario.MoreLight}
	columns := map[string]*float64{
		"heat": &weights.Heat, "light": &weights.Light, "frost": &weights.Frost, "crop": &weights.Crop, "work": &weights.Work,
	}
	for part := range strings.SplitSeq(text, ",") {
		key, number, _ := strings.Cut(strings.TrimSpace(part), "=")
		switch target := columns[key]; {
		case key == "more-light":
			weights.LightWish = scenario.MoreLight
		case key == "less-light":
			weights.LightWish = scenario.LessLight
		case target == nil:
			return weights, fmt.Errorf("--weights: %q is none of heat, light, frost, crop, work, more-light, less-light", key)
		default:
			value, err := strconv.ParseFloat(number, 64)
			if err != nil || !(value >= 0 && value <= 1) {
				return weights, fmt.Errorf("--weights: %s=%s: give a number from 0 to 1", key, number)
			}
			*target = value
		}
	}
	return weights, nil
}

// weighedColumn is one number of an option with its range.
type weighedColumn struct {
	key, title, unit string
	decimals         int
	of               func(*result.Weighed) result.Estimate
}

// weighedColumns are the columns of the table.
var weighedColumns = []weighedColumn{
	{"hottestFruit_C", "hottest fruit", "degC", 1, func(o *result.Weighed) result.Estimate { return o.Heat }},
	{"light_MJm2", "light on fruit", "MJ/m²", 1, func(o *result.Weighed) result.Estimate { return o.Light }},
	{"airAtBuds_C", "air at buds", "degC", 1, func(o *result.Weighed) result.Estimate { return o.Frost.Air }},
	{"budsKilled", "buds killed", "share", 0, func(o *result.Weighed) result.Estimate { return o.Frost.Killed }},
	{"yield_t_per_ha", "crop", "t/ha", 1, func(o *result.Weighed) result.Estimate { return o.Crop.PerHa_t }},
	{"work_h_per_ha", "work by hand", "h/ha", 0, func(o *result.Weighed) result.Estimate { return o.Work.Total }},
	{"cropCoefficient", "crop coefficient", "", 2, func(o *result.Weighed) result.Estimate { return o.Water.CropCoefficient }},
}

// weighSheet lists every option with every digit: each number between its low and its high.
func weighSheet(day result.Day) sheet {
	out := sheet{columns: []column{{"option", "", "", 0}, {"name", "", "", 0}}}
	for _, c := range weighedColumns {
		out.columns = append(out.columns, column{c.key + "_low", "", "", 0}, column{c.key, "", "", 0}, column{c.key + "_high", "", "", 0})
	}
	out.columns = append(out.columns, column{"shadedAtNoon", "", "", 0}, column{"over35_h", "", "", 0}, column{"place", "", "", 0})
	for i := range day.Weighing.Options {
		o := &day.Weighing.Options[i]
		row := []any{letter(i), o.Name}
		for _, c := range weighedColumns {
			e := c.of(o)
			row = append(row, e.Low, e.Value, e.High)
		}
		out.rows = append(out.rows, append(row, o.Water.Shaded, o.Colour_h, placeOf(day.Weighing, i)))
	}
	return out
}

// placeOf is the place of an option in the order of the weights, from 1; empty where there is none.
func placeOf(w *result.Weighing, option int) string {
	for i, placed := range w.Order {
		if placed.Option == option {
			return strconv.Itoa(i + 1)
		}
	}
	return ""
}

// withRange writes a number, and its range in brackets where it has one.
func (c weighedColumn) withRange(e result.Estimate, units words.Units) string {
	write := func(value float64) string {
		converted, _ := words.Convert(value, c.unit, units)
		return words.Number(converted, c.decimals)
	}
	if e.Low == e.High {
		return write(e.Value)
	}
	return fmt.Sprintf("%s (%s to %s)", write(e.Value), write(e.Low), write(e.High))
}
