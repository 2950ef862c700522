package weather

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"golang.org/x/text/encoding/unicode"

	"rowlight/sim/scenario"
)

// stonyBend is the site of the invented hot week.
func stonyBend() scenario.Site {
	return scenario.Site{Latitude_deg: 36.4, Longitude_deg: -119.9, UTCOffset_h: -8, Elevation_m: 90}
}

// tenMinutes is what a logger at the site would write of one stretch of ten minutes.
type tenMinutes struct {
	end              time.Time // on the clock of standard time
	air, humidity    float64
	global, beam     float64
	diffuse          float64
	speed, direction float64
}

// loggedWeek is the invented hot week in stretches of ten minutes: the course of each day, a minute at a time.
func loggedWeek(t testing.TB) []tenMinutes {
	t.Helper()
	file := mustRead(t, text(t, hotWeekEPW))
	var out []tenMinutes
	for day := 12; day <= 18; day++ {
		s := hotDay()
		s.Site = stonyBend()
		if faults := file.Put(7, day, &s); Blocked(faults) {
			t.Fatal(faults)
		}
		hours := make([]float64, 24*60)
		for i := range hours {
			hours[i] = (float64(i) + 0.5) / 60
		}
		instants := course(t, s, hours).Instants
		for i := 0; i < len(instants); i += 10 {
			r := tenMinutes{end: time.Date(2019, 7, day, 0, i+10, 0, 0, time.UTC)}
			for _, at := range instants[i : i+10] {
				r.air += at.Air_C / 10
				r.humidity += 100 * math.Exp(17.27*at.Dew_C/(at.Dew_C+237.3)-17.27*at.Air_C/(at.Air_C+237.3)) / 10
				r.global, r.beam, r.diffuse = r.global+at.GHI/10, r.beam+at.DNI/10, r.diffuse+at.DHI/10
				r.speed += at.Wind_ms / 10
				r.direction = at.WindFrom_deg
			}
			out = append(out, r)
		}
	}
	return out
}

// table writes a week as a logger would: head, then each stretch by a format of its own.
func table(week []tenMinutes, head string, line func(r tenMinutes) string) string {
	var out strings.Builder
	out.WriteString(head)
	for _, r := range week {
		out.WriteString(line(r) + "\n")
	}
	return out.String()
}

// dialect is a way in which a logger writes a table.
type dialect struct {
	head string
	line func(r tenMinutes) string
	want Mapping // what is guessed of it, without columns and what is usual
	// columns are the quantities and units that are guessed.
	columns string
	// clock is what the person must say, since nothing in the file tells it.
	clock Clock
}

func comma(number float64, places int) string {
	return strings.Replace(fmt.Sprintf("%.*f", places, number), ".", ",", 1)
}

// dialects are tables of several kinds: of a data logger with four lines of header, of spreadsheets in several
// languages, with dates in each order, clocks on summer time and on UTC, and units of the trade.
func dialects() map[string]dialect {
	usual := Mapping{Encoding: UTF8, Separator: ",", DateOrder: "ymd", Clock: StandardClock, Stamp: StampEnd, FirstLine: 2}
	with := func(change func(*Mapping)) Mapping {
		m := usual
		change(&m)
		return m
	}
	return map[string]dialect{
		"four lines of header": {
			head: `"TOA5","Invented","CR","1","std","prog","0","Table10"` + "\n" +
				`"TIMESTAMP","RECORD","BattV_Min","AirTC_Avg","RH","SlrW_Avg","WS_ms_S_WVT","WindDir_D1_WVT"` + "\n" +
				`"TS","RN","Volts","Deg C","%","W/m^2","meters/second","Deg"` + "\n" + `"","","Min","Avg","Smp","Avg","WVc","WVc"` + "\n",
			line: func(r tenMinutes) string {
				return fmt.Sprintf(`"%s",%d,12.6,%.2f,%.1f,%.1f,%.2f,%.0f`, r.end.Format("2006-01-02 15:04:05"), r.end.Unix()/600, r.air, r.humidity, r.global, r.speed, r.direction)
			},
			want:    with(func(m *Mapping) { m.FirstLine = 5 }),
			columns: "1 time, 4 air °C, 5 humidity %, 6 global W/m², 7 wind m/s, 8 windFrom °",
		},
		"semicolons and decimal commas": {
			head: "Station erfunden\n\nDatum;Zeit;Lufttemperatur (°C);rel. Feuchte (%);Globalstrahlung (W/m²);Windgeschwindigkeit (km/h)\n",
			line: func(r tenMinutes) string {
				return strings.Join([]string{r.end.Format("02.01.2006;15:04"), comma(r.air, 2), comma(r.humidity, 1), comma(r.global, 1), comma(r.speed*3.6, 2)}, ";")
			},
			want:    with(func(m *Mapping) { m.Separator, m.DecimalComma, m.DateOrder, m.FirstLine = ";", true, "dmy", 4 }),
			columns: "1 date, 2 clock, 3 air °C, 4 humidity %, 5 global W/m², 6 wind km/h",
		},
		"half days and US units": {
			head: "Time,Air Temp (°F),Dew Point (°F),Solar Rad (kWh/m²),Wind Speed (mph),Wind Gust (mph)\n",
			line: func(r tenMinutes) string {
				dew := dewOf(Row{Dew_C: missing(), Humidity_pct: r.humidity, Air_C: r.air})
				return fmt.Sprintf("%s,%.2f,%.2f,%.6f,%.2f,30", r.end.Format("1/2/2006 3:04 PM"), r.air*1.8+32, dew*1.8+32, r.global/6/1000, r.speed/0.44704)
			},
			want:    with(func(m *Mapping) { m.DateOrder = "mdy" }),
			columns: "1 time, 2 air °F, 3 dewPoint °F, 4 global kWh/m², 5 wind mph",
		},
		"UTC in the time itself": {
			head: "timestamp\tghi [W/m2]\tdni [W/m2]\tdhi [W/m2]\tair_temperature\trelative_humidity\n",
			line: func(r tenMinutes) string {
				return fmt.Sprintf("%s\t%.1f\t%.1f\t%.1f\t%.2f\t%.3f", r.end.Add(8*time.Hour).Format("2006-01-02T15:04:05Z"), r.global, r.beam, r.diffuse, r.air, r.humidity/100)
			},
			want:    with(func(m *Mapping) { m.Separator, m.Clock = "\t", UTCClock }),
			columns: "1 time, 2 global W/m², 3 beam W/m², 4 diffuse W/m², 5 air °C, 6 humidity 0–1",
		},
		"columns of numbers, named by the middle": {
			head: "Year,Month,Day,Hour,Minute,GHI,DNI,DHI,Temperature,Relative Humidity,Wind Speed\n",
			line: func(r tenMinutes) string {
				at := r.end.Add(-5 * time.Minute)
				return fmt.Sprintf("%d,%d,%d,%d,%d,%.0f,%.0f,%.0f,%.1f,%.1f,%.1f", at.Year(), at.Month(), at.Day(), at.Hour(), at.Minute(), r.global, r.beam, r.diffuse, r.air, r.humidity, r.speed)
			},
			want:    with(func(m *Mapping) { m.Stamp = StampMiddle }),
			columns: "1 year, 2 month, 3 day, 4 hour, 5 minute, 6 global W/m², 7 beam W/m², 8 diffuse W/m², 9 air °C, 10 humidity %, 11 wind m/s",
		},
		"summer time": {
			head: "Fecha y hora;Temp. aire (°C);Humedad (%);Radiación solar (W/m2);Viento (m/s)\n",
			line: func(r tenMinutes) string {
				return fmt.Sprintf("%s;%.2f;%.1f;%.1f;%.2f", r.end.Add(time.Hour).Format("2006/01/02 15:04"), r.air, r.humidity, r.global, r.speed)
			},
			want:    with(func(m *Mapping) { m.Separator = ";" }),
			columns: "1 time, 2 air °C, 3 humidity %, 4 global W/m², 5 wind m/s",
			clock:   DaylightClock,
		},
	}
}

// said is the columns of a mapping in one line.
func said(columns []Column) string {
	var out []string
	for _, c := range columns {
		out = append(out, strings.TrimSpace(fmt.Sprintf("%d %s %s", c.Column, c.Quantity, c.Unit)))
	}
	return strings.Join(out, ", ")
}

// Every dialect is guessed, and read by the guess gives the week that was logged.
func TestTablesOfLoggersAreGuessedAndRead(t *testing.T) {
	week := loggedWeek(t)
	want := mustRead(t, text(t, hotWeekEPW))
	for name, d := range dialects() {
		t.Run(name, func(t *testing.T) {
			content := table(week, d.head, d.line)
			sketch, ok := Look(strings.NewReader(content), stonyBend(), "")
			if !ok || len(sketch.Rows) != rowsShown {
				t.Fatalf("no table: %+v", sketch)
			}
			m := sketch.Mapping
			if got := said(m.Columns); got != d.columns {
				t.Errorf("columns %s, want %s", got, d.columns)
			}
			d.want.Step_min, d.want.UTCOffset_h, d.want.WindHeight_m, d.want.Wind_ms = 10, -8, 10, usualWind_ms
			got := m
			got.Columns = nil
			if fmt.Sprint(got) != fmt.Sprint(d.want) {
				t.Errorf("guessed %+v, want %+v", got, d.want)
			}
			if d.clock != "" {
				m.Clock = d.clock
			}
			file, faults := Setting{Site: stonyBend(), Mapping: &m}.Read("test", strings.NewReader(content))
			if Blocked(faults) || len(file.Rows) != 168 {
				t.Fatalf("%d rows, faults %v", len(file.Rows), faults)
			}
			compareLogged(t, file, want)
			if file.Times.By == "" || file.Times.Shifted() {
				t.Errorf("the clock is blamed: %+v", file.Times)
			}
			// Taken for standard time, summer time shows in the light; so does the right clock taken for summer time.
			m.Clock = map[bool]Clock{true: StandardClock, false: DaylightClock}[d.clock == DaylightClock]
			if m.Clock == DaylightClock && sketch.Mapping.Clock == UTCClock {
				return // the times name their own offset
			}
			wrong, _ := Setting{Site: stonyBend(), Mapping: &m}.Read("test", strings.NewReader(content))
			if !wrong.Times.Shifted() || math.Abs(math.Abs(wrong.Times.Shift_min())-60) > 3 {
				t.Errorf("an hour off: %+v, %g min", wrong.Times, wrong.Times.Shift_min())
			}
		})
	}
}

// compareLogged holds a logged week to the hours that it was made of.
func compareLogged(t *testing.T, file, want File) {
	t.Helper()
	for i, row := range file.Rows {
		w := want.Rows[i]
		if row.stamp() != w.stamp() || row.Year != w.Year {
			t.Fatalf("row %d is %s, want %s", i, row.stamp(), w.stamp())
		}
		if math.Abs(row.GHI-w.GHI) > 0.03*w.GHI+4 {
			t.Errorf("%s: global %.1f, want %.1f", row.stamp(), row.GHI, w.GHI)
		}
		if row.Hour == hoursOfDay {
			continue // the course of each day runs round, so that the days do not join
		}
		if math.Abs(row.Air_C-w.Air_C) > 0.3 {
			t.Errorf("%s: air %.2f, want %.2f", row.stamp(), row.Air_C, w.Air_C)
		}
		if dew := dewOf(row); math.Abs(dew-w.Dew_C) > 0.6 {
			t.Errorf("%s: dew point %.2f, want %.2f", row.stamp(), dew, w.Dew_C)
		}
		if row.Wind_ms != usualWind_ms && math.Abs(row.Wind_ms-w.Wind_ms) > 0.4 {
			t.Errorf("%s: wind %.2f, want %.2f", row.stamp(), row.Wind_ms, w.Wind_ms)
		}
	}
	mustDay(t, file, 7, 15)
}

// The same table in the bytes of other programs.
func TestEncodingsOfTables(t *testing.T) {
	d := dialects()["semicolons and decimal commas"]
	content := table(loggedWeek(t), d.head, d.line)
	latin := strings.NewReplacer("°", "\xb0", "²", "\xb2").Replace(content)
	for name, test := range map[string]struct {
		content string
		want    Encoding
	}{
		"with a mark":  {"\ufeff" + content, UTF8},
		"UTF-16":       {utf16Text(content, unicode.LittleEndian, unicode.UseBOM), UTF16LE},
		"UTF-16, bare": {utf16Text(content, unicode.BigEndian, unicode.IgnoreBOM), UTF16BE},
		"one byte":     {latin, Windows1252},
		"CR LF":        {strings.ReplaceAll(content, "\n", "\r\n"), UTF8},
	} {
		t.Run(name, func(t *testing.T) {
			sketch, ok := Look(strings.NewReader(test.content), stonyBend(), "")
			if !ok || sketch.Mapping.Encoding != test.want || said(sketch.Mapping.Columns) != d.columns {
				t.Fatalf("%+v", sketch.Mapping)
			}
			file, faults := Setting{Site: stonyBend(), Mapping: &sketch.Mapping}.Read("test", strings.NewReader(test.content))
			if Blocked(faults) || len(file.Rows) != 168 {
				t.Errorf("%d rows, faults %v", len(file.Rows), faults)
			}
		})
	}
}
