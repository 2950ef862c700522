package sky

import (
	"math"
	"testing"

	"rowlight/sim/internal/table"
	"rowlight/testdata"
)

func read(t testing.TB, name string) table.Table {
	t.Helper()
	got, err := table.Read(testdata.FS, "reference/"+name+".csv")
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func number(t testing.TB, from table.Table, row int, column string) float64 {
	t.Helper()
	value, err := from.Float(row, column)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// check fails when got is further from want than allowed, and returns the distance.
func check(t testing.TB, row int, what string, got, want, allowed float64) float64 {
	t.Helper()
	off := math.Abs(got - want)
	if !(off <= allowed) {
		t.Errorf("row %d, %s: %.6g, want %.6g within %.2g", row+1, what, got, want, allowed)
	}
	return off
}

// FAO-56 eq. 11 and 13, and the formulation of Wagner & Pruss 1993 as the truth.
func TestSaturationPressure(t *testing.T) {
	want := read(t, "es_fao")
	for i := range want.Rows {
		air := number(t, want, i, "T_C")
		got := SaturationPressure(air)
		check(t, i, "saturation pressure", got/1000, number(t, want, i, "es_fao56"), 1e-5)
		check(t, i, "slope", SaturationSlope(air)/1000, number(t, want, i, "slope_fao56_kPa_per_C"), 1e-5)
		check(t, i, "against Wagner & Pruss", got/1000/number(t, want, i, "wagner_pruss"), 1, 1.5e-3)
		check(t, i, "dew point", DewPoint(got), air, 1e-9)
	}
}
