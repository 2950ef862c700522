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

// cropAnswer is the crop and the work of one option.
type cropAnswer struct {
	Option string            `json:"option"`
	Name   string            `json:"name"`
	Crop   result.OptionCrop `json:"crop"`
	Work   result.OptionWork `json:"work"`
}

// newCrop makes rowlight crop.
func newCrop() *cobra.Command {
	var out output
	command := &cobra.Command{
		Use:   "crop SCENARIO.json",
		Short: "Nodes, shoots, bunches, yield, vigour and work of every option",
		Long: "Counts the crop of every option from its nodes and says whether the vines can carry it, without running a day.\n" +
			"It promises nothing. A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	out.addFlags(command)
	out.addUnits(command)
	command.RunE = func(command *cobra.Command, args []string) error {
		s, err := readScenario(command, args[0])
		if err != nil {
			return err
		}
		answers, err := answerCrop(s)
		if err != nil {
			return err
		}
		return out.write(command.OutOrStdout(), func(w io.Writer) error {
			switch out.format.value {
			case "json":
				return json.NewEncoder(w).Encode(answers)
			case "csv":
				return cropSheet(answers).writeCSV(w)
			}
			return writeCrop(w, answers, out.system())
		})
	}
	return command
}

// answerCrop counts the crop of every option.
func answerCrop(s scenario.Scenario) ([]cropAnswer, error) {
	crops, works, err := sim.NewEngine().Crop(s)
	if err != nil {
		return nil, err
	}
	var answers []cropAnswer
	for i := range crops {
		answers = append(answers, cropAnswer{letter(i), optionTitle(s.Options[i]), crops[i], works[i]})
	}
	return answers, nil
}

// writeCrop writes the counts and what they mean for reading.
func writeCrop(w io.Writer, answers []cropAnswer, units words.Units) error {
	fmt.Fprintf(w, "By your own numbers; yields are yours to judge, not a promise.\n\n")
	if err := cropSheet(answers).writeTable(w, units); err != nil {
		return err
	}
	fmt.Fprintln(w)
	for _, answer := range answers {
		fmt.Fprintf(w, "%s  %s\n", answer.Option, answer.Name)
		writeCropReasons(w, answer.Crop, units)
	}
	fmt.Fprintf(w, "\n%s\n", columnText("crop.source", sim.Terms(), units))
	return nil
}

// cropSheet lists the counts of the options.
func cropSheet(answers []cropAnswer) sheet {
	out := sheet{columns: []column{
		{"option", "option", "", 0}, {"name", "", "", 0}, {"vinesPerHa", "", "", 0}, {"spurs", "spurs", "", 0}, {"canes", "canes", "", 0}, {"nodesPerVine", "nodes a vine", "", 0}, {"balancedNodes", "balanced", "", 0},
		{"shootsPerVine", "shoots", "", 0}, {"bunchesPerVine", "bunches", "", 0}, {"bunch_g", "bunch", "g", 0}, {"perVine_kg", "a vine", "kg", 1},
		{"perHa_t", "yield", "t/ha", 1}, {"perHa_low_t", "least", "t/ha", 1}, {"perHa_high_t", "most", "t/ha", 1}, {"perAcre_ton", "", "", 0},
		{"prunings_kg_per_m", "prunings", "kg/m", 2}, {"yieldToPrunings", "yield to prunings", "", 1}, {"leafToFruit_m2_per_kg", "leaf to fruit", "m2/kg", 1},
		{"work_h_per_ha", "work", "h/ha", 0},
	}}
	for _, a := range answers {
		c := a.Crop
		out.rows = append(out.rows, []any{
			a.Option, a.Name, c.VinesPerHa, c.Spurs, c.Canes, c.NodesPerVine, c.BalancedNodes, c.ShootsPerVine, c.BunchesPerVine, c.Bunch_g, c.PerVine_kg.Value,
			c.PerHa_t.Value, c.PerHa_t.Low, c.PerHa_t.High, c.PerAcre_ton.Value, c.Prunings_kgm, c.YieldToPrunings.Value, c.LeafToFruit_m2kg.Value,
			a.Work.Total.Value,
		})
	}
	return out
}
