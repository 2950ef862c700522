package frost

import (
	"math"

	"rowlight/sim/scenario"
)

// Critical are the temperatures that kill a tenth, half and nine tenths of the buds within half an hour or so [°C].
// Wet buds freeze 2 to 6 K warmer (a Romanian growers' guide), which is not in them.
type Critical struct {
	Kill10_C, Kill50_C, Kill90_C float64
	Source                       string // code of the text that says where they are from
}

// concord are the temperatures of Concord buds that kill a tenth and nine tenths: Proebsting, Brummund & Clore, as
// Table 4.8 of FAO Frost Protection vol. 1 has them.
var concord = map[scenario.BudStage][2]float64{
	scenario.FirstSwell: {-10.6, -19.4},
	scenario.FullSwell:  {-6.1, -12.2},
	scenario.BudBurst:   {-3.9, -8.9},
	scenario.FirstLeaf:  {-2.8, -6.1},
	scenario.SecondLeaf: {-2.2, -5.6},
	scenario.ThirdLeaf:  {-2.2, -3.3},
	scenario.FourthLeaf: {-2.2, -2.8},
}

// pinot are the temperatures that kill half of the buds of Pinot noir: Gardea 1987, from memory. That of the third
// leaf lies between its neighbours; at the first swell it stands to the full swell as in Concord; both are assumptions.
var pinot = map[scenario.BudStage]float64{
	scenario.FirstSwell: -5.4,
	scenario.FullSwell:  -3.3,
	scenario.BudBurst:   -2.2,
	scenario.FirstLeaf:  -2.0,
	scenario.SecondLeaf: -1.7,
	scenario.ThirdLeaf:  -1.45,
	scenario.FourthLeaf: -1.2,
}

// Codes of the texts that say where the temperatures are from.
const (
	concordSource = "frost.buds.concord"
	pinotSource   = "frost.buds.pinot"
	ownSource     = "frost.buds.own"
)

// CriticalOf finds the critical temperatures of the buds of a scenario.
func CriticalOf(f scenario.Frost) Critical {
	ends, ok := concord[f.Stage]
	if !ok { // a scenario that was not checked
		ends = concord[scenario.FirstLeaf]
	}
	// Half way between equal shares is the middle of the logistic curve.
	middle := (ends[0] + ends[1]) / 2
	half, source := middle, concordSource
	switch {
	case f.HalfKilled_C < 0:
		half, source = f.HalfKilled_C, ownSource
	case f.Group == scenario.Vinifera:
		half, source = pinot[f.Stage], pinotSource
	}
	return Critical{half * ends[0] / middle, half, half * ends[1] / middle, source}
}

// Killed is the share of buds that a temperature kills [0–1]: the logistic curve through a tenth, half and nine tenths.
func (c Critical) Killed(air_C float64) float64 {
	width := (c.Kill10_C - c.Kill90_C) / (2 * math.Log(9))
	return 1 / (1 + math.Exp((air_C-c.Kill50_C)/width))
}
