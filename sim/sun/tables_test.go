package sun_test

import (
	"testing"

	"rowlight/sim/verify/tabletest"
)

func TestReferenceTables(t *testing.T) {
	tabletest.Hold(t, "solarpos_1", "solarpos_2", "solarpos_3", "suntimes", "airmass", "extraterrestrial")
}
