package canopy_test

import (
	"testing"

	"rowlight/sim/verify/tabletest"
)

func TestReferenceTables(t *testing.T) {
	tabletest.Hold(t, "gfunction", "diffuse_transmittance", "hedgerow_beam", "hedgerow_diffuse")
}
