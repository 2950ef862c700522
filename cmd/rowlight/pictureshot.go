package main

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"
	"strings"

	"rowlight/render"
	"rowlight/sim"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// temperatureScale is that of the page.
var temperatureScale = render.Scale{Min_C: 15, Max_C: 55}

// shot is one option at one hour, ready to be drawn in every way.
type shot struct {
	scene  *render.Scene
	day    result.Day
	option int    // of the day
	letter string // of the option
	at     int    // instant
}

// pictureLooks is how a picture is to be.
type pictureLooks struct {
	width, height, quads, bunch int
	dark, bare                  bool
}

// newShot plants an option of a run and gives it the sun and the temperatures of an hour.
func newShot(run *sim.Run, option int, name string, hour_h float64, atlas *render.Atlas) *shot {
	day := run.Result
	at := int(math.Round(hour_h * float64(len(day.Hour)-1) / 24))
	o := &run.Options[option]
	scene := render.NewScene(render.PlantingOf(o.Stand, day.Scenario.Options[option], day.Scenario), atlas, render.Instant{
		Hour: day.Hour[at], SunAzimuth_deg: day.Sun.Azimuth_deg[at], SunElevation_deg: day.Sun.Elevation_deg[at],
		DNI_Wm2: day.Air.DNI_Wm2[at], DHI_Wm2: day.Air.DHI_Wm2[at],
	})
	faces := len(o.Faces)
	scene.SetFaces(o.Surface_C[at*faces:(at+1)*faces], o.Lit[at*faces:(at+1)*faces], temperatureScale)
	return &shot{scene: scene, day: day, option: option, letter: name, at: at}
}

// camera looks from a place.
func (s *shot) camera(from render.Fixed) render.Camera {
	site, rows := s.day.Scenario.Site, s.day.Scenario.Options[s.option].Rows
	k := min(int(math.Round((s.day.Sun.Transit_h+render.AfterNoon_h)*60/s.day.Step_min)), len(s.day.Hour)-1)
	front := render.Front(rows.Azimuth_deg, site.Latitude_deg)
	look := from.Look(render.HomeLook(site.Latitude_deg), front, s.day.Sun.Azimuth_deg[k], s.day.Sun.Elevation_deg[k])
	return look.Camera(s.scene.Planting().Stand, rows.Azimuth_deg, site.Latitude_deg)
}

// draw draws the option; with heading and legend unless it is bare.
func (s *shot) draw(way render.Way, from render.Fixed, looks pictureLooks) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, looks.width, looks.height))
	page := newPictureText(looks.height, looks.dark)
	head, foot := 0, 0
	if !looks.bare {
		head, foot = page.line()*3/2, page.line()*5/2
		draw.Draw(picture, picture.Rect, image.NewUniform(page.paper), image.Point{}, draw.Src)
	}
	pane := render.Pane{Y: float64(head), Width: float64(looks.width), Height: float64(looks.height - head - foot)}
	view := s.scene.View(way, s.camera(from), pane)
	view.Bunch, view.Dark = looks.bunch, looks.dark
	s.scene.PaintView(picture, &view, looks.quads)
	if looks.bare {
		return picture
	}
	for _, label := range s.scene.Labels(&view) {
		page.label(picture, label.X, label.Y, label.Text)
	}
	title, heading := wayTitles[way], s.heading(true)
	if page.width(heading)+page.width(title)+2*page.line() > looks.width {
		heading = s.heading(false)
	}
	if page.width(heading)+page.width(title)+2*page.line() > looks.width {
		title = way.String()
	}
	page.left(picture, page.line()/2, page.line(), heading)
	page.right(picture, looks.width-page.line()/2, page.line(), title)
	s.drawLegend(picture, page, way, looks.height-foot)
	return picture
}

// wayTitles say in words what a mode shows.
var wayTitles = map[render.Way]string{
	render.Natural:  "as it looks, fruit coloured by temperature",
	render.Sunlight: "sunlight on leaves and fruit",
	render.Heat:     "temperature of the fruit",
	render.Slice:    "a slice of the row, end-on, before the field of light",
	render.Outlook:  "the sky as one bunch sees it",
	render.Objects:  "every thing in a colour of its own",
}

// heading says which option, which form, when, and, in full, where the sun is.
func (s *shot) heading(full bool) string {
	minutes := int(s.day.Hour[s.at]*60 + 0.5)
	sun := "sun down"
	if elevation := s.day.Sun.Elevation_deg[s.at]; elevation > 0 {
		sun = fmt.Sprintf("sun in the %s, %.0f° high", scenario.Compass(s.day.Sun.Azimuth_deg[s.at]), elevation)
	}
	heading := strings.TrimSpace(fmt.Sprintf("%s  %s · %02d:%02d", s.letter, s.day.Options[s.option].Name, minutes/60, minutes%60))
	if full {
		heading += " · " + sun
	}
	return heading
}

// drawLegend draws the scale of the mode with its limits, and the hottest fruit on both sides.
func (s *shot) drawLegend(picture *image.RGBA, page *pictureText, way render.Way, top int) {
	line := page.line()
	bar := image.Rect(line/2, top+line*7/20, picture.Rect.Dx()*45/100, top+line*17/20)
	palette, low, high, unit := render.TemperaturePalette(), temperatureScale.Min_C, temperatureScale.Max_C, "°C"
	if way == render.Sunlight || way == render.Slice {
		palette, low, high, unit = render.LightPalette(), 0, render.BrightestLight_Wm2, "W/m²"
	}
	for x := bar.Min.X; x < bar.Max.X; x++ {
		r, g, b := palette.At((float64(x-bar.Min.X) + 0.5) / float64(bar.Dx()))
		c := color.RGBA{uint8(r*255 + 0.5), uint8(g*255 + 0.5), uint8(b*255 + 0.5), 255}
		draw.Draw(picture, image.Rect(x, bar.Min.Y, x+1, bar.Max.Y), image.NewUniform(c), image.Point{}, draw.Src)
	}
	under := bar.Max.Y + line*9/10
	place := func(value float64) int { return bar.Min.X + int((value-low)/(high-low)*float64(bar.Dx())+0.5) }
	mark := func(value float64, text string, write func(*image.RGBA, int, int, string)) {
		x := place(value)
		draw.Draw(picture, image.Rect(x-1, bar.Min.Y-line/5, x+1, bar.Max.Y+line/8), image.NewUniform(page.ink), image.Point{}, draw.Src)
		write(picture, x, under, text)
	}
	page.left(picture, bar.Min.X, under, fmt.Sprintf("%g %s", low, unit))
	taken := 0 // of the line below the scale
	if unit == "°C" {
		limits := s.day.Scenario.Limits
		names := [3]string{"watch ", "hot ", "burns "}
		start := bar.Min.X + page.width(fmt.Sprintf("%g %s", low, unit))
		if place(limits.Watch_C)-page.width(fmt.Sprintf("watch %g", limits.Watch_C)) < start+line/4 {
			names = [3]string{} // the numbers alone, where the words would run into each other
		}
		label := func(k int, limit_C float64) string { return names[k] + fmt.Sprintf("%g", limit_C) }
		mark(limits.Watch_C, label(0, limits.Watch_C), page.right)
		mark(limits.Hot_C, label(1, limits.Hot_C), page.centred)
		mark(limits.Burn_C, label(2, limits.Burn_C), page.left)
		taken = place(limits.Burn_C) + page.width(label(2, limits.Burn_C))
	} else {
		mark(high/2, fmt.Sprintf("%g", high/2), page.centred)
	}
	if end := fmt.Sprintf("%g", high); bar.Max.X-page.width(end) > taken+line/2 {
		page.right(picture, bar.Max.X, under, end)
	}
	s.writeSides(picture, page, top+line*17/20, under+line/10)
}

// writeSides says what the fruit of both sides is like.
func (s *shot) writeSides(picture *image.RGBA, page *pictureText, lines ...int) {
	for i, side := range s.day.Options[s.option].Sides {
		words := "%s side: hottest fruit %.0f °C, %.0f %% in the sun"
		if page.width(words) > picture.Rect.Dx()/2 {
			words = "%s: %.0f °C, %.0f %% in the sun"
		}
		page.right(picture, picture.Rect.Dx()-page.line()/2, lines[i],
			fmt.Sprintf(words, side.Compass, side.Steps.Hottest_C[s.at], 100*side.Steps.LitShare[s.at]))
	}
}
