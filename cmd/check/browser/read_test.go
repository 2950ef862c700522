//go:build browser

package browser

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// hook is the expression for the element with a test mark.
func hook(mark string) string {
	return fmt.Sprintf(`document.querySelector('[data-testid=%q]')`, mark)
}

// numbers reads the full values behind all numbers on the page, by their test marks.
func (p *tab) numbers() map[string]float64 {
	p.t.Helper()
	texts := eval[map[string]string](p, `Object.fromEntries(
		[...document.querySelectorAll("[data-testid][data-value]")].map((e) => [e.dataset.testid, e.dataset.value]))`)
	numbers := map[string]float64{}
	for mark, text := range texts {
		value, err := strconv.ParseFloat(text, 64)
		if err != nil {
			p.t.Errorf("%s holds %q, which is no number", mark, text)
			continue
		}
		numbers[mark] = value
	}
	return numbers
}

// text reads the text of an element.
func (p *tab) text(mark string) string {
	p.t.Helper()
	return eval[string](p, hook(mark)+`?.innerText ?? "missing"`)
}

// viewport sets the size of the window in CSS pixels and the device pixels in each.
func (p *tab) viewport(width, height int64, scale float64) {
	p.t.Helper()
	p.do(chromedp.EmulateViewport(width, height, chromedp.EmulateScale(scale)))
}

// colourScheme sets what the system prefers: light or dark.
func (p *tab) colourScheme(scheme string) {
	p.t.Helper()
	p.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
		})
		return err
	}))
}

// unmoved waits until no colour or place on the open page is on its way to another. The browser tells the page what the system
// prefers only with its next frame, and what then changes slowly starts in that frame: both must have passed before.
func (p *tab) unmoved() {
	p.t.Helper()
	eval[bool](p, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
	p.until(`document.getAnimations().length === 0`)
}

// look is how a person has set window and colours.
type look struct {
	scheme        string
	width, height int64
}

// looks runs a check in each look, each as a test of its own, on the page as it is: what resizing and the
// colours of the system change must follow without a reload.
func (p *tab) looks(looks []look, check func(look look, name string)) {
	outer := p.t.(*testing.T)
	defer func() { p.t = outer }()
	for _, l := range looks {
		name := fmt.Sprintf("%s-%d", l.scheme, l.width)
		outer.Run(name, func(t *testing.T) {
			p.t = t
			p.viewport(l.width, l.height, 1)
			p.colourScheme(l.scheme)
			p.unmoved()
			check(l, name)
		})
	}
}

// shot takes a picture of the window. It is kept when -shots names a folder.
func (p *tab) shot(name string) []byte {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	png, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	if err != nil {
		p.t.Errorf("no picture %s: %v", name, err)
		return nil
	}
	p.keepShot(name+".png", png)
	return png
}

// violations lists what the policy blocked in the page and in its frames.
func (p *tab) violations() []string {
	p.t.Helper()
	return eval[[]string](p, `[window, ...[...document.querySelectorAll("iframe")].map((f) => f.contentWindow)].flatMap((w) => w.violations ?? ["not listening"])`)
}

// strangers lists the requests that left the page's own origin.
func (p *tab) strangers(address string) []string {
	p.t.Helper()
	own, err := url.Parse(address)
	if err != nil {
		p.t.Fatal(err)
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	var strangers []string
	for _, request := range p.requests {
		asked, err := url.Parse(request)
		local := err == nil && (asked.Scheme == "data" || asked.Scheme == "blob" || (asked.Scheme == own.Scheme && asked.Host == own.Host))
		if !local {
			strangers = append(strangers, request)
		}
	}
	return strangers
}

// forgetProblems drops what the console said so far, in tests that provoke it.
func (p *tab) forgetProblems() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.problems = nil
}

// keepShot writes a picture or a page of paper into the folder of the screenshots, if there is one.
func (p *tab) keepShot(name string, content []byte) {
	p.t.Helper()
	if *shotsFolder == "" {
		return
	}
	if err := os.MkdirAll(*shotsFolder, 0o755); err != nil {
		p.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(*shotsFolder, name), content, 0o644); err != nil {
		p.t.Fatal(err)
	}
}
