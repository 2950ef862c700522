package sim

import (
	"fmt"
	"math"
	"slices"

	"rowlight/sim/heat"
	"rowlight/sim/internal/draw"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/spread"
	"rowlight/sim/sunburn"
	"rowlight/sim/weather"
)

// The days of draws are coarser than the central one. What is left of the difference after the same coarse day
// without draws is subtracted is far below any band.
const (
	coarseStep_min = 15.0 // as long as the floor allows
	thinBunches    = 50   // bunches that live through draws, at least, if there are as many
	before_h       = 1.0  // before the sun rises berries are about as warm as the air
	after_h        = 2.0  // after it has set they soon are, and no limit of necrosis is near
)

// coarse is the weather of the draws, shared by all options.
type coarse struct {
	hours     []float64
	from, to  int // instants that berries live through
	usual     weather.Series
	courses   []weather.Series // of each draw
	inputs    spread.Draw      // usual
	fieldHigh float64          // end of the range of light fields
	thickness [2]float64       // least and largest factor on optical depth
}

// newCoarse makes the weather of all draws.
func newCoarse(s scenario.Scenario, inputs []spread.Input, sample []spread.Draw, pace func() error) (*coarse, error) {
	c := &coarse{inputs: spread.Usual(inputs), fieldHigh: inputs[spread.Field].High}
	for k := 0; float64(k)*coarseStep_min <= 24*60; k++ {
		c.hours = append(c.hours, float64(k)*coarseStep_min/60)
	}
	var err error
	if c.usual, err = c.course(s, c.inputs); err != nil {
		return nil, err
	}
	for _, values := range sample {
		if err := pace(); err != nil {
			return nil, err
		}
		course, err := c.course(s, values)
		if err != nil {
			return nil, err
		}
		c.courses = append(c.courses, course)
	}
	c.from, c.to = daylit(c.usual)
	c.thickness = [2]float64{
		math.Min(inputs[spread.LeafArea].Low*inputs[spread.Clumping].Low, narrowest[0]),
		math.Max(inputs[spread.LeafArea].High*inputs[spread.Clumping].High, narrowest[1]),
	}
	return c, nil
}

// narrowest are factors on optical depth that lie far enough apart for a parabola.
var narrowest = [2]float64{0.9, 1.1}

// course is the weather of one draw. Measured hours hold their own sunlight.
func (c *coarse) course(s scenario.Scenario, values spread.Draw) (weather.Series, error) {
	s.Weather.Wind_ms *= values[spread.Wind]
	s.Weather.AOD380 *= values[spread.Turbidity]
	s.Weather.AOD500 *= values[spread.Turbidity]
	s.Weather.Hours = slices.Clone(s.Weather.Hours)
	for i := range s.Weather.Hours {
		s.Weather.Hours[i].Wind_ms *= values[spread.Wind]
	}
	series, err := weather.Course(s, c.hours)
	if err != nil {
		return series, fmt.Errorf("weather: %w", err)
	}
	return series, nil
}

// daylit are the instants, first and one past the last, about the time that the sun is up. On a polar day and
// night they are all.
func daylit(course weather.Series) (from, to int) {
	from, to = 0, len(course.Instants)
	if course.Events.Polar != "" {
		return from, to
	}
	rise, set := course.ClockHour(course.Events.Rise)-before_h, course.ClockHour(course.Events.Set)+after_h
	for from+1 < to && course.Instants[from+1].Hour_h <= rise {
		from++
	}
	for to-2 > from && course.Instants[to-2].Hour_h >= set {
		to--
	}
	return from, to
}

// thinOption is an option by a part of its bunches, ready for draws.
type thinOption struct {
	*thinLight
	scenario scenario.Scenario
	option   scenario.Option
	from, to int       // instants that berries live through
	hours    []float64 // of them
	day      daylight  // of the last draw
}

// thinLight is the light of an option on a part of its bunches: what a change of air, wind, fruit or limits leaves as it is.
type thinLight struct {
	stand   *measured
	between *light.Between
	answers [3]*answers // of scattered light, at the factors of between
	shade   shades
	shades  [fieldsDrawn]shades // by other light fields
	kept    float64             // share of bunches [0–1]
}

// thin finds stand and light of an option, where the run has left them, and prepares a part of its bunches.
func (e *Engine) thin(s scenario.Scenario, o scenario.Option, inputs []spread.Input, c *coarse, pace func() error) (*thinOption, error) {
	stand, key, err := e.stand(s, o)
	if err != nil {
		return nil, err
	}
	model, lightKey, err := e.light(s, o, stand, key, pace)
	if err != nil {
		return nil, err
	}
	model, nettedKey, err := e.behind(s, o, stand, model, lightKey, pace)
	if err != nil {
		return nil, err
	}
	t := &thinOption{scenario: s, option: o, from: c.from, to: c.to, hours: c.hours[c.from:c.to]}
	skies, over := make([]light.Sky, len(c.usual.Instants)), roofOf(o)
	for k := range skies {
		skies[k] = over.sky(&c.usual.Instants[k], o.Rows)
	}
	if key, err = keyOf(nettedKey, leafScatter(o), heat.FloorOf(s.Site.Floor).Albedo, skies, c.thickness, c.from, c.to); err != nil {
		return nil, err
	}
	t.thinLight, err = e.thins.get(key, func() (*thinLight, error) {
		usual, _, err := e.scattering(s, o, stand, model, lightKey, pace)
		if err != nil {
			return nil, err
		}
		return newThinLight(s, o, stand, model, usual, skies, c, pace)
	})
	return t, err
}

// newThinLight prepares the light. The exchange of light in the stand as it is comes from the run.
func newThinLight(s scenario.Scenario, o scenario.Option, stand *measured, model *light.Model, usual *scattering, skies []light.Sky, c *coarse, pace func() error) (*thinLight, error) {
	bunches := len(model.Faces) / 2
	few := model.Every(max(bunches/thinBunches, 1))
	t := &thinLight{stand: stand, kept: float64(len(few.Faces)/2) / float64(bunches), shade: newShades(few, skies[c.from:c.to])}
	for k := range t.shades {
		const seedOf draw.Purpose = 31
		seed := int(draw.New(s.Seed).Of(k).Bits(seedOf) >> 33)
		t.shades[k] = newShades(few.Reseeded(seed), skies[c.from:c.to])
		if err := pace(); err != nil {
			return nil, err
		}
	}
	var err error
	if t.between, err = light.NewBetween(few, c.thickness[0], c.thickness[1], pace); err != nil {
		return nil, err
	}
	for i, few := range t.between.Models {
		var exchange *scattering
		if factor := t.between.Factors[i]; factor == 1 {
			exchange, err = usual.onto(few, pace)
		} else {
			exchange, err = thicker(s, o, stand, few, factor, pace)
		}
		if err != nil {
			return nil, err
		}
		if t.answers[i], err = newAnswers(exchange, few, o, c.usual, pace); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// live carries floor and a part of the bunches through the day of a draw, lit as its shades say.
func (t *thinOption) live(course weather.Series, values spread.Draw, shade shades, pace func() error) (out numbers, err error) {
	s := t.scenario
	s.Limits.T50_C += values[spread.T50]
	model := t.between.At(values[spread.LeafArea] * values[spread.Clumping])
	d := newOptionDay(s, t.option, course, t.stand, model, t.daylight(course, values, model, shade))
	d.step_min = coarseStep_min
	d.leafArea *= values[spread.LeafArea]
	d.leaf.Stomata *= values[spread.Stomata]
	d.berry.Convection = values[spread.Convection]
	// The skin takes in as much more or less of all sunlight, so nearOver stays, even at a share of 0.
	d.berry.Absorptance = math.Min(math.Max(d.berry.Absorptance+values[spread.Skin], 0), 1)
	s.Fruit = s.FruitOf(t.option)
	d.rule = sunburn.NewRule(s)
	if err := d.settle(pace); err != nil {
		return out, err
	}
	if err := d.wake(t.from, t.to, pace); err != nil {
		return out, err
	}
	for _, side := range scenario.Sides {
		out.put(int(side), d.summary(side, t.hours), &d.tallies[side].steps, t.hours)
	}
	return out, nil
}

// wake carries the floor to the first of some instants and the berries through them.
func (d *optionDay) wake(from, to int, pace func() error) error {
	for k := 1; k <= from; k++ {
		d.stepNear(k, d.step_min*60)
	}
	d.course.Instants = d.course.Instants[from:to]
	d.day.skies, d.day.instants, d.day.scatters = d.day.skies[from:to], d.day.instants[from:to], d.day.scatters[from:to]
	for f := range d.mean {
		d.mean[f] = d.course.Instants[0].Air_C
	}
	return d.live(pace)
}
