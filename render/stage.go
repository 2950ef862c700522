package render

import (
	"fmt"
	"reflect"
	"slices"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Stage is the picture of a whole scenario: one pane per option under one sun. It keeps what it was
// last told and knows which panes have to be drawn again. It is not safe for use by several
// goroutines at once.
type Stage struct {
	atlas   *Atlas
	options []staged
	panes   []Pane
	cameras map[int]Camera // by option; one that is missing takes the default
	instant Instant
	scale   Scale
	stale   bool // everything, the space between the panes too, has to be drawn again
}

// staged is one option on the stage.
type staged struct {
	option    scenario.Option
	planted   plantedWith
	scene     *Scene
	surface_C []float32
	lit       []uint8
	moved     bool // the sun has moved since the scene was lit
	coloured  bool // the faces of the scene carry their temperatures
	stale     bool // the pane has to be drawn again
}

// plantedWith is what a stand and a scene depend on besides the option.
type plantedWith struct {
	latitude_deg float64
	seed         int
	floor        scenario.Floor
	diameter_mm  float64
}

// QuadBudget is the number of quads over all panes.
const QuadBudget = 24000

// defaultScale covers fruit from a cool morning to certain burning, until the page sends its own.
var defaultScale = Scale{Min_C: 20, Max_C: 55}

// firstInstant is a high sun, until the page sends another.
var firstInstant = Instant{Hour: 12, SunElevation_deg: 70, SunAzimuth_deg: 180, DNI_Wm2: fullBeam_Wm2, DHI_Wm2: fullSky_Wm2}

// NewStage is an empty stage.
func NewStage() *Stage {
	return &Stage{atlas: NewAtlas(), cameras: map[int]Camera{}, instant: firstInstant, scale: defaultScale, stale: true}
}

// Atlas is the texture of all quads.
func (st *Stage) Atlas() *Atlas { return st.atlas }

// SetScenario plants the options. An option that has not changed keeps its scene. An option that
// cannot be planted leaves its pane empty; the error names the first.
func (st *Stage) SetScenario(s scenario.Scenario) error {
	var first error
	with := plantedWith{s.Site.Latitude_deg, s.Seed, s.Site.Floor, s.Fruit.Diameter_mm}
	if len(st.options) != len(s.Options) {
		st.stale = true
	}
	options := make([]staged, len(s.Options))
	copy(options, st.options)
	for i := range options {
		o := &options[i]
		if o.scene != nil && o.planted == with && reflect.DeepEqual(o.option, s.Options[i]) {
			continue
		}
		err := o.plant(s.Options[i], with, st.atlas, st.instant)
		if err != nil {
			st.stale = true // its pane is cleared
			if first == nil {
				first = fmt.Errorf("option %d: %w", i, err)
			}
		}
	}
	st.options = options
	return first
}

func (o *staged) plant(option scenario.Option, with plantedWith, atlas *Atlas, now Instant) error {
	o.option, o.planted, o.scene = option, with, nil
	o.surface_C, o.lit, o.stale = nil, nil, true
	stand, err := training.Build(option, with.latitude_deg, with.seed)
	if err != nil {
		return err
	}
	o.scene = NewScene(Planting{
		Stand: stand, RowAzimuth_deg: option.Rows.Azimuth_deg, Floor: with.floor, BerryDiameter_m: with.diameter_mm / 1000,
	}, atlas, now)
	o.moved, o.coloured = false, false
	return nil
}

// SetPanes places the panes, in the order of the options [px].
func (st *Stage) SetPanes(panes []Pane) {
	if !slices.Equal(st.panes, panes) {
		st.panes, st.stale = slices.Clone(panes), true
	}
}

// SetInstant moves the sun over all panes.
func (st *Stage) SetInstant(now Instant) {
	if st.instant == now {
		return
	}
	st.instant = now
	for i := range st.options {
		st.options[i].moved, st.options[i].stale = true, true
	}
}

// SetFaces gives the bunch faces of an option their temperatures and whether the sun is on them. The
// slices are kept.
func (st *Stage) SetFaces(option int, surface_C []float32, lit []uint8) {
	if option < 0 || option >= len(st.options) {
		return
	}
	o := &st.options[option]
	o.surface_C, o.lit, o.coloured, o.stale = surface_C, lit, false, true
}

// SetScale sets the temperature scale of all panes.
func (st *Stage) SetScale(scale Scale) {
	if scale == st.scale {
		return
	}
	st.scale = scale
	for i := range st.options {
		st.options[i].coloured, st.options[i].stale = false, true
	}
}

// SetCamera turns the picture of an option.
func (st *Stage) SetCamera(option int, c Camera) {
	if before, set := st.cameras[option]; set && before == c {
		return
	}
	st.cameras[option] = c
	if option >= 0 && option < len(st.options) {
		st.options[option].stale = true
	}
}

// Camera is the camera of an option: the one that was set, or the default.
func (st *Stage) Camera(option int) Camera {
	if c, set := st.cameras[option]; set {
		return c
	}
	if option < 0 || option >= len(st.options) {
		return DefaultCamera(nil, 0, 0)
	}
	o := &st.options[option]
	var stand *training.Stand
	if o.scene != nil {
		stand = o.scene.planting.Stand
	}
	return DefaultCamera(stand, o.option.Rows.Azimuth_deg, o.planted.latitude_deg)
}

// Invalidate asks for everything to be drawn again, as after the loss of what was on the screen.
func (st *Stage) Invalidate() { st.stale = true }

// Stale reports whether anything has to be drawn.
func (st *Stage) Stale() bool {
	for i := range st.options {
		if st.options[i].stale {
			return true
		}
	}
	return st.stale
}

// Draw calls clear if the space between the panes has to be drawn again, then draw for each pane that
// changed, and takes all of it as drawn. Options without a pane are brought up to date when they get one.
func (st *Stage) Draw(clear func(), draw func(option int, scene *Scene, view *View, budget int)) {
	if st.stale {
		clear()
	}
	shown := 0
	for i := range st.options {
		if st.visible(i) {
			shown++
		}
	}
	for i := range st.options {
		o := &st.options[i]
		if st.visible(i) && (o.stale || st.stale) {
			st.light(o)
			view := NewView(st.Camera(i), o.scene.planting.Stand, o.option.Rows.Azimuth_deg, st.panes[i])
			draw(i, o.scene, &view, QuadBudget/shown)
		}
		o.stale = false
	}
	st.stale = false
}

func (st *Stage) visible(option int) bool {
	return st.options[option].scene != nil && option < len(st.panes) &&
		st.panes[option].Width >= 1 && st.panes[option].Height >= 1
}

// light brings the scene of an option up to date.
func (st *Stage) light(o *staged) {
	if o.moved {
		o.scene.SetInstant(st.instant)
	}
	o.moved = false
	if !o.coloured {
		o.scene.SetFaces(o.surface_C, o.lit, st.scale)
		o.coloured = true
	}
}
