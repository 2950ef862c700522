// Package almanac keeps the weather file that the page has opened, and gives days of it as parts of a
// scenario document. It has no browser in it.
package almanac

import (
	"bytes"
	"encoding/json"
	"math"
	"time"

	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// Almanac is the open weather file. The zero value has none and is ready.
type Almanac struct {
	file *weather.File
}

// Opened is what came of opening a file: the file, a table to be mapped, or the faults that block it.
type Opened struct {
	File    *Contents        `json:"file,omitempty"`
	Table   *Table           `json:"table,omitempty"` // a table whose mapping is to be confirmed
	Notices []scenario.Fault `json:"notices"`         // what was left out, filled or looks odd
	Faults  []scenario.Fault `json:"faults"`
}

// Contents is what a page tells of a file.
type Contents struct {
	weather.Head
	Days    []Day `json:"days"`              // whole days, in the order of the file
	Hottest *Day  `json:"hottest,omitempty"` // of these
	// Clock is what the light says about the clock, and whether it is off.
	Clock   scenario.Fault `json:"clock"`
	Shifted bool           `json:"shifted"`
	Preview *Preview       `json:"preview,omitempty"` // absent where no day can be taken
}

// Day is one whole day of a file; a typical year takes its months from different years.
type Day struct {
	Year     int      `json:"year"`
	Month    int      `json:"month"`
	Day      int      `json:"day"`
	AirMax_C *float64 `json:"airMax_C,omitempty"` // highest air temperature, absent where the file has none
}

// Taken is what came of taking a day: the part of a document to lay over that of the page, or the
// faults that block it.
type Taken struct {
	Fragment *Fragment        `json:"fragment,omitempty"`
	Notices  []scenario.Fault `json:"notices"`
	Faults   []scenario.Fault `json:"faults"`
}

// Fragment is the part of a scenario document that a measured day sets.
type Fragment struct {
	Site    Place   `json:"site"`
	Weather Weather `json:"weather"`
}

// Place is the part of a site that a weather file sets.
type Place struct {
	Latitude_deg  float64 `json:"latitude_deg"`
	Longitude_deg float64 `json:"longitude_deg"`
	Elevation_m   float64 `json:"elevation_m"`
	UTCOffset_h   float64 `json:"utcOffset_h"`
}

// Weather is the part of a day's weather that a weather file sets.
type Weather struct {
	Date         string          `json:"date"`
	AirMax_C     float64         `json:"airMax_C"`
	AirMin_C     float64         `json:"airMin_C"`
	DewPoint_C   float64         `json:"dewPoint_C"`
	Wind_ms      float64         `json:"wind_ms"`
	WindFrom_deg float64         `json:"windFrom_deg"`
	Hours        []scenario.Hour `json:"hours"`
	Source       string          `json:"source"`
}

// Asked is what a file may not say itself, and the mapping of a table once it is confirmed.
type Asked struct {
	Site    scenario.Site   `json:"site"`
	Date    string          `json:"date"` // whose year the days of normals take
	Mapping json.RawMessage `json:"mapping,omitempty"`
	// Separator is what parts the fields of a table that is to be guessed; empty where that is guessed too.
	Separator string `json:"separator,omitempty"`
}

// Open reads a file. One that a fault blocks, or a table without a mapping, does not take the place of the file that is
// open.
func (a *Almanac) Open(name string, text []byte, asked Asked) Opened {
	setting := weather.Setting{Site: asked.Site}
	if date, err := time.Parse(time.DateOnly, asked.Date); err == nil {
		setting.Year = date.Year()
	}
	if len(asked.Mapping) > 0 {
		mapping, faults := weather.ParseMapping(asked.Mapping, asked.Site.UTCOffset_h)
		if len(faults) > 0 {
			return Opened{Notices: []scenario.Fault{}, Faults: faults}
		}
		setting.Mapping = &mapping
	} else if sketch, ok := weather.Look(bytes.NewReader(text), asked.Site, asked.Separator); ok {
		return Opened{Table: tableOf(name, sketch), Notices: []scenario.Fault{}, Faults: []scenario.Fault{}}
	} else if asked.Separator != "" {
		return Opened{Notices: []scenario.Fault{}, Faults: []scenario.Fault{{Code: "fault.file-no-table"}}}
	}
	file, faults := setting.Read(name, bytes.NewReader(text))
	if weather.Blocked(faults) {
		return Opened{Notices: []scenario.Fault{}, Faults: plain(faults)}
	}
	a.file = &file
	return Opened{File: contents(&file), Notices: plain(faults), Faults: []scenario.Fault{}}
}

// Day takes a day of the open file.
func (a *Almanac) Day(month, day int) Taken {
	file := a.file
	if file == nil {
		file = &weather.File{} // has no day
	}
	var s scenario.Scenario
	faults := file.Put(month, day, &s)
	if weather.Blocked(faults) {
		return Taken{Notices: []scenario.Fault{}, Faults: plain(faults)}
	}
	return Taken{Fragment: fragment(s), Notices: plain(faults), Faults: []scenario.Fault{}}
}

// fragment picks what a measured day sets.
func fragment(s scenario.Scenario) *Fragment {
	return &Fragment{
		Site: Place{s.Site.Latitude_deg, s.Site.Longitude_deg, s.Site.Elevation_m, s.Site.UTCOffset_h},
		Weather: Weather{
			Date:     s.Weather.Date,
			AirMax_C: s.Weather.AirMax_C, AirMin_C: s.Weather.AirMin_C, DewPoint_C: s.Weather.DewPoint_C,
			Wind_ms: s.Weather.Wind_ms, WindFrom_deg: s.Weather.WindFrom_deg,
			Hours: s.Weather.Hours, Source: s.Weather.Source,
		},
	}
}

func contents(file *weather.File) *Contents {
	c := &Contents{
		Head: file.Head,
		Days: []Day{}, Clock: file.Times.Verdict(), Shifted: file.Times.Shifted(), Preview: previewOf(file),
	}
	for _, day := range file.Days() {
		c.Days = append(c.Days, listed(day))
	}
	if hottest, ok := file.Hottest(); ok {
		day := listed(hottest)
		c.Hottest = &day
	}
	return c
}

func listed(day weather.Day) Day {
	d := Day{Year: day.Year, Month: day.Month, Day: day.Day}
	if !math.IsNaN(day.AirMax_C) {
		d.AirMax_C = &day.AirMax_C
	}
	return d
}

// plain drops what the faults of a weather file have beyond code and parameters.
func plain(faults []weather.Fault) []scenario.Fault {
	list := make([]scenario.Fault, len(faults))
	for i, fault := range faults {
		list[i] = fault.Fault
	}
	return list
}

// FileOf is the open file where a scenario has taken its day and place from it; nil where it has not.
func (a *Almanac) FileOf(s scenario.Scenario) *weather.File {
	if a.file == nil || len(s.Weather.Hours) == 0 || s.Site.Latitude_deg != a.file.Latitude_deg || s.Site.Longitude_deg != a.file.Longitude_deg {
		return nil
	}
	return a.file
}
