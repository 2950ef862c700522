//go:build long

package heat

import (
	"flag"
	"testing"

	"pgregory.net/rapid"
)

// The same property over 20,000 draws.
func TestForLongEveryBerryKeepsToPhysics(t *testing.T) {
	if err := flag.Set("rapid.checks", "20000"); err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, berriesKeepToPhysics)
}
