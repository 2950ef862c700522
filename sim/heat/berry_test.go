package heat

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
)

// plain is a berry that exchanges heat like a sphere alone.
func plain(diameter_mm, absorptance float64) Berry {
	b := NewBerry(scenario.Fruit{Colour: scenario.Red, Diameter_mm: diameter_mm}, 130)
	b.Absorptance = absorptance
	return b
}

var (
	up    = mgl64.Vec3{0, 0, 1}
	slant = mgl64.Vec3{0.6, 0, 0.8}
)

func TestNewBerryReadsTheFruit(t *testing.T) {
	for colour, want := range map[scenario.Colour]float64{
		scenario.Green: GreenAbsorptance, scenario.White: WhiteAbsorptance, scenario.Red: RedAbsorptance,
	} {
		near(t, string(colour), NewBerry(scenario.Fruit{Colour: colour, Diameter_mm: 14}, 0).Absorptance, want, 0)
	}
	given := NewBerry(scenario.Fruit{Colour: scenario.Red, Diameter_mm: 12, Absorptance: 0.6, Compactness: 1}, 150)
	near(t, "absorptance given", given.Absorptance, 0.6, 0)
	near(t, "diameter", given.Diameter_m, 0.012, 1e-15)
	near(t, "mass of the sphere of the bunch", 4*math.Pi/3*cube(given.BunchRadius_m)*BerryDensity, 0.15, 1e-12)
	near(t, "tight convection", given.ConvectionFactor(), tightConvection, 1e-15)
	near(t, "loose convection", plain(14, 0.7).ConvectionFactor(), 1, 0)
}

// Compactness scales h once: forced and free, and leaves conduction and radiation alone.
func TestCompactnessScalesConvectionOnly(t *testing.T) {
	loose, tight := plain(14, 0.75), plain(14, 0.75)
	tight.Compactness = 1
	around := Around{Air_C: 35, Wind_ms: 1}
	h, r := exchange(loose, 42, around)
	hTight, rTight := exchange(tight, 42, around)
	near(t, "convection", hTight, tightConvection*h, 1e-12)
	near(t, "radiation", rTight, r, 0)
	if !(tight.capacity() > loose.capacity()) {
		t.Error("a berry in a tight bunch must have more mass to warm")
	}
}

// With nothing shining on it a berry takes the temperature of the air and stays there.
func TestUnloadedBerryIsAtAirTemperature(t *testing.T) {
	b, around := plain(14, 0.75), Around{Air_C: 31, Wind_ms: 0.4}
	s := b.Steady(Load{}, around)
	for what, got := range map[string]float64{"mean": s.Mean_C, "lit": s.Lit_C, "shaded": s.Shaded_C, "hottest": s.Hottest_C} {
		near(t, what, got, 31, 0)
	}
	mean := 45.0
	for range 400 {
		mean = b.Step(mean, &Load{}, &around, 60).Mean_C
	}
	near(t, "after hours", mean, 31, 1e-9)
}

// Beam only: mean rise q0/4(h+h_r), poles as the sphere that the reference solves.
func TestSteadyBeamIsTheSphereInABeam(t *testing.T) {
	b, around := plain(14, 0.75), Around{Air_C: 35, Wind_ms: 1}
	s := b.Steady(Load{Beam_Wm2: 850, Sun: slant}, around)
	q0 := 0.75 * 850.0
	total := s.Convective + s.Radiative
	near(t, "mean rise", s.Mean_C-35, q0/4/total, 1e-8)
	lit, _, shaded := BeamPoles(q0, total, b.Conductivity, b.radius())
	near(t, "sunlit pole", s.Lit_C-35, lit, 1e-9)
	near(t, "shaded pole", s.Shaded_C-35, shaded, 1e-9)
	near(t, "hottest is the sunlit pole", s.Hottest_C, s.Lit_C, 1e-9)
	b.Conductivity = 1e9
	uniform := b.Steady(Load{Beam_Wm2: 850, Sun: slant}, around)
	near(t, "uniform when it conducts without limit", uniform.Lit_C-uniform.Shaded_C, 0, 1e-6)
}

// Hot sides by broad fields alone: n = 1 conducts k/R inward.
func TestSteadyBroadFields(t *testing.T) {
	b, around := plain(14, 0.7), Around{Air_C: 30, Wind_ms: 0.5}
	load := Load{Short: Hemisphere(200, up), LongNet: Broad{Mean: -20, Vector: mgl64.Vec3{0, 0, -30}}}
	s := b.Steady(load, around)
	total := s.Convective + s.Radiative
	near(t, "mean", s.Mean_C-30, (0.7*100-20)/total, 1e-8)
	tilt := (0.7*100 - 30) / (total + b.Conductivity/b.radius())
	near(t, "hottest", s.Hottest_C-s.Mean_C, tilt, 1e-9)
	near(t, "unlit: lit is the hottest", s.Lit_C, s.Hottest_C, 0)
	near(t, "unlit: shaded is the coolest", s.Mean_C-s.Shaded_C, tilt, 1e-9)
}

// The hottest point by closed form against a search over the sphere.
func TestHottestAgainstSearch(t *testing.T) {
	b, around := plain(16, 0.78), Around{Air_C: 38, Wind_ms: 0.5}
	for _, beam := range []float64{900, 300, 60, 5} {
		for _, broad := range []mgl64.Vec3{{60, 40, 0}, {-80, 0, 30}, {0, 0, -120}, {0, 150, 0}} {
			load := Load{Beam_Wm2: beam, Sun: slant, Short: Broad{Mean: 120, Vector: broad}}
			s := b.Steady(load, around)
			total := s.Convective + s.Radiative
			vector := broad.Mul(b.Absorptance / (total + b.Conductivity/b.radius()))
			q0, hottest := b.Absorptance*beam, math.Inf(-1)
			for i := range 180 {
				for j := range 360 {
					zenith, azimuth := float64(i)*math.Pi/180, float64(j)*math.Pi/180
					n := mgl64.Vec3{math.Sin(zenith) * math.Cos(azimuth), math.Sin(zenith) * math.Sin(azimuth), math.Cos(zenith)}
					rise := BeamRise(n.Dot(slant), q0, total, b.Conductivity, b.radius()) - q0/4/total + vector.Dot(n)
					hottest = math.Max(hottest, s.Mean_C+rise)
				}
			}
			within(t, "closed form minus search", s.Hottest_C-hottest, -0.05, 0.005)
			if s.Hottest_C < s.Lit_C-1e-12 {
				t.Errorf("hottest %g below the sunlit pole %g", s.Hottest_C, s.Lit_C)
			}
		}
	}
}

// Turning or mirroring the world turns nothing about the temperatures.
func TestBerryIsTheSameInTheMirror(t *testing.T) {
	b, around := plain(14, 0.75), Around{Air_C: 35, Wind_ms: 0.7}
	load := Load{Beam_Wm2: 800, Sun: slant, Short: Broad{Mean: 90, Vector: mgl64.Vec3{30, -20, 10}}, LongNet: Broad{Mean: -15, Vector: mgl64.Vec3{-5, 8, -20}}}
	mirrored := load
	for _, v := range []*mgl64.Vec3{&mirrored.Sun, &mirrored.Short.Vector, &mirrored.LongNet.Vector} {
		v[0] = -v[0]
	}
	if a, c := b.Step(30, &load, &around, 300), b.Step(30, &mirrored, &around, 300); a != c {
		t.Errorf("mirror changes the berry: %+v and %+v", a, c)
	}
}

func TestHotBerryCoolsInWind(t *testing.T) {
	b := plain(14, 0.75)
	load := Load{Beam_Wm2: 850, Sun: slant, Short: Uniform(120), LongNet: Uniform(-25)}
	before := b.Steady(load, Around{Air_C: 35})
	for wind := 0.1; wind <= 5; wind += 0.1 {
		now := b.Steady(load, Around{Air_C: 35, Wind_ms: wind})
		if !(now.Mean_C < before.Mean_C && now.Hottest_C < before.Hottest_C) {
			t.Fatalf("at %.1f m/s the berry is not cooler than in less wind", wind)
		}
		before = now
	}
}
