package main

import (
	"fmt"
	"image"
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
	scale  render.Scale
	run    *sim.Run
}

// pictureLooks is how a picture is to be.
type pictureLooks struct {
	width, height, quads, bunch int
	dark, bare, objects, labels bool
	sliceScale                  float64 // of slices [px/m]; 0 for one that fits
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
	s := &shot{scene: scene, day: day, option: option, letter: name, at: at, run: run}
	s.colour(temperatureScale)
	return s
}

// faces are the temperatures of the bunch faces [°C].
func (s *shot) faces() []float32 {
	o := &s.run.Options[s.option]
	count := len(o.Faces)
	return o.Surface_C[s.at*count : (s.at+1)*count]
}

// bunchInTheSun is of the bunches that the sun is on, and that hang on its side of the row, the one farthest from others,
// which would stand before its sky; −1 where there is none.
func (s *shot) bunchInTheSun() int {
	o := &s.run.Options[s.option]
	best, farthest := -1, float32(0)
	for f, face := range o.Faces {
		if across := o.Stand.Bunches[face.Bunch].Centre[0]; o.Lit[s.at*len(o.Faces)+f] == 0 || face.Right != (across > 0) {
			continue
		}
		if apart := s.scene.Apart(int(face.Bunch)); apart > farthest {
			best, farthest = int(face.Bunch), apart
		}
	}
	return best
}

// colour gives the fruit the colours of a scale.
func (s *shot) colour(scale render.Scale) {
	o := &s.run.Options[s.option]
	count := len(o.Faces)
	s.scale = scale
	s.scene.SetFaces(s.faces(), o.Lit[s.at*count:(s.at+1)*count], scale)
}

// camera looks from a place.
func (s *shot) camera(from render.Fixed) render.Camera {
	site, rows := s.day.Scenario.Site, s.day.Scenario.Options[s.option].Rows
	k := min(int(math.Round((s.day.Sun.Transit_h+render.AfterNoon_h)*60/s.day.Step_min)), len(s.day.Hour)-1)
	front := render.Front(rows.Azimuth_deg, site.Latitude_deg)
	look := from.Look(render.HomeLook(rows.Azimuth_deg, site.Latitude_deg), front, s.day.Sun.Azimuth_deg[k], s.day.Sun.Elevation_deg[k])
	if aside := (s.day.Sun.Azimuth_deg[s.at] - front) * math.Pi / 180; from == render.Corner && math.Cos(aside) < 0 {
		look.Turn_deg = 180 - look.Turn_deg // the corner on the side of the sun
	}
	return look.Camera(s.scene.Planting().Stand, rows.Azimuth_deg, site.Latitude_deg)
}

// draw draws the option; with heading and legend unless it is bare.
func (s *shot) draw(way render.Way, from render.Fixed, looks pictureLooks) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, looks.width, looks.height))
	page := newPictureText(looks.height, looks.dark)
	head, foot := 0, 0
	if !looks.bare {
		head, foot = page.line()*3/2, page.line()*14/5
		draw.Draw(picture, picture.Rect, image.NewUniform(page.paper), image.Point{}, draw.Src)
	}
	pane := render.Pane{Y: float64(head), Width: float64(looks.width), Height: float64(looks.height - head - foot)}
	camera := s.camera(from)
	if way == render.Slice && looks.sliceScale > 0 {
		camera.Distance_m *= s.scene.SliceScale(camera.Distance_m, pane) / looks.sliceScale
	}
	view := s.scene.View(way, camera, pane)
	view.Bunch, view.Dark, view.Objects = looks.bunch, looks.dark, looks.objects
	s.scene.PaintView(picture, &view, looks.quads)
	if looks.bare && !looks.labels {
		return picture
	}
	for _, label := range s.scene.Labels(&view) {
		page.label(picture, label.X, label.Y, saidInEnglish(label.Saying))
	}
	if way == render.Outlook {
		page.label(picture, view.CentreX, view.CentreY+0.475*view.Height, s.bunchWords(&view))
	}
	if looks.bare {
		return picture
	}
	title, heading := wayTitles[way], s.heading(true)
	if page.width(heading)+page.width(title)+2*page.line() > looks.width {
		heading = s.heading(false)
	}
	if page.width(heading)+page.width(title)+2*page.line() > looks.width {
		title = nameOf(way)
	}
	page.left(picture, page.line()/2, page.line(), heading)
	page.right(picture, looks.width-page.line()/2, page.line(), title)
	s.drawLegend(picture, page, way, looks.height-foot)
	return picture
}

// bunchWords say from which bunch an outlook is.
func (s *shot) bunchWords(view *render.View) string {
	bunch := s.scene.OutlookFrom(view)
	if bunch < 0 {
		return "no bunch: from the middle of the row"
	}
	stand := s.run.Options[s.option].Stand
	side := scenario.Left
	if stand.Bunches[bunch].Centre[0] > 0 {
		side = scenario.Right
	}
	rows := s.day.Scenario.Options[s.option].Rows
	return fmt.Sprintf("from bunch %d of %d, %.2f m up, %s of the row line", bunch+1, len(stand.Bunches), stand.Bunches[bunch].Centre[2],
		scenario.Compass(rows.SideAzimuth(side)))
}

// wayTitles say in words what a mode shows.
var wayTitles = map[render.Way]string{
	render.Natural:  "as it looks, fruit coloured by temperature",
	render.Sunlight: "sunlight on leaves and fruit",
	render.Heat:     "temperature of the fruit",
	render.Slice:    "a slice of the row, end-on, before the field of light",
	render.Outlook:  "the sky as one bunch sees it",
}

// heading says which option, which form, when, and, in full, where the sun is.
func (s *shot) heading(full bool) string {
	minutes := int(s.day.Hour[s.at]*60 + 0.5)
	heading := strings.TrimSpace(fmt.Sprintf("%s  %s · %02d:%02d", s.letter, s.day.Options[s.option].Name, minutes/60, minutes%60))
	if full {
		heading += " · " + s.sunWords()
	}
	return heading
}

// sunWords say where the sun is.
func (s *shot) sunWords() string {
	if elevation := s.day.Sun.Elevation_deg[s.at]; elevation > 0 {
		return fmt.Sprintf("sun in the %s, %.0f° high", scenario.Compass(s.day.Sun.Azimuth_deg[s.at]), elevation)
	}
	return "sun down"
}

// drawLegend draws the scale of the mode with its limits, and the hottest fruit on both sides.
func (s *shot) drawLegend(picture *image.RGBA, page *pictureText, way render.Way, top int) {
	line := page.line()
	words := s.temperatures(s.scale)
	if way == render.Sunlight || way == render.Slice {
		words = sunlight()
	}
	wide := picture.Rect.Dx() * 45 / 100
	if page.width(words.title) > wide {
		words.title = words.short
	}
	page.scale(picture, image.Rect(line/2, top, wide, top+line*3), words)
	s.writeSides(picture, page, top+line*23/20, top+line*47/20)
}

// writeSides says what the fruit of both sides is like.
func (s *shot) writeSides(picture *image.RGBA, page *pictureText, lines ...int) {
	for i, side := range s.day.Options[s.option].Sides {
		words := "%s side: hottest fruit %.0f °C, %.0f %% of the fruit in the sun"
		if page.width(words) > picture.Rect.Dx()/2 {
			words = "%s: hottest %.0f °C, %.0f %% in sun"
		}
		page.right(picture, picture.Rect.Dx()-page.line()/2, lines[i],
			fmt.Sprintf(words, side.Compass, side.Steps.Hottest_C[s.at], 100*side.Steps.LitShare[s.at]))
	}
}
