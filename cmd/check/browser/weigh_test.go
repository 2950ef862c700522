//go:build browser

package browser

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// TestTheWholeDecision reads the one table beside the command line, ranks only by weights, changes the night, and looks
// at it in both looks, wide and narrow.
func TestTheWholeDecision(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.says("weigh-order", "Nothing is ranked")
	p.says("night", "Not a frost warning")
	p.says("crop", "nothing here is a promise")
	p.weighs()

	p.enter("field-weights-heat", "100")
	p.answered()
	p.says("weigh-order", "In the order of your weights: heat 100 %", "not the decision", "1.00", "B Sprawl")
	p.enter("field-weights-heat", "60")
	p.answered()
	p.enter("field-weights-frost", "40")
	p.answered()
	p.says("weigh-order", "heat 60 %, frost 40 %")
	p.press("add-option")
	p.choose("option-C-form", "high-cordon")
	p.answered()
	p.press("add-option")
	p.choose("option-D-form", "lyre")
	p.answered()
	p.says("weigh", "below where a tenth of them die")
	p.until(hook("weigh-heat-D") + `.dataset.low !== ` + hook("weigh-heat-D") + `.dataset.high`)
	if strings.Contains(p.text("weigh"), "range is being computed") {
		t.Error("ranges are there, and still said to be computed")
	}
	p.says("crop", "times the prunings", "Balanced pruning")
	p.looks([]look{{"light", 1440, 900}, {"dark", 768, 1024}, {"light", 360, 780}}, func(look look, name string) {
		eval[bool](p, `(() => { `+hook("weigh")+`.scrollIntoView(); return true; })()`)
		p.shot("weigh-" + name)
		if look.width == 1440 {
			p.restsOnWholeRows()
		}
		eval[bool](p, `(() => { `+hook("night")+`.scrollIntoView(); return true; })()`)
		p.shot("night-" + name)
		p.accessible()
		for _, cut := range eval[[]string](p, cutInTable) {
			p.t.Errorf("%s: %s", name, cut)
		}
		if wide := eval[int](p, `document.scrollingElement.scrollWidth`); wide > int(look.width) {
			p.t.Errorf("the page is %d px wide in a window of %d", wide, look.width)
		}
	})

	// The table of four forms is handed over on paper, with cautions and sources on it.
	eval[bool](p, `(window.print = () => { window.printed = true; }, true)`)
	p.click("weigh-print")
	p.until(`window.printed`)
	paper := eval[string](p, `document.querySelector(".decision-paper")?.textContent ?? ""`)
	for _, words := range []string{"Not a frost warning", "nothing here is a promise", "In the order of your weights", "Williams & Ayars", "assumption", "D Lyre"} {
		if !strings.Contains(paper, words) {
			t.Errorf("the paper does not say %q", words)
		}
	}
	p.printed("decision-a4", 8.27, 11.69, 2)
	eval[bool](p, `(window.printed = false, true)`)
	p.click("weigh-print")
	p.until(`window.printed`)
	p.printed("decision-letter", 8.5, 11, 2)

	p.enter("field-frost-wind_ms", "3")
	p.answered()
	p.says("night", "height makes no difference")
	p.viewport(1440, 900, 1)
	p.press("option-D-remove")
	p.press("four-arms-same-A")
	if form := eval[string](p, hook("option-D-form")+`.value`); form != "quadrilateral" {
		t.Errorf("four arms are added as %q", form)
	}
	p.enter("field-crop-prunings_kg_per_m", "0.4")
	p.answered()
	p.says("crop", "This vine will not fill four arms")
}

// cutInTable lists what of the table reaches beyond the window or out of its cell.
const cutInTable = `[...document.querySelectorAll(".weigh-table :is(td, th, .weigh-figure, .weigh-range, .weigh-ends, .box, .select)")].filter((e) => {
	const box = e.getBoundingClientRect(), cell = e.closest("td, th").getBoundingClientRect();
	return e.checkVisibility() && !e.closest("thead") && (box.left < cell.left - 1 || box.right > cell.right + 1 || box.right > innerWidth || e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && !e.matches("select"));
}).map((e) => e.className + " " + e.textContent.slice(0, 60))`

// restsOnWholeRows scrolls by hand so that the ribbon cuts a row of the table, and waits until it cuts none.
func (p *tab) restsOnWholeRows() {
	p.t.Helper()
	edge := `document.querySelector(".ribbon").getBoundingClientRect().top`
	eval[bool](p, `(() => {
		const row = document.querySelectorAll(".weigh-numbers")[3].getBoundingClientRect();
		dispatchEvent(new WheelEvent("wheel"));
		scrollBy(0, row.top + 30 - `+edge+`);
		return true;
	})()`)
	p.until(`[...document.querySelectorAll(".weigh-numbers")].every((row) => row.getBoundingClientRect().top > ` + edge + ` - 2 || row.nextElementSibling.getBoundingClientRect().bottom < ` + edge + ` + 2)`)
}

// weighs compares the table with the command line.
func (p *tab) weighs() {
	p.t.Helper()
	shown, compared := p.numbers(), 0
	for o, option := range rowlightDay(p.t, firstScenario()).Weighing.Options {
		for key, want := range map[string]float64{
			"heat": option.Heat.Value, "light": option.Light.Value, "frost": option.Frost.Killed.Value, "crop": option.Crop.PerHa_t.Value,
			"work": option.Work.Total.Value, "water": option.Water.Shaded, "colour": option.Colour_h,
		} {
			mark := fmt.Sprintf("weigh-%s-%c", key, 'A'+o)
			if got, there := shown[mark]; !there || math.Abs(got-want) > agreement*math.Max(1, math.Abs(want)) {
				p.t.Errorf("%s: the page shows %.15g, rowlight says %.15g", mark, got, want)
			}
			compared++
		}
	}
	if compared != 14 || !strings.Contains(p.text("weigh"), "The whole decision") {
		p.t.Errorf("%d numbers compared", compared)
	}
}
