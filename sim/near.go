package sim

import (
	"rowlight/sim/heat"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// near is what surrounds the fruit at an instant.
type near struct {
	wind   heat.WindProfile
	air    heat.AirProfile
	fruit  [2]heat.Around   // air at the bunches of either side
	leaves heat.LeafBalance // of the mean leaf
	leaf   float64          // longwave that leaves send out [W/m²]
	floor  []float64        // longwave that each strip of floor sends out [W/m²]
	skin   heat.Evaporation // by the air at the bunches
	long   float64          // longwave of a black body at its temperature [W/m²]
	sky    float64          // longwave that comes down on the rows [W/m²]

	threads    [2]float64 // temperature of the nets about the fruit of either side [°C]
	overhead_C float64    // temperature of the net over all rows
	mist       heat.Mist  // while misters run
	dry_C      float64    // air at the bunches as it would be without mist
	wetBulb_C  float64    // its wet bulb, while misters run
}

// stepNear carries the floor from the last instant to instant k and gives the surroundings of the fruit.
func (d *optionDay) stepNear(k int, dt_s float64) near {
	at := &d.course.Instants[k]
	wind := heat.NewWindProfile(at.Wind_ms*d.slowed.roof, at.WindFrom_deg, d.option.Rows.Azimuth_deg, d.stand.measures.Top_m, d.leafArea)
	air := heat.Around{Air_C: at.Air_C, Dew_C: at.Dew_C, Pressure_Pa: d.pressure, Wind_ms: wind.At(heat.FloorWind_m)}
	n := near{wind: wind, floor: d.floor.Upward_Wm2}
	if n.sky = at.Longwave_Wm2; d.roof.there() {
		open := heat.Around{Air_C: at.Air_C, Pressure_Pa: d.pressure, Wind_ms: at.Wind_ms}
		n.sky, n.overhead_C = d.roof.longwave(skyInRow(at, d.option.Rows), at.Longwave_Wm2, open)
	}
	n.leaves = d.meanLeaf(k, n.sky, wind, air)
	n.leaf = heat.Emitted(n.leaves.Temperature_C)
	for strip, share := range d.day.stripSky {
		d.received[strip] = share*n.sky + (1-share)*n.leaf
	}
	if dt_s > 0 {
		d.floor.Step(d.day.scatters[k].strips, d.received, air, dt_s)
	}
	height := d.stand.measures.FruitHeight_m
	air.Wind_ms = wind.At(height)
	n.mist = mistAt(d.option.Shade, at)
	air = n.airAt(height, air, d.floor.Flux.Sensible)
	n.skin, n.long = heat.NewEvaporation(air), heat.Emitted(air.Air_C)
	for side, left := range d.slowed.side {
		n.fruit[side] = air
		if left < 1 {
			n.fruit[side].Wind_ms = max(air.Wind_ms*left, heat.StillWind_ms)
		}
	}
	if len(d.nets) > 0 {
		n.threads = d.threads(k, n.sky, &n.fruit)
	}
	return n
}

// airAt is the air at a height over a floor that gives it sensible heat [W/m²], with what mist takes out of it.
func (n *near) airAt(height_m float64, air heat.Around, sensible_Wm2 float64) heat.Around {
	n.air = heat.NewAirProfile(air, sensible_Wm2, n.wind.FrictionVelocity_ms)
	n.dry_C = n.air.At(height_m)
	if n.mist.Air > 0 {
		n.air = heat.NewAirProfile(air, sensible_Wm2-n.mist.Air, n.wind.FrictionVelocity_ms)
		air.Air_C = n.dry_C
		n.wetBulb_C = heat.WetBulb_C(air)
		return heat.Moistened(air, n.air.At(height_m))
	}
	air.Air_C = n.dry_C
	return air
}

// mistAt is the mist of an instant: misters run within their hours while the air is warm enough.
func mistAt(s scenario.Shade, at *weather.Instant) heat.Mist {
	if s.MistRate_mmh <= 0 || at.Air_C <= s.MistAbove_C || at.Hour_h < s.MistFrom_h || at.Hour_h > s.MistTo_h {
		return heat.Mist{}
	}
	return heat.MistOf(s.MistRate_mmh)
}

// meanLeaf is the balance of the mean leaf of the canopy: it absorbs its share of the sunlight, sees the sky and
// the floor as far as their light reaches it, and otherwise leaves as warm as itself.
func (d *optionDay) meanLeaf(k int, sky_Wm2 float64, wind heat.WindProfile, air heat.Around) heat.LeafBalance {
	at := &d.course.Instants[k]
	air.Wind_ms = wind.At((d.stand.measures.Bottom_m + d.stand.measures.Top_m) / 2)
	long, full := 0.0, heat.Emitted(at.Air_C)
	if d.leafArea > 0 {
		floor := 0.0
		for strip, upward := range d.floor.Upward_Wm2 {
			// What leaves keep of the sky from a strip they receive of its longwave (reciprocity).
			floor += (1 - d.day.stripSky[strip]) * (upward - full)
		}
		floor /= float64(d.light.Strips) * d.leafArea
		long = d.leaf.Emissivity * (d.day.openness*(sky_Wm2-full) + floor)
	}
	return d.leaf.Balance(d.day.scatters[k].leafTaken, long, air)
}

// settle lets the floor live through the day before, so that the night it starts from is that of a
// run of such days. Its deep temperature follows the mean of the surface.
func (d *optionDay) settle(pace func() error) error {
	for range settleDays {
		for k := 1; k < len(d.course.Instants); k++ {
			if err := pace(); err != nil {
				return err
			}
			d.stepNear(k, d.step_min*60)
		}
		d.floor.Settle()
	}
	return nil
}

// settleDays is how often the floor lives through the day before it counts: after two days the
// surface repeats within 0.1 K.
const settleDays = 2
