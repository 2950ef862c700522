package weather

import (
	"io"
	"math"

	"rowlight/sim/scenario"
)

// mostLoggerLines is more than a year of readings every five minutes.
const mostLoggerLines = 110_000

// patience is after how many lines a table of which nothing could be made is left.
const patience = 500

// logger reads the table of a logger line by line.
type logger struct {
	file     *File
	faults   *report
	mapping  Mapping
	use      []loggerUse
	parts    map[string]int // columns of the parts of a time
	most     int            // the last column that is read
	zoned    bool           // the times name their own offset
	readings series
}

// loggerUse is a measured column that is read.
type loggerUse struct {
	measuredColumn
	column int
	unit   unit
}

// ReadLogger reads the table of a logger that stood at a site, as a mapping tells. A row stands for each hour; light is
// the mean over it, wind over the half hours about its end and, from another height, brought to 10 m by the
// logarithmic profile of FAO-56 (eq. 47), the rest runs straight between the readings. Numbers of −900 and below
// stand for missing values. See Read.
func ReadLogger(r io.Reader, m Mapping, site scenario.Site) (File, []Fault) {
	l := logger{
		file:   &File{Head: headAt(Logger, site, m.UTCOffset_h)},
		faults: &report{}, mapping: m, parts: map[string]int{},
	}
	for _, fault := range m.Faults() {
		l.faults.faults = append(l.faults.faults, Fault{Fault: fault, Blocks: true})
	}
	if Blocked(l.faults.faults) {
		return *l.file, l.faults.list()
	}
	l.plan()
	l.read(newLinesOf(m.Encoding.reader(r), mostLoggerLines))
	if !Blocked(l.faults.faults) {
		l.place()
		l.file.takeSeries(l.readings, l.faults)
		l.fillWind()
	}
	return l.file.finish(l.faults)
}

// plan finds what is read of the columns.
func (l *logger) plan() {
	for _, column := range l.mapping.Columns {
		l.most = max(l.most, column.Column)
		unit, measured := l.mapping.unit(column)
		if !measured {
			l.parts[column.Quantity] = column.Column
			continue
		}
		for _, of := range measuredColumns {
			if of.name == column.Quantity {
				l.use = append(l.use, loggerUse{of, column.Column, unit})
			}
		}
	}
}

// read reads the lines of the table.
func (l *logger) read(in *lines) {
	for {
		line, ok := in.next(l.faults)
		if !ok {
			return
		}
		if in.number < l.mapping.FirstLine || line == "" {
			continue
		}
		l.line(line, in.number)
		if len(l.readings) == 0 && in.number > l.mapping.FirstLine+patience {
			return // no table after all; finish says that nothing could be read
		}
	}
}

// line reads one line. Its time is put on the clock of the rows when all times are known.
func (l *logger) line(line string, number int) {
	c := cells{fields: splitAt(line, l.mapping.Separator), line: number, faults: l.faults, commas: l.mapping.DecimalComma}
	if len(c.fields) < l.most {
		l.faults.at(number, 0, "fault.file-fields", map[string]any{"count": len(c.fields), "min": l.most})
		return
	}
	wall, ok := l.wall(c)
	if !ok {
		return
	}
	r := reading{line: number, from: wall, row: emptyRow()}
	for _, use := range l.use {
		*use.value(&r.row) = c.inUnit(use.column, use.quantity, use.unit, l.mapping.Step_min/60, loggerMissing)
	}
	if l.mapping.WindHeight_m != 10 {
		r.row.Wind_ms *= windTo10m(l.mapping.WindHeight_m)
	}
	l.readings = append(l.readings, r)
}

// loggerMissing tells of the numbers that loggers write for a missing value, such as −999, −6999 and −9999.
func loggerMissing(number float64) bool { return number <= -900 }

// wall is the time of a line as it is written, or on UTC where it names its offset [h since 1970].
func (l *logger) wall(c cells) (hours float64, ok bool) {
	if column := l.parts[timePart]; column > 0 {
		s, ok := scanStamp(c.fields[column-1])
		day, dated := s.date(l.mapping.DateOrder)
		clock, clocked := s.hours()
		if !ok || !dated || !clocked {
			return l.noTime(c, column, l.mapping.DateOrder+" hh:mm")
		}
		l.zoned = l.zoned || s.zoned
		return hoursSince1970(day) + clock - s.zone_h, true
	}
	day, ok := l.day(c)
	if !ok {
		return 0, false
	}
	if column := l.parts[clockPart]; column > 0 {
		s, ok := scanStamp(c.fields[column-1])
		clock, clocked := s.hours()
		if !ok || !clocked || s.clock != 0 {
			return l.noTime(c, column, "hh:mm")
		}
		return day + clock, true
	}
	hour, ok := c.whole(l.parts[hourPart], "hour", 0, 24)
	if !ok {
		return 0, false
	}
	minute := 0
	if column := l.parts[minutePart]; column > 0 {
		if minute, ok = c.whole(column, "minute", 0, 59); !ok {
			return 0, false
		}
	}
	return day + float64(hour) + float64(minute)/60, true
}

// day is the day of a line [h since 1970], from one column or three.
func (l *logger) day(c cells) (hours float64, ok bool) {
	if column := l.parts[datePart]; column > 0 {
		s, ok := scanStamp(c.fields[column-1])
		day, dated := s.date(l.mapping.DateOrder)
		if !ok || !dated {
			return l.noTime(c, column, l.mapping.DateOrder)
		}
		return hoursSince1970(day), true
	}
	year, okYear := c.whole(l.parts[yearPart], "year", scenario.FirstYear, scenario.LastYear)
	month, okMonth := c.whole(l.parts[monthPart], "month", 1, 12)
	date, okDay := c.whole(l.parts[dayPart], "day", 1, 31)
	if !okYear || !okMonth || !okDay {
		return 0, false
	}
	day, ok := dateOf(year, month, date)
	if !ok {
		return l.noTime(c, l.parts[dayPart], "ymd")
	}
	return hoursSince1970(day), true
}

func (l *logger) noTime(c cells, column int, want string) (float64, bool) {
	l.faults.at(c.line, column, "fault.file-date", map[string]any{"value": c.fields[column-1], "want": want})
	return 0, false
}

// place puts the readings on the clock of the rows and gives each its stretch of time.
func (l *logger) place() {
	m := l.mapping
	step := m.Step_min / 60
	shift := 0.0 // from the written times to standard time
	switch {
	case l.zoned, m.Clock == UTCClock:
		shift = m.UTCOffset_h
	case m.Clock == DaylightClock:
		shift = -1
	case m.Clock == ChangingClock:
		l.followLaw(step)
	}
	switch m.Stamp {
	case StampEnd:
		shift -= step
	case StampMiddle:
		shift -= step / 2
	}
	for i := range l.readings {
		r := &l.readings[i]
		r.from += shift
		r.to = r.from + step
	}
	l.checkStep(step)
}

// checkStep notes readings that mostly lie further apart, or nearer, than the mapping says.
func (l *logger) checkStep(step float64) {
	unlike := 0
	for i := 1; i < len(l.readings); i++ {
		if math.Abs(l.readings[i].from-l.readings[i-1].from-step) > 0.1*step {
			unlike++
		}
	}
	if unlike > len(l.readings)/2 {
		l.faults.notice("notice.file-step", map[string]any{"step_min": l.mapping.Step_min, "count": unlike})
	}
}

// followLaw takes the hour of daylight saving off the readings that have it. Its beginning is a gap of an hour by night,
// its end a repetition of one; before the first change the clock was as that change leaves it.
func (l *logger) followLaw(step float64) {
	var changes []int // the readings after a change, negative where the clock goes back
	for i := 1; i < len(l.readings); i++ {
		moved := l.readings[i].from - l.readings[i-1].from - step
		switch {
		case math.Abs(moved-1) < timeGrain_h && byNight(l.readings[i-1].from):
			changes = append(changes, i)
		case math.Abs(moved+1) < timeGrain_h && byNight(l.readings[i].from):
			changes = append(changes, -i)
		}
	}
	if len(changes) == 0 {
		l.faults.block(0, 0, "fault.file-no-change", nil)
		return
	}
	ahead := changes[0] < 0
	for i := range l.readings {
		if len(changes) > 0 && max(changes[0], -changes[0]) == i {
			ahead = changes[0] > 0
			l.faults.notice("notice.file-change", map[string]any{"found": clockText(l.readings[i].from), "line": l.readings[i].line})
			changes = changes[1:]
		}
		if ahead {
			l.readings[i].from--
		}
	}
}

// byNight tells whether a time lies in the hours in which clocks are changed.
func byNight(hours float64) bool { return wrap(hours) <= 4 }

// fillWind gives the mapping's wind to a table that has none.
func (l *logger) fillWind() {
	for _, use := range l.use {
		if use.quantity == windQuantity {
			return
		}
	}
	for i := range l.file.Rows {
		l.file.Rows[i].Wind_ms = l.mapping.Wind_ms
	}
	l.faults.notice("notice.file-wind", map[string]any{"wind_ms": l.mapping.Wind_ms})
}
