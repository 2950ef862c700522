//go:build js

package main

import (
	"image/color"
	"math"
	"syscall/js"
	"unsafe"

	"rowlight/render"
	"rowlight/render/screen"
	"rowlight/sim/scenario"
)

// bridge turns the calls of the page into changes of the stage.
type bridge struct {
	stage  *render.Stage
	screen *screen.Screen
}

// Papers of the page around the panes.
var (
	lightPaper = color.RGBA{0xfb, 0xfb, 0xf8, 0xff}
	darkPaper  = color.RGBA{0x12, 0x14, 0x12, 0xff}
)

// offer sets rowlightView on the window of the frame.
func offer(b *bridge) {
	view := js.Global().Get("Object").New()
	for name, call := range map[string]func(args []js.Value) any{
		"setScenario": b.setScenario, "setPanes": b.setPanes, "setInstant": b.setInstant, "setFaces": b.setFaces,
		"setScale": b.setScale, "setCamera": b.setCamera, "setTheme": b.setTheme, "camera": b.camera,
		"frames":       func([]js.Value) any { return b.screen.Frames() },
		"quads":        func([]js.Value) any { return b.screen.Quads() },
		"lastFrame_ms": func([]js.Value) any { return float64(b.screen.LastFrame().Microseconds()) / 1000 },
	} {
		view.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any {
			answer := call(args)
			b.screen.Refresh()
			return answer
		}))
	}
	view.Set("ready", js.Global().Get("Promise").Call("resolve"))
	js.Global().Set("rowlightView", view)
}

// setScenario takes the document as JSON and answers with what is wrong with it, or "".
func (b *bridge) setScenario(args []js.Value) any {
	s, err := scenario.Decode([]byte(text(args, 0)))
	if err == nil {
		err = b.stage.SetScenario(s)
	}
	if err != nil {
		return err.Error()
	}
	return ""
}

// setPanes takes the rectangles of the panes [CSS px] and the device pixels per CSS pixel.
func (b *bridge) setPanes(args []js.Value) any {
	ratio := b.screen.SetRatio(number(arg(args, 1)))
	list := arg(args, 0)
	if list.Type() != js.TypeObject {
		return nil
	}
	panes := make([]render.Pane, list.Length())
	for i := range panes {
		r := list.Index(i)
		panes[i] = render.Pane{
			X: number(field(r, "x")) * ratio, Y: number(field(r, "y")) * ratio,
			Width: number(field(r, "width")) * ratio, Height: number(field(r, "height")) * ratio,
		}
	}
	b.stage.SetPanes(panes)
	return nil
}

func (b *bridge) setInstant(args []js.Value) any {
	now := arg(args, 0)
	b.stage.SetInstant(render.Instant{
		Hour: number(field(now, "hour")), SunAzimuth_deg: number(field(now, "sunAzimuth_deg")),
		SunElevation_deg: number(field(now, "sunElevation_deg")),
		DNI_Wm2:          number(field(now, "dni_Wm2")), DHI_Wm2: number(field(now, "dhi_Wm2")),
	})
	return nil
}

// setFaces takes the option, the bytes of one 32-bit number per bunch face [°C] and one byte per face.
func (b *bridge) setFaces(args []js.Value) any {
	raw := bytes(arg(args, 1))
	surface_C := make([]float32, len(raw)/4)
	if len(surface_C) > 0 {
		copy(unsafe.Slice((*byte)(unsafe.Pointer(&surface_C[0])), 4*len(surface_C)), raw)
	}
	b.stage.SetFaces(int(number(arg(args, 0))), surface_C, bytes(arg(args, 2)))
	return nil
}

func (b *bridge) setScale(args []js.Value) any {
	scale := arg(args, 0)
	b.stage.SetScale(render.Scale{Min_C: number(field(scale, "min_C")), Max_C: number(field(scale, "max_C"))})
	return nil
}

func (b *bridge) setCamera(args []js.Value) any {
	c := arg(args, 1)
	b.stage.SetCamera(int(number(arg(args, 0))), render.Camera{
		Azimuth_deg: number(field(c, "azimuth_deg")), Elevation_deg: number(field(c, "elevation_deg")),
		Distance_m: number(field(c, "distance_m")), TargetZ_m: number(field(c, "targetZ_m")),
	})
	return nil
}

// camera answers with the camera of an option: the one that was set, or the one that the view would
// choose.
func (b *bridge) camera(args []js.Value) any {
	c := b.stage.Camera(int(number(arg(args, 0))))
	return map[string]any{
		"azimuth_deg": c.Azimuth_deg, "elevation_deg": c.Elevation_deg, "distance_m": c.Distance_m, "targetZ_m": c.TargetZ_m,
	}
}

func (b *bridge) setTheme(args []js.Value) any {
	paper := lightPaper
	if text(args, 0) == "dark" {
		paper = darkPaper
	}
	b.screen.SetPaper(paper)
	return nil
}

// arg is an argument, undefined where it is missing.
func arg(args []js.Value, i int) js.Value {
	if i < len(args) {
		return args[i]
	}
	return js.Undefined()
}

// field is a property, undefined where there is none.
func field(object js.Value, name string) js.Value {
	if object.Type() != js.TypeObject {
		return js.Undefined()
	}
	return object.Get(name)
}

// number is a finite number, 0 for anything else.
func number(v js.Value) float64 {
	if v.Type() != js.TypeNumber || math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0) {
		return 0
	}
	return v.Float()
}

func text(args []js.Value, i int) string {
	if v := arg(args, i); v.Type() == js.TypeString {
		return v.String()
	}
	return ""
}

// bytes copies a Uint8Array, nothing for anything else.
func bytes(v js.Value) []byte {
	if number(field(v, "byteLength")) == 0 {
		return nil // an array whose memory was handed on has no bytes either
	}
	// The array may come from the window of the page, whose classes are others: view it with ours.
	own := js.Global().Get("Uint8Array").New(v.Get("buffer"), v.Get("byteOffset"), v.Get("byteLength"))
	raw := make([]byte, own.Length())
	js.CopyBytesToGo(raw, own)
	return raw
}
