package main

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowlight/sim/verify"
	"rowlight/testdata"
)

// tablesIn is a folder with copies of some of the tables that come with the program.
func tablesIn(t *testing.T, names ...string) string {
	t.Helper()
	folder := t.TempDir()
	for _, name := range names {
		raw, err := testdata.FS.ReadFile("reference/" + name + ".csv")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, name+".csv"), raw, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

// replace changes a text in a table of a folder.
func replace(t *testing.T, folder, name, from, to string) {
	t.Helper()
	path := filepath.Join(folder, name+".csv")
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Count(string(raw), from) != 1 {
		t.Fatalf("%q is in %s %d times", from, name, strings.Count(string(raw), from))
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(raw), from, to, 1)), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestVerifyHoldsTheTablesOfAFolder(t *testing.T) {
	folder := tablesIn(t, "airmass", "solarpos_3", "sphere_conduction")
	got := rowlight("", "verify", "--tables", folder)
	if got.code != 0 || got.stderr != "" {
		t.Fatalf("%+v", got)
	}
	for _, want := range []string{"solarpos_3", "0.03 deg", "NREL SPA", "0.001 %", "0.01 K", "not there: solarpos_1,", "3 of 3 comparisons hold"} {
		if !strings.Contains(got.stdout, want) {
			t.Errorf("no %q in\n%s", want, got.stdout)
		}
	}
}

func TestVerifyFindsASpoiledCell(t *testing.T) {
	folder := tablesIn(t, "airmass", "solarpos_3")
	// 0.1° more than SPA gives
	replace(t, folder, "solarpos_3", "WallaWalla,46.0600,-118.3400,290,2027-12-21T17:00:00Z,10.38932,", "WallaWalla,46.0600,-118.3400,290,2027-12-21T17:00:00Z,10.48932,")
	got := rowlight("", "verify", "--tables", folder)
	if got.code != 1 || !strings.Contains(got.stderr, "1 of 2 comparisons are outside") {
		t.Errorf("code %d, %s", got.code, got.stderr)
	}
	for _, line := range strings.Split(got.stdout, "\n") {
		if strings.HasPrefix(line, "solarpos_3") && !(strings.Contains(line, " NO ") && strings.Contains(line, "6  true_elev_deg") && strings.Contains(line, "10.48932")) {
			t.Errorf("the spoiled row is not named: %s", line)
		}
	}
	rows := readCSV(t, rowlight("", "verify", "--tables", folder, "--format", "csv").stdout)
	if len(rows) != 2 || rows[0]["holds"] != "false" || rows[0]["line"] != "6" || rows[1]["holds"] != "true" || number(t, rows[0], "worst") < 0.05 {
		t.Errorf("%v", rows)
	}
	var document struct {
		Comparisons []struct {
			Table, Column string
			Holds         bool
			Worst         float64
			Notes         []string
		}
		Missing []string
	}
	if err := json.Unmarshal([]byte(rowlight("", "verify", "--tables", folder, "--format", "json").stdout), &document); err != nil {
		t.Fatal(err)
	}
	if len(document.Comparisons) != 2 || len(document.Missing) != len(verify.Names())-2 {
		t.Fatalf("%+v", document)
	}
	if c := document.Comparisons[0]; c.Table != "solarpos_3" || c.Holds || c.Column != "true_elev_deg" || len(c.Notes) != 3 {
		t.Errorf("%+v", c)
	}
}

func TestVerifyRefusesWhatItCannotRead(t *testing.T) {
	folder := tablesIn(t, "airmass", "extraterrestrial")
	replace(t, folder, "airmass", "zenith_deg,", "zenith,")
	replace(t, folder, "extraterrestrial", "\n8,", "\neight,")
	got := rowlight("", "verify", "--tables", folder)
	if got.code != 2 || got.stdout != "" {
		t.Errorf("code %d, stdout %s", got.code, got.stdout)
	}
	lines := strings.Split(strings.TrimSuffix(got.stderr, "\n"), "\n")
	wants := []string{"airmass.csv: line 2, column zenith_deg: the column is missing", `extraterrestrial.csv: line 4, column doy: "eight" is not a number`}
	if len(lines) != len(wants) {
		t.Fatalf("%d lines:\n%s", len(lines), got.stderr)
	}
	for i, want := range wants {
		if !strings.HasPrefix(lines[i], "rowlight: "+folder+": "+want) {
			t.Errorf("%s\nwant %s", lines[i], want)
		}
	}
	for _, place := range []string{t.TempDir(), filepath.Join(folder, "no-such"), filepath.Join(folder, "airmass.csv")} {
		if got := rowlight("", "verify", "--tables", place); got.code != 2 || !strings.Contains(got.stderr, place) {
			t.Errorf("%s: %+v", place, got)
		}
	}
}

// Without --tables the tables that come with the program are compared, all that are known.
func TestVerifyTakesTheTablesOfTheProgram(t *testing.T) {
	folder, err := verifyCommand{}.folder()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range verify.Names() {
		if _, err := fs.Stat(folder, name+".csv"); err != nil {
			t.Error(err)
		}
	}
}
