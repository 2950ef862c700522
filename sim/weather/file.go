package weather

import (
	"bytes"
	"io"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"rowlight/sim/scenario"
)

// Format is a format of weather files.
type Format string

// The formats that are read.
const (
	EPW     Format = "EPW"             // EnergyPlus weather
	TMY3    Format = "TMY3"            // typical meteorological year, NREL
	POWER   Format = "NASA POWER"      // hours of NASA POWER
	Logger  Format = "table"           // of a logger, read by a mapping
	Normals Format = "monthly normals" // means of months, of which days are made
)

// File is the hours of a weather file: of a typical year, whose months come from different years,
// or of a part of a year.
type File struct {
	Head
	Rows []Row // in the order of the file; none when a fault blocks
	// Times is what the light itself says about the hours.
	Times Times
}

// Head is what a file is and where it is from.
type Head struct {
	Name          string  `json:"name"` // of the file, as given to Read
	Format        Format  `json:"format"`
	Place         string  `json:"place"`         // as the file names it
	Latitude_deg  float64 `json:"latitude_deg"`  // positive north
	Longitude_deg float64 `json:"longitude_deg"` // positive east
	Elevation_m   float64 `json:"elevation_m"`
	UTCOffset_h   float64 `json:"utcOffset_h"` // of local standard time, in which the file keeps its hours
}

// headAt is the head of a file that does not say where it is from.
func headAt(format Format, site scenario.Site, utcOffset_h float64) Head {
	return Head{
		Format: format, Latitude_deg: site.Latitude_deg, Longitude_deg: site.Longitude_deg, Elevation_m: site.Elevation_m,
		UTCOffset_h: utcOffset_h,
	}
}

// Row is one hour of a file. A missing value is NaN. Sunlight and longwave are means over the hour
// [W/m²], the rest are values at its end.
type Row struct {
	Line             int // in the file, from 1
	Year, Month, Day int // the day that the hour ends or lies in
	Hour             int // 1 … 24: the hour that ends at Hour:00 local standard time
	Air_C            float64
	Dew_C            float64
	Humidity_pct     float64
	GHI, DNI, DHI    float64
	Longwave_Wm2     float64
	WindFrom_deg     float64
	Wind_ms          float64
	Opaque_tenths    float64 // of the sky covered by opaque clouds
	stamped          bool    // date and hour could be read
}

// Placed tells whether the file itself says where it is from.
func (f *File) Placed() bool { return f.Format != Logger && f.Format != Normals }

// mostRows is the hours of a leap year; no file that is read has more.
const mostRows = 8784

// Setting is what some files do not say themselves.
type Setting struct {
	Site    scenario.Site // where a logger stood, or where normals belong
	Year    int           // of the days of normals
	Mapping *Mapping      // of a logger's table; without one it is not read
}

// Read reads a weather file whose format says everything itself. See Setting.Read.
func Read(name string, r io.Reader) (File, []Fault) { return Setting{}.Read(name, r) }

// Read reads a weather file of any format, told by its beginning, in any encoding; the name is only
// kept. All faults are given at once. When one of them blocks, the file has no rows.
func (s Setting) Read(name string, r io.Reader) (File, []Fault) {
	file, faults := s.read(r)
	file.Name = name
	return file, faults
}

func (s Setting) read(r io.Reader) (File, []Fault) {
	faults := &report{}
	o := open(r, faults)
	if Blocked(faults.faults) {
		return File{}, faults.list()
	}
	switch format := guess(o.start); {
	case format == EPW:
		return ReadEPW(o.text())
	case format == TMY3:
		return ReadTMY3(o.text())
	case format == POWER:
		return ReadPOWER(o.text())
	case format == Normals:
		return ReadNormals(o.text(), s.Site, s.Year)
	case s.Mapping != nil:
		return ReadLogger(o.raw, *s.Mapping, s.Site)
	}
	g := guesser{lines: wholeLines(o.start, o.raw.Buffered() == peeked)}
	switch {
	case parted(o.start):
		faults.block(1, 0, "fault.file-semicolons", nil)
	case g.table(""):
		faults.block(0, 0, "fault.file-mapping", nil)
	default:
		faults.block(1, 0, "fault.file-format", map[string]any{"begin": beginning(o.start)})
	}
	return File{}, faults.list()
}

// parted tells the beginning of a known format whose fields a spreadsheet has parted by semicolons.
func parted(start []byte) bool { return guess(bytes.ReplaceAll(start, []byte(";"), []byte(","))) != "" }

// guess names the format of a file by its first two lines.
func guess(start []byte) Format {
	advance, first, _ := splitLine(start, true)
	_, second, _ := splitLine(start[advance:], true)
	first = bytes.TrimSpace(first)
	switch {
	case isNormals(first):
		return Normals
	case bytes.HasPrefix(first, []byte(powerBegin)):
		return POWER
	case bytes.HasPrefix(bytes.ToUpper(first), []byte("LOCATION,")):
		return EPW
	case bytes.HasPrefix(bytes.ToLower(bytes.Trim(second, `" `)), []byte("date (mm/dd/yyyy)")):
		return TMY3
	}
	return ""
}

// beginning is the start of a file, for a fault to show.
func beginning(start []byte) string {
	const most = 40
	_, line, _ := splitLine(start, true)
	shown := []rune(strings.TrimSpace(strings.ToValidUTF8(string(line), "·")))
	if len(shown) > most {
		shown = append(shown[:most], '…')
	}
	return string(shown)
}

// utf8Text is the text of a header as UTF-8; older files are in Latin-1, whose bytes are the first code
// points of Unicode.
func utf8Text(text string) string {
	if utf8.ValidString(text) {
		return text
	}
	var out strings.Builder
	for _, b := range []byte(text) {
		out.WriteRune(rune(b))
	}
	return out.String()
}

// finish checks the rows of a file as a whole, and drops them where a fault blocks.
func (f *File) finish(faults *report) (File, []Fault) {
	if len(f.Rows) == 0 && !Blocked(faults.faults) {
		faults.block(0, 0, "fault.file-no-rows", nil)
	}
	if !Blocked(faults.faults) {
		f.checkVoid(faults)
	}
	if !Blocked(faults.faults) {
		f.checkSequence(faults)
		f.checkTimes(faults)
		f.checkNights(faults)
	}
	list := faults.list()
	if Blocked(list) {
		f.Rows = nil
	}
	return *f, list
}

// checkVoid blocks a file that lacks a quantity in every line, and anything to stand in for it.
func (f *File) checkVoid(faults *report) {
	for _, need := range []struct {
		what string
		has  func(Row) bool
	}{
		{"air", func(r Row) bool { return !math.IsNaN(r.Air_C) }},
		{"light", func(r Row) bool { return !math.IsNaN(r.GHI) || !math.IsNaN(r.DNI) || !math.IsNaN(r.DHI) }},
		{"dewPoint", func(r Row) bool { return !math.IsNaN(r.Dew_C) || !math.IsNaN(r.Humidity_pct) }},
		{"wind", func(r Row) bool { return !math.IsNaN(r.Wind_ms) }},
	} {
		if !slices.ContainsFunc(f.Rows, need.has) {
			faults.block(0, 0, "fault.file-void", map[string]any{"what": need.what, "count": len(f.Rows)})
		}
	}
}
