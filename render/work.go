package render

import (
	"errors"
	"iter"
)

// work is something long that is done in slices: between two of them whoever shares the thread has his turn.
type work struct {
	next   func() (struct{}, bool)
	stop   func()
	enough func() bool // of the slice that is being done
}

var errAbandoned = errors.New("the work is abandoned")

// newWork prepares work that is do. Do calls the pace that it is given often, and returns when pace gives an
// error.
func newWork(do func(pace func() error)) *work {
	w := &work{}
	w.next, w.stop = iter.Pull(func(yield func(struct{}) bool) {
		do(func() error {
			if !w.enough() || yield(struct{}{}) {
				return nil
			}
			return errAbandoned
		})
	})
	return w
}

// slice goes on with the work until enough reports true; done reports that nothing is left.
func (w *work) slice(enough func() bool) (done bool) {
	w.enough = enough
	_, more := w.next()
	return !more
}
