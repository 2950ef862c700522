//go:build browser

package browser

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"rowlight/cmd/site/serve"
)

// Benchmarks of the page. `go run ./cmd/check -bench` runs them and judges what does not depend on the machine.

// feeling moves a slider, or types numbers from low to high into a box, one change after the other: for each it notes when there were new numbers, first nearly and
// then exactly, when the view had drawn new colours of the fruit, first nearly and then exactly, since the input, and what
// rasterising took [ms].
const feeling = `(async (control, changes, low, high) => {
	const slider = document.querySelector(control), mark = document.querySelector("[data-testid=calculation]");
	const view = document.querySelector("iframe").contentWindow.rowlightView;
	low ??= Number(slider.min);
	high ??= Number(slider.max);
	const pause = (ms) => new Promise((done) => setTimeout(done, ms));
	const change = (marks) => new Promise((done) => {
		const watch = new MutationObserver(() => {
			if (!marks.some((name) => Number(mark.dataset[name]) > generation)) return;
			watch.disconnect();
			done(performance.now() - start);
		});
		watch.observe(mark, { attributes: true });
	});
	let generation = 0, start = 0;
	const taken = [], shown = [], { setFaces } = view;
	let coloured = 0; // when the view was last given other colours
	view.setFaces = (option, surface, lit) => {
		const before = shown[option];
		if (!before || before.length !== surface.length || surface.some((byte, k) => byte !== before[k])) coloured = performance.now();
		shown[option] = surface.slice();
		setFaces(option, surface, lit);
	};
	const drawn = async (from) => {
		const at = () => view.lastDrawn_ms() - performance.timeOrigin;
		while ((coloured < from || at() < coloured) && performance.now() - start < 5000) await pause(1);
		return at() - start;
	};
	for (let k = 0; k < changes; k++) {
		while (mark.dataset.pending !== "false" || view.busy()) await pause(20);
		await pause(500); // a hand rests before it takes a slider
		generation = Number(mark.dataset.generation);
		const soon = change(["generation", "preview"]), exact = change(["generation"]);
		start = performance.now();
		slider.value = String(low + (high - low) * (0.2 + 0.6 * ((k * 7) % 13) / 12));
		slider.dispatchEvent(new Event("input", { bubbles: true }));
		const seen = drawn(start), numbers = await soon, all = await exact;
		const times = [numbers, all, await seen, await drawn(start + all)];
		while (view.busy()) await pause(5);
		taken.push([...times, view.lastRaster_ms()]);
	}
	view.setFaces = setFaces;
	return taken;
})`

// BenchmarkFeel moves a slider of one option, one of the weather of both, one that pulls leaves, and the fruiting wire, two
// options shown by the heat of their fruit.
func BenchmarkFeel(b *testing.B) {
	for _, change := range []struct{ name, control, between string }{
		{"azimuth", "#field-options-0-rows-azimuth_deg", "null, null"},
		{"wind", "#field-weather-wind_ms", "null, null"},
		{"leaves", "#field-options-0-leaves-removedAfternoon", "null, null"},
		{"wire", "[data-testid=option-A-wire-1-height]", "0.7, 1.2"},
	} {
		b.Run(change.name, func(b *testing.B) {
			p := newTab(b, bench.browser)
			p.beforeLoad(keepLongTasks)
			p.open(bench.origin).settled()
			p.drawn()
			p.click("way-heat")
			switch change.name {
			case "wind":
				p.click("site")
			case "leaves", "wire":
				p.click("option-A-edit")
			}
			p.until(`!!document.querySelector(` + quoted(change.control) + `)`)
			p.still()
			eval[bool](p, `(window.longTasks.length = 0, true)`)
			changes := 40
			for b.Loop() {
				taken := eval[[][5]float64](p, fmt.Sprintf(`%s(%q, %d, %s)`, feeling, change.control, changes, change.between))
				b.ReportMetric(taken[0][0], "first-ms")
				b.ReportMetric(percentile(taken, 0, 50), "middle-ms")
				b.ReportMetric(late(taken, 0), "numbers-ms")
				b.ReportMetric(late(taken, 1), "exact-ms")
				b.ReportMetric(late(taken, 2), "drawn-ms")
				b.ReportMetric(late(taken, 3), "drawn-exact-ms")
				b.ReportMetric(late(taken, 4), "raster-ms")
			}
			longest := 0.0
			for _, task := range eval[[]longTask](p, `window.longTasks`) {
				if task.Where == "self" {
					longest = max(longest, task.Duration_ms)
				}
			}
			b.ReportMetric(longest, "longest-task-ms")
		})
	}
}

// late is the 95th percentile of a column.
func late(taken [][5]float64, column int) float64 { return percentile(taken, column, 95) }

func percentile(taken [][5]float64, column, of100 int) float64 {
	var values []float64
	for _, change := range taken {
		values = append(values, change[column])
	}
	slices.Sort(values)
	return values[(len(values)*of100+99)/100-1]
}

// BenchmarkRanges is the time from a change to its first ranges and to its last, and how often the view then draws in
// three seconds in which nothing happens.
func BenchmarkRanges(b *testing.B) {
	p := newTab(b, bench.browser).open(bench.origin)
	p.settled()
	p.drawn()
	ranged := hook("odds") + `?.classList.contains("pending") === false`
	p.until(ranged)
	for b.Loop() {
		times := eval[[2]float64](p, `(async () => {
			const odds = `+hook("odds")+`, slider = `+hook("option-A-azimuth")+`;
			const frame = () => new Promise((done) => setTimeout(done, 10));
			const start = performance.now();
			slider.value = String(Number(slider.value) + 5);
			slider.dispatchEvent(new Event("input", { bubbles: true }));
			while (Number(odds.dataset.draws) > 0) await frame();
			while (Number(odds.dataset.draws) === 0) await frame();
			const first = performance.now() - start;
			while (odds.classList.contains("pending")) await frame();
			return [first, performance.now() - start];
		})()`)
		b.ReportMetric(times[0], "first-ms")
		b.ReportMetric(times[1], "all-ms")
	}
	p.still()
	before := p.frames()
	time.Sleep(3 * time.Second)
	b.ReportMetric(float64(p.frames()-before), "idle-draws")
}

// BenchmarkFirstVisit opens the compressed site in an empty profile: the time to the first numbers and the first picture,
// and what came over the network.
func BenchmarkFirstVisit(b *testing.B) {
	dir, err := bench.packing()
	if err != nil {
		b.Fatal(err)
	}
	var sent atomic.Int64
	site := serve.Handler(dir)
	host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		site.ServeHTTP(&counter{w, &sent}, r)
	}))
	defer host.Close()
	for b.Loop() {
		sent.Store(0)
		p := newTab(b, bench.browser)
		p.beforeLoad(`if (window === window.top) {
			window.firsts = {};
			const look = () => {
				window.firsts.numbers ??= ` + hook("option-A-hottest") + `?.dataset.value && performance.now();
				if (document.querySelector("iframe")?.contentWindow?.rowlightView?.frames?.() > 0) window.firsts.picture ??= performance.now();
				if (!window.firsts.numbers || !window.firsts.picture) setTimeout(look, 5);
			};
			addEventListener("DOMContentLoaded", look);
		}`)
		p.open(host.URL + "/")
		p.until(`window.firsts.numbers && window.firsts.picture`)
		b.ReportMetric(eval[float64](p, `window.firsts.numbers`), "numbers-ms")
		b.ReportMetric(eval[float64](p, `window.firsts.picture`), "picture-ms")
		b.ReportMetric(float64(sent.Load())/1e6, "MB")
	}
}

// counter counts the bytes of answers.
type counter struct {
	http.ResponseWriter
	sent *atomic.Int64
}

func (c *counter) Write(p []byte) (int, error) {
	c.sent.Add(int64(len(p)))
	return c.ResponseWriter.Write(p)
}

// otherVines plans seasons for vines of another seed, once window.seed is set.
const otherVines = `
	window.Worker = class extends Worker {
		postMessage(data, ...rest) {
			if (data.kind === "plan" && window.seed) data.scenario = JSON.stringify({ ...JSON.parse(data.scenario), seed: window.seed });
			super.postMessage(data, ...rest);
		}
	};`

// BenchmarkSeason runs a season of two options in the page by one helper and by two: cold, with the start of the helpers;
// with other vines, which all have to grow, when the helpers have started; and warm, with vines and light as they remember them.
func BenchmarkSeason(b *testing.B) {
	for _, helpers := range []int{1, 2} {
		b.Run(fmt.Sprintf("by-%d", helpers), func(b *testing.B) {
			p := newTab(b, bench.browser)
			p.beforeLoad(withoutPictures)
			p.beforeLoad(otherVines)
			p.beforeLoad(fmt.Sprintf(`Object.defineProperty(navigator, "hardwareConcurrency", { value: %d });`, helpers))
			p.open(bench.origin).settled()
			p.until(hook("odds") + `?.classList.contains("pending") === false`) // nothing else is under way
			for b.Loop() {
				start := time.Now()
				eval[bool](p, hook("season")+`.querySelector("summary").click() === undefined`)
				p.seasonDone()
				b.ReportMetric(time.Since(start).Seconds()*1e3, "cold-ms")
				for _, name := range []string{"vines-ms", "warm-ms"} {
					if name == "vines-ms" {
						eval[bool](p, `(window.seed = (window.seed ?? 100) + 1, true)`)
					}
					start = time.Now()
					p.seasonAgain()
					b.ReportMetric(time.Since(start).Seconds()*1e3, name)
				}
			}
		})
	}
}

// seasonDone waits for a season.
func (p *tab) seasonDone() {
	p.t.Helper()
	p.until(hook("season-state") + `?.dataset.done === "true"`)
}

// seasonAgain runs the season of the page once more, a day shorter.
func (p *tab) seasonAgain() {
	p.t.Helper()
	eval[bool](p, `(async () => {
		const to = `+hook("season-to")+`;
		to.value = new Date(Date.parse(to.value) - 864e5).toISOString().slice(0, 10);
		to.dispatchEvent(new Event("change", { bubbles: true }));
		for (let k = 0; k < 3; k++) await new Promise(requestAnimationFrame);
		return true;
	})()`)
	p.seasonDone()
}
