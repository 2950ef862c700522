//go:build browser

package browser

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// keepLongTasks notes how long each task of the page's own thread takes [ms] that browsers call long:
// over 50 ms.
//
// The frame of the view runs on the same thread: a browser says of each task whether it ran the code of the
// page ("self") or of a frame below it. Drawing without a graphics card takes long, and belongs to the frame.
const keepLongTasks = `
	window.longTasks = [];
	new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map((e) => ({ Where: e.name, Duration_ms: e.duration, At_ms: e.startTime })))).observe({ type: "longtask" });`

// longTask is one of these.
type longTask struct {
	Where              string
	Duration_ms, At_ms float64
}

// withoutPictures turns every canvas of the view off, so that drawing without a graphics card does not hide what the
// page itself does.
const withoutPictures = withoutWebGL + `
	if (window !== window.top) HTMLCanvasElement.prototype.getContext = () => null;`

// withoutWebGL turns WebGL off.
const withoutWebGL = `{
	const get = HTMLCanvasElement.prototype.getContext;
	HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
		return /webgl/.test(kind) ? null : get.call(this, kind, ...rest);
	};
}`

// keepEngine keeps the worker of the engine and notes the messages to and from it.
const keepEngine = `
	window.engineLog = [];
	window.workers = 0;
	window.Worker = class extends Worker {
		constructor(...args) {
			super(...args);
			this.number = window.workers++;
			window.engine ??= this;
			this.addEventListener("message", ({ data }) => this.note("from", data));
		}
		postMessage(data, ...rest) {
			this.note("to", data);
			super.postMessage(data, ...rest);
		}
		note(way, { kind, generation }) {
			window.engineLog.push({ way, kind, generation, worker: this.number, at_ms: performance.now() });
		}
	};`

// TestNewestInputIsAnsweredFirst turns the rows faster than days can be computed: the answer in the end
// is that to the last input, most of the inputs between are never answered, and meanwhile the page's
// own thread is free.
func TestNewestInputIsAnsweredFirst(t *testing.T) {
	p := newTab(t, bench.browser)
	p.beforeLoad(keepLongTasks)
	p.beforeLoad(withoutPictures)
	p.open(bench.origin)
	p.settled()
	eval[bool](p, `(() => {
		window.answered = [];
		new MutationObserver(() => window.answered.push(Number(`+hook("calculation")+`.dataset.generation)))
			.observe(`+hook("calculation")+`, { attributes: true, attributeFilter: ["data-generation"] });
		window.longTasks.length = 0;
		return true;
	})()`)

	const presses = 12
	sent := 1
	press := func() {
		p.focus("option-A-azimuth")
		for range presses {
			p.do(chromedp.KeyEvent(kb.ArrowRight))
			time.Sleep(30 * time.Millisecond)
		}
		sent += presses
		p.until(fmt.Sprintf(`Number(%s.dataset.generation) === %d`, hook("calculation"), sent))
	}
	press()
	azimuth := eval[float64](p, `Number(`+hook("option-A-azimuth")+`.value)`)
	p.agrees(rowlightDay(t, changedScenario(t,
		map[string]any{"form": "vsp-spurs", "rows": map[string]any{"azimuth_deg": azimuth}},
		map[string]any{"form": "sprawl"})))

	answered := eval[[]int](p, `window.answered`)
	if len(answered) == 0 || len(answered) >= presses {
		t.Errorf("of %d inputs, these were answered: %v", presses, answered)
	}
	t.Logf("answered %v of %d inputs", answered, presses)
	p.keepsItsTasksShort(press)

	// A long task on purpose shows that they are seen.
	eval[bool](p, `(window.longTasks.length = 0, setTimeout(() => { const end = performance.now() + 80; while (performance.now() < end); }), true)`)
	p.until(`window.longTasks.length > 0`)
}

// TestLongComputationGivesWay sends input A, waits until its computation is under way, and sends input B: the
// engine leaves A at once and never answers it, B is shown, and meanwhile no task of the page's own, with the
// pictures running, is long.
func TestLongComputationGivesWay(t *testing.T) {
	p := newTab(t, bench.browser)
	p.beforeLoad(keepLongTasks)
	p.beforeLoad(keepEngine)
	p.open(bench.origin)
	p.settled()
	p.drawn()
	p.still()
	p.click("site")
	p.until(hook("sheet"))
	eval[bool](p, `(window.longTasks.length = 0, window.engineLog.length = 0, true)`)

	// On another slope every option is computed anew, from its domes on.
	p.enter("field-site-slope_deg", "4")
	p.until(`window.engineLog.filter((m) => m.kind === "progress").length > 0`)
	p.enter("field-site-slope_deg", "9")
	p.until(hook("calculation") + `.dataset.pending === "false"`)
	p.agrees(rowlightDay(t, changedDocument(t, func(document map[string]any) {
		document["site"].(map[string]any)["slope_deg"] = 9
	})))

	type message struct {
		Way, Kind  string
		Generation int
		At_ms      float64
	}
	log := eval[[]message](p, `window.engineLog.map((m) => ({ Way: m.way, Kind: m.kind, Generation: m.generation, At_ms: m.at_ms }))`)
	var sent []message
	for _, m := range log {
		if m.Way == "to" {
			sent = append(sent, m)
		}
	}
	if len(sent) != 2 {
		t.Fatalf("the page sent %v, want two inputs", sent)
	}
	a, b := sent[0], sent[1]
	after := map[int]int{} // messages of progress after B was sent, by input
	for _, m := range log {
		switch {
		case m.Way == "from" && m.Kind == "result" && m.Generation == a.Generation:
			t.Errorf("A is answered %.0f ms after B was sent", m.At_ms-b.At_ms)
		case m.Way == "from" && m.Kind == "progress" && m.At_ms > b.At_ms:
			if after[m.Generation]++; m.Generation == b.Generation && after[m.Generation] == 1 {
				t.Logf("the engine is at B %.0f ms after it was sent", m.At_ms-b.At_ms)
			}
		case m.Way == "from" && m.Kind == "result":
			t.Logf("B is answered %.0f ms after it was sent, %.0f ms after A", m.At_ms-b.At_ms, m.At_ms-a.At_ms)
		}
	}
	// On a busy machine some news of A are still under way when B is sent. All of A would be as many as of B.
	if after[a.Generation] > after[b.Generation]/4 {
		t.Errorf("after B was sent the engine goes on with A: %d messages of its progress, %d of B", after[a.Generation], after[b.Generation])
	}

	slope := 9
	p.keepsItsTasksShort(func() {
		slope = 13 - slope
		p.enter("field-site-slope_deg", strconv.Itoa(slope))
		p.until(hook("calculation") + `.dataset.pending === "true"`)
		p.until(hook("calculation") + `.dataset.pending === "false"`)
	})
}

// holdResults keeps the page from hearing of results while window.holding is set; window.held tells it of the last one.
const holdResults = `
	window.Worker = class extends Worker {
		constructor(...args) {
			super(...args);
			this.addEventListener("message", (event) => {
				if (!window.holding || event.data.kind !== "result") return;
				event.stopImmediatePropagation();
				window.held = () => this.onmessage(event);
			});
		}
	};`

// TestPreviewStandsInForTheResult turns the rows of one option and keeps the result back: its numbers are those that the
// engine foretells, said to be near, and the other's stay. Then the result takes their place.
func TestPreviewStandsInForTheResult(t *testing.T) {
	p := newTab(t, bench.browser)
	p.beforeLoad(holdResults)
	p.open(bench.origin)
	p.settled()
	p.until(hook("odds") + `?.classList.contains("pending") === false`) // previews have been prepared before
	before, verdict := p.numbers(), p.text("option-A-verdict")
	p.drawn()
	eval[bool](p, keepFaces)
	eval[bool](p, `window.holding = true`)
	p.enter("field-options-0-rows-azimuth_deg", "70")
	p.until(hook("calculation") + `.dataset.preview`)
	soon := p.numbers()
	p.says("option-A-hottest", "≈")
	hour := p.hourNumbers()
	if marked := eval[[2]int](p, `["A", "B"].map((o) => document.querySelectorAll("[data-testid=option-" + o + "] .now td").values().filter((cell) => cell.textContent.includes("≈")).toArray().length)`); marked != [2]int{6, 0} {
		t.Errorf("of the numbers of the hour %v are said to be near, want all 6 of A and none of B", marked)
	}
	if !eval[bool](p, `document.querySelector("[data-testid=option-B] .difference").textContent.includes("≈")`) {
		t.Error("what B differs by from near numbers is not said to be near")
	}
	if steady := eval[[2]bool](p, `["A", "B"].map((o) => document.querySelector("[data-testid=option-" + o + "]").classList.contains("steady"))`); steady != [2]bool{false, true} {
		t.Errorf("A and B stay as they are: %v", steady)
	}
	p.until(`!!window.faces[0]`)
	seen := eval[[][]float64](p, `window.faces`)
	if now := p.text("option-A-verdict"); now != verdict { // it tells of hours, which come with the result
		t.Errorf("the verdict does not wait for the result: %q", now)
	}
	p.looks([]look{{"light", 1440, 900}, {"dark", 360, 740}}, func(look look, name string) {
		p.laidOut(look.width)
		eval[bool](p, `document.querySelector(".numbers").scrollIntoView({ block: "center" }) === undefined`)
		p.shot("preview-" + name)
	})
	if soon["option-B-hottest"] != before["option-B-hottest"] || strings.Contains(p.text("option-B-hottest"), "≈") {
		t.Errorf("the other option's fruit goes from %g to %g °C", before["option-B-hottest"], soon["option-B-hottest"])
	}
	p.until(`!!window.held`)
	eval[bool](p, `(window.faces = [], window.holding = false, window.held(), true)`)
	p.until(hook("calculation") + `.dataset.pending === "false" && window.faces[0]`)
	after := p.numbers()
	for option, faces := range eval[[][]float64](p, `window.faces`) {
		if len(faces) == 0 || len(faces) != len(seen[option]) {
			t.Fatalf("option %d has %d faces, before the result %d", option, len(faces), len(seen[option]))
		}
		for f, surface_C := range faces {
			if off := math.Abs(surface_C - seen[option][f]); off > 1.25 || option == 1 && off > 0 {
				t.Errorf("face %d of option %d is shown at %.2f °C, before the result at %.2f", f, option, surface_C, seen[option][f])
			}
		}
	}
	for name, now := range p.hourNumbers() {
		if near := map[bool]float64{true: 0.001, false: 0.5}[strings.HasSuffix(name, "lit")]; math.Abs(now-hour[name]) > near {
			t.Errorf("%s is %.2f, before the result %.2f", name, now, hour[name])
		}
	}
	if text := p.text("option-A-hottest"); strings.Contains(text, "≈") || eval[bool](p, `"preview" in `+hook("calculation")+`.dataset`) {
		t.Errorf("the result is shown as a preview: %q", text)
	}
	moved, off := math.Abs(after["option-A-hottest"]-before["option-A-hottest"]), math.Abs(after["option-A-hottest"]-soon["option-A-hottest"])
	if moved < 2 || off > moved/2 {
		t.Errorf("the hottest fruit goes from %.2f to %.2f °C, foretold were %.2f", before["option-A-hottest"], after["option-A-hottest"], soon["option-A-hottest"])
	}
}

// TestPreviewOfAWire moves the fruiting wire of one option and keeps the result back: numbers and fruit are those that the engine
// foretells of the bunches that have moved, and near to the result that takes their place.
func TestPreviewOfAWire(t *testing.T) {
	p := newTab(t, bench.browser)
	p.beforeLoad(holdResults)
	p.open(bench.origin)
	p.settled()
	p.until(hook("odds") + `?.classList.contains("pending") === false`)
	p.drawn()
	p.click("option-A-edit")
	p.until(hook("option-A-wire-1-height"))
	p.still()
	before := p.numbers()
	eval[bool](p, keepFaces)
	eval[bool](p, `window.holding = true`)
	p.enterBox("option-A-wire-1-height", "1.15")
	p.until(hook("calculation") + `.dataset.preview && window.faces[0]`)
	p.says("option-A-hottest", "≈")
	soon, seen := p.numbers(), eval[[]float64](p, `window.faces[0]`)
	p.looks([]look{{"light", 1440, 900}, {"dark", 768, 1024}, {"dark", 360, 740}}, func(look look, name string) {
		p.still()
		p.laidOut(look.width)
		p.shot("preview-wire-" + name)
	})
	p.viewport(1440, 900, 1)
	p.until(`!!window.held`)
	eval[bool](p, `(window.faces = [], window.holding = false, window.held(), true)`)
	p.until(hook("calculation") + `.dataset.pending === "false" && window.faces[0]`)
	after, faces := p.numbers(), eval[[]float64](p, `window.faces[0]`)
	if len(faces) == 0 || len(faces) != len(seen) {
		t.Fatalf("the option has %d faces, before the result %d", len(faces), len(seen))
	}
	off := 0.0
	for f := range faces {
		off += (faces[f] - seen[f]) / float64(len(faces))
	}
	if math.Abs(off) > 0.7 {
		t.Errorf("the fruit is %+.2f K warmer on the whole than was shown before the result", off)
	}
	for name, near := range map[string]float64{"option-A-hottest": 1.7, "option-B-hottest": 0} {
		if math.Abs(after[name]-soon[name]) > near {
			t.Errorf("%s is %.2f, foretold were %.2f", name, after[name], soon[name])
		}
	}
	if soon["option-A-hottest"] == before["option-A-hottest"] {
		t.Error("the preview of the wire changes nothing: the test says nothing")
	}
}

// hourNumbers are the numbers of the hour that is shown, by test mark.
func (p *tab) hourNumbers() map[string]float64 {
	p.t.Helper()
	return eval[map[string]float64](p, `Object.fromEntries([...document.querySelectorAll(".now td [data-testid]")].map((cell) => [cell.dataset.testid, Number(cell.dataset.value)]))`)
}

// keepFaces keeps the temperatures of the faces that the view is given, by option.
const keepFaces = `(() => {
	const view = document.querySelector("iframe").contentWindow.rowlightView, { setFaces } = view;
	window.faces = [];
	view.setFaces = (option, surface, lit) => {
		window.faces[option] = [...new Float32Array(surface.slice().buffer)];
		setFaces(option, surface, lit);
	};
	return true;
})()`

// keepsItsTasksShort judges the long tasks since they were last cleared: none may be the page's own. A machine with
// other things to do makes any task long now and then, so the page may act twice more; what it does itself is long
// each time.
func (p *tab) keepsItsTasksShort(again func()) {
	p.t.Helper()
	for attempt := 1; ; attempt++ {
		var own []float64
		for _, task := range eval[[]longTask](p, `window.longTasks.splice(0)`) {
			p.t.Logf("attempt %d: a task of %s took %.0f ms", attempt, task.Where, task.Duration_ms)
			if task.Where == "self" {
				own = append(own, task.Duration_ms)
			}
		}
		if len(own) == 0 {
			return
		}
		if attempt == 3 {
			p.t.Errorf("three times tasks of the page itself were long, at last %.0f ms", own)
			return
		}
		again()
	}
}

// restartEngine ends the engine that keepEngine kept, and starts it anew as the page offers.
func (p *tab) restartEngine() {
	p.t.Helper()
	eval[bool](p, `(window.engine.onmessage({ data: { kind: "crashed", generation: -1, reason: "a test" } }), true)`)
	p.until(hook("restart"))
	p.click("restart")
	p.until(hook("calculation") + `.dataset.phase === "running"`)
}
