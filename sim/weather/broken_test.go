package weather

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"rowlight/sim/scenario"
)

// replaced changes the first occurrence of a text that must be there.
func replaced(t *testing.T, content, old, new string) string {
	t.Helper()
	if !strings.Contains(content, old) {
		t.Fatalf("%q is not in the file", old)
	}
	return strings.Replace(content, old, new, 1)
}

// Files that cannot be used at all.
func TestUnusableFilesBlockAndSayWhere(t *testing.T) {
	epw, tmy3 := text(t, hotWeekEPW), text(t, hotWeekTMY3)
	for name, test := range map[string]struct {
		content, code string
		line, column  int
	}{
		"empty":           {"", "fault.file-empty", 0, 0},
		"blank":           {"\ufeff \r\n\n", "fault.file-empty", 0, 0},
		"zip":             {"PK\x03\x04rest", "fault.file-packed", 0, 0},
		"zero bytes":      {"\x00\x00\x00\x01\x02\x00\x00", "fault.file-binary", 0, 0},
		"another kind":    {"-BEGIN-\nsome other source\n", "fault.file-format", 1, 0},
		"semicolons":      {strings.ReplaceAll(epw, ",", ";"), "fault.file-semicolons", 1, 0},
		"no header":       {replaced(t, epw, "GROUND TEMPERATURES,0\n", ""), "fault.file-header", 4, 0},
		"latitude":        {replaced(t, epw, ",36.40,", ",north,"), "fault.file-place", 1, 7},
		"time zone":       {replaced(t, epw, ",-8.0,90.0", ",,90.0"), "fault.file-place", 1, 9},
		"half hours":      {replaced(t, epw, "DATA PERIODS,1,1,", "DATA PERIODS,1,2,"), "fault.file-step", 8, 3},
		"header only":     {epw[:strings.Index(epw, "2019,7,12,1,")], "fault.file-no-rows", 0, 0},
		"TMY3 place":      {replaced(t, tmy3, ",140.400,", ",240.400,"), "fault.file-place", 1, 6},
		"TMY3 column":     {replaced(t, tmy3, ",Wspd (m/s),", ",Gust (m/s),"), "fault.file-column", 2, 0},
		"TMY3 unit":       {replaced(t, tmy3, ",Dry-bulb (C),", ",Dry-bulb (F),"), "fault.file-unit", 2, 32},
		"no light":        {withColumns(epw, map[int]string{14: "9999", 15: "9999", 16: "9999"}), "fault.file-void", 0, 0},
		"no air":          {withColumns(epw, map[int]string{7: "99.9"}), "fault.file-void", 0, 0},
		"a line too long": {replaced(t, epw, "COMMENTS 2,", "COMMENTS 2,"+strings.Repeat("x", mostLineBytes)), "fault.file-line-long", 7, 0},
	} {
		t.Run(name, func(t *testing.T) {
			file, faults := Read("test", strings.NewReader(test.content))
			if len(faults) != 1 || faults[0].Code != test.code || !faults[0].Blocks || len(file.Rows) != 0 {
				t.Fatalf("%d rows, faults %v; want %s", len(file.Rows), faults, test.code)
			}
			if faults[0].Line != test.line || faults[0].Column != test.column {
				t.Errorf("at line %d, column %d; want %d, %d", faults[0].Line, faults[0].Column, test.line, test.column)
			}
		})
	}
}

// A known format with semicolons is no logger's table whose columns a person could name.
func TestPartedFormatsAreNoTables(t *testing.T) {
	for name, content := range map[string]string{"EPW": text(t, hotWeekEPW), "TMY3": text(t, hotWeekTMY3)} {
		if sketch, ok := Look(strings.NewReader(strings.ReplaceAll(content, ",", ";")), scenario.Site{}, ""); ok {
			t.Errorf("%s with semicolons is taken for a table: %+v", name, sketch.Mapping)
		}
	}
	// A table of which nothing is recognized has a list of columns all the same.
	sketch, ok := Look(strings.NewReader("2024-07-01 10:00,1,2\n2024-07-01 11:00,2,3\n2024-07-01 12:00,3,1\n"), scenario.Site{}, "")
	if ok && sketch.Mapping.Columns == nil {
		t.Error("no list of columns")
	}
}

// All faults of the place come at once.
func TestAllFaultsOfThePlaceAreTold(t *testing.T) {
	_, faults := Read("test", strings.NewReader(replaced(t, text(t, hotWeekEPW), ",36.40,-119.90,-8.0,90.0", ",,-219.90,-8.0,9e9")))
	if codes(faults) != "fault.file-place fault.file-place fault.file-place" || faults[1].Values["value"] != "-219.90" || faults[1].Values["min"] != -180.0 {
		t.Errorf("faults %v", faults)
	}
}

func TestReadingErrorIsTold(t *testing.T) {
	broken := io.MultiReader(strings.NewReader(text(t, hotWeekTMY3)[:20000]), iotest.ErrReader(errors.New("disk gone")))
	file, faults := Read("test", broken)
	last := faults[len(faults)-1]
	if last.Code != "fault.file-unreadable" || !last.Blocks || len(file.Rows) != 0 || last.Values["detail"] != "disk gone" {
		t.Errorf("faults %v", faults)
	}
}

// A fault of one line leaves the other days usable.
func TestFaultsOfLinesSayWhere(t *testing.T) {
	epw, tmy3 := text(t, hotWeekEPW), text(t, hotWeekTMY3)
	row := "2019,7,12,10,60,?9?9?9?9E0?9?9?9?9?9?9?9?9?9?9?9?9?9?9?9*9*9?9?9?9,30.5,"
	for name, test := range map[string]struct {
		content, code string
		line, column  int
		value         any
	}{
		"text":            {replaced(t, epw, row, strings.Replace(row, "30.5", "warm", 1)), "fault.file-number", 18, 7, "warm"},
		"infinite":        {replaced(t, epw, row, strings.Replace(row, "30.5", "inf", 1)), "fault.file-number", 18, 7, "inf"},
		"decimal comma":   {replaced(t, epw, row, strings.Replace(row, "30.5", `"30,5"`, 1)), "fault.file-comma", 18, 7, "30,5"},
		"out of range":    {replaced(t, epw, row, strings.Replace(row, "30.5", "86.9", 1)), "fault.file-range", 18, 7, 86.9},
		"hour":            {replaced(t, epw, "2019,7,18,24,", "2019,7,18,25,"), "fault.file-stamp", 176, 4, "25"},
		"month":           {replaced(t, epw, "2019,7,18,24,", "2019,13,18,24,"), "fault.file-stamp", 176, 2, "13"},
		"beam":            {replaced(t, epw, ",0,3,0,999999,", ",0,1500,0,999999,"), "fault.file-range", 13, 15, 1500.0},
		"TMY3 date":       {replaced(t, tmy3, "02/04/2001,24:00", "2001-02-04,24:00"), "fault.file-date", 170, 1, "2001-02-04"},
		"TMY3 half hour":  {replaced(t, tmy3, "02/04/2001,24:00", "02/04/2001,23:30"), "fault.file-stamp", 170, 2, "23:30"},
		"TMY3 wind":       {replaced(t, tmy3, ",2.3,E,9,", ",-2.3,E,9,"), "fault.file-range", 3, 47, -2.3},
		"TMY3 word":       {replaced(t, tmy3, ",2.3,E,9,", ",calm,E,9,"), "fault.file-number", 3, 47, "calm"},
		"a cut line":      {epw[:len(epw)-60], "fault.file-fields", 176, 0, nil},
		"too many fields": {replaced(t, epw, row, strings.Replace(row, "30.5", "30,5", 1)), "fault.file-fields-many", 18, 0, nil},
	} {
		t.Run(name, func(t *testing.T) {
			file, faults := Read("test", strings.NewReader(test.content))
			if Blocked(faults) || len(file.Rows) < 167 {
				t.Fatalf("%d rows, faults %v", len(file.Rows), faults)
			}
			first := faults[0]
			if first.Code != test.code || first.Line != test.line || first.Column != test.column || first.Values["value"] != test.value {
				t.Errorf("%v at line %d, column %d; want %s at %d, %d", first, first.Line, first.Column, test.code, test.line, test.column)
			}
			if first.Values["line"] != test.line {
				t.Errorf("the parameters lack the line: %v", first.Values)
			}
			last := file.Rows[len(file.Rows)-30]
			mustDay(t, file, last.Month, last.Day)
		})
	}
}

func TestMissingHoursAreTold(t *testing.T) {
	epw := text(t, hotWeekEPW)
	lines := strings.SplitAfter(epw, "\n")
	cut := strings.Join(append(append([]string{}, lines[:50]...), lines[51:]...), "")
	file, faults := Read("test", strings.NewReader(cut))
	if codes(faults) != "fault.file-gap" || faults[0].Line != 51 || faults[0].Values["before"] != "07-13 18:00" || faults[0].Values["found"] != "07-13 20:00" {
		t.Errorf("faults %v", faults)
	}
	if _, faults := file.Day(7, 13); !Blocked(faults) || codes(faults) != "fault.day-hours" || faults[0].Values["hour"] != 19 || faults[0].Values["count"] != 0 {
		t.Errorf("faults %v", faults)
	}
	mustDay(t, file, 7, 14)

	doubled := strings.Join(append(append([]string{}, lines[:51]...), lines[50:]...), "")
	file, _ = Read("test", strings.NewReader(doubled))
	if _, faults := file.Day(7, 13); codes(faults) != "fault.day-hours" || faults[0].Values["count"] != 2 {
		t.Errorf("faults %v", faults)
	}
}

func TestShortFilesAreTold(t *testing.T) {
	epw := text(t, hotWeekEPW)
	cut := epw[:strings.Index(epw, "2019,7,18,24,")]
	_, faults := Read("test", strings.NewReader(cut))
	if codes(faults) != "notice.file-short" || faults[0].Values["to"] != "07-18 23:00" || faults[0].Values["count"] != 167 {
		t.Errorf("an hour short: %v", faults)
	}
	declared := replaced(t, epw, "7/12, 7/18", "7/12, 7/31")
	if _, faults := Read("test", strings.NewReader(declared)); codes(faults) != "notice.file-short" {
		t.Errorf("days short: %v", faults)
	}
}

// A year of rows, of 8759, and years upon years.
func TestYearsAreCounted(t *testing.T) {
	head, rows := year(t)
	for name, test := range map[string]struct {
		rows  []string
		codes string
		kept  int
	}{
		"a year":    {rows, "", 8760},
		"8759 rows": {rows[:8759], "notice.file-short", 8759},
		"a row out": {append(append([]string{}, rows[:5000]...), rows[5001:]...), "notice.file-short fault.file-gap", 8759},
		"two years": {append(append([]string{}, rows...), rows...), "notice.file-long", 8784},
	} {
		file, faults := ReadTMY3(strings.NewReader(head + strings.Join(test.rows, "")))
		if codes(faults) != test.codes || len(file.Rows) != test.kept {
			t.Errorf("%s: %d rows, faults %v; want %d, %s", name, len(file.Rows), faults, test.kept, test.codes)
		}
	}
}

// endless gives the same text again and again, and counts.
type endless struct {
	text  string
	bytes int64
	most  int64
}

func (e *endless) Read(p []byte) (int, error) {
	if e.bytes >= e.most {
		return 0, io.EOF
	}
	n := copy(p, e.text)
	e.bytes += int64(n)
	return n, nil
}

// 200 MB of a wrong file are neither held nor read to the end.
func TestHugeFilesAreLeftEarly(t *testing.T) {
	const huge = 200 << 20
	head := text(t, hotWeekEPW)
	head = head[:strings.Index(head, "2019,7,12,1,")]
	for name, test := range map[string]struct {
		text, codes string
		most        int64 // bytes read
	}{
		"blank rows": {strings.Repeat("\n", 4096), "notice.file-lines fault.file-no-rows", 1 << 20},
		"one line":   {strings.Repeat("7", 4096), "fault.file-line-long", 1 << 20},
		"words":      {strings.Repeat("no data\n", 512), "notice.file-lines fault.file-no-rows notice.file-more", 1 << 20},
		"long lines": {strings.Repeat("x", 4095) + "\n", "fault.file-too-big", mostBytes + 1<<20},
	} {
		tail := &endless{text: test.text, most: huge}
		file, faults := Read("test", io.MultiReader(strings.NewReader(head), tail))
		if !Blocked(faults) || len(file.Rows) != 0 || !strings.Contains(codes(faults), test.codes) {
			t.Errorf("%s: %v, want %s", name, faults, test.codes)
		}
		if tail.bytes > test.most {
			t.Errorf("%s: %d bytes read", name, tail.bytes)
		}
		if len(faults) > faultsKept+3 {
			t.Errorf("%s: %d faults kept", name, len(faults))
		}
	}
}

// year is a TMY3 file of 8760 rows: the first line and header, and the first day of the invented week
// under the dates of a year, without its light, which would not fit them.
func year(t *testing.T) (head string, rows []string) {
	t.Helper()
	lines := strings.SplitAfter(text(t, hotWeekTMY3), "\n")
	for date := time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC); date.Year() == 2001; date = date.AddDate(0, 0, 1) {
		for hour := range 24 {
			fields := strings.Split(lines[2+hour], ",")
			fields[0], fields[4], fields[7], fields[10] = date.Format("01/02/2006"), "0", "0", "0"
			rows = append(rows, strings.Join(fields, ","))
		}
	}
	return lines[0] + lines[1], rows
}
