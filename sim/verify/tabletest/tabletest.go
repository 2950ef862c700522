// Package tabletest lets the tests of a package hold its functions to the embedded reference tables, by the same comparisons
// as rowlight verify.
package tabletest

import (
	"io/fs"
	"testing"

	"rowlight/sim/verify"
	"rowlight/testdata"
)

// Hold fails a test for every comparison with the named tables that does not hold.
func Hold(t testing.TB, tables ...string) {
	t.Helper()
	folder, err := fs.Sub(testdata.FS, "reference")
	if err != nil {
		t.Fatal(err)
	}
	report, err := verify.Some(folder, func() error { return nil }, tables...)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range report.Comparisons {
		t.Logf("%s, %s: %d rows, worst %.2g of %g %s", c.Table, c.Compares, c.Rows, c.Worst, c.Allowed, c.Unit)
		if !c.Holds() {
			t.Errorf("%s, %s: line %d, %s: got %s, want %s; off by %.3g, allowed %g %s",
				c.Table, c.Compares, c.At.Line, c.At.Column, c.At.Got, c.At.Want, c.Worst, c.Allowed, c.Unit)
		}
	}
}
