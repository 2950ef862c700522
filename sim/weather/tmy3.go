package weather

import (
	"io"
	"strings"
	"time"
)

// tmy3Column is a column of a TMY3 file, as its name begins and the unit that is read.
type tmy3Column struct{ name, unit string }

// The columns that are read (NREL, User's Manual for TMY3 Data Sets).
var (
	tmy3Date     = tmy3Column{"date", "mm/dd/yyyy"}
	tmy3Time     = tmy3Column{"time", "hh:mm"}
	tmy3Global   = tmy3Column{"ghi", "w/m^2"}
	tmy3Beam     = tmy3Column{"dni", "w/m^2"}
	tmy3Diffuse  = tmy3Column{"dhi", "w/m^2"}
	tmy3Air      = tmy3Column{"dry-bulb", "c"}
	tmy3Dew      = tmy3Column{"dew-point", "c"}
	tmy3Humidity = tmy3Column{"rhum", "%"}
	tmy3From     = tmy3Column{"wdir", "degrees"}
	tmy3Wind     = tmy3Column{"wspd", "m/s"}
	tmy3Opaque   = tmy3Column{"opqcld", "tenths"}
)

// tmy3Needed are the columns without which there is no day; each group needs one of its columns.
var tmy3Needed = [][]tmy3Column{
	{tmy3Date}, {tmy3Time}, {tmy3Global, tmy3Beam}, {tmy3Air}, {tmy3Dew, tmy3Humidity}, {tmy3Wind},
}

// tmy3Header is where the columns are, counted from 1; 0 for a column that is not there.
type tmy3Header map[string]int

// ReadTMY3 reads a TMY3 file: a line with the place, a line with the names of the columns, then a
// row for each hour, which ends at its stamp of local standard time, 01:00 to 24:00. Stamps of
// 00:00 count as 24:00 of the day before. See Read.
func ReadTMY3(r io.Reader) (File, []Fault) {
	faults := &report{}
	file := &File{Head: Head{Format: TMY3}}
	in := newLines(r)
	header, ok := file.readTMY3Header(in, faults)
	if ok {
		rows := builder{file: file, faults: faults}
		for {
			line, ok := in.next(faults)
			if !ok || !rows.add(header.row(line, in.number, faults)) {
				break
			}
		}
		rows.checkEnd("")
	}
	return file.finish(faults)
}

// readTMY3Header reads the place (station, name, state, hours from Greenwich, latitude, longitude,
// elevation) and finds the columns by name.
func (f *File) readTMY3Header(in *lines, faults *report) (header tmy3Header, ok bool) {
	line, ok := in.next(faults)
	if !ok {
		if !Blocked(faults.faults) {
			faults.block(0, 0, "fault.file-empty", nil)
		}
		return nil, false
	}
	fields := split(line)
	if len(fields) > 2 {
		f.Place = placeName(fields[1:3])
	}
	f.UTCOffset_h = place(fields, 4, "utcOffset", -12, 14, faults)
	f.Latitude_deg = place(fields, 5, "latitude", -90, 90, faults)
	f.Longitude_deg = place(fields, 6, "longitude", -180, 180, faults)
	f.Elevation_m = place(fields, 7, "elevation", -430, 9000, faults)

	line, _ = in.next(faults)
	header = findColumns(split(line), faults)
	return header, !Blocked(faults.faults)
}

// findColumns finds the wanted columns by the name before the unit, "GHI" of "GHI (W/m^2)"; the
// source and uncertainty columns have other names. A wrong unit blocks, but for a stray bracket.
func findColumns(names []string, faults *report) tmy3Header {
	header := tmy3Header{}
	for i, text := range names {
		name, unit, _ := strings.Cut(strings.ToLower(text), " (")
		unit = strings.TrimRight(unit, ")")
		for _, column := range tmy3Columns() {
			if name != column.name || header[name] != 0 {
				continue
			}
			header[name] = i + 1
			if unit != column.unit {
				faults.block(2, i+1, "fault.file-unit", map[string]any{"value": text, "want": column.unit})
			}
		}
	}
	for _, group := range tmy3Needed {
		found := false
		for _, column := range group {
			found = found || header[column.name] != 0
		}
		if !found {
			faults.block(2, 0, "fault.file-column", map[string]any{"want": group[0].name + " (" + group[0].unit + ")"})
		}
	}
	return header
}

func tmy3Columns() []tmy3Column {
	return []tmy3Column{
		tmy3Date, tmy3Time, tmy3Global, tmy3Beam, tmy3Diffuse, tmy3Air, tmy3Dew, tmy3Humidity,
		tmy3From, tmy3Wind, tmy3Opaque,
	}
}

// row reads one row; it is not stamped when nothing could be made of it.
func (h tmy3Header) row(line string, number int, faults *report) Row {
	c := cells{fields: split(line), line: number, faults: faults}
	if line == "" {
		return Row{}
	}
	most := 0
	for _, column := range h {
		most = max(most, column)
	}
	if len(c.fields) < most {
		faults.at(number, 0, "fault.file-fields", map[string]any{"count": len(c.fields), "min": most})
		return Row{}
	}
	date, okDate := h.date(c)
	hour, okHour := h.hour(c)
	if !okDate || !okHour {
		return Row{}
	}
	value := func(column tmy3Column, of quantity) float64 { return c.value(h[column.name], of, tmy3Missing) }
	light := func(column tmy3Column, of quantity) float64 { return c.light(h[column.name], of, tmy3Missing) }
	return Row{
		Line: number, Year: date.Year(), Month: int(date.Month()), Day: date.Day(), Hour: hour, stamped: true,
		Air_C:         value(tmy3Air, airQuantity),
		Dew_C:         value(tmy3Dew, dewQuantity),
		Humidity_pct:  value(tmy3Humidity, humidityQuantity),
		GHI:           light(tmy3Global, globalQuantity),
		DNI:           light(tmy3Beam, beamQuantity),
		DHI:           light(tmy3Diffuse, diffuseQuantity),
		Longwave_Wm2:  missing(),
		WindFrom_deg:  value(tmy3From, fromQuantity),
		Wind_ms:       value(tmy3Wind, windQuantity),
		Opaque_tenths: value(tmy3Opaque, opaqueQuantity),
	}
}

// date reads month/day/year.
func (h tmy3Header) date(c cells) (date time.Time, ok bool) {
	column := h[tmy3Date.name]
	date, err := time.Parse("1/2/2006", c.fields[column-1])
	if err != nil {
		c.faults.at(c.line, column, "fault.file-date", map[string]any{"value": c.fields[column-1], "want": "month/day/year"})
	}
	return date, err == nil
}

// hour reads a full hour, 00:00 to 24:00.
func (h tmy3Header) hour(c cells) (hour int, ok bool) {
	column := h[tmy3Time.name]
	field := c.fields[column-1]
	hours, minutes, found := strings.Cut(field, ":")
	if found && strings.Trim(minutes, "0:") == "" {
		c.fields[column-1] = hours
		if hour, ok := c.whole(column, "hour", 0, 24); ok {
			return hour, true
		}
		return 0, false
	}
	c.faults.at(c.line, column, "fault.file-stamp", map[string]any{"what": "hour", "value": field, "min": 0, "max": 24})
	return 0, false
}

// tmy3Missing tells of the numbers that stand for a missing value: -9900, and -9999 in some copies.
func tmy3Missing(number float64) bool { return number <= -9000 }
