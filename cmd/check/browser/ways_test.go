//go:build browser

package browser

import (
	"fmt"
	"strings"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// looksAreLinked turns option A: option B turns with it while they are linked, and stays where it is when they are not.
func (p *tab) looksAreLinked() {
	p.t.Helper()
	other := func(name string) []byte {
		box := p.box("option-B-pane")
		box.Max.Y -= box.Dy() / 2 // its buttons say whether they are linked
		return cropped(p.t, p.shot(name), box)
	}
	turn := func() {
		p.focus("option-A-pane")
		p.do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
		p.still()
	}
	before := other("linked-before")
	turn()
	linked := other("linked")
	if share := changed(before, linked); share < 0.2 {
		p.t.Errorf("linked panes do not turn together: %.1f %% of the other changes", 100*share)
	}
	p.click("option-A-link")
	turn()
	if share := changed(linked, other("free")); share > 0.02 {
		p.t.Errorf("free panes turn together: %.1f %% of the other changes", 100*share)
	}
	p.click("option-A-link")
	p.pinch("option-A-pane")
	p.still()
	if share := changed(linked, other("pinched")); share < 0.2 {
		p.t.Errorf("two fingers do not come closer: %.1f %% of the other pane changes", 100*share)
	}
}

// changed is the share of bytes in which two parts of pictures differ by more than a step or two of the display.
func changed(a, b []byte) float64 {
	count := 0
	for i := range a {
		if d := int(a[i]) - int(b[i]); d*d > 9 {
			count++
		}
	}
	return float64(count) / float64(max(len(a), 1))
}

// deafFrames keeps from frames what a browser tells them of their size, while the page says so: it may come late.
const deafFrames = `if (window !== window.top) window.addEventListener("resize", (event) => {
	if (event.isTrusted && window.top.deaf) event.stopImmediatePropagation();
}, true);`

// everyWayDraws looks in every way, at one and two canvas pixels per CSS pixel and in another size, and from every
// place; each shows another picture, rich in colours, as sharp as the display.
func (p *tab) everyWayDraws() {
	p.t.Helper()
	seen := map[string]string{}
	for _, window := range []struct {
		width int64
		ratio float64
	}{{1280, 1}, {1000, 2}} {
		eval[bool](p, `(window.deaf = true)`)
		p.viewport(window.width, 900, window.ratio)
		p.sharp(window.ratio)
		for _, way := range []string{"natural", "light", "heat", "slice", "outlook"} {
			p.click("way-" + way)
			p.still()
			name := fmt.Sprintf("way-%s-%gx", way, window.ratio)
			picture := p.shot(name)
			if colours := coloursIn(p.t, picture, scaledBox(p.box("option-A-pane"), window.ratio)); colours < 300 {
				p.t.Errorf("%s shows only %d colours", name, colours)
			}
			part := string(cropped(p.t, picture, scaledBox(p.box("option-A-pane"), window.ratio)))
			if same, known := seen[part]; known {
				p.t.Errorf("%s looks the same as %s", name, same)
			}
			seen[part] = name
			if at := p.findBunch(); at == nil {
				p.t.Errorf("%s shows no bunch that one could pick", name)
			} else {
				p.do(chromedp.MouseClickXY(at.X, at.Y))
				p.says("option-A-bunch", fmt.Sprintf("Bunch %d of ", at.Bunch+1))
			}
		}
		p.click("way-natural")
		p.filled("option-A-pane", fmt.Sprintf("filled-%gx", window.ratio))
	}
	p.click("way-outlook")
	p.still()
	labels := eval[[]string](p, `[...document.querySelectorAll("[data-pane='0'] .pane-labels span")].map((s) => s.textContent)`)
	if got := strings.Join(labels, " "); !strings.HasPrefix(got, "N E S W") || !strings.Contains(got, "12:00") {
		p.t.Errorf("the sky of a bunch says %q", got)
	}
	p.viewport(1280, 900, 1)
	p.sharp(1)
	p.click("way-natural")
	p.focus("option-A-pane")
	for _, key := range "35" {
		p.do(chromedp.KeyEvent(string(key)))
		p.still()
		part := string(cropped(p.t, p.shot("from-"+string(key)), p.box("option-A-pane")))
		if same, known := seen[part]; known {
			p.t.Errorf("from place %c it looks the same as %s", key, same)
		}
		seen[part] = "place " + string(key)
	}
}

// sharp waits until the picture has as many pixels per CSS pixel.
func (p *tab) sharp(ratio float64) {
	p.t.Helper()
	p.until(fmt.Sprintf(`(() => {
		const frame = document.querySelector("iframe"), canvas = frame?.contentDocument?.querySelector("canvas");
		return canvas && frame.contentWindow.rowlightView?.frames() > 0 && Math.abs(canvas.width - %g * frame.clientWidth) <= 1;
	})()`, ratio))
}

// bunchesAreRead taps the fruit and goes on by key: the words are those of the very bunch.
func (p *tab) bunchesAreRead() {
	p.t.Helper()
	p.click("way-heat")
	p.focus("option-A-pane")
	p.do(chromedp.KeyEvent("1"))
	p.still()
	at := p.findBunch()
	if at == nil {
		p.t.Fatal("no bunch is found in the picture")
	}
	p.do(chromedp.MouseClickXY(at.X, at.Y))
	p.says("option-A-bunch", fmt.Sprintf("Bunch %d of ", at.Bunch+1))
	p.shot("bunch-read")
	p.click("option-A-bunch-next")
	p.says("option-A-bunch", fmt.Sprintf("Bunch %d of ", at.Bunch+2))
	p.accessible()
}

// pickedBunch is a place of the window [CSS px] and the bunch that the picture shows there.
type pickedBunch struct {
	X, Y  float64
	Bunch int
}

// findBunch looks for a bunch in the pane of option A that nothing lies over; nil where none is shown.
func (p *tab) findBunch() *pickedBunch {
	p.t.Helper()
	box := p.box("option-A-pane")
	return eval[*pickedBunch](p, fmt.Sprintf(`(() => {
		const view = document.querySelector("iframe").contentWindow.rowlightView;
		const frame = document.querySelector("iframe").getBoundingClientRect();
		for (let y = %d; y < %d; y += 8) for (let x = %d; x < %d; x += 8) {
			const at = (dx, dy) => view.bunchAt(0, x - frame.x + dx, y - frame.y + dy);
			const bunch = at(0, 0);
			const inside = bunch >= 0 && [[-2, 0], [2, 0], [0, -2], [0, 2]].every(([dx, dy]) => at(dx, dy) === bunch);
			if (inside && document.elementFromPoint(x, y)?.classList.contains("pane-surface")) return { X: x, Y: y, Bunch: bunch };
		}
		return null;
	})()`, box.Min.Y+12, box.Max.Y-20, box.Min.X+20, box.Max.X-20))
}
