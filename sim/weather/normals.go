package weather

import (
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

// normalsColumn is a column of monthly normals.
type normalsColumn struct {
	name     string
	kind     quantity
	optional bool
}

// The columns of monthly normals: means over the days of each month. Light is that on the horizontal over a day.
var normalsColumns = []normalsColumn{
	{"airMax_C", quantity{"airMax", highestMin_C - 80, highestMax_C}, false},
	{"airMin_C", quantity{"airMin", lowestMin_C, highestMin_C}, false},
	{"dewPoint_C", quantity{dewQuantity.name, lowestDew_C, highestDew_C}, true},
	{"light_MJm2", quantity{"lightOfDay", 0.1, 45}, true},
	{"wind_ms", quantity{windQuantity.name, 0, highestWind_ms}, true},
}

// The places of the columns above.
const (
	normalMax = iota
	normalMin
	normalDew
	normalLight
	normalWind
	normalCount
)

// normals are monthly means at a site, NaN where there are none.
type normals struct {
	site   scenario.Site
	year   int
	month  [12][normalCount]float64
	given  [12]bool
	line   [12]int
	faults *report
}

// commonYear is the year of days of normals unless one is given; it has no 29 February.
const commonYear = 2001

// isNormals tells monthly normals by their first line.
func isNormals(first []byte) bool {
	fields := split(strings.ToLower(string(first)))
	return len(fields) > 2 && fields[0] == "month" && slices.Contains(fields, strings.ToLower(normalsColumns[normalMax].name))
}

// ReadNormals makes the days of months from their normals at a site: a line of names, then a line for each month with its
// number, the mean highest and lowest air temperature and, if known, dew point, light of a day on the horizontal [MJ/m²]
// and wind at 10 m. Days run through the months so that each keeps its means (Rymes & Myers 2001); hours follow the
// extremes as those of a design day do (Parton & Logan 1981), light the shares of Collares-Pereira & Rabl 1979 and Liu &
// Jordan 1960, its diffuse part Erbs et al. 1982 for monthly means. Where light is missing it follows from the range of
// temperature (Hargreaves, FAO-56 eq. 50), the dew point is the lowest temperature (FAO-56 eq. 48). All days are
// average ones: no heat wave and no clear day is among them. See Read.
func ReadNormals(r io.Reader, site scenario.Site, year int) (File, []Fault) {
	if year < scenario.FirstYear || year > scenario.LastYear {
		year = commonYear
	}
	n := normals{site: site, year: year, faults: &report{}}
	file := &File{Head: headAt(Normals, site, site.UTCOffset_h)}
	n.read(newLines(r))
	if !Blocked(n.faults.faults) {
		n.faults.notice("notice.normals", nil)
		n.standIn()
		file.Rows = n.rows()
	}
	return file.finish(n.faults)
}

// read reads the table.
func (n *normals) read(in *lines) {
	line, _ := in.next(n.faults)
	columns := n.columns(split(line))
	if Blocked(n.faults.faults) {
		return
	}
	for {
		line, ok := in.next(n.faults)
		if !ok {
			break
		}
		if strings.Trim(line, ", \t") != "" {
			n.readMonth(cells{fields: split(line), line: in.number, faults: n.faults}, columns)
		}
	}
	if !slices.Contains(n.given[:], true) && !Blocked(n.faults.faults) {
		n.faults.block(0, 0, "fault.file-no-rows", nil)
	}
}

// columns finds the columns by name, counted from 1; 0 for one that is not there.
func (n *normals) columns(names []string) (at [normalCount]int) {
	for i, column := range normalsColumns {
		at[i] = 1 + slices.IndexFunc(names, func(name string) bool { return strings.EqualFold(name, column.name) })
		if at[i] == 0 && !column.optional {
			n.faults.block(1, 0, "fault.file-column", map[string]any{"want": column.name})
		}
	}
	return at
}

// readMonth reads one line. A month with a fault blocks: its days would be made of nothing.
func (n *normals) readMonth(c cells, columns [normalCount]int) {
	number, ok := c.whole(1, "month", 1, 12)
	if !ok {
		n.blockLast()
		return
	}
	before := len(n.faults.faults)
	var month [normalCount]float64
	for i, column := range normalsColumns {
		month[i] = c.value(columns[i], column.kind, func(float64) bool { return false })
		if math.IsNaN(month[i]) && !column.optional && len(n.faults.faults) == before {
			c.faults.block(c.line, columns[i], "fault.normals-lack", map[string]any{"what": column.kind.name})
		}
	}
	middle := dayOfMonth(n.year, number, 15).YearDay()
	outside := sky.DailyExtraterrestrial(n.site.Latitude_deg, middle)
	switch {
	case n.given[number-1]:
		c.faults.block(c.line, 1, "fault.normals-twice", map[string]any{"value": number})
	case month[normalMin] >= month[normalMax]:
		c.faults.block(c.line, columns[normalMin], "fault.normals-order", map[string]any{"airMin": month[normalMin], "airMax": month[normalMax]})
	case month[normalLight] > mostClear*outside:
		c.faults.block(c.line, columns[normalLight], "fault.normals-light", map[string]any{"value": month[normalLight], "max": math.Floor(10*mostClear*outside) / 10})
	}
	if len(n.faults.faults) > before {
		n.blockLast()
	}
	n.month[number-1], n.given[number-1], n.line[number-1] = month, true, c.line
}

// mostClear is the share of the light from outside the atmosphere that no month has [1]; clear days have 0.75 to 0.8
// (FAO-56 eq. 37).
const mostClear = 0.85

// blockLast lets the fault noted last block.
func (n *normals) blockLast() {
	if last := len(n.faults.faults) - 1; last >= 0 {
		n.faults.faults[last].Blocks = true
	}
}

func dayOfMonth(year, month, day int) time.Time {
	return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
}

// standIn fills what the months lack and says so.
func (n *normals) standIn() {
	count := [normalCount]int{}
	for m := range n.month {
		month := &n.month[m]
		if !n.given[m] {
			continue
		}
		stand := [normalCount]float64{
			normalDew: month[normalMin],
			// The range of temperature tells of clouds; 0.16 is for places in the interior.
			normalLight: 0.16 * math.Sqrt(month[normalMax]-month[normalMin]) *
				sky.DailyExtraterrestrial(n.site.Latitude_deg, dayOfMonth(n.year, m+1, 15).YearDay()),
			normalWind: usualWind_ms,
		}
		for i := normalDew; i < normalCount; i++ {
			if math.IsNaN(month[i]) {
				month[i] = stand[i]
				count[i]++
			}
		}
	}
	for i, code := range map[int]string{normalDew: "notice.normals-dew", normalLight: "notice.normals-light", normalWind: "notice.normals-wind"} {
		if count[i] > 0 {
			n.faults.notice(code, map[string]any{"count": count[i], "wind_ms": usualWind_ms})
		}
	}
	slices.SortFunc(n.faults.faults, func(a, b Fault) int { return strings.Compare(a.Code, b.Code) })
}
