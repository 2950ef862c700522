//go:build browser

package browser

import (
	"context"
	"image"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestNothingLeavesTheOrigin uses the page and then looks at what it asked for, and whether its
// policy blocked anything.
func TestNothingLeavesTheOrigin(t *testing.T) {
	before := len(bench.outside.requests())
	p := openPage(t, bench.origin)
	p.drawn()
	p.dragSlider("hour-slider", 0.4)
	p.do(chromedp.Click(chromedp.CSS(`[data-testid="add-option"]`)))
	p.answered()
	for _, request := range p.strangers(bench.origin) {
		t.Errorf("the page asked for %s", request)
	}
	for _, request := range bench.outside.requests()[before:] {
		t.Errorf("something left this machine: %s", request)
	}
	for _, violation := range p.violations() {
		t.Errorf("the Content-Security-Policy blocked %s", violation)
	}
}

// TestOutsideIsSeen proves that the two checks above can fail: a page without a policy that asks for
// a stranger, also from a worker, is caught.
func TestOutsideIsSeen(t *testing.T) {
	before := len(bench.outside.requests())
	p := newTab(t, bench.browser).open("data:text/html,<title>no policy</title>")
	eval[bool](p, `fetch("http://vineyard.example/page").then(() => true, () => true)`)
	eval[bool](p, `new Promise((done) => {
		const code = 'fetch("http://vineyard.example/worker").then(() => postMessage(true), () => postMessage(true))';
		const worker = new Worker(URL.createObjectURL(new Blob([code], { type: "text/javascript" })));
		worker.onmessage = () => done(true);
	})`)
	p.forgetProblems()
	if len(p.strangers(bench.origin)) == 0 {
		t.Error("the page's request went unseen")
	}
	if asked := bench.outside.requests()[before:]; len(asked) < 2 {
		t.Errorf("the proxy saw only %q", asked)
	}
}

// TestPolicyIsInForce tries what the policy forbids.
func TestPolicyIsInForce(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	eval[bool](p, `(() => { const s = document.createElement("script"); s.textContent = "window.slipped = true"; document.head.append(s); return true; })()`)
	eval[bool](p, `fetch("http://vineyard.example/").then(() => false, () => true)`)
	p.until(`window.violations.length >= 2`)
	p.forgetProblems()
	if eval[bool](p, `window.slipped === true`) {
		t.Error("a script in the page's text ran")
	}
}

// TestSubPath opens the page where a project page has it: below other folders of a host.
func TestSubPath(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.below)
	p.agrees(rowlightDay(t, firstScenario()))
	p.drawn()
	for _, request := range p.strangers(bench.below) {
		t.Errorf("the page asked for %s", request)
	}
}

// TestWithoutWebAssembly says plainly what is missing.
func TestWithoutWebAssembly(t *testing.T) {
	p := newTab(t, bench.browser)
	p.beforeLoad(`delete globalThis.WebAssembly;`)
	p.open(bench.origin)
	p.until(`/WebAssembly/.test(document.body.innerText)`)
	p.shot("no-webassembly")
}

// TestWithoutWebGL keeps every number, paints the pictures and says so; with no canvas at all it says that there are none.
func TestWithoutWebGL(t *testing.T) {
	t.Parallel()
	p := newTab(t, bench.browser)
	p.beforeLoad(withoutWebGL)
	p.beforeLoad(keepLongTasks)
	p.open(bench.origin)
	p.settled()
	p.until(hook("painted"))
	p.says("painted", "WebGL")
	p.drawn()
	p.still()
	p.agrees(rowlightDay(t, firstScenario()))
	p.paintedMatches()
	p.click("way-heat")
	p.bunchesAreRead()

	none := newTab(t, bench.browser)
	none.beforeLoad(withoutPictures)
	none.open(bench.origin)
	none.settled()
	none.until(`/draws no pictures/.test(document.body.innerText)`)
}

// paintedMatches wants the painted picture on the screen to be that of the command line, to the last bits of numbers.
func (p *tab) paintedMatches() {
	p.t.Helper()
	p.viewport(1280, 900, 1)
	p.still()
	box := p.paneBox("A")
	shown := image.Rect(92, 9, box.Dx()-9, box.Dy()-60)
	screen := paneOf(p.t, p.shot("painted"), box)
	if apart := blocksApart(screen, rowlightPicture(p.t, firstScenario(), "A", box, "natural"), shown); apart > 0.5 {
		p.t.Errorf("painted colours differ by ΔE %.2f on average", apart)
	}
	if slice := eval[float64](p, `document.querySelector("iframe").contentWindow.rowlightView.slice_ms()`); slice > 0 {
		p.t.Logf("the longest slice took %.1f ms", slice)
	}
}

// TestChromiumWithoutWebGL is the same with a browser that really has none.
func TestChromiumWithoutWebGL(t *testing.T) {
	t.Parallel()
	browser, stop, err := startChromium(t.TempDir(), chromedp.Flag("disable-webgl", true), chromedp.Flag("disable-3d-apis", true))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(stop)
	p := newTab(t, context.Context(browser)).open(bench.origin)
	p.settled()
	p.until(hook("painted"))
	p.drawn()
	p.still()
	if colours := coloursIn(t, p.shot("chromium-painted"), p.box("option-A-pane")); colours < 2000 {
		t.Errorf("the painted pane shows only %d colours", colours)
	}
}
