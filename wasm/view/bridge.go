//go:build js

package main

import (
	"image/color"
	"math"
	"syscall/js"
	"time"
	"unsafe"

	"rowlight/render"
	"rowlight/sim/scenario"
	"rowlight/wasm/memory"
)

// bridge turns the calls of the page into changes of the stage.
type bridge struct {
	stage  *render.Stage
	screen display
	ratio  float64 // canvas pixels per CSS pixel
}

// display is what shows the stage: the screen of the drawing library, or a painted canvas.
type display interface {
	Run() error
	Refresh()
	Busy() bool
	SetRatio(ratio float64) float64
	SetPaper(c color.Color)
	Bunch(option int, x, y float32) int
	Frames() int
	Quads() int
	LastFrame() time.Duration
	LastDrawn() time.Time
	LastRaster() time.Duration
	LongestSlice() time.Duration
}

// Papers of the page around the panes.
var (
	lightPaper = color.RGBA{0xfb, 0xfb, 0xf8, 0xff}
	darkPaper  = color.RGBA{0x12, 0x14, 0x12, 0xff}
)

// offer sets rowlightView on the window of the frame. After calls that change something, the picture follows.
func offer(b *bridge) {
	view := js.Global().Get("Object").New()
	set := func(name string, call func(args []js.Value) any, after func()) {
		view.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any {
			defer after()
			return call(args)
		}))
	}
	for name, call := range map[string]func(args []js.Value) any{
		"setScenario": b.setScenario, "setPanes": b.setPanes, "setInstant": b.setInstant, "setFaces": b.setFaces,
		"setScale": b.setScale, "setLook": b.setLook, "setTheme": b.setTheme, "setWay": b.setWay, "setBunch": b.setBunch,
		"setObjects": b.setObjects,
	} {
		set(name, call, b.screen.Refresh)
	}
	for name, call := range map[string]func(args []js.Value) any{
		"home":          b.home,
		"section":       b.section,
		"fixedLook":     b.fixedLook,
		"bunchAt":       b.bunchAt,
		"bunch":         func(args []js.Value) any { return b.stage.Bunch(int(number(arg(args, 0)))) },
		"labels":        b.labels,
		"busy":          func([]js.Value) any { return b.screen.Busy() },
		"painted":       func([]js.Value) any { _, is := b.screen.(*painted); return is },
		"frames":        func([]js.Value) any { return b.screen.Frames() },
		"quads":         func([]js.Value) any { return b.screen.Quads() },
		"lastFrame_ms":  func([]js.Value) any { return milliseconds(b.screen.LastFrame()) },
		"held_bytes":    func([]js.Value) any { return memory.Held() },
		"lastDrawn_ms":  func([]js.Value) any { return float64(b.screen.LastDrawn().UnixMilli()) },
		"lastRaster_ms": func([]js.Value) any { return milliseconds(b.screen.LastRaster()) },
		"slice_ms":      func([]js.Value) any { return milliseconds(b.screen.LongestSlice()) },
	} {
		set(name, call, func() {})
	}
	view.Set("ready", js.Global().Get("Promise").Call("resolve"))
	js.Global().Set("rowlightView", view)
}

func milliseconds(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }

// setScenario takes the document as JSON and answers with why it cannot be read, or "". It only notes what
// grows; the pictures follow.
func (b *bridge) setScenario(args []js.Value) any {
	s, err := scenario.Decode([]byte(text(args, 0)))
	if err != nil {
		return err.Error()
	}
	b.stage.SetScenario(s)
	return ""
}

// setPanes takes the rectangles of the panes [CSS px] and the device pixels per CSS pixel.
func (b *bridge) setPanes(args []js.Value) any {
	b.ratio = b.screen.SetRatio(number(arg(args, 1)))
	ratio := b.ratio
	list := arg(args, 0)
	if list.Type() != js.TypeObject {
		return nil
	}
	panes := make([]render.Pane, list.Length())
	for i := range panes {
		r := list.Index(i)
		// Edges lie between pixels, so that a picture does not depend on where its pane stands.
		edge := func(start, size string) (from, length float64) {
			from = math.Round(number(field(r, start)) * ratio)
			return from, math.Round((number(field(r, start))+number(field(r, size)))*ratio) - from
		}
		panes[i].X, panes[i].Width = edge("x", "width")
		panes[i].Y, panes[i].Height = edge("y", "height")
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

// setLook takes the option and where one looks at its row from, told by the row; nothing is the look at first.
func (b *bridge) setLook(args []js.Value) any {
	option, look := int(number(arg(args, 0))), arg(args, 1)
	if look.Type() != js.TypeObject {
		b.stage.ResetLook(option)
		return nil
	}
	b.stage.SetLook(option, render.Look{
		Turn_deg: number(field(look, "turn_deg")), Elevation_deg: number(field(look, "elevation_deg")),
		Distance_m: number(field(look, "distance_m")), Opened: field(look, "opened").Truthy(),
	})
	return nil
}

// setWay takes the name of a way of looking; one that is none is the first.
func (b *bridge) setWay(args []js.Value) any {
	way, _ := render.WayNamed(text(args, 0))
	b.stage.SetWay(way)
	return nil
}

// setObjects draws every thing in a colour of its own, or as it looks.
func (b *bridge) setObjects(args []js.Value) any {
	b.stage.SetObjects(arg(args, 0).Truthy())
	return nil
}

// setBunch takes the option and the bunch that one looks out from; a negative one is one in the middle.
func (b *bridge) setBunch(args []js.Value) any {
	b.stage.SetBunch(int(number(arg(args, 0))), int(number(arg(args, 1))))
	return nil
}

// bunchAt takes the option and a place of the frame [CSS px] and answers with the bunch there, or −1.
func (b *bridge) bunchAt(args []js.Value) any {
	return b.screen.Bunch(int(number(arg(args, 0))), float32(number(arg(args, 1))*b.ratio), float32(number(arg(args, 2))*b.ratio))
}

// labels answers with the sayings that belong into the pane of an option and their places in the frame [CSS px].
func (b *bridge) labels(args []js.Value) any {
	list := []any{}
	for _, l := range b.stage.Labels(int(number(arg(args, 0)))) {
		list = append(list, map[string]any{"x": float64(l.X) / b.ratio, "y": float64(l.Y) / b.ratio, "saying": l.Saying})
	}
	return list
}

// fixedLook takes the option, the name of a place and where the sun of the afternoon stands, and answers with the
// look from there.
func (b *bridge) fixedLook(args []js.Value) any {
	home, front := b.stage.Home(int(number(arg(args, 0))))
	look := render.Fixed(text(args, 1)).Look(home, front, number(arg(args, 2)), number(arg(args, 3)))
	return map[string]any{
		"turn_deg": look.Turn_deg, "elevation_deg": look.Elevation_deg, "distance_m": look.Distance_m, "opened": look.Opened,
	}
}

// home answers with the look at first of an option and the compass direction that the front of its rows faces.
func (b *bridge) home(args []js.Value) any {
	look, front := b.stage.Home(int(number(arg(args, 0))))
	return map[string]any{
		"turn_deg": look.Turn_deg, "elevation_deg": look.Elevation_deg, "distance_m": look.Distance_m, "front_deg": front,
	}
}

// section answers with the cross-section of an option as SVG, or "" until its plants have grown. It takes the option, the
// key of its ids and the units, metric or us.
func (b *bridge) section(args []js.Value) any {
	return b.stage.CrossSection(int(number(arg(args, 0))), text(args, 1), text(args, 2) == "us")
}

func (b *bridge) setTheme(args []js.Value) any {
	paper := lightPaper
	if text(args, 0) == "dark" {
		paper = darkPaper
	}
	b.screen.SetPaper(paper)
	b.stage.SetDark(text(args, 0) == "dark")
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
