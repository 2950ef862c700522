package weather

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"testing"
	"time"
)

// spreadsheet is the logged week as a plain table, and its mapping.
func spreadsheet(t testing.TB) (content string, m Mapping) {
	t.Helper()
	content = table(loggedWeek(t), "time,air,rh,ghi,wind speed\n", func(r tenMinutes) string {
		return fmt.Sprintf("%s,%.2f,%.1f,%.1f,%.2f", r.end.Format("2006-01-02 15:04"), r.air, r.humidity, r.global, r.speed)
	})
	sketch, ok := Look(strings.NewReader(content), stonyBend(), "")
	if !ok {
		t.Fatal("no table")
	}
	return content, sketch.Mapping
}

func readTable(content string, m Mapping) (File, []Fault) {
	return Setting{Site: stonyBend(), Mapping: &m}.Read("test", strings.NewReader(content))
}

// A table without a mapping is not read, and says what to do.
func TestTableWithoutMappingAsksForOne(t *testing.T) {
	content, _ := spreadsheet(t)
	file, faults := Read("test", strings.NewReader(content))
	if codes(faults) != "fault.file-mapping" || !Blocked(faults) || len(file.Rows) != 0 {
		t.Errorf("faults %v", faults)
	}
	for name, text := range map[string]string{
		"a letter": "Dear all,\nit was hot.", "words": strings.Repeat("one,two,three\n", 50), "one column": strings.Repeat("2019-07-12 10:00\n", 50),
		"an EPW file": text(t, hotWeekEPW), "a packed file": "PK\x03\x04,,,\n1,2,3\n", "nothing": "",
	} {
		if sketch, ok := Look(strings.NewReader(text), stonyBend(), ""); ok {
			t.Errorf("%s is taken for a table: %+v", name, sketch)
		}
	}
}

// Faults of lines say where, and the rest is read.
func TestFaultsOfTables(t *testing.T) {
	good, m := spreadsheet(t)
	lines := strings.SplitAfter(good, "\n")
	with := func(line int, change func(fields []string)) string {
		changed := append([]string{}, lines...)
		fields := strings.Split(strings.TrimSuffix(changed[line-1], "\n"), ",")
		change(fields)
		changed[line-1] = strings.Join(fields, ",") + "\n"
		return strings.Join(changed, "")
	}
	for name, test := range map[string]struct {
		content, code string
		line, column  int
	}{
		"a word":          {with(300, func(f []string) { f[1] = "hot" }), "fault.file-number", 300, 2},
		"decimal comma":   {with(300, func(f []string) { f[1] = `"30,5"` }), "fault.file-comma", 300, 2},
		"out of range":    {with(300, func(f []string) { f[2] = "240" }), "fault.file-range", 300, 3},
		"no date":         {with(300, func(f []string) { f[0] = "2019-02-30 10:00" }), "fault.file-date", 300, 1},
		"no clock":        {with(300, func(f []string) { f[0] = "2019-07-14 25:00" }), "fault.file-date", 300, 1},
		"a cut line":      {good[:len(good)-8], "fault.file-fields", 1009, 0},
		"the same twice":  {strings.Join(append(append([]string{}, lines[:300]...), lines[299:]...), ""), "fault.file-again", 301, 0},
		"a day left out":  {strings.Join(append(append([]string{}, lines[:1+144]...), lines[1+288:]...), ""), "fault.file-gap", 146, 0},
		"missing numbers": {with(300, func(f []string) { f[1], f[2], f[3] = "-9999", "NAN", "" }), "", 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			file, faults := readTable(test.content, m)
			if Blocked(faults) || len(file.Rows) < 143 {
				t.Fatalf("%d rows, faults %v", len(file.Rows), faults)
			}
			if test.code == "" {
				if len(faults) > 0 {
					t.Errorf("faults %v", faults)
				}
				return
			}
			if len(faults) == 0 || faults[0].Code != test.code || faults[0].Line != test.line || faults[0].Column != test.column {
				t.Errorf("faults %v, want %s at %d, %d", faults, test.code, test.line, test.column)
			}
		})
	}
}

// What blocks a table as a whole.
func TestUnusableTables(t *testing.T) {
	good, m := spreadsheet(t)
	change := func(change func(*Mapping)) Mapping {
		changed := m
		changed.Columns = append([]Column{}, m.Columns...)
		change(&changed)
		return changed
	}
	void := table(loggedWeek(t), "time,air,rh,ghi,wind speed\n", func(r tenMinutes) string {
		return r.end.Format("2006-01-02 15:04") + ",-999,-999,-999,-999"
	})
	for name, test := range map[string]struct {
		content string
		mapping Mapping
		codes   string
	}{
		"all missing":        {void, m, "fault.file-void fault.file-void fault.file-void fault.file-void"},
		"header only":        {good[:30], m, "fault.file-no-rows"},
		"another date order": {good, change(func(m *Mapping) { m.Columns[0].Column = 2; m.Columns[1].Column = 1 }), "fault.file-no-rows"},
		"no change of clock": {good, change(func(m *Mapping) { m.Clock = ChangingClock }), "fault.file-no-change"},
		"no light": {good, change(func(m *Mapping) {
			m.Columns = append(append([]Column{}, m.Columns[:3]...), m.Columns[4:]...)
		}), "fault.mapping-lacks"},
		"many at once": {good, change(func(m *Mapping) {
			m.Separator, m.Step_min, m.Clock, m.UTCOffset_h, m.Columns[1].Unit, m.Columns[2].Quantity = "x", 0, "sundial", 99, "furlong", "joy"
		}), "fault.choice fault.choice fault.range fault.range fault.choice fault.choice fault.mapping-lacks"},
		"commas for both": {good, change(func(m *Mapping) { m.DecimalComma = true }), "fault.mapping-comma"},
		"twice":           {good, change(func(m *Mapping) { m.Columns[4].Quantity, m.Columns[4].Unit = "air", "" }), "fault.mapping-twice"},
	} {
		t.Run(name, func(t *testing.T) {
			file, faults := readTable(test.content, test.mapping)
			var blocking []Fault
			for _, fault := range faults {
				if fault.Blocks {
					blocking = append(blocking, fault)
				}
			}
			if codes(blocking) != test.codes || len(file.Rows) != 0 {
				t.Errorf("%d rows, faults %v, want %s", len(file.Rows), blocking, test.codes)
			}
		})
	}
}

// 200 MB of a table are read as far as a year goes; of no table they are left soon.
func TestHugeTablesAreLeftEarly(t *testing.T) {
	good, m := spreadsheet(t)
	for name, test := range map[string]struct {
		text, code string
		most       int64
	}{
		"without readings": {strings.Repeat("no,data,in,this,line\n", 200), "fault.file-no-rows", 1 << 20},
		"on and on":        {good, "notice.file-lines", mostLoggerLines * 64},
		"one line":         {strings.Repeat("7", 4096), "fault.file-line-long", 1 << 20},
	} {
		tail := &endless{text: test.text, most: 200 << 20}
		_, faults := Setting{Site: stonyBend(), Mapping: &m}.Read("test", io.MultiReader(strings.NewReader(good[:27]), tail))
		found := false
		for _, fault := range faults {
			found = found || fault.Code == test.code
		}
		if !found || tail.bytes > test.most || len(faults) > faultsKept+8 {
			t.Errorf("%s: %d bytes read, %d faults, %s missing", name, tail.bytes, len(faults), test.code)
		}
	}
}

// yearOfReadings are bare readings of a site in central Europe every half hour, on the clock of the law: CEST from
// 31 March 2019 02:00 to 27 October 2019 03:00 (directive 2000/84/EC). Light and air only tell the hour of standard time.
func yearOfReadings(from, to time.Time) string {
	var out strings.Builder
	out.WriteString("time,air,rh,ghi\n")
	begins, ends := time.Date(2019, 3, 31, 2, 0, 0, 0, time.UTC), time.Date(2019, 10, 27, 2, 0, 0, 0, time.UTC) // standard time
	for at := from; at.Before(to); at = at.Add(30 * time.Minute) {
		wall := at
		if !at.Before(begins) && at.Before(ends) {
			wall = at.Add(time.Hour)
		}
		fmt.Fprintf(&out, "%s,%d,50,0\n", wall.Format("2006-01-02 15:04"), at.Hour())
	}
	return out.String()
}

// A clock that follows the law gives every hour of standard time once, and so do the fixed clocks on their parts.
func TestClocksThatFollowTheLaw(t *testing.T) {
	site := stonyBend()
	site.Latitude_deg, site.Longitude_deg, site.UTCOffset_h = 48, 15, 1
	for name, test := range map[string]struct {
		from, to time.Time
		changes  int
	}{
		"both changes": {time.Date(2019, 3, 1, 0, 0, 0, 0, time.UTC), time.Date(2019, 11, 10, 0, 0, 0, 0, time.UTC), 2},
		"spring":       {time.Date(2019, 3, 28, 0, 0, 0, 0, time.UTC), time.Date(2019, 4, 10, 0, 0, 0, 0, time.UTC), 1},
		"autumn":       {time.Date(2019, 10, 20, 0, 0, 0, 0, time.UTC), time.Date(2019, 11, 3, 0, 0, 0, 0, time.UTC), 1},
	} {
		content := yearOfReadings(test.from, test.to)
		sketch, ok := Look(strings.NewReader(content), site, "")
		if !ok || sketch.Mapping.Step_min != 30 {
			t.Fatalf("%s: %+v", name, sketch)
		}
		m := sketch.Mapping
		m.Clock, m.Stamp = ChangingClock, StampStart
		file, faults := Setting{Site: site, Mapping: &m}.Read("test", strings.NewReader(content))
		changes := 0
		for _, fault := range faults {
			switch fault.Code {
			case "notice.file-change":
				changes++
			case "notice.file-wind":
			default:
				t.Errorf("%s: %v", name, fault)
			}
		}
		if hours := int(test.to.Sub(test.from).Hours()); changes != test.changes || len(file.Rows) != hours {
			t.Errorf("%s: %d changes, %d rows, want %d, %d", name, changes, len(file.Rows), test.changes, hours)
		}
		for _, row := range file.Rows {
			// The readings about hour h are those of h-1 and h: halfway between; the last hour has one side only.
			if want := float64(row.Hour%24) - 0.5; row.Hour < 24 && row.Hour > 1 && row.Air_C != want && row.stamp() != file.Rows[len(file.Rows)-1].stamp() {
				t.Fatalf("%s: %s has %g °C, want %g", name, row.stamp(), row.Air_C, want)
			}
		}
	}
}

// A mapping is read from JSON, over what is usual; all that is wrong with it is said by the field.
func TestParseMapping(t *testing.T) {
	_, m := spreadsheet(t)
	raw, err := json.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	if got, faults := ParseMapping(raw, 3); len(faults) > 0 || fmt.Sprint(got) != fmt.Sprint(m) {
		t.Errorf("%+v, faults %v; want %+v", got, faults, m)
	}
	short := `{"columns": [{"column": 1, "quantity": "time"}, {"column": 2, "quantity": "air"}, {"column": 3, "quantity": "humidity"}, {"column": 4, "quantity": "global"}]}`
	if got, faults := ParseMapping([]byte(short), 9.5); len(faults) > 0 || got.UTCOffset_h != 9.5 || got.FirstLine != 2 || got.Step_min != 10 {
		t.Errorf("%+v, faults %v", got, faults)
	}
	for raw, want := range map[string]string{
		"":                                      "fault.mapping",
		"[]":                                    "fault.mapping",
		`{"colums": []}`:                        "fault.mapping",
		short + "{}":                            "fault.mapping",
		`{"firstLine": "two"}`:                  "fault.mapping",
		`{"stamp": "noon"}`:                     "fault.choice fault.mapping-lacks fault.mapping-lacks fault.mapping-lacks fault.mapping-lacks",
		strings.Repeat(" ", mostMappingBytes+1): "fault.too-long",
	} {
		_, faults := ParseMapping([]byte(raw), 0)
		var got []string
		for _, fault := range faults {
			got = append(got, fault.Code)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%.30q: %v, want %s", raw, got, want)
		}
	}
}
