//go:build long

package leaves

import (
	"testing"

	"rowlight/sim/scenario"
)

// Over 20 stands of every form the grid meets the bounds in every direction.
func TestTwentyStandsMeetTheBounds(t *testing.T) {
	t.Parallel()
	for _, form := range scenario.Forms() {
		t.Run(form.Key, func(t *testing.T) {
			t.Parallel()
			r, err := Measure(form, Settings{Seeds: 20, Rays: 4}, free)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range r.Outside() {
				t.Errorf("side %d, %.0f° high, %.0f° aside: gap %.3f between leaves, bias %+.3f ± %.3f, rms %.3f",
					d.Side, d.Elevation_deg, d.Azimuth_deg, d.Leaves, d.Bias, d.BiasSE, d.RMS)
			}
		})
	}
}
