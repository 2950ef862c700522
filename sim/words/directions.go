package words

import (
	"math"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// A turn of the rows is worth a word where it changes the heat on the worse side by more than this share of it, and
// the light that leaves take in by more than this share; assumptions of this program.
const (
	turnHeat  = 0.15
	turnLight = 0.02
)

// YoursToWeigh says what decides on the direction of rows beside sun and heat.
func YoursToWeigh() result.Sentence { return result.Sentence{Code: "directions.yours"} }

// TradeOff says what a turn of the rows of an option gives and takes at its latitude: where the worse side has least
// and most heat over the highest limit that is passed, when that fruit stands in the sun, and what it costs in light
// on the leaves.
func TradeOff(o result.DirectionOption, s scenario.Scenario) result.Sentence {
	limit, temperature := heatLimit(o.Rows, s.Limits)
	best, worst, own := 0, 0, 0
	for i := range o.Rows {
		heat := o.Rows[i].WorstHeat_Kh(limit)
		if heat < o.Rows[best].WorstHeat_Kh(limit) {
			best = i
		}
		if heat > o.Rows[worst].WorstHeat_Kh(limit) {
			worst = i
		}
		if o.Rows[i].Azimuth_deg == o.Own_deg {
			own = i
		}
	}
	least, most := o.Rows[best], o.Rows[worst]
	values := map[string]float64{
		"latitude": math.Abs(s.Site.Latitude_deg), "limit": temperature,
		"least": least.WorstHeat_Kh(limit), "most": most.WorstHeat_Kh(limit), "ownHeat": o.Rows[own].WorstHeat_Kh(limit),
		"best": least.Azimuth_deg, "worst": most.Azimuth_deg, "own": o.Own_deg,
		"caught": least.InterceptedShare, "caughtWorst": most.InterceptedShare,
	}
	named := map[string]string{"name": o.Name, "hemisphere": hemisphere(s.Site.Latitude_deg)}
	nameRows(named, "best", least)
	nameRows(named, "worst", most)
	named["sunny"] = sideOf(least, limit).Compass
	named["burning"] = sideOf(most, limit).Compass
	return result.Sentence{Code: "directions." + turn(values), Words: named, Values: values}
}

// turn names what a turn does.
func turn(values map[string]float64) string {
	switch caught := values["caught"] - values["caughtWorst"]; {
	case values["most"] < 0.05:
		return "cool"
	case values["most"]-values["least"] < turnHeat*values["most"]:
		return "alike"
	case caught < -turnLight:
		return "costs-light"
	case caught > turnLight:
		return "gains-light"
	}
	return "moves-heat"
}

// heatLimit is the highest limit whose degree-hours reach half a kelvin hour a day at some azimuth, else the lowest.
func heatLimit(rows []result.Direction, l scenario.Limits) (limit int, temperature float64) {
	const worthIt_Kh = 0.5
	limits := [3]float64{l.Watch_C, l.Hot_C, l.Burn_C}
	for limit = 2; limit > 0; limit-- {
		for i := range rows {
			if rows[i].WorstHeat_Kh(limit) >= worthIt_Kh {
				return limit, limits[limit]
			}
		}
	}
	return 0, limits[0]
}

// sideOf is the side with more heat over a limit.
func sideOf(d result.Direction, limit int) result.DirectionSide {
	if d.Sides[0].Heat_Kh(limit) >= d.Sides[1].Heat_Kh(limit) {
		return d.Sides[0]
	}
	return d.Sides[1]
}

// nameRows names both ends of a row line.
func nameRows(named map[string]string, key string, d result.Direction) {
	named[key+"From"] = scenario.Compass(d.Azimuth_deg)
	named[key+"To"] = scenario.Compass(d.Azimuth_deg + 180)
}

func hemisphere(latitude_deg float64) string {
	if latitude_deg < 0 {
		return "south"
	}
	return "north"
}
