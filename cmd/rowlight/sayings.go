package main

import (
	"fmt"
	"slices"
	"strings"

	"rowlight/sim/scenario"
)

// wireWords are what wires of a role are called. Of a roof only the outermost are spoken of, so they are not counted.
var wireWords = map[scenario.WireRole]string{
	scenario.Fruiting: "fruiting wire",
	scenario.Foliage:  "foliage wire",
	scenario.Catch:    "catch wire",
	scenario.Tie:      "tie wire",
	scenario.Roof:     "roof wires",
}

// netWords are what nets are called.
var netWords = map[string]string{"shade": "shade net", "bird": "bird net", "overhead": "net over the rows"}

// marksWords say what a sheet of cross-sections shows besides wires.
const marksWords = "Grey: post and crossarms. Tinted band: fruit. Dashed ticks: half way to the next rows, which are drawn pale where they reach in."

// saidInEnglish is a saying of a drawing (render.Say) in words, itself where its code is unknown.
func saidInEnglish(saying string) string {
	code, rest, _ := strings.Cut(saying, " ")
	about := strings.Fields(rest)
	switch code {
	case "wires":
		return about[0] + " " + about[1] + " " + wiresInEnglish(about[2:])
	case "fruit":
		return fmt.Sprintf("%s–%s %s fruit", about[0], about[1], about[2])
	case "spacing":
		return fmt.Sprintf("rows %s %s, vines %s %s", about[0], about[2], about[1], about[2])
	case "sign":
		if role := scenario.WireRole(rest); role != scenario.Foliage {
			return wireWords[role]
		}
		return "foliage, catch wires"
	case "marks":
		return marksWords
	case "side":
		return rest + " side"
	case "row":
		return rest + " side of the row"
	case "net":
		return netWords[rest]
	case "hour":
		return rest + ":00"
	case "length", "point":
		return rest
	}
	return saying // as "looking east"
}

// wiresInEnglish lists roles and how many wires each has, as they follow one another.
func wiresInEnglish(counted []string) string {
	var words []string
	for pair := range slices.Chunk(counted, 2) {
		role := scenario.WireRole(pair[0])
		word := wireWords[role]
		if pair[1] != "1" && role != scenario.Roof {
			word = pair[1] + " × " + word
		}
		words = append(words, word)
	}
	return strings.Join(words, ", ")
}
