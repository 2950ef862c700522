package sim

import (
	"slices"

	"rowlight/sim/growth"
	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// Previews tell at once, and nearly, what a change makes of the numbers of a run: all but a change of the vines or of
// what hangs about them. The day is lived through by a part of the bunches in steps of 15 minutes, before and after the
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
	key  string // of the lean
	lean *lean
	day  numbers // of the run
	few  numbers // of the run, by the few bunches
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
		if of.key, err = leanKey(s, option); err != nil {
			return nil, err
		}
		if of.lean = earlier.find(of.key); of.lean == nil {
			if of.lean, err = e.lean(s, option, previewBunches, pace); err != nil {
				return nil, err
			}
		}
		for side := range of.day {
			sum := &run.Result.Options[i].Sides[side]
			of.day.put(side, sum.Summary, &sum.Steps, nil)
		}
		if of.few, err = t.live(of.lean, s, option, course, pace); err != nil {
			return nil, err
		}
		t.options = append(t.options, of)
	}
	return t, nil
}

// find is the lean of a key, nil where there is none.
func (t *Previews) find(key string) *lean {
	if t == nil {
		return nil
	}
	for i := range t.options {
		if t.options[i].key == key {
			return t.options[i].lean
		}
	}
	return nil
}

// live is the day of an option by few bunches.
func (t *Previews) live(l *lean, s scenario.Scenario, o scenario.Option, course weather.Series, pace func() error) (out numbers, err error) {
	d, err := l.live(s, o, course, &t.desk, pace)
	if err != nil {
		return out, err
	}
	hours := leanHours()
	from, to := daylit(course)
	for _, side := range scenario.Sides {
		out.put(int(side), d.summary(side, hours[from:to]), &d.tallies[side].steps, nil)
	}
	return out, nil
}

// Of is the preview of a changed scenario, which must be valid. It is nil where there is none: of nothing, for other vines,
// another number of options, and where nothing has changed that bears on heat or light.
func (t *Previews) Of(s scenario.Scenario, pace func() error) (*result.Preview, error) {
	if t == nil {
		return nil, nil
	}
	keys, err := optionKeys(s)
	if err != nil || len(keys) != len(t.options) || slices.Equal(keys, t.keys) {
		return nil, err
	}
	grown := growth.Grown(s)
	for i, option := range grown.Options {
		key, err := leanKey(grown, option)
		if err != nil || key != t.options[i].key {
			return nil, err
		}
	}
	course, err := weather.Course(grown, leanHours())
	if err != nil {
		return nil, err
	}
	out := &result.Preview{Options: make([]result.OptionPreview, len(keys))}
	for i, option := range grown.Options {
		of := &t.options[i]
		now := of.day
		if keys[i] != t.keys[i] {
			lived, err := t.live(of.lean, grown, option, course, pace)
			if err != nil {
				return nil, err
			}
			now = shifted(of.day, &lived, &of.few, &numbers{})
		}
		for _, side := range scenario.Sides {
			azimuth := option.Rows.SideAzimuth(side)
			out.Options[i].Sides[side] = result.SidePreview{
				Compass: scenario.Compass(azimuth), Azimuth_deg: azimuth,
				SunSide: option.Rows.SunSideOf(side, s.Site.Latitude_deg), Summary: now.summary(int(side)),
			}
		}
	}
	return out, nil
}
