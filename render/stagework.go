package render

import (
	"errors"
	"slices"
)

// Left says what work a stage has.
type Left int

// Kinds of work, the more pressing ones last.
const (
	Nothing    Left = iota
	Refinement      // what is shown can be made finer when nobody is waiting for anything else
	News            // what is shown is not what was asked for
)

// Work brings what the panes show nearer to what was asked for, until enough reports true or nothing is left.
// It answers what is left then. With calm it also makes finer what is shown; without, it leaves that for
// later. What was asked for last is worked for first; an answer that is under way is finished, so that a
// picture follows a finger that keeps moving.
func (st *Stage) Work(calm bool, enough func() bool) Left {
	if st.work != nil && (st.workFor != nil && !slices.Contains(st.options, st.workFor) || st.refines && st.Left() == News) {
		st.work.stop()
		st.work = nil
	}
	for {
		if st.work == nil && !st.begin(calm) {
			return st.Left()
		}
		if !st.work.slice(enough) {
			return st.Left()
		}
		st.work = nil
		if enough() {
			return st.Left()
		}
	}
}

// Left says what work there is.
func (st *Stage) Left() Left {
	left := Nothing
	if st.work != nil {
		left = Refinement
	}
	if st.atlas == nil || st.work != nil && !st.refines {
		return News
	}
	for i := range st.options {
		left = max(left, st.leftFor(i))
	}
	return left
}

// leftFor is the work for one option. One that has no pane gets none.
func (st *Stage) leftFor(option int) Left {
	switch o := st.options[option]; {
	case !st.placed(option) || o.refused:
		return Nothing
	case o.scene == nil || !o.planted.equal(&o.wanted), o.scene.instant != st.instant,
		o.scene.planting != o.planting.with(o.scene.stand):
		return News
	case o.scene.coarse:
		return Refinement
	default:
		return Nothing
	}
}

// begin starts the most pressing work; false if there is none. Options take turns.
func (st *Stage) begin(calm bool) bool {
	left := st.Left()
	if left == Nothing || left == Refinement && !calm {
		return false
	}
	if st.refines = left == Refinement; st.atlas == nil {
		st.workFor, st.work = nil, newWork(st.drawAtlas)
		return true
	}
	next := st.worked + 1
	for k := range st.options {
		i := (next + k) % len(st.options)
		if st.leftFor(i) != left {
			continue
		}
		o := st.options[i]
		st.worked, st.workFor = i, o
		if o.scene == nil || !o.planted.equal(&o.wanted) {
			st.work = newWork(func(pace func() error) { st.plant(o, pace) })
		} else {
			st.work = newWork(func(pace func() error) { st.light(o, left == News, pace) })
		}
		return true
	}
	return false
}

func (st *Stage) drawAtlas(pace func() error) {
	if atlas, err := newAtlas(pace); err == nil {
		st.atlas = atlas
	}
}

// plant grows what an option wants and shows it.
func (st *Stage) plant(o *staged, pace func() error) {
	wanted, planting := o.wanted, o.planting
	shown, err := st.nursery.get(wanted, o.option, planting.Latitude_deg, st.atlas, pace)
	if err != nil {
		if !errors.Is(err, errAbandoned) && wanted.equal(&o.wanted) {
			o.scene, o.refused, st.stale = nil, true, true // its pane is cleared
		}
		return
	}
	scene := newScene(planting.with(shown.stand), shown, st.atlas)
	if scene.relight(st.instant, scene.planting, true, pace) != nil {
		return
	}
	o.scene, o.planted, o.coloured, o.stale = scene, wanted, false, true
}

// light moves the sun over an option, turns its rows and hangs its nets.
func (st *Stage) light(o *staged, coarse bool, pace func() error) {
	if o.scene.relight(st.instant, o.planting.with(o.scene.stand), coarse, pace) == nil {
		o.stale = true
	}
}
