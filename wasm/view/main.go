//go:build js

// Command view is the browser program that draws the panes, with WebGL or, without it, with a painter of its own. It runs in a frame of its own, because
// the drawing library takes over its document; the page calls the functions of rowlightView on the
// frame's window. It keeps nothing that the page cannot send again.
package main

import (
	"errors"
	"os"
	"syscall/js"

	"rowlight/render"
	"rowlight/render/screen"
)

func main() {
	keepKeysOut()
	stage := render.NewStage()
	shown, err := newDisplay(stage)
	if err != nil {
		fail(err.Error())
	}
	shown.Refresh()
	offer(&bridge{stage: stage, screen: shown, ratio: 1})
	if err := shown.Run(); err != nil {
		fail(err.Error())
	}
}

// newDisplay shows a stage on the graphics card; without one it paints.
func newDisplay(stage *render.Stage) (display, error) {
	if hasWebGL() {
		shown, err := screen.New(stage)
		if err == nil {
			watchContext(shown)
		}
		return shown, err
	}
	if shown := newPainted(stage); shown != nil {
		return shown, nil
	}
	return nil, errors.New("no-canvas")
}

// keepKeysOut stops key events before the drawing library sees them: it would swallow them, and the
// Tab key could not leave the frame.
func keepKeysOut() {
	stop := js.FuncOf(func(_ js.Value, args []js.Value) any {
		args[0].Call("stopImmediatePropagation")
		return nil
	})
	for _, kind := range []string{"keydown", "keyup", "keypress"} {
		js.Global().Call("addEventListener", kind, stop, true)
	}
}

// hasWebGL reports whether the browser can draw.
func hasWebGL() bool {
	canvas := js.Global().Get("document").Call("createElement", "canvas")
	context := canvas.Call("getContext", "webgl2")
	if !context.Truthy() {
		return false
	}
	if lose := context.Call("getExtension", "WEBGL_lose_context"); lose.Truthy() {
		lose.Call("loseContext") // browsers allow few contexts at a time
	}
	return true
}

// watchContext ends the program when the graphics card takes the canvas away. The drawing library
// would load the document again by itself, and the page would not know that it has to send everything.
func watchContext(shown *screen.Screen) {
	js.Global().Call("addEventListener", "webglcontextlost", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if !args[0].Get("target").Get("isConnected").Bool() {
			return nil // the canvas of hasWebGL
		}
		args[0].Call("stopImmediatePropagation")
		tell("context-lost")
		shown.Stop()
		return nil
	}), true)
}

// fail tells the page why there is no picture and ends the program.
func fail(reason string) {
	tell(reason)
	os.Exit(1)
}

// tell calls rowlightViewFailed of the page, if it has one.
func tell(reason string) {
	if told := js.Global().Get("parent").Get("rowlightViewFailed"); told.Type() == js.TypeFunction {
		told.Invoke(reason)
	}
}
