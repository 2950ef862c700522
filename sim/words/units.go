package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Units is the system in which quantities are written. Stored values stay in SI.
type Units int

// The systems of units.
const (
	Metric Units = iota
	US
)

// reading says how a stored quantity is written in one system: stored · factor + offset, in unit.
type reading struct {
	unit           string
	factor, offset float64
}

// Exact by definition: 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 mile = 1609.344 m, 1 oz = 28.349523125 g, 1 lb = 0.45359237 kg,
// 1 acre = 4046.8564224 m².
const (
	feetPerMetre        = 1 / 0.3048
	inchesPerMillimetre = 1 / 25.4
	mphPerMetreSecond   = 3600 / 1609.344
	ouncesPerGram       = 1 / 28.349523125
	poundsPerKilogram   = 1 / 0.45359237
	acresPerHectare     = 10000 / 4046.8564224
)

// readings lists metric and US reading by the unit names of the scenario's schema.
func readings(unit string) [2]reading {
	same := func(name string) [2]reading { return [2]reading{{name, 1, 0}, {name, 1, 0}} }
	pair := func(metric, us string, factor float64) [2]reading { return [2]reading{{metric, 1, 0}, {us, factor, 0}} }
	switch unit {
	case "degC":
		return [2]reading{{"°C", 1, 0}, {"°F", 1.8, 32}}
	case "K": // a difference: no offset
		return pair("°C", "°F", 1.8)
	case "K h":
		return pair("°C h", "°F h", 1.8)
	case "m":
		return pair("m", "ft", feetPerMetre)
	case "cm":
		return pair("cm", "in", 10*inchesPerMillimetre)
	case "mm":
		return pair("mm", "in", inchesPerMillimetre)
	case "cm2":
		return pair("cm²", "in²", 100*inchesPerMillimetre*inchesPerMillimetre)
	case "1/m":
		return pair("per m", "per ft", 1/feetPerMetre)
	case "m2/m":
		return pair("m²/m", "ft²/ft", feetPerMetre)
	case "m2/ha":
		return pair("m²/ha", "ft²/acre", feetPerMetre*feetPerMetre/acresPerHectare)
	case "m/s":
		return pair("m/s", "mph", mphPerMetreSecond)
	case "g":
		return pair("g", "oz", ouncesPerGram)
	case "kg":
		return pair("kg", "lb", poundsPerKilogram)
	case "kg/m":
		return pair("kg/m", "lb/ft", poundsPerKilogram/feetPerMetre)
	case "t/ha": // US tons of 2000 lb
		return pair("t/ha", "ton/acre", poundsPerKilogram/2/acresPerHectare)
	case "m2/kg":
		return pair("m²/kg", "ft²/lb", feetPerMetre*feetPerMetre/poundsPerKilogram)
	case "h/ha":
		return pair("h/ha", "h/acre", 1/acresPerHectare)
	case "share":
		return [2]reading{{"%", 100, 0}, {"%", 100, 0}}
	case "deg":
		return same("°")
	case "W/m2":
		return same("W/m²")
	default:
		return same(unit)
	}
}

// Convert gives a stored value as a number of a system of units, and the name of its unit there.
func Convert(value float64, unit string, units Units) (converted float64, name string) {
	read := readings(unit)[units]
	return value*read.factor + read.offset, read.unit
}

// Quantity writes a stored value with its unit in a system of units, rounded to a number of decimals;
// -1 keeps what the value has, up to six figures.
func Quantity(value float64, unit string, decimals int, units Units) string {
	converted, name := Convert(value, unit, units)
	text := Number(converted, decimals)
	switch name {
	case "", "°":
		return text + name
	default:
		return text + " " + name
	}
}

// Number writes a number with a fixed count of decimals, or with up to six figures for -1. Zero has no sign.
func Number(value float64, decimals int) string {
	if decimals < 0 {
		rounded, _ := strconv.ParseFloat(strconv.FormatFloat(value, 'g', 6, 64), 64)
		return strconv.FormatFloat(rounded, 'f', -1, 64)
	}
	text := strconv.FormatFloat(value, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

// Clock writes a clock hour as 15:30, rounded to the minute; the end of the day is 24:00.
func Clock(hour float64) string {
	minutes := int(math.Round(hour * 60))
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
}
