//go:build browser

package browser

import (
	"math"
	"strconv"
	"testing"
)

// turnsRows opens the part on row directions and waits until every azimuth is known.
func (p *tab) turnsRows() {
	p.t.Helper()
	eval[bool](p, hook("directions")+`.querySelector("summary").click() === undefined`)
	p.until(hook("directions-state") + `?.dataset.done === "true"`)
}

// checkDirections compares the heat of the page's directions with the day that it shows: the rows as they are
// planned are among the azimuths, and their heat is that of a day of coarser steps.
func (p *tab) checkDirections() {
	p.t.Helper()
	p.turnsRows()
	p.says("directions-words", "The turn costs light on the leaves", "yours to weigh")
	if lines := eval[int](p, `document.querySelectorAll(".direction-chart polygon").length`); lines != 2 {
		p.t.Errorf("%d options on the compass of directions, want 2", lines)
	}
	eval[bool](p, hook("directions-table")+`.querySelector("summary").click() === undefined`)
	if rows := eval[int](p, hook("directions-table")+`.querySelectorAll("tbody tr").length`); rows != 2*36*2 {
		p.t.Errorf("%d rows in the table of directions, want 36 azimuths and two sides of two options", rows)
	}
	lit, _ := strconv.ParseFloat(eval[string](p, hook("directions-table")+`.querySelector("tbody tr td .quantity").dataset.value`), 64)
	if day := p.numbers()["option-A-left-dayLit"]; day != 0 && math.Abs(lit-day) > 0.3 {
		p.t.Errorf("the west side of north–south rows is %.2f h in the sun, on the day %.2f h", lit, day)
	}
}

func TestRowDirectionsInThePage(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.checkDirections()
	for _, width := range []int64{1440, 768, 360} {
		for _, scheme := range []string{"light", "dark"} {
			p.viewport(width, 1000, 1)
			p.colourScheme(scheme)
			eval[bool](p, hook("directions")+`.scrollIntoView() === undefined`)
			if wide := eval[int64](p, `document.documentElement.scrollWidth`); wide > width {
				t.Errorf("at %d px the page is %d px wide", width, wide)
			}
			p.shot("directions-" + scheme + "-" + strconv.FormatInt(width, 10))
		}
	}
}
