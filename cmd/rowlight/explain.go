package main

import (
	"encoding/json"
	"errors"
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

// explainCommand is the flags of rowlight explain.
type explainCommand struct {
	output output
	option string
	side   string
	hour_h float64
	bunch  int
}

// newExplain makes rowlight explain.
func newExplain() *cobra.Command {
	var flags explainCommand
	command := &cobra.Command{
		Use:   "explain SCENARIO.json --side SIDE --hour H [--option A] [--face N]",
		Short: "How the temperature of one bunch comes about, number by number",
		Long: "Follows one bunch at one time of the day from the sun to its skin: every number with its unit and where it is\n" +
			"from, and the formula by which it follows from those before, so that all can be recomputed by hand. The last\n" +
			"temperature is the one that rowlight day uses. A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.output.addFlags(command)
	command.Flags().StringVar(&flags.option, "option", "A", "option of the scenario")
	command.Flags().StringVar(&flags.side, "side", "", "side of the row, as west, afternoon or left")
	command.Flags().Float64Var(&flags.hour_h, "hour", 12, "hour of the day on the clock of the site, 0 to 24; the nearest 5 minutes count")
	command.Flags().IntVar(&flags.bunch, "face", 0, "bunch whose face to that side is followed, from 1; 0 takes the hottest at that time")
	for _, name := range []string{"side", "hour"} {
		if err := command.MarkFlagRequired(name); err != nil {
			panic(err) // no such flag
		}
	}
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads a scenario and writes the chain of one face.
func (c explainCommand) run(command *cobra.Command, path string) error {
	s, err := readScenario(command, path)
	if err != nil {
		return err
	}
	engine := sim.NewEngine()
	at, err := c.where(s, engine)
	if err != nil {
		return fmt.Errorf("explain: %w", err)
	}
	chain, err := engine.Explain(s, at, command.Context().Err)
	if err != nil {
		return inputFault(err, path)
	}
	chain = words.Style{}.Chain(chain)
	return c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.writeChain(w, chain) })
}

// where finds the face that the flags name.
func (c explainCommand) where(s scenario.Scenario, engine *sim.Engine) (sim.Where, error) {
	at := sim.Where{Hour_h: c.hour_h, Bunch: c.bunch - 1}
	var err error
	if at.Option, err = optionNamed(c.option, s); err != nil {
		return at, err
	}
	if !(c.hour_h >= 0 && c.hour_h <= 24) {
		return at, fmt.Errorf("--hour: %g is outside 0 to 24", c.hour_h)
	}
	if at.Side, err = sideNamed(c.side, s.Options[at.Option].Rows, s.Site.Latitude_deg); err != nil {
		return at, err
	}
	bunches, err := engine.Bunches(s, at.Option)
	if err == nil && (c.bunch < 0 || c.bunch > bunches) {
		err = fmt.Errorf("--face: %d is outside 1 to %d", c.bunch, bunches)
	}
	if err == nil && bunches == 0 {
		err = errors.New("the vines bear no bunches")
	}
	return at, err
}

// sideNamed finds a side of a row by the compass, the half of the day or the frame of the row.
func sideNamed(name string, rows scenario.Rows, latitude_deg float64) (scenario.Side, error) {
	var known []string
	for _, side := range scenario.Sides {
		names := []string{
			scenario.Compass(rows.SideAzimuth(side)), string(rows.SunSideOf(side, latitude_deg)), [2]string{"left", "right"}[side],
		}
		for _, one := range names {
			if strings.EqualFold(one, strings.TrimSpace(name)) {
				return side, nil
			}
		}
		known = append(known, names...)
	}
	return 0, fmt.Errorf("--side: %q is none of %s", name, strings.Join(known, ", "))
}

// writeChain writes a chain in the chosen format.
func (c explainCommand) writeChain(w io.Writer, chain result.Chain) error {
	switch c.output.format.value {
	case "json":
		return json.NewEncoder(w).Encode(chain)
	case "csv":
		return chainSheet(chain).writeCSV(w)
	}
	minutes := int(chain.Hour_h*60 + 0.5)
	fmt.Fprintf(w, "option %s, %s side, bunch %d of %d, %s %02d:%02d\n", chain.Option, chain.Side, chain.Bunch, chain.Bunches, chain.Date, minutes/60, minutes%60)
	fmt.Fprint(w, "x across the row, y along it, z up; sin, cos and acos in degrees; a comparison is 1 or 0; length is that of a vector\n")
	part := ""
	for _, link := range chain.Links {
		if link.Part != part {
			part = link.Part
			fmt.Fprintf(w, "\n%s\n", part)
		}
		writeLink(w, link)
	}
	return nil
}

// writeLink writes a number with what it is and whence, and below it how it follows from those before.
func writeLink(w io.Writer, link result.Link) {
	source := ""
	if link.Source != "" {
		source = " [" + link.Source + "]"
	}
	fmt.Fprintf(w, "  %-14s %12s %-7s %s%s\n", link.Symbol, strconv.FormatFloat(link.Value, 'g', 6, 64), link.Unit, link.Meaning, source)
	if link.Relation != "" {
		fmt.Fprintf(w, "  %-14s = %s\n", "", link.Relation)
	}
}

// chainSheet is a chain as csv.
func chainSheet(chain result.Chain) sheet {
	s := sheet{columns: []column{
		{key: "part"}, {key: "symbol"}, {key: "value"}, {key: "unit"}, {key: "meaning"}, {key: "relation"}, {key: "source"},
	}}
	for _, link := range chain.Links {
		s.rows = append(s.rows, []any{link.Part, link.Symbol, link.Value, link.Unit, link.Meaning, link.Relation, link.Source})
	}
	return s
}
