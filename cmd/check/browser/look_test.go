//go:build browser

package browser

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestPicture takes the picture of the README. The panes must show something rich: a picture that is
// one plain colour, or a loading text, is no picture.
func TestPicture(t *testing.T) {
	t.Parallel()
	p := newTab(t, bench.browser)
	p.viewport(1440, 1180, 1)
	p.colourScheme("light")
	p.open(bench.origin)
	p.settled()
	p.drawn()
	p.until(hook("odds") + `?.classList.contains("pending") === false`) // all ranges stand under their numbers
	p.still()
	picture := p.shot("picture")
	for _, letter := range "AB" {
		if colours := coloursIn(t, picture, p.box(fmt.Sprintf("option-%c-pane", letter))); colours < 2000 {
			t.Errorf("pane %c shows only %d colours", letter, colours)
		}
	}
	if *pictureFile == "" {
		return
	}
	if err := os.MkdirAll(filepath.Dir(*pictureFile), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(*pictureFile, picture, 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestPanesFollowTheHour draws another picture at another hour, and draws nothing while nothing changes.
func TestPanesFollowTheHour(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.drawn()
	p.still()
	afternoon := p.shot("afternoon")
	p.dragSlider("hour-slider", 0.35)
	p.still()
	if morning := p.shot("morning"); bytes.Equal(cropped(t, afternoon, p.box("option-A-pane")), cropped(t, morning, p.box("option-A-pane"))) {
		t.Error("the pane looks the same in the morning and in the afternoon")
	}
	frames := p.frames()
	time.Sleep(time.Second)
	if now := p.frames(); now != frames {
		t.Errorf("%d frames were drawn in a second in which nothing changed", now-frames)
	}
}

// TestCameraByMouseAndKeys turns the picture of option A.
func TestCameraByMouseAndKeys(t *testing.T) {
	t.Parallel()
	p := newTab(t, bench.browser)
	p.beforeLoad(deafFrames)
	p.open(bench.origin)
	p.settled()
	p.drawn()
	p.still()
	box := p.box("option-A-pane")
	first := cropped(t, p.shot("camera-first"), box)
	centre := box.Min.Add(box.Max).Div(2)
	p.do(chromedp.DragAndDropXY(float64(centre.X), float64(centre.Y), float64(centre.X+120), float64(centre.Y-20), 5))
	p.still()
	dragged := cropped(t, p.shot("camera-dragged"), box)
	if bytes.Equal(first, dragged) {
		t.Error("dragging the pane turns nothing")
	}
	p.focus("option-A-pane")
	p.do(chromedp.KeyEvent(kb.ArrowLeft), chromedp.KeyEvent(kb.ArrowLeft))
	p.still()
	if turned := cropped(t, p.shot("camera-keys"), box); bytes.Equal(dragged, turned) {
		t.Error("the arrow keys turn nothing")
	}
	p.looksAreLinked()
	p.everyWayDraws()
	p.bunchesAreRead()
}

// scaledBox is a box of the page in pixels of a picture of it.
func scaledBox(box image.Rectangle, ratio float64) image.Rectangle {
	scaled := func(v int) int { return int(float64(v) * ratio) }
	return image.Rect(scaled(box.Min.X), scaled(box.Min.Y), scaled(box.Max.X), scaled(box.Max.Y))
}

// TestEveryLookIsAccessible runs axe over the page in both looks, wide and narrow, and looks for
// content that does not fit.
func TestEveryLookIsAccessible(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.drawn()
	p.looks([]look{{"light", 1440, 900}, {"dark", 1440, 900}, {"light", 390, 844}, {"dark", 320, 640}}, func(look look, name string) {
		p.still()
		p.shot("look-" + name)
		p.filled("option-A-pane", "look-"+name+"-pane")
		p.accessible()
		if wide := eval[int](p, `document.scrollingElement.scrollWidth`); wide > int(look.width) {
			p.t.Errorf("the page is %d px wide in a window of %d", wide, look.width)
		}
		for _, small := range eval[[]string](p, smallTexts) {
			p.t.Error(small)
		}
	})
	p.readFromTheLastRow()
	p.speaksSpanish()
}

// smallTexts lists texts of the page of less than 12 px; those of drawings grow and shrink with them.
const smallTexts = `(() => [...document.querySelectorAll("body *")].filter((e) => e.checkVisibility() && !e.closest(".visually-hidden")
	&& [...e.childNodes].some((n) => n.nodeType === Node.TEXT_NODE && n.data.trim())).flatMap((e) => {
		const size = parseFloat(getComputedStyle(e).fontSize) * (e.getScreenCTM?.()?.a ?? 1);
		return size < 11.95 ? [e.tagName.toLowerCase() + " “" + e.textContent.trim().slice(0, 30) + "” of " + size.toFixed(1) + " px"] : [];
	}))()`

// accessible runs axe over the page as it is once nothing on it moves.
func (p *tab) accessible() {
	p.t.Helper()
	axe, err := os.ReadFile(filepath.Join(bench.root, "web", "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		p.t.Fatal(err)
	}
	eval[chromedp.Void](p, string(axe)+"\nundefined")
	p.unmoved()
	// What lies under the ribbon or a sheet comes out by scrolling or closing: the sizes of targets are those of the page
	// without them.
	found := eval[[]string](p, `(() => {
		const ribbon = document.querySelector(".ribbon");
		ribbon?.style.setProperty("position", "static");
		const sizes = { "target-size": { enabled: !document.querySelector(".sheet") } };
		return axe.run(document, { iframes: false, rules: sizes }).then((r) => {
			ribbon?.style.removeProperty("position");
			return r.violations.map((v) =>
				v.impact + " " + v.id + ": " + v.help + " — " + v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)).join(" | "));
		});
	})()`)
	for _, violation := range found {
		p.t.Error(violation)
	}
}

// focused is the test mark of what has the focus, or its tag, and whether the ribbon lies over it.
const focused = `(() => {
	const e = document.activeElement, bar = document.querySelector(".ribbon").getBoundingClientRect();
	const box = e.getBoundingClientRect();
	return { At: e.dataset.testid ?? e.tagName, Covered: e !== document.body && !e.closest(".ribbon") && box.bottom > bar.top + 1 };
})()`

// TestTabReachesEverythingAndIsNotTrapped walks through the page with the Tab key; the ribbon covers nothing that has the
// focus.
func TestTabReachesEverythingAndIsNotTrapped(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.drawn()
	seen := map[string]bool{}
	for range 120 {
		p.do(chromedp.KeyEvent(kb.Tab))
		now := eval[struct {
			At      string
			Covered bool
		}](p, focused)
		at := now.At
		if now.Covered {
			t.Errorf("the ribbon lies over %s, which has the focus", at)
		}
		if at == "IFRAME" {
			t.Fatal("the focus went into the view's frame")
		}
		seen[at] = true
		if at == "BODY" && len(seen) > 5 {
			break
		}
	}
	var missing []string
	for _, mark := range []string{"hour-slider", "option-A-form", "option-A-azimuth", "option-A-pane", "option-B-pane", "site", "theme", "play"} {
		if !seen[mark] {
			missing = append(missing, mark)
		}
	}
	if len(missing) > 0 {
		t.Errorf("Tab does not reach %s; it reaches %v", strings.Join(missing, ", "), seen)
	}
}

// filled looks at the upper half of a pane: the picture must cover it to its edges. What nothing drew on is black or has the
// colour of the paper of the view, all along a line.
func (p *tab) filled(mark, name string) {
	p.t.Helper()
	eval[bool](p, `(() => { `+hook(mark)+`.scrollIntoView({ block: "center" }); return true; })()`)
	p.still()
	box := p.box(mark)
	box.Max.Y -= box.Dy() / 2
	ratio := eval[float64](p, `window.devicePixelRatio`)
	box = scaledBox(box, ratio)
	pixels, blank := cropped(p.t, p.shot(name), box), 0
	for y := range box.Dy() {
		bare := 0
		for x := range box.Dx() {
			switch [3]byte(pixels[3*(y*box.Dx()+x):]) {
			case [3]byte{}, [3]byte{18, 20, 18}, [3]byte{251, 251, 248}:
				bare++
			}
		}
		if bare > box.Dx()*9/10 {
			blank++
		}
	}
	if blank > int(2*ratio) {
		p.t.Errorf("on %d lines of %d of the upper half of %s nothing is drawn: the picture does not fill it", blank, box.Dy(), mark)
	}
}

// frames is how often the view has drawn.
func (p *tab) frames() int {
	p.t.Helper()
	return eval[int](p, `document.querySelector("iframe").contentWindow.rowlightView.frames()`)
}

// still waits until the view's picture is finished and it has drawn nothing for half a second.
func (p *tab) still() {
	p.t.Helper()
	last, since := p.frames(), time.Now()
	for deadline := time.Now().Add(patience); time.Since(since) < 500*time.Millisecond; time.Sleep(50 * time.Millisecond) {
		busy := eval[bool](p, `document.querySelector("iframe").contentWindow.rowlightView.busy()`)
		if now := p.frames(); now != last || busy {
			last, since = now, time.Now()
		}
		if time.Now().After(deadline) {
			p.t.Fatal("the view draws without end")
		}
	}
}

// box is the place of an element in the window, in CSS pixels.
func (p *tab) box(mark string) image.Rectangle {
	p.t.Helper()
	type place struct{ Left, Top, Right, Bottom float64 }
	b := eval[place](p, `(() => { const b = `+hook(mark)+`.getBoundingClientRect(); return { Left: b.left, Top: b.top, Right: b.right, Bottom: b.bottom }; })()`)
	return image.Rect(int(b.Left), int(b.Top), int(b.Right), int(b.Bottom))
}

// cropped is the part of a picture as bytes.
func cropped(t testing.TB, picture []byte, part image.Rectangle) []byte {
	t.Helper()
	whole, err := png.Decode(bytes.NewReader(picture))
	if err != nil {
		t.Fatal(err)
	}
	part = part.Intersect(whole.Bounds())
	if part.Empty() {
		t.Fatal("the part lies outside the picture")
	}
	var pixels []byte
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			r, g, b, _ := whole.At(x, y).RGBA()
			pixels = append(pixels, byte(r>>8), byte(g>>8), byte(b>>8))
		}
	}
	return pixels
}

// coloursIn counts the different colours in a part of a picture.
func coloursIn(t testing.TB, picture []byte, part image.Rectangle) int {
	t.Helper()
	pixels := cropped(t, picture, part)
	colours := map[[3]byte]bool{}
	for i := 0; i+2 < len(pixels); i += 3 {
		colours[[3]byte(pixels[i:i+3])] = true
	}
	return len(colours)
}
