//go:build js

package main

import (
	"fmt"
	"image"
	"image/color"
	"syscall/js"
	"time"

	"rowlight/render"
)

const (
	// paintSlice is how long the program works at a stretch: the page shares its thread.
	paintSlice = 5 * time.Millisecond
	// paintCalm is how long after the last call of the page pictures are made finer.
	paintCalm = 250 * time.Millisecond
)

// painted shows a stage without a graphics card: the easel paints, and a plain canvas shows what it has painted.
type painted struct {
	stage   *render.Stage
	easel   *render.Easel
	canvas  js.Value // on the page
	context js.Value
	patch   js.Value // one that holds a picture before it is enlarged
	paper   color.Color
	port    js.Value
	posted  bool // a turn is asked for
	touched time.Time
	calm    *time.Timer
	longest time.Duration // slice since it was asked for
	working time.Duration // for the picture that is being painted
	last    time.Duration // for the one that was shown last
	drawn   time.Time     // when that was shown
}

// newPainted puts a canvas into the document in place of that of the drawing library; nil where the browser has none.
func newPainted(stage *render.Stage) *painted {
	document := js.Global().Get("document")
	p := &painted{stage: stage, canvas: document.Call("createElement", "canvas"), patch: document.Call("createElement", "canvas"), paper: color.White}
	p.context = p.canvas.Call("getContext", "2d")
	if !p.context.Truthy() {
		return nil
	}
	if unused := document.Call("querySelector", "canvas"); unused.Truthy() {
		unused.Call("remove")
	}
	p.canvas.Get("style").Set("cssText", "position: fixed; inset: 0; width: 100%; height: 100%")
	document.Get("body").Call("append", p.canvas)
	p.easel = render.NewEasel(stage, p.clear, p.show)
	channel := js.Global().Get("MessageChannel").New()
	p.port = channel.Get("port2")
	channel.Get("port1").Set("onmessage", js.FuncOf(func(js.Value, []js.Value) any {
		p.take()
		return nil
	}))
	p.calm = time.AfterFunc(paintCalm, p.ask)
	p.fit()
	js.Global().Call("addEventListener", "resize", js.FuncOf(func(js.Value, []js.Value) any {
		p.fit()
		p.Refresh()
		return nil
	}))
	return p
}

// fit makes the canvas as large as the frame.
func (p *painted) fit() {
	width, height := js.Global().Get("innerWidth").Int(), js.Global().Get("innerHeight").Int()
	if p.canvas.Get("width").Int() != width || p.canvas.Get("height").Int() != height {
		p.canvas.Set("width", width)
		p.canvas.Set("height", height)
		p.stage.Invalidate()
	}
}

// clear fills the canvas with paper.
func (p *painted) clear() {
	r, g, b, _ := p.paper.RGBA()
	p.context.Set("fillStyle", fmt.Sprintf("rgb(%d %d %d)", r>>8, g>>8, b>>8))
	p.context.Call("fillRect", 0, 0, p.canvas.Get("width"), p.canvas.Get("height"))
}

// show puts a picture to its place.
func (p *painted) show(picture *image.RGBA, place image.Rectangle) {
	width, height := picture.Rect.Dx(), picture.Rect.Dy()
	pixels := js.Global().Get("Uint8ClampedArray").New(len(picture.Pix))
	js.CopyBytesToJS(pixels, picture.Pix)
	p.patch.Set("width", width)
	p.patch.Set("height", height)
	p.patch.Call("getContext", "2d").Call("putImageData", js.Global().Get("ImageData").New(pixels, width, height), 0, 0)
	p.context.Call("drawImage", p.patch, place.Min.X, place.Min.Y, place.Dx(), place.Dy())
	p.last, p.working = p.working, 0
	p.drawn = time.Now()
}

// ask asks for a turn: a task of its own behind those that wait.
func (p *painted) ask() {
	if !p.posted {
		p.posted = true
		p.port.Call("postMessage", js.Null())
	}
}

// take does one slice and asks for the next.
func (p *painted) take() {
	p.posted = false
	start := time.Now()
	calm := start.Sub(p.touched) >= paintCalm
	enough := func() bool { return time.Since(start) >= paintSlice }
	if !p.easel.UnderWay() {
		p.stage.Work(calm, enough)
	}
	painting := time.Now()
	more := p.easel.Paint(calm, enough)
	p.working += time.Since(painting)
	p.longest = max(p.longest, time.Since(start))
	left := p.stage.Left()
	if more || left == render.News || left == render.Refinement && calm {
		p.ask()
	}
}

// Refresh says that the stage may have changed.
func (p *painted) Refresh() {
	p.touched = time.Now()
	p.calm.Reset(paintCalm)
	p.ask()
}

// Busy reports whether the picture is still being made, or made finer.
func (p *painted) Busy() bool { return p.easel.Busy() || p.stage.Left() != render.Nothing }

// SetRatio leaves one pixel of the picture for each of the page: more would take too long.
func (p *painted) SetRatio(float64) float64 { return 1 }

// SetPaper sets the colour of the space between the panes.
func (p *painted) SetPaper(c color.Color) {
	p.paper = c
	p.stage.Invalidate()
}

// Frames is the number of pictures that were shown so far.
func (p *painted) Frames() int { return p.easel.Frames() }

// Quads is the number of quads that stand in all panes now.
func (p *painted) Quads() int { return p.easel.Quads() }

// LastFrame is the time that the picture took that was shown last.
func (p *painted) LastFrame() time.Duration { return p.last }

// LastDrawn is when the last picture was shown.
func (p *painted) LastDrawn() time.Time { return p.drawn }

// LastRaster is the work of a graphics card: none.
func (p *painted) LastRaster() time.Duration { return 0 }

// LongestSlice is the longest time, since it was asked for last, that the program worked at a stretch.
func (p *painted) LongestSlice() time.Duration {
	longest := p.longest
	p.longest = 0
	return longest
}

// Bunch is the bunch that is shown at a place of the canvas [px] in the pane of an option, −1 where none is.
func (p *painted) Bunch(option int, x, y float32) int { return p.easel.Bunch(option, x, y) }

// Run shows the stage until the program ends.
func (p *painted) Run() error { select {} }
