//go:build browser

package browser

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// mostQuads is how many quads may stand in all panes together.
const mostQuads = 30000

// keepFrames notes in the frame of the view how long each callback for a frame takes [ms]: all script of a frame, that of the
// drawing library too.
const keepFrames = `if (window !== window.top) {
	window.callbacks = [];
	const ask = window.requestAnimationFrame.bind(window);
	window.requestAnimationFrame = (call) => ask((now) => {
		const start = performance.now();
		call(now);
		window.callbacks.push(performance.now() - start);
	});
}`

// turning turns all rows a little, one frame after the other, and answers with what each frame took.
const turning = `(async () => {
	const frame = document.querySelector("iframe").contentWindow, view = frame.rowlightView;
	const drawn = async (change) => {
		const before = view.frames();
		frame.callbacks.length = 0;
		change();
		while (view.frames() === before) await new Promise(requestAnimationFrame);
		const callback = Math.max(...frame.callbacks);
		const script = view.lastFrame_ms();
		const pause = () => new Promise((done) => setTimeout(done, 5));
		do await pause(); while (view.busy() || view.lastRaster_ms() === 0);
		return [script, Math.max(callback - script, 0), view.lastRaster_ms(), view.quads()];
	};
	const frames = [];
	for (let i = 0; i < 8; i++) {
		frames.push(await drawn(() => view.setLook(0, { turn_deg: -36 + 3 * i, elevation_deg: 8 + i, distance_m: 3.2 })));
	}
	view.setLook(0, null);
	return frames;
})()`

// TestFrames prints what frames take, script and rasterising apart, and holds the quads to their budget: with one pane and
// with four, moving and still. Times depend on the machine and are not judged.
func TestFrames(t *testing.T) {
	p := newTab(t, bench.browser)
	p.beforeLoad(keepFrames)
	p.open(bench.origin)
	p.settled()
	p.drawn()
	p.still()
	const longestSlice = `document.querySelector("iframe").contentWindow.rowlightView.slice_ms()`
	first := eval[float64](p, longestSlice)
	var hours []string
	for range 12 { // the light of another hour is made anew, roughly and then finely
		p.focus("hour-slider")
		p.do(chromedp.KeyEvent(kb.ArrowRight))
		p.still()
		hours = append(hours, fmt.Sprintf("%.1f", eval[float64](p, longestSlice)))
	}
	var table strings.Builder
	for options := 2; options <= 4; options += 2 {
		for _, way := range []string{"natural", "light", "heat", "slice", "outlook"} {
			if options == 4 && way != "natural" {
				continue
			}
			p.click("way-" + way)
			p.still()
			still := eval[int](p, `document.querySelector("iframe").contentWindow.rowlightView.quads()`)
			frames := eval[[][4]float64](p, turning)
			most := still
			for _, frame := range frames {
				most = max(most, int(frame[3]))
			}
			if most > mostQuads {
				t.Errorf("%s in %d panes: %d quads", way, options, most)
			}
			fmt.Fprintf(&table, "\n| %s, %d panes | %s | %s | %s | %d |", way, options, times(frames, 0), times(frames, 1), times(frames, 2), most)
		}
		if options == 2 {
			p.click("way-natural")
			p.press("add-option")
			p.press("add-option")
		}
	}
	t.Logf("| picture | our script, least and median [ms] | script of the library [ms] | rasterising [ms] | quads, moving or still |\n|---|---|---|---|---|%s", table.String())
	t.Logf("the longest slice of work between frames: %.1f ms while programs start, then after each change of the hour %s ms", first, strings.Join(hours, ", "))
}

// times are the least and the middle of a column of frames: other work on a machine makes times longer, never shorter.
func times(frames [][4]float64, column int) string {
	var values []float64
	for _, frame := range frames {
		values = append(values, frame[column])
	}
	slices.Sort(values)
	return fmt.Sprintf("%.0f, %.0f", values[0], values[len(values)/2])
}
