package weather

import (
	"math"
	"slices"
	"time"
)

// reading is what one line of a file says of a stretch of time: means over it. Times are hours since the beginning of
// 1970 on the clock of the rows.
type reading struct {
	line     int
	from, to float64 // [h]
	row      Row     // its values; date and hour are not set
}

func (r *reading) middle() float64 { return (r.from + r.to) / 2 }

const (
	// leastCovered is how much of an hour must have light for its mean to stand for it [1]; an assumption.
	leastCovered = 0.75
	// nearStamp_h is how far the middle of a lone reading may lie from a stamp and still give its value [h].
	nearStamp_h = 0.5
	// longestStep_h is how long one reading may last [h].
	longestStep_h = 1
	timeGrain_h   = 1e-6 // [h], far below any clock
)

// series are readings whose times rise.
type series []reading

// The values of a row that are means over its hour, and those that stand at its stamp.
var (
	hourMeans = []func(*Row) *float64{
		func(r *Row) *float64 { return &r.GHI }, func(r *Row) *float64 { return &r.DNI },
		func(r *Row) *float64 { return &r.DHI }, func(r *Row) *float64 { return &r.Longwave_Wm2 },
	}
	stampValues = []func(*Row) *float64{
		func(r *Row) *float64 { return &r.Air_C }, func(r *Row) *float64 { return &r.Dew_C },
		func(r *Row) *float64 { return &r.Humidity_pct }, func(r *Row) *float64 { return &r.Opaque_tenths },
	}
)

// emptyRow is a row without any value.
func emptyRow() Row {
	row := Row{WindFrom_deg: missing(), Wind_ms: missing()}
	for _, value := range slices.Concat(hourMeans, stampValues) {
		*value(&row) = missing()
	}
	return row
}

// hourly makes rows of all hours that readings touch. Light and longwave keep their sums, and are missing where the
// readings cover too little of the hour; air, humidity and cloud run straight between the middles of the readings to
// the stamp; wind is the mean of the half hours before and after the stamp, its direction that of the mean vector.
func (s series) hourly() []Row {
	var rows []Row
	last := math.Inf(-1)
	for i := range s {
		for end := math.Floor(s[i].from+timeGrain_h) + 1; end-1 < s[i].to-timeGrain_h; end++ {
			if end > last {
				rows = append(rows, s.hour(end, s[i].line))
				last = end
			}
		}
	}
	return rows
}

// hour makes the row of the hour that ends at a time.
func (s series) hour(end float64, line int) Row {
	row := emptyRow()
	row.Line, row.stamped = line, true
	day := time.Unix(0, 0).UTC().Add(time.Duration(math.Round(end)-1) * time.Hour)
	row.Year, row.Month, row.Day, row.Hour = day.Year(), int(day.Month()), day.Day(), day.Hour()+1
	for _, value := range hourMeans {
		mean, covered := s.mean(end-1, end, func(r *Row) float64 { return *value(r) })
		if covered >= leastCovered-timeGrain_h {
			*value(&row) = mean
		}
	}
	for _, value := range stampValues {
		*value(&row) = s.valueAt(end, value)
	}
	row.Wind_ms, row.WindFrom_deg = s.windAbout(end)
	return row
}

// touching are the readings of a stretch of time.
func (s series) touching(from, to float64) series {
	first, _ := slices.BinarySearchFunc(s, from+timeGrain_h, func(r reading, t float64) int {
		if r.to <= t {
			return -1
		}
		return 1
	})
	end := first
	for end < len(s) && s[end].from < to-timeGrain_h {
		end++
	}
	return s[first:end]
}

// mean is the mean of a value over a stretch of time, and how much of it has one [h].
func (s series) mean(from, to float64, value func(*Row) float64) (mean, covered float64) {
	sum := 0.0
	touching := s.touching(from, to)
	for i := range touching {
		r := &touching[i]
		if v := value(&r.row); !math.IsNaN(v) {
			share := math.Min(r.to, to) - math.Max(r.from, from)
			sum, covered = sum+share*v, covered+share
		}
	}
	if covered == 0 {
		return missing(), 0
	}
	return sum / covered, covered
}

// valueAt is a value at a time: straight between the middles of the readings before and after, or that of the nearer
// one where the other has none and it is near.
func (s series) valueAt(t float64, value func(*Row) *float64) float64 {
	after, _ := slices.BinarySearchFunc(s, t, func(r reading, t float64) int {
		if r.middle() < t {
			return -1
		}
		return 1
	})
	b, toB := missing(), math.Inf(1)
	if after < len(s) {
		b, toB = *value(&s[after].row), s[after].middle()-t
	}
	a, toA := missing(), math.Inf(1)
	if after > 0 {
		a, toA = *value(&s[after-1].row), t-s[after-1].middle()
	}
	switch {
	case !math.IsNaN(a) && !math.IsNaN(b) && toA+toB <= longestStep_h+timeGrain_h:
		return mix(a, b, toA/(toA+toB))
	case !math.IsNaN(b) && toB <= nearStamp_h+timeGrain_h && (math.IsNaN(a) || toB <= toA):
		return b
	case !math.IsNaN(a) && toA <= nearStamp_h+timeGrain_h:
		return a
	}
	return missing()
}

// windAbout is the mean wind of the half hours before and after a time, and where it comes from.
func (s series) windAbout(t float64) (speed_ms, from_deg float64) {
	speed_ms, _ = s.mean(t-0.5, t+0.5, func(r *Row) float64 { return r.Wind_ms })
	east, _ := s.mean(t-0.5, t+0.5, func(r *Row) float64 { return r.windFrom(math.Sin) })
	north, _ := s.mean(t-0.5, t+0.5, func(r *Row) float64 { return r.windFrom(math.Cos) })
	if math.IsNaN(east) || east == 0 && north == 0 {
		return speed_ms, missing()
	}
	return speed_ms, math.Mod(math.Atan2(east, north)*180/math.Pi+360, 360)
}

// windFrom is a part of the vector of the wind; where its speed is missing every wind counts alike.
func (r *Row) windFrom(part func(float64) float64) float64 {
	speed := r.Wind_ms
	if math.IsNaN(speed) {
		speed = 1
	}
	return speed * part(r.WindFrom_deg*math.Pi/180)
}

// takeSeries makes the rows of a file from its readings. Those that do not come after the one before are left out.
func (f *File) takeSeries(readings series, faults *report) {
	f.Rows = rising(readings, faults).hourly()
	if len(f.Rows) > mostRows {
		f.Rows = f.Rows[:mostRows]
		faults.notice("notice.file-long", map[string]any{"max": mostRows})
	}
	b := builder{file: f, faults: faults}
	b.checkEnd("")
}

// rising are the readings that come after the one before.
func rising(readings series, faults *report) series {
	var kept series
	for _, r := range readings {
		if n := len(kept); n > 0 && r.from < kept[n-1].to-timeGrain_h {
			faults.at(r.line, 0, "fault.file-again", map[string]any{"found": clockText(r.from), "before": clockText(kept[n-1].from)})
			continue
		}
		kept = append(kept, r)
	}
	return kept
}

// clockText is a time as year-month-day hour:minute.
func clockText(hours float64) string {
	return time.Unix(0, 0).UTC().Add(time.Duration(math.Round(hours*60)) * time.Minute).Format("2006-01-02 15:04")
}
