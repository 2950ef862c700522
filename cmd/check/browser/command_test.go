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
func rowlightDay(t testing.TB, file string, flags ...string) result.Day {
	t.Helper()
	document, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	question := strings.Join(append([]string{string(document)}, flags...), "\x00")
	bench.mu.Lock()
	defer bench.mu.Unlock()
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
func changedScenario(t testing.TB, options ...map[string]any) string {
	t.Helper()
	return changedDocument(t, func(document map[string]any) { document["options"] = options })
}

// changedDocument writes the first scenario with a change to a file.
func changedDocument(t testing.TB, change func(document map[string]any)) string {
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
				"lit":             side.Steps.LitShare[instant],
				"mean":            side.Steps.Mean_C[instant],
				"hottest":         side.Steps.Hottest_C[instant],
				"dayHottest":      side.Summary.Hottest_C,
				"overWatch":       side.Summary.HottestOverWatch_h,
				"overHot":         side.Summary.HottestOverHot_h,
				"overBurn":        side.Summary.HottestOverBurn_h,
				"dayHottest-mean": side.Summary.MeanMax_C,
				"overBurn-mean":   side.Summary.OverBurn_h,
				"atRisk":          side.Summary.AtRisk,
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

// ranged waits for the first ranges and compares them with the command line.
func (p *tab) ranged(file string) {
	p.t.Helper()
	const odds = `document.querySelector("[data-testid=odds]")`
	p.until(`Number(` + odds + `?.dataset.draws) > 0`)
	type ends struct{ Draws, Low, High float64 }
	shown := eval[[]ends](p, `[..."ABCD"].map((letter) => {
		const range = document.querySelector('[data-testid="option-' + letter + '-hottest-range"]');
		return { Draws: Number(`+odds+`.dataset.draws), Low: Number(range?.dataset.low), High: Number(range?.dataset.high) };
	})`)
	day := rowlightDay(p.t, file, "--ranges", "--draws", fmt.Sprint(shown[0].Draws))
	for o, option := range day.Options {
		side := 0
		if option.Sides[1].Summary.Hottest_C > option.Sides[0].Summary.Hottest_C {
			side = 1
		}
		band := day.Ranges.Options[o].Sides[side].Hottest_C
		if got := shown[o]; math.Abs(got.Low-band.Low) > agreement*band.Low || math.Abs(got.High-band.High) > agreement*band.High {
			p.t.Errorf("option %c: by %g draws the page shows hottest fruit from %.12g to %.12g °C, rowlight day says %.12g to %.12g",
				'A'+o, got.Draws, got.Low, got.High, band.Low, band.High)
		}
	}
}

// explains opens the explanation of the hottest fruit of the first option: its chain ends in a surface that is at
// least as hot as the mean of the hottest tenth, which the number is.
func (p *tab) explains(day result.Day) {
	p.t.Helper()
	p.click("option-A-hottest-why")
	p.until(`document.querySelectorAll(".chain-part").length > 5`)
	eval[bool](p, `(document.querySelectorAll("[data-testid=explanation] details").forEach((e) => (e.open = true)), true)`)
	surface := eval[float64](p, `Number([...document.querySelectorAll(".links dd")].map((e) => /^surface = ([\d.]+)/.exec(e.innerText)).find(Boolean)?.[1])`)
	hottest := math.Max(day.Options[0].Sides[0].Summary.Hottest_C, day.Options[0].Sides[1].Summary.Hottest_C)
	if !(surface >= hottest-0.1 && surface < hottest+10) {
		p.t.Errorf("the chain ends in %.2f °C, the hottest tenth has %.2f °C", surface, hottest)
	}
	p.laidOut(eval[int64](p, `window.innerWidth`))
	p.whole("explanation")
	p.click("option-A-hottest-why")
	p.until(`!document.querySelector("[data-testid=explanation]")`)
}

// instant is the place of the hour slider, in steps from midnight.
func (p *tab) instant() int {
	p.t.Helper()
	return eval[int](p, `Number(`+hook("hour-slider")+`.value)`)
}
