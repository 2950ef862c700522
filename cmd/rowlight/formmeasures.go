package main

import (
	"fmt"
	"io"
	"strings"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// formsPage is the text around the tables of the page of forms.
const (
	formsIntro = `# Training forms

Made by ` + "`rowlight forms --measures`" + `; do not edit. Every form at the sizes of the catalogue, one vine drawn (seed %d).
Heights and widths hold the middle of the leaves: 90 %% across the row, 95 %% upwards.
`
	sizesIntro = `
## Sizes

Canopy is counted per metre of fruiting wire: a row with two such wires has two metres of canopy for each metre. Where arms
spread from the head it is counted per metre of the row.
`
	canopyIntro = `
## The canopy as growers measure it

Point quadrat: %d rods pushed across each curtain at the height of its fruit. For cool regions 40 %% gaps, 1 to 1.5 leaf layers
and 60 %% exterior bunches are advised (Smart & Robinson 1991); in hot ones more leaf is welcome. Exposed leaf is the outside of
the canopy by tape, both sides and the top of each curtain, less its gaps. Height to gap is the height of the canopy over the free
width between rows (about 1 advised, from memory); a dash means less than half a metre. Leaf to fruit: 0.8 to 1.2 m²/kg is advised for
single canopies, 0.5 to 0.8 for divided ones (Kliewer & Dokoozlian 2005). Leaf density is what follows from all this; 3 to 7 m²/m³
is published for the canopies of that trial, and a wall held between wires is denser here.
`
	formSourcesIntro = `
## Where the sizes come from
`
)

// measureForms writes a page with the sizes and canopy measures of every form and their sources.
func measureForms(w io.Writer) error {
	forms, err := buildForms()
	if err != nil {
		return err
	}
	fmt.Fprintf(w, formsIntro, scenario.Default().Seed)
	fmt.Fprint(w, sizesIntro)
	writeMarkdown(w, "form | suits | rows × vines [m] | arms at [m] | fruit [m] | top [m] | width [m] | shoots per metre | leaf area [m²/m] | leaf area [m²/ha]", func(row func(string, ...any)) {
		for _, form := range forms {
			o, m := form.Option, form.stand.Measure()
			low, high := o.ArmHeights()
			row("%s | %s | %g × %g | %s | %s | %.2f | %.2f | %.1f | %.1f | %.0f", form.Name, form.Habit, o.Rows.RowSpacing_m, o.Rows.VineSpacing_m,
				heights(low, high), fruitHeights(form.stand), m.Top_m, m.Width_m, m.ShootsPerMetre, m.LeafArea_m2_per_m, hundreds(m.LeafArea_m2_per_ha))
		}
	})
	fmt.Fprintf(w, canopyIntro, training.FieldPushes)
	writeMarkdown(w, "form | leaf layers | gaps [%] | exterior bunches [%] | interior leaves [%] | exposed leaf [m²/ha] | height to gap | leaf to fruit [m²/kg] | leaf density [m²/m³]", func(row func(string, ...any)) {
		for _, form := range forms {
			m, q := form.stand.Measure(), form.stand.PointQuadrat(training.FieldPushes)
			ratio := "–"
			if m.HeightToGap > 0 {
				ratio = fmt.Sprintf("%.2f", m.HeightToGap)
			}
			row("%s | %.1f | %.0f | %.0f | %.0f | %.0f | %s | %.2f | %.1f", form.Name, q.LeafLayers, 100*q.Gaps, 100*m.Exterior,
				100*q.InteriorLeaves, hundreds(m.ExposedLeaf_m2_per_ha), ratio, m.LeafToFruit_cm2_per_g/10, m.Density_m2_per_m3)
		}
	})
	fmt.Fprint(w, formSourcesIntro)
	for _, form := range forms {
		fmt.Fprintf(w, "\n### %s\n\n%s Key: `%s`.\n\n", form.Name, form.Line, form.Key)
		for _, source := range form.Sources {
			fmt.Fprintf(w, "- %s\n", source)
		}
	}
	return nil
}

// writeMarkdown writes a table whose first two columns are to the left.
func writeMarkdown(w io.Writer, head string, fill func(row func(format string, values ...any))) {
	columns := strings.Count(head, "|")
	fmt.Fprintf(w, "\n| %s |\n|---|---|%s\n", head, strings.Repeat("--:|", columns-1))
	fill(func(format string, values ...any) { fmt.Fprintf(w, "| "+format+" |\n", values...) })
}

// heights is one height or the range of two [m].
func heights(low, high float64) string {
	if high-low < 0.005 {
		return fmt.Sprintf("%.2f", low)
	}
	return fmt.Sprintf("%.2f–%.2f", low, high)
}

// fruitHeights are the fruit zones of a stand from below [m].
func fruitHeights(stand *training.Stand) string {
	var zones []string
	for _, zone := range stand.FruitZones() {
		zones = append(zones, heights(zone.Bottom_m, zone.Top_m))
	}
	return strings.Join(zones, ", ")
}

// hundreds rounds an area of a hectare to what its measurement is worth.
func hundreds(area float64) float64 { return float64(int(area/100+0.5)) * 100 }
