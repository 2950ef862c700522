package weather

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"rowlight/sim/scenario"
)

// The lines about the table of a POWER file.
const (
	powerBegin = "-BEGIN HEADER-"
	powerEnd   = "-END HEADER-"
	// powerHeaderMost is how many lines the header may have: a few and one for each of the columns.
	powerHeaderMost = 60
)

// powerColumn is a parameter of a POWER file and what it is.
type powerColumn struct {
	name   string
	value  func(*Row) *float64
	kind   quantity
	height float64 // above the ground, of wind [m]
}

// powerColumns are the parameters that are read (NASA POWER, hourly API), the better of two before the other.
var powerColumns = []powerColumn{
	{name: "ALLSKY_SFC_SW_DWN", value: func(r *Row) *float64 { return &r.GHI }, kind: globalQuantity},
	{name: "ALLSKY_SFC_SW_DNI", value: func(r *Row) *float64 { return &r.DNI }, kind: beamQuantity},
	{name: "ALLSKY_SFC_SW_DIFF", value: func(r *Row) *float64 { return &r.DHI }, kind: diffuseQuantity},
	{name: "ALLSKY_SFC_LW_DWN", value: func(r *Row) *float64 { return &r.Longwave_Wm2 }, kind: longwaveQuantity},
	{name: "T2M", value: func(r *Row) *float64 { return &r.Air_C }, kind: airQuantity},
	{name: "T2MDEW", value: func(r *Row) *float64 { return &r.Dew_C }, kind: dewQuantity},
	{name: "RH2M", value: func(r *Row) *float64 { return &r.Humidity_pct }, kind: humidityQuantity},
	{name: "WS10M", value: func(r *Row) *float64 { return &r.Wind_ms }, kind: windQuantity, height: 10},
	{name: "WS2M", value: func(r *Row) *float64 { return &r.Wind_ms }, kind: windQuantity, height: 2},
	{name: "WD10M", value: func(r *Row) *float64 { return &r.WindFrom_deg }, kind: fromQuantity},
	{name: "WD2M", value: func(r *Row) *float64 { return &r.WindFrom_deg }, kind: fromQuantity},
}

// powerNeeded are the parameters without which there is no day; each group needs one of its own.
var powerNeeded = [][]string{
	{"ALLSKY_SFC_SW_DWN", "ALLSKY_SFC_SW_DNI"}, {"T2M"}, {"T2MDEW", "RH2M"}, {"WS10M", "WS2M"},
}

// powerFile reads a POWER file line by line.
type powerFile struct {
	file    *File
	faults  *report
	missing float64           // what stands for a missing value
	shift_h float64           // from the clock of the file to that of the rows
	units   map[string]string // of the parameters, as the header has them
	columns map[string]int    // of the table, counted from 1
	use     []powerUse
	dates   [4]int // columns of year, month, day and hour
}

// powerUse is a column that is read.
type powerUse struct {
	powerColumn
	column int
	unit   unit
}

// ReadPOWER reads an hourly file of NASA POWER: a header between two marks, which has the units, then a line with the
// names of the columns and a row for each hour, a mean over the hour that begins at its stamp. Its clock is local
// solar time in bands of 15 degrees, or UTC, which is moved into them: the rows end at whole hours of that clock.
// See Read.
func ReadPOWER(r io.Reader) (File, []Fault) {
	p := powerFile{file: &File{Head: Head{Format: POWER}}, faults: &report{}, missing: -999, units: map[string]string{}, columns: map[string]int{}}
	in := newLines(r)
	if p.header(in) && p.names(in) {
		var readings series
		for {
			line, ok := in.next(p.faults)
			if !ok {
				break
			}
			if r, ok := p.reading(line, in.number); ok {
				readings = append(readings, r)
			}
		}
		p.file.takeSeries(readings, p.faults)
	}
	return p.file.finish(p.faults)
}

// header reads what stands between the marks.
func (p *powerFile) header(in *lines) (ok bool) {
	placed, clock := false, ""
	for in.number < powerHeaderMost {
		line, ok := in.next(p.faults)
		if !ok {
			break
		}
		line = strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(line, powerEnd):
			if !placed {
				p.faults.block(in.number, 0, "fault.file-header", map[string]any{"want": "Location: Latitude … Longitude …"})
			}
			p.setClock(clock)
			return !Blocked(p.faults.faults)
		case strings.HasPrefix(strings.ToLower(line), "dates"):
			clock = strings.ToUpper(line[strings.LastIndex(line, " ")+1:])
		}
		placed = p.headerLine(line, in.number) || placed
	}
	if !Blocked(p.faults.faults) {
		p.faults.block(in.number, 0, "fault.file-header", map[string]any{"want": powerEnd})
	}
	return false
}

// headerLine reads what a line says of the place, the missing value or the unit of a parameter; it is true of the line of
// the place.
func (p *powerFile) headerLine(line string, number int) (placed bool) {
	words := strings.Fields(line)
	lower := strings.Fields(strings.ToLower(line))
	latitude, longitude := slices.Index(lower, "latitude")+1, slices.Index(lower, "longitude")+1
	switch last := len(words) - 1; {
	case last < 1:
	case latitude > 0 && longitude > latitude && longitude <= last:
		p.file.Latitude_deg = p.placeNumber(words[latitude], number, "latitude", -90, 90)
		p.file.Longitude_deg = p.placeNumber(words[longitude], number, "longitude", -180, 180)
		return true
	case lower[0] == "elevation" && lower[last] == "meters":
		p.file.Elevation_m = p.placeNumber(words[last-1], number, "elevation", -430, 9000)
	case strings.HasPrefix(strings.ToLower(line), "the value for missing"):
		if value, err := strconv.ParseFloat(words[last], 64); err == nil {
			p.missing = value
		}
	case strings.HasSuffix(line, ")"):
		p.units[words[0]] = line[strings.LastIndex(line, "(")+1 : len(line)-1]
	}
	return false
}

func (p *powerFile) placeNumber(field string, line int, what string, min, max float64) float64 {
	number, err := strconv.ParseFloat(strings.Trim(field, ",;°"), 64)
	if err != nil || !(number >= min && number <= max) {
		p.faults.block(line, 1, "fault.file-place", map[string]any{"what": what, "value": field, "min": min, "max": max})
	}
	return number
}

// setClock makes the band of solar time the clock of the rows. A file that does not name its clock is in solar time,
// which the source gives unless asked for UTC.
func (p *powerFile) setClock(clock string) {
	p.file.Place = "NASA POWER"
	p.file.UTCOffset_h = math.Round(p.file.Longitude_deg / 15)
	if clock == "UTC" || clock == "GMT" {
		p.shift_h = p.file.UTCOffset_h
	}
	p.faults.notice("notice.file-solar-clock", map[string]any{"zone": zone(p.file.UTCOffset_h)})
}

// names reads the line with the names of the columns.
func (p *powerFile) names(in *lines) (ok bool) {
	line, ok := in.next(p.faults)
	if !ok {
		return false
	}
	for i, name := range split(line) {
		if name = strings.ToUpper(name); p.columns[name] == 0 {
			p.columns[name] = i + 1
		}
	}
	for i, name := range []string{"YEAR", "MO", "DY", "HR"} {
		if p.dates[i] = p.columns[name]; p.dates[i] == 0 {
			p.faults.block(in.number, 0, "fault.file-column", map[string]any{"want": name})
		}
	}
	for _, group := range powerNeeded {
		found := false
		for _, name := range group {
			found = found || p.columns[name] != 0
		}
		if !found {
			p.faults.block(in.number, 0, "fault.file-column", map[string]any{"want": strings.Join(group, " / ")})
		}
	}
	taken := map[string]bool{}
	for _, column := range powerColumns {
		at := p.columns[column.name]
		if at == 0 || taken[column.kind.name] {
			continue
		}
		unit, ok := unitOf(column.kind, p.units[column.name])
		if !ok {
			p.faults.block(in.number, at, "fault.file-unit", map[string]any{
				"value": column.name + " (" + p.units[column.name] + ")", "want": strings.Join(unitNames(column.kind), ", ")})
		}
		taken[column.kind.name] = true
		p.use = append(p.use, powerUse{column, at, unit})
	}
	return !Blocked(p.faults.faults)
}

// reading reads one row of the table.
func (p *powerFile) reading(line string, number int) (r reading, ok bool) {
	if line == "" {
		return r, false
	}
	c := cells{fields: split(line), line: number, faults: p.faults}
	if n := len(p.columns); len(c.fields) < n {
		p.faults.at(number, 0, "fault.file-fields", map[string]any{"count": len(c.fields), "min": n})
		return r, false
	}
	year, okYear := c.whole(p.dates[0], "year", scenario.FirstYear, scenario.LastYear)
	month, okMonth := c.whole(p.dates[1], "month", 1, 12)
	day, okDay := c.whole(p.dates[2], "day", 1, 31)
	hour, okHour := c.whole(p.dates[3], "hour", 0, 23)
	if !okYear || !okMonth || !okDay || !okHour {
		return r, false
	}
	r = reading{line: number, row: emptyRow()}
	r.from = hoursSince1970(time.Date(year, time.Month(month), day, hour, 0, 0, 0, time.UTC)) + p.shift_h
	r.to = r.from + 1
	for _, use := range p.use {
		v := c.inUnit(use.column, use.kind, use.unit, 1, func(number float64) bool { return number == p.missing })
		if use.height > 0 {
			v *= windTo10m(use.height)
		}
		*use.value(&r.row) = v
	}
	return r, true
}

// zone names a clock, as UTC−8.
func zone(offset_h float64) string {
	return "UTC" + strings.Replace(fmt.Sprintf("%+g", offset_h), "-", "−", 1)
}

func hoursSince1970(t time.Time) float64 { return float64(t.Unix()) / 3600 }
