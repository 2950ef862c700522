//go:build js

package main

import (
	"errors"
	"syscall/js"

	"rowlight/wasm/engine/crew"
	"rowlight/wasm/engine/queue"
)

// shared is the part of this engine in the work of many days, which several engines share. Its generations count apart.
type shared struct {
	work   *crew.Work
	newest *queue.Newest
	slices queue.Slices
}

// plan cuts work into parts: {kind: "plan", generation, scenario: JSON, what, over, from, to} is answered by {kind: "planned",
// generation, plan: JSON, faults: JSON}, the plan empty where faults keep it from being made. The engine that has the open weather file is asked.
func (b *bridge) plan(generation int, message js.Value) {
	word := func(name string) string { return message.Get(name).String() }
	asked := crew.Asked{What: word("what"), Over: word("over"), From: word("from"), To: word("to")}
	plan, faults := crew.NewPlan([]byte(word("scenario")), asked, b.almanac.FileOf)
	made := ""
	if plan != nil {
		made = text(plan)
	}
	b.post(map[string]any{"kind": "planned", "generation": generation, "plan": made, "faults": text(faults)})
}

// work takes up a plan in place of the one before: {kind: "work", generation, plan: JSON}. An empty plan only ends that.
func (b *bridge) work(generation int, message js.Value) {
	b.shared.newest.Offer(queue.Job{Generation: generation})
	b.shared.work = nil
	plan := message.Get("plan").String()
	if plan == "" {
		return
	}
	work, err := crew.NewWork(b.engine, []byte(plan))
	if err != nil {
		b.post(map[string]any{"kind": "crashed", "generation": generation, "reason": err.Error()})
		return
	}
	b.shared.work = work
}

// part does a part of the plan: {kind: "part", generation, part} is answered by {kind: "part", generation, part, answer:
// JSON}, unless a newer plan comes.
func (b *bridge) part(generation, part int) {
	work := b.shared.work
	if work == nil || b.shared.newest.Superseded(generation) {
		return
	}
	go func() {
		answer, err := work.Part(part, b.shared.slices.Pace(generation))
		switch {
		case errors.Is(err, queue.ErrSuperseded):
		case err != nil:
			b.post(map[string]any{"kind": "crashed", "generation": generation, "reason": err.Error()})
		default:
			b.post(map[string]any{"kind": "part", "generation": generation, "part": part, "answer": text(answer)})
		}
	}()
}

// whole puts parts together: {kind: "whole", generation, answers: JSON of all of them} is answered by {kind: "whole",
// generation, whole: JSON}.
func (b *bridge) whole(generation int, answers string) {
	work := b.shared.work
	if work == nil || b.shared.newest.Superseded(generation) {
		return
	}
	whole, err := work.Whole([]byte(answers))
	if err != nil {
		b.post(map[string]any{"kind": "crashed", "generation": generation, "reason": err.Error()})
		return
	}
	b.post(map[string]any{"kind": "whole", "generation": generation, "whole": text(whole)})
}
