// Package queue keeps the newest scenario that the page has sent to the engine, and cuts a long
// computation into slices so that a newer one is seen. It has no browser in it.
package queue

import (
	"errors"
	"sync"
	"time"
)

// Job is one scenario as the page sent it. Generations rise with each scenario.
type Job struct {
	Generation int
	Scenario   string
	Draws      int     // for its bands, 0 for none
	Hour_h     float64 // of the day that is shown
}

// Newest holds the one job that is worth computing: the newest. The zero value is empty and ready.
type Newest struct {
	mutex sync.Mutex
	come  sync.Cond
	job   Job
	fresh bool
}

// Offer makes a job the newest, in place of one that has not been taken. A job that is not newer than
// the newest is dropped.
func (n *Newest) Offer(job Job) {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	if job.Generation <= n.job.Generation {
		return
	}
	n.job, n.fresh = job, true
	n.ready()
	n.come.Signal()
}

// Take waits for a job that has not been taken yet.
func (n *Newest) Take() Job {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	n.ready()
	for !n.fresh {
		n.come.Wait()
	}
	n.fresh = false
	return n.job
}

// Superseded tells whether a newer job has come than that of a generation.
func (n *Newest) Superseded(generation int) bool {
	n.mutex.Lock()
	defer n.mutex.Unlock()
	return n.job.Generation > generation
}

// ready ties the condition to the mutex; the mutex is held.
func (n *Newest) ready() {
	if n.come.L == nil {
		n.come.L = &n.mutex
	}
}

// ErrSuperseded abandons a computation because a newer scenario has come.
var ErrSuperseded = errors.New("a newer scenario has come")

// Slices cuts computations into slices: it lets the world in when a slice has lasted long enough.
type Slices struct {
	Budget time.Duration    // longest slice
	Now    func() time.Time // the clock
	Yield  func()           // lets messages in, and returns
	Jobs   *Newest
}

// Pace makes the function that one computation calls often. It yields when a slice is over and then
// returns ErrSuperseded if a newer job has come.
func (s Slices) Pace(generation int) func() error {
	began := s.Now()
	return func() error {
		if s.Now().Sub(began) < s.Budget {
			return nil
		}
		s.Yield()
		began = s.Now()
		if s.Jobs.Superseded(generation) {
			return ErrSuperseded
		}
		return nil
	}
}
