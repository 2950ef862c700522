package weather

import (
	"regexp"
	"strconv"
	"strings"
)

// columnName is how columns of a quantity are called.
type columnName struct {
	quantity string
	name     *regexp.Regexp
}

// columnNames are tried in this order, the telling before the common; the words are English with some German, French
// and Spanish ones.
var columnNames = []columnName{
	{beamQuantity.name, regexp.MustCompile(`\bdni\b|direct.?normal|\bbeam\b|direktnormal`)},
	{diffuseQuantity.name, regexp.MustCompile(`\bdhi\b|diff`)},
	{longwaveQuantity.name, regexp.MustCompile(`long.?wave|\blwd?\b|\bldown\b|infrared|\blw.?(in|dn|down)\b`)},
	{dewQuantity.name, regexp.MustCompile(`dew|\btd\b|taupunkt|roc[ií]o|ros[ée]e`)},
	{humidityQuantity.name, regexp.MustCompile(`hum|\brh\b|\brh\d|\bhr\b|feuchte`)},
	{fromQuantity.name, regexp.MustCompile(`wind.?dir|winddir|\bwd\b|direction|windrichtung|direcci`)},
	{windQuantity.name, regexp.MustCompile(`wind|\bws\b|viento|\bvent\b|speed`)},
	{globalQuantity.name, regexp.MustCompile(`\bghi\b|solar|global|radiation|irradiance|pyran|\bslr|\bsr\b|\brs\b|\bsw.?(in|dn|down)\b|strahlung|radiaci|rayonnement|\bpar\b|ppfd`)},
	{airQuantity.name, regexp.MustCompile(`\bair|\bta\b|\btair\b|temp|\bt2m\b|\btc?\b`)},
}

// otherThings are columns of other places and of extremes within a reading.
var otherThings = regexp.MustCompile(`soil|boden|suelo|leaf|panel|box|batt|ptemp|wet.?bulb|gust|max|min|std|dev|clear.?sky|water|body|net.?rad|reflect|upwell|\bout\b|record|pressure|rain`)

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

// apart parts words that are written together: WindSpeed, Solar_Rad and T°.
var apart = regexp.MustCompile(`([a-z])([A-Z])|[_/\\.()\[\],°-]`)

// inBrackets is the unit in a name, as Temp (°C).
var inBrackets = regexp.MustCompile(`[(\[]([^()\[\]]+)[)\]]`)

// measured names the quantity and unit of a column by its name, if it is known.
func (g *guesser) measured(column int) (quantity, unit string) {
	name := g.names[column]
	unit = g.units[column]
	if found := inBrackets.FindStringSubmatch(name); found != nil {
		unit = found[1]
		name = strings.Replace(name, found[0], "", 1)
	}
	plain := strings.ToLower(apart.ReplaceAllString(name, "$1 $2"))
	if otherThings.MatchString(plain) {
		return "", ""
	}
	for _, known := range columnNames {
		if known.name.MatchString(plain) {
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
