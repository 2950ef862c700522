package main

import (
	"bytes"
	"strings"
	"testing"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// What is wrong with a design stands under its verdict, in the words of the catalogue; a canopy without alley or fruit
// has dashes, not noughts.
func TestNoticesAndCanopyAreToldInTheTable(t *testing.T) {
	day := demoDay()
	day.Options = append([]result.Option(nil), day.Options...)
	day.Options[1].Notices = []scenario.Fault{{Code: "notice.arms-low", Path: "/options/1/trellis/wires", Values: map[string]any{
		"height": 0.25, "min": 0.3, "unit": "m"}}}
	day.Options[1].Canopy.HeightToGap = 0
	var text bytes.Buffer
	if err := writeDayTable(&text, day, words.US, true); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"\n   options[1].trellis.wires: the arms lie 0.82 ft above the ground", "ft²/acre", "bunches outside", "leaf:fruit",
	} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("the table lacks %q:\n%s", want, text.String())
		}
	}
	if strings.Count(text.String(), "–") != 1 {
		t.Errorf("the alley that is missing is no dash:\n%s", text.String())
	}
}
