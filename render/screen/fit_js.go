package screen

import (
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
)

// keepFitting makes the canvas as large as the frame whenever the frame changes. The drawing library does so too, but only
// where a browser tells it: a canvas of another size would show part of what is drawn, and beside it nothing.
func (s *Screen) keepFitting() {
	body := js.Global().Get("document").Get("body")
	changed := js.FuncOf(func(js.Value, []js.Value) any {
		s.fit()
		return nil
	})
	js.Global().Get("ResizeObserver").New(changed).Call("observe", body)
}

// fit tells the drawing library that the frame has another size than the canvas, if it has, and draws all anew.
func (s *Screen) fit() {
	window := js.Global()
	canvas := window.Get("document").Call("querySelector", "canvas")
	if !canvas.Truthy() {
		return
	}
	body, ratio := window.Get("document").Get("body"), ebiten.Monitor().DeviceScaleFactor()
	for length, side := range map[string]string{"width": "clientWidth", "height": "clientHeight"} {
		if canvas.Get(length).Int() != int(body.Get(side).Float()*ratio) {
			window.Call("dispatchEvent", window.Get("Event").New("resize"))
			s.stage.Invalidate()
			s.Refresh()
			return
		}
	}
}
