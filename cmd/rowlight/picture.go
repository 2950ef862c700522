package main

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/render"
	"rowlight/sim"
	"rowlight/sim/scenario"
)

// pictureCommand is the flags of rowlight picture.
type pictureCommand struct {
	output string
	option string
	hour_h float64
	view   choice
	mode   choice
	size   string
	dark   bool
	bare   bool
	things bool
	bunch  int
	quads  int
	sheet  bool
	forms  string
}

// Bounds of a picture [px] and of its quads.
const (
	smallestPicture, largestPicture = 64, 4096
	fewestQuads, mostQuads          = 1000, 200000
)

// newPicture makes rowlight picture.
func newPicture() *cobra.Command {
	var flags pictureCommand
	command := &cobra.Command{
		Use:   "picture SCENARIO.json --hour H -o FILE.png [--option A] [--view VIEW] [--mode MODE] [--size WxH] [--dark]",
		Short: "A picture of the rows at an hour, with the computed temperatures of the fruit",
		Long: "Computes the day of a scenario and draws one option at an hour: the very vines that were computed, under their\n" +
			"sun. Modes: natural; light, the sunlight on leaves and fruit; heat, the temperature of the fruit; slice, the row\n" +
			"seen end-on before the field of light; outlook, the sky as one bunch sees it with the ways of the sun. With\n" +
			"--sheet every option of the scenario, or every form, in every mode on one sheet. A scenario named - is read from\n" +
			"standard input.",
		Args: cobra.ExactArgs(1),
	}
	flags.view = choice{value: "front", allowed: names(render.FixedLooks())}
	flags.mode = choice{value: "natural", allowed: names(render.Ways())}
	set := command.Flags()
	set.StringVarP(&flags.output, "output", "o", "", "PNG file to write")
	set.StringVar(&flags.option, "option", "A", "option of the scenario")
	set.Float64Var(&flags.hour_h, "hour", 15.5, "hour of the day on the clock of the site, 0 to 24; the nearest 5 minutes count")
	set.Var(&flags.view, "view", "where one looks from")
	set.Var(&flags.mode, "mode", "way of looking")
	set.StringVar(&flags.size, "size", "1280x720", "width and height of the picture in pixels")
	set.BoolVar(&flags.dark, "dark", false, "dark paper")
	set.BoolVar(&flags.bare, "bare", false, "without heading and legend")
	set.BoolVar(&flags.things, "objects", false, "every thing in an even colour of its own, to compare what is drawn where")
	set.IntVar(&flags.bunch, "bunch", 0, "bunch to look out from, from 1; 0 takes one in the middle")
	set.IntVar(&flags.quads, "quads", 40000, "most quads to draw, as a measure of fineness")
	set.BoolVar(&flags.sheet, "sheet", false, "all modes of all options on one sheet; the size is that of each picture")
	set.StringVar(&flags.forms, "forms", "", "with --sheet, plant these forms instead of the options: their keys with commas between, or all")
	if err := command.MarkFlagRequired("output"); err != nil {
		panic(err) // no such flag
	}
	command.RunE = func(command *cobra.Command, args []string) error {
		if flags.sheet && !command.Flags().Changed("view") {
			flags.view.value = string(render.Corner) // shows most of what a form is
		}
		return flags.run(command, args[0])
	}
	return command
}

// names are the words of a flag.
func names[T any](all []T) []string {
	words := make([]string, len(all))
	for i, one := range all {
		words[i] = fmt.Sprint(one)
	}
	return words
}

// run reads a scenario, computes its day and writes the picture.
func (c pictureCommand) run(command *cobra.Command, path string) error {
	s, err := readScenario(command, path)
	if err != nil {
		return err
	}
	width, height, err := c.check(s)
	if err != nil {
		return fmt.Errorf("picture: %w", err)
	}
	var drawn image.Image
	if c.sheet {
		drawn, err = c.drawSheet(command, s, width, height)
	} else {
		drawn, err = c.drawOne(command, s, width, height)
	}
	if err != nil {
		return inputFault(err, path)
	}
	return writePNG(c.output, drawn)
}

// check reads the flags that take numbers and names.
func (c pictureCommand) check(s scenario.Scenario) (width, height int, err error) {
	if _, err := fmt.Sscanf(strings.ToLower(c.size), "%dx%d", &width, &height); err != nil {
		return 0, 0, fmt.Errorf("--size: %q is no size as 1280x720", c.size)
	}
	if min(width, height) < smallestPicture || max(width, height) > largestPicture {
		return 0, 0, fmt.Errorf("--size: %dx%d is outside %d to %d", width, height, smallestPicture, largestPicture)
	}
	if !(c.hour_h >= 0 && c.hour_h <= 24) {
		return 0, 0, fmt.Errorf("--hour: %g is outside 0 to 24", c.hour_h)
	}
	if c.quads < fewestQuads || c.quads > mostQuads {
		return 0, 0, fmt.Errorf("--quads: %d is outside %d to %d", c.quads, fewestQuads, mostQuads)
	}
	if _, err := optionNamed(c.option, s); err != nil {
		return 0, 0, err
	}
	if c.forms != "" && !c.sheet {
		return 0, 0, errors.New("--forms goes with --sheet")
	}
	return width, height, nil
}

// drawOne draws one option in one mode.
func (c pictureCommand) drawOne(command *cobra.Command, s scenario.Scenario, width, height int) (image.Image, error) {
	option, err := optionNamed(c.option, s)
	if err != nil {
		return nil, err
	}
	// Only what is shown is computed; the letter stays that of the whole scenario.
	one := s
	one.Options, one.Compare = s.Options[option:option+1], 0
	run, err := sim.NewEngine().Day(one, command.Context().Err, nil)
	if err != nil {
		return nil, err
	}
	shot := newShot(run, 0, letter(option), c.hour_h, render.NewAtlas())
	if bunches := len(run.Options[0].Stand.Bunches); c.bunch < 0 || c.bunch > bunches {
		return nil, fmt.Errorf("picture: --bunch: %d is outside 1 to %d", c.bunch, bunches)
	}
	way, _ := render.WayNamed(c.mode.value)
	return shot.draw(way, render.Fixed(c.view.value), pictureLooks{
		width: width, height: height, quads: c.quads, dark: c.dark, bare: c.bare || c.things, objects: c.things, bunch: c.bunch - 1,
	}), nil
}

// writePNG writes a picture once it is complete.
func writePNG(path string, picture image.Image) error {
	var file bytes.Buffer
	if err := encodePNG(&file, picture); err != nil {
		return err
	}
	return os.WriteFile(path, file.Bytes(), 0o644)
}

func encodePNG(w io.Writer, picture image.Image) error {
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	return encoder.Encode(w, picture)
}
