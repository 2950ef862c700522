//go:build browser

package browser

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// keepLongTasks notes how long each task of the page's own thread takes [ms] that browsers call long:
// over 50 ms.
const keepLongTasks = `
	window.longTasks = [];
	new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map((e) => e.duration))).observe({ type: "longtask" });`

// withoutPictures turns WebGL off, so that drawing without a graphics card does not hide what the page
// itself does.
const withoutPictures = `{
	const get = HTMLCanvasElement.prototype.getContext;
	HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
		return /webgl/.test(kind) ? null : get.call(this, kind, ...rest);
	};
}`

// keepEngine keeps the worker of the engine and notes the messages to and from it.
const keepEngine = `
	window.engineLog = [];
	window.Worker = class extends Worker {
		constructor(...args) {
			super(...args);
			window.engine = this;
			this.addEventListener("message", ({ data }) => this.note("from", data));
		}
		postMessage(data, ...rest) {
			this.note("to", data);
			super.postMessage(data, ...rest);
		}
		note(way, { kind, generation }) {
			window.engineLog.push({ way, kind, generation, at_ms: performance.now() });
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

	p.focus("option-A-azimuth")
	const presses = 12
	for range presses {
		p.do(chromedp.KeyEvent(kb.ArrowRight))
		time.Sleep(30 * time.Millisecond)
	}
	p.until(fmt.Sprintf(`Number(%s.dataset.generation) === %d`, hook("calculation"), 1+presses))
	azimuth := eval[float64](p, `Number(`+hook("option-A-azimuth")+`.value)`)
	p.agrees(rowlightDay(t, changedScenario(t,
		map[string]any{"form": "vsp-spurs", "rows": map[string]any{"azimuth_deg": azimuth}},
		map[string]any{"form": "sprawl"})))

	answered := eval[[]int](p, `window.answered`)
	if len(answered) == 0 || len(answered) >= presses {
		t.Errorf("of %d inputs, these were answered: %v", presses, answered)
	}
	long := eval[[]float64](p, `window.longTasks`)
	t.Logf("answered %v of %d inputs; tasks over 50 ms: %v", answered, presses, long)
	for _, duration := range long {
		t.Errorf("a task of the page took %.0f ms", duration)
	}

	// A long task on purpose shows that they are seen.
	eval[bool](p, `(window.longTasks.length = 0, setTimeout(() => { const end = performance.now() + 80; while (performance.now() < end); }), true)`)
	p.until(`window.longTasks.length > 0`)
}
