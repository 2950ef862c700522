package sim

import (
	"math"

	"rowlight/sim/result"
)

// leanCourse is how hot the hottest fruit of either side is at the hours of lean days, by few bunches [°C]; −∞ by night.
type leanCourse [2][]float64

// hotFruit is how hot the hottest fruit of either side is in the run, at the hours of lean days.
type hotFruit [2]struct {
	more []float64 // than by few bunches [K]
	at   int       // the hottest of these hours
}

func newHotFruit(run *result.Option, few leanCourse) (all hotFruit) {
	for side := range all {
		of := &all[side]
		var course []float64
		for k, by := range few[side] {
			course = append(course, run.Sides[side].Steps.Hottest_C[k*int(leanStep_min/step_min)])
			more := course[k] - by
			if math.IsInf(by, -1) {
				more = 0
			}
			of.more = append(of.more, more)
		}
		of.at = highest(course)
	}
	return all
}

// hours are the clock hours at which fruit is hottest, those of the run unless a change moves them. Hours are not shifted as other
// numbers are: fruit is nearly as hot for hours, and what moves them among few bunches would name an hour without sun.
func (f *hotFruit) hours(run [2]float64, lived leanCourse) [2]float64 {
	for side := range run {
		course := make([]float64, len(lived[side]))
		for k, by := range lived[side] {
			course[k] = by + f[side].more[k]
		}
		if at := highest(course); at != f[side].at {
			run[side] = leanHours()[at]
		}
	}
	return run
}
