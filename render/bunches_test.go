package render

import (
	"math"
	"testing"
)

// Whole berries lie inside half width and length of their bunch, on the half of their face.
func TestBerriesLieInsideTheirBunch(t *testing.T) {
	s := smallScene(t, afternoon)
	for level := range bunchLevels {
		berries, starts := s.bunches.berry[level], s.bunches.starts[level]
		for b, bunch := range s.planting.Stand.Bunches {
			count := 0
			for _, ball := range berries[starts[b]:starts[b+1]] {
				d := ball.centre.Sub(vec32(bunch.Centre))
				if out := math.Hypot(float64(d[0]), float64(d[1])) + float64(ball.radius); out > bunch.Radius*1.001 {
					t.Fatalf("level %d: a berry reaches %g m from the axis of a bunch of %g m", level, out, bunch.Radius)
				}
				if high := math.Abs(float64(d[2])) + float64(ball.radius); high > bunch.Length/2*1.001 {
					t.Fatalf("level %d: a berry reaches %g m from the middle of a bunch of %g m", level, high, bunch.Length)
				}
				if ball.core {
					continue
				}
				count++
				if ball.face>>1 != int32(b) || (ball.face&1 == 1) != (d[0] > 0) && abs(d[0]) > 1e-4 {
					t.Fatalf("level %d: berry at %v of bunch %d takes face %d", level, d, b, ball.face)
				}
			}
			if count < 3 || count > bunch.Berries {
				t.Errorf("level %d bunch %d has %d berries", level, b, count)
			}
		}
	}
}

// Finer levels have more and smaller berries; the finest have about the diameter given.
func TestBunchLevels(t *testing.T) {
	s := smallScene(t, afternoon)
	last := math.MaxInt
	for level := range bunchLevels {
		berries := s.bunches.berry[level]
		if len(berries) >= last {
			t.Errorf("level %d has %d berries, the finer one %d", level, len(berries), last)
		}
		last = len(berries)
	}
	finest := s.bunches.berry[0]
	for _, ball := range finest {
		if ball.core {
			continue
		}
		if ball.radius < 0.006 || ball.radius > 0.00701 {
			t.Fatalf("a berry of 14 mm has the radius %g m", ball.radius)
		}
	}
}

func TestFacesTakeTheirColours(t *testing.T) {
	s := smallScene(t, afternoon)
	nan := float32(math.NaN())
	s.SetFaces([]float32{20, 60, 40, nan}, []uint8{0, 1, 1}, Scale{Min_C: 20, Max_C: 60})
	p := TemperaturePalette()
	want := []rgb{p.at(0), p.at(1), p.at(0.5), unknownFruit, unknownFruit}
	for i, w := range want {
		if s.faceColour[i] != w {
			t.Errorf("face %d is %v, want %v", i, s.faceColour[i], w)
		}
	}
	if s.faceLit[0] || !s.faceLit[1] || !s.faceLit[2] || s.faceLit[3] {
		t.Error("lit faces")
	}
	if s.Faces() != 2*len(s.planting.Stand.Bunches) {
		t.Errorf("%d faces", s.Faces())
	}
}
