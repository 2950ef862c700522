// Package sunburn says what a course of berry temperature means: hours over limits, damage by
// necrosis, and browning. All its limits are assumptions that the scenario shows and the user may change.
package sunburn

import (
	"math"
	"slices"

	"rowlight/sim/scenario"
)

// Rule is the limits of a scenario with the parts that depend on the fruit.
type Rule struct {
	limits   [3]float64 // watch, hot, burn [°C]
	t50      float64    // surface temperature that kills half of the skins in 30 minutes [°C]
	doubling float64    // rise that doubles the rate of damage [K]
	from     float64    // surface temperature above which damage outruns repair [°C]
	least    float64    // surface temperature below which nothing but light counts [°C]
	repaired float64    // rate of damage at from, which repair takes off [1]
	browning float64    // sensitivity of the skin colour to browning
}

// lethalTime is the time at T50 that kills half of the skins: the exposure of the trials that the
// limit comes from (Müller et al., mobile infrared device: 30-minute LD50) [h].
const lethalTime = 0.5

// Browning is driven by light and grows with heat: white grapes browned after 5 h of sun at a berry
// temperature of 34 °C (Rustioni et al. 2014, J. Agric. Food Chem. 62:3043). The weights are assumptions.
const (
	browningFrom  = 35.0 // heat counts above it [°C]
	browningScale = 5.0  // K above that double the light-only dose many times over
	browningFloor = 0.1  // dose of one hour of direct sun at any temperature
	browningRed   = 0.4  // red skins against white or green ones
)

// NewRule takes the limits of a scenario for its fruit.
func NewRule(s scenario.Scenario) Rule {
	t50 := T50(s.Fruit, s.Limits)
	rule := Rule{
		limits:   [3]float64{s.Limits.Watch_C, s.Limits.Hot_C, s.Limits.Burn_C},
		t50:      t50,
		doubling: s.Limits.Doubling_K,
		from:     t50 - s.Limits.Tolerated_K,
		browning: 1,
	}
	rule.least = min(rule.from, slices.Min(rule.limits[:]))
	rule.repaired = math.Exp2((rule.from - rule.t50) / rule.doubling)
	if s.Fruit.Colour == scenario.Red {
		rule.browning = browningRed
	}
	return rule
}

// T50 is the surface temperature that kills half of the skins of a fruit in 30 minutes [°C]. Cultivars
// lie some way apart (Bacchus 3.2 K below Silvaner: Müller et al., mobile infrared device); fruit that
// was in the sun from its first weeks stands more, fruit uncovered on hot days less (Waber et al. 2025,
// OENO One 9357, saw up to 60 % less damage after early leaf removal). The sizes are assumptions.
func T50(fruit scenario.Fruit, limits scenario.Limits) float64 {
	t50 := limits.T50_C
	switch fruit.Skin {
	case scenario.Tender:
		t50 -= limits.Cultivar_K
	case scenario.Hardy:
		t50 += limits.Cultivar_K
	}
	switch fruit.Hardening {
	case scenario.NewlyUncovered:
		t50 -= limits.Uncovered_K
	case scenario.EarlyExposed:
		t50 += limits.Hardened_K
	}
	return t50
}

// Tally adds up the day of one bunch face. The zero value is a day that has not begun.
type Tally struct {
	Over     [3]float64 // hours over the watch, hot and burn limits
	Heat     [3]float64 // degree-hours over them [K h]
	Lit_h    float64    // hours in direct sun
	Dose     float64    // damage: 1 kills half of the skins
	Browning float64    // browning dose
}

// Step adds an interval over which the surface temperature goes straight from one value to another
// [°C], with the face in the sun or not.
func (r *Rule) Step(t *Tally, from_C, to_C float64, lit bool, hours float64) {
	low, high := from_C, to_C // not min and max: browsers would call a function for each
	if high < low {
		low, high = high, low
	}
	if high >= r.least {
		r.heat(t, low, high, hours)
	}
	if lit {
		t.Lit_h += hours
		heat := max((from_C+to_C)/2-browningFrom, 0) / browningScale
		t.Browning += hours * r.browning * (browningFloor + heat)
	}
}

// heat adds what counts above a limit, of a straight course between two temperatures.
func (r *Rule) heat(t *Tally, low, high, hours float64) {
	for k, limit := range r.limits {
		if share, over := above(low, high, limit); share > 0 {
			t.Over[k] += hours * share
			t.Heat[k] += hours * share * over
		}
	}
	t.Dose += hours / lethalTime * r.meanRate(low, high)
}

// Damaged is the probability that a skin with a dose is damaged: half at a dose of 1.
func Damaged(dose float64) float64 { return 1 - math.Exp2(-dose) }

// above is the share of a straight course between two temperatures that lies above a limit, and how far that share is
// over it in the mean [K].
func above(low, high, limit float64) (share, over float64) {
	switch {
	case low >= limit:
		return 1, (low+high)/2 - limit
	case high <= limit:
		return 0, 0
	default:
		return (high - limit) / (high - low), (high - limit) / 2
	}
}

// meanRate is the mean rate of damage over a straight course of temperature, 1 at T50. Up to the
// tolerated temperature skins repair what is done to them: berries shaded in air of 40 °C and more showed
// no damage where sunlit ones were ruined (Allegro et al. 2024, Acta Hort. 1395). That the rate then
// rises from zero, as 2^x less its value there, is an assumption.
func (r *Rule) meanRate(low, high float64) float64 {
	share, _ := above(low, high, r.from)
	if share == 0 {
		return 0
	}
	if low < r.from {
		low = r.from
	}
	return share * (r.meanPower(low, high) - r.repaired) / (1 - r.repaired)
}

// meanPower is the mean of 2^((T−T50)/doubling) over a straight course of T: (2^b − 2^a)/((b − a) ln 2).
func (r *Rule) meanPower(from_C, to_C float64) float64 {
	a, b := (from_C-r.t50)/r.doubling, (to_C-r.t50)/r.doubling
	low := math.Exp2(a)
	if step := b - a; math.Abs(step) > 1e-6 {
		return low * math.Expm1(step*math.Ln2) / (step * math.Ln2)
	}
	return low
}
