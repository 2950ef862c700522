//go:build browser

package browser

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"rowlight/sim/result"
)

// TestFirstVisitOfAConsultant is what she does in her first ten minutes, from an empty profile, in front of a client who
// has a VSP: one option, and three times what if it were shaded. Each answer says from what it differs and in what, and
// is explained down to its sources.
func TestFirstVisitOfAConsultant(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.press("option-B-remove")
	shades := []map[string]any{
		{"netSides": "afternoon"},
		{"film": "full"},
		{"overheadShade": 0.3},
	}
	says := []string{"Net along the fruit: None → Afternoon side", "Particle film, such as kaolin: None → Full", "Net over all rows, shade factor (0 for none): 0 % → 30 %"}
	options := []map[string]any{{"form": "vsp-spurs"}}
	for i, shade := range shades {
		p.press("option-A-what-if")
		mark := fmt.Sprintf("option-%c-", 'B'+i)
		p.says(mark+"likeness", "The same as A so far")
		field := fmt.Sprintf("field-options-%d-shade-", i+1)
		for name, value := range shade {
			if text, choice := value.(string); choice {
				p.pick(field+name, text)
			} else {
				p.enter(field+name, "30")
			}
		}
		p.answered()
		p.says(mark+"likeness", "A, but ", says[i])
		options = append(options, map[string]any{"form": "vsp-spurs", "shade": shade})
	}
	day := rowlightDay(t, changedScenario(t, options...))
	p.agrees(day)
	p.says("sheet", "strength is not")
	if sentences := strings.Count(p.text("comparison"), "A: VSP") + strings.Count(p.text("comparison"), "“A”"); sentences != 3 {
		t.Errorf("the comparison has %d sentences about A: %q", sentences, p.text("comparison"))
	}
	p.until(hook("odds") + `?.dataset.draws > 0`)
	p.says("odds", "of the runs")
	p.chartsOfTheDay(day)
	for i := range shades {
		p.explained(fmt.Sprintf("option-%c", 'B'+i))
	}
	p.shot("consultant")
	p.edgesOfTheModel()

	// The best one is put first; it is still A that the others are compared with.
	p.press("option-B-left")
	p.says("option-B-likeness", "A, but ", "Afternoon side → None")
	if compared := eval[string](p, hook("compare")+`.value`); compared != "1" {
		t.Errorf("after the move the options are compared with number %s, not the second", compared)
	}
	options[0], options[1] = options[1], options[0]
	p.agrees(rowlightDay(t, changedScenario(t, options...)))
}

// chartsOfTheDay opens the charts: each shows every option, its table holds the numbers of the command line, and a press on
// it chooses the hour for the whole page. Nothing in them breaks the policy of the page.
func (p *tab) chartsOfTheDay(day result.Day) {
	p.t.Helper()
	eval[bool](p, `(`+hook("day-charts")+`.open = true)`)
	for _, kind := range []string{"temperature", "light", "lit", "flows"} {
		p.until(fmt.Sprintf(`(() => { const plots = [...document.querySelectorAll("[data-testid=chart-%s] .day-chart-plot svg")];
			return plots.length === %d && plots.every((svg) => svg.querySelectorAll("[aria-label=line] path").length >= 2); })()`, kind, len(day.Options)))
	}
	eval[bool](p, `([...document.querySelectorAll("[data-testid^=chart-][data-testid$=-table]")].forEach((d) => { d.open = true; }), true)`)
	const noon = 12
	for kind, course := range map[string]func(result.Steps) []float64{
		"temperature": func(s result.Steps) []float64 { return s.Hottest_C },
		"light":       func(s result.Steps) []float64 { return s.Light_Wm2 },
		"lit":         func(s result.Steps) []float64 { return s.LitShare },
	} {
		p.until(hook("chart-"+kind+"-table") + `.querySelectorAll("tbody tr").length === 25`)
		got := eval[float64](p, fmt.Sprintf(`Number(%s.querySelectorAll("tbody tr")[%d].querySelector("[data-value]").dataset.value)`, hook("chart-"+kind+"-table"), noon))
		want := course(day.Options[0].Sides[1].Steps)[noon*12] // the right side of a north–south row is its morning side
		if math.Abs(got-want) > agreement*math.Max(1, math.Abs(want)) {
			p.t.Errorf("the table of %s says %g at noon, rowlight day says %g", kind, got, want)
		}
	}
	eval[bool](p, `(() => {
		const plot = document.querySelector("[data-testid=chart-light] .day-chart-hours");
		const box = plot.getBoundingClientRect();
		plot.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, clientX: box.left + box.width / 4, clientY: box.top + 5, buttons: 1 }));
		return true;
	})()`)
	if hour := p.numbers()["hour"]; math.Abs(hour-6) > 0.1 {
		p.t.Errorf("a press on a quarter of the chart chooses %.2f h", hour)
	}
	p.accessible()
	p.shot("day-charts")
	for _, violation := range p.violations() {
		p.t.Errorf("the Content-Security-Policy blocked %s", violation)
	}
	eval[bool](p, `(`+hook("day-charts")+`.open = false, true)`)
}

// explained opens how the hottest fruit of an option comes about, and wants its range, what it follows, its equation, the
// sources of all that is drawn, and where it holds.
func (p *tab) explained(option string) {
	p.t.Helper()
	p.click(option + "-hottest-why")
	p.until(hook("sheet") + `?.innerText.includes(` + quoted("Option "+option[len("option-"):]+":") + `) && ` + hook("explanation") + `?.querySelectorAll("code").length > 10`)
	eval[bool](p, `(`+hook("explanation")+`.querySelectorAll("details").forEach((d) => { d.open = true; }), true)`)
	p.says("explanation", "on the ", "side", "draws lie in", "It follows ", "usually", "Whitaker 1972", "Bird & Hulstrom 1981",
		"Differences between options are surer", "up to 3 leaf layers")
}

// edgesOfTheModel looks at an hour with the sun just up: the page says that it is less sure there, explains the side at that
// very hour, and warns of heat for people.
func (p *tab) edgesOfTheModel() {
	p.t.Helper()
	p.says("comparison-notes", "hot crews", "Heat stroke is an emergency")
	p.paste(hook("hour"), "5:20")
	p.says("option-A-unsure", "the sun stands below 5°")
	p.click("option-A-right-why")
	p.until(hook("sheet") + `?.innerText.includes("at 05:20") && ` + hook("explanation") + `?.querySelectorAll("code").length > 10`)
	p.says("explanation", "At 05:20", "in direct sun", "05:20: number")
	p.paste(hook("hour"), "15:30")
	p.says("explanation", "At 15:30")
	p.click("option-A-right-why")
	if p.there("option-A-unsure") {
		p.t.Errorf("at 15:30 the page says %q", p.text("option-A-unsure"))
	}
}

// TestFirstVisitOfAGrower is what he does in his first ten minutes, from an empty profile, before he plants: his own site, in
// the south, his own spacing, four row directions. Then he undoes step by step what he tried.
func TestFirstVisitOfAGrower(t *testing.T) {
	t.Parallel()
	p := newTab(t, bench.browser)
	p.beforeLoad(withoutPictures)
	p.open(bench.origin)
	p.settled()
	p.click("site")
	p.until(hook("sheet"))
	p.paste(`document.getElementById("field-name")`, "Home block")
	for _, typed := range [][2]string{{"latitude_deg", "-34"}, {"longitude_deg", "138.9"}, {"elevation_m", "280"}, {"utcOffset_h", "9.5"}} {
		p.enter("field-site-"+typed[0], typed[1])
	}
	p.paste(`document.getElementById("field-weather-date")`, "2026-01-18")
	p.answered()
	p.says("facts", "34.0° S", "18 January 2026")
	p.click("site")

	p.press("option-B-remove")
	p.click("option-A-edit")
	p.until(hook("sheet"))
	p.enter("field-options-0-rows-rowSpacing_m", "2.4")
	p.enter("field-options-0-rows-vineSpacing_m", "1.2")
	p.answered()
	options := []map[string]any{}
	for i, azimuth := range []int{0, 45, 90, 135} {
		if i > 0 {
			p.press("add-option")
			p.enterBox(fmt.Sprintf("option-%c-azimuth-box", 'A'+i), strconv.Itoa(azimuth))
			p.answered()
		}
		options = append(options, map[string]any{"form": "vsp-spurs", "rows": map[string]any{
			"azimuth_deg": azimuth, "rowSpacing_m": 2.4, "vineSpacing_m": 1.2}})
	}
	file := changedDocument(t, func(document map[string]any) {
		document["name"], document["options"] = "Home block", options
		site := document["site"].(map[string]any)
		site["latitude_deg"], site["longitude_deg"], site["elevation_m"], site["utcOffset_h"] = -34, 138.9, 280, 9.5
		document["weather"].(map[string]any)["date"] = "2026-01-18"
	})
	p.until(hook("calculation") + `.dataset.pending === "false"`)
	p.agrees(rowlightDay(t, file))
	p.says("option-B-likeness", "A, but Row azimuth from true north: 0° → 45°")

	// In the south the sun stands in the north at noon, and the morning side is still the eastern one.
	p.paste(hook("hour"), "12:10")
	p.says("ribbon", "high, north")
	p.says("option-A", "Morning side (east)", "Afternoon side (west)")
	p.says("option-C", "Equator side (north)", "Pole side (south)")
	p.shot("grower")
	p.unitsAndBack()
	p.undoneStepByStep()
}

// unitsAndBack shows everything in US units and again in metric ones: what stands behind the numbers never changes.
func (p *tab) unitsAndBack() {
	p.t.Helper()
	before, words := p.numbers(), p.text("option-A")
	p.click("units-us")
	p.says("option-A", "°F")
	p.says("facts", "°F")
	if strings.Contains(p.text("option-A"), "°C") {
		p.t.Error("in US units °C is left in the column")
	}
	for mark, value := range p.numbers() {
		if value != before[mark] {
			p.t.Errorf("in US units %s holds %g, not %g", mark, value, before[mark])
		}
	}
	p.click("units-metric")
	if now := p.text("option-A"); now != words {
		p.t.Errorf("back in metric units the column reads otherwise: %.300s", now)
	}
}

// undoneStepByStep turns the rows of option D by sixty presses and one drag, takes each back as one step, and does it again.
func (p *tab) undoneStepByStep() {
	p.t.Helper()
	azimuth := func() string { return eval[string](p, hook("option-D-azimuth")+`.value`) }
	turn := func(key string, count int) {
		for range count {
			p.do(chromedp.KeyEvent(key))
		}
	}
	p.focus("option-D-azimuth")
	p.do(chromedp.KeyEvent(kb.Home))
	start := azimuth()
	turn(kb.ArrowRight, 30)
	turn(kb.ArrowLeft, 30)
	p.dragSlider("option-D-azimuth", 0.5)
	dragged := azimuth()
	ctrl := func(count int, more ...chromedp.Modifier) {
		for range count {
			p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(append(more, chromedp.ModifierCtrl)...)))
		}
	}
	ctrl(1)
	if now := azimuth(); now != start {
		p.t.Errorf("undoing a drag leaves %s, not %s", now, start)
	}
	ctrl(30)
	if now := azimuth(); now != "150" {
		p.t.Errorf("thirty steps back the rows run at %s, not at 150", now)
	}
	ctrl(30)
	if now := azimuth(); now != start {
		p.t.Errorf("sixty steps back the rows run at %s, not at %s", now, start)
	}
	ctrl(61, chromedp.ModifierShift)
	if now := azimuth(); now != dragged {
		p.t.Errorf("all steps done again, the rows run at %s, not at %s", now, dragged)
	}
}
