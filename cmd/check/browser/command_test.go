//go:build browser

package browser

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"rowlight/sim/result"
)

// agreement is how near the page and the command line must be, relative to 1 or the value itself.
// Both run the same code; exponentials differ by an ulp between the processor and WebAssembly.
const agreement = 1e-9

// firstScenario is the document that the page opens with, as a file.
func firstScenario() string {
	return filepath.Join(bench.root, "testdata", "scenarios", "stony-bend.json")
}

// rowlightDay runs the command line on a scenario file, once for each document and flags.
func rowlightDay(t *testing.T, file string, flags ...string) result.Day {
	t.Helper()
	document, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	question := strings.Join(append([]string{string(document)}, flags...), "\x00")
	if day, known := bench.days[question]; known {
		return day
	}
	var out, faults bytes.Buffer
	cmd := exec.Command(bench.rowlight, append([]string{"day", file, "--format", "json"}, flags...)...)
	cmd.Stdout, cmd.Stderr = &out, &faults
	if err := cmd.Run(); err != nil {
		t.Fatalf("rowlight day %s: %v\n%s", file, err, faults.String())
	}
	var day result.Day
	if err := json.Unmarshal(out.Bytes(), &day); err != nil {
		t.Fatal(err)
	}
	bench.days[question] = day
	return day
}

// changedScenario writes the first scenario with other options to a file.
func changedScenario(t *testing.T, options ...map[string]any) string {
	t.Helper()
	return changedDocument(t, func(document map[string]any) { document["options"] = options })
}

// changedDocument writes the first scenario with a change to a file.
func changedDocument(t *testing.T, change func(document map[string]any)) string {
	t.Helper()
	text, err := os.ReadFile(firstScenario())
	if err != nil {
		t.Fatal(err)
	}
	var document map[string]any
	if err := json.Unmarshal(text, &document); err != nil {
		t.Fatal(err)
	}
	change(document)
	if text, err = json.Marshal(document); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "scenario.json")
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// sideMarks are how the page marks the sides, in the order of the results.
var sideMarks = [2]string{"left", "right"}

// agrees compares every number of the page at the chosen instant with the command line.
func (p *tab) agrees(day result.Day) {
	p.t.Helper()
	instant := p.instant()
	shown := p.numbers()
	compared := 0
	for o, option := range day.Options {
		for s, side := range option.Sides {
			mark := fmt.Sprintf("option-%c-%s-", 'A'+o, sideMarks[s])
			for name, want := range map[string]float64{
				"lit":        side.Steps.LitShare[instant],
				"mean":       side.Steps.Mean_C[instant],
				"hottest":    side.Steps.Hottest_C[instant],
				"dayHottest": side.Summary.Hottest_C,
				"overWatch":  side.Summary.OverWatch_h,
				"overHot":    side.Summary.OverHot_h,
				"overBurn":   side.Summary.OverBurn_h,
			} {
				got, present := shown[mark+name]
				if !present {
					p.t.Errorf("the page shows no %s", mark+name)
					continue
				}
				if math.Abs(got-want) > agreement*math.Max(1, math.Abs(want)) {
					p.t.Errorf("%s at %.2f h: the page shows %.15g, rowlight day says %.15g", mark+name, day.Hour[instant], got, want)
				}
				compared++
			}
		}
	}
	if compared == 0 {
		p.t.Error("nothing was compared")
	}
}

// ranged waits for the ranges and compares them with the command line.
func (p *tab) ranged(day result.Day) {
	p.t.Helper()
	p.until(fmt.Sprintf(`document.querySelector("[data-testid=odds]")?.dataset.draws === "%d"`, day.Ranges.Draws))
	for o, option := range day.Options {
		side := 0
		if option.Sides[1].Summary.Hottest_C > option.Sides[0].Summary.Hottest_C {
			side = 1
		}
		band := day.Ranges.Options[o].Sides[side].Hottest_C
		for end, want := range map[string]float64{"low": band.Low, "high": band.High} {
			mark := hook(fmt.Sprintf("option-%c-hottest-range", 'A'+o))
			got := eval[float64](p, fmt.Sprintf(`Number(%s.dataset.%s)`, mark, end))
			if math.Abs(got-want) > agreement*math.Abs(want) {
				p.t.Errorf("option %c: the page shows the %s end of hottest fruit at %.12g °C, rowlight day says %.12g", 'A'+o, end, got, want)
			}
		}
	}
}

// instant is the place of the hour slider, in steps from midnight.
func (p *tab) instant() int {
	p.t.Helper()
	return eval[int](p, `Number(`+hook("hour-slider")+`.value)`)
}
