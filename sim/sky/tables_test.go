package sky_test

import (
	"testing"

	"rowlight/sim/verify/tabletest"
)

func TestReferenceTables(t *testing.T) {
	tabletest.Hold(t, "clearsky_bird", "decomposition", "transposition_vertical", "fao56_ra", "sky_emissivity")
}
