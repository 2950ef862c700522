package weather

import (
	"math"
	"time"

	"rowlight/sim/sun"
)

// Times is what the light of a file says about its clock: global light is beam times the sine of
// the elevation plus diffuse, at the moment that the light belongs to. Offsets count from the stamp
// [min].
type Times struct {
	Checked     bool    // the file has global, beam and diffuse light enough to tell
	Best_min    float64 // offset at which the light closes best
	Rule_min    float64 // offset that the format states, -30, the middle of the hour, or the file itself
	BestRMS_Wm2 float64 // how far the light fails to close at Best_min
	RuleRMS_Wm2 float64 // and at Rule_min
	Declared    bool    // the file states that its light is of moments, not of hours
}

const (
	middleOfHour_min = -30
	// clockTolerance_min is how far the best offset may lie from the stated one, and noonTolerance_min
	// the middle of the light from the transit of the sun.
	clockTolerance_min = 10
	noonTolerance_min  = 30
	// flatRMS_Wm2 is the gain in closure below which the light says nothing about the clock.
	flatRMS_Wm2 = 1
	// The rows that are looked at: light enough, and no more than is needed of a year.
	lightEnough_Wm2 = 50
	mostChecked     = 600
	fewestChecked   = 20
)

// checkTimes finds the offset of the light and notes a clock that looks wrong.
func (f *File) checkTimes(faults *report) {
	if !f.Times.Declared {
		f.Times.Rule_min = middleOfHour_min
	}
	f.findOffset()
	times := f.Times
	shifted := times.Checked && math.Abs(times.Best_min-times.Rule_min) > clockTolerance_min &&
		times.RuleRMS_Wm2-times.BestRMS_Wm2 > flatRMS_Wm2
	switch {
	case shifted:
		faults.notice("notice.file-shift", map[string]any{"best_min": times.Best_min, "rule_min": times.Rule_min})
	case times.Declared:
		faults.notice("notice.file-moments", map[string]any{"offset_min": f.lightOffset_min()})
	case !times.Checked:
		if late_min := f.noonLate_min(); math.Abs(late_min) > noonTolerance_min {
			faults.notice("notice.file-noon", map[string]any{"late_min": late_min})
		}
	}
}

// lightOffset_min is the offset at which the light of the file is taken: the stated one, sharpened
// by the light itself where the file states that its light is of moments.
func (f *File) lightOffset_min() float64 {
	if f.Times.Declared && f.Times.Checked && math.Abs(f.Times.Best_min-f.Times.Rule_min) <= clockTolerance_min {
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
	search(-120, 120, 10)
	search(best-9, best+9, 1)
	f.Times.Checked = true
	f.Times.Best_min, f.Times.BestRMS_Wm2 = best, least
	f.Times.RuleRMS_Wm2 = f.closureRMS(rows, f.Times.Rule_min)
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

// noonLate_min is how much the middle of the global light lies after the transit of the sun.
func (f *File) noonLate_min() float64 {
	turned, light := 0.0, 0.0
	for _, row := range thin(f.Rows, func(r Row) bool { return r.GHI > 0 }) {
		angle := sun.HourAngle(f.Latitude_deg, f.Longitude_deg, f.moment(row, f.Times.Rule_min))
		turned += row.GHI * angle
		light += row.GHI
	}
	if light == 0 {
		return 0
	}
	const minutesPerDegree = 24 * 60 / 360.0
	return turned / light * minutesPerDegree
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
