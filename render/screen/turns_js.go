package screen

import (
	"syscall/js"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"rowlight/render"
)

const (
	// slice is how long the program works at a stretch, before the step that is under way ends: steps take up to 3.5 ms more
	// (BenchmarkSlices of render), and the page shares its thread.
	slice = 5 * time.Millisecond
	// calmAfter is how long after the last call of the page pictures are made finer.
	calmAfter = 200 * time.Millisecond
	// pollEvery is how often a busy graphics card is asked whether it is done.
	pollEvery = 4 * time.Millisecond
)

// turns does the work of a stage in slices, each a task of its own behind those that wait. A message to
// itself is such a task, and unlike a timer it is not held back. A slice never runs inside a call of the
// page, which would wait for it.
type turns struct {
	stage   *render.Stage
	card    card
	port    js.Value
	posted  bool      // a turn is asked for
	sent    bool      // a frame has been sent to the card since the last turn
	polls   bool      // the card will be asked again whether it is done
	touched time.Time // when the page last called
	calm    *time.Timer
	longest time.Duration // slice since it was asked for
}

func newTurns(stage *render.Stage) *turns {
	channel := js.Global().Get("MessageChannel").New()
	t := &turns{stage: stage, port: channel.Get("port2")}
	channel.Get("port1").Set("onmessage", js.FuncOf(func(js.Value, []js.Value) any {
		t.take()
		return nil
	}))
	t.calm = time.AfterFunc(calmAfter, t.ask)
	return t
}

// touch notes that the page has called.
func (t *turns) touch() {
	t.touched = time.Now()
	t.calm.Reset(calmAfter)
	t.ask()
}

// ask asks for a turn.
func (t *turns) ask() {
	if !t.posted {
		t.posted = true
		t.port.Call("postMessage", js.Null())
	}
}

// drew notes that a frame is being sent to the card.
func (t *turns) drew() {
	t.sent = true
	t.ask()
}

// schedule asks for a frame as soon as there is something to draw and the card can take it.
func (t *turns) schedule() {
	switch {
	case !t.stage.Stale() || t.sent || t.polls:
	case t.card.busy():
		t.poll()
	default:
		ebiten.ScheduleFrame()
	}
}

// poll asks the card again in a while, and then for a frame if one is wanted.
func (t *turns) poll() {
	if t.polls {
		return
	}
	t.polls = true
	time.AfterFunc(pollEvery, func() {
		if t.polls = false; t.card.busy() {
			t.poll()
			return
		}
		t.schedule()
	})
}

// take does one slice and asks for the next.
func (t *turns) take() {
	t.posted = false
	if t.sent {
		t.card.mark()
		t.sent = false
		t.poll()
	}
	start := time.Now()
	calm := start.Sub(t.touched) >= calmAfter
	left := t.stage.Work(calm, func() bool { return time.Since(start) >= slice })
	t.longest = max(t.longest, time.Since(start))
	t.schedule()
	if left == render.News || left == render.Refinement && calm {
		t.ask()
	}
}
