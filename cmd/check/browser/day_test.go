//go:build browser

package browser

import (
	"math"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestPageOpensWithNumbers is what a newcomer sees: both options with their numbers, verdicts and the
// comparison, equal to the command line's, and a picture.
func TestPageOpensWithNumbers(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.agrees(rowlightDay(t, firstScenario()))
	for _, mark := range []string{"option-A-verdict", "option-B-verdict", "comparison"} {
		if text := p.text(mark); len(text) < 20 {
			t.Errorf("%s says %q, which is no sentence", mark, text)
		}
	}
	p.drawn()
	p.shot("first")
}

// TestHourIsDragged drags the hour with the mouse over the day and compares what the page then shows
// with the command line.
func TestHourIsDragged(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	day := rowlightDay(t, firstScenario())
	for _, share := range []float64{0.3, 0.62, 0.95} {
		before := p.instant()
		p.dragSlider("hour-slider", share)
		after := p.instant()
		if want := share * 288; math.Abs(float64(after)-want) > 6 {
			t.Errorf("dragged to %.0f%% of the slider, it stands at step %d, want about %.0f", 100*share, after, want)
		}
		if after == before {
			t.Errorf("the slider did not move from step %d", before)
		}
		if hour := p.numbers()["hour"]; math.Abs(hour-day.Hour[after]) > agreement {
			t.Errorf("the page says %.4f h at step %d, want %.4f", hour, after, day.Hour[after])
		}
		p.agrees(day)
	}
}

// TestHourByKeys moves the hour with the keys: the arrows by a step, the page keys by an hour, Home and
// End to the steps next to sunrise and sunset.
func TestHourByKeys(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	day := rowlightDay(t, firstScenario())
	p.focus("hour-slider")
	near := func(hour_h float64) func(now, next int) bool {
		return func(_, next int) bool { return math.Abs(day.Hour[next]-hour_h) <= day.Step_min/60 }
	}
	by := func(steps int) func(now, next int) bool {
		return func(now, next int) bool { return next == now+steps }
	}
	for _, press := range []struct {
		name, key string
		right     func(now, next int) bool
	}{
		{"arrow right", kb.ArrowRight, by(1)},
		{"arrow left", kb.ArrowLeft, by(-1)},
		{"page up", kb.PageUp, by(12)},
		{"page down", kb.PageDown, by(-12)},
		{"home", kb.Home, near(day.Sun.Rise_h)},
		{"end", kb.End, near(day.Sun.Set_h)},
	} {
		now := p.instant()
		p.do(chromedp.KeyEvent(press.key))
		if next := p.instant(); !press.right(now, next) {
			t.Errorf("%s moves from step %d to %d", press.name, now, next)
		}
		p.agrees(day)
	}
}

// TestChangeIsComputedAndUndone turns the rows of option A by the keys, compares with the command
// line, and takes the change back and forth.
func TestChangeIsComputedAndUndone(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	before := rowlightDay(t, firstScenario())
	p.agrees(before)

	p.focus("option-A-azimuth")
	p.do(chromedp.KeyEvent(kb.ArrowRight))
	p.answered()
	azimuth := eval[float64](p, `Number(`+hook("option-A-azimuth")+`.value)`)
	if azimuth == before.Scenario.Options[0].Rows.Azimuth_deg {
		t.Fatal("the key did not turn the rows")
	}
	turned := rowlightDay(t, changedScenario(t,
		map[string]any{"form": "vsp-spurs", "rows": map[string]any{"azimuth_deg": azimuth}},
		map[string]any{"form": "sprawl"}))
	p.agrees(turned)

	p.do(chromedp.Click(chromedp.CSS(`[data-testid="undo"]`)))
	p.answered()
	p.agrees(before)
	p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(chromedp.ModifierCtrl, chromedp.ModifierShift)))
	p.answered()
	p.agrees(turned)
	p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(chromedp.ModifierCtrl)))
	p.answered()
	p.agrees(before)
}

// TestFormIsChosen gives option A the form of option B: it then takes all the sizes of that form. Then it shades the fruit of
// option A.
func TestFormIsChosen(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.do(chromedp.Focus(chromedp.CSS(`[data-testid="option-A-form"]`)))
	eval[bool](p, `(() => { const choice = `+hook("option-A-form")+`; choice.value = "sprawl"; return choice.dispatchEvent(new Event("change", { bubbles: true })); })()`)
	p.answered()
	p.agrees(rowlightDay(t, changedScenario(t, map[string]any{"form": "sprawl"}, map[string]any{"form": "sprawl"})))
	shown := p.numbers()
	for _, number := range []string{"lit", "mean", "hottest", "overHot"} {
		if a, b := shown["option-A-left-"+number], shown["option-B-left-"+number]; a != b {
			t.Errorf("two options with one form differ: %s is %g and %g", number, a, b)
		}
	}
	p.shadeFruit()
}

// shadeFruit hangs a net on both sides of the fruit of option A, sprays a film and lets mist go: the page says what may
// come of each where it is chosen, and its numbers are those of the command line.
func (p *tab) shadeFruit() {
	p.t.Helper()
	p.click("option-A-edit")
	p.until(hook("sheet"))
	p.pick("field-options-0-shade-netSides", "both")
	p.enter("field-options-0-shade-netShade", "60")
	p.pick("field-options-0-shade-netColour", "white")
	p.pick("field-options-0-shade-film", "full")
	p.enter("field-options-0-shade-mistRate_mmh", "0.5")
	p.until(hook("calculation") + `.dataset.pending === "false" && ` + hook("sheet") + `.innerText.includes("mind your water rights")`)
	p.says("sheet", "strength is not", "the label is the law", "Shade factor of that net", "Mist above air of")
	shade := map[string]any{"shade": map[string]any{
		"netSides": "both", "netShade": 0.6, "netColour": "white", "film": "full", "mistRate_mmh": 0.5}}
	p.agrees(rowlightDay(p.t, changedScenario(p.t, map[string]any{"form": "sprawl", "shade": shade["shade"]}, map[string]any{"form": "sprawl"})))
	eval[bool](p, `(document.getElementById("field-options-0-shade-netSides").scrollIntoView({ block: "center" }), true)`)
	p.shot("shade")
	p.drawForm("sprawl", shade)
	p.plantTooNear()
}

// answered waits until the page has sent a newer document and shows the answer to it.
func (p *tab) answered() {
	p.t.Helper()
	p.until(`(() => {
		const mark = ` + hook("calculation") + `;
		const seen = window.seenGeneration ?? 1;
		if (mark?.dataset.pending !== "false" || !(Number(mark.dataset.generation) > seen)) return false;
		window.seenGeneration = Number(mark.dataset.generation);
		return true;
	})()`)
}

// focus puts the focus on an element.
func (p *tab) focus(mark string) {
	p.t.Helper()
	if !eval[bool](p, `(() => { const e = `+hook(mark)+`; e.focus(); return document.activeElement === e; })()`) {
		p.t.Fatalf("%s takes no focus", mark)
	}
}

// dragSlider presses the mouse on the handle of a slider, moves it in steps, and lets go at a share of
// the slider's width.
func (p *tab) dragSlider(mark string, share float64) {
	p.t.Helper()
	type place struct{ Left, Top, Width, Height, At float64 }
	s := eval[place](p, `(() => {
		const e = `+hook(mark)+`;
		e.scrollIntoView({ block: "nearest" });
		const box = e.getBoundingClientRect();
		return { Left: box.left, Top: box.top, Width: box.width, Height: box.height, At: (e.value - e.min) / (e.max - e.min) };
	})()`)
	// The middle of the handle runs from half its width inside one end to half inside the other.
	const handle = 16.0
	x := func(share float64) float64 { return s.Left + handle/2 + share*(s.Width-handle) }
	y := s.Top + s.Height/2
	p.do(
		chromedp.MouseEvent(chromedp.MouseMoved, x(s.At), y),
		chromedp.MouseEvent(chromedp.MousePressed, x(s.At), y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
	)
	const steps = 8
	for i := 1; i <= steps; i++ {
		at := s.At + (share-s.At)*float64(i)/steps
		p.do(chromedp.MouseEvent(chromedp.MouseMoved, x(at), y, chromedp.ButtonLeft))
	}
	p.do(chromedp.MouseEvent(chromedp.MouseReleased, x(share), y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
}
