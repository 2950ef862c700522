package heat

import (
	"math"
	"testing"

	"rowlight/sim/internal/table"
	"rowlight/testdata"
)

// reference reads one reference table; each says its source in its header.
func reference(t *testing.T, name string) table.Table {
	t.Helper()
	read, err := table.Read(testdata.FS, "reference/"+name+".csv")
	if err != nil {
		t.Fatal(err)
	}
	if read.Len() == 0 {
		t.Fatalf("%s has no rows", name)
	}
	return read
}

// number reads one cell of a table.
func number(t *testing.T, from table.Table, row int, column string) float64 {
	t.Helper()
	value, err := from.Float(row, column)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// near fails the test when got is further than allowed from want, or no number.
func near(t *testing.T, what string, got, want, allowed float64) {
	t.Helper()
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("%s: got %.8g, want %.8g within %.2g", what, got, want, allowed)
	}
}

// within fails the test when got is outside a closed range, or no number.
func within(t *testing.T, what string, got, low, high float64) {
	t.Helper()
	if !(got >= low && got <= high) {
		t.Errorf("%s: got %.6g, want %g to %g", what, got, low, high)
	}
}
