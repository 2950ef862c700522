package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"rowlight/sim/scenario"
	"rowlight/sim/verify/leaves"
)

// yardstickIntro opens the page; it takes the number of stands and the bounds.
const yardstickIntro = `# Yardstick

Made by ` + "`rowlight yardstick --seeds %[1]d --page -o web/docs/yardstick.md`" + `; do not edit. The simulation spreads leaves over a grid of cells and takes the
gap towards the sun as e^(−Ω·depth), where every cell adds to the depth what its own leaves show that way. Here rays look past the
very leaves of the same stands, one by one, as flat discs. Nothing but leaves counts: the shade of a bunch on itself is left out.

- **Gap by leaves**: share of rays that meet no leaf, %[2]d from each bunch face, from berries that see the sun past their own bunch;
  the mean over the faces of one side of the row and over %[1]d stands (seeds 1 to %[1]d).
- **Grid**: the same mean through the grid, as the simulation finds it: from the mean place of the berries of a face, with the Ω
  that each stand's own leaves set by side and direction. Rays by which Ω is set are not those of the comparison.
- **Ω**: the one number that would fit all directions of a form best (least squares on the side means). Below 1 leaves hang together,
  above 1 they avoid each other.
- **Bias**: grid less leaves, mean over the stands, in the direction in which it is largest; **rms**: root mean square of grid less
  leaves of single stands in one direction, with the sampling error subtracted in squares. The sampling error is that of the faces of
  one stand, taken in blocks of 0.45 m of row that count as independent. Allowed: %.2[3]f and %.2[4]f.
- **Hot day**: the directions of the sun every hour of the default day, over north–south and east–west rows.
- **Spell**: length of the spell in which a minute of sun on a face falls, on average over the hot day; **mean spell**: minutes of sun by
  spells. Leaves make more flecks of a minute or two than the simulation; a berry takes several minutes to warm.
- **Moment**: time between the moment at which a face comes into or out of the sun by its dome, and that by a ray through the grid. Allowed:
  %.0[5]f min.

Every direction with its errors: ` + "`rowlight yardstick --format csv`" + `.

## Forms

| form | faces a side | gap by leaves | grid, Ω = 1 | grid | Ω | worst bias | worst rms | bias, hot day | spell by leaves [min] | spell [min] | mean spell by leaves [min] | mean spell [min] | moment [min] |
|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|
`

// yardstickDirections opens the part of the page with every direction.
const yardstickDirections = `
## Directions

Gap by leaves and bias of the grid in percent, by height of the sun (lines) and by its direction from the way that the side of the row
faces (columns; positive towards the y axis of the row).
`

// writeYardstickPage writes the page of the docs.
func writeYardstickPage(w io.Writer, all []measured, seeds int) error {
	var page strings.Builder
	fmt.Fprintf(&page, yardstickIntro, seeds, yardstickRays, leaves.BiasAllowed, leaves.RMSAllowed, leaves.MomentAllowed)
	for i := range all {
		fmt.Fprintln(&page, all[i].pageLine())
	}
	page.WriteString(yardstickDirections)
	for i := range all {
		page.WriteString(all[i].pageDirections())
	}
	_, err := io.WriteString(w, page.String())
	return err
}

// pageLine is the line of one form.
func (m *measured) pageLine() string {
	r, t := &m.Report, &m.Timing
	between, even, grid := r.Means()
	return fmt.Sprintf("| %s | %.0f | %.3f | %.3f | %.3f | %.2f | %+.3f | %.3f | %+.3f | %.0f | %.0f | %.0f | %.0f | %.1f |",
		m.form.Name, r.Faces, between, even, grid, r.Clumping, r.Worst(false).Bias, r.WorstRMS(), r.Worst(true).Bias,
		t.Leaves.LitMinute_min, t.Field.LitMinute_min, t.Leaves.Mean_min, t.Field.Mean_min, t.Moment_min)
}

// pageDirections is the table of one form: heights down, azimuths of the left and then of the right side across.
func (m *measured) pageDirections() string {
	var heights, turns []float64
	at := map[[3]float64]leaves.Direction{}
	for _, d := range m.Report.Directions {
		if d.Day {
			continue
		}
		at[[3]float64{float64(d.Side), d.Elevation_deg, d.Azimuth_deg}] = d
		heights, turns = append(heights, d.Elevation_deg), append(turns, d.Azimuth_deg)
	}
	heights, turns = sortedOnce(heights), sortedOnce(turns)
	var b strings.Builder
	fmt.Fprintf(&b, "\n### %s\n\n|", m.form.Name)
	for _, side := range scenario.Sides {
		for _, turn := range turns {
			fmt.Fprintf(&b, " | %s %+.0f°", sideNames[side], turn)
		}
	}
	b.WriteString(" |\n|--:" + strings.Repeat("|--:", 2*len(turns)) + "|\n")
	for _, height := range heights {
		fmt.Fprintf(&b, "| %.0f°", height)
		for _, side := range scenario.Sides {
			for _, turn := range turns {
				d := at[[3]float64{float64(side), height, turn}]
				fmt.Fprintf(&b, " | %.1f %s", 100*d.Leaves, percentBias(d.Bias))
			}
		}
		b.WriteString(" |\n")
	}
	return b.String()
}

// percentBias writes a bias in percent with its sign, none where it is zero.
func percentBias(bias float64) string {
	if math.Abs(bias) < 0.0005 {
		return "0.0"
	}
	return fmt.Sprintf("%+.1f", 100*bias)
}

// sortedOnce is every value once, rising.
func sortedOnce(values []float64) []float64 {
	slices.Sort(values)
	return slices.Compact(values)
}
