package heat

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

var hotDay = Load{
	Beam_Wm2: 850, Sun: slant,
	Short:             Broad{Mean: 120, Vector: mgl64.Vec3{0, 0, -20}},
	LongNet:           Broad{Mean: -25, Vector: mgl64.Vec3{0, 0, -60}},
	Transpiration_Wm2: 5,
}

// exchange is the coefficients of convection and radiation of a berry.
func exchange(b Berry, mean_C float64, around Around) (convective, radiative float64) {
	in := b.In(&around)
	return in.exchange(mean_C)
}

// sumOfFlows is what must vanish.
func sumOfFlows(s Surface) float64 {
	return s.FluxAbsorbed + s.FluxLongwave - s.FluxConvection - s.FluxTranspiration - s.FluxStored
}

func TestEnergyCloses(t *testing.T) {
	b := plain(14, 0.75)
	for _, compactness := range []float64{0, 0.4, 1} {
		b.Compactness = compactness
		for _, step := range []float64{0, 1e-6, 1, 60, 300, 3600, 1e6} {
			around := Around{Air_C: 33, Wind_ms: 0.6}
			s := b.Step(29, &hotDay, &around, step)
			near(t, "sum of flows", sumOfFlows(s), 0, 1e-9)
			near(t, "heat stored", s.FluxStored*step, b.capacity()*(s.Mean_C-29), 1e-6*(1+step))
		}
		steady := b.Steady(hotDay, Around{Air_C: 33, Wind_ms: 0.6})
		near(t, "sum of steady flows", sumOfFlows(steady.Surface), 0, 1e-6)
		near(t, "parts of sunlight", steady.FluxBeam+steady.FluxDiffuse, steady.FluxAbsorbed, 1e-12)
		near(t, "parts of longwave", steady.FluxFrom-steady.FluxEmission, steady.FluxLongwave, 1e-12)
	}
}

// With steady coefficients the mean follows dT/dt = (inflow − (h+h_r)(T−Tair))/C; the same equation
// stepped finely by a fourth-order rule.
func TestStepFollowsTheTimeConstant(t *testing.T) {
	b, around := plain(14, 0.75), Around{Air_C: 35, Wind_ms: 1}
	convective, radiative := exchange(b, 30, around)
	total, inflow := convective+radiative, b.inflow(&hotDay)
	rate := func(mean float64) float64 { return (inflow - total*(mean-around.Air_C)) / b.capacity() }
	mean, step := 30.0, 0.5
	for range 600 {
		k1 := rate(mean)
		k2 := rate(mean + step/2*k1)
		k3 := rate(mean + step/2*k2)
		k4 := rate(mean + step*k3)
		mean += step / 6 * (k1 + 2*k2 + 2*k3 + k4)
	}
	near(t, "mean after 5 minutes", b.Step(30, &hotDay, &around, 300).Mean_C, mean, 1e-9)
}

// Lumped time constants of 12 to 20 mm berries: 3 to 10 minutes, the same ρcR/3h worked by hand.
func TestTimeConstantOfLooseBerries(t *testing.T) {
	for _, diameter := range []float64{12, 14, 16, 20} {
		b := plain(diameter, 0.75)
		for _, wind := range []float64{0.3, 1} {
			convective, radiative := exchange(b, 42, Around{Air_C: 35, Wind_ms: wind})
			within(t, "minutes", b.capacity()/(convective+radiative)/60, 3, 11)
		}
	}
	tight := plain(14, 0.75)
	tight.Compactness = 1
	near(t, "a tight bunch of 130 g stores as its sphere", tight.capacity(),
		BerryDensity*BerryHeatCapacity/3*math.Cbrt(3*0.130/(4*math.Pi*BerryDensity)), 1e-6)
}

// Many steps under a constant load end where Steady says.
func TestStepsEndAtSteady(t *testing.T) {
	for _, compactness := range []float64{0, 1} {
		b, around := plain(16, 0.75), Around{Air_C: 35, Wind_ms: 0.2}
		b.Compactness = compactness
		mean := 20.0
		var s Surface
		for range 200 {
			s = b.Step(mean, &hotDay, &around, 300)
			mean = s.Mean_C
		}
		want := b.Steady(hotDay, around)
		near(t, "mean", s.Mean_C, want.Mean_C, 1e-7)
		near(t, "sunlit pole", s.Lit_C, want.Lit_C, 1e-7)
		near(t, "shaded pole", s.Shaded_C, want.Shaded_C, 1e-7)
		near(t, "hottest", s.Hottest_C, want.Hottest_C, 1e-7)
		near(t, "stored", s.FluxStored, 0, 1e-6)
	}
}

// Five-minute steps against one-second steps through a sun fleck: the coefficients, held over
// a step, cost little.
func TestFiveMinuteStepsAreShortEnough(t *testing.T) {
	b, around := plain(14, 0.75), Around{Air_C: 35, Wind_ms: 0.5}
	coarse, fine, worst := 35.0, 35.0, 0.0
	for k := range 24 {
		load := hotDay
		if k/6%2 == 1 {
			load.Beam_Wm2 = 0
		}
		coarse = b.Step(coarse, &load, &around, 300).Mean_C
		for range 300 {
			fine = b.Step(fine, &load, &around, 1).Mean_C
		}
		worst = math.Max(worst, math.Abs(coarse-fine))
	}
	t.Logf("worst difference %.3f K", worst)
	within(t, "worst difference", worst, 0, 0.1)
}

// The linear radiation of Step against σT⁴ itself.
func TestLinearRadiation(t *testing.T) {
	for _, rise := range []float64{-5, 3, 10, 20} {
		exact := 0.96 * (Emitted(35+rise) - Emitted(35))
		near(t, "longwave over air", radiativeCoefficient(0.96, 35+rise, 35)*rise, exact, 1.5e-3*math.Abs(exact))
	}
}

func TestFollowIsStepWithoutFlows(t *testing.T) {
	around := Around{Air_C: 35, Wind_ms: 0.5}
	dark := hotDay
	dark.Beam_Wm2 = 0
	for _, load := range []Load{hotDay, dark} {
		b := plain(14, 0.75)
		in := b.In(&around)
		end, hottest := in.Follow(31, &load, 300)
		step := b.Step(31, &load, &around, 300)
		near(t, "mean", end, step.Mean_C, 0)
		near(t, "hottest", hottest, step.Hottest_C, 0)
	}
}

func TestStepDoesNotAllocate(t *testing.T) {
	b, around := plain(14, 0.75), Around{Air_C: 35, Wind_ms: 0.5}
	mean := 35.0
	if n := testing.AllocsPerRun(100, func() { mean = b.Step(mean, &hotDay, &around, 300).Mean_C }); n != 0 {
		t.Errorf("Step allocates %g times", n)
	}
}

func BenchmarkStep(bench *testing.B) {
	b, around := plain(14, 0.75), Around{Air_C: 35, Wind_ms: 0.5, Pressure_Pa: 100000}
	b.Compactness = 0.3
	mean := 35.0
	for bench.Loop() {
		mean = b.Step(mean, &hotDay, &around, 300).Mean_C
	}
}

func BenchmarkSphereConvection(bench *testing.B) {
	around := Around{Air_C: 35, Wind_ms: 0.5}
	for bench.Loop() {
		SphereConvection(0.014, around, 42)
	}
}
