package weather

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// folderVariable names a folder of real weather files; the tests here read those that are there.
const folderVariable = "ROWLIGHT_WEATHER"

// besideCheckout is where they are looked for when the variable is not set.
const besideCheckout = "../../../shared/weather"

// realFiles are the paths of real weather files, none where there is no such folder.
func realFiles(t testing.TB) []string {
	folder := os.Getenv(folderVariable)
	if folder == "" {
		folder = besideCheckout
	}
	var paths []string
	for _, pattern := range []string{"*.epw", "*.EPW", "*.csv", "*.CSV"} {
		found, err := filepath.Glob(filepath.Join(folder, pattern))
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, found...)
	}
	if len(paths) == 0 {
		t.Logf("no weather files in %s (%s): only the invented ones are read", folder, folderVariable)
	}
	return paths
}

func readReal(t testing.TB, path string) (File, []Fault) {
	t.Helper()
	opened, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer opened.Close()
	return Read(filepath.Base(path), opened)
}

// Days of every season of every real file run through the chain.
func TestRealFilesGiveDays(t *testing.T) {
	for _, path := range realFiles(t) {
		file, faults := readReal(t, path)
		if Blocked(faults) {
			t.Errorf("%s: %v", path, faults)
			continue
		}
		t.Logf("%s: %s, %d rows, %+v, %v", file.Name, file.Place, len(file.Rows), file.Times, faults)
		if len(file.Rows) != 8760 && len(file.Rows) != 8784 {
			t.Errorf("%s: %d rows", file.Name, len(file.Rows))
		}
		for month := 1; month <= 12; month++ {
			checkCourse(t, file, month, 20, 0.01)
		}
		hottest, _ := file.Hottest()
		checkCourse(t, file, hottest.Month, hottest.Day, 0.01)
	}
}

// The offsets that the light of these public files was found to have by an independent program.
func TestRealFilesTellTheirClock(t *testing.T) {
	want := map[string]float64{"greensboro_tmy3.csv": -30, "sandpoint_tmy3.csv": -30, "pvgis_45N_8E.epw": 11}
	for _, path := range realFiles(t) {
		offset, known := want[filepath.Base(path)]
		if !known {
			continue
		}
		file, faults := readReal(t, path)
		if file.Times.By != Closure || math.Abs(file.Times.Best_min-offset) > 2 {
			t.Errorf("%s: %+v, want %g", file.Name, file.Times, offset)
		}
		if file.Times.BestRMS_Wm2 > 3 {
			t.Errorf("%s: light closes to %.1f W/m² only", file.Name, file.Times.BestRMS_Wm2)
		}
		for _, fault := range faults {
			if strings.HasPrefix(fault.Code, "notice.file-shift") || fault.Code == "notice.file-night" {
				t.Errorf("%s: %v", file.Name, fault)
			}
		}
	}
}

// A clock set wrong by a known time is told, its size too: by closure, and where there is only global light by the
// clear days; a right one is not blamed. The shift is put into the time zone of the file.
func TestShiftedClocksOfRealFilesAreTold(t *testing.T) {
	for _, path := range realFiles(t) {
		whole, faults := readReal(t, path)
		if Blocked(faults) {
			t.Fatal(faults)
		}
		globalOnly := whole
		globalOnly.Rows = nil
		for _, row := range whole.Rows {
			row.DNI, row.DHI = missing(), missing()
			globalOnly.Rows = append(globalOnly.Rows, row)
		}
		for _, file := range []File{whole, globalOnly} {
			for _, shift_min := range []float64{0, 5, -5, 8, -20, 60, -60} {
				shifted := file
				shifted.UTCOffset_h -= shift_min / 60
				shifted.Times = Times{Declared: whole.Times.Declared, Rule_min: whole.Times.Rule_min}
				shifted.checkTimes(&report{})
				if times := shifted.Times; times.Shifted() != (shift_min != 0) || math.Abs(times.Shift_min()-shift_min) > 2.5 {
					t.Errorf("%s, clock moved by %g min: %+v, %g min", file.Name, shift_min, times, times.Shift_min())
				} else {
					t.Logf("%s, clock moved by %g min: %s finds %.1f ± %.1f min", file.Name, shift_min, times.By, times.Shift_min(), times.Unsure_min)
				}
			}
		}
	}
}

func BenchmarkRead(b *testing.B) {
	for _, path := range realFiles(b) {
		b.Run(filepath.Base(path), func(b *testing.B) {
			for b.Loop() {
				readReal(b, path)
			}
		})
	}
}
