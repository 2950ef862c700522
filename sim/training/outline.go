package training

import (
	"math"
	"slices"
)

// Outline is the room that fruit and leaves of one row take up in its cross-section [m], left and right as x.
type Outline struct {
	FruitLeft, FruitRight float64 // outermost skins of nine bunches in ten
	FruitBottom, FruitTop float64 // tips and shoulders of nine bunches in ten
	Left, Right, Top      float64 // leaves: 95 % of them across, all upward; never inside the fruit
}

// Outline measures the room of a stand. That of a stand without bunches or leaves is a line at the row.
func (s *Stand) Outline() Outline {
	var left, right, tips, shoulders, across []float64
	for i := range s.Bunches {
		b := &s.Bunches[i]
		left, right = append(left, b.Centre.X()-b.Radius), append(right, b.Centre.X()+b.Radius)
		tips, shoulders = append(tips, b.Centre.Z()-b.Length/2), append(shoulders, b.Centre.Z()+b.Length/2)
	}
	for i := range s.Leaves {
		across = append(across, s.Leaves[i].Centre.X())
	}
	const fruit, leaves = (1 - zoneShare) / 2, 0.025
	o := Outline{
		FruitLeft: quantile(left, fruit), FruitRight: quantile(right, 1-fruit),
		FruitBottom: quantile(tips, fruit), FruitTop: quantile(shoulders, 1-fruit),
	}
	o.Left = math.Min(quantile(across, leaves), o.FruitLeft)
	o.Right = math.Max(quantile(across, 1-leaves), o.FruitRight)
	o.Top = math.Max(s.Top, o.FruitTop)
	return o
}

// quantile sorts values and reads off one; 0 without values.
func quantile(values []float64, share float64) float64 {
	if len(values) == 0 {
		return 0
	}
	slices.Sort(values)
	return values[int(math.Round(share*float64(len(values)-1)))]
}
