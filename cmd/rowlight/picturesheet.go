package main

import (
	"fmt"
	"image"
	"image/draw"
	"math"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/render"
	"rowlight/sim"
	"rowlight/sim/scenario"
)

// sheetWays are the columns of a sheet: the names that the page has for the ways, and what they show.
var sheetWays = []struct {
	way         render.Way
	name, shows string
}{
	{render.Natural, "As it looks", "fruit coloured by its temperature"},
	{render.Sunlight, "Sunlight", "on leaves and fruit"},
	{render.Heat, "Fruit heat", "with the leaves see-through"},
	{render.Slice, "Slice end-on", "mean along the row; rays white, wires as dots"},
	{render.Outlook, "Out from a bunch", "one in the sun; amber: the sun's path today"},
}

// nameOf is the name of a way.
func nameOf(way render.Way) string {
	for _, of := range sheetWays {
		if of.way == way {
			return of.name
		}
	}
	return way.String()
}

// sheetRow is one option of a sheet.
type sheetRow struct {
	shot *shot
	name string
}

// drawSheet draws every option, or form, in every way: a row for each, a column for each way, and the scales below.
func (c pictureCommand) drawSheet(command *cobra.Command, s scenario.Scenario, width, height int) (image.Image, error) {
	rows, err := c.sheetRows(command, s)
	if err != nil {
		return nil, err
	}
	scale := commonScale(rows)
	page := newPictureText(2*height, c.dark) // as read on a whole screen
	line, gap := page.line(), max(width/40, 6)
	head, rowHead, foot := 4*line, line*7/4, 5*line
	sheet := image.NewRGBA(image.Rect(0, 0, len(sheetWays)*(width+gap)+gap, head+len(rows)*(rowHead+height+gap)+foot))
	draw.Draw(sheet, sheet.Rect, image.NewUniform(page.paper), image.Point{}, draw.Src)
	oneScale := math.Inf(1) // of all slices
	for _, row := range rows {
		camera := row.shot.camera(render.Fixed(c.view.value))
		oneScale = min(oneScale, row.shot.scene.SliceScale(camera.Distance_m, render.Pane{Width: float64(width), Height: float64(height)}))
	}
	left := func(column int) int { return gap + column*(width+gap) }
	page.left(sheet, gap, line*5/4, rows[0].shot.dayWords())
	for column, of := range sheetWays {
		page.bold(sheet, left(column), head-line*3/2, of.name)
		page.left(sheet, left(column), head-line*2/5, page.fitting(width, of.shows))
	}
	for i, row := range rows {
		top := head + i*(rowHead+height+gap)
		page.bold(sheet, gap, top+line*5/4, row.name)
		page.left(sheet, gap+page.width(row.name+"   ")+line, top+line*5/4, row.shot.sidesWords())
		row.shot.colour(scale)
		for column, of := range sheetWays {
			picture := row.shot.draw(of.way, render.Fixed(c.view.value), pictureLooks{
				width: width, height: height, quads: c.quads, dark: c.dark, bare: true, labels: true, sliceScale: oneScale,
				bunch: row.shot.bunchInTheSun(),
			})
			draw.Draw(sheet, picture.Rect.Add(image.Pt(left(column), top+rowHead)), picture, image.Point{}, draw.Src)
		}
	}
	top := sheet.Rect.Dy() - foot + line/2
	wide := 2*width + gap
	page.scale(sheet, image.Rect(left(0), top, left(0)+wide, top+line*3), rows[0].shot.temperatures(scale))
	page.scale(sheet, image.Rect(left(2), top, left(2)+wide, top+line*3), sunlight())
	for i, words := range []string{"Zenith in the middle, horizon on the rim, as on a map.", "White: the sun's paths through the year.", "Labels: clock hours; the sun is the disc."} {
		page.left(sheet, left(4), top+line+i*line*5/4, page.fitting(width, words))
	}
	return sheet, nil
}

// sheetRows computes the options of a sheet.
func (c pictureCommand) sheetRows(command *cobra.Command, s scenario.Scenario) ([]sheetRow, error) {
	planted, letters, err := c.planted(s)
	if err != nil {
		return nil, err
	}
	engine, atlas := sim.NewEngine(), render.NewAtlas()
	var rows []sheetRow
	for i, option := range planted {
		one := s
		one.Options, one.Compare = []scenario.Option{option}, 0
		run, err := engine.Day(one, command.Context().Err, nil)
		if err != nil {
			return nil, err
		}
		shot := newShot(run, 0, letters[i], c.hour_h, atlas)
		rows = append(rows, sheetRow{shot, strings.TrimSpace(letters[i] + "  " + run.Result.Options[0].Name)})
	}
	return rows, nil
}

// sheetScale is the scale of a sheet, so that sheets can be laid side by side; it is widened in steps that people read
// easily where fruit is cooler or hotter [°C].
var sheetScale = render.Scale{Min_C: 30, Max_C: 55}

const (
	scaleStep_C  = 5.0
	outsideScale = 0.01 // share of faces that may lie below
)

// commonScale is the scale that spans the fruit of all rows.
func commonScale(rows []sheetRow) render.Scale {
	var all []float32
	for _, row := range rows {
		all = append(all, row.shot.faces()...)
	}
	if len(all) == 0 {
		return sheetScale
	}
	slices.Sort(all)
	low, high := float64(all[int(outsideScale*float64(len(all)))]), float64(all[len(all)-1])
	return render.Scale{
		Min_C: min(sheetScale.Min_C, scaleStep_C*math.Floor(low/scaleStep_C)),
		Max_C: max(sheetScale.Max_C, scaleStep_C*math.Ceil(high/scaleStep_C)),
	}
}

// dayWords say of which place, day and hour a sheet is.
func (s *shot) dayWords() string {
	minutes := int(s.day.Hour[s.at]*60 + 0.5)
	row := s.day.Scenario.Options[s.option].Rows.Azimuth_deg
	return fmt.Sprintf("%s, %s, %02d:%02d. Air %.0f °C. Rows run %s–%s. %s",
		s.day.Scenario.Name, s.day.Scenario.Weather.Date, minutes/60, minutes%60, s.day.Air.Temperature_C[s.at],
		scenario.Compass(row), scenario.Compass(row+180), sentence(s.sunWords()))
}

// sentence is a text that starts and ends as a sentence does.
func sentence(text string) string { return strings.ToUpper(text[:1]) + text[1:] + "." }

// sidesWords say what the fruit of both sides is like.
func (s *shot) sidesWords() string {
	var words []string
	for _, side := range s.day.Options[s.option].Sides {
		words = append(words, fmt.Sprintf("fruit facing %s: hottest tenth %.0f °C on average, %.0f %% in the sun",
			side.Compass, side.Steps.Hottest_C[s.at], 100*side.Steps.LitShare[s.at]))
	}
	return strings.Join(words, ";  ")
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
