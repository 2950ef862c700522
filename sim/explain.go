package sim

import (
	"fmt"
	"math"
	"slices"

	"rowlight/sim/growth"
	"rowlight/sim/heat"
	"rowlight/sim/light"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// Where names one bunch face at one time of a day.
type Where struct {
	Option int
	Side   scenario.Side
	Bunch  int     // from 0; below 0 the bunch of the side whose face is hottest at the time
	Hour_h float64 // clock hour, 0 – 24; the nearest instant counts
}

// Explain runs one option of a scenario up to a time of its day and reads out how the surface temperature of one bunch
// face comes about: the last link is the value of the face in Day's run. Option and bunch must exist.
func (e *Engine) Explain(s scenario.Scenario, at Where, pace func() error) (result.Chain, error) {
	s = growth.Grown(s)
	course, err := weather.Course(s, instants())
	if err != nil {
		return result.Chain{}, fmt.Errorf("weather: %w", err)
	}
	d, err := e.prepare(s, s.Options[at.Option], course, pace, func(string, float64) {})
	if err != nil {
		return result.Chain{}, err
	}
	k := min(max(int(math.Round(at.Hour_h*60/step_min)), 0), len(course.Instants)-1)
	seen, err := d.inspect(k, at, pace)
	if err != nil {
		return result.Chain{}, err
	}
	return result.Chain{
		Option: string(rune('A' + at.Option)),
		Side:   scenario.Compass(s.Options[at.Option].Rows.SideAzimuth(at.Side)),
		Bunch:  seen.face/2 + 1, Bunches: len(d.views) / 2,
		Date: s.Weather.Date, Hour_h: course.Instants[k].Hour_h,
		Links: seen.links(),
	}, nil
}

// Bunches is the number of bunches of an option, those that Where counts.
func (e *Engine) Bunches(s scenario.Scenario, option int) (int, error) {
	stand, err := e.Stand(s, option)
	if err != nil {
		return 0, err
	}
	return len(stand.Bunches), nil
}

// inspection is a face at an instant with what the run knows of it.
type inspection struct {
	*optionDay
	k, face int
	dt_s    float64
	near    near
	before  float64 // whole berry at the instant before [°C]
	from    around
	load    heat.Load
	sight   light.Sight
	seen    bool // whether the sun stands within the dome of the face
	trace   heat.Trace
	hottest float64 // as the run records it [°C]
}

// inspect runs the day up to instant k and looks at a face there.
func (d *optionDay) inspect(k int, at Where, pace func() error) (*inspection, error) {
	if err := d.settle(pace); err != nil {
		return nil, err
	}
	for earlier := range k {
		if err := pace(); err != nil {
			return nil, err
		}
		n, dt_s := d.enter(earlier)
		d.stepFaces(earlier, n, dt_s)
	}
	before := slices.Clone(d.mean)
	n, dt_s := d.enter(k)
	d.stepFaces(k, n, dt_s)
	i := &inspection{optionDay: d, k: k, dt_s: dt_s, near: n, face: 2*at.Bunch + int(at.Side)}
	if at.Bunch < 0 {
		i.face = d.hottestFace(at.Side)
	}
	i.hottest = d.states[i.face].hottest
	i.before = before[i.face]
	// What a face receives depends on its own mean before the step.
	after := d.mean
	d.mean = before
	i.from = d.longwaveOn(k, i.face, &n)
	d.loadOn(k, i.face, &n, &i.load)
	d.mean = after
	i.sight, i.seen = d.light.Sight(i.face, d.day.skies[k])
	i.trace = d.berry.Trace(i.before, i.load, n.fruit[i.face%2], dt_s)
	return i, nil
}

// hottestFace is the face of a side with the hottest surface.
func (d *optionDay) hottestFace(side scenario.Side) int {
	best := int(side)
	for f := best; f < len(d.states); f += 2 {
		if d.states[f].hottest > d.states[best].hottest {
			best = f
		}
	}
	return best
}

// chain gathers links. What its parts, symbols and sources mean stands in the catalogues of sim/words.
type chain struct {
	part  string
	links []result.Link
}

// given adds a number from outside the chain, and says whence. A zero loses its sign.
func (c *chain) given(symbol string, value float64, unit, source string) {
	c.links = append(c.links, result.Link{Part: c.part, Symbol: symbol, Value: value + 0, Unit: unit, Source: source})
}

// follows adds a number that follows from those before by a relation, and says whose it is.
func (c *chain) follows(symbol string, value float64, unit, relation, source string) {
	c.given(symbol, value, unit, source)
	c.links[len(c.links)-1].Relation = relation
}

// one is 1 for what holds and 0 for what does not.
func one(holds bool) float64 {
	if holds {
		return 1
	}
	return 0
}
