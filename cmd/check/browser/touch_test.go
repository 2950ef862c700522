//go:build browser

package browser

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// finger is a place of the window [CSS px].
type finger struct{ x, y float64 }

// touch puts fingers on the window, moves them or, without any, lifts them.
func touch(kind input.DispatchTouchEventType, fingers ...finger) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		params := input.DispatchTouchEventParams{Type: kind, TouchPoints: []*input.TouchPoint{}}
		for i, at := range fingers {
			params.TouchPoints = append(params.TouchPoints, &input.TouchPoint{X: at.x, Y: at.y, ID: new(float64(i))})
		}
		_, err := cdp.Call(ctx, t, input.DispatchTouchEvent, params)
		return err
	})
}

// swipe draws one finger from a place to another.
func (p *tab) swipe(from, to finger) {
	p.t.Helper()
	const steps = 6
	p.do(touch(input.DispatchTouchEventTypeTouchStart, from))
	for i := 1; i <= steps; i++ {
		share := float64(i) / steps
		p.do(touch(input.DispatchTouchEventTypeTouchMove, finger{from.x + share*(to.x-from.x), from.y + share*(to.y-from.y)}))
	}
	p.do(touch(input.DispatchTouchEventTypeTouchEnd))
}

// pinch spreads two fingers on an element.
func (p *tab) pinch(mark string) {
	p.t.Helper()
	at := p.middle(mark)
	apart := func(by float64) []finger { return []finger{{at.x - by, at.y}, {at.x + by, at.y}} }
	p.do(touch(input.DispatchTouchEventTypeTouchStart, apart(30)...), touch(input.DispatchTouchEventTypeTouchMove, apart(50)...),
		touch(input.DispatchTouchEventTypeTouchMove, apart(70)...), touch(input.DispatchTouchEventTypeTouchEnd))
}

// middle is that of an element.
func (p *tab) middle(mark string) finger {
	p.t.Helper()
	box := p.box(mark)
	return finger{float64(box.Min.X+box.Max.X) / 2, float64(box.Min.Y+box.Max.Y) / 2}
}

// tap touches a place of the window for a moment.
func (p *tab) tap(at finger) {
	p.t.Helper()
	p.do(touch(input.DispatchTouchEventTypeTouchStart, at), touch(input.DispatchTouchEventTypeTouchEnd))
}

// TestByTouch does with fingers, on a small screen, what one does with a picture and the hour: turn it, come closer, read a
// bunch, unfold its tools, and choose the hour.
func TestByTouch(t *testing.T) {
	t.Parallel()
	p := newTab(t, bench.browser)
	p.viewport(390, 844, 1)
	p.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: true, MaxTouchPoints: 5})
		return err
	}))
	p.open(bench.origin)
	p.settled()
	p.drawn()
	if !eval[bool](p, `matchMedia("(pointer: coarse)").matches`) {
		t.Fatal("the window is not one for fingers")
	}
	eval[bool](p, `(`+hook("option-A-pane")+`.scrollIntoView({ block: "center" }), true)`)
	before := p.pane("touch-first")
	changes := func(what string) {
		t.Helper()
		after := p.pane("touch-" + what)
		if bytes.Equal(before, after) {
			t.Errorf("%s changes nothing in the picture", what)
		}
		before = after
	}
	middle := p.middle("option-A-pane")
	p.swipe(middle, finger{middle.x + 90, middle.y + 5})
	changes("swipe")
	p.pinch("option-A-pane")
	changes("pinch")

	p.tap(p.middle("option-A-tools"))
	p.until(hook("option-A-closer") + `.checkVisibility()`)
	for _, mark := range []string{"option-A-tools", "option-A-closer", "option-A-read", "option-A-link"} {
		if box := p.box(mark); box.Dx() < 44 || box.Dy() < 44 {
			t.Errorf("%s is %d × %d px, too small for a finger", mark, box.Dx(), box.Dy())
		}
	}
	p.tap(p.middle("option-A-closer"))
	p.tap(finger{float64(p.box("option-A-pane").Min.X) + 30, middle.y}) // folds the tools again
	p.until(`!` + hook("option-A-closer") + `.checkVisibility()`)
	changes("closer")

	p.focus("option-A-pane")
	p.do(chromedp.KeyEvent("1")) // from the front
	p.still()
	at := p.findBunch()
	if at == nil {
		t.Fatal("no bunch is found in the picture")
	}
	p.tap(finger{at.X, at.Y})
	p.says("option-A-bunch", fmt.Sprintf("Bunch %d of ", at.Bunch+1))

	hour := p.numbers()["hour"]
	slider := p.box("hour-slider")
	place := func(hour float64) finger {
		const inset = 14 // of the ends of the slider, half its thumb
		return finger{float64(slider.Min.X) + inset + hour/24*float64(slider.Dx()-2*inset), float64(slider.Min.Y+slider.Max.Y) / 2}
	}
	p.swipe(place(hour), place(9))
	if now := p.numbers()["hour"]; math.Abs(now-9) > 0.5 {
		t.Errorf("a finger that draws the hour from %.2f to 9 leaves it at %.2f", hour, now)
	}
}

// pane is the picture of option A without its tools.
func (p *tab) pane(name string) []byte {
	p.t.Helper()
	p.still()
	box := p.box("option-A-pane")
	box.Max.Y -= box.Dy() / 2
	return cropped(p.t, p.shot(name), box)
}
