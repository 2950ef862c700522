package words_test

import (
	"strings"
	"testing"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// turned is an option with two azimuths, by the degree-hours over hot on the worse side and the light on its leaves.
func turned(heatNS, heatEW, caughtNS, caughtEW float64) result.DirectionOption {
	row := func(azimuth, heat, caught float64) result.Direction {
		d := result.Direction{Azimuth_deg: azimuth, InterceptedShare: caught}
		rows := scenario.Rows{Azimuth_deg: azimuth}
		for _, side := range scenario.Sides {
			d.Sides[side] = result.DirectionSide{Compass: scenario.Compass(rows.SideAzimuth(side)), HeatOverHot_Kh: heat * float64(2-side) / 2}
		}
		return d
	}
	return result.DirectionOption{Name: "Wall", Rows: []result.Direction{row(0, heatNS, caughtNS), row(90, heatEW, caughtEW)}}
}

func TestTradeOffNamesWhatATurnGivesAndTakes(t *testing.T) {
	s := scenario.Default()
	for code, o := range map[string]result.DirectionOption{
		"directions.cool":        turned(0, 0, 0.3, 0.3),
		"directions.alike":       turned(4, 3.8, 0.3, 0.2),
		"directions.costs-light": turned(4, 2, 0.3, 0.2),
		"directions.gains-light": turned(2, 4, 0.3, 0.2),
		"directions.moves-heat":  turned(4, 2, 0.3, 0.29),
	} {
		sentence := words.TradeOff(o, s)
		text := words.Style{}.Sentence(sentence)
		if sentence.Code != code || strings.ContainsAny(text, "{}") {
			t.Errorf("%s, want %s: %s", sentence.Code, code, text)
		}
	}
	text := words.Style{}.Sentence(words.TradeOff(turned(4, 2, 0.3, 0.2), s))
	for _, part := range []string{"36.4° north", "90° (east–west): 2.0 °C h a day", "0° (north–south): 4.0 °C h, on the west side", "20 % of it instead of 30 %"} {
		if !strings.Contains(text, part) {
			t.Errorf("%q lacks %q", text, part)
		}
	}
	if text := (words.Style{}).Sentence(words.YoursToWeigh()); !strings.Contains(text, "yours to weigh") {
		t.Error(text)
	}
}
