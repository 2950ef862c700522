package weather

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// columnName is how columns of a quantity are called.
type columnName struct {
	quantity string
	words    []string // each a word of the name
	parts    []string // each anywhere in it
}

// columnNames are tried in this order, the telling before the common; the words are English with some German, French
// and Spanish ones.
var columnNames = []columnName{
	{beamQuantity.name, []string{"dni", "beam"}, []string{"direct normal", "direktnormal"}},
	{diffuseQuantity.name, []string{"dhi"}, []string{"diff"}},
	{longwaveQuantity.name, []string{"lw", "lwd", "ldown", "lwin"}, []string{"long wave", "longwave", "infrared"}},
	{dewQuantity.name, []string{"td"}, []string{"dew", "taupunkt", "rocio", "rocío", "rosée", "rosee"}},
	{humidityQuantity.name, []string{"rh", "hr"}, []string{"hum", "feuchte"}},
	{fromQuantity.name, []string{"wd"}, []string{"wind dir", "winddir", "windrichtung", "direction", "direcci"}},
	{windQuantity.name, []string{"ws", "vent"}, []string{"wind", "viento", "speed"}},
	{globalQuantity.name, []string{"ghi", "sr", "rs", "sw", "swd", "swin", "slr", "par", "ppfd"},
		[]string{"solar", "global", "radiation", "irradiance", "pyran", "slrw", "strahlung", "radiaci", "rayonnement"}},
	{airQuantity.name, []string{"ta", "tair", "t2m", "t", "tc"}, []string{"air", "temp", "luft"}},
}

// otherThings are in the names of columns of other places and of extremes within a reading.
var otherThings = []string{
	"soil", "boden", "suelo", "leaf", "panel", "box", "batt", "ptemp", "wet bulb", "wetbulb", "gust", "max", "min", "std", "dev",
	"clear sky", "clearsky", "water", "body", "net rad", "netrad", "reflect", "upwell", "record", "pressure", "rain",
}

// names tells whether the words of a name are those of the quantity.
func (c *columnName) names(plain string) bool {
	return contains(plain, c.parts) || slices.ContainsFunc(strings.Fields(plain), func(word string) bool { return slices.Contains(c.words, word) })
}

func contains(text string, parts []string) bool {
	return slices.ContainsFunc(parts, func(part string) bool { return strings.Contains(text, part) })
}

// timeNames are the names of columns that hold a part of a time as a number.
var timeNames = map[string]string{
	"year": yearPart, "month": monthPart, "day": dayPart, "hour": hourPart, "minute": minutePart,
	"yyyy": yearPart, "mm": monthPart, "dd": dayPart, "hh": hourPart, "mi": minutePart, "mo": monthPart, "dy": dayPart, "hr": hourPart,
}

// findColumns guesses what the columns are: times by their values, measured ones by name and unit.
func (g *guesser) findColumns() {
	taken := map[string]bool{}
	for i, name := range g.names {
		if part := g.timePart(i, taken); part != "" {
			taken[part] = true
			g.columns = append(g.columns, Column{Column: i + 1, Name: name, Quantity: part})
			continue
		}
		if quantity, unit := g.measured(i); quantity != "" && !taken[quantity] {
			taken[quantity] = true
			g.columns = append(g.columns, Column{Column: i + 1, Name: name, Quantity: quantity, Unit: unit})
		}
	}
}

// timePart names the part of a time that a column holds, if any.
func (g *guesser) timePart(column int, taken map[string]bool) string {
	part := timeNames[strings.ToLower(strings.TrimSpace(g.names[column]))]
	if part != "" && !taken[part] && isNumber(g.rows[0][column]) {
		return part
	}
	s, ok := scanStamp(g.rows[0][column])
	if !ok || isNumber(g.rows[0][column]) {
		return ""
	}
	switch {
	case taken[timePart]:
	case s.clock == 0 && !taken[clockPart]:
		return clockPart
	case s.clock == 3 && !taken[datePart]:
		return timePart
	case s.clock < 0 && len(s.numbers) == 3 && !taken[datePart]:
		return datePart
	}
	return ""
}

// plainWords are the words of a name in small letters with blanks between them: WindSpeed, Solar_Rad and T° too.
func plainWords(name string) string {
	var out strings.Builder
	before := rune(0)
	for _, r := range name {
		switch {
		case strings.ContainsRune("_/\\.()[],°-", r):
			out.WriteByte(' ')
		case unicode.IsUpper(r) && unicode.IsLower(before):
			out.WriteByte(' ')
			fallthrough
		default:
			out.WriteRune(unicode.ToLower(r))
		}
		before = r
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

// cutUnit takes the unit in brackets out of a name, as of Temp (°C).
func cutUnit(name string) (rest, unit string, found bool) {
	from := strings.IndexAny(name, "([")
	if from < 0 {
		return name, "", false
	}
	length := strings.IndexAny(name[from:], ")]")
	if length < 0 {
		return name, "", false
	}
	return name[:from] + name[from+length+1:], name[from+1 : from+length], true
}

// measured names the quantity and unit of a column by its name, if it is known.
func (g *guesser) measured(column int) (quantity, unit string) {
	name := g.names[column]
	unit = g.units[column]
	if rest, inBrackets, found := cutUnit(name); found {
		name, unit = rest, inBrackets
	}
	plain := plainWords(name)
	if contains(plain, otherThings) {
		return "", ""
	}
	for _, known := range columnNames {
		if known.names(plain) {
			return known.quantity, g.unitOfColumn(column, known.quantity, unit, plain)
		}
	}
	return "", ""
}

// unitOfColumn is the unit as the header has it, else one that fits the name or the values, else the quantity's own.
func (g *guesser) unitOfColumn(column int, quantity, written, name string) string {
	for _, measured := range measuredColumns {
		if measured.name != quantity {
			continue
		}
		if u, ok := unitOf(measured.quantity, written); ok {
			return u.name
		}
		for _, word := range append(strings.Fields(name), "") {
			if u, ok := unitOf(measured.quantity, word); ok && len(word) > 1 {
				return u.name
			}
		}
	}
	highest := g.highest(column)
	switch {
	case (quantity == airQuantity.name || quantity == dewQuantity.name) && highest > airQuantity.max:
		return "°F"
	case quantity == humidityQuantity.name && highest <= 1.1:
		return "0–1"
	case strings.Contains(name, "ppfd") || strings.Contains(name, "par "):
		return "µmol/m²/s"
	}
	return Units(quantity)[0]
}

// highest is the highest number of a column.
func (g *guesser) highest(column int) (highest float64) {
	for _, row := range g.rows {
		if number, err := strconv.ParseFloat(strings.Replace(row[column], ",", ".", 1), 64); err == nil {
			highest = max(highest, number)
		}
	}
	return highest
}
