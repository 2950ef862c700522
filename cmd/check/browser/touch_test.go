//go:build browser

package browser

import (
	"context"

	"github.com/chromedp/cdproto/cdp"
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
