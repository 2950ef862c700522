//go:build js

package main

import (
	"encoding/json"
	"syscall/js"

	"rowlight/wasm/engine/almanac"
)

// openWeather reads a weather file: {kind: "weather", generation, name, bytes: ArrayBuffer, asked: JSON of almanac.Asked}
// is answered by {kind: "weatherFile", generation, opened: JSON of almanac.Opened}.
func (b *bridge) openWeather(generation int, message js.Value) {
	array := js.Global().Get("Uint8Array").New(message.Get("bytes"))
	bytes := make([]byte, array.Length())
	js.CopyBytesToGo(bytes, array)
	var asked almanac.Asked
	if err := json.Unmarshal([]byte(message.Get("asked").String()), &asked); err != nil {
		panic(err) // the page writes it
	}
	opened := b.almanac.Open(message.Get("name").String(), bytes, asked)
	b.post(map[string]any{"kind": "weatherFile", "generation": generation, "opened": text(opened)})
}

// takeDay takes a day of the open file: {kind: "weatherDay", generation, month, day} is answered by
// {kind: "scenarioDay", generation, taken: JSON of almanac.Taken}.
func (b *bridge) takeDay(generation int, message js.Value) {
	taken := b.almanac.Day(message.Get("month").Int(), message.Get("day").Int())
	b.post(map[string]any{"kind": "scenarioDay", "generation": generation, "taken": text(taken)})
}
