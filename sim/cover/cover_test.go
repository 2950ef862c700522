package cover

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// toward is a unit direction at an angle from the normal x, turned about it.
func toward(angle_deg, turn_deg float64) mgl64.Vec3 {
	a, b := mgl64.DegToRad(angle_deg), mgl64.DegToRad(turn_deg)
	return mgl64.Vec3{math.Cos(a), math.Sin(a) * math.Cos(b), math.Sin(a) * math.Sin(b)}
}

// Straight on a cloth stops its shade factor, by definition; along itself it is closed, and so is any part of it
// seen so flat that threads meet: cos a = cover across one set (closed form).
func TestClothStraightOnAndGrazing(t *testing.T) {
	for shade := 0.0; shade <= 0.9; shade += 0.1 {
		c := Of(shade, scenario.BlackCloth)
		if got := c.Direct(1, 0, 0); math.Abs(got-(1-shade)) > 1e-12 {
			t.Errorf("shade %.1f lets %.6f through straight on", shade, got)
		}
		if shade == 0 {
			continue
		}
		flat := mgl64.RadToDeg(math.Acos(c.Cover()))
		d, before := toward(flat+0.01, 0), toward(flat-0.5, 0)
		if c.Direct(d[0], d[1], d[2]) != 0 || c.Direct(before[0], before[1], before[2]) <= 0 || c.Direct(0, 1, 0) != 0 {
			t.Errorf("shade %.1f does not close at %.2f°", shade, flat)
		}
	}
	// Across one set at 60° the threads stand twice as close: (1 − 2·cover)(1 − cover), worked by hand for cover 0.2.
	d := toward(60, 0)
	if got := (Cloth{Shade: 0.36}).Direct(d[0], d[1], d[2]); math.Abs(got-0.6*0.8) > 1e-12 {
		t.Errorf("%.6f at 60°, by hand 0.48", got)
	}
}

// More shade never lets more through, a flatter sun neither; what goes through and what goes on never exceed what came.
func TestClothIsMonotoneAndMakesNoLight(t *testing.T) {
	for colour, of := range threads {
		if of.forward < 0 || of.absorbed < 0 || of.forward+of.absorbed > 1 {
			t.Errorf("%s: %+v of what threads stop", colour, of)
		}
		for turn := 0.0; turn <= 90; turn += 15 {
			for shade := 0.05; shade < 0.95; shade += 0.05 {
				c, darker, last := Of(shade, colour), Of(shade+0.05, colour), 1.0
				for angle := 0.0; angle <= 90; angle += 5 {
					d := toward(angle, turn)
					direct, scattered := c.Direct(d[0], d[1], d[2]), c.Scattered(d[0], d[1], d[2])
					if darker.Direct(d[0], d[1], d[2]) > direct || direct > last+1e-12 {
						t.Fatalf("%s, shade %.2f at %.0f° lets %.4f through", colour, shade, angle, direct)
					}
					if scattered < 0 || direct+scattered > 1 {
						t.Fatalf("%s, shade %.2f at %.0f° makes %.4f of 1", colour, shade, angle, direct+scattered)
					}
					last = direct
				}
				even, on := c.Even()
				if even >= 1-shade || even < 0 || even+on > 1 || darker.Wind() > c.Wind() {
					t.Fatalf("shade %.2f: %.4f through, %.4f on, wind %.2f", shade, even, on, c.Wind())
				}
			}
		}
	}
}

// A hemisphere of even light by fine steps of angle is what Even says.
func TestEvenLightThroughCloth(t *testing.T) {
	c, sum := Of(0.5, scenario.WhiteCloth), 0.0
	for angle := 0.25; angle < 90; angle += 0.5 {
		for turn := 0.5; turn < 90; turn++ {
			d := toward(angle, turn)
			sum += c.Direct(d[0], d[1], d[2]) * math.Sin(mgl64.DegToRad(2*angle)) * mgl64.DegToRad(0.5) / 90
		}
	}
	if direct, _ := c.Even(); math.Abs(direct-sum) > 0.002 {
		t.Errorf("%.4f, by small steps %.4f", direct, sum)
	}
	if direct, scattered := (Cloth{}).Even(); math.Abs(direct-1) > 1e-12 || scattered != 0 {
		t.Errorf("no cloth: %.6f through, %.6f on", direct, scattered)
	}
	// The assumption that the wind behind nets rests on.
	if wind := Of(0.4, scenario.BlackCloth).Wind(); math.Abs(wind-0.7) > 1e-12 {
		t.Errorf("wind %.3f at a shade of 0.4", wind)
	}
}

// The band of a net is met between its edges, by geometry in the plane across the row.
func TestNetIsMetWithinItsBand(t *testing.T) {
	side := Panel{Cloth: Of(0.5, scenario.BlackCloth), Edges: [2][2]float64{{-0.3, 0.8}, {-0.3, 1.2}}}
	roof := Panel{Cloth: side.Cloth, Edges: [2][2]float64{{-0.3, 2}, {0.3, 2}}}
	from := mgl64.Vec3{-0.1, 2, 1}
	for _, c := range []struct {
		net                        *Panel
		elevation_deg, azimuth_deg float64 // from the outward axis, which is left
		from                       mgl64.Vec3
		want                       bool
	}{
		{&side, 44, 0, from, true}, {&side, 46, 0, from, false}, // 0.2 m out, 0.2 m to the upper edge
		{&side, 36, 45, from, false}, {&side, 35, 45, from, true}, // √2 as far: tan 35.26° = 1/√2
		{&side, 10, 170, from, false},                // behind the row
		{&side, -44, 0, from, true},                  // to the floor
		{&side, -46, 0, from, false},                 // below it
		{&side, 80, 0, mgl64.Vec3{-0.4, 2, 1}, true}, // a bunch that touches it
		{&side, 0, 0, mgl64.Vec3{-0.1, 2, 1.3}, false},
		{&roof, 79, 0, from, true}, {&roof, 78, 0, from, false}, // 1 m up, 0.2 m to the edge: tan 78.69° = 5
		{&roof, 69, 180, from, true}, {&roof, 67, 180, from, false}, // 0.4 m to the other: tan 68.20° = 2.5
		{&roof, -80, 0, from, false}, {&roof, 90, 0, from, true},
	} {
		e, a := mgl64.DegToRad(c.elevation_deg), mgl64.DegToRad(c.azimuth_deg)
		d := mgl64.Vec3{-math.Cos(e) * math.Cos(a), math.Cos(e) * math.Sin(a), math.Sin(e)}
		if got := c.net.Meets(c.from, d); got != c.want {
			t.Errorf("%v at %g°, %g°: %v", c.from, c.elevation_deg, c.azimuth_deg, got)
		}
	}
	// Light along the normal of either meets its shade factor.
	if a, b := side.Direct(mgl64.Vec3{-1, 0, 0}), roof.Direct(mgl64.Vec3{0, 0, 1}); math.Abs(a-0.5) > 1e-12 || math.Abs(b-0.5) > 1e-12 {
		t.Errorf("%.3f through the side net, %.3f through the roof", a, b)
	}
}

// Nets hang where they are told, on the side of the sun that they are told, and clear of the fruit.
func TestPanelsHangWhereTheyAreTold(t *testing.T) {
	form, _ := scenario.FormByKey("vsp-spurs")
	o := form.Option
	stand, err := training.Build(o, 36, 1)
	if err != nil {
		t.Fatal(err)
	}
	if nets := Panels(o, stand, 36); nets != nil {
		t.Fatalf("an option without nets has %+v", nets)
	}
	o.Shade.NetSides, o.Shade.OverheadShade, o.Shade.BirdNet = scenario.AfternoonSide, 0.3, scenario.DrapedNet
	o.Shade.NetDistance_m = 0.5
	nets, room := Panels(o, stand, 36), stand.Outline()
	if len(nets) != 5 || nets[0].Kind != SideNet || nets[3].Kind != BirdNet || nets[4].Kind != OverheadNet {
		t.Fatalf("%+v", nets)
	}
	// Afternoon in a north–south row is west, which is left, at either hemisphere.
	side, drape, roof := nets[0], nets[3], nets[4]
	if side.Level() || side.Right() || side.Edges[0][0] != -0.5 || side.Edges[0][1] >= room.FruitBottom || side.Edges[1][1] <= room.FruitTop {
		t.Errorf("%+v about fruit %+v", side, room)
	}
	if !drape.Level() || drape.Edges[0][0] >= room.Left || drape.Edges[1][0] <= room.Right || drape.Edges[0][1] <= stand.Top {
		t.Errorf("%+v over leaves %+v", drape, room)
	}
	if !roof.Level() || roof.Edges[1][0]-roof.Edges[0][0] != stand.RowSpacing || roof.Edges[0][1] != o.Shade.OverheadHeight_m {
		t.Errorf("%+v", roof)
	}
	o.Shade = scenario.Shade{NetSides: scenario.BothSides, NetShade: 0.5, NetFrom_m: 0.6, NetTo_m: 1.4}
	nets = Panels(o, stand, 36)
	if len(nets) != 2 || nets[0].Right() || !nets[1].Right() {
		t.Fatalf("%+v", nets)
	}
	for _, net := range nets {
		if net.Edges[0][1] != 0.6 || net.Edges[1][1] != 1.4 || math.Abs(net.Edges[0][0]) < 0.05 {
			t.Errorf("%+v about fruit %+v", net, room)
		}
	}
}

func TestFilmsWhitenFruitAndLeaves(t *testing.T) {
	last, lastPar := 1.01, -1.0
	for _, film := range []scenario.Film{scenario.NoFilm, scenario.LightFilm, scenario.FullFilm} {
		par, near := Leaves(film)
		if skin := Skin(film); skin >= last || par <= lastPar || near < 0 {
			t.Errorf("%s: skin %.2f, leaves %.2f and %.2f", film, skin, par, near)
		} else {
			last, lastPar = skin, par
		}
	}
}

// threaded is the share of even rays toward a direction that pass between round threads, ray by ray: two sets of them, a
// metre apart, along y and along z, that cover that share of a line across; a ray is stopped that comes nearer to an axis
// than the radius. It counts distances in space and knows none of the formulas of Cloth.
func threaded(cover float64, d mgl64.Vec3) float64 {
	const rays = 160
	radius, free := cover/2, 0
	for i := range rays {
		for j := range rays {
			at := mgl64.Vec3{0, (float64(i) + 0.5) / rays, (float64(j) + 0.5) / rays}
			stopped := false
			for k := -3.0; k <= 4 && !stopped; k++ {
				for _, axis := range [2]struct{ through, along mgl64.Vec3 }{{mgl64.Vec3{0, 0, k}, mgl64.Vec3{0, 1, 0}}, {mgl64.Vec3{0, k, 0}, mgl64.Vec3{0, 0, 1}}} {
					normal := d.Cross(axis.along)
					stopped = stopped || math.Abs(at.Sub(axis.through).Dot(normal)) < radius*normal.Len()
				}
			}
			if !stopped {
				free++
			}
		}
	}
	return float64(free) / rays / rays
}

// Seen obliquely, a net lets through what passes between its threads one by one.
func TestClothAgainstThreadsInSpace(t *testing.T) {
	for _, shade := range []float64{0.15, 0.5} {
		c := Of(shade, scenario.BlackCloth)
		for _, angle := range []float64{0, 30, 50, 65} {
			for _, turn := range []float64{0, 25, 45} {
				d := toward(angle, turn)
				if got, want := c.Direct(d[0], d[1], d[2]), threaded(c.Cover(), d); math.Abs(got-want) > 0.01 {
					t.Errorf("shade %.2f at %.0f°, turned %.0f°: %.4f through, ray by ray %.4f", shade, angle, turn, got, want)
				}
			}
		}
	}
}
