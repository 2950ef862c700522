package words_test

import (
	"encoding/json"
	"os"
	"regexp"
	"slices"
	"testing"

	"rowlight/sim/words"
)

// TestCataloguesAgree holds every catalogue to the codes of the English one, each with the same parameters.
func TestCataloguesAgree(t *testing.T) {
	raw, err := os.ReadFile("es.json")
	if err != nil {
		t.Fatal(err)
	}
	var spanish map[string]string
	if err := json.Unmarshal(raw, &spanish); err != nil {
		t.Fatal(err)
	}
	parameter := regexp.MustCompile(`\{[^}]+\}`)
	sorted := func(text string) []string {
		found := parameter.FindAllString(text, -1)
		slices.Sort(found)
		return found
	}
	english := catalogue(t)
	for code, text := range english {
		if !slices.Equal(sorted(spanish[code]), sorted(text)) {
			t.Errorf("%s has the parameters %v in Spanish, %v in English", code, sorted(spanish[code]), sorted(text))
		}
	}
	if len(spanish) != len(english) {
		t.Errorf("the Spanish catalogue has %d texts, the English one %d", len(spanish), len(english))
	}
	if got := words.Text("es", "word.west", nil, nil); got != "oeste" {
		t.Errorf("west is called %q in Spanish", got)
	}
}
