package main

import (
	"fmt"
	"image"
	"image/draw"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/render"
	"rowlight/sim"
	"rowlight/sim/scenario"
)

// drawSheet draws every option, or form, in every mode: a row for each, a column for each mode.
func (c pictureCommand) drawSheet(command *cobra.Command, s scenario.Scenario, width, height int) (image.Image, error) {
	planted, letters, err := c.planted(s)
	if err != nil {
		return nil, err
	}
	ways, gap := render.Ways(), max(width/40, 4)
	sheet := image.NewRGBA(image.Rect(0, 0, len(ways)*(width+gap)+gap, len(planted)*(height+gap)+gap))
	draw.Draw(sheet, sheet.Rect, image.NewUniform(newPictureText(height, c.dark).paper), image.Point{}, draw.Src)
	engine, atlas := sim.NewEngine(), render.NewAtlas()
	for row, option := range planted {
		one := s
		one.Options, one.Compare = []scenario.Option{option}, 0
		run, err := engine.Day(one, command.Context().Err, nil)
		if err != nil {
			return nil, err
		}
		shot := newShot(run, 0, letters[row], c.hour_h, atlas)
		for column, way := range ways {
			picture := shot.draw(way, render.Fixed(c.view.value), pictureLooks{
				width: width, height: height, quads: c.quads, dark: c.dark, bare: c.bare, bunch: -1,
			})
			at := image.Pt(gap+column*(width+gap), gap+row*(height+gap))
			draw.Draw(sheet, picture.Rect.Add(at), picture, image.Point{}, draw.Src)
		}
	}
	return sheet, nil
}

// planted are the options of a sheet and how they are called.
func (c pictureCommand) planted(s scenario.Scenario) (options []scenario.Option, letters []string, err error) {
	if c.forms == "" {
		for i := range s.Options {
			letters = append(letters, letter(i))
		}
		return s.Options, letters, nil
	}
	for _, form := range scenario.Forms() {
		if c.forms == "all" || wanted(c.forms, form.Key) {
			option := form.Option
			option.Rows.Azimuth_deg = s.Options[0].Rows.Azimuth_deg
			options, letters = append(options, option), append(letters, "")
		}
	}
	if count := strings.Count(c.forms, ",") + 1; c.forms != "all" && len(options) != count {
		return nil, nil, fmt.Errorf("picture: --forms: not all of %q are forms; rowlight forms lists them", c.forms)
	}
	return options, letters, nil
}

// wanted reports whether a list with commas holds a word.
func wanted(list, word string) bool {
	for one := range strings.SplitSeq(list, ",") {
		if strings.TrimSpace(one) == word {
			return true
		}
	}
	return false
}
