//go:build browser

package browser

import (
	"bytes"
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"

	"rowlight/cmd/site/serve"
)

// keepMemory keeps the memory of a Go program when it starts, and in a worker tells its size when asked.
const keepMemory = `{
	const start = WebAssembly.instantiateStreaming;
	WebAssembly.instantiateStreaming = async (...args) => {
		const made = await start.apply(WebAssembly, args);
		self.programMemory = made.instance.exports.mem;
		return made;
	};
	if (typeof document === "undefined") {
		addEventListener("message", ({ data }) => {
			if (data.kind === "memory") postMessage({ kind: "memory", generation: -1, bytes: self.programMemory?.buffer.byteLength ?? 0 });
		});
	}
}
`

// keepWorkers keeps all workers of the page.
const keepWorkers = `
	window.allWorkers = [];
	window.Worker = class extends Worker {
		constructor(...args) {
			super(...args);
			window.allWorkers.push(this);
		}
		terminate() {
			window.allWorkers = window.allWorkers.filter((other) => other !== this);
			super.terminate();
		}
	};`

// programMemory sums up the memory of the programs [MB]: of the view, and of the engines in all workers.
const programMemory = `(async () => {
	const sizes = await Promise.all(window.allWorkers.map((worker) => new Promise((done) => {
		worker.addEventListener("message", ({ data }) => data.kind === "memory" && done(data.bytes));
		worker.postMessage({ kind: "memory", generation: -1 });
	})));
	const view = document.querySelector("iframe").contentWindow.programMemory.buffer.byteLength;
	return [view, ...sizes].map((bytes) => bytes / 2 ** 20);
})()`

// programsHold sums up what the view and all engines hold when garbage has gone [MB].
const programsHold = `(async () => {
	const held = await Promise.all(window.allWorkers.map((worker) => new Promise((done) => {
		worker.addEventListener("message", ({ data }) => data.kind === "held" && done(data.bytes));
		worker.postMessage({ kind: "held", generation: -1 });
	})));
	return [document.querySelector("iframe").contentWindow.rowlightView.held_bytes(), ...held].map((bytes) => bytes / 2 ** 20);
})()`

// BenchmarkMemory changes options over and over and runs seasons, and tells the memory of the page and of the programs after
// a tenth of it, when all that is remembered has been remembered once, and at the end [MB].
func BenchmarkMemory(b *testing.B) {
	site := serve.Handler(bench.site)
	host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path != "/engine-worker.js" {
			site.ServeHTTP(w, r)
			return
		}
		kept := httptest.NewRecorder()
		site.ServeHTTP(kept, r)
		w.Header().Set("Content-Type", kept.Header().Get("Content-Type"))
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(append([]byte(keepMemory), kept.Body.Bytes()...)))
	}))
	defer host.Close()
	p := newTab(b, bench.browser)
	p.beforeLoad(keepMemory)
	p.beforeLoad(keepWorkers)
	p.beforeLoad(`Object.defineProperty(navigator, "hardwareConcurrency", { value: 2 });`)
	p.open(host.URL + "/").settled()
	p.drawn()
	for b.Loop() {
		p.click("option-A-edit")
		p.grows(b, "changes", 10, func(int) { p.changes(100) })
		p.click("option-A-edit")
		eval[bool](p, hook("season")+`.querySelector("summary").click() === undefined`)
		p.seasonDone()
		eval[bool](p, `(async () => {
			const from = `+hook("season-from")+`, to = Date.parse(`+hook("season-to")+`.value);
			from.value = new Date(to - 30 * 864e5).toISOString().slice(0, 10);
			from.dispatchEvent(new Event("change", { bubbles: true }));
			for (let k = 0; k < 3; k++) await new Promise(requestAnimationFrame);
			return true;
		})()`)
		p.seasonDone()
		p.grows(b, "seasons", 10, func(int) { p.seasonAgain(); p.seasonAgain() })
	}
}

// grows does something so often and reports the memory after the first time and after the last.
func (p *tab) grows(b *testing.B, what string, times int, do func(k int)) {
	for k := range times {
		do(k)
		if k > 0 && k < times-1 {
			continue
		}
		p.until(hook("odds") + `?.classList.contains("pending") === false`) // ranges under way hold as much as a run
		programs, page := 0.0, p.heap()
		each, held := eval[[]float64](p, programMemory), eval[[]float64](p, programsHold)
		for _, size := range each {
			programs += size
		}
		holds := 0.0
		for _, size := range held {
			holds += size
		}
		when := map[bool]string{true: "first", false: "last"}[k == 0]
		b.ReportMetric(programs, fmt.Sprintf("%s-programs-%s-MB", what, when))
		b.ReportMetric(holds, fmt.Sprintf("%s-held-%s-MB", what, when))
		b.ReportMetric(page, fmt.Sprintf("%s-page-%s-MB", what, when))
		b.Logf("%s, %s: page %.1f MB, view and engines %.1f MB, of which they hold %.1f MB", what, when, page, each, held)
	}
}

// changes makes so many changes of options by their sliders, each as soon as the one before is answered: rows of both are
// turned to ever other azimuths, and every tenth pulls leaves, so that vines are measured anew. What comes twice comes after
// 180 azimuths or 20 shares of leaves: a program that remembers all of them grows long after the first hundred changes.
func (p *tab) changes(count int) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`(async (count) => {
		const mark = %s, azimuths = [%s, %s], leaves = document.getElementById("field-options-0-leaves-removedAfternoon");
		for (let k = 0; k < count; k++) {
			const before = Number(mark.dataset.generation), n = (window.changed = (window.changed ?? 0) + 1);
			const slider = n %% 10 ? azimuths[n %% 2] : leaves;
			const [low, high] = [Number(slider.min), Number(slider.max)];
			slider.value = String(slider === leaves ? low + (high - low) * (((n / 10) * 7) %% 20 + 1) / 20 : (((n >> 1) + 1) * 37) %% 180);
			slider.dispatchEvent(new Event("input", { bubbles: true }));
			while (Number(mark.dataset.generation) <= before || mark.dataset.pending !== "false") await new Promise((done) => setTimeout(done, 5));
		}
		return true;
	})(%d)`, hook("calculation"), hook("option-A-azimuth"), hook("option-B-azimuth"), count))
}

// heap is what the page's own objects take after garbage has gone [MB].
func (p *tab) heap() (used_MB float64) {
	p.t.Helper()
	p.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		if _, err := cdp.Call(ctx, t, performance.Enable, performance.EnableParams{}); err != nil {
			return err
		}
		if _, err := cdp.Call(ctx, t, heapprofiler.CollectGarbage, cdp.Empty{}); err != nil {
			return err
		}
		metrics, err := cdp.Call(ctx, t, performance.GetMetrics, cdp.Empty{})
		if err != nil {
			return err
		}
		for _, m := range metrics.Metrics {
			if m.Name == "JSHeapUsedSize" {
				used_MB = m.Value / (1 << 20)
			}
		}
		return nil
	}))
	return used_MB
}
