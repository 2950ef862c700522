package render

import (
	"math"
	"testing"
)

// The drawn blades have the leaf area of the stand.
func TestLeavesKeepTheirArea(t *testing.T) {
	s := smallScene(t, afternoon)
	var given, drawn float64
	for _, l := range s.planting.Stand.Leaves {
		given += l.Area
	}
	for i := range s.leaves.leaf {
		l := &s.leaves.leaf[i]
		shape := s.atlas.shape[l.tile-leafTile]
		square := 4 * float64(l.tip.Len()) * float64(l.side.Len())
		drawn += square * float64(shape.area) / math.Pow(2*float64(shape.reach), 2)
	}
	if math.Abs(drawn/given-1) > 1e-4 {
		t.Errorf("drawn %g m², given %g m²", drawn, given)
	}
}

func TestSlicesHoldTheirLeaves(t *testing.T) {
	s := smallScene(t, afternoon)
	if s.leafStarts[s.slices] != len(s.planting.Stand.Leaves) {
		t.Errorf("%d of %d leaves are in slices", s.leafStarts[s.slices], len(s.planting.Stand.Leaves))
	}
	for slice := range s.slices {
		for i := s.leafStarts[slice]; i < s.leafStarts[slice+1]; i++ {
			if got := sliceOf(float64(s.leaves.leaf[i].centre[1]), s.planting.Stand.Length, s.slices); got != slice {
				t.Fatalf("leaf %d of slice %d lies in slice %d", i, slice, got)
			}
		}
	}
	if sliceOf(-0.1, 2, 4) != 3 || sliceOf(2.1, 2, 4) != 0 {
		t.Error("places beyond the period must come back into it")
	}
}

// brightness is the mean luminance of what the leaves of one side of the row show to a viewer on
// that side.
func brightness(s *Scene, sign float32) float64 {
	var sum, count float64
	for i := range s.leaves.leaf {
		l, c := &s.leaves.leaf[i], &s.leafColour[i]
		if (l.centre[0]-0.1)*sign < 0.1 {
			continue
		}
		face := upperFace
		if l.normal[0]*sign < 0 {
			face = lowerFace
		}
		lit := (c.lit[0] + c.lit[1] + c.lit[2] + c.lit[3]) / 4
		sum += float64(c.shade[face].mix(c.sunlit[face], lit).luminance())
		count++
	}
	return sum / count
}

// In the morning the east side is the brighter one, in the afternoon the west side.
func TestSunnySideIsBrighter(t *testing.T) {
	morning := afternoon
	morning.SunAzimuth_deg = 98
	const east, west = 1, -1
	if s := smallScene(t, morning); brightness(s, east) < 1.2*brightness(s, west) {
		t.Errorf("morning: east %g, west %g", brightness(s, east), brightness(s, west))
	}
	if s := smallScene(t, afternoon); brightness(s, west) < 1.2*brightness(s, east) {
		t.Errorf("afternoon: east %g, west %g", brightness(s, east), brightness(s, west))
	}
}

func TestOpennessFallsIntoTheCanopy(t *testing.T) {
	stand := smallStand()
	o, err := newOpenness(stand, unhurried)
	if err != nil {
		t.Fatal(err)
	}
	above, inside, floor := o.at(0, 1.95), o.at(0.1, 1.1), o.at(1.2, 0.05)
	if !(above > 0.8 && inside < 0.5*above && floor > inside && floor < 1) {
		t.Errorf("openness above %g, inside %g, on the floor between rows %g", above, inside, floor)
	}
	if a, b := o.at(0.3, 1), o.at(0.3+2.4, 1); abs(a-b) > 1e-5 {
		t.Errorf("openness does not repeat with the rows: %g, %g", a, b)
	}
	empty := *stand
	empty.Leaves = nil
	if o, err := newOpenness(&empty, unhurried); err != nil || o.at(0, 0) != 1 {
		t.Errorf("without leaves the openness is %g", o.at(0, 0))
	}
}
