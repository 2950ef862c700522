package main

import (
	"fmt"
	"io"
	"strings"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// writeWeighing writes the options side by side for reading: table, sentences, order, where each column is from.
func writeWeighing(w io.Writer, day result.Day, units words.Units, summaryOnly bool) error {
	writeNight(w, day.Weighing.Night, units)
	fmt.Fprintf(w, "Yields are yours to judge, not a promise.\n\n")
	out := sheet{columns: []column{{"", "", "", 0}}}
	out.columns[0].title = "per option"
	for i := range day.Weighing.Options {
		out.columns = append(out.columns, column{"", letter(i) + "  " + day.Weighing.Options[i].Name, "", 0})
	}
	for _, c := range weighedColumns {
		_, unit := words.Convert(0, c.unit, units)
		row := []any{heading(c.title, unit)}
		for i := range day.Weighing.Options {
			row = append(row, c.withRange(c.of(&day.Weighing.Options[i]), units))
		}
		out.rows = append(out.rows, row)
	}
	for _, more := range []struct {
		title string
		of    func(*result.Weighed) string
	}{
		{"ground in shade at noon", func(o *result.Weighed) string { return words.Quantity(o.Water.Shaded, "share", 0, units) }},
		{"fruit over " + words.Quantity(day.Weighing.Terms["colourLimit"], "degC", 0, units), func(o *result.Weighed) string { return words.Quantity(o.Colour_h, "h", 1, units) }},
	} {
		row := []any{more.title}
		for i := range day.Weighing.Options {
			row = append(row, more.of(&day.Weighing.Options[i]))
		}
		out.rows = append(out.rows, row)
	}
	if err := out.writeTable(w, units); err != nil {
		return err
	}
	if !summaryOnly {
		writeReasons(w, day.Weighing, units)
	}
	writeOrder(w, day.Weighing, day.Scenario.Weights)
	if !summaryOnly {
		writeColumnSources(w, day.Weighing, units)
	}
	return nil
}

// writeColumnSources says of every column what it holds and where it is from.
func writeColumnSources(w io.Writer, weighing *result.Weighing, units words.Units) {
	fmt.Fprintln(w, "\nWhere the columns are from:")
	for _, key := range []string{"heat", "light", "frost", "crop", "work", "water", "colour"} {
		fmt.Fprintf(w, "  %s. %s %s\n", columnText(key, weighing.Terms, units), columnText(key+".says", weighing.Terms, units), columnText(key+".source", weighing.Terms, units))
	}
	fmt.Fprintf(w, "  Buds. %s\n", words.Text("en", weighing.Night.KillSource, nil, nil))
}

// columnText is a text of the weighed columns: what one is called, what it holds, or where it is from.
func columnText(key string, terms map[string]float64, units words.Units) string {
	values := map[string]any{}
	for name, value := range terms {
		values[name] = value
	}
	return words.Style{Units: units}.Text("weigh."+key, nil, values)
}

// heading is a title with its unit.
func heading(title, unit string) string {
	if unit == "" {
		return title
	}
	return title + ", " + unit
}

// writeNight says which night the frost is that of.
func writeNight(w io.Writer, night result.Night, units words.Units) {
	at := func(celsius float64) string { return words.Quantity(celsius, "degC", 1, units) }
	fmt.Fprintf(w, "A night of %s at %s with %s of wind; a tenth, half and nine tenths of the buds die at %s, %s and %s.\n",
		at(night.Lowest_C), words.Quantity(night.Screen_m, "m", 1, units), words.Quantity(night.Wind_ms, "m/s", 1, units),
		at(night.Kill10_C), at(night.Kill50_C), at(night.Kill90_C))
	fmt.Fprintf(w, "A comparison of heights, not a frost warning: use a local forecast.\n")
}

// writeReasons writes what there is to say of each option, and its income where price and cost are given.
func writeReasons(w io.Writer, weighing *result.Weighing, units words.Units) {
	style := words.Style{Units: units}
	fmt.Fprintln(w)
	for i := range weighing.Options {
		o := &weighing.Options[i]
		fmt.Fprintf(w, "%s  %s\n   %s\n", letter(i), o.Name, style.Sentence(o.Frost.Verdict))
		writeCropReasons(w, o.Crop, units)
	}
}

// writeCropReasons writes what there is to say of a crop.
func writeCropReasons(w io.Writer, crop result.OptionCrop, units words.Units) {
	style := words.Style{Units: units}
	sentences := []result.Sentence{crop.Verdict, crop.Balance}
	if crop.FourArms != nil {
		sentences = append(sentences, crop.FourArms.Verdict)
	}
	for _, sentence := range sentences {
		fmt.Fprintf(w, "   %s\n", style.Sentence(sentence))
	}
	if four := crop.FourArms; four != nil {
		yield := weighedColumn{unit: "t/ha", decimals: 1}
		_, unit := words.Convert(0, "t/ha", units)
		fmt.Fprintf(w, "   Four arms: %s %s with the same nodes, %s with as many on each arm.\n",
			yield.withRange(four.SameNodes, units), unit, yield.withRange(four.TwiceNodes, units))
	}
	if income := crop.Income; income != nil {
		fmt.Fprintf(w, "   Income %.0f a hectare (%.0f to %.0f) in your money; it breaks even at %s.\n",
			income.PerHa.Value, income.PerHa.Low, income.PerHa.High, words.Quantity(income.BreakEven_t, "t/ha", 1, units))
	}
}

// writeOrder writes the options in the order of the weights, said which they are, or that there is none.
func writeOrder(w io.Writer, weighing *result.Weighing, weights scenario.Weights) {
	if len(weighing.Order) == 0 {
		fmt.Fprintln(w, "\nNothing is ranked: say what matters to you with --weights.")
		return
	}
	fmt.Fprintf(w, "\nIn the order of the weights given: %s.\nScores run from 0 where an option is worst in all that has weight to 1 where it is best in all.\n", sharesOf(weights))
	for i, placed := range weighing.Order {
		line := fmt.Sprintf("  %d. %s  %s, %.2f (%.2f to %.2f)", i+1, letter(placed.Option), weighing.Options[placed.Option].Name,
			placed.Score.Value, placed.Score.Low, placed.Score.High)
		if i < len(weighing.Order)-1 && !placed.Decided {
			line += "; not decided against the next"
		}
		fmt.Fprintln(w, line)
	}
}

// sharesOf names what has weight, each with its share of all weights.
func sharesOf(weights scenario.Weights) string {
	all := []struct {
		name   string
		weight float64
	}{{"heat", weights.Heat}, {"light", weights.Light}, {"frost", weights.Frost}, {"crop", weights.Crop}, {"work", weights.Work}}
	sum := 0.0
	for _, of := range all {
		sum += of.weight
	}
	var shares []string
	for _, of := range all {
		if of.weight > 0 {
			shares = append(shares, fmt.Sprintf("%s %.0f %%", of.name, 100*of.weight/sum))
		}
	}
	return strings.Join(shares, ", ")
}
