package frost

import (
	"math"
	"slices"

	"rowlight/sim/result"
	"rowlight/sim/training"
)

// raise_m is the rise of a cordon whose worth is told: about a foot.
const raise_m = 0.3

// chartTop_m and chartStep_m lay out the heights at which the air of the night is told.
const chartTop_m, chartStep_m = 3.0, 0.05

// Told is the night as a result: its numbers and its air by height.
func Told(n Night, c Critical) result.Night {
	told := result.Night{
		Lowest_C: n.Lowest_C, Screen_m: Screen_m, Wind_ms: n.Wind_ms,
		Inversion: estimate(n.Stillness*n.Usual_K, n.Stillness*Weakest_K, n.Stillness*Strongest_K),
		Kill10_C:  c.Kill10_C, Kill50_C: c.Kill50_C, Kill90_C: c.Kill90_C, KillSource: c.Source,
	}
	for step := range int(math.Round((chartTop_m-lowest_m)/chartStep_m)) + 1 {
		z := lowest_m + float64(step)*chartStep_m
		told.Height_m = append(told.Height_m, z)
		told.Air_C = append(told.Air_C, n.At(z, n.Usual_K))
		told.Weak_C = append(told.Weak_C, n.At(z, Weakest_K))
		told.Strong_C = append(told.Strong_C, n.At(z, Strongest_K))
	}
	return told
}

// Buds are the heights of the buds of a stand, from below [m]: where its shoots leave the wood.
func Buds(stand *training.Stand) []float64 {
	var heights []float64
	for _, shoot := range stand.Shoots {
		if len(shoot.Points) > 0 {
			heights = append(heights, shoot.Points[0].Z())
		}
	}
	slices.Sort(heights)
	return heights
}

// Of is what the night does to the buds of a stand. A stand without shoots has no buds: all numbers are 0.
func Of(stand *training.Stand, n Night, c Critical) result.OptionFrost {
	buds := Buds(stand)
	if len(buds) == 0 {
		return result.OptionFrost{}
	}
	f := result.OptionFrost{
		Lowest_m: buds[len(buds)/20], Buds_m: mean(buds), Highest_m: buds[len(buds)-1-len(buds)/20], Raise_m: raise_m,
	}
	f.Air = n.Between(f.Buds_m)
	f.Margin = result.Estimate{Low: f.Air.Low - c.Kill10_C, Value: f.Air.Value - c.Kill10_C, High: f.Air.High - c.Kill10_C}
	killed := func(inversion_K float64) float64 {
		sum := 0.0
		for _, z := range buds {
			sum += c.Killed(n.At(z, inversion_K))
		}
		return sum / float64(len(buds))
	}
	f.Killed = estimate(killed(n.Usual_K), killed(Weakest_K), killed(Strongest_K))
	bought := func(inversion_K float64) float64 {
		return n.At(f.Buds_m+raise_m, inversion_K) - n.At(f.Buds_m, inversion_K)
	}
	f.Raised = estimate(bought(n.Usual_K), bought(Weakest_K), bought(Strongest_K))
	f.Verdict = verdict(f, n)
	return f
}

// verdict says what the night does to the buds of an option, and what a higher cordon would buy.
func verdict(f result.OptionFrost, n Night) result.Sentence {
	code := "frost.near"
	switch {
	case f.Margin.Low >= 0:
		code = "frost.safe"
	case f.Margin.High < 0:
		code = "frost.kills"
	}
	if n.Stillness == 0 {
		code += "-stirred"
	}
	return result.Sentence{Code: code, Values: map[string]float64{
		"buds": f.Buds_m, "air": f.Air.Value, "killed": f.Killed.Value, "killedLow": f.Killed.Low, "killedHigh": f.Killed.High,
		"raise": f.Raise_m, "raisedLow": f.Raised.Low, "raisedHigh": f.Raised.High,
	}}
}

func mean(values []float64) float64 {
	sum := 0.0
	for _, value := range values {
		sum += value
	}
	return sum / float64(len(values))
}
