package scatter_test

import (
	"testing"

	"rowlight/sim/verify/tabletest"
)

// Rows of scattering leaves over a Lambertian ground by Monte Carlo, slabs by adding–doubling, half-spaces
// by Chandrasekhar's H-function, at the tolerances of the tables' README; the cells of the simulation keep
// each share of the first within 0.01.
func TestReferenceTables(t *testing.T) {
	tabletest.Hold(t, "hedgerow_mc", "rt_slab", "rt_H")
}
