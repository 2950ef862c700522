package queue

import (
	"errors"
	"testing"
	"time"
)

func TestNewestJobWins(t *testing.T) {
	var jobs Newest
	for generation := 1; generation <= 5; generation++ {
		jobs.Offer(Job{Generation: generation})
	}
	if got := jobs.Take().Generation; got != 5 {
		t.Errorf("took generation %d, want the newest, 5", got)
	}
	if !jobs.Superseded(4) || jobs.Superseded(5) {
		t.Error("generation 4 is superseded, generation 5 is not")
	}
}

func TestLateJobIsDropped(t *testing.T) {
	var jobs Newest
	jobs.Offer(Job{Generation: 3, Scenario: "third"})
	jobs.Offer(Job{Generation: 2, Scenario: "second"})
	if got := jobs.Take(); got.Scenario != "third" {
		t.Errorf("took %q, want the third", got.Scenario)
	}
}

func TestTakeWaitsForAJobThatWasNotTaken(t *testing.T) {
	var jobs Newest
	jobs.Offer(Job{Generation: 1})
	jobs.Take()
	taken := make(chan Job)
	go func() { taken <- jobs.Take() }()
	select {
	case job := <-taken:
		t.Fatalf("took generation %d a second time", job.Generation)
	case <-time.After(20 * time.Millisecond):
	}
	jobs.Offer(Job{Generation: 2})
	if got := (<-taken).Generation; got != 2 {
		t.Errorf("took generation %d, want 2", got)
	}
}

// clock is a clock that a test moves by hand.
type clock struct{ now time.Time }

func (c *clock) read() time.Time { return c.now }

func TestPaceYieldsOncePerSlice(t *testing.T) {
	var jobs Newest
	jobs.Offer(Job{Generation: 1})
	hand, yields := &clock{}, 0
	slices := Slices{Budget: 8 * time.Millisecond, Now: hand.read, Yield: func() { yields++ }, Jobs: &jobs}
	pace := slices.Pace(jobs.Take().Generation)
	for range 100 { // 100 ms in steps of 1 ms
		hand.now = hand.now.Add(time.Millisecond)
		if err := pace(); err != nil {
			t.Fatal(err)
		}
	}
	if yields != 12 {
		t.Errorf("%d yields in 100 ms with slices of 8 ms, want 12", yields)
	}
}

func TestPaceAbandonsOlderWork(t *testing.T) {
	var jobs Newest
	jobs.Offer(Job{Generation: 1})
	hand := &clock{}
	arrives := func() { jobs.Offer(Job{Generation: 2}) }
	slices := Slices{Budget: 8 * time.Millisecond, Now: hand.read, Yield: arrives, Jobs: &jobs}
	pace := slices.Pace(jobs.Take().Generation)
	if err := pace(); err != nil {
		t.Errorf("within the first slice: %v", err)
	}
	hand.now = hand.now.Add(8 * time.Millisecond)
	if err := pace(); !errors.Is(err, ErrSuperseded) {
		t.Errorf("after a newer job came: %v, want %v", err, ErrSuperseded)
	}
	newer := slices.Pace(jobs.Take().Generation)
	hand.now = hand.now.Add(8 * time.Millisecond)
	if err := newer(); err != nil {
		t.Errorf("the newest job is abandoned: %v", err)
	}
}
