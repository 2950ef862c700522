package heat_test

import (
	"testing"

	"rowlight/sim/verify/tabletest"
)

func TestReferenceTables(t *testing.T) {
	tabletest.Hold(t, "sphere_convection", "sphere_conduction")
}
