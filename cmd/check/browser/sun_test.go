//go:build browser

package browser

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"rowlight/sim/result"
)

// TestSouthernHemisphere takes a day of a place south of the tropics: there too the sun rises in the east,
// so that the east side of north–south rows is the morning side, but it stands in the north at noon. The
// sides of east–west rows follow: their sunny side is the north one.
func TestSouthernHemisphere(t *testing.T) {
	t.Parallel()
	file := weatherFile("kestrel-flat-hot-week-tmy3.csv")
	p := openPage(t, bench.origin)
	p.openWeather(file)
	p.says("weather-summary", "34.3° S", "140.4° E", "UTC+9:30", "29 January to 4 February", "from the years 1994 to 2001")
	p.press("weather-hottest")
	day := rowlightDay(t, firstScenario(), "--weather", file)
	p.agrees(day)
	p.says("facts", "34.3° S, 140.4° E")

	for _, at := range []struct {
		hour_h float64
		where  string
	}{{day.Sun.Transit_h, "north"}, {day.Sun.Rise_h + 2, "east"}, {day.Sun.Set_h - 2, "west"}} {
		p.setHour(at.hour_h)
		compass := eval[string](p, `document.querySelector(".compass").getAttribute("aria-label")`)
		_, sun, _ := strings.Cut(compass, "The sun stands in the ")
		if direction, _, _ := strings.Cut(sun, ","); !strings.Contains(direction, at.where) {
			t.Errorf("at %.2f h: %q, want the sun in the %s", at.hour_h, compass, at.where)
		}
		p.agrees(day)
	}
	p.sides("A", "Morning side (east)", "Afternoon side (west)")
	p.shot("south")

	p.enterBox("option-A-azimuth-box", "90")
	p.answered()
	p.sides("A", "Pole side (south)", "Equator side (north)")
}

// TestPolarDay asks for a design day where the sun does not set: it is refused in plain words, and the
// numbers before stay until the place is one with a night.
func TestPolarDay(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	first := rowlightDay(t, firstScenario())
	p.click("site")
	p.until(hook("sheet"))
	for _, refused := range []struct{ latitude, says string }{
		{"75", "on 2026-07-18 the sun does not set at latitude 75"},
		{"-75", "on 2026-07-18 the sun does not rise at latitude −75"},
	} {
		p.enter("field-site-latitude_deg", refused.latitude)
		p.until(hook("faults") + `?.innerText.includes("latitude ` + strings.Replace(refused.latitude, "-", "−", 1) + `")`)
		p.says("faults", refused.says, "Choose another date or place, or load measured hours", "belong to the set-up before")
		p.agrees(first)
		if phase := eval[string](p, hook("calculation")+`.dataset.phase`); phase != "running" {
			t.Errorf("the engine is %s", phase)
		}
	}
	p.shot("polar")
	p.enter("field-site-latitude_deg", "60")
	p.answered()
	if p.there("faults") {
		t.Error("the fault of the polar day is still shown")
	}
	p.agrees(rowlightDay(t, changedDocument(t, func(document map[string]any) {
		document["site"].(map[string]any)["latitude_deg"] = 60
	})))
}

// TestFourOptions fills the page: all columns beside each other where they fit, one at a time where not, and
// nothing lies over anything else.
func TestFourOptions(t *testing.T) {
	t.Parallel()
	file := changedScenario(t, map[string]any{"form": "vsp-spurs"}, map[string]any{"form": "sprawl"}, map[string]any{"form": "sprawl"}, map[string]any{"form": "sprawl"})
	day := rowlightDay(t, file)
	p := openPage(t, bench.origin)
	p.press("add-option")
	p.press("add-option")
	if p.there("add-option") {
		t.Error("a fifth option can be added")
	}
	p.agrees(day)
	p.ranged(file)
	p.explains(day)
	p.canopies(day)
	p.drawn()
	p.looks([]look{{"light", 1440, 900}, {"dark", 1440, 900}, {"light", 768, 1024}, {"light", 360, 740}, {"dark", 360, 740}}, func(look look, name string) {
		want := 1
		if look.width > 1000 {
			want = 4
		}
		p.until(fmt.Sprintf(`document.querySelectorAll("article.column").length === %d`, want))
		p.still()
		p.laidOut(look.width)
		p.whole("four-" + name)
	})
}

// canopies opens the table of the canopies' measures and compares it with the command line.
func (p *tab) canopies(day result.Day) {
	p.t.Helper()
	eval[bool](p, `(() => { `+hook("canopy")+`.open = true; return true; })()`)
	p.until(hook("option-A-canopy-leafArea"))
	shown := p.numbers()
	for o, option := range day.Options {
		c := option.Canopy
		for name, want := range map[string]float64{"leafArea": c.LeafArea_m2_per_m, "layers": c.LeafLayers, "exterior": c.Exterior,
			"intercepted": c.Intercepted, "heightToGap": c.HeightToGap, "leafToFruit": c.LeafToFruit_m2_per_kg} {
			mark := fmt.Sprintf("option-%c-canopy-%s", 'A'+o, name)
			if got := shown[mark]; want == 0 || math.Abs(got-want) > agreement*math.Max(1, want) {
				p.t.Errorf("%s: the page shows %.15g, rowlight day says %.15g", mark, got, want)
			}
		}
	}
}

// laidOut wants the page to be no wider than its window and no text to lie over another or outside its column.
func (p *tab) laidOut(width int64) {
	p.t.Helper()
	if wide := eval[int](p, `document.scrollingElement.scrollWidth`); wide > int(width) {
		p.t.Errorf("the page is %d px wide in a window of %d", wide, width)
	}
	for _, overlap := range eval[[]string](p, overlaps) {
		p.t.Error(overlap)
	}
}

// overlaps lists texts and controls within a column, or within the head, that lie over each other or reach out
// of it by more than a pixel. Panes are left out: their tools lie over the picture.
const overlaps = `(() => {
	const found = [];
	const shown = (e) => !e.closest(".visually-hidden, .pane, .hour-axis, [aria-hidden=true]") && e.checkVisibility() && getComputedStyle(e).clipPath === "none";
	const box = (e) => { // of a button without a frame only its text counts
		const [b, pad] = [e.getBoundingClientRect(), e.matches(".button.quiet") ? parseFloat(getComputedStyle(e).paddingLeft) : 0];
		return { left: b.left + pad, right: b.right - pad, top: b.top, bottom: b.bottom };
	};
	const own = (e) => [...e.childNodes].some((n) => n.nodeType === Node.TEXT_NODE && n.data.trim()) || /^(INPUT|SELECT|BUTTON|CANVAS)$/.test(e.tagName);
	const named = (e) => e.tagName.toLowerCase() + " " + (e.dataset.testid ?? e.className) + " “" + (e.innerText ?? "").slice(0, 30) + "”";
	for (const part of document.querySelectorAll("article.column, header.top, .sheet, .option-switch, .comparison, .legend, .canopy")) {
		const outer = part.getBoundingClientRect();
		const boxes = [...part.querySelectorAll("*")].filter((e) => own(e) && shown(e) && e.closest(".sheet") === part.closest(".sheet"));
		boxes.forEach((a, i) => {
			const ra = box(a);
			if (ra.left < outer.left - 1 || ra.right > outer.right + 1) found.push(named(a) + " reaches out of its part");
			for (const b of boxes.slice(i + 1)) {
				if (a.contains(b) || b.contains(a)) continue;
				const rb = box(b);
				const [w, h] = [Math.min(ra.right, rb.right) - Math.max(ra.left, rb.left), Math.min(ra.bottom, rb.bottom) - Math.max(ra.top, rb.top)];
				if (w > 1 && h > 3) found.push(named(a) + " lies over " + named(b));
			}
		});
	}
	return found;
})()`

// sides wants the rows of an option's numbers to be called by these sides, in this order.
func (p *tab) sides(letter string, want ...string) {
	p.t.Helper()
	got := eval[[]string](p, `[...`+hook("option-"+letter)+`.querySelectorAll(".now tbody th")].map((e) => e.innerText)`)
	if strings.Join(got, "|") != strings.Join(want, "|") {
		p.t.Errorf("option %s has the sides %q, want %q", letter, got, want)
	}
}

// setHour moves the hour slider to a clock hour.
func (p *tab) setHour(hour_h float64) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`(() => { const s = %s; s.value = Math.round(%g * 12); return s.dispatchEvent(new Event("input", { bubbles: true })); })()`, hook("hour-slider"), hour_h))
}

// whole takes a picture of the whole page, not only of the window.
func (p *tab) whole(name string) {
	p.t.Helper()
	type size struct{ Width, Height int64 }
	s := eval[size](p, `({ Width: innerWidth, Height: document.scrollingElement.scrollHeight })`)
	p.viewport(s.Width, s.Height, 1)
	p.still()
	p.shot(name)
	p.do(chromedp.EmulateReset())
}
