package render

import (
	"slices"

	"rowlight/sim/growth"
	"rowlight/sim/scenario"
)

// Stage is the picture of a whole scenario: one pane per option under one sun. It notes at once what it
// is told and does the long work that follows from it in slices, in Work; until that is done, the panes
// show what they showed before. It is not safe for use by several goroutines at once.
type Stage struct {
	atlas   *Atlas // nil until it is drawn
	options []*staged
	panes   []Pane
	looks   map[int]Look // by option; one that is missing takes the look at first
	instant Instant
	scale   Scale
	way     Way
	dark    bool
	objects bool
	stale   bool // everything, the space between the panes too, has to be drawn again
	drawn   int  // option whose pane was drawn last
	nursery nursery

	work    *work
	workFor *staged // option that is being worked for; nil is all of them
	refines bool    // the work makes finer what is shown already
	worked  int     // option that was worked for last
}

// staged is one option on the stage.
type staged struct {
	option    scenario.Option
	planting  Planting // wanted, but for its stand
	wanted    standKey
	refused   bool // what is wanted cannot be grown
	scene     *Scene
	planted   standKey // what the scene shows
	surface_C []float32
	lit       []uint8
	bunch     int  // that one looks out from, −1 for one in the middle
	coloured  bool // the faces of the scene carry their temperatures
	stale     bool // the pane has to be drawn again
}

// Budgets of quads: over all panes, and for one of them, so that drawing it stays a short task.
const (
	QuadBudget = 24000
	PaneBudget = 15000
)

// defaultScale covers fruit from a cool morning to certain burning, until the page sends its own.
var defaultScale = Scale{Min_C: 20, Max_C: 55}

// firstInstant is a high sun, until the page sends another.
var firstInstant = Instant{Hour: 12, SunElevation_deg: 70, SunAzimuth_deg: 180, DNI_Wm2: fullBeam_Wm2, DHI_Wm2: fullSky_Wm2}

// NewStage is an empty stage.
func NewStage() *Stage {
	return &Stage{looks: map[int]Look{}, instant: firstInstant, scale: defaultScale, stale: true}
}

// Atlas is the texture of all quads; it is there when there is a scene to draw.
func (st *Stage) Atlas() *Atlas { return st.atlas }

// SetScenario says what grows. An option whose vines stay the same keeps them, whatever the direction of
// its rows. An option that cannot be planted leaves its pane empty.
func (st *Stage) SetScenario(s scenario.Scenario) {
	s = growth.Grown(s)
	if len(st.options) != len(s.Options) {
		st.stale = true
	}
	options := make([]*staged, len(s.Options))
	copy(options, st.options)
	for i, option := range s.Options {
		if options[i] == nil {
			options[i] = &staged{bunch: -1}
		}
		options[i].set(option, s)
	}
	st.options = options
}

func (o *staged) set(option scenario.Option, s scenario.Scenario) {
	option = option.On(s.Weather.Date)
	if key := newStandKey(option, s); !key.equal(&o.wanted) {
		o.wanted, o.refused = key, false
	}
	o.option, o.planting = option, PlantingOf(nil, option, s)
}

// SetPanes places the panes, in the order of the options [px].
func (st *Stage) SetPanes(panes []Pane) {
	if !slices.Equal(st.panes, panes) {
		st.panes, st.stale = slices.Clone(panes), true
	}
}

// SetInstant moves the sun over all panes.
func (st *Stage) SetInstant(now Instant) { st.instant = now }

// SetFaces gives the bunch faces of an option their temperatures and whether the sun is on them. The
// slices are kept. Where they are as before nothing is drawn again. Faces of a stand that is not shown yet wait for it.
func (st *Stage) SetFaces(option int, surface_C []float32, lit []uint8) {
	if o := st.at(option); o != nil && (!slices.Equal(o.surface_C, surface_C) || !slices.Equal(o.lit, lit)) {
		o.surface_C, o.lit, o.coloured, o.stale = surface_C, lit, false, true
	}
}

// SetScale sets the temperature scale of all panes.
func (st *Stage) SetScale(scale Scale) {
	if scale == st.scale {
		return
	}
	st.scale = scale
	for _, o := range st.options {
		o.coloured, o.stale = false, true
	}
}

// SetWay looks at all options in one way.
func (st *Stage) SetWay(way Way) {
	if way != st.way {
		st.way, st.stale = way, true
	}
}

// SetDark makes the paper of the flat ways dark or light.
func (st *Stage) SetDark(dark bool) {
	if dark != st.dark {
		st.dark, st.stale = dark, true
	}
}

// SetObjects draws every thing in an even colour of its own, or as it looks.
func (st *Stage) SetObjects(objects bool) {
	if objects != st.objects {
		st.objects, st.stale = objects, true
	}
}

// SetBunch chooses the bunch of an option that one looks out from; −1 is one in the middle.
func (st *Stage) SetBunch(option, bunch int) {
	if o := st.at(option); o != nil && o.bunch != bunch {
		o.bunch = bunch
		o.stale = o.stale || st.way == Outlook
	}
}

// Bunch is the bunch of an option that one looks out from; −1 where there is none, or no picture yet.
func (st *Stage) Bunch(option int) int {
	if o := st.at(option); o != nil && o.scene != nil {
		return o.scene.outlookFrom(o.bunch)
	}
	return -1
}

// Labels are the words that belong into the pane of an option as it is shown.
func (st *Stage) Labels(option int) []Label {
	if st.at(option) == nil || !st.visible(option) {
		return nil
	}
	view := st.look(option)
	return st.options[option].scene.Labels(&view)
}

// SetLook turns the picture of an option.
func (st *Stage) SetLook(option int, look Look) {
	if before, set := st.looks[option]; !set || before != look {
		st.looks[option] = look
		st.turned(option)
	}
}

// ResetLook takes an option back to the look at first.
func (st *Stage) ResetLook(option int) {
	if _, set := st.looks[option]; set {
		delete(st.looks, option)
		st.turned(option)
	}
}

func (st *Stage) turned(option int) {
	if o := st.at(option); o != nil {
		o.stale = true
	}
}

// Home is the look at first of an option, and the compass direction that the front of its rows faces [deg].
func (st *Stage) Home(option int) (look Look, front_deg float64) {
	o := st.at(option)
	if o == nil {
		o = &staged{}
	}
	return HomeLook(o.planting.RowAzimuth_deg, o.planting.Latitude_deg), Front(o.planting.RowAzimuth_deg, o.planting.Latitude_deg)
}

// at is an option; nil where there is none.
func (st *Stage) at(option int) *staged {
	if option < 0 || option >= len(st.options) {
		return nil
	}
	return st.options[option]
}

// Invalidate asks for everything to be drawn again, as after the loss of what was on the screen.
func (st *Stage) Invalidate() { st.stale = true }

// Stale reports whether anything has to be drawn.
func (st *Stage) Stale() bool {
	for i, o := range st.options {
		if o.stale && st.visible(i) {
			return true
		}
	}
	return st.stale
}

// Draw calls clear if the space between the panes has to be drawn again, and then draw for every pane.
// Otherwise it calls draw for one pane that has changed, so that drawing is a short task; it is stale as
// long as there are more.
func (st *Stage) Draw(clear func(), draw func(option int, scene *Scene, view *View, budget int)) {
	all, next := st.stale, st.drawn+1
	if st.stale = false; all {
		clear()
	}
	for k := range st.options {
		i := (next + k) % len(st.options)
		if o := st.options[i]; st.visible(i) && (o.stale || all) {
			view := st.view(i)
			draw(i, o.scene, &view, st.budget())
			if st.drawn = i; !all {
				return
			}
		}
	}
}

// view puts the camera of an option in front of its pane, and colours its fruit.
func (st *Stage) view(option int) View {
	o := st.options[option]
	if count := o.scene.Faces(); !o.coloured && (len(o.surface_C) == count || o.surface_C == nil) {
		o.scene.SetFaces(o.surface_C, o.lit, st.scale)
		o.coloured = true
	}
	o.stale = false
	return st.look(option)
}

// look puts the camera of an option in front of its pane.
func (st *Stage) look(option int) View {
	o := st.options[option]
	look, set := st.looks[option]
	if !set {
		look = HomeLook(o.planting.RowAzimuth_deg, o.planting.Latitude_deg)
	}
	// The rows run as they are lit, until they are lit as they run now.
	planting := o.scene.Planting()
	camera := look.Camera(planting.Stand, planting.RowAzimuth_deg, planting.Latitude_deg)
	view := o.scene.View(st.way, camera, st.panes[option])
	view.Bunch, view.Dark, view.Objects = o.bunch, st.dark, st.objects
	return view
}

func (st *Stage) budget() int {
	shown := 0
	for i := range st.options {
		if st.placed(i) {
			shown++
		}
	}
	return min(QuadBudget/max(shown, 1), PaneBudget)
}

// visible reports whether an option has a picture and a place for it.
func (st *Stage) visible(option int) bool {
	return st.options[option].scene != nil && st.placed(option)
}

// placed reports whether an option has a pane.
func (st *Stage) placed(option int) bool {
	return option < len(st.panes) && st.panes[option].Width >= 1 && st.panes[option].Height >= 1
}
