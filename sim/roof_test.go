//go:build !js

package sim

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/floats"

	"rowlight/sim/heat"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/spread"
	"rowlight/sim/weather"
)

// What falls on a net over all rows goes through it, on, back or into its threads: to the last digit nothing is lost and
// nothing made, for any colour and sun.
func TestRoofKeepsAccountOfSunlight(t *testing.T) {
	for _, colour := range []scenario.ClothColour{scenario.BlackCloth, scenario.GreenCloth, scenario.WhiteCloth, scenario.PearlCloth} {
		over := roofOf(scenario.Option{Shade: scenario.Shade{OverheadShade: 0.35, OverheadColour: colour}})
		for elevation := 2.0; elevation < 90; elevation += 8 {
			sin, cos := math.Sincos(mgl64.DegToRad(elevation))
			open := light.Sky{Sun: mgl64.Vec3{0.6 * cos, 0.8 * cos, sin}, Beam: 870, Diffuse: 110}
			under := over.under(open)
			falls := open.Beam*sin + open.Diffuse
			through := under.Beam*sin + under.Diffuse
			taken := over.caught(open) * over.cloth.ThreadArea()
			stopped := falls - under.Beam*sin - over.direct*open.Diffuse
			back := (1 - over.cloth.Forward - over.cloth.Absorbed) * stopped
			if math.Abs(falls-through-taken-back) > 1e-9*falls || back < 0 || through >= falls {
				t.Errorf("%s at %.0f°: of %.2f W/m² %.2f go through, %.2f are taken in, %.2f go back", colour, elevation, falls, through, taken, back)
			}
		}
	}
}

// Under a roof and with a film on the leaves too all sunlight is accounted for, to 0.5 %: what falls on the roof is what it
// takes in and sends back, and what leaves, floor and the air between take of the rest.
func TestSunlightUnderARoofIsAccountedFor(t *testing.T) {
	s := scenario.Default()
	s.Options = s.Options[:1]
	s.Options[0].Shade = scenario.Shade{OverheadShade: 0.4, OverheadColour: scenario.WhiteCloth, Film: scenario.FullFilm}
	stand, exchange := exchanged(t, s)
	over := roofOf(s.Options[0])
	course, err := weather.Course(s, []float64{7, 10, 13, 17})
	if err != nil {
		t.Fatal(err)
	}
	for i := range course.Instants {
		open := skyInRow(&course.Instants[i], s.Options[0].Rows)
		under := over.under(open)
		stopped := open.Beam*open.Sun[2] + open.Diffuse - under.Beam*open.Sun[2] - over.direct*open.Diffuse
		found := stopped * (1 - over.cloth.Forward) * stand.RowSpacing
		out := exchange.share(under, energyStrips)
		found += out.leafTaken*exchange.leafArea + (floats.Sum(out.strips)-floats.Sum(out.leaving))*stand.RowSpacing/energyStrips
		for k := range exchange.solutions {
			found += exchange.solutions[k].Up
		}
		falls := stand.RowSpacing * (open.Beam*open.Sun[2] + open.Diffuse)
		if falls < 100 || math.Abs(found/falls-1) > 0.005 {
			t.Errorf("%.0f:00: of %.1f W/m, %.1f is found", course.Instants[i].Hour_h, falls, found)
		}
	}
}

// Under a sky as warm as the air, at night, a roof changes no longwave; under a colder sky it adds some and its threads
// are a little colder than the air.
func TestRoofAndLongwave(t *testing.T) {
	over := roofOf(scenario.Option{Shade: scenario.Shade{OverheadShade: 0.5, OverheadColour: scenario.BlackCloth}})
	air := heat.Around{Air_C: 22, Wind_ms: 1}
	night := light.Sky{Sun: mgl64.Vec3{0, 0, -1}}
	if long, threads := over.longwave(night, heat.Emitted(22), air); math.Abs(long-heat.Emitted(22)) > 1e-9 || math.Abs(threads-22) > 1e-9 {
		t.Errorf("furnace: %.4f W/m² and threads at %.4f °C", long, threads)
	}
	if long, threads := over.longwave(night, 320, air); long <= 320 || long >= heat.Emitted(22) || threads >= 22 || threads < 20 {
		t.Errorf("under 320 W/m²: %.1f W/m² and threads at %.2f °C", long, threads)
	}
	day := light.Sky{Sun: mgl64.Vec3{0, 0, 1}, Beam: 900, Diffuse: 100}
	if _, threads := over.longwave(day, 380, air); threads < 22.3 || threads > 27 {
		t.Errorf("black threads in full sun stand at %.2f °C in air of 22 °C", threads)
	}
}

// Draws see the same light behind nets as the run: at the inputs as they are, every face gets what the model and its
// scattering give it.
func TestDrawsSeeNetsAsTheRunDoes(t *testing.T) {
	l := single()
	s, o := l.scenario, l.scenario.Options[0]
	o.Shade = scenario.Shade{NetSides: scenario.BothSides, NetShade: 0.5, NetColour: scenario.WhiteCloth, NetDistance_m: 0.25,
		OverheadShade: 0.3, OverheadColour: scenario.WhiteCloth, OverheadHeight_m: 4, Film: scenario.FullFilm}
	s.Options = []scenario.Option{o}
	c, err := newCoarse(s, spread.Inputs(), nil, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	thin, err := l.engine.thin(s, o, spread.Inputs(), c, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	model, over := thin.between.At(1), roofOf(o)
	exchange, err := thicker(s, o, thin.stand, model, 1, unhindered)
	if err != nil {
		t.Fatal(err)
	}
	day := thin.daylight(c.usual, c.inputs, model, thin.shade)
	for _, k := range []int{8 * 4, 12 * 4, 16 * 4} {
		var at light.Instant
		sky := over.sky(&c.usual.Instants[k], o.Rows)
		model.At(sky, &at)
		exchange.add(model, sky, &at)
		for f := range model.Faces {
			got := &day.instants[k]
			if math.Abs(got.Short[f].Mean-at.Short[f].Mean) > 1e-6 || got.Share(f) != at.Share(f) || got.Lit[f] != at.Lit[f] {
				t.Fatalf("%.1f h face %d: draws see %.4f W/m² and %.4f of the beam, the run %.4f and %.4f", c.hours[k], f,
					got.Short[f].Mean, got.Share(f), at.Short[f].Mean, at.Share(f))
			}
		}
	}
}
