package sim

import (
	"fmt"
	"testing"

	"rowlight/sim/result"
)

// Of forty days the four hottest lie above nine in ten: three of them in a row are a wave, one alone is none.
func TestHeatWavesAreRunsOfTheHottestDays(t *testing.T) {
	var days []result.SeasonDay
	for i := range 40 {
		days = append(days, result.SeasonDay{Date: fmt.Sprintf("day %d", i), AirMax_C: 30})
	}
	for _, hot := range []int{5, 20, 21, 22} {
		days[hot].AirMax_C = 38 + float64(hot)/10
	}
	waves := heatWaves(days)
	if len(waves) != 1 || waves[0] != (result.HeatWave{From: "day 20", To: "day 22", Days: 3, AirMax_C: 40.2}) {
		t.Errorf("%+v", waves)
	}
	if waves := heatWaves(days[18:24]); len(waves) != 0 {
		t.Errorf("a week has %+v", waves)
	}
	for i := range days {
		days[i].AirMax_C = 41 - 0.001*float64(i)
	}
	if waves := heatWaves(days); len(waves) != 0 {
		t.Errorf("one design day on forty dates has %+v", waves)
	}
}
