package weather

import (
	"math"
	"strconv"
	"strings"
)

// quantity is one measured quantity of a row.
type quantity struct {
	name     string  // key of its name in the text catalogue
	min, max float64 // what is taken; the bounds of the scenario's hours
}

// The quantities that are read. Instruments give a little below zero at night.
var (
	airQuantity      = quantity{"air", -60, 60}
	dewQuantity      = quantity{"dewPoint", -70, 40}
	humidityQuantity = quantity{"humidity", 0, 110}
	globalQuantity   = quantity{"global", -20, 1500}
	beamQuantity     = quantity{"beam", -20, 1400}
	diffuseQuantity  = quantity{"diffuse", -20, 1000}
	longwaveQuantity = quantity{"longwave", 30, 700}
	fromQuantity     = quantity{"windFrom", 0, 360}
	windQuantity     = quantity{"wind", 0, 60}
	opaqueQuantity   = quantity{"opaqueCloud", 0, 10}
)

// isLight tells whether a quantity is sunlight.
func (q quantity) isLight() bool {
	return q == globalQuantity || q == beamQuantity || q == diffuseQuantity
}

// cells reads the fields of one line. A field that is missing, no number or out of range is NaN;
// the last two are reported.
type cells struct {
	fields []string
	line   int
	faults *report
	commas bool // decimals have commas
}

// value reads field number column, counted from 1; missing tells which numbers stand for a missing
// value.
func (c cells) value(column int, of quantity, missing func(float64) bool) float64 {
	number, ok := c.number(column, of)
	if !ok || missing(number) {
		return math.NaN()
	}
	return c.within(column, of, number)
}

// inUnit is value of a number in another unit; a sum is that of a reading of so many hours. Light below zero is none.
func (c cells) inUnit(column int, of quantity, u unit, hours float64, missing func(float64) bool) float64 {
	number, ok := c.number(column, of)
	if !ok || missing(number) {
		return math.NaN()
	}
	number = number*u.scale + u.shift
	if u.sum {
		number /= hours
	}
	number = c.within(column, of, number)
	if of.isLight() {
		return math.Max(number, 0) // NaN stays
	}
	return number
}

// within is a number that lies in the range of a quantity; another is NaN and reported.
func (c cells) within(column int, of quantity, number float64) float64 {
	if number < of.min || number > of.max {
		c.faults.at(c.line, column, "fault.file-range", map[string]any{
			"what": of.name, "value": number, "min": of.min, "max": of.max})
		return math.NaN()
	}
	return number
}

// number reads a field; ok is false where it has no value or, reported, is no number.
func (c cells) number(column int, of quantity) (number float64, ok bool) {
	if column < 1 || column > len(c.fields) || blank(c.fields[column-1]) {
		return 0, false
	}
	field := c.fields[column-1]
	if c.commas {
		field = strings.Replace(field, ",", ".", 1)
	}
	number, err := strconv.ParseFloat(field, 64)
	if err != nil || math.IsInf(number, 0) || math.IsNaN(number) {
		code := "fault.file-number"
		if strings.Contains(field, ",") {
			code = "fault.file-comma"
		}
		c.faults.at(c.line, column, code, map[string]any{"what": of.name, "value": c.fields[column-1]})
		return 0, false
	}
	return number, true
}

// light is value with what instruments give below zero taken as none.
func (c cells) light(column int, of quantity, missing func(float64) bool) float64 {
	return math.Max(c.value(column, of, missing), 0) // NaN stays
}

// whole reads a whole number within bounds; ok is false, and the fault reported, where there is none.
func (c cells) whole(column int, what string, min, max int) (number int, ok bool) {
	field := ""
	if column >= 1 && column <= len(c.fields) {
		field = c.fields[column-1]
	}
	number, err := strconv.Atoi(field)
	if err != nil || number < min || number > max {
		c.faults.at(c.line, column, "fault.file-stamp", map[string]any{"what": what, "value": field, "min": min, "max": max})
		return 0, false
	}
	return number, true
}

// blank tells whether a field says that it has no value.
func blank(field string) bool {
	switch strings.ToLower(field) {
	case "", "nan", "na", "n/a", "null":
		return true
	}
	return false
}

// place reads a number of the header line that says where the file is from; without it there is no sun.
func place(fields []string, column int, what string, min, max float64, faults *report) float64 {
	field := ""
	if column <= len(fields) {
		field = fields[column-1]
	}
	number, err := strconv.ParseFloat(field, 64)
	if err != nil || !(number >= min && number <= max) {
		faults.block(1, column, "fault.file-place", map[string]any{"what": what, "value": field, "min": min, "max": max})
	}
	return number
}
