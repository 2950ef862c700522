package main

import (
	"encoding/json"
	"io"
	"os"
	"slices"
	"strings"
	"testing"

	"rowlight/render"
	"rowlight/sim/scenario"
)

// told is what drawings say, as page and command line put it.
func told(t *testing.T) (sayings []struct{ Saying, En string }) {
	t.Helper()
	text, err := os.ReadFile("../../web/test/sayings.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &sayings); err != nil || len(sayings) == 0 {
		t.Fatalf("%d sayings, %v", len(sayings), err)
	}
	return sayings
}

func TestSayingsInEnglish(t *testing.T) {
	for _, of := range told(t) {
		if got := saidInEnglish(of.Saying); got != of.En {
			t.Errorf("%q is said as %q, want %q", of.Saying, got, of.En)
		}
	}
	for saying, want := range map[string]string{"row west": "west side of the row", "sign tie": "tie wire", "sign foliage": "foliage, catch wires"} {
		if got := saidInEnglish(saying); got != want {
			t.Errorf("%q is said as %q, want %q", saying, got, want)
		}
	}
}

// What the cross-sections of all forms say has a code, roles and units that page and command line have words for.
func TestSayingsOfCrossSections(t *testing.T) {
	known := map[string]bool{}
	for _, of := range told(t) {
		for _, word := range strings.Fields(of.Saying) {
			known[word] = true
		}
	}
	forms, err := buildForms()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	say := func(saying string) string {
		words := strings.Fields(saying)
		if words[0] == "sign" || words[0] == "marks" { // of sheets, which the page has none of
			return saying
		}
		seen[words[0]] = true
		for _, word := range words {
			if !known[word] && !strings.ContainsAny(word[:1], "0123456789") {
				t.Errorf("%q has no words for %q", saying, word)
			}
		}
		return saidInEnglish(saying)
	}
	var sections []render.CrossSection
	for i, form := range forms {
		sections = append(sections, render.CrossSection{Title: form.Name, Stand: form.stand, Feet: i%2 > 0})
	}
	if err := render.WriteSheet(io.Discard, say, "", sections, formColumns); err != nil {
		t.Fatal(err)
	}
	for _, code := range []string{"wires", "fruit", "spacing", "length"} {
		if !seen[code] {
			t.Errorf("no drawing says %s", code)
		}
	}
	roles := []scenario.WireRole{scenario.Fruiting, scenario.Foliage, scenario.Catch, scenario.Tie, scenario.Roof}
	if slices.ContainsFunc(roles, func(role scenario.WireRole) bool { return wireWords[role] == "" || !known[string(role)] }) {
		t.Errorf("of %v some have no words", roles)
	}
}
