//go:build js

package main

import "syscall/js"

// openWeather reads a weather file: {kind: "weather", generation, name, bytes: ArrayBuffer} is answered by
// {kind: "weatherFile", generation, opened: JSON of almanac.Opened}.
func (b *bridge) openWeather(generation int, message js.Value) {
	array := js.Global().Get("Uint8Array").New(message.Get("bytes"))
	bytes := make([]byte, array.Length())
	js.CopyBytesToGo(bytes, array)
	opened := b.almanac.Open(message.Get("name").String(), bytes)
	b.post(map[string]any{"kind": "weatherFile", "generation": generation, "opened": text(opened)})
}

// takeDay takes a day of the open file: {kind: "weatherDay", generation, month, day} is answered by
// {kind: "scenarioDay", generation, taken: JSON of almanac.Taken}.
func (b *bridge) takeDay(generation int, message js.Value) {
	taken := b.almanac.Day(message.Get("month").Int(), message.Get("day").Int())
	b.post(map[string]any{"kind": "scenarioDay", "generation": generation, "taken": text(taken)})
}
