package weather

import (
	"fmt"
	"math"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

// longestGap is how many hours in a row without a value of air, dew point or wind are filled
// between their neighbours.
const longestGap = 3

// Day gives the 24 hours of a day of the file, as a scenario keeps them. Faults block where the
// file lacks the day, one of its hours, or values that nothing can stand in for; notices tell what
// was filled: beam and diffuse split from global light (Erbs et al. 1982) or closed from each
// other, the dew point from humidity, longwave from clouds, gaps of up to three hours in the rest.
func (f *File) Day(month, day int) ([]scenario.Hour, []Fault) {
	faults := &report{}
	indices := f.hoursOf(month, day, faults)
	if Blocked(faults.faults) {
		return nil, faults.list()
	}
	d := fileDay{file: f, faults: faults, filled: map[string]int{}, moments: map[int]sky.Irradiance{}}
	hours := make([]scenario.Hour, hoursOfDay)
	for i, index := range indices {
		hours[i] = d.hour(index)
	}
	d.tell()
	if list := faults.list(); Blocked(list) {
		return nil, list
	}
	return hours, faults.list()
}

// hoursOf finds the rows of the hours 1 to 24 of a day.
func (f *File) hoursOf(month, day int, faults *report) (indices [hoursOfDay]int) {
	date := fmt.Sprintf("%02d-%02d", month, day)
	count := [hoursOfDay]int{}
	found := false
	for i, row := range f.Rows {
		if row.Month == month && row.Day == day {
			indices[row.Hour-1] = i
			count[row.Hour-1]++
			found = true
		}
	}
	if !found {
		values := map[string]any{"date": date}
		if n := len(f.Rows); n > 0 {
			values["from"], values["to"] = f.Rows[0].stamp(), f.Rows[n-1].stamp()
		}
		faults.block(0, 0, "fault.day-absent", values)
		return indices
	}
	for hour, times := range count {
		if times != 1 {
			faults.block(0, 0, "fault.day-hours", map[string]any{"date": date, "hour": hour + 1, "count": times})
		}
	}
	return indices
}

// fileDay makes hours of one day.
type fileDay struct {
	file   *File
	faults *report
	filled map[string]int // hours by the code of the notice
	// moments is the light of the rows of a file whose light is of moments.
	moments map[int]sky.Irradiance
}

// tell notes what was filled, in a fixed order.
func (d *fileDay) tell() {
	for _, code := range []string{
		"notice.day-split", "notice.day-closed", "notice.day-dew", "notice.day-longwave", "notice.day-filled", "notice.day-wind-from",
	} {
		if count := d.filled[code]; count > 0 {
			d.faults.notice(code, map[string]any{"count": count})
		}
	}
}

func (d *fileDay) hour(index int) scenario.Hour {
	row := d.file.Rows[index]
	air := d.value(index, "air", func(r Row) float64 { return r.Air_C })
	dew := math.Min(d.value(index, "dewPoint", dewOf), air)
	if math.IsNaN(row.Dew_C) && !math.IsNaN(dewOf(row)) {
		d.filled["notice.day-dew"]++
	}
	light := d.light(index)
	return scenario.Hour{
		GHI_Wm2: light.GHI, DNI_Wm2: light.DNI, DHI_Wm2: light.DHI,
		Air_C: air, DewPoint_C: dew,
		Wind_ms:      d.value(index, "wind", func(r Row) float64 { return r.Wind_ms }),
		WindFrom_deg: d.windFrom(index),
		Longwave_Wm2: d.longwave(row, air, dew),
	}
}

// value is a value of a row, or one between its neighbours where it is missing.
func (d *fileDay) value(index int, what string, of func(Row) float64) float64 {
	rows := d.file.Rows
	if value := of(rows[index]); !math.IsNaN(value) {
		return value
	}
	before, after := index, index
	for before >= 0 && index-before <= longestGap && math.IsNaN(of(rows[before])) {
		before--
	}
	for after < len(rows) && after-index <= longestGap && math.IsNaN(of(rows[after])) {
		after++
	}
	if before < 0 || after >= len(rows) || after-before > longestGap+1 {
		d.faults.block(rows[index].Line, 0, "fault.day-missing", map[string]any{"what": what, "hour": rows[index].Hour})
		return 0
	}
	d.filled["notice.day-filled"]++
	share := float64(index-before) / float64(after-before)
	return mix(of(rows[before]), of(rows[after]), share)
}

// dewOf is the dew point of a row, from its humidity where the file gives no other.
func dewOf(row Row) float64 {
	if !math.IsNaN(row.Dew_C) || math.IsNaN(row.Humidity_pct) || math.IsNaN(row.Air_C) {
		return row.Dew_C
	}
	const driest_pct = 1 // no dew point belongs to none
	return sky.DewPointFromHumidity(row.Air_C, math.Max(math.Min(row.Humidity_pct, 100), driest_pct))
}

// windFrom is the wind direction, or that of the last hour that has one, since directions do not average.
func (d *fileDay) windFrom(index int) float64 {
	for i := index; i >= 0 && index-i <= longestGap; i-- {
		if from := d.file.Rows[i].WindFrom_deg; !math.IsNaN(from) {
			if i != index {
				d.filled["notice.day-wind-from"]++
			}
			return math.Mod(from, 360)
		}
	}
	d.filled["notice.day-wind-from"]++
	return 0
}

// longwave is that of the file, else by the clouds, else 0 for a clear sky.
func (d *fileDay) longwave(row Row, air_C, dew_C float64) float64 {
	switch {
	case !math.IsNaN(row.Longwave_Wm2):
		return row.Longwave_Wm2
	case !math.IsNaN(row.Opaque_tenths):
		d.filled["notice.day-longwave"]++
		return sky.CloudySky(air_C, dew_C, row.Opaque_tenths)
	}
	return 0
}
