package weather

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"slices"
	"strconv"

	"rowlight/sim/scenario"
)

// Mapping tells how to read the table of a logger: what its columns are, how its text is written, and what clock its
// times are on. Look guesses one.
type Mapping struct {
	Encoding     Encoding `json:"encoding"`
	Separator    string   `json:"separator"`    // between fields: comma, semicolon, tab or |
	DecimalComma bool     `json:"decimalComma"` // decimals have commas
	FirstLine    int      `json:"firstLine"`    // line of the first reading, from 1
	DateOrder    string   `json:"dateOrder"`    // ymd, dmy or mdy
	Clock        Clock    `json:"clock"`
	UTCOffset_h  float64  `json:"utcOffset_h"` // of standard time at the place [h]
	Stamp        Stamp    `json:"stamp"`
	Step_min     float64  `json:"step_min"`     // between readings [min]
	WindHeight_m float64  `json:"windHeight_m"` // of the wind sensor above the ground [m]
	Wind_ms      float64  `json:"wind_ms"`      // at 10 m, where no column has any [m/s]
	Columns      []Column `json:"columns"`
}

// Column is what one column of a table holds.
type Column struct {
	Column   int    `json:"column"`         // from 1
	Name     string `json:"name,omitempty"` // as the file has it; nothing depends on it
	Quantity string `json:"quantity"`
	Unit     string `json:"unit,omitempty"` // of a measured quantity; its own unless given
}

// Clock is the clock that the times of a table are on.
type Clock string

// The clocks. Changing follows the law: it goes on by an hour in spring and back in autumn, at a gap and a repetition
// of one hour by night in the file itself.
const (
	StandardClock Clock = "standard" // standard time of the place all the year
	DaylightClock Clock = "daylight" // one hour ahead of it, for all of the file
	ChangingClock Clock = "changing"
	UTCClock      Clock = "utc"
)

// Stamp is what moment of its stretch of time a reading is named by.
type Stamp string

// The stamps. Readings of a moment are named by the middle of the stretch that they stand for.
const (
	StampStart  Stamp = "start"
	StampMiddle Stamp = "middle"
	StampEnd    Stamp = "end"
)

// The parts of a time that a column may hold; the measured quantities follow in measuredColumns.
const (
	timePart   = "time" // date and clock in one
	datePart   = "date"
	clockPart  = "clock"
	yearPart   = "year"
	monthPart  = "month"
	dayPart    = "day"
	hourPart   = "hour"
	minutePart = "minute"
)

var (
	separators = []string{",", ";", "\t", "|"}
	dateOrders = []string{"ymd", "dmy", "mdy"}
	clocks     = []Clock{StandardClock, DaylightClock, ChangingClock, UTCClock}
	stamps     = []Stamp{StampStart, StampMiddle, StampEnd}
	timeParts  = []string{timePart, datePart, clockPart, yearPart, monthPart, dayPart, hourPart, minutePart}
)

// measuredColumn is a measured quantity that a column may hold.
type measuredColumn struct {
	quantity
	value func(*Row) *float64
}

var measuredColumns = []measuredColumn{
	{airQuantity, func(r *Row) *float64 { return &r.Air_C }},
	{dewQuantity, func(r *Row) *float64 { return &r.Dew_C }},
	{humidityQuantity, func(r *Row) *float64 { return &r.Humidity_pct }},
	{globalQuantity, func(r *Row) *float64 { return &r.GHI }},
	{beamQuantity, func(r *Row) *float64 { return &r.DNI }},
	{diffuseQuantity, func(r *Row) *float64 { return &r.DHI }},
	{longwaveQuantity, func(r *Row) *float64 { return &r.Longwave_Wm2 }},
	{windQuantity, func(r *Row) *float64 { return &r.Wind_ms }},
	{fromQuantity, func(r *Row) *float64 { return &r.WindFrom_deg }},
}

// Quantities are the names of all that a column may hold, the parts of a time first.
func Quantities() []string {
	names := slices.Clone(timeParts)
	for _, column := range measuredColumns {
		names = append(names, column.name)
	}
	return names
}

// Units are the names of the units that a quantity is read in, its own first; none of a part of a time.
func Units(quantity string) []string {
	for _, column := range measuredColumns {
		if column.name == quantity {
			return unitNames(column.quantity)
		}
	}
	return nil
}

// mostMappingBytes is far more than any mapping has.
const mostMappingBytes = 1 << 20

// ParseMapping reads a mapping from JSON. What it leaves out is as in most tables: UTF-8, commas between fields and
// points in decimals, readings from the second line, dates as year-month-day, standard time of an offset of
// utcOffset_h, stamps at the end of ten minutes, wind at 10 m. All faults are given at once.
func ParseMapping(raw []byte, utcOffset_h float64) (Mapping, []scenario.Fault) {
	m := Mapping{
		Encoding: UTF8, Separator: ",", FirstLine: 2, DateOrder: "ymd", Clock: StandardClock, UTCOffset_h: utcOffset_h,
		Stamp: StampEnd, Step_min: 10, WindHeight_m: 10, Wind_ms: usualWind_ms,
	}
	if len(raw) > mostMappingBytes {
		return m, []scenario.Fault{{Code: "fault.too-long", Values: map[string]any{"bytes": len(raw), "max": mostMappingBytes}}}
	}
	decoder := json.NewDecoder(bytes.NewReader(raw))
	decoder.DisallowUnknownFields()
	err := decoder.Decode(&m)
	if err == nil {
		if _, err = decoder.Token(); err == nil {
			err = errors.New("more than one mapping")
		} else if errors.Is(err, io.EOF) {
			err = nil
		}
	}
	if err != nil {
		return m, []scenario.Fault{{Code: "fault.mapping", Values: map[string]any{"detail": err.Error()}}}
	}
	return m, m.Faults()
}

// usualWind_ms is the wind at 10 m where nothing is known: the mean of 2 m/s at 2 m of over 2000 stations around the
// globe (FAO-56, chapter 3) at 10 m.
const usualWind_ms = 2.7

// Faults are all that is wrong with a mapping, by the field.
func (m Mapping) Faults() []scenario.Fault {
	var faults []scenario.Fault
	choice := func(path, value string, allowed []string) {
		if !slices.Contains(allowed, value) {
			faults = append(faults, scenario.Fault{Code: "fault.choice", Path: path, Values: map[string]any{"value": value, "allowed": allowed}})
		}
	}
	within := func(path string, value, min, max float64, unit string) {
		if !(value >= min && value <= max) {
			faults = append(faults, scenario.Fault{Code: "fault.range", Path: path, Values: map[string]any{"value": value, "min": min, "max": max, "unit": unit}})
		}
	}
	choice("/encoding", string(m.Encoding), texts(encodings))
	choice("/separator", m.Separator, separators)
	choice("/dateOrder", m.DateOrder, dateOrders)
	choice("/clock", string(m.Clock), texts(clocks))
	choice("/stamp", string(m.Stamp), texts(stamps))
	within("/firstLine", float64(m.FirstLine), 1, mostHeaderLines, "")
	within("/utcOffset_h", m.UTCOffset_h, -12, 14, "h")
	within("/step_min", m.Step_min, 0.5, longestStep_h*60, "min")
	within("/windHeight_m", m.WindHeight_m, lowestSensor_m, 100, "m")
	within("/wind_ms", m.Wind_ms, 0, windQuantity.max, "m/s")
	if m.DecimalComma && m.Separator == "," {
		faults = append(faults, scenario.Fault{Code: "fault.mapping-comma", Path: "/decimalComma"})
	}
	for i, column := range m.Columns {
		path := "/columns/" + strconv.Itoa(i)
		within(path+"/column", float64(column.Column), 1, mostColumns, "")
		choice(path+"/quantity", column.Quantity, Quantities())
		if units := Units(column.Quantity); units != nil && column.Unit != "" {
			if _, ok := m.unit(column); !ok {
				choice(path+"/unit", column.Unit, units)
			}
		}
	}
	return append(faults, m.needs()...)
}

// The bounds of a table.
const (
	mostHeaderLines = 200
	mostColumns     = 500
	lowestSensor_m  = 0.5 // the profile of FAO-56 goes no lower over grass
)

// needs names what no column has and nothing can stand in for, and what two columns have.
func (m Mapping) needs() []scenario.Fault {
	count := map[string]int{}
	for _, column := range m.Columns {
		count[column.Quantity]++
	}
	has := func(all ...string) bool {
		return !slices.ContainsFunc(all, func(one string) bool { return count[one] == 0 })
	}
	var faults []scenario.Fault
	need := func(what string, ok bool) {
		if !ok {
			faults = append(faults, scenario.Fault{Code: "fault.mapping-lacks", Path: "/columns", Values: map[string]any{"what": what}})
		}
	}
	date := has(datePart) || has(yearPart, monthPart, dayPart)
	need("time", has(timePart) || date && (has(clockPart) || has(hourPart)))
	need("air", has(airQuantity.name))
	need("humidity", has(humidityQuantity.name) || has(dewQuantity.name))
	need("global", has(globalQuantity.name) || has(beamQuantity.name, diffuseQuantity.name))
	for _, quantity := range Quantities() {
		if count[quantity] > 1 {
			faults = append(faults, scenario.Fault{Code: "fault.mapping-twice", Path: "/columns", Values: map[string]any{"what": quantity}})
		}
	}
	return faults
}

// unit is the unit of a measured column.
func (m Mapping) unit(column Column) (unit, bool) {
	for _, measured := range measuredColumns {
		if measured.name != column.Quantity {
			continue
		}
		if column.Unit == "" {
			return unitsOf(measured.quantity)[0], true
		}
		return unitOf(measured.quantity, column.Unit)
	}
	return unit{}, false
}

func texts[T ~string](values []T) []string {
	out := make([]string, len(values))
	for i, value := range values {
		out[i] = string(value)
	}
	return out
}
