package verify

import "slices"

// checks are all comparisons, in the order of the report. A tolerance is that of the table: how many digits it prints and how
// far its own method and the resolution that the simulation is asked for allow.
func checks() []check {
	return slices.Concat(sunChecks(), skyChecks(), canopyChecks(), scatterChecks(), heatChecks())
}
