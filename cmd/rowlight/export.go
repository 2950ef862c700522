package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/render"
	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// exportCommand is the flags of rowlight export.
type exportCommand struct {
	output output
	option string
}

// newExport makes rowlight export.
func newExport() *cobra.Command {
	var flags exportCommand
	command := &cobra.Command{
		Use:   "export SCENARIO.json --format gltf|glb|obj|csv [--option A] [-o FILE]",
		Short: "The vines of an option for other programs: solid bodies, or a table of leaves and bunches",
		Long: "Writes the piece of row that the computation repeats. gltf (text), glb (binary) and obj hold leaves, bunches,\n" +
			"shoots, arms, trunks, posts and wires as triangles in metres: x east, y up, z south. csv holds a row for each leaf\n" +
			"and bunch in the frame of the row: x across it, y along it, z up. A scenario named - is read from standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.output.format = choice{value: "gltf", allowed: []string{"gltf", "glb", "obj", "csv"}}
	command.Flags().Var(&flags.output.format, "format", "what to write")
	command.Flags().StringVarP(&flags.output.file, "output", "o", "", "file to write instead of standard output")
	command.Flags().StringVar(&flags.option, "option", "A", "option of the scenario")
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads a scenario, grows the vines of an option and writes them.
func (c exportCommand) run(command *cobra.Command, path string) error {
	s, err := readScenario(command, path)
	if err != nil {
		return err
	}
	option, err := optionNamed(c.option, s)
	if err != nil {
		return fmt.Errorf("export: %w", err)
	}
	stand, err := sim.NewEngine().Stand(s, option)
	if err != nil {
		return inputFault(err, path)
	}
	return c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.encode(w, s, option, stand) })
}

// encode writes a stand in the chosen format.
func (c exportCommand) encode(w io.Writer, s scenario.Scenario, option int, stand *training.Stand) error {
	if c.output.format.value == "csv" {
		return standSheet(stand).writeCSV(w)
	}
	title := fmt.Sprintf("%s, option %s: %s", s.Name, letter(option), s.Options[option].Called())
	solids := render.Solids(render.PlantingOf(stand, s.Options[option], s))
	switch c.output.format.value {
	case "obj":
		return writeOBJ(w, title, solids)
	default:
		return writeGLTF(w, title, solids, c.output.format.value == "glb")
	}
}

// optionNamed is the index of the option with a letter.
func optionNamed(name string, s scenario.Scenario) (int, error) {
	option := strings.ToUpper(name)
	if len(option) != 1 || option[0] < 'A' || int(option[0]-'A') >= len(s.Options) {
		return 0, fmt.Errorf("--option: %q is none of A to %s", name, letter(len(s.Options)-1))
	}
	return int(option[0] - 'A'), nil
}

// standSheet lists leaves and bunches.
func standSheet(stand *training.Stand) sheet {
	s := sheet{columns: []column{
		{key: "part"}, {key: "index"}, {key: "shoot"}, {key: "node"}, {key: "lateral"}, {key: "x_m"}, {key: "y_m"}, {key: "z_m"},
		{key: "normal_x"}, {key: "normal_y"}, {key: "normal_z"}, {key: "tip_x"}, {key: "tip_y"}, {key: "tip_z"},
		{key: "area_m2"}, {key: "radius_m"}, {key: "length_m"}, {key: "berries"},
	}}
	for i, l := range stand.Leaves {
		s.rows = append(s.rows, []any{
			"leaf", i, int(l.Shoot), int(l.Node), l.Lateral, l.Centre[0], l.Centre[1], l.Centre[2],
			l.Normal[0], l.Normal[1], l.Normal[2], l.Tip[0], l.Tip[1], l.Tip[2], l.Area, "", "", "",
		})
	}
	for i, b := range stand.Bunches {
		s.rows = append(s.rows, []any{
			"bunch", i, int(b.Shoot), "", "", b.Centre[0], b.Centre[1], b.Centre[2],
			"", "", "", "", "", "", "", b.Radius, b.Length, b.Berries,
		})
	}
	return s
}
