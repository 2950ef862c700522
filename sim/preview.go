package sim

import (
	"math"
	"slices"

	"rowlight/sim/growth"
	"rowlight/sim/light"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
	"rowlight/sim/weather"
)

// Previews tell at once, and nearly, what a change makes of the numbers of a run: all but one of how many bunches there are, of the
// rows' and vines' distances, or of what hangs about the vines. The day is lived through by a part of the bunches in steps of 15 minutes, before and after the
// change, and what differs is added to the numbers of the run. It is not safe for concurrent use.
type Previews struct {
	keys    []string // of the options of the run
	options []previewed
	desk    desk
}

// previewBunches is how many a side live through previews, at least, if there are as many: by fewer the hottest tenth
// jumps from one fleck of sun to the next as rows turn.
const previewBunches = 100

// previewed is an option of the run.
type previewed struct {
	footing
	last  drawn     // of other leaves
	vines *unpulled // whose leaves were pulled last; nil at first
	day   numbers   // of the run
	few   numbers   // of the run, by the few bunches
	fruit hotFruit  // of the run
}

// unpulled are vines with all leaves that crews may pull.
type unpulled struct {
	key string
	*training.Vines
}

// footing is what an option stands on under any sky, with all of its bunches and with few.
type footing struct {
	key       string // of the lean
	about     string // key of what is about its stand
	lean      *lean
	before    *light.Before // its leaves
	model     *light.Model
	scattered *scattering
}

// Previews prepares for changes of a scenario after its run. What stands unchanged since an earlier one, which may be
// nil, is taken from there. Pace is as for Day.
func (e *Engine) Previews(s scenario.Scenario, run *Run, earlier *Previews, pace func() error) (*Previews, error) {
	keys, err := optionKeys(s)
	if err != nil {
		return nil, err
	}
	t := &Previews{keys: keys}
	s = growth.Grown(s)
	course, err := weather.Course(s, leanHours())
	if err != nil {
		return nil, err
	}
	for i, option := range s.Options {
		of := previewed{}
		if earlier != nil && i < len(earlier.options) {
			of.vines = earlier.options[i].vines
		}
		if of.footing, err = e.footing(s, option, earlier, pace); err != nil {
			return nil, err
		}
		for side := range of.day {
			sum := &run.Result.Options[i].Sides[side]
			of.day.put(side, sum.Summary, &sum.Steps, nil)
		}
		var few leanCourse
		if of.few, few, err = t.live(of.lean, s, option, course, pace); err != nil {
			return nil, err
		}
		of.fruit = newHotFruit(&run.Result.Options[i], few)
		t.options = append(t.options, of)
	}
	return t, nil
}

// footing prepares what an option stands on, or takes it from earlier previews.
func (e *Engine) footing(s scenario.Scenario, o scenario.Option, earlier *Previews, pace func() error) (out footing, err error) {
	if out.key, err = leanKey(s, o); err != nil {
		return out, err
	}
	if out.about, err = keyOf(aboutStand(s, o)); err != nil {
		return out, err
	}
	if earlier != nil {
		for i := range earlier.options {
			if earlier.options[i].key == out.key {
				return earlier.options[i].footing, nil
			}
		}
	}
	stand, model, all, err := e.fruit(s, o, pace)
	if err != nil {
		return out, err
	}
	out.model, out.scattered = model, all
	out.before = light.NewBefore(stand.Stand, slopeInRow(s.Site, o.Rows))
	out.lean, err = leanOf(stand, model, all, previewBunches, pace)
	return out, err
}

// live is the day of an option by few bunches: its numbers, and how hot its hottest fruit is.
func (t *Previews) live(l *lean, s scenario.Scenario, o scenario.Option, course weather.Series, pace func() error) (out numbers, hottest leanCourse, err error) {
	d, err := l.live(s, o, course, &t.desk, pace)
	if err != nil {
		return out, hottest, err
	}
	hours := leanHours()
	from, to := daylit(course)
	for _, side := range scenario.Sides {
		steps := &d.tallies[side].steps
		out.put(int(side), d.summary(side, hours[from:to]), steps, nil)
		hottest[side] = slices.Repeat([]float64{math.Inf(-1)}, len(hours))
		copy(hottest[side][from:to], steps.Hottest_C)
	}
	return out, hottest, nil
}

// Of is the preview of a changed scenario, which must be valid. It is nil where there is none: of nothing, for more or fewer bunches,
// another number of options, and where nothing has changed that bears on heat or light.
func (t *Previews) Of(s scenario.Scenario, pace func() error) (*result.Preview, error) {
	grown, keys, err := t.changed(s)
	if keys == nil || err != nil {
		return nil, err
	}
	leans, err := t.after(grown, pace)
	if leans == nil || err != nil {
		return nil, err
	}
	course, err := weather.Course(grown, leanHours())
	if err != nil {
		return nil, err
	}
	out := &result.Preview{Options: make([]result.OptionPreview, len(keys))}
	for i, option := range grown.Options {
		of := &t.options[i]
		sums := [2]result.Summary{of.day.summary(0), of.day.summary(1)}
		if keys[i] != t.keys[i] {
			lived, hottest, err := t.live(leans[i], grown, option, course, pace)
			if err != nil {
				return nil, err
			}
			now := shifted(of.day, &lived, &of.few, &numbers{})
			at := of.fruit.hours([2]float64{sums[0].HottestAt_h, sums[1].HottestAt_h}, hottest)
			for side := range sums {
				sums[side] = now.summary(side)
				sums[side].HottestAt_h = at[side]
			}
		}
		for _, side := range scenario.Sides {
			azimuth := option.Rows.SideAzimuth(side)
			out.Options[i].Sides[side] = result.SidePreview{
				Compass: scenario.Compass(azimuth), Azimuth_deg: azimuth,
				SunSide: option.Rows.SunSideOf(side, s.Site.Latitude_deg), Summary: sums[side],
			}
		}
	}
	return out, nil
}

// after are the leans of all options as they are now, none where there is no telling of one.
func (t *Previews) after(grown scenario.Scenario, pace func() error) ([]*lean, error) {
	leans := make([]*lean, len(t.options))
	for i, option := range grown.Options {
		var err error
		if leans[i], err = t.options[i].after(grown, option, pace); leans[i] == nil || err != nil {
			return nil, err
		}
	}
	return leans, nil
}

// changed grows the vines of a scenario and gives the keys of its options, none where they are other options or nothing has
// changed that bears on heat or light.
func (t *Previews) changed(s scenario.Scenario) (grown scenario.Scenario, keys []string, err error) {
	if t == nil {
		return s, nil, nil
	}
	keys, err = optionKeys(s)
	if err != nil || len(keys) != len(t.options) || slices.Equal(keys, t.keys) {
		return s, nil, err
	}
	return growth.Grown(s), keys, nil
}
