//go:build browser

package browser

import (
	"strings"

	"github.com/chromedp/chromedp"
)

// speaksSpanish chooses Spanish and wants its words, its numbers and its marks on the document, nothing that does not fit
// for being longer, and the same language on the next visit. Then it goes back to English.
func (p *tab) speaksSpanish() {
	p.t.Helper()
	before := p.numbers()
	p.choose("language", "es")
	p.until(`document.documentElement.lang === "es"`)
	p.says("facts", "a la hora más calurosa", "hileras norte–sur", "18 de julio de 2026")
	p.says("option-A-verdict", "lado oeste")
	p.says("option-A", "Lado de la mañana (este)", "VSP, pulgares")
	if shown := strings.ReplaceAll(p.text("option-A-hottest"), "\u00a0", " "); !strings.Contains(shown, ",") {
		p.t.Errorf("in Spanish the hottest fruit reads %q, without a decimal comma", shown)
	}
	p.click("option-A-hottest-why")
	p.until(hook("explanation") + `?.querySelectorAll("code").length > 10`)
	eval[bool](p, `(`+hook("explanation")+`.querySelectorAll("details").forEach((d) => { d.open = true; }), true)`)
	p.says("explanation", "Del sol a la piel", "Camino entre las hojas", "viento a 10 m sobre terreno abierto", "de memoria", "doi 10.1007/s10546-017-0265-y",
		"el viento", "supuesto: una estación a 10 m")
	if english := eval[int](p, hook("explanation")+`.querySelectorAll("[lang]").length`); english > 0 {
		p.t.Errorf("%d parts of an explanation are in another language", english)
	}
	p.click("option-A-hottest-why")
	for mark, value := range p.numbers() {
		if value != before[mark] {
			p.t.Errorf("in another language %s is %g, not %g", mark, value, before[mark])
		}
	}
	for _, width := range []int64{1440, 320} {
		p.viewport(width, 800, 1)
		p.laidOut(width)
	}
	p.accessible()
	p.shot("look-spanish")
	p.viewport(1440, 900, 1)
	p.do(chromedp.Reload())
	p.settled()
	p.drawn()
	if kept := eval[string](p, `document.documentElement.lang`); kept != "es" {
		p.t.Errorf("the page opens again in %q, not in Spanish", kept)
	}
	p.choose("language", "en")
	p.until(`document.documentElement.lang === "en"`)
}
