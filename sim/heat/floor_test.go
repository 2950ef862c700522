package heat

import (
	"math"
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

var floors = []scenario.Floor{scenario.BareDry, scenario.BareMoist, scenario.MownCover, scenario.Straw, scenario.Pale}

// summerHour is a clear day of 41 °C: sun from 5 to 19 h with 1000 W/m² at noon, air 21–41 °C with its peak at
// 15 h, dew point 11 °C, sky longwave by Brutsaert 1975.
func summerHour(hour, wind float64) (short, long []float64, around Around) {
	around = Around{Air_C: 31 + 10*math.Cos(2*math.Pi*(hour-15)/24), Dew_C: 11, Wind_ms: wind}
	sun := 1000 * math.Max(0, math.Sin(math.Pi*(hour-5)/14))
	return []float64{sun}, []float64{sky.Brutsaert(around.Air_C, 11)}, around
}

// summerDay lives through two days and returns what each five minutes of the third are over air.
func summerDay(kind scenario.Floor, wind float64) (over [288]float64, floor *Floor) {
	floor = NewFloor(kind, 1, 31)
	for d := range 3 {
		for k := range over {
			short, long, around := summerHour(float64(k+1)/12, wind)
			floor.Step(short, long, around, 300)
			over[k] = floor.Surface_C[0] - around.Air_C
		}
		if d < 2 {
			floor.Settle()
		}
	}
	return over, floor
}

// at reads an hour of such a day.
func at(over [288]float64, hour float64) float64 { return over[int(hour*12)-1] }

// A ground that takes up G0·cos(ωt) answers as a half-space: amplitude G0/(Γ√ω), an eighth of a day late
// (Carslaw & Jaeger 1959, 2.6). Force–restore is exact for that wave.
func TestForceRestoreAnswersADailyWaveAsAHalfSpace(t *testing.T) {
	for _, kind := range floors {
		f := NewFloor(kind, 1, 20)
		omega, surface, step := 2*math.Pi/day, 20.0, 60.0
		amplitude := 100 / (f.ThermalInertia * math.Sqrt(omega))
		worst := 0.0
		for k := range 10 * 1440 {
			now := float64(k) * step
			surface, _ = f.forceRestore(surface, 100*math.Cos(omega*(now+step/2)), 0, step)
			if k >= 9*1440 {
				want := 20 + amplitude*math.Cos(omega*(now+step)-math.Pi/4)
				worst = math.Max(worst, math.Abs(surface-want))
			}
		}
		within(t, string(kind)+": worst difference over amplitude", worst/amplitude, 0, 1e-3)
	}
}

// The whole daily cycle of dry soil against a soil column by finite differences with the same exchange at its top.
// A half-space answers shorter waves otherwise than force–restore does: the peak may differ by 2 K.
func TestFloorAgainstASoilColumn(t *testing.T) {
	over, floor := summerDay(scenario.BareDry, 0.5)
	const cells, depth = 200, 0.005
	conductivity := 0.5
	heat := floor.ThermalInertia * floor.ThermalInertia / conductivity // ρc
	var column [cells]float64
	for i := range column {
		column[i] = floor.Deep_C
	}
	surface := floor.Deep_C
	step, worst := 10.0, 0.0
	for k := range 20 * 8640 {
		hour := math.Mod(float64(k+1)/360, 24)
		short, long, around := summerHour(hour, 0.5)
		// The skin holds no heat: its balance with the first half cell gives its temperature.
		for range 20 {
			flux, slope := floor.balance(surface, short[0], long[0], newFloorAir(around))
			inward := conductivity / (depth / 2)
			moved := (flux.Ground - inward*(surface-column[0])) / (inward - slope.Ground)
			surface += moved
			if math.Abs(moved) < 1e-6 {
				break
			}
		}
		above := conductivity / (depth / 2) * (surface - column[0])
		for i := range column {
			below := 0.0
			if i+1 < cells {
				below = conductivity / depth * (column[i] - column[i+1])
			}
			column[i] += (above - below) * step / (heat * depth)
			above = below
		}
		if k >= 19*8640 && (k+1)%30 == 0 {
			index := (k + 1) % 8640 / 30
			if index == 0 {
				index = 288
			}
			worst = math.Max(worst, math.Abs(surface-around.Air_C-over[index-1]))
		}
	}
	t.Logf("worst difference %.2f K", worst)
	within(t, "worst difference", worst, 0, 3)
}

func TestFloorEnergyCloses(t *testing.T) {
	for _, kind := range floors {
		f := NewFloor(kind, 3, 25)
		for k := range 288 {
			_, long, around := summerHour(float64(k)/12, 0.3)
			f.Step([]float64{0, 300, 900}, long, around, 300)
			near(t, "sum of flows", f.Flux.Absorbed+f.Flux.Longwave-f.Flux.Sensible-f.Flux.Latent-f.Flux.Ground, 0, 1e-9)
			near(t, "upward longwave", f.Flux.Upward, long[0]-f.Flux.Longwave, 1e-9)
		}
		if !(f.Surface_C[2] > f.Surface_C[1] && f.Surface_C[1] > f.Surface_C[0]) {
			t.Errorf("%s: the sunnier strip is not the warmer one: %v", kind, f.Surface_C)
		}
	}
}

// What enters the ground over a step warms the surface and passes on to the depth, to the last digit.
func TestForceRestoreKeepsHeat(t *testing.T) {
	f := NewFloor(scenario.Straw, 1, 20)
	force := 2 * math.Sqrt(math.Pi) / (f.ThermalInertia * math.Sqrt(day))
	for _, step := range []float64{1e-3, 60, 300, 3600, 1e5} {
		for _, slope := range []float64{0, -5, -40} {
			next, average := f.forceRestore(33, 150, slope, step)
			entered := 150 + slope*(average-33)
			near(t, "warming", next-33, step*(force*entered-2*math.Pi/day*(average-20)), 1e-9)
		}
	}
}

// A floor under a black sky at air temperature, with no sun and nothing to evaporate, stays where it is.
func TestFloorAtRest(t *testing.T) {
	f := NewFloor(scenario.BareDry, 2, 18)
	for range 500 {
		f.Step([]float64{0}, []float64{Emitted(18)}, Around{Air_C: 18, Wind_ms: 1}, 600)
	}
	near(t, "surface", f.Surface_C[1], 18, 1e-9)
	near(t, "upward longwave", f.Upward_Wm2[0], Emitted(18), 1e-9)
}

// Bare soil rose 30 K over ambient in the simulation of Ross, Williams & McCown 1985, Aust. J. Soil Res. 23:515;
// tilled mid-rows in the sun were 61 °C on average with air of 22 to 27 °C, herbicide strips 57 °C, in
// the field note of van Helden 2014 (South Australia, infrared thermometer, December).
func TestDryBareFloorIsTensOfKelvinOverAir(t *testing.T) {
	for _, wind := range []float64{0.2, 0.5, 1} {
		over, floor := summerDay(scenario.BareDry, wind)
		t.Logf("%.1f m/s: noon %+.1f, 16 h %+.1f, 5 h %+.1f, deep %.1f", wind, at(over, 12), at(over, 16), at(over, 5), floor.Deep_C)
		within(t, "noon over air", at(over, 12), 15, 36)
		within(t, "before sunrise over air", at(over, 5), -6, 1.5)
	}
	windy, _ := summerDay(scenario.BareDry, 0.5)
	if !(at(windy, 22) < 0 && at(windy, 1) < 0) {
		t.Errorf("dry soil is not colder than the air at night: %+.2f, %+.2f K", at(windy, 22), at(windy, 1))
	}
}

// Floors in the order of the trade: dry soil and straw hot at noon, pale and moist ones less, a green cover near
// air (within 8 K by day; leaves stay near air, Millar 1972) and colder than tilled soil at night (de
// Rességuier et al. 2023, OENO One).
func TestFloorsByKind(t *testing.T) {
	noon, night := map[scenario.Floor]float64{}, map[scenario.Floor]float64{}
	for _, kind := range floors {
		over, _ := summerDay(kind, 0.3)
		noon[kind], night[kind] = at(over, 13), at(over, 4)
		t.Logf("%s: 13 h %+.1f, 4 h %+.1f, 21 h %+.1f", kind, noon[kind], night[kind], at(over, 21))
	}
	within(t, "green cover by day", noon[scenario.MownCover], -4, 8)
	within(t, "green cover at night", night[scenario.MownCover], -10, -1)
	if !(noon[scenario.BareDry] > noon[scenario.Pale]+5 && noon[scenario.Pale] > noon[scenario.BareMoist] && noon[scenario.BareMoist] > noon[scenario.MownCover]) {
		t.Errorf("floors at noon are out of order: %v", noon)
	}
	if !(night[scenario.MownCover] < night[scenario.BareDry] && night[scenario.Straw] < night[scenario.BareDry]) {
		t.Errorf("covered soil must be the colder one at night: %v", night)
	}
}

// Settling after each day comes to the same state as waiting for weeks.
func TestSettleSavesWeeks(t *testing.T) {
	over, _ := summerDay(scenario.BareDry, 0.5)
	slow := NewFloor(scenario.BareDry, 1, 31)
	last := 0.0
	for range 400 {
		for k := range 288 {
			short, long, around := summerHour(float64(k+1)/12, 0.5)
			slow.Step(short, long, around, 300)
			if k == 143 {
				last = slow.Surface_C[0] - around.Air_C
			}
		}
	}
	near(t, "noon over air", at(over, 12), last, 1)
}

func TestFiveMinutesAreShortForTheFloor(t *testing.T) {
	coarse, fine := NewFloor(scenario.MownCover, 1, 25), NewFloor(scenario.MownCover, 1, 25)
	worst := 0.0
	for k := range 288 {
		short, long, around := summerHour(float64(k+1)/12, 0.3)
		coarse.Step(short, long, around, 300)
		for range 60 {
			fine.Step(short, long, around, 5)
		}
		worst = math.Max(worst, math.Abs(coarse.Surface_C[0]-fine.Surface_C[0]))
	}
	t.Logf("worst difference %.2f K", worst)
	within(t, "worst difference", worst, 0, 0.35)
}

func BenchmarkFloorStep(bench *testing.B) {
	f := NewFloor(scenario.MownCover, 16, 25)
	short, long, around := summerHour(13, 0.3)
	for bench.Loop() {
		f.Step(short, long, around, 300)
	}
}
