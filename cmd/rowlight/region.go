package main

import (
	"context"
	"io"
	"path/filepath"

	"github.com/spf13/cobra"

	"rowlight/sim"
	"rowlight/sim/result"
)

// regionCommand is the flags of rowlight region.
type regionCommand struct {
	span span
	base string
	file string
}

// newRegion makes rowlight region.
func newRegion() *cobra.Command {
	var flags regionCommand
	command := &cobra.Command{
		Use:   "region SITES.csv",
		Short: "Heat and light for many sites, forms and row directions, as one table or in pieces",
		Long: "Reads a CSV with a site in each line and writes a CSV with every site, form, direction and side. Columns: site, form and\n" +
			"azimuth_deg, the last two with one or several parted by spaces; weather, a file in the folder of the plan; and any\n" +
			"of latitude_deg, longitude_deg, elevation_m, utcOffset_h, slope_deg, aspect_deg, floor, date, airMax_C, airMin_C, dewPoint_C,\n" +
			"wind_ms, windFrom_deg. What a site does not name is as in --scenario, else the default.\n" +
			"A plan named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.span.addFlags(command)
	command.Flags().StringVar(&flags.base, "scenario", "", "scenario whose fruit, limits, season and options of the same forms hold for all sites")
	command.Flags().StringVarP(&flags.file, "output", "o", "", "file to write instead of standard output")
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads a plan, or the shard of it that is asked for, and writes what comes of it.
func (c regionCommand) run(command *cobra.Command, path string) error {
	if err := c.span.check(); err != nil {
		return err
	}
	plan, err := readInput(command.InOrStdin(), path)
	if err != nil {
		return err
	}
	base := []byte("{}")
	if c.base != "" {
		if base, err = readInput(command.InOrStdin(), c.base); err != nil {
			return err
		}
	}
	cases, err := readRegion(path, plan, base)
	if err != nil {
		return err
	}
	table, err := c.sheet(command, path, c.mine(cases))
	if err != nil {
		return err
	}
	out := output{file: c.file}
	return out.write(command.OutOrStdout(), func(w io.Writer) error { return table.writePiece(w, c.span.shard) })
}

// mine is the shard of a plan: it may begin and end amid the azimuths of a case.
func (c regionCommand) mine(cases []regionCase) (mine []regionCase) {
	type turn struct{ of, azimuth int }
	var all []turn
	for i := range cases {
		for k := range cases[i].azimuths {
			all = append(all, turn{i, k})
		}
	}
	last := -1
	for _, at := range pick(c.span.shard, all) {
		if at.of != last {
			last = at.of
			mine = append(mine, cases[at.of])
			mine[len(mine)-1].azimuths = nil
		}
		of := &mine[len(mine)-1]
		of.azimuths = append(of.azimuths, cases[at.of].azimuths[at.azimuth])
	}
	return mine
}

// sheet runs cases one after the other; canopies that they share are made once.
func (c regionCommand) sheet(command *cobra.Command, path string, cases []regionCase) (sheet, error) {
	table := sheet{columns: append([]column{
		{"site", "", "", 0}, {"latitude_deg", "", "deg", 0}, {"longitude_deg", "", "deg", 0}, {"form", "", "", 0}, {"from", "", "", 0}, {"to", "", "", 0}, {"days", "", "", 0},
	}, azimuthColumns([3]string{})...)}
	engine, progress := sim.NewEngine(), onTerminal(command.ErrOrStderr())
	for i, of := range cases {
		var told sim.Progress
		if progress != nil {
			told = func(stage string, done float64) { progress(stage, (float64(i)+done)/float64(len(cases))) }
		}
		if err := c.add(command.Context(), &table, engine, path, of, command.ErrOrStderr(), told); err != nil {
			return table, err
		}
	}
	return table, nil
}

// add runs a case and adds its lines.
func (c regionCommand) add(ctx context.Context, table *sheet, engine *sim.Engine, path string, of regionCase, stderr io.Writer, progress sim.Progress) error {
	days, s := c.span, of.scenario
	if of.file != "" {
		days.weather.file = filepath.Join(filepath.Dir(path), of.file)
	}
	sweep, err := days.sweep(&s, stderr)
	if err != nil {
		return err
	}
	var parts []sim.Part
	for _, azimuth := range of.azimuths {
		parts = append(parts, sim.Part{Azimuth_deg: azimuth, To: len(sweep.Days)})
	}
	first, last := sweep.Days[0].Weather.Date, sweep.Days[len(sweep.Days)-1].Weather.Date
	drawn := func(_ int, d result.Direction) {
		for _, side := range d.Sides {
			table.rows = append(table.rows, append([]any{
				of.site, s.Site.Latitude_deg, s.Site.Longitude_deg, of.form, first[5:], last[5:], len(sweep.Days),
			}, azimuthCells(d, side)...))
		}
	}
	if err := engine.Sweep(s, sweep).Turn(parts, ctx.Err, drawn, progress); err != nil {
		return inputFault(err, path+": "+of.site)
	}
	return nil
}
