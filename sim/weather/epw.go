package weather

import (
	"io"
	"math"
	"strconv"
	"strings"

	"rowlight/sim/scenario"
)

// The fields of an EPW row that are read, counted from 1 (EnergyPlus auxiliary programs, EPW data
// dictionary).
const (
	epwYear     = 1
	epwMonth    = 2
	epwDay      = 3
	epwHour     = 4
	epwAir      = 7
	epwDew      = 8
	epwHumidity = 9
	epwLongwave = 13
	epwGlobal   = 14
	epwBeam     = 15
	epwDiffuse  = 16
	epwFrom     = 21
	epwWind     = 22
	epwOpaque   = 24
	epwFewest   = 32 // fields of a row; 35 since liquid precipitation was added
	epwMost     = 35
)

// epwHeader is how the header lines begin, in order; "HOLIDAYS/DAYLIGHT SAVING" is also written SAVINGS.
var epwHeader = [...]string{
	"LOCATION", "DESIGN CONDITIONS", "TYPICAL/EXTREME PERIODS", "GROUND TEMPERATURES",
	"HOLIDAYS/DAYLIGHT SAVING", "COMMENTS 1", "COMMENTS 2", "DATA PERIODS",
}

// ReadEPW reads an EPW file: 8 header lines, then a row of 35 fields for each hour, which ends at
// its stamp of local standard time. See Read.
func ReadEPW(r io.Reader) (File, []Fault) {
	faults := &report{}
	file := &File{Head: Head{Format: EPW}}
	in := newLines(r)
	if end, ok := file.readEPWHeader(in, faults); ok {
		rows := builder{file: file, faults: faults}
		for {
			line, ok := in.next(faults)
			if !ok || !rows.add(epwRow(line, in.number, faults)) {
				break
			}
		}
		rows.checkEnd(end)
	}
	return file.finish(faults)
}

// readEPWHeader reads the 8 header lines and returns the last day that the file says it has; ok is
// false when a fault there blocks.
func (f *File) readEPWHeader(in *lines, faults *report) (end string, ok bool) {
	for i, want := range epwHeader {
		line, ok := in.next(faults)
		if !ok || !strings.HasPrefix(strings.ToUpper(line), want) {
			if !Blocked(faults.faults) {
				faults.block(i+1, 0, "fault.file-header", map[string]any{"want": want})
			}
			return "", false
		}
		switch fields := split(line); want {
		case "LOCATION":
			f.readEPWPlace(fields, faults)
		case "COMMENTS 2":
			f.readOffset(line)
		case "DATA PERIODS":
			end = readEPWPeriod(fields, faults)
		}
	}
	return end, !Blocked(faults.faults)
}

// readEPWPlace reads LOCATION: city, state, country, source, station, latitude, longitude, hours
// from Greenwich, elevation.
func (f *File) readEPWPlace(fields []string, faults *report) {
	if len(fields) > 3 {
		f.Place = placeName(fields[1:4])
	}
	f.Latitude_deg = place(fields, 7, "latitude", -90, 90, faults)
	f.Longitude_deg = place(fields, 8, "longitude", -180, 180, faults)
	f.UTCOffset_h = place(fields, 9, "utcOffset", -12, 14, faults)
	f.Elevation_m = place(fields, 10, "elevation", -430, 9000, faults)
}

// placeName joins the parts of a place that say something.
func placeName(parts []string) string {
	var said []string
	for _, part := range parts {
		if part != "" && part != "-" && part != "unknown" {
			said = append(said, utf8Text(part))
		}
	}
	return strings.Join(said, ", ")
}

// readOffset finds the offset of irradiance that PVGIS writes into a comment, "Irradiance Time
// Offset (h):-0.8239": its light is of moments, not of hours.
func (f *File) readOffset(comment string) {
	_, after, found := strings.Cut(comment, "Irradiance Time Offset (h):")
	if !found {
		return
	}
	number, _, _ := strings.Cut(after, ",")
	if offset_h, err := strconv.ParseFloat(strings.TrimSpace(number), 64); err == nil && math.Abs(offset_h) < 2 {
		f.Times.Declared = true
		// Seen against the light itself, the offset counts from the hour after the stamp.
		f.Times.Rule_min = 60 * (1 + offset_h)
	}
}

// readEPWPeriod reads DATA PERIODS: number of periods, records in an hour, name, weekday, first and
// last day. Only whole hours are taken.
func readEPWPeriod(fields []string, faults *report) (end string) {
	if len(fields) > 2 && fields[2] != "1" {
		faults.block(len(epwHeader), 3, "fault.file-step", map[string]any{"value": fields[2]})
	}
	if len(fields) > 6 {
		return fields[6]
	}
	return ""
}

// epwRow reads one row; its Hour is 0 when nothing could be made of it.
func epwRow(line string, number int, faults *report) Row {
	c := cells{fields: split(line), line: number, faults: faults}
	if line == "" {
		return Row{}
	}
	if n := len(c.fields); n < epwFewest || n > epwMost {
		code := "fault.file-fields"
		if n > epwMost {
			code = "fault.file-fields-many" // as decimal commas make them
		}
		faults.at(number, 0, code, map[string]any{"count": n, "min": epwFewest, "max": epwMost})
		return Row{}
	}
	year, okYear := c.whole(epwYear, "year", scenario.FirstYear, scenario.LastYear)
	month, okMonth := c.whole(epwMonth, "month", 1, 12)
	day, okDay := c.whole(epwDay, "day", 1, 31)
	hour, okHour := c.whole(epwHour, "hour", 0, 24)
	if !okYear || !okMonth || !okDay || !okHour {
		return Row{}
	}
	return Row{
		Line: number, Year: year, Month: month, Day: day, Hour: hour, stamped: true,
		Air_C:         c.value(epwAir, airQuantity, from(99.9)),
		Dew_C:         c.value(epwDew, dewQuantity, from(99.9)),
		Humidity_pct:  c.value(epwHumidity, humidityQuantity, from(999)),
		GHI:           c.light(epwGlobal, globalQuantity, from(9999)),
		DNI:           c.light(epwBeam, beamQuantity, from(9999)),
		DHI:           c.light(epwDiffuse, diffuseQuantity, from(9999)),
		Longwave_Wm2:  c.value(epwLongwave, longwaveQuantity, from(9999)),
		WindFrom_deg:  c.value(epwFrom, fromQuantity, from(999)),
		Wind_ms:       c.value(epwWind, windQuantity, from(999)),
		Opaque_tenths: c.value(epwOpaque, opaqueQuantity, from(99)),
	}
}

// from tells of the numbers that stand for a missing value in EPW: the given one and above.
func from(lowest float64) func(float64) bool {
	return func(number float64) bool { return number >= lowest }
}
