package weather

import (
	"math"
	"time"

	"rowlight/sim/scenario"
	"rowlight/sim/sun"
)

// Times is what the light of a file says about its clock. Offsets count from the stamp [min].
type Times struct {
	By          Evidence // empty where there is none
	Best_min    float64  // offset at which the light fits the sun best
	Unsure_min  float64  // how far it may be off by its scatter; 0 of a closure
	Days        int      // clear days that say so; 0 of a closure
	Rule_min    float64  // offset that the format states, -30, the middle of the hour, or the file itself
	BestRMS_Wm2 float64  // how far the light fails to close at Best_min
	RuleRMS_Wm2 float64  // and at Rule_min
	Declared    bool     // the file states that its light is of moments, not of hours
}

// Evidence is what tells the clock of a file.
type Evidence string

// The evidence, the surest first.
const (
	// Closure: global light is beam times the sine of the elevation plus diffuse at the moment that the light belongs to.
	Closure Evidence = "closure"
	// ClearDays: on clear days light has the shape of a clear sky about noon.
	ClearDays Evidence = "clear-days"
	// Noon: over all days the middle of the light lies at noon.
	Noon Evidence = "noon"
)

const (
	middleOfHour_min = -30
	// clockTolerance_min is how far the best offset may lie from the stated one, so that five minutes are told, and
	// noonTolerance_min the middle of the light of all days from the transit of the sun.
	clockTolerance_min = 4
	noonTolerance_min  = 30
	// momentTolerance_min is how far the light of moments may sharpen the offset that a file states.
	momentTolerance_min = 10
	// The closure says something about the clock where it fails at the stated offset by this much more [W/m²] and this
	// much farther [1] than at the best one.
	flatRMS_Wm2, flatShare = 0.5, 1.2
	// The rows that are looked at: light enough, and no more than is needed of a year.
	lightEnough_Wm2 = 50
	mostChecked     = 600
	fewestChecked   = 20
	// closureReach_min is how far a clock may be off and still be found by closure.
	closureReach_min = 150
)

// Shift_min is how far the clock of the file goes ahead of the sun [min], behind it where negative.
func (t Times) Shift_min() float64 { return t.Rule_min - t.Best_min }

// Shifted tells whether the light shows the clock to be off.
func (t Times) Shifted() bool {
	switch t.By {
	case Closure:
		return math.Abs(t.Shift_min()) > clockTolerance_min &&
			t.RuleRMS_Wm2 > t.BestRMS_Wm2+flatRMS_Wm2 && t.RuleRMS_Wm2 > flatShare*t.BestRMS_Wm2
	case ClearDays:
		return math.Abs(t.Shift_min()) > math.Max(clockTolerance_min, 3*t.Unsure_min)
	case Noon:
		return math.Abs(t.Shift_min()) > noonTolerance_min
	}
	return false
}

// Verdict is what to say of the clock, as a code of the text catalogue and its parameters.
func (t Times) Verdict() scenario.Fault {
	off := scenario.Fault{Values: map[string]any{"off_min": math.Abs(t.Shift_min()), "days": t.Days, "way": "ahead"}}
	if t.Shift_min() < 0 {
		off.Values["way"] = "behind"
	}
	fits, shifted := "clock.unknown", ""
	switch t.By {
	case Closure:
		fits, shifted = "clock.fits-closure", "notice.file-shift-closure"
	case ClearDays:
		fits, shifted = "clock.fits-clear-days", "notice.file-shift-clear-days"
	case Noon:
		fits, shifted = "clock.fits-noon", "notice.file-shift-noon"
	}
	if off.Code = fits; t.Shifted() {
		off.Code = shifted
	}
	return off
}

// checkTimes finds the offset of the light and notes a clock that looks wrong.
func (f *File) checkTimes(faults *report) {
	if !f.Times.Declared {
		f.Times.Rule_min = middleOfHour_min
	}
	f.findOffset()
	if f.Times.By == "" {
		f.findByShape()
	}
	switch {
	case f.Times.Shifted():
		faults.notice(f.Times.Verdict().Code, f.Times.Verdict().Values)
	case f.Times.Declared:
		faults.notice("notice.file-moments", map[string]any{"offset_min": f.lightOffset_min()})
	}
}

// findByShape looks at clear days, or, without any, at the middle of all light.
func (f *File) findByShape() {
	t := &f.Times
	if t.Best_min, t.Unsure_min, t.Days = f.clearOffset(); t.Days > 0 {
		t.By = ClearDays
	} else if late_min, ok := f.noonLate_min(); ok {
		t.By, t.Best_min = Noon, t.Rule_min-late_min
	}
}

// lightOffset_min is the offset at which the light of the file is taken: the stated one, sharpened
// by the light itself where the file states that its light is of moments.
func (f *File) lightOffset_min() float64 {
	if f.Times.Declared && f.Times.By == Closure && math.Abs(f.Times.Shift_min()) <= momentTolerance_min {
		return f.Times.Best_min
	}
	return f.Times.Rule_min
}

// findOffset searches the offset that closes the light best, first in steps of ten minutes, then of one.
func (f *File) findOffset() {
	rows := thin(f.Rows, func(r Row) bool { return r.GHI > lightEnough_Wm2 && r.DNI >= 0 && r.DHI >= 0 })
	if len(rows) < fewestChecked {
		return
	}
	best, least := 0.0, math.Inf(1)
	search := func(from, to, step float64) {
		for offset := from; offset <= to; offset += step {
			if rms := f.closureRMS(rows, offset); rms < least {
				best, least = offset, rms
			}
		}
	}
	search(-closureReach_min, closureReach_min, 10)
	search(best-9, best+9, 1)
	t := &f.Times
	t.By, t.Best_min, t.BestRMS_Wm2 = Closure, best, least
	t.RuleRMS_Wm2 = f.closureRMS(rows, t.Rule_min)
}

// closureRMS is the root mean square of what is missing between global light and its parts when the
// light belongs to an offset from the stamps [W/m²].
func (f *File) closureRMS(rows []Row, offset_min float64) float64 {
	sum := 0.0
	for _, row := range rows {
		sine := math.Max(math.Sin(f.sunAt(row, offset_min).Elevation_deg*math.Pi/180), 0)
		off := row.GHI - row.DNI*sine - row.DHI
		sum += off * off
	}
	return math.Sqrt(sum / float64(len(rows)))
}

// noonLate_min is how much the middle of the global light lies after the transit of the sun; ok is false without light.
func (f *File) noonLate_min() (late_min float64, ok bool) {
	turned, light := 0.0, 0.0
	for _, row := range thin(f.Rows, func(r Row) bool { return r.GHI > 0 }) {
		angle := sun.HourAngle(f.Latitude_deg, f.Longitude_deg, f.moment(row, f.Times.Rule_min))
		turned += row.GHI * angle
		light += row.GHI
	}
	const minutesPerDegree = 24 * 60 / 360.0
	return turned / light * minutesPerDegree, light > 0
}

// checkNights notes hours that have light with the sun far down.
func (f *File) checkNights(faults *report) {
	const dark_deg, light_Wm2 = -8, 20 // half an hour before sunrise and after sunset stay above
	count := 0
	for _, row := range f.Rows {
		if row.GHI > light_Wm2 && f.sunAt(row, f.lightOffset_min()).Elevation_deg < dark_deg {
			count++
		}
	}
	if count > 0 {
		faults.notice("notice.file-night", map[string]any{"count": count})
	}
}

// moment is the instant that lies an offset from the stamp of a row.
func (f *File) moment(row Row, offset_min float64) time.Time {
	after := time.Duration(row.Hour)*time.Hour + time.Duration(offset_min*float64(time.Minute))
	return sun.Midnight(row.date(), f.UTCOffset_h).Add(after)
}

func (f *File) sunAt(row Row, offset_min float64) sun.Position {
	return sun.At(f.Latitude_deg, f.Longitude_deg, f.moment(row, offset_min))
}

// thin are at most mostChecked rows of those wanted, evenly over the file.
func thin(rows []Row, wanted func(Row) bool) []Row {
	var all []Row
	for _, row := range rows {
		if wanted(row) {
			all = append(all, row)
		}
	}
	stride := (len(all) + mostChecked - 1) / mostChecked
	if stride <= 1 {
		return all
	}
	var some []Row
	for i := 0; i < len(all); i += stride {
		some = append(some, all[i])
	}
	return some
}
