//go:build !js

package lesson

import (
	"maps"
	"math"
	"slices"
	"testing"

	"rowlight/sim/scenario"
)

// ran runs a lesson, with something tried out or with "" as it stands.
func ran(t *testing.T, key, try string) map[string]float64 {
	t.Helper()
	l := lessonOf(t, key)
	var set map[string]any
	if try != "" {
		i := slices.IndexFunc(l.Tries, func(one Try) bool { return one.Key == try })
		if i < 0 {
			t.Fatalf("lesson %s has no %s to try", key, try)
		}
		set = l.Tries[i].Set
	}
	read, err := l.Run(set)
	if err != nil {
		t.Fatal(err)
	}
	return read
}

func lessonOf(t *testing.T, key string) Lesson {
	t.Helper()
	all, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(all, func(l Lesson) bool { return l.Key == key })
	if i < 0 {
		t.Fatalf("no lesson %s", key)
	}
	return all[i]
}

// bearsOut wants a guess to be borne out.
func bearsOut(t *testing.T, key string, read map[string]float64, want string) {
	t.Helper()
	if got := lessonOf(t, key).BorneOut(read); got != want {
		t.Errorf("the numbers bear out %q, published is %q", got, want)
	}
}

// within wants a number in a range.
func within(t *testing.T, what string, got, low, high float64) {
	t.Helper()
	t.Logf("%s: %.3g, wanted %.3g to %.3g", what, got, low, high)
	if !(got >= low && got <= high) {
		t.Errorf("%s: %.3g, wanted %.3g to %.3g", what, got, low, high)
	}
}

// Every number that a lesson shows is there, every try leads to a valid document, and the guesses are those that the
// answer can name.
func TestCatalogueIsWhole(t *testing.T) {
	all, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) != 6 {
		t.Errorf("%d lessons", len(all))
	}
	for _, l := range all {
		for _, stage := range l.Stages {
			for _, row := range stage.Rows {
				for _, name := range row[1:] {
					if _, known := l.Values[name]; !known {
						t.Errorf("%s, %s: no value %s", l.Key, stage.Key, name)
					}
				}
			}
		}
		for guess, name := range l.Answer.Of {
			if _, known := l.Values[name]; !known || !slices.Contains(l.Guesses, guess) {
				t.Errorf("%s: guess %s by %s", l.Key, guess, name)
			}
		}
		for _, try := range l.Tries {
			if _, err := l.Document(try.Set); err != nil {
				t.Error(err)
			}
		}
	}
}

// The west side. Fresno, 8 July (typical year TMY3): direct sun of 692 W/m² in hour 9 and 701 in hour 16, one part in a
// hundred apart; air of 29.7 and 40.0 °C at the middle of these hours, 10.3 K. On north–south rows only west-facing
// fruit burnt (Tarara & Spayd 2005, Good Fruit Grower 56(3):40), and afternoon berries were 3.5 to 6 K warmer than
// those of the morning, seen over all, not the hottest alone (Hunter group, Terroir 2008).
func TestWestSide(t *testing.T) {
	t.Parallel()
	read := ran(t, "west-side", "")
	bearsOut(t, "west-side", read, "west")
	within(t, "light of the afternoon over that of the morning", read["lightAfternoon"]/read["lightMorning"], 0.97, 1.03)
	within(t, "light of the day in the west over that in the east", read["lightWest"]/read["lightEast"], 0.95, 1.05)
	within(t, "air of the afternoon over that of the morning [K]", read["airDifference"], 10.3-1.5, 10.3+1.5)
	within(t, "hottest fruit, likewise [K]", read["hottestDifference"], 3.5, 10.3)
	within(t, "fruit at risk in the east", read["riskEast"], 0, 0.1)
	// With air that stays alike through the day both sides must burn alike: the sun is a mirror image.
	bearsOut(t, "west-side", ran(t, "west-side", "evenDay"), "both")
}

// Row direction. East–west rows load the worse side least in high summer (UCCE Fresno, Zhuang 2019; the geometry of
// the hedges in TestHedges), of the diagonals north-west to south-east is the worse one in the afternoon of the
// northern hemisphere, and the load on the south side of east–west rows rises steeply towards harvest (upright walls at
// 38° N, TestFactVerticalWalls of package sim).
func TestRowDirection(t *testing.T) {
	t.Parallel()
	read := ran(t, "row-direction", "")
	bearsOut(t, "row-direction", read, "ew")
	if read["afternoonD"] <= read["afternoonB"] || read["morningB"] <= read["morningD"] {
		t.Errorf("light of the diagonals: morning %.0f and %.0f, afternoon %.0f and %.0f W/m²", read["morningB"], read["morningD"], read["afternoonB"], read["afternoonD"])
	}
	// Both diagonals get 0.85 of the beam of north–south rows, east–west 0.40; light from sky and leaves evens that out.
	within(t, "light in east–west rows over that in north–south rows", read["lightC"]/read["lightA"], 0.40, 0.75)
	within(t, "light in diagonal rows, likewise", (read["lightB"]+read["lightD"])/2/read["lightA"], 0.80, 0.90)
	harvest := ran(t, "row-direction", "harvest")
	if harvest["overC"] <= 2*read["overC"] || harvest["overD"] <= harvest["overB"] {
		t.Errorf("in September the worse sides are over the limit for %.2f, %.2f and %.2f h (B, C, D), in July C for %.2f", harvest["overB"], harvest["overC"], harvest["overD"], read["overC"])
	}
	south := ran(t, "row-direction", "south")
	if south["overB"] <= south["overD"] {
		t.Error("in the southern hemisphere the diagonals do not change places")
	}
}

// Leaves as an umbrella. A single high wire shades fruit that an upright wall exposes (Yu, Torres & Kurtural 2022);
// west-side removal raises sunburn more than that of the morning side (Purdue, facts for fancy fruit).
func TestUmbrella(t *testing.T) {
	t.Parallel()
	read := ran(t, "umbrella", "")
	bearsOut(t, "umbrella", read, "sprawl")
	if read["lateC"] <= read["litC"] {
		t.Error("the late sun does not come in under the sprawl")
	}
	east, west := ran(t, "umbrella", "pullEast"), ran(t, "umbrella", "pullWest")
	for _, c := range "ABC" {
		of := "risk" + string(c)
		t.Logf("%s: %.2f, east side pulled %.2f, west side %.2f", of, read[of], east[of], west[of])
		if !(west[of] > east[of] && east[of] >= read[of]-0.01 && west[of]-read[of] > 2*(east[of]-read[of])) {
			t.Errorf("%s: %.2f, with the east side pulled %.2f, with the west side %.2f", of, read[of], east[of], west[of])
		}
	}
}

// Net, film, wind. A black side net on the afternoon side bought 3.7 K (UCCE Mendocino and Lake, 2022), a fruit-zone
// net 7 K and kaolin 1 K (Lobos et al. 2015, OENO One; 0.5 to 2 K over trials); the rise over air is at most about 12 K
// in still, bright air (Oxford Companion to Wine 2006) and falls with the power −0.25 of the wind at the sun side,
// −0.35 at the mean berry (whole chain, computed).
func TestDegrees(t *testing.T) {
	t.Parallel()
	read := ran(t, "degrees", "")
	bearsOut(t, "degrees", read, "net40")
	l := lessonOf(t, "degrees")
	within(t, "denser net [K]", read["buysD"], *l.Values["netLow"].Given, *l.Values["netHigh"].Given)
	within(t, "film [K]", read["buysB"], 0.5, 2)
	within(t, "rise over air in light wind [K]", read["riseCalm"], 7, 12)
	power := math.Log(read["riseWind"]/read["riseCalm"]) / math.Log(read["windWindy"]/read["windCalm"])
	within(t, "power of the wind", power, -0.35, -0.2)
	if read["highestD"]-read["hottestD"] < 2 {
		t.Error("the high sun does not look over the side net")
	}
}

// Two arms to four. Quadrilateral over bilateral cordons bore 2 tons an acre more (4.5 t/ha) over four years at
// Oakville, with fewer leaves about the fruit and more light on it; rows at 8 instead of 12 ft 35 % more; 60 instead of 24 buds 11.0 instead of 6.6 tons (American Vineyard
// Foundation); noon shade of 60 and 75 % went with crop coefficients of 0.9 and 1.3 (Williams & Ayars 2005).
func TestFourArms(t *testing.T) {
	t.Parallel()
	read := ran(t, "four-arms", "")
	bearsOut(t, "four-arms", read, "twice")
	within(t, "four arms at Oakville, in the range told [t/ha]", read["cropNow"]+4.5, read["lowSame"], read["highSame"])
	within(t, "closer rows at Oakville, likewise", 1.35*read["cropNow"], read["lowRows"], read["highRows"])
	within(t, "more buds at Oakville, likewise", *lessonOf(t, "four-arms").Values["oakville"].Given*read["cropNow"], read["lowTwice"], read["highTwice"])
	within(t, "Oakville's ratio", *lessonOf(t, "four-arms").Values["oakville"].Given, 11.0/6.6-0.01, 11.0/6.6+0.01)
	if read["layersB"] >= read["layersA"] || read["layersC"] <= 1.5*read["layersB"] || read["lightB"] <= read["lightA"] || read["lightC"] >= read["lightA"] {
		t.Errorf("layers %.1f, %.1f, %.1f; light %.1f, %.1f, %.1f MJ/m²", read["layersA"], read["layersB"], read["layersC"], read["lightA"], read["lightB"], read["lightC"])
	}
	within(t, "crop coefficient at 60 % shade", 0.6*read["coefficientC"]/read["shadedC"], 0.9*0.85, 0.9*1.15)
	within(t, "crop coefficient at 75 % shade", 0.75*read["coefficientC"]/read["shadedC"], 1.3*0.85, 1.3*1.15)
	// A weak vine cannot fill four arms: then closer rows bear more.
	weak := ran(t, "four-arms", "weak")
	bearsOut(t, "four-arms", weak, "rows")
	within(t, "arms that a weak vine fills", weak["filledC"], 0.3, 0.8)
}

// The name of a form says how many arms a vine has and on how many wires they lie, so no lesson changes either.
func TestFormsOfLessonsAreWhatTheirNamesSay(t *testing.T) {
	all, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	cordons := func(o scenario.Option) (wires int) {
		for _, wire := range o.Trellis.Wires {
			if wire.Role == scenario.Fruiting {
				wires++
			}
		}
		return wires
	}
	for _, l := range all {
		sets := append(slices.Collect(maps.Values(l.Runs)), nil)
		for _, try := range l.Tries {
			sets = append(sets, try.Set)
		}
		for _, set := range sets {
			s, err := l.Document(set)
			if err != nil {
				t.Fatal(err)
			}
			for i, o := range s.Options {
				form, _ := scenario.FormByKey(o.Form)
				of := form.Option
				if o.Training.ArmsPerVine != of.Training.ArmsPerVine || cordons(o) != cordons(of) {
					t.Errorf("%s, option %d: %d arms on %d wires are no %s", l.Key, i, o.Training.ArmsPerVine, cordons(o), form.Name)
				}
			}
		}
	}
}

// Heat flows. The absorbed sun is alike on both sides (mirror image); berries in the sun stood 1.4 to 7.3 K over the
// air (Millar 1972), the most exposed skins up to about 12 to 13 K (Oxford Companion to Wine 2006; Spayd 2002, from
// memory); across one berry at most 10.7 K (Millar 1972).
func TestHeatFlows(t *testing.T) {
	t.Parallel()
	read := ran(t, "heat-flows", "")
	bearsOut(t, "heat-flows", read, "both")
	for _, side := range []string{"East", "West"} {
		within(t, side+": most exposed berry over air [K]", read["meanRise"+side], 1.4, 7.3+1.5)
		within(t, side+": its skin over air [K]", read["skin"+side]-read["air"+side], 8, 13)
		within(t, side+": skin that faces the sun over the whole berry [K]", read["skin"+side]-read["balance"+side], 0, 10.7)
		within(t, side+": what is carried away over what is left to carry", read["exchange"+side]*read["meanRise"+side]/read["inflow"+side], 0.999, 1.001)
	}
	within(t, "sun taken in, west over east", read["sunWest"]/read["sunEast"], 0.97, 1.03)
	within(t, "air, west over east [K]", read["airDifference"], 10.3-1.5, 10.3+1.5)
}
