package verify

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"rowlight/sim/internal/table"
	"rowlight/testdata"
)

func free() error { return nil }

// reference is the folder of the embedded tables.
func reference(t *testing.T) fs.FS {
	t.Helper()
	folder, err := fs.Sub(testdata.FS, "reference")
	if err != nil {
		t.Fatal(err)
	}
	return folder
}

// The simulation holds all embedded tables: none is missing and none compares nothing.
func TestSimulationHoldsTheTables(t *testing.T) {
	report, err := Tables(reference(t), free)
	if err != nil || len(report.Missing) > 0 {
		t.Fatalf("missing %v, %v", report.Missing, err)
	}
	rows := 0
	for _, c := range report.Comparisons {
		t.Logf("%-22s %-48s %4d rows, worst %.2g of %g %s", c.Table, c.Compares, c.Rows, c.Worst, c.Allowed, c.Unit)
		if !c.Holds() {
			t.Errorf("%s, %s: off by %.3g %s, allowed %g, at %+v", c.Table, c.Compares, c.Worst, c.Unit, c.Allowed, c.At)
		}
		if c.Worst <= 0 || c.At.Line == 0 || c.Source == "" {
			t.Errorf("%s, %s: worst %g at %+v by %q says nothing", c.Table, c.Compares, c.Worst, c.At, c.Source)
		}
		rows += c.Rows
	}
	if rows < 2000 {
		t.Errorf("only %d rows compared", rows)
	}
}

// fewRows is a table cut down to its notes, header and a few rows.
func fewRows(t *testing.T, name string, rows int) []string {
	t.Helper()
	raw, err := fs.ReadFile(reference(t), name+".csv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(raw)), "\n")
	header := slices.IndexFunc(lines, func(line string) bool { return !strings.HasPrefix(line, "#") })
	return lines[:header+1+rows]
}

// folderOf is a folder with one table.
func folderOf(name string, lines []string) fstest.MapFS {
	return fstest.MapFS{name + ".csv": {Data: []byte(strings.Join(lines, "\n") + "\n")}}
}

// edit is lines with the cell of the last row in a column changed.
func edit(t *testing.T, lines []string, column string, change func(cell string) string) []string {
	t.Helper()
	header := slices.IndexFunc(lines, func(line string) bool { return !strings.HasPrefix(line, "#") })
	i := slices.Index(strings.Split(lines[header], ","), column)
	if i < 0 {
		t.Fatalf("no column %s", column)
	}
	cells := strings.Split(lines[len(lines)-1], ",")
	cells[i] = change(cells[i])
	return append(slices.Clone(lines[:len(lines)-1]), strings.Join(cells, ","))
}

// spoil moves a cell by a little more than three times what a check allows.
func spoil(c check) func(cell string) string {
	return func(cell string) string {
		if at, err := time.Parse(time.RFC3339, cell); err == nil {
			return at.Add(time.Duration(3.1 * c.allowed * float64(time.Second))).Format(time.RFC3339)
		}
		value, _ := strconv.ParseFloat(cell, 64)
		switch {
		case c.unit == "%":
			value *= 1 + 3.1*c.allowed/100
		default:
			value += 3.1 * c.allowed
		}
		return strconv.FormatFloat(value, 'g', -1, 64)
	}
}

// Every answer of every table counts: one cell off by more than is allowed is found where it is.
func TestOneSpoiledCellIsFound(t *testing.T) {
	for _, c := range checks() {
		lines := fewRows(t, c.table, 2) // the first row of rt_H has µ = 0 and is not compared
		compareRow := c.begin(free)
		worst := func(lines []string) found {
			rows, err := table.Parse(strings.NewReader(strings.Join(lines, "\n")))
			if err != nil {
				t.Fatal(err)
			}
			f := found{worst: -1}
			if err := compareRow(row{rows, 1}, &f); err != nil {
				t.Fatal(err)
			}
			return f
		}
		if f := worst(lines); f.worst > c.allowed {
			t.Errorf("%s, %s: %+v without a spoiled cell", c.table, c.compares, f)
		}
		for _, answer := range c.answers {
			f := worst(edit(t, lines, answer.name, spoil(c)))
			if !(f.worst > c.allowed) || f.at.Line != len(lines) || f.at.Column != answer.name {
				t.Errorf("%s, %s: %s of line %d is spoiled; found %+v", c.table, c.compares, answer.name, len(lines), f)
			}
		}
	}
}

func TestOneTableOfAFolder(t *testing.T) {
	folder := folderOf("airmass", fewRows(t, "airmass", 5))
	folder["other.csv"] = &fstest.MapFile{Data: []byte("neither a table")}
	report, err := Tables(folder, free)
	if err != nil {
		t.Fatal(err)
	}
	if len(report.Comparisons) != 1 || report.Comparisons[0].Rows != 5 || len(report.Missing) != len(Names())-1 {
		t.Errorf("%+v", report)
	}
	if slices.Contains(report.Missing, "airmass") || !slices.Contains(report.Missing, "rt_H") {
		t.Errorf("missing %v", report.Missing)
	}
}

// Columns may stand in another order, and further ones beside them.
func TestColumnsInAnotherOrder(t *testing.T) {
	folder := folderOf("airmass", []string{"mine,kasten_1966,zenith_deg,kasten_young_1989", "x,0.999494,0,0.999712"})
	report, err := Tables(folder, free)
	if err != nil || len(report.Outside()) > 0 || report.Comparisons[0].Rows != 1 {
		t.Errorf("%+v, %v", report.Comparisons, err)
	}
}

func TestUnreadableTablesAreAllNamed(t *testing.T) {
	zenith := func(cells ...string) []string {
		lines := []string{"# from memory", "zenith_deg,kasten_young_1989,kasten_1966"}
		for _, cell := range cells {
			lines = append(lines, cell+",1,1")
		}
		return lines
	}
	box := func(w, zb string) []string {
		return edit(t, edit(t, fewRows(t, "hedgerow_diffuse", 1), "w", func(string) string { return w }), "zb", func(string) string { return zb })
	}
	tests := map[string]struct {
		table string
		lines []string
		want  string
	}{
		"header":     {"airmass", []string{"# n", "zenith,kasten_young_1989,kasten_1966", "0,1,1"}, "airmass.csv: line 2, column zenith_deg: the column is missing; the columns are zenith, kasten"},
		"number":     {"airmass", zenith("0", "high"), `airmass.csv: line 4, column zenith_deg: "high" is not a number`},
		"not finite": {"airmass", zenith("NaN"), `airmass.csv: line 3, column zenith_deg: "NaN" is not finite`},
		"range":      {"airmass", zenith("0", "1", "91"), "airmass.csv: line 5, column zenith_deg: 91 is outside 0 to 90"},
		"no rows":    {"airmass", zenith(), "airmass.csv: no rows"},
		"short row":  {"airmass", append(zenith("0"), "5"), "airmass.csv: line 4: 1 cells under 3 columns"},
		"many":       {"airmass", zenith(strings.Split(strings.Repeat("x ", 14)+"x", " ")...), "airmass.csv: and 5 more"},
		"whole":      {"extraterrestrial", []string{"doy,E0n_spencer", "1.5,1400"}, "extraterrestrial.csv: line 2, column doy: 1.5 is no whole number"},
		"word":       {"transposition_vertical", edit(t, fewRows(t, "transposition_vertical", 1), "facing", func(string) string { return "NE" }), `column facing: "NE" is none of N, E, S, W`},
		"moment":     {"solarpos_1", edit(t, fewRows(t, "solarpos_1", 1), "utc", func(string) string { return "noon" }), `column utc: "noon" is not written as 2006-01-02T15:04:05Z07:00`},
		"edges":      {"hedgerow_diffuse", box("0.503", "0.8"), "hedgerow_diffuse.csv: line 4: rows of 0.503 m in 2.5 m, from 0.8 to 2 m: their edges are not multiples of 5 mm"},
		"too wide":   {"hedgerow_diffuse", box("3", "0.8"), "do not fit"},
		"no leaves":  {"hedgerow_diffuse", box("0.5", "2"), "leaves from 2 m up to 2 m are none"},
		"all alike":  {"rt_H", []string{"omega,mu0,plane_albedo", "1,0,1"}, "rt_H.csv: no row can be compared"},
		"none":       {"else", zenith("0"), "none of the tables is there; their names are [solarpos_1"},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			_, err := Tables(folderOf(test.table, test.lines), free)
			if _, ok := errors.AsType[*Unreadable](err); !ok || !strings.Contains(err.Error(), test.want) {
				t.Errorf("%v\nwant an Unreadable with %s", err, test.want)
			}
		})
	}
	both := folderOf("airmass", zenith("x"))
	both["extraterrestrial.csv"] = &fstest.MapFile{Data: []byte("doy\n1\n")}
	if _, err := Tables(both, free); err == nil || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("two broken tables: %v", err)
	}
}

// Hedgerows with edges that 5 cm do not divide get finer cells and keep the bounds: a slab of 0.5 m² of spherical leaves
// per ground area lets exp(-0.25) of vertical light through (closed form).
func TestHedgerowsOfOtherSizes(t *testing.T) {
	passed := strconv.FormatFloat(math.Exp(-0.25), 'f', 6, 64)
	caught := strconv.FormatFloat((1-math.Exp(-0.25))*0.345/2.115, 'f', 6, 64)
	report, err := Tables(folderOf("hedgerow_beam", []string{
		"s,w,zb,zt,lad,row_az,zf,sun_zen,sun_az,T_centre,T_xplus,T_xminus,T_ground_mid,T_ground_under,intercept",
		"2.115,0.345,0.71,1.21,1,17,0.71,0,0," + passed + "," + passed + "," + passed + ",1," + passed + "," + caught,
	}), free)
	if err != nil || len(report.Comparisons) != 2 || len(report.Outside()) > 0 {
		t.Errorf("%+v, %v", report.Comparisons, err)
	}
}

// Where the sun does not rise the table says so, and another state is found.
func TestPolarDays(t *testing.T) {
	header := "lat_deg,lon_deg,local_date,sunrise_utc,transit_utc,sunset_utc"
	for events, want := range map[string]bool{
		"polar-day,2026-06-21T10:45:44Z,polar-day":            true,
		"polar-night,2026-06-21T10:45:44Z,polar-night":        false,
		"2026-06-21T00:45:00Z,2026-06-21T10:45:44Z,polar-day": false,
	} {
		report, err := Tables(folderOf("suntimes", []string{header, "69.65,19,2026-06-21," + events}), free)
		if err != nil {
			t.Fatal(err)
		}
		if got := len(report.Outside()) == 0; got != want {
			t.Errorf("%s holds: %v, %+v", events, got, report.Comparisons[0])
		}
	}
}

func TestNoNumberIsOutside(t *testing.T) {
	f := found{worst: -1}
	f.isWorst(3)
	f.isWorst(math.NaN())
	f.isWorst(4)
	if c := (Comparison{Worst: f.worst, Allowed: 5}); c.Holds() || f.cells != 3 {
		t.Errorf("%+v holds", c)
	}
}

func TestWorkStopsWhenTold(t *testing.T) {
	stop := fmt.Errorf("stop")
	if _, err := Tables(reference(t), func() error { return stop }); !errors.Is(err, stop) {
		t.Errorf("%v, want the error of pace", err)
	}
}

func TestSomeWantsAllItNames(t *testing.T) {
	if _, err := Some(reference(t), free, "airmass", "unheard"); err == nil || !strings.Contains(err.Error(), `"unheard"`) {
		t.Errorf("%v", err)
	}
	if _, err := Some(folderOf("airmass", fewRows(t, "airmass", 2)), free, "airmass", "rt_H"); err == nil || !strings.Contains(err.Error(), "[rt_H]") {
		t.Errorf("%v", err)
	}
}

func TestSourceIsTheCitationOfTheNotes(t *testing.T) {
	for _, test := range []struct{ notes, cites, want string }{
		{"Optical air mass. Kasten 1966; own code", "Kasten", "Kasten 1966"},
		{"By erbs (Erbs et al. 1982), disc", "Erbs et al", "Erbs et al. 1982"},
		{"Measured here.", "Kasten", "Measured here"},
		{"Geometry: rows. Monte Carlo, 1e7 photons a row (100 batches; se = standard error of the mean), own code", "Monte", "Monte Carlo, 1e7 photons a row"},
		{"An unpunctuated text that goes on for longer than any line of a report should be", "Kasten", "An unpunctuated text that goes on for longer than any line…"},
		{"", "Kasten", ""},
	} {
		if got := sourceOf([]string{test.notes}, test.cites); got != test.want {
			t.Errorf("%q: %q, want %q", test.notes, got, test.want)
		}
	}
}
