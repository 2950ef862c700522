//go:build js

package main

import (
	"math"
	"runtime"

	"rowlight/sim/scenario/document"
	"rowlight/wasm/engine/queue"
)

// collect looks for garbage while nothing waits: a preview that is made while it is looked for takes twice as long.
func (b *bridge) collect(job queue.Job) {
	if !b.jobs.Superseded(job.Generation) {
		runtime.GC()
	}
}

// rehearsals are as many as the browser needs to compile for speed most of what a preview of leaves runs.
const rehearsals = 3

// rehearse foresees, once, what other leaves would make of a job, and throws it away: the browser compiles what runs for the
// first time, and a hand's first change would wait four times as long as those that follow.
func (b *bridge) rehearse(job queue.Job) {
	if b.rehearsed {
		return
	}
	for k := range rehearsals {
		s, faults := document.Parse([]byte(job.Scenario))
		if len(faults) > 0 {
			return
		}
		leaves := &s.Options[0].Leaves
		leaves.RemovedAfternoon = math.Abs(leaves.RemovedAfternoon - float64(k+1)/(rehearsals+1))
		if _, _, err := b.foresee(job, s); err != nil {
			return // a newer job has come; there is another time
		}
	}
	b.rehearsed = true
}
