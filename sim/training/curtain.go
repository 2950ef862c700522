package training

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/scenario"
)

// How fruiting wires make curtains and tiers.
const (
	curtainsApart = 0.8  // wires farther apart than this across the row carry curtains that are probed one by one [m]
	tiersApart    = 0.15 // wires farther apart than this in height carry fruit zones of their own [m]
	zoneShare     = 0.9  // a fruit zone reaches from the tips to the shoulders of this share of its bunches
)

// FruitZone is the range of heights of the bunches of the fruiting wires of about one height, or of all bunches where
// there is no such wire.
type FruitZone struct {
	Wire_m          float64 // height of the lowest of these wires, 0 without a wire
	Bottom_m, Top_m float64 // of nine bunches in ten
	Mean_m          float64 // of their middles
	bunches         []int32
}

// FruitZones lists the fruit zones from below. Zones without bunches are left out.
func (s *Stand) FruitZones() []FruitZone {
	heights := []float64{0}
	for _, wire := range s.fruiting() {
		heights = append(heights, wire.Z)
	}
	if len(heights) > 1 {
		heights = heights[1:]
	}
	slices.Sort(heights)
	var zones []FruitZone
	for i, z := range heights {
		if i == 0 || z-heights[i-1] > tiersApart {
			zones = append(zones, FruitZone{Wire_m: z})
		}
	}
	for i := range s.Bunches {
		z := s.wireOf(s.Bunches[i].Shoot).Z
		k := len(zones) - 1
		for k > 0 && zones[k].Wire_m > z {
			k--
		}
		zones[k].bunches = append(zones[k].bunches, int32(i))
	}
	for i := range zones {
		s.measureZone(&zones[i])
	}
	return slices.DeleteFunc(zones, func(z FruitZone) bool { return len(z.bunches) == 0 })
}

func (s *Stand) measureZone(zone *FruitZone) {
	if len(zone.bunches) == 0 {
		return
	}
	var tips, shoulders []float64
	for _, i := range zone.bunches {
		b := &s.Bunches[i]
		zone.Mean_m += b.Centre.Z() / float64(len(zone.bunches))
		tips = append(tips, b.Centre.Z()-b.Length/2)
		shoulders = append(shoulders, b.Centre.Z()+b.Length/2)
	}
	slices.Sort(tips)
	slices.Sort(shoulders)
	last := float64(len(tips) - 1)
	zone.Bottom_m, zone.Top_m = tips[int((1-zoneShare)/2*last)], shoulders[int((1+zoneShare)/2*last)]
}

// curtain is what stands between two planes along the row: all of a row, or one of its curtains.
type curtain struct{ left, right float64 } // [m]

// curtains parts the row half way between fruiting wires that lie far apart.
func (s *Stand) curtains() []curtain { return s.curtainsOn(curtainsApart) }

// curtainsOn parts the row half way between fruiting wires that lie at least so far apart [m].
func (s *Stand) curtainsOn(apart float64) []curtain {
	wires := s.fruiting()
	slices.SortStableFunc(wires, func(a, b Strand) int { return cmp.Compare(a.X, b.X) })
	left := math.Inf(-1)
	var parts []curtain
	for i := 1; i < len(wires); i++ {
		if wires[i].X-wires[i-1].X >= apart {
			middle := (wires[i].X + wires[i-1].X) / 2
			parts = append(parts, curtain{left, middle})
			left = middle
		}
	}
	return append(parts, curtain{left, math.Inf(1)})
}

// fruiting lists the wires that carry arms.
func (s *Stand) fruiting() []Strand {
	var wires []Strand
	for _, wire := range s.Wires {
		if wire.Role == string(scenario.Fruiting) {
			wires = append(wires, wire)
		}
	}
	return wires
}

// wireOf is the fruiting wire nearest to the base of a shoot; the zero wire where there is none.
func (s *Stand) wireOf(shoot int32) Strand {
	base := s.Shoots[shoot].Points[0]
	best, nearest := Strand{}, math.Inf(1)
	for _, wire := range s.Wires {
		if distance := math.Hypot(base.X()-wire.X, base.Z()-wire.Z); wire.Role == string(scenario.Fruiting) && distance < nearest {
			best, nearest = wire, distance
		}
	}
	return best
}
