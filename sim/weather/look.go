package weather

import (
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"rowlight/sim/scenario"
)

// Sketch is a table as Look sees it: a guess of its mapping, to be confirmed, and its beginning to judge it by.
type Sketch struct {
	Mapping Mapping
	Names   []string   // of all columns, empty where the table has none
	Rows    [][]string // the first readings, field by field
}

// rowsShown is how many readings a sketch shows.
const rowsShown = 4

// Look guesses the mapping of a table by its beginning; ok is false for what is no table of readings with their times,
// and for formats that say everything themselves. Of the site it takes the clock. The separator is guessed too where none is
// given.
func Look(r io.Reader, site scenario.Site, separator string) (s Sketch, ok bool) {
	faults := &report{}
	o := open(r, faults)
	if Blocked(faults.faults) || guess(o.start) != "" || parted(o.start) {
		return s, false
	}
	g := guesser{lines: wholeLines(o.start, o.raw.Buffered() == peeked)}
	if !g.table(separator) {
		return s, false
	}
	g.findNames()
	g.findColumns()
	m := Mapping{
		Encoding: o.encoding, Separator: g.separator, DecimalComma: g.decimalComma(), FirstLine: g.first + 1,
		Clock: StandardClock, UTCOffset_h: site.UTCOffset_h, Stamp: StampEnd, WindHeight_m: 10, Wind_ms: usualWind_ms,
		Columns: append([]Column{}, g.columns...), // a list, if an empty one
	}
	g.times(&m)
	g.windHeight(&m)
	s = Sketch{Mapping: m, Names: g.names}
	for _, fields := range g.rows[:min(rowsShown, len(g.rows))] {
		s.Rows = append(s.Rows, fields)
	}
	return s, true
}

// wholeLines are the lines of a beginning, without the last where it may be cut.
func wholeLines(text []byte, cut bool) []string {
	var lines []string
	for len(text) > 0 {
		advance, line, _ := splitLine(text, true)
		lines = append(lines, string(line))
		text = text[advance:]
	}
	if cut && len(lines) > 1 {
		lines = lines[:len(lines)-1]
	}
	return lines
}

// guesser finds out what a table is.
type guesser struct {
	lines     []string
	separator string
	first     int        // index of the line of the first reading
	rows      [][]string // the readings
	names     []string
	units     []string
	columns   []Column
}

// table finds the separator, unless it is given, and the first reading: the separator that parts most lines into the same
// number of fields, and the first line of that number with a date or clock in it, or with numbers only.
func (g *guesser) table(given string) bool {
	best, separators := 0, []string{"\t", ";", "|", ","}
	if given != "" {
		separators = []string{given}
	}
	for _, separator := range separators {
		count := map[int]int{}
		for _, line := range g.lines {
			if line != "" {
				count[len(splitAt(line, separator))]++
			}
		}
		for fields, lines := range count {
			if fields >= 2 && lines > best && 2*lines >= len(g.lines) {
				best, g.separator = lines, separator
			}
		}
	}
	if best == 0 {
		return false
	}
	fields := g.fieldsOfMost()
	for i, line := range g.lines {
		row := splitAt(line, g.separator)
		if len(row) != fields {
			continue
		}
		if len(g.rows) > 0 {
			g.rows = append(g.rows, row)
		} else if isReading(row) {
			g.first, g.rows = i, [][]string{row}
		}
	}
	return len(g.rows) > 0
}

// fieldsOfMost is the number of fields that most lines have.
func (g *guesser) fieldsOfMost() (fields int) {
	count := map[int]int{}
	for _, line := range g.lines {
		n := len(splitAt(line, g.separator))
		if count[n]++; count[n] > count[fields] {
			fields = n
		}
	}
	return fields
}

// isReading tells whether a line has a time and at least one number.
func isReading(fields []string) bool {
	times, numbers := 0, 0
	for _, field := range fields {
		if isNumber(field) {
			numbers++
		} else if s, ok := scanStamp(field); ok && (s.clock >= 0 || len(s.numbers) == 3) {
			times++
		}
	}
	return numbers > 0 && (times > 0 || numbers >= 5)
}

func isNumber(field string) bool {
	_, err := strconv.ParseFloat(strings.Replace(field, ",", ".", 1), 64)
	return err == nil
}

// headerWords are what lines under the names of columns say of how a value was made, and of what.
var headerWords = []string{"", "avg", "smp", "tot", "max", "min", "std", "wvc", "ts", "rn", "mean", "average", "samp"}

// findNames finds the line of names above the readings, and that of the units below it.
func (g *guesser) findNames() {
	g.names = make([]string, len(g.rows[0]))
	g.units = make([]string, len(g.rows[0]))
	for i := g.first - 1; i >= 0; i-- {
		fields := splitAt(g.lines[i], g.separator)
		if len(fields) != len(g.names) {
			continue
		}
		words, units, rest := 0, 0, 0
		for _, field := range fields {
			switch {
			case slices.Contains(headerWords, strings.ToLower(field)):
				words++
			case knownUnit(field):
				units++
			default:
				rest++
			}
		}
		switch {
		case units > 0 && units >= rest:
			g.units = fields
		case rest > 0 && rest >= words:
			g.names = fields
			return
		}
	}
}

func knownUnit(name string) bool {
	for _, column := range measuredColumns {
		if _, ok := unitOf(column.quantity, name); ok {
			return true
		}
	}
	return false
}

// decimalComma tells whether numbers have commas and none has a point.
func (g *guesser) decimalComma() bool {
	commas, points := 0, 0
	for _, row := range g.rows {
		for _, field := range row {
			switch _, err := strconv.ParseFloat(strings.Replace(field, ",", ".", 1), 64); {
			case err != nil:
			case strings.Contains(field, ","):
				commas++
			case strings.Contains(field, "."):
				points++
			}
		}
	}
	return commas > points && g.separator != ","
}

// windHeight takes the height of the wind sensor from the name of its column, as "Wind 2 m" or "wind_2m"; without one it
// is the usual 10 m.
func (g *guesser) windHeight(m *Mapping) {
	for _, column := range m.Columns {
		words := strings.FieldsFunc(strings.ReplaceAll(strings.ToLower(column.Name), " m", "m"), notInNumber)
		for _, word := range words {
			height, err := strconv.ParseFloat(strings.TrimSuffix(word, "m"), 64)
			if column.Quantity == windQuantity.name && strings.HasSuffix(word, "m") && err == nil && height >= lowestSensor_m && height <= 100 {
				m.WindHeight_m = height
			}
		}
	}
}

func notInNumber(r rune) bool { return strings.ContainsRune(" _()[]", r) }

// times guesses the order of dates, the time between readings, the clock and the stamp.
func (g *guesser) times(m *Mapping) {
	m.DateOrder = g.dateOrder(*m)
	m.Step_min = 60
	l := logger{mapping: *m, faults: &report{}, parts: map[string]int{}}
	l.plan()
	var walls []float64
	for i, row := range g.rows {
		if wall, ok := l.wall(cells{fields: row, line: g.first + i + 1, faults: l.faults}); ok {
			walls = append(walls, wall)
		}
	}
	if step, ok := commonStep(walls); ok {
		m.Step_min = math.Min(step*60, longestStep_h*60)
	}
	for _, column := range m.Columns {
		name := strings.ToLower(column.Name)
		if slices.Contains(timeParts, column.Quantity) && (strings.Contains(name, "utc") || strings.Contains(name, "gmt")) || l.zoned {
			m.Clock = UTCClock
		}
	}
	// Readings named by the half of their time apart from the full hour are named by their middle.
	if len(walls) > 1 && math.Abs(math.Mod(walls[0]*60, m.Step_min)-m.Step_min/2) < 0.01 {
		m.Stamp = StampMiddle
	}
}

// commonStep is the time that most readings lie apart [h].
func commonStep(walls []float64) (step float64, ok bool) {
	var steps []float64
	for i := 1; i < len(walls); i++ {
		if apart := walls[i] - walls[i-1]; apart > timeGrain_h {
			steps = append(steps, apart)
		}
	}
	if len(steps) == 0 {
		return 0, false
	}
	slices.Sort(steps)
	return math.Round(steps[len(steps)/2]*3600) / 3600, true
}

// dateOrder tries the orders of a date: the one in which most dates are in the calendar and the readings follow each
// other soonest; the year first, then the day, where there is nothing to tell.
func (g *guesser) dateOrder(m Mapping) string {
	best, most, least := dateOrders[0], -1, math.Inf(1)
	for _, order := range dateOrders {
		m.DateOrder = order
		l := logger{mapping: m, faults: &report{}, parts: map[string]int{}}
		l.plan()
		count, apart, last := 0, 0.0, math.NaN()
		for i, row := range g.rows {
			wall, ok := l.wall(cells{fields: row, line: i, faults: l.faults})
			if !ok {
				continue
			}
			count++
			if !math.IsNaN(last) {
				apart += math.Abs(wall - last)
			}
			last = wall
		}
		if count > most || count == most && apart < least-timeGrain_h {
			best, most, least = order, count, apart
		}
	}
	return best
}
