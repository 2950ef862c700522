package render

import (
	"math"
	"sync"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// testAtlas is one atlas for all tests; nothing writes to it.
var testAtlas = sync.OnceValue(NewAtlas)

// smallStand is a hand-made stand of two vines that leans to positive x: a wall of leaves above an
// arm with bunches, a post with a crossarm, and a wire.
func smallStand() *training.Stand {
	s := &training.Stand{RowSpacing: 2.4, VineSpacing: 1, Length: 2, Top: 1.9}
	draw := func(i, purpose int) float64 { return hashUnit(uint64(i), uint64(purpose), 1234) }
	for i := range 900 {
		a := 2 * math.Pi * draw(i, 1)
		normal := mgl64.Vec3{math.Cos(a), 0.7 * math.Sin(a), 0.4}.Normalize()
		s.Leaves = append(s.Leaves, training.Leaf{
			Centre: mgl64.Vec3{0.1 + 0.4*(draw(i, 2)-0.5), 2 * draw(i, 3), 1 + 0.9*draw(i, 4)},
			Normal: normal, Tip: normal.Cross(mgl64.Vec3{0, 1, 0.2}).Normalize(), Area: 0.004 + 0.01*draw(i, 5), Node: int16(i % 20),
		})
	}
	for i := range 40 {
		s.Bunches = append(s.Bunches, training.Bunch{
			Centre: mgl64.Vec3{0.3 * (draw(i, 6) - 0.4), 2 * draw(i, 7), 0.95 + 0.1*draw(i, 8)},
			Radius: 0.04, Length: 0.13, Berries: 90, Seed: hash(uint64(i), 9),
		})
	}
	s.Trunks = []training.Limb{{Points: []mgl64.Vec3{{0, 0.5, 0}, {0.03, 0.5, 0.5}, {0, 0.5, 0.9}}, Radius: []float64{0.03, 0.028, 0.025}}}
	s.Arms = []training.Limb{{Points: []mgl64.Vec3{{0, 0.5, 0.9}, {0, 1, 0.92}, {0, 1.5, 0.9}}, Radius: []float64{0.02, 0.016, 0.012}}}
	s.Shoots = []training.Limb{{Points: []mgl64.Vec3{{0, 0.7, 0.9}, {0.05, 0.7, 1.2}, {0.08, 0.72, 1.6}}, Radius: []float64{0.004, 0.0035, 0.003}}}
	s.Posts = []training.Post{{Y: 0.1, Height: 1.8, Crossarms: []training.Crossarm{{Z: 1.4, Left: -0.3, Right: 0.3}}}}
	s.Wires = []training.Strand{{X: 0, Z: 0.9, Role: "fruiting"}}
	return s
}

// mirrored is the stand seen in a mirror that stands in the row line.
func mirrored(s *training.Stand) *training.Stand {
	m := *s
	flip := func(v mgl64.Vec3) mgl64.Vec3 { return mgl64.Vec3{-v[0], v[1], v[2]} }
	m.Leaves, m.Bunches = nil, nil
	for _, l := range s.Leaves {
		l.Centre, l.Normal, l.Tip = flip(l.Centre), flip(l.Normal), flip(l.Tip)
		m.Leaves = append(m.Leaves, l)
	}
	for _, b := range s.Bunches {
		b.Centre = flip(b.Centre)
		m.Bunches = append(m.Bunches, b)
	}
	m.Trunks = nil
	for _, limb := range s.Trunks {
		points := make([]mgl64.Vec3, len(limb.Points))
		for i, p := range limb.Points {
			points[i] = flip(p)
		}
		limb.Points = points
		m.Trunks = append(m.Trunks, limb)
	}
	return &m
}

// grownStand is the stand of the option of the default scenario.
func grownStand(t testing.TB, option int) *training.Stand {
	t.Helper()
	s := scenario.Default()
	stand, err := training.Build(s.Options[option], s.Site.Latitude_deg, s.Seed)
	if err != nil {
		t.Fatal(err)
	}
	return stand
}

// afternoon is a clear summer afternoon: the sun stands in the west.
var afternoon = Instant{Hour: 15.5, SunAzimuth_deg: 262, SunElevation_deg: 42, DNI_Wm2: 850, DHI_Wm2: 110}

func smallScene(t testing.TB, now Instant) *Scene {
	t.Helper()
	return NewScene(Planting{Stand: smallStand(), BerryDiameter_m: 0.014, Floor: scenario.MownCover}, testAtlas(), now)
}
