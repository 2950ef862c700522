package sim

import "rowlight/sim/heat"

// near is what surrounds the fruit at an instant.
type near struct {
	wind   heat.WindProfile
	air    heat.AirProfile
	fruit  heat.Around      // air at the bunches
	leaves heat.LeafBalance // of the mean leaf
	leaf   float64          // longwave that leaves send out [W/m²]
	floor  []float64        // longwave that each strip of floor sends out [W/m²]
	skin   heat.Evaporation // by the air at the bunches
	long   float64          // longwave of a black body at its temperature [W/m²]
}

// stepNear carries the floor from the last instant to instant k and gives the surroundings of the fruit.
func (d *optionDay) stepNear(k int, dt_s float64) near {
	at := &d.course.Instants[k]
	wind := heat.NewWindProfile(at.Wind_ms, at.WindFrom_deg, d.option.Rows.Azimuth_deg, d.stand.measures.Top_m, d.leafArea)
	air := heat.Around{Air_C: at.Air_C, Dew_C: at.Dew_C, Pressure_Pa: d.pressure, Wind_ms: wind.At(heat.FloorWind_m)}
	n := near{wind: wind, floor: d.floor.Upward_Wm2}
	n.leaves = d.meanLeaf(k, wind, air)
	n.leaf = heat.Emitted(n.leaves.Temperature_C)
	for strip, share := range d.day.stripSky {
		d.received[strip] = share*at.Longwave_Wm2 + (1-share)*n.leaf
	}
	if dt_s > 0 {
		d.floor.Step(d.day.scatters[k].strips, d.received, air, dt_s)
	}
	height := d.stand.measures.FruitHeight_m
	air.Wind_ms = wind.At(height)
	n.air = heat.NewAirProfile(air, d.floor.Flux.Sensible, wind.FrictionVelocity_ms)
	air.Air_C = n.air.At(height)
	n.fruit, n.skin, n.long = air, heat.NewEvaporation(air), heat.Emitted(air.Air_C)
	return n
}

// meanLeaf is the balance of the mean leaf of the canopy: it absorbs its share of the sunlight, sees the sky and
// the floor as far as their light reaches it, and otherwise leaves as warm as itself.
func (d *optionDay) meanLeaf(k int, wind heat.WindProfile, air heat.Around) heat.LeafBalance {
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
		long = d.leaf.Emissivity * (d.day.openness*(at.Longwave_Wm2-full) + floor)
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
