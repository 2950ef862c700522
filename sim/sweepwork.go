package sim

import (
	"context"
	"fmt"
	"math"
	"sync"

	"golang.org/x/sync/errgroup"

	"rowlight/sim/growth"
	"rowlight/sim/scenario"
)

// strand is a part of a sweep on its way.
//
// A row line read from its other end is the same row, but a stand has bunches of its own on either side. So each day is
// lived through twice, by half of the bunches, with the stand as it is and turned about by 180°, and each side is the
// fruit of both: 0° and 180° are then the same to the last digit.
type strand struct {
	Part
	option scenario.Option // as the scenario has it
	canopy [2]map[standing]canopyOf
	days   []daySum
	left   int // days still to be lived through
}

// standing tells the canopies of an option apart over the days: by stage, and by whether leaves have been pulled.
type standing struct {
	stage  growth.Stage
	pulled float64 // share of both sides together
}

func (d *SpanDay) standing(o scenario.Option) standing {
	then := o.On(d.Weather.Date)
	return standing{d.Stage, then.Leaves.RemovedMorning + then.Leaves.RemovedAfternoon}
}

// canopyOf is an option in a stage, with its rows read from one end.
type canopyOf struct {
	key      string
	scenario scenario.Scenario // on the first of the days
	option   scenario.Option
	lean     *lean
}

// strand finds the canopies that a part needs; their leans are still to come.
func (w *Sweeping) strand(p Part) (strand, error) {
	st := strand{Part: p, option: w.scenario.Options[p.Option], days: make([]daySum, p.To-p.From), left: p.To - p.From}
	for end := range st.canopy {
		st.canopy[end] = map[standing]canopyOf{}
		for _, day := range w.sweep.Days[p.From:p.To] {
			as := day.standing(st.option)
			if _, ok := st.canopy[end][as]; ok {
				continue
			}
			then := canopyOf{scenario: w.scenario, option: day.Stage.Option(st.option)}
			then.option.Rows.Azimuth_deg = math.Mod(p.Azimuth_deg, 180) + 180*float64(end)
			then.scenario.Fruit = day.Stage.Fruit(w.scenario.Fruit)
			then.scenario.Weather.Date = day.Weather.Date // by which leaves hang or have been pulled
			var err error
			if then.key, err = leanKey(then.scenario, then.option); err != nil {
				return st, err
			}
			st.canopy[end][as] = then
		}
	}
	return st, nil
}

// leansAtOnce is the number of canopies that are held at once: all of a season on even ground. On a slope, or where leaves
// are pulled by the sun side, azimuths need canopies of their own, and take turns.
const leansAtOnce = 16

// live runs parts of a sweep. Known is told each of them as it is done, in their order.
func (w *Sweeping) live(parts []Part, pace func() error, known func(st *strand), progress Progress) error {
	count := counter{tell: progress}
	strands := make([]strand, len(parts))
	for i, p := range parts {
		var err error
		if strands[i], err = w.strand(p); err != nil {
			return err
		}
		count.all += strands[i].left
	}
	for len(strands) > 0 {
		n, leans := together(strands)
		if err := w.prepare(leans, pace); err != nil {
			return err
		}
		if err := w.liveThrough(strands[:n], leans, pace, known, count.one); err != nil {
			return err
		}
		strands = strands[n:]
	}
	count.end()
	return nil
}

// together counts the first strands that get by with as many canopies as are held at once, and lists those.
func together(strands []strand) (n int, leans map[string]*canopyOf) {
	leans = map[string]*canopyOf{}
	for n = range strands {
		more := map[string]*canopyOf{}
		for end := range strands[n].canopy {
			for _, then := range strands[n].canopy[end] {
				if leans[then.key] == nil {
					more[then.key] = &then
				}
			}
		}
		if n > 0 && len(leans)+len(more) > leansAtOnce {
			return n, leans
		}
		for key, then := range more {
			leans[key] = then
		}
	}
	return len(strands), leans
}

// prepare makes the canopies, several at once if there are hands for them.
func (w *Sweeping) prepare(leans map[string]*canopyOf, pace func() error) error {
	var missing []*canopyOf
	for _, then := range leans {
		if then.lean = w.engine.leans.find(then.key); then.lean == nil {
			missing = append(missing, then)
		}
	}
	engine := func() *Engine { return w.engine }
	if w.sweep.Jobs > 1 {
		engine = w.engine.Fork
	}
	one := func(i int, on *Engine) (err error) {
		missing[i].lean, err = on.lean(missing[i].scenario, missing[i].option, leanBunches, pace)
		return err
	}
	if err := share(len(missing), w.sweep.Jobs, engine, one); err != nil {
		return err
	}
	for _, then := range missing {
		w.engine.leans.put(then.key, then.lean)
	}
	return nil
}

// liveThrough runs every day of some strands. Each day has a place of its own in the answer, so that hands change nothing in it.
func (w *Sweeping) liveThrough(strands []strand, leans map[string]*canopyOf, pace func() error, known func(st *strand), done func()) error {
	type task struct{ strand, day int }
	var tasks []task
	for i := range strands {
		for day := strands[i].From; day < strands[i].To; day++ {
			tasks = append(tasks, task{i, day})
			if _, err := w.course(day); err != nil {
				return err
			}
		}
	}
	var mutex sync.Mutex
	next := 0
	one := func(i int, on *desk) error {
		st, day := &strands[tasks[i].strand], tasks[i].day
		sum, err := w.day(st, day, leans, on, pace)
		if err != nil {
			return fmt.Errorf("rows at %g° on %s: %w", st.Azimuth_deg, w.sweep.Days[day].Weather.Date, err)
		}
		mutex.Lock()
		defer mutex.Unlock()
		st.days[day-st.From] = sum
		st.left--
		done()
		for ; next < len(strands) && strands[next].left == 0; next++ {
			known(&strands[next])
			strands[next].days = nil
		}
		return nil
	}
	return share(len(tasks), w.sweep.Jobs, func() *desk { return &desk{} }, one)
}

// day lives through a day of a strand, with the rows read from either end.
func (w *Sweeping) day(st *strand, day int, leans map[string]*canopyOf, on *desk, pace func() error) (daySum, error) {
	var halves [2]halfDay
	course := w.courses[day]
	for end := range halves {
		then := st.canopy[end][w.sweep.Days[day].standing(st.option)]
		s := then.scenario
		s.Weather = w.sweep.Days[day].Weather
		d, err := leans[then.key].lean.live(s, then.option, *course, on, pace)
		if err != nil {
			return daySum{}, err
		}
		halves[end] = d.half()
	}
	sum := whole(&halves, *course)
	if st.Azimuth_deg >= 180 {
		sum.sides[0], sum.sides[1] = sum.sides[1], sum.sides[0]
	}
	return sum, nil
}

// share gives tasks to hands, each with something of its own to work with; the next task goes to the hand that is free.
func share[T any](tasks, hands int, own func() T, one func(task int, with T) error) error {
	if hands <= 1 {
		with := own()
		for i := range tasks {
			if err := one(i, with); err != nil {
				return err
			}
		}
		return nil
	}
	group, stop := errgroup.WithContext(context.Background())
	next := make(chan int)
	group.Go(func() error {
		defer close(next)
		for i := range tasks {
			select {
			case next <- i:
			case <-stop.Done():
				return nil
			}
		}
		return nil
	})
	for range min(hands, tasks) {
		with := own()
		group.Go(func() error {
			for i := range next {
				if err := one(i, with); err != nil {
					return err
				}
			}
			return nil
		})
	}
	return group.Wait()
}

// counter tells progress by the days that are done; whoever counts holds the others back.
type counter struct {
	done, all int
	tell      Progress
}

func (c *counter) one() {
	if c.tell != nil {
		c.done++
		c.tell("days", min(float64(c.done)/float64(c.all), 1))
	}
}

func (c *counter) end() {
	if c.tell != nil {
		c.tell("done", 1)
	}
}
