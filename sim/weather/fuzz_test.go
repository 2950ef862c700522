package weather

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"golang.org/x/text/encoding/unicode"
)

// The seeds beside these tests, in testdata/fuzz, are small files of each kind and broken ones; go test reads them all, and
// go test -fuzz=FuzzEPW looks for more.

// head is the beginning of an invented file with a few of its rows.
func head(t testing.TB, name string, lines int) string {
	t.Helper()
	all := strings.SplitAfter(text(t, name), "\n")
	return strings.Join(all[:min(lines, len(all))], "")
}

// holds checks what every file keeps, whatever was read: no panic, faults with their place and text, and either a fault that
// blocks or rows whose values are missing or in their range, of whose days each can be taken or says why not.
func holds(t *testing.T, file File, faults []Fault) {
	t.Helper()
	for _, fault := range faults {
		if fault.Code == "" || fault.Line < 0 || fault.Column < 0 || strings.HasPrefix(fault.Code, "notice.") && fault.Blocks {
			t.Fatalf("fault %+v", fault)
		}
	}
	if Blocked(faults) != (len(file.Rows) == 0) {
		t.Fatalf("%d rows, faults %v", len(file.Rows), faults)
	}
	if len(file.Rows) > mostRows || len(faults) > faultsKept+20 {
		t.Fatalf("%d rows, %d faults", len(file.Rows), len(faults))
	}
	for _, row := range file.Rows {
		if row.Hour < 1 || row.Hour > 24 || row.Month < 1 || row.Month > 12 || row.Day < 1 || row.Day > 31 {
			t.Fatalf("row %+v", row)
		}
		for _, v := range []struct {
			value float64
			of    quantity
		}{
			{row.Air_C, airQuantity}, {row.Dew_C, dewQuantity}, {row.Humidity_pct, humidityQuantity}, {row.GHI, globalQuantity},
			{row.DNI, beamQuantity}, {row.DHI, diffuseQuantity}, {row.Longwave_Wm2, longwaveQuantity}, {row.WindFrom_deg, fromQuantity},
		} {
			if !math.IsNaN(v.value) && (v.value < v.of.min-1e-9 || v.value > v.of.max+1e-9) {
				t.Fatalf("%s %g in %+v", v.of.name, v.value, row)
			}
		}
	}
	for _, day := range file.Days()[:min(3, len(file.Days()))] {
		hours, faults := file.Day(day.Month, day.Day)
		if Blocked(faults) != (hours == nil) {
			t.Fatalf("day %+v: %d hours, faults %v", day, len(hours), faults)
		}
		for _, hour := range hours {
			if !(hour.GHI_Wm2 >= 0 && hour.DNI_Wm2 >= 0 && hour.DHI_Wm2 >= 0 && hour.Air_C >= -60 && hour.DewPoint_C <= hour.Air_C) {
				t.Fatalf("day %+v: %+v", day, hour)
			}
		}
	}
}

// fuzzFile reads files that grow from seeds of one kind.
func fuzzFile(f *testing.F, seeds ...string) {
	for _, seed := range seeds {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		file, faults := Setting{Site: stonyBend()}.Read("fuzz", bytes.NewReader(raw))
		holds(t, file, faults)
	})
}

func FuzzEPW(f *testing.F) {
	week := head(f, hotWeekEPW, 8+48)
	fuzzFile(f, week, strings.ReplaceAll(week, ",", ";"), utf16Text(week, unicode.LittleEndian, unicode.UseBOM), week[:700])
}

func FuzzTMY3(f *testing.F) {
	week := head(f, hotWeekTMY3, 2+48)
	fuzzFile(f, week, strings.ReplaceAll(week, "\n", "\r"), week[:900], strings.ReplaceAll(week, "-9900", "x"))
}

func FuzzPOWER(f *testing.F) {
	week := head(f, hotWeekPOWER, 16+48)
	fuzzFile(f, week, strings.Replace(week, "LST", "UTC", 1), strings.ReplaceAll(week, "(MJ/hr)", "()"), week[:600])
}

func FuzzNormals(f *testing.F) {
	fuzzFile(f, text(f, normalsCSV), "month,airMax_C,airMin_C\n1,10,0\n12,11,1\n", "month,airMax_C,airMin_C,light_MJm2\n7,1e308,-1,nan\n")
}

// A table is guessed and read by the guess, and by any mapping at all.
func FuzzLogger(f *testing.F) {
	table := head(f, "weather/stony-bend-logger.csv", 2+96)
	mapping := `{"separator": ";", "decimalComma": true, "firstLine": 3, "dateOrder": "dmy", "step_min": 30, "columns": [` +
		`{"column": 1, "quantity": "date"}, {"column": 2, "quantity": "clock"}, {"column": 3, "quantity": "air"}, {"column": 4, "quantity": "humidity"}, {"column": 5, "quantity": "global"}]}`
	f.Add([]byte(table), []byte(mapping))
	f.Add([]byte(table), []byte(strings.Replace(mapping, `"dmy"`, `"mdy", "clock": "changing"`, 1)))
	f.Add([]byte("t,a,rh,g\n2019-07-12T10:00:00+02:00,1,2,3\n2019-07-12 10:00,NAN,-999,\n"), []byte(`{"columns": [{"column": 1, "quantity": "time"}]}`))
	f.Fuzz(func(t *testing.T, raw, mapping []byte) {
		if sketch, ok := Look(bytes.NewReader(raw), stonyBend(), ""); ok {
			file, faults := Setting{Site: stonyBend(), Mapping: &sketch.Mapping}.Read("fuzz", bytes.NewReader(raw))
			holds(t, file, faults)
		}
		m, faults := ParseMapping(mapping, 0)
		if len(faults) > 0 {
			return
		}
		written, err := json.Marshal(m)
		if err != nil {
			t.Fatal(err)
		}
		if _, faults := ParseMapping(written, 0); len(faults) > 0 {
			t.Fatalf("%s passes, and written again it has %v", mapping, faults)
		}
		file, told := Setting{Site: stonyBend(), Mapping: &m}.Read("fuzz", bytes.NewReader(raw))
		holds(t, file, told)
	})
}
