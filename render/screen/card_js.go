package screen

import (
	"syscall/js"
	"time"
)

// card is the graphics card as far as one has to wait for it. Who sends it more while it is at work is held
// up, and with him the page; a slow one would hold it up for most of the time.
type card struct {
	context js.Value // of the canvas; undefined before the first frame
	fence   js.Value // behind what was sent last; undefined when that is done
	marked  time.Time
	last    time.Duration // that it took for the frame that was marked last, to the next look at it; 0 while it is at work
}

// Numbers of WebGL 2.
const (
	syncCommandsComplete = 0x9117
	syncStatus           = 0x9114
	syncUnsignaled       = 0x9118
)

// mark notes that a frame has been sent.
func (c *card) mark() {
	if c.context.IsUndefined() {
		// The canvas has one context: this is the one that draws.
		c.context = js.Global().Get("document").Call("querySelector", "canvas").Call("getContext", "webgl2")
	}
	c.forget()
	c.fence = c.context.Call("fenceSync", syncCommandsComplete, 0)
	c.context.Call("flush")
	c.marked, c.last = time.Now(), 0
}

// busy reports whether the card is still at work on the frame that was marked.
func (c *card) busy() bool {
	if !c.fence.Truthy() {
		return false
	}
	status := c.context.Call("getSyncParameter", c.fence, syncStatus)
	if status.Type() == js.TypeNumber && status.Int() == syncUnsignaled {
		return true
	}
	c.forget()
	c.last = time.Since(c.marked)
	return false
}

func (c *card) forget() {
	if c.fence.Truthy() {
		c.context.Call("deleteSync", c.fence)
	}
	c.fence = js.Undefined()
}
