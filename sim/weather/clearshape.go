package weather

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

const (
	// shapeStep_min is the grid on which the sun of a clear day is laid under its light; the best offset is found
	// between its points.
	shapeStep_min = 5
	// shapeReach_min is how far a clock may be off and still be found.
	shapeReach_min = 150
	// clearLooked is how many days, those with most light of what comes from outside, are looked at.
	clearLooked = 40
	// A day is clear where the light leaves the shape of a clear sky by less than this share, at a scale between these;
	// assumptions, with which hourly files are found right to a minute or two.
	clearMisfit             = 0.05
	clearLeast, clearUtmost = 0.7, 1.25
	fewestClear             = 3
	shapeRows               = 6 // hours with light that a day needs
)

// haurwitz is the global light of a clear sky by the sine of the sun's elevation [W/m²] (Haurwitz 1945, Journal of
// Meteorology 2, with the rounded constants in use since). Only its shape counts here.
func haurwitz(sine float64) float64 {
	if sine <= 0 {
		return 0
	}
	return 1098 * sine * math.Exp(-0.057/sine)
}

// clearOffset finds by the clear days of a file how far from the stamps [min] its light lies: each day is compared with
// the light of a clear sky, moved step by step. It gives the median over the days, how far it may be off by their
// scatter, and how many they are; with fewer than three there is nothing to say.
func (f *File) clearOffset() (offset_min, unsure_min float64, days int) {
	var offsets []float64
	for _, day := range f.brightDays() {
		if offset, ok := f.clearDay(day); ok {
			offsets = append(offsets, offset)
		}
	}
	if len(offsets) < fewestClear {
		return 0, 0, 0
	}
	middle := median(offsets)
	away := make([]float64, len(offsets))
	for i, offset := range offsets {
		away[i] = math.Abs(offset - middle)
	}
	const ofNormal = 1.4826 * 1.2533 // from the median deviation to the standard error of a median
	return middle, ofNormal * median(away) / math.Sqrt(float64(len(offsets))), len(offsets)
}

func median(values []float64) float64 {
	slices.Sort(values)
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}

// brightDays are the whole days with most of the light that comes from outside, each as its rows.
func (f *File) brightDays() [][]Row {
	type bright struct {
		rows  []Row
		share float64
	}
	var days []bright
	for i := 0; i+hoursOfDay <= len(f.Rows); i++ {
		rows := f.Rows[i : i+hoursOfDay]
		if rows[0].Hour != 1 || rows[hoursOfDay-1].Hour != hoursOfDay || rows[hoursOfDay-1].Day != rows[0].Day {
			continue
		}
		sum := 0.0
		for _, row := range rows {
			if row.GHI > 0 {
				sum += row.GHI
			}
		}
		if outside := sky.DailyExtraterrestrial(f.Latitude_deg, rows[0].date().YearDay()); outside > 0 {
			days = append(days, bright{rows, sum / outside})
		}
		i += hoursOfDay - 1
	}
	slices.SortStableFunc(days, func(a, b bright) int { return cmp.Compare(b.share, a.share) })
	days = days[:min(len(days), clearLooked)]
	out := make([][]Row, len(days))
	for i, day := range days {
		out[i] = day.rows
	}
	return out
}

// ClearDay is the whole day of the file with most of the light that comes from outside, and its hours; ok is false in a file
// without a day that can be taken.
func (f *File) ClearDay() (day Day, hours []scenario.Hour, ok bool) {
	for _, rows := range f.brightDays() {
		first := rows[0]
		hours, faults := f.Day(first.Month, first.Day)
		if !Blocked(faults) {
			return Day{Year: first.Year, Month: first.Month, Day: first.Day}, hours, true
		}
	}
	return Day{}, nil, false
}

// clearDay finds the offset at which the light of one day has most of the shape of a clear sky; ok is false for a day
// that is not clear.
func (f *File) clearDay(rows []Row) (offset_min float64, ok bool) {
	const perHour = 60 / shapeStep_min
	const reach = shapeReach_min / shapeStep_min
	// The sun from an hour and the reach before the first stamp's hour to the reach after the last stamp, summed up, so
	// that the mean of any hour is a difference. Offsets count from the middle of the hour before the stamp.
	summed := make([]float64, hoursOfDay*perHour+2*reach+1)
	for k := 1; k < len(summed); k++ {
		middle := (float64(k-1-reach) + 0.5) * shapeStep_min // from 00:00 [min]
		at := f.sunAt(rows[0], middle-60)
		summed[k] = summed[k-1] + haurwitz(math.Sin(at.Elevation_deg*math.Pi/180))/perHour
	}
	misfit := func(steps int) (share, scale float64) {
		xx, xy, yy, count := 0.0, 0.0, 0.0, 0
		for i, row := range rows {
			from := i*perHour + reach + steps
			x, y := summed[from+perHour]-summed[from], row.GHI
			if math.IsNaN(y) {
				continue
			}
			if x > lightEnough_Wm2 || y > lightEnough_Wm2 {
				count++
			}
			xx, xy, yy = xx+x*x, xy+x*y, yy+y*y
		}
		if count < shapeRows || xx == 0 {
			return math.Inf(1), 0
		}
		return math.Sqrt(math.Max(yy-xy*xy/xx, 0) / yy), xy / xx
	}
	best, least, scale := 0, math.Inf(1), 0.0
	for steps := -reach; steps <= reach; steps++ {
		if share, a := misfit(steps); share < least {
			best, least, scale = steps, share, a
		}
	}
	if least > clearMisfit || scale < clearLeast || scale > clearUtmost || best == -reach || best == reach {
		return 0, false
	}
	before, _ := misfit(best - 1)
	after, _ := misfit(best + 1)
	return middleOfHour_min + shapeStep_min*(float64(best)+vertex(before*before, least*least, after*after)), true
}

// vertex is where a parabola through three points at −1, 0 and 1, the middle one lowest, has its bottom.
func vertex(before, middle, after float64) float64 {
	bend := before - 2*middle + after
	if !(bend > 0) {
		return 0
	}
	return math.Max(-0.5, math.Min(0.5, (before-after)/(2*bend)))
}
