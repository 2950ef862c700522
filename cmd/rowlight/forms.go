package main

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
)

// newForms makes rowlight forms.
func newForms() *cobra.Command {
	var out output
	var sheet, measures bool
	command := &cobra.Command{
		Use:   "forms",
		Short: "The training forms of the catalogue",
		Long: "Lists the training forms: the key for a scenario, the trade name, the growth habit that it suits and its main\n" +
			"sizes. json holds every size and where it comes from. --sheet draws every form end-on, with heights, as SVG;\n" +
			"--measures measures the canopy of every form as growers do, as a page of Markdown.",
		Args: cobra.NoArgs,
	}
	out.addFlags(command)
	out.addUnits(command)
	command.Flags().BoolVar(&sheet, "sheet", false, "draw the cross-section of every form, as SVG")
	command.Flags().BoolVar(&measures, "measures", false, "measure the canopy of every form, as Markdown")
	command.MarkFlagsMutuallyExclusive("sheet", "measures", "format")
	command.RunE = func(command *cobra.Command, _ []string) error {
		return out.write(command.OutOrStdout(), func(w io.Writer) error {
			switch {
			case sheet:
				return drawForms(w)
			case measures:
				return measureForms(w)
			}
			return writeForms(w, out)
		})
	}
	return command
}

// writeForms writes the catalogue in the chosen format.
func writeForms(w io.Writer, out output) error {
	forms := scenario.Forms()
	switch out.format.value {
	case "json":
		return json.NewEncoder(w).Encode(forms)
	case "csv":
		return formSheet(forms).writeCSV(w)
	}
	if err := formSheet(forms).writeTable(w, out.system()); err != nil {
		return err
	}
	for _, form := range forms {
		fmt.Fprintf(w, "\n%s: %s\n", form.Name, form.Line)
		for _, source := range form.Sources {
			fmt.Fprintf(w, "  %s\n", source)
		}
	}
	return nil
}

// formSheet lists the main sizes of each form.
func formSheet(forms []scenario.Form) sheet {
	rows := sheet{columns: []column{
		{"key", "key", "", 0},
		{"name", "name", "", 0},
		{"habit", "suits", "", 0},
		{"fruitingWire_m", "fruiting wire", "m", 2},
		{"rowSpacing_m", "rows", "m", 2},
		{"vineSpacing_m", "vines", "m", 2},
		{"shootsPerMetre", "shoots", "1/m", 1},
		{"leafArea_m2_per_m", "leaf area", "m2/m", 1},
		{"line", "", "", 0},
	}}
	for _, form := range forms {
		o := form.Option
		rows.rows = append(rows.rows, []any{form.Key, form.Name, form.Habit, highestFruitingWire(o),
			o.Rows.RowSpacing_m, o.Rows.VineSpacing_m, o.Shoots.PerMetre, o.Leaves.Area_m2_per_m, form.Line})
	}
	return rows
}

// highestFruitingWire is the height of the highest wire that carries arms [m].
func highestFruitingWire(o scenario.Option) float64 {
	highest := 0.0
	for _, wire := range o.Trellis.Wires {
		if wire.Role == scenario.Fruiting {
			highest = max(highest, wire.Height_m)
		}
	}
	return highest
}
