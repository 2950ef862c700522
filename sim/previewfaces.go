package sim

import (
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// FacesSoon are the faces of an option at an instant after a change, nearly.
type FacesSoon struct {
	Surface_C []float32 // hottest point of the berry
	Lit       []uint8   // 1 when in the direct sun
	Sides     [2]SideSoon
}

// SideSoon is what the faces of a side make together.
type SideSoon struct {
	LitShare  float64 // of the faces that are in the direct sun [0–1]
	Mean_C    float64 // of their hottest points
	Hottest_C float64 // mean of the hottest tenth
}

// Sighted is what is seen of a changed scenario at an instant before its day has been run: where the sun is, and all faces of
// the options that have changed, nil for the others.
type Sighted struct {
	Now     weather.Instant
	Options []*FacesSoon
}

// sightedSteps is how many steps all bunches live through until the instant: the slowest berry follows its surroundings
// with a time constant of 10 minutes, and it starts at rest.
const sightedSteps = 4

// At sights a changed scenario, which must be valid, at an hour of its day [h]. It is nil where Of is.
func (t *Previews) At(s scenario.Scenario, hour_h float64, pace func() error) (*Sighted, error) {
	grown, keys, err := t.changed(s)
	if keys == nil || err != nil {
		return nil, err
	}
	leans, err := t.after(grown, pace)
	if leans == nil || err != nil {
		return nil, err
	}
	day, err := weather.Course(grown, leanHours())
	if err != nil {
		return nil, err
	}
	const step_h = step_min / 60.0
	hours := []float64{hour_h}
	for range sightedSteps {
		if before := hours[0] - step_h; before >= 0 {
			hours = append([]float64{before}, hours...)
		}
	}
	end, err := weather.Course(grown, hours)
	if err != nil {
		return nil, err
	}
	out := &Sighted{Now: end.Instants[len(hours)-1], Options: make([]*FacesSoon, len(keys))}
	for i, option := range grown.Options {
		if keys[i] == t.keys[i] {
			continue
		}
		if out.Options[i], err = t.options[i].sight(leans[i], grown, option, day, end, &t.desk, pace); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// sight carries the floor of a lean through the day to the last hours of it that all bunches live through.
func (t *footing) sight(l *lean, s scenario.Scenario, o scenario.Option, day, end weather.Series, on *desk, pace func() error) (*FacesSoon, error) {
	floor := newOptionDay(s, o, day, l.stand, l.model, l.daylight(o, day, 0, 0, on))
	floor.step_min = leanStep_min
	if err := floor.settle(pace); err != nil {
		return nil, err
	}
	k, start_h := 0, end.Instants[0].Hour_h
	for k+1 < len(day.Instants) && day.Instants[k+1].Hour_h <= start_h {
		k++
		floor.stepNear(k, floor.step_min*60)
	}
	light, err := l.allDaylight(skiesOver(end, o), t.model, t.scattered, pace)
	if err != nil {
		return nil, err
	}
	all := newOptionDay(s, o, end, l.stand, t.model, light)
	all.floor = floor.floor
	all.stepNear(0, (start_h-day.Instants[k].Hour_h)*3600)
	if err := all.live(pace); err != nil {
		return nil, err
	}
	all.room(1)
	all.picture()
	out := &FacesSoon{Surface_C: all.surface, Lit: all.lit}
	for side := range out.Sides {
		steps, last := &all.tallies[side].steps, len(end.Instants)-1
		out.Sides[side] = SideSoon{steps.LitShare[last], steps.Mean_C[last], steps.Hottest_C[last]}
	}
	return out, nil
}
