package sim

import (
	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/cover"
	"rowlight/sim/heat"
	"rowlight/sim/light"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/sky"
	"rowlight/sim/sunburn"
	"rowlight/sim/weather"
)

// The shares of an option's run that its stages take, for progress.
const (
	standDone = 0.05
	lightDone = 0.75
)

// option runs one option through the day.
func (e *Engine) option(s scenario.Scenario, o scenario.Option, course weather.Series, pace func() error, report Progress) (result.Option, OptionRun, error) {
	d, err := e.prepare(s, o, course, pace, report)
	if err != nil {
		return result.Option{}, OptionRun{}, err
	}
	report("heat", lightDone)
	if err := d.run(pace); err != nil {
		return result.Option{}, OptionRun{}, err
	}
	report("done", 1)
	return d.result(), OptionRun{Stand: d.stand.Stand, Faces: d.light.Faces, Surface_C: d.surface, Berry_C: d.whole, Lit: d.lit}, nil
}

// prepare finds stand and light of an option, the stages before heat.
func (e *Engine) prepare(s scenario.Scenario, o scenario.Option, course weather.Series, pace func() error, report Progress) (*optionDay, error) {
	report("stand", 0)
	stand, key, err := e.stand(s, o)
	if err != nil {
		return nil, err
	}
	report("light", standDone)
	model, lightKey, err := e.light(s, o, stand, key, pace)
	if err != nil {
		return nil, err
	}
	model, nettedKey, err := e.behind(s, o, stand, model, lightKey, pace)
	if err != nil {
		return nil, err
	}
	day, err := e.daylight(s, o, stand, model, lightKey, nettedKey, course, pace)
	if err != nil {
		return nil, err
	}
	d := newOptionDay(s, o, course, stand, model, day)
	d.pictured = true
	d.room(len(course.Instants))
	return d, nil
}

// optionDay is one option on its way through the day.
type optionDay struct {
	scenario scenario.Scenario
	option   scenario.Option
	course   weather.Series
	stand    *measured
	leafArea float64 // per ground area [m²/m²]
	step_min float64 // between two instants [min]
	light    *light.Model
	day      *daylight
	roof     roof
	nets     []cover.Panel // about the row
	slowed   slowed

	berry    heat.Berry
	nearOver float64 // near infrared from leaves that the skin takes in, over its share of sunlight, less 1 [1], ≥ −1
	leaf     heat.Leaf
	rule     sunburn.Rule
	floor    *heat.Floor
	received []float64 // longwave on each strip of floor [W/m²]
	pressure float64   // of the air [Pa]

	views    []faceViews
	mean     []float64 // whole-berry temperature of each face, carried from instant to instant [°C]
	states   []faceState
	before   []float64 // hottest point of each face at the last instant
	tallies  [2]sideTally
	pictured bool // the courses of the faces are kept
	surface  []float32
	whole    []float32
	lit      []uint8
}

// faceViews are the longwave views of a face.
type faceViews struct{ sky, ground, own, leaves, threads light.Broad }

func newOptionDay(s scenario.Scenario, o scenario.Option, course weather.Series, stand *measured, model *light.Model, day *daylight) *optionDay {
	faces := len(model.Faces)
	s.Fruit = s.FruitOf(o)
	d := &optionDay{
		scenario: s, option: o, course: course, stand: stand, light: model, day: day, step_min: step_min,
		berry: heat.NewBerry(s.Fruit, o.Bunches.Mass_g), rule: sunburn.NewRule(s),
		leaf:     heat.NewLeaf(o.Leaves.Blade_cm2, o.Leaves.Water),
		pressure: sky.Pressure(s.Site.Elevation_m),
		views:    make([]faceViews, faces), mean: make([]float64, faces), states: make([]faceState, faces),
		before: make([]float64, faces),
	}
	d.leafArea = stand.leafAreaIndex()
	d.floor = heat.NewFloor(s.Site.Floor, model.Strips, course.Instants[0].Air_C)
	d.received = make([]float64, model.Strips)
	d.roof, d.nets = roofOf(o), about(s, o, stand)
	d.slowed = slowedBy(d.nets, &d.roof)
	skin := cover.Skin(o.Shade.Film)
	d.berry.Absorptance *= skin
	d.berry.NearInfrared *= skin
	// A skin without a share has that of its colour, and no film takes it all: this is no division by zero.
	d.nearOver = d.berry.NearInfrared/d.berry.Absorptance - 1
	for f := range d.views {
		v := &d.views[f]
		_, _, v.own, v.leaves = model.Views(f)
		v.sky, v.ground, v.threads = model.Netted(f)
		d.mean[f] = course.Instants[0].Air_C
	}
	for side := range d.tallies {
		d.tallies[side].side = scenario.Side(side)
		d.tallies[side].tallies = make([]sunburn.Tally, faces/2)
	}
	return d
}

// run carries floor and berries through the day.
func (d *optionDay) run(pace func() error) error {
	if err := d.settle(pace); err != nil {
		return err
	}
	return d.live(pace)
}

// live carries berries through the instants, and the floor from where it is.
func (d *optionDay) live(pace func() error) error {
	for k := range d.course.Instants {
		if err := pace(); err != nil {
			return err
		}
		n, dt_s := d.enter(k)
		d.stepFaces(k, n, dt_s)
	}
	return nil
}

// enter carries the floor to instant k and gives the surroundings of the fruit, and the time that the
// berries have to follow.
func (d *optionDay) enter(k int) (n near, dt_s float64) {
	if k == 0 {
		return d.stepNear(k, 0), restingTime
	}
	return d.stepNear(k, d.step_min*60), d.step_min * 60
}

// restingTime is long enough for a berry to come to rest with the midnight that the day starts from [s].
const restingTime = 12 * 3600

// stepFaces carries every berry from the last instant to this one and records what comes of it.
func (d *optionDay) stepFaces(k int, n near, dt_s float64) {
	at := &d.day.instants[k]
	in := [2]heat.BerryIn{d.berry.In(&n.fruit[scenario.Left]), d.berry.In(&n.fruit[scenario.Right])}
	var load heat.Load
	for f := range d.views {
		d.loadOn(k, f, &n, &load)
		end, hottest := in[f%2].Follow(d.mean[f], &load, dt_s)
		d.mean[f] = end
		d.states[f] = faceState{hottest: hottest, mean: end, light: onFace(&d.light.Faces[f].Normal, &at.Short[f], &load), lit: at.Lit[f]}
	}
	d.record(k, &n.fruit)
}

// onFace is the sunlight on a face that looks along its normal [W/m²].
func onFace(normal *mgl64.Vec3, short *light.Broad, load *heat.Load) float64 {
	// Not max: browsers would call a function for every face.
	sum := short.On(normal)
	if sum < 0 {
		sum = 0
	}
	if facing := load.Sun[0]*normal[0] + load.Sun[1]*normal[1] + load.Sun[2]*normal[2]; facing > 0 {
		sum += load.Beam_Wm2 * facing
	}
	return sum
}

// loadOn finds the radiation on the berries of a face at instant k.
func (d *optionDay) loadOn(k, f int, n *near, load *heat.Load) {
	sky, at := &d.day.skies[k], &d.day.instants[k]
	// Sunlight counts in full; of the near infrared from leaves the skin takes in less.
	short := (*light.Broad)(&load.Short)
	*short = at.Short[f]
	short.AddScaled(&d.day.scatters[k].near[f], d.nearOver)
	load.Sun = sky.Sun
	d.longwave(k, f, n, (*light.Broad)(&load.LongNet))
	load.Transpiration_Wm2 = n.skin.SkinLatent(d.mean[f])
	load.Beam_Wm2 = 0
	if at.Lit[f] {
		load.Beam_Wm2 = sky.Beam * at.Share(f)
	}
	if n.mist.Skin > 0 {
		in := d.berry.In(&n.fruit[f%2])
		load.Transpiration_Wm2 += in.WetSkin(n.mist.Skin, d.mean[f], load)
	}
}

// around is the longwave that comes to a face, by where it comes from.
type around struct{ sky, floor, leaves, own, nets light.Broad }

// longwaveOn finds the longwave that comes to a face. Its own bunch is as warm as the berry was.
func (d *optionDay) longwaveOn(k, f int, n *near) around {
	v := &d.views[f]
	return around{
		sky:    v.sky.Times(n.sky),
		floor:  d.light.FloorLongwave(f, n.floor),
		leaves: v.leaves.Times(n.leaf),
		own:    v.own.Times(heat.Emitted(d.mean[f])),
		nets:   v.threads.Times(heat.Emitted(n.threads[f%2])),
	}
}

// longwave finds what a face absorbs from sky, floor, leaves, nets and its own bunch, beyond what it would emit
// at air temperature.
//
// It adds up what longwaveOn parts, in place: the chain passes here once for every face and instant.
func (d *optionDay) longwave(k, f int, n *near, sum *light.Broad) {
	v := &d.views[f]
	sum.SetScaled(&v.sky, n.sky)
	d.light.AddFloorLongwave(f, n.floor, sum)
	sum.AddScaled(&v.leaves, n.leaf)
	sum.AddScaled(&v.own, heat.Emitted(d.mean[f]))
	if len(d.nets) > 0 {
		sum.AddScaled(&v.threads, heat.Emitted(n.threads[f%2]))
	}
	sum.Mean -= n.long
	sum.SetScaled(sum, d.berry.Emissivity)
}

// record tallies the instant, and keeps it where there is to be a picture.
func (d *optionDay) record(k int, fruit *[2]heat.Around) {
	for side := range d.tallies {
		d.tallies[side].record(d.states, fruit[side].Air_C, fruit[side].Wind_ms)
	}
	for f := range d.states {
		state := &d.states[f]
		if k > 0 {
			d.rule.Step(&d.tallies[f%2].tallies[f/2], d.before[f], state.hottest, state.lit, d.step_min/60)
		}
		d.before[f] = state.hottest
	}
	if d.pictured {
		d.picture()
	}
}

// room is made for the pictures of so many instants.
func (d *optionDay) room(instants int) {
	cells := instants * len(d.views)
	d.surface, d.whole, d.lit = make([]float32, 0, cells), make([]float32, 0, cells), make([]uint8, 0, cells)
}

// picture keeps the instant of every face.
func (d *optionDay) picture() {
	from, n := len(d.surface), len(d.states)
	d.surface, d.whole, d.lit = d.surface[:from+n], d.whole[:from+n], d.lit[:from+n]
	surface, whole, lit := d.surface[from:], d.whole[from:], d.lit[from:]
	for f := range d.states {
		state := &d.states[f]
		surface[f], whole[f] = float32(state.hottest), float32(state.mean)
		if state.lit {
			lit[f] = 1
		}
	}
}

// result puts the day of the option together.
func (d *optionDay) result() result.Option {
	hours := make([]float64, len(d.course.Instants))
	for k := range hours {
		hours[k] = d.course.Instants[k].Hour_h
	}
	o := result.Option{Name: d.option.Called(), Form: d.option.Form, Canopy: d.canopy()}
	for _, side := range scenario.Sides {
		tally := &d.tallies[side]
		azimuth := d.option.Rows.SideAzimuth(side)
		o.Sides[side] = result.Side{
			Compass: scenario.Compass(azimuth), Azimuth_deg: azimuth,
			SunSide: d.option.Rows.SunSideOf(side, d.scenario.Site.Latitude_deg),
			Steps:   tally.steps, Summary: d.summary(side, hours),
		}
	}
	return o
}

// canopy is what the stand measures.
func (d *optionDay) canopy() result.Canopy {
	m := d.stand.measures
	return result.Canopy{
		LeafArea_m2_per_m:  m.LeafArea_m2_per_m,
		LeafArea_m2_per_ha: m.LeafArea_m2_per_ha,
		LeafAreaIndex:      d.leafArea,
		LeafDensity_m2_m3:  m.Density_m2_per_m3,
		LeafLayers:         m.LeafLayers, Gaps: m.Gaps, Exterior: m.Exterior,
		ExposedLeaf_m2_per_ha: m.ExposedLeaf_m2_per_ha, HeightToGap: m.HeightToGap,
		LeafToFruit_m2_per_kg: m.LeafToFruit_cm2_per_g / cm2_per_g,
		Intercepted:           d.day.intercepted,
		FruitHeight_m:         m.FruitHeight_m, Top_m: m.Top_m, Width_m: m.Width_m,
		ShootsPerVine: m.ShootsPerVine, BunchesPerVine: m.BunchesPerVine,
		Faces: len(d.light.Faces) / 2,
	}
}

// cm2_per_g is 1 m²/kg.
const cm2_per_g = 10.0
