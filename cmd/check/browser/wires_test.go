//go:build browser

package browser

import (
	"math"
	"slices"
	"strconv"

	"github.com/chromedp/chromedp"

	"rowlight/sim/scenario"
)

// drawForm changes the wires of option A, a form of the catalogue, in its open sheet: one more wire, moved to where it is wanted.
// The cross-section shows it, a height that no wire has is told beside it, undo takes all back, and the numbers are
// those of the command line.
func (p *tab) drawForm(form string, option map[string]any) {
	p.t.Helper()
	catalogued, _ := scenario.FormByKey(form)
	wires := slices.Clone(catalogued.Option.Trellis.Wires)
	drawn := func(count int) {
		p.t.Helper()
		p.until(hook("option-A-section") + `.querySelectorAll(".wire").length === ` + strconv.Itoa(count))
	}
	drawn(len(wires))
	before := eval[string](p, hook("option-A-section")+`.innerHTML`)

	p.click("option-A-add-wire")
	drawn(len(wires) + 1)
	last := "option-A-wire-" + strconv.Itoa(len(wires)+1)
	p.enterBox(last+"-height", "9")
	p.until(hook("faults"))
	p.says("sheet", "is outside 0.2 m to 3 m")
	p.enterBox(last+"-height", "1.6")
	p.enterBox(last+"-offset", "0.4")
	p.until(hook("calculation") + `.dataset.pending === "false" && !` + hook("faults"))
	p.until(hook("option-A-section") + `.innerText.includes("1.60 m foliage wire")`)
	eval[bool](p, `(`+hook("option-A-section")+`.scrollIntoView({ block: "start" }), true)`)
	p.shot("wires")
	p.accessible()
	wires = append(wires, scenario.Wire{Height_m: 1.6, Offset_m: 0.4, Role: scenario.Foliage})
	changed := map[string]any{"form": form, "trellis": map[string]any{"wires": wires}}
	for key, value := range option {
		changed[key] = value
	}
	p.agrees(rowlightDay(p.t, changedScenario(p.t, changed, map[string]any{"form": form})))

	// Adding, and each box that was left, is a step.
	for range 4 {
		p.click("undo")
	}
	drawn(len(wires) - 1)
	p.until(hook("option-A-section") + `.innerHTML === ` + quoted(before))
	p.dragWire(before)
	p.until(hook("calculation") + `.dataset.pending === "false" && !` + hook("faults")) // what a wire on its way was told is gone
	p.click(last[:len(last)-len(strconv.Itoa(len(wires)))] + "1-remove")
	p.until(hook("faults"))
	p.says("sheet", "no wire has the role fruiting")
	p.click("undo")
}

// dragWire takes hold of the first wire in the drawing and pulls it up by half a metre of it in several moves: its box follows,
// and one undo puts it back.
func (p *tab) dragWire(before string) {
	p.t.Helper()
	type place struct{ X, Y, Metre float64 }
	const box = "option-A-wire-1-height"
	at := eval[place](p, `(() => {
		const drawing = `+hook("option-A-section")+`;
		drawing.scrollIntoView({ block: "center" });
		const wire = drawing.querySelector(".wire").getBoundingClientRect();
		const line = drawing.querySelector(".axis path");
		return { X: wire.left + wire.width / 2, Y: wire.top + wire.height / 2, Metre: -2 * line.getBBox().y * line.getScreenCTM().a };
	})()`)
	height := func() float64 { return eval[float64](p, `Number(`+hook(box)+`.value)`) }
	start := height()
	p.do(chromedp.MouseEvent(chromedp.MouseMoved, at.X, at.Y), chromedp.MouseEvent(chromedp.MousePressed, at.X, at.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
	for i := 1; i <= 5; i++ {
		p.do(chromedp.MouseEvent(chromedp.MouseMoved, at.X, at.Y-0.1*float64(i)*at.Metre, chromedp.ButtonLeft))
	}
	p.do(chromedp.MouseEvent(chromedp.MouseReleased, at.X, at.Y-0.5*at.Metre, chromedp.ButtonLeft, chromedp.ClickCount(1)))
	if moved := height() - start; math.Abs(moved-0.5) > 0.051 {
		p.t.Errorf("a wire dragged up by 0.5 m moves by %.2f m", moved)
	}
	p.click("undo")
	if now := height(); now != start {
		p.t.Errorf("undoing a drag leaves the wire at %g m, not at %g", now, start)
	}
	p.until(hook("option-A-section") + `.innerHTML === ` + quoted(before))
	eval[bool](p, `(`+hook("sheet")+`.scrollTop = 0, true)`)
}

// plantTooNear brings the rows of option A, a sprawl, nearer than one can drive: the page says so under its verdict, in a
// design that is computed all the same.
func (p *tab) plantTooNear() {
	p.t.Helper()
	if p.there("option-A-notices") {
		p.t.Errorf("a form of the catalogue is told off: %s", p.text("option-A-notices"))
	}
	p.enter("field-options-0-rows-rowSpacing_m", "1.9")
	p.until(hook("option-A-notices"))
	p.says("option-A-notices", "Option A, row spacing", "hard to drive")
	p.until(hook("calculation") + `.dataset.pending === "false"`)
	p.laidOut(1440)
	p.shot("notices")
}
