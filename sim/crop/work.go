package crop

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// workSpread is how far crews differ in pace either way, assumption.
const workSpread = 0.4

// Work is the work by hand on a hectare in which forms differ: spurs or canes cut, shoots put in place or taken out,
// leaves pulled, by the times of the scenario. Picking, sprays, mowing and repairs are not in it.
func Work(s scenario.Scenario, o scenario.Option) result.OptionWork {
	v := vineOf(o)
	spurs, canes := wood(o, v)
	perHa := v.perHa / 3600
	w := result.OptionWork{
		Prune_h: (spurs*s.Crop.SpurTime_s + canes*s.Crop.CaneTime_s) * perHa * (1 - o.Training.MissingVines),
	}
	w.Shoots_h = v.nodes * v.bearing * touched(o) * s.Crop.ShootTime_s * perHa
	w.Leaves_h = (o.Leaves.RemovedMorning + o.Leaves.RemovedAfternoon) * v.canopy_m * s.Crop.LeafTime_s * perHa
	w.Total = spread(w.Prune_h+w.Shoots_h+w.Leaves_h, workSpread)
	return w
}

// touched is how often hands go to a shoot: into catch wires or under a roof, combed or turned down, thinned. Over a
// foliage wire shoots fall by themselves.
func touched(o scenario.Option) float64 {
	times := o.Shoots.CombedDown + o.Shoots.Thinned/(1-o.Shoots.Thinned)
	for _, wire := range o.Trellis.Wires {
		if wire.Role == scenario.Catch || wire.Role == scenario.Roof {
			return times + math.Max(o.Shoots.Positioning-o.Shoots.CombedDown, 0)
		}
	}
	return times + o.Shoots.TurnedDown
}
