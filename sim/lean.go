package sim

import (
	"rowlight/sim/canopy"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// A run over many days and row directions is leaner than that of one day: its steps are as long as the floor
// allows, its fruit is a part of the stand's, typical of the whole, and scattered light, linear in sun and sky, is
// looked up by the direction of the sun in the row frame.
const (
	leanStep_min = 15.0
	leanBunches  = 50  // a side, if there are as many; rows read from either end make twice as many
	answerStep   = 7.5 // lattice of sun directions [deg]
)

// lean is a stand ready for any day and any azimuth: nothing in it depends on site, date or weather. It does not
// change once it is made, so that many runs may share it.
type lean struct {
	stand    *measured
	model    *light.Model
	lattice  canopy.Lattice
	beam     []answer // to a sun of unit irradiance in every direction of the lattice
	even     answer   // to an even sky of unit irradiance, with the sky that the faces see
	stripSky []float64
	openness float64
	sketched *sketched // nil but in sketches
}

// leansKept is how many are remembered: twice those of one run.
const leansKept = 2 * leansAtOnce

// leanKey tells leans apart by the inputs of stand and light, without making them.
func leanKey(s scenario.Scenario, o scenario.Option) (string, error) {
	stand, err := standKey(s, o)
	if err != nil {
		return "", err
	}
	return keyOf(stand, aboutStand(s, o))
}

// aboutStand are the inputs of light beside the stand.
func aboutStand(s scenario.Scenario, o scenario.Option) []any {
	side := scenario.SunSide("") // of the left, where nets hang by it
	if o.Shade.NetSides == scenario.MorningSide || o.Shade.NetSides == scenario.AfternoonSide {
		side = o.Rows.SunSideOf(scenario.Left, s.Site.Latitude_deg)
	}
	return []any{lightSettings(s, o), o.Shade, side, s.Site.Floor}
}

// lean prepares an option with so many bunches a side, if there are as many.
func (e *Engine) lean(s scenario.Scenario, o scenario.Option, bunches int, pace func() error) (*lean, error) {
	stand, model, all, err := e.fruit(s, o, pace)
	if err != nil {
		return nil, err
	}
	return leanOf(stand, model, all, bunches, pace)
}

// fruit prepares all bunches of an option, whatever the sun and the sky.
func (e *Engine) fruit(s scenario.Scenario, o scenario.Option, pace func() error) (*measured, *light.Model, *scattering, error) {
	stand, key, err := e.stand(s, o)
	if err != nil {
		return nil, nil, nil, err
	}
	model, lightKey, err := e.light(s, o, stand, key, pace)
	if err != nil {
		return nil, nil, nil, err
	}
	model, _, err = e.behind(s, o, stand, model, lightKey, pace)
	if err != nil {
		return nil, nil, nil, err
	}
	all, _, err := e.scattering(s, o, stand, model, lightKey, pace)
	return stand, model, all, err
}

// leanOf takes so many bunches a side of all, if there are as many.
func leanOf(stand *measured, model *light.Model, all *scattering, bunches int, pace func() error) (*lean, error) {
	few := model.Typical(max(len(model.Faces)/2/bunches, 1))
	exchange, err := all.onto(few, pace)
	if err != nil {
		return nil, err
	}
	return newLean(stand, few, exchange, pace)
}

// newLean asks the exchange for its answer to every sun.
func newLean(stand *measured, model *light.Model, exchange *scattering, pace func() error) (*lean, error) {
	l := &lean{
		stand: stand, model: model, lattice: canopy.Full(answerStep),
		stripSky: exchange.stripSky, openness: exchange.openness,
	}
	l.beam = make([]answer, l.lattice.Size())
	for i := range l.beam {
		if err := pace(); err != nil {
			return nil, err
		}
		l.beam[i] = exchange.ask(model, light.Sky{Sun: l.lattice.Direction(i), Beam: 1})
	}
	l.even = exchange.ask(model, light.Sky{Sun: l.lattice.Direction(l.lattice.Size() - 1), Diffuse: 1})
	for f := range l.even.short {
		sky, _ := model.SeenThrough(f)
		l.even.short[f].AddScaled(&sky, 1)
	}
	return l, nil
}

// leanHours are the clock hours of lean days.
func leanHours() []float64 {
	var hours []float64
	for k := 0; float64(k)*leanStep_min <= 24*60; k++ {
		hours = append(hours, float64(k)*leanStep_min/60)
	}
	return hours
}

// desk holds the arrays of a run, so that the next one can use them again. Every worker has its own.
type desk struct{ day daylight }

// daylight is the light of a day with the rows of an option, on faces only where berries live through it.
func (l *lean) daylight(o scenario.Option, course weather.Series, from, to int, on *desk) *daylight {
	n, over := len(course.Instants), roofOf(o)
	if len(on.day.instants) != n || len(on.day.instants[0].Lit) != len(l.model.Faces) {
		on.day = daylight{skies: make([]light.Sky, n), instants: make([]light.Instant, n), scatters: make([]scattered, n)}
		for k := range on.day.instants {
			none := newAnswer(l.model)
			on.day.instants[k], on.day.scatters[k] = light.Instant{Lit: make([]bool, len(l.model.Faces)), Short: none.short}, none.scattered
		}
	}
	day := on.day
	day.stripSky, day.openness = l.stripSky, l.openness
	for k := range day.skies {
		sky := over.sky(&course.Instants[k], o.Rows)
		day.skies[k] = sky
		at := answer{day.instants[k].Short, day.scatters[k]}
		at.clear()
		l.answer(sky, &at, k >= from && k < to)
		day.scatters[k] = at.scattered
		if k >= from && k < to {
			l.sketched.turn(sky, &at)
			l.model.LitBy(sky, &day.instants[k])
		}
	}
	return &day
}

// answer adds up what leaves and floor make of a sky.
func (l *lean) answer(sky light.Sky, at *answer, faces bool) {
	at.addFloor(&l.even, sky.Diffuse)
	if faces {
		at.addFaces(&l.even, sky.Diffuse)
	}
	if sky.Beam <= 0 {
		return
	}
	sample, _ := l.lattice.Sample(sky.Sun) // a full lattice has every direction
	directions, weights := sample.Parts()
	for i, direction := range directions {
		at.addFloor(&l.beam[direction], weights[i]*sky.Beam)
		if faces {
			at.addFaces(&l.beam[direction], weights[i]*sky.Beam)
		}
	}
}

// live carries floor and berries of an option through a day.
func (l *lean) live(s scenario.Scenario, o scenario.Option, course weather.Series, on *desk, pace func() error) (*optionDay, error) {
	from, to := daylit(course)
	d := newOptionDay(s, o, course, l.stand, l.model, l.daylight(o, course, from, to, on))
	d.step_min = leanStep_min
	if err := d.settle(pace); err != nil {
		return nil, err
	}
	return d, d.wake(from, to, pace)
}
