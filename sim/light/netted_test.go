package light

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/cover"
	"rowlight/sim/scenario"
)

// hung is a net on the fruit zone of each side and a bird net over all, of invented sizes.
func hung(shade float64) []cover.Panel {
	cloth := cover.Of(shade, scenario.WhiteCloth)
	upright := func(x, from, to float64) cover.Panel {
		return cover.Panel{Cloth: cloth, Edges: [2][2]float64{{x, from}, {x, to}}}
	}
	return []cover.Panel{upright(-0.25, 0.7, 1.4), upright(0.25, 0.7, 1.4),
		{Cloth: cloth, Edges: [2][2]float64{{-0.5, 2.1}, {0.5, 2.1}}}}
}

func behind(t *testing.T, m *Model, nets []cover.Panel) *Model {
	t.Helper()
	netted, err := m.Behind(nets, free)
	if err != nil {
		t.Fatal(err)
	}
	return netted
}

// What a face sees stays whole: between the threads, of threads, of leaves and of its own bunch it sees all around it.
func TestViewsBehindNetsAreWhole(t *testing.T) {
	m := model(t, invented(7, 3000, 20, false), canopy.Slope{Across: 0.05})
	netted := behind(t, m, hung(0.4))
	for f := range m.Faces {
		sky, ground, threads := netted.Netted(f)
		_, _, own, leaves := netted.Views(f)
		sum := sky.Plus(ground).Plus(threads).Plus(own).Plus(leaves)
		if math.Abs(sum.Mean-1) > 1e-9 || sum.Vector.Len() > 1e-9 || threads.Mean <= 0 {
			t.Fatalf("face %d sees %+v, %+v of it threads", f, sum, threads)
		}
		light, floor := netted.SeenThrough(f)
		openSky, openGround, _, _ := m.Views(f)
		if light.Mean < sky.Mean || light.Mean > openSky.Mean || floor.Mean < ground.Mean || floor.Mean > openGround.Mean {
			t.Fatalf("face %d: light from %.4f and %.4f of its surroundings, %.4f and %.4f are open, %.4f and %.4f without nets",
				f, light.Mean, floor.Mean, sky.Mean, ground.Mean, openSky.Mean, openGround.Mean)
		}
	}
}

// A net that stops nothing leaves the light as it was.
func TestNetOfNoShadeIsNone(t *testing.T) {
	m := model(t, invented(8, 3000, 20, false), canopy.Slope{})
	if behind(t, m, nil) != m {
		t.Error("without nets the model is another")
	}
	netted := behind(t, m, hung(0))
	var a, b Instant
	for hour := range 20 {
		sky := Sky{Sun: toSun(5+4*float64(hour), 18*float64(hour)), Beam: 850, Diffuse: 90}
		m.At(sky, &a)
		netted.At(sky, &b)
		for f := range m.Faces {
			if a.Lit[f] != b.Lit[f] || b.Share(f) != 1 || math.Abs(a.Short[f].Mean-b.Short[f].Mean) > 1e-9 {
				t.Fatalf("hour %d face %d: %+v, %+v", hour, f, a.Short[f], b.Short[f])
			}
		}
	}
}

// More shade never lets more beam or sky light through to any face.
func TestMoreShadeNeverBringsMoreLight(t *testing.T) {
	m := model(t, invented(9, 3000, 30, false), canopy.Slope{})
	lastSky := make([]Broad, len(m.Faces))
	for step, shade := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
		netted := behind(t, m, hung(shade))
		for hour := range 12 {
			sun := toSun(5+6*float64(hour), 31*float64(hour))
			for f := range m.Faces {
				darker, lighter := netted.Through(f, sun), behindOf(m, hung(shade-0.1)).Through(f, sun)
				if darker > lighter {
					t.Fatalf("shade %.1f lets %.4f of the beam to face %d, 0.1 less %.4f", shade, darker, f, lighter)
				}
			}
		}
		for f := range m.Faces {
			sky, _ := netted.SeenThrough(f)
			if step > 0 && sky.Mean > lastSky[f].Mean {
				t.Fatalf("shade %.1f lets %.4f of the sky to face %d, less shade %.4f", shade, sky.Mean, f, lastSky[f].Mean)
			}
			lastSky[f] = sky
		}
	}
}

// behindOf is a model with nets whose views are not asked for.
func behindOf(m *Model, nets []cover.Panel) *Model {
	other := *m
	other.netted = &netted{nets: nets}
	return &other
}

// A net on one side, mirrored, is a net on the other under the mirrored sun, to rounding.
func TestMirroredNets(t *testing.T) {
	plain, mirrored := model(t, invented(4, 3000, 60, false), canopy.Slope{Across: 0.08}), model(t, invented(4, 3000, 60, true), canopy.Slope{Across: -0.08})
	left, right := behind(t, plain, hung(0.5)[:1]), behind(t, mirrored, hung(0.5)[1:2])
	var a, b Instant
	for hour := range 30 {
		sun := toSun(5+2.5*float64(hour), 12*float64(hour))
		image := mgl64.Vec3{-sun[0], sun[1], sun[2]}
		left.At(Sky{Sun: sun, Beam: 850, Diffuse: 90}, &a)
		right.At(Sky{Sun: image, Beam: 850, Diffuse: 90}, &b)
		for f := range plain.Faces {
			if math.Abs(a.Share(f)-b.Share(f^1)) > 1e-9 || math.Abs(a.Short[f].Mean-b.Short[f^1].Mean) > 1e-3*(1+a.Short[f].Mean) {
				t.Fatalf("hour %d face %d: %.4f of the beam and %.4f W/m², mirrored %.4f and %.4f", hour, f, a.Share(f), a.Short[f].Mean, b.Share(f^1), b.Short[f^1].Mean)
			}
		}
	}
}

// A part of the bunches, and models between others, have the nets that they would have if made anew.
func TestNetsOfPartsAndBetween(t *testing.T) {
	m := behind(t, model(t, invented(10, 3000, 12, false), canopy.Slope{}), hung(0.5))
	few := m.Every(3)
	sky := Sky{Sun: toSun(35, 170), Beam: 800, Diffuse: 100}
	var all, part Instant
	m.At(sky, &all)
	few.At(sky, &part)
	for f := range few.Faces {
		same := f/2*6 + f%2
		if part.Short[f] != all.Short[same] || part.Share(f) != all.Share(same) || few.LeavesThrough(f) != m.LeavesThrough(same) {
			t.Fatalf("face %d differs from face %d of all", f, same)
		}
	}
	between, err := NewBetween(m, 0.75, 1.3, free)
	if err != nil {
		t.Fatal(err)
	}
	anew, err := m.Thicker(1.15, free)
	if err != nil {
		t.Fatal(err)
	}
	got := between.At(1.15)
	if off := furthest(got.netted.sky, anew.netted.sky); off > 0.002 {
		t.Errorf("views of the sky are %.4f off", off)
	}
	if off := furthest(got.netted.openGround, anew.netted.openGround); off > 0.002 {
		t.Errorf("views of the floor are %.4f off", off)
	}
	if furthest(between.At(0.75).netted.sky, anew.netted.sky) < 0.01 {
		t.Error("leaf area hardly changes the view of the sky: the test says nothing")
	}
}

// The beam on a net is that on an upright wall, less what the next row shades: by plane geometry its shadow ends at
// 2 − 2.25·tan(elevation) on a net 0.25 m from a row of 2 m, 2.5 m from the next.
func TestBeamOnANet(t *testing.T) {
	m := &Model{top: 2, width: 2.5, up: mgl64.Vec3{0, 0, 1}}
	net := &hung(0.4)[1]
	for _, c := range []struct{ elevation_deg, lit float64 }{
		{10, 0}, {20, (1.4 - (2 - 2.25*math.Tan(20*math.Pi/180))) / 0.7}, {35, 1}, {60, 1},
	} {
		sun := toSun(c.elevation_deg, 0)
		want := 800 * math.Cos(c.elevation_deg*math.Pi/180) * c.lit
		if got := m.BeamOn(net, Sky{Sun: sun, Beam: 800}); math.Abs(got-want) > 1e-9 {
			t.Errorf("%.0f°: %.2f W/m², by geometry %.2f", c.elevation_deg, got, want)
		}
		if m.BeamOn(net, Sky{Sun: toSun(c.elevation_deg, 180), Beam: 800}) != 0 {
			t.Error("a sun behind the row is on the net")
		}
	}
}
