//go:build js

// Command engine is the simulation in its Web Worker. It answers the newest scenario that the page
// has sent; between slices of work it lets messages in and drops what is no longer the newest.
//
// From the page: {kind: "run", generation, scenario: JSON, draws, hour}. To the page: ready, progress, faults, preview
// (nearly the numbers, and the faces of changed options at that hour, where there is telling), result (arrays are handed over,
// not copied) and crashed; each names the generation it answers. With draws, how
// far the numbers may be off follows the result as {kind: "bands", generation, bands: JSON, weighing: JSON}, first from
// a part of the draws and then from all, unless a newer scenario comes.
// Of one bunch face of the newest result the page may {kind: "explain", generation, option, side, hour}, or ask for its
// "flows" alike; explain.go tells. {kind: "held", generation} is answered alike, with the bytes that the engine holds. Of weather files, whose generations count apart, weather.go tells, of the work of many
// days, which several engines share, share.go.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"runtime/debug"
	"syscall/js"
	"time"
	"unsafe"

	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/sim/weather"
	"rowlight/wasm/engine/almanac"
	"rowlight/wasm/engine/queue"
	"rowlight/wasm/memory"
)

// A slice of work, and the least time between two messages of progress.
const (
	slice         = 8 * time.Millisecond
	progressEvery = 50 * time.Millisecond
)

// firstDraws are enough for a first look at the bands: three of them lie beyond either end.
const firstDraws = 32

// lead is left to the page to show a preview before the run takes a processor; a newer input ends it within a step.
const (
	lead     = 40 * time.Millisecond
	leadStep = 5 * time.Millisecond
)

// breath is left between a result and its bands: the page shows the one before the other takes a processor.
const breath = 200 * time.Millisecond

// garbage is how much garbage may gather before it is collected, in percent of what is held: WebAssembly gives no memory back,
// and what the engine makes is mostly numbers, through which the collector need not look.
const garbage = 50

func main() {
	debug.SetGCPercent(garbage)
	b := newBridge()
	b.post(map[string]any{"kind": "ready"})
	for {
		b.answer(b.jobs.Take())
	}
}

// bridge is the engine's end of the messages.
type bridge struct {
	engine    *sim.Engine
	almanac   almanac.Almanac
	jobs      *queue.Newest
	slices    queue.Slices
	global    js.Value
	shown     shown
	soon      *sim.Previews // of changes of the newest run that was prepared for them; nil at first
	rehearsed bool          // previews have been made
	shared    shared
}

func newBridge() *bridge {
	jobs := &queue.Newest{}
	b := &bridge{engine: sim.NewEngine(), jobs: jobs, global: js.Global()}
	b.slices = queue.Slices{Budget: slice, Now: time.Now, Yield: yielder(), Jobs: jobs}
	b.shared.newest = &queue.Newest{}
	b.shared.slices = queue.Slices{Budget: slice, Now: time.Now, Yield: yielder(), Jobs: b.shared.newest}
	b.global.Set("onmessage", js.FuncOf(func(_ js.Value, events []js.Value) any {
		b.take(events[0].Get("data"))
		return nil
	}))
	return b
}

// take lets a message in. Weather files are answered at once, between two slices of a computation.
func (b *bridge) take(message js.Value) {
	generation := message.Get("generation").Int()
	switch message.Get("kind").String() {
	case "run":
		job := queue.Job{Generation: generation, Scenario: message.Get("scenario").String()}
		if draws := message.Get("draws"); draws.Type() == js.TypeNumber {
			job.Draws = draws.Int()
		}
		if hour := message.Get("hour"); hour.Type() == js.TypeNumber {
			job.Hour_h = hour.Float()
		}
		b.jobs.Offer(job)
	case "explain":
		b.explain(generation, message)
	case "flows":
		b.flows(generation, message)
	case "plan":
		b.plan(generation, message)
	case "work":
		b.work(generation, message)
	case "part":
		b.part(generation, message.Get("part").Int())
	case "whole":
		b.whole(generation, message.Get("answers").String())
	case "held":
		b.post(map[string]any{"kind": "held", "generation": generation, "bytes": memory.Held()})
	case "weather":
		b.openWeather(generation, message)
	case "weatherDay":
		b.takeDay(generation, message)
	}
}

// yielder makes a function that returns after the messages that wait have been let in. A port's
// message is a task of its own behind theirs, and unlike a timer it is not held back.
func yielder() func() {
	channel := js.Global().Get("MessageChannel").New()
	in, out := channel.Get("port1"), channel.Get("port2")
	back := make(chan struct{}, 1)
	in.Set("onmessage", js.FuncOf(func(js.Value, []js.Value) any {
		back <- struct{}{}
		return nil
	}))
	return func() {
		out.Call("postMessage", js.Null())
		<-back
	}
}

// answer computes a job and posts what comes of it. A panic is told to the page, which then starts
// the worker anew, since the engine's memory may be half-written.
func (b *bridge) answer(job queue.Job) {
	defer func() {
		if reason := recover(); reason != nil {
			b.crashed(job, fmt.Sprint(reason))
		}
	}()
	s, faults := document.Parse([]byte(job.Scenario))
	if len(faults) > 0 {
		b.faults(job, faults)
		return
	}
	b.preview(job, s)
	run, err := b.engine.Day(s, b.slices.Pace(job.Generation), b.progress(job))
	fault, ofWeather := weather.FaultIn(err)
	switch {
	case errors.Is(err, queue.ErrSuperseded):
	case ofWeather: // a day without a sun that rises and sets
		b.faults(job, []scenario.Fault{fault})
	case err != nil:
		b.crashed(job, err.Error())
	default:
		b.shown = shown{job.Generation, s}
		b.result(job, run)
		b.follow(job, s, run)
	}
}

// preview posts what the job will make of numbers and picture, nearly, or that there is no telling. What is wrong with it
// the run tells. Both go in one message, so that the page shows them in one frame.
func (b *bridge) preview(job queue.Job, s scenario.Scenario) {
	message, handed, err := b.foresee(job, s)
	if err != nil {
		message, handed = map[string]any{}, nil
	}
	message["kind"], message["generation"] = "preview", job.Generation
	b.global.Call("postMessage", message, handed)
	if message["preview"] != nil {
		for step := time.Duration(0); step < lead && !b.jobs.Superseded(job.Generation); step += leadStep {
			time.Sleep(leadStep)
		}
	}
}

// foresee puts into a message what a scenario makes of numbers and picture, nearly, and nothing where there is no telling. The
// arrays of the message are to be handed over.
func (b *bridge) foresee(job queue.Job, s scenario.Scenario) (message map[string]any, handed []any, err error) {
	pace := b.slices.Pace(job.Generation)
	soon, err := b.soon.Of(s, pace)
	if err != nil {
		return nil, nil, err
	}
	seen, err := b.soon.At(s, job.Hour_h, pace)
	if err != nil {
		return nil, nil, err
	}
	message, handed = map[string]any{}, []any{}
	if soon != nil {
		message["preview"] = text(soon)
	}
	if seen != nil {
		message["seen"], handed = pictured(seen)
	}
	return message, handed, nil
}

// pictured is what is seen at the hour that is shown, and its arrays, which are handed over.
func pictured(seen *sim.Sighted) (message map[string]any, handed []any) {
	faces := make([]any, len(seen.Options))
	for i, option := range seen.Options {
		if option == nil {
			continue
		}
		var course map[string]any
		course, handed = courseOf(option.Surface_C, option.Lit, handed)
		sides := make([]any, len(option.Sides))
		for side, of := range option.Sides {
			sides[side] = map[string]any{"litShare": of.LitShare, "mean_C": of.Mean_C, "hottest_C": of.Hottest_C}
		}
		course["sides"], faces[i] = sides, course
	}
	now := &seen.Now
	return map[string]any{"faces": faces, "sun": map[string]any{
		"hour": now.Hour_h, "sunAzimuth_deg": now.Sun.Azimuth_deg, "sunElevation_deg": now.Sun.Elevation_deg,
		"dni_Wm2": now.DNI, "dhi_Wm2": now.DHI,
	}}, handed
}

// courseOf is the course of faces as arrays to be handed over, which join those that are.
func courseOf(surface_C []float32, lit []uint8, handed []any) (faces map[string]any, all []any) {
	floats := js.Global().Get("Float32Array").New(bytesToJS(bytesOf(surface_C)).Get("buffer"))
	flags := bytesToJS(lit)
	return map[string]any{"surface": floats, "lit": flags}, append(handed, floats.Get("buffer"), flags.Get("buffer"))
}

// follow does what can wait until a result is shown: it prepares for previews of what may be changed next, and draws the ranges.
func (b *bridge) follow(job queue.Job, s scenario.Scenario, run *sim.Run) {
	time.Sleep(breath)
	soon, err := b.engine.Previews(s, run, b.soon, b.slices.Pace(job.Generation))
	switch {
	case errors.Is(err, queue.ErrSuperseded):
	case err != nil:
		b.crashed(job, err.Error())
	default:
		b.soon = soon
		b.rehearse(job)
		b.collect(job)
		b.bands(job, s, run)
	}
}

// bands posts how far the numbers of a run may be off, if the job wants it and stays the newest.
func (b *bridge) bands(job queue.Job, s scenario.Scenario, run *sim.Run) {
	if job.Draws <= 0 {
		return
	}
	pace := b.slices.Pace(job.Generation)
	drawing, err := b.engine.Drawing(s, run, job.Draws, pace)
	for _, draws := range []int{min(firstDraws, job.Draws), job.Draws} {
		if err == nil {
			err = drawing.To(draws, pace, nil)
		}
		switch {
		case errors.Is(err, queue.ErrSuperseded):
			return
		case err != nil:
			b.crashed(job, err.Error())
			return
		}
		ranges := drawing.Ranges()
		b.post(map[string]any{
			"kind": "bands", "generation": job.Generation, "bands": text(ranges), "weighing": text(run.WithRanges(ranges)),
		})
	}
}

func (b *bridge) faults(job queue.Job, faults []scenario.Fault) {
	b.post(map[string]any{"kind": "faults", "generation": job.Generation, "faults": text(faults)})
}

// progress posts the stage and the share done, not more often than one can see.
func (b *bridge) progress(job queue.Job) sim.Progress {
	var last time.Time
	return func(stage string, done float64) {
		if now := time.Now(); now.Sub(last) >= progressEvery {
			last = now
			b.post(map[string]any{"kind": "progress", "generation": job.Generation, "stage": stage, "done": done})
		}
	}
}

// result posts the run: the numbers as JSON, the courses of the faces as arrays handed over.
func (b *bridge) result(job queue.Job, run *sim.Run) {
	faces := make([]any, len(run.Options))
	var handed []any
	for i, option := range run.Options {
		faces[i], handed = courseOf(option.Surface_C, option.Lit, handed)
	}
	b.global.Call("postMessage", map[string]any{
		"kind": "result", "generation": job.Generation, "result": text(run.Result), "faces": faces,
	}, handed)
}

func (b *bridge) crashed(job queue.Job, reason string) {
	b.post(map[string]any{"kind": "crashed", "generation": job.Generation, "reason": reason})
}

func (b *bridge) post(message map[string]any) { b.global.Call("postMessage", message) }

// text is a value as JSON. Results and faults hold nothing that JSON cannot say; if one does, that is
// a fault of the program and ends the answer.
func text(value any) string {
	raw, err := json.Marshal(value)
	if err != nil {
		panic(err)
	}
	return string(raw)
}

// bytesOf views floats as their bytes, in the byte order that both Go and the browser use here.
func bytesOf(floats []float32) []byte {
	if len(floats) == 0 {
		return nil
	}
	return unsafe.Slice((*byte)(unsafe.Pointer(&floats[0])), 4*len(floats))
}

func bytesToJS(bytes []byte) js.Value {
	array := js.Global().Get("Uint8Array").New(len(bytes))
	js.CopyBytesToJS(array, bytes)
	return array
}
