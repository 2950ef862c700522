package sim

import (
	"context"
	"fmt"
	"time"

	"golang.org/x/sync/errgroup"

	"rowlight/sim/growth"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// SpanDay is one day of a span: its weather and how far vines and fruit have grown.
type SpanDay struct {
	Weather scenario.Weather
	Stage   growth.Stage
}

// Sweep is how a run over many days goes about its work.
type Sweep struct {
	Days []SpanDay // in their order, one at least
	// Jobs is the number of days that are worked on at once, at least 1. Answers are the same for any number. Above 1
	// pace is called from several goroutines.
	Jobs int
}

// OneDay is the sweep over the day of a scenario.
func OneDay(s scenario.Scenario) Sweep {
	return Sweep{Days: []SpanDay{{s.Weather, growth.Of(s)}}, Jobs: 1}
}

// courses is the weather of every day, the same for all options and azimuths.
func (w *Sweep) courses(s scenario.Scenario, pace func() error) ([]weather.Series, error) {
	all := make([]weather.Series, len(w.Days))
	for i, day := range w.Days {
		if err := pace(); err != nil {
			return nil, err
		}
		s.Weather = day.Weather
		var err error
		if all[i], err = weather.Course(s, leanHours()); err != nil {
			return nil, fmt.Errorf("weather of %s: %w", day.Weather.Date, err)
		}
	}
	return all, nil
}

// sideDay is one side of an option on one day.
type sideDay struct {
	lit, light, before, after float64
	over, heat                [3]float64
	hottest, at               float64
	doses                     []float64 // of damage, of every face
	hourly                    [24]float64
	risk                      float64
}

// daySum is what is kept of an option on a day.
type daySum struct {
	sides       [2]sideDay
	intercepted float64 // sunlight that the leaves take in [MJ per m² of ground]
	fallen      float64 // sunlight on the ground area [MJ/m²]
}

// keep takes from a day what the sum over days needs.
func (d *optionDay) keep(whole weather.Series) (out daySum) {
	hours := make([]float64, len(d.course.Instants))
	for k := range hours {
		hours[k] = d.course.Instants[k].Hour_h
	}
	noon := whole.ClockHour(whole.Events.Transit)
	for side := range d.tallies {
		out.sides[side] = d.tallies[side].day(hours, noon)
		out.sides[side].hourly = d.tallies[side].hourly(hours, whole)
	}
	for k := 1; k < len(hours); k++ {
		seconds := (hours[k] - hours[k-1]) * 3600 / 2
		for _, i := range []int{k - 1, k} {
			out.intercepted += d.day.scatters[i].leafTaken * d.leafArea * seconds / 1e6
			out.fallen += d.course.Instants[i].GHI * seconds / 1e6
		}
	}
	return out
}

// day is the side's day in a few numbers.
func (t *sideTally) day(hours []float64, noon float64) (out sideDay) {
	sum, n := t.summary(hours), float64(len(t.tallies))
	out.lit, out.hottest, out.at, out.risk = sum.Lit_h, sum.Hottest_C, sum.HottestAt_h, sum.AtRisk
	out.over = [3]float64{sum.OverWatch_h, sum.OverHot_h, sum.OverBurn_h}
	for i := range t.tallies {
		for k, heat := range t.tallies[i].Heat {
			out.heat[k] += heat / n
		}
		out.doses = append(out.doses, t.tallies[i].Dose)
	}
	for k := 1; k < len(hours); k++ {
		a, b := hours[k-1], hours[k]
		energy := (t.steps.Light_Wm2[k-1] + t.steps.Light_Wm2[k]) / 2 * (b - a) * 3600 / 1e6
		early := min(max((noon-a)/(b-a), 0), 1)
		out.before += early * energy
		out.after += (1 - early) * energy
	}
	out.light = out.before + out.after
	return out
}

// hourly is the highest temperature of the hottest tenth of faces in each hour of the clock, and of the air where the
// day is not lived through: at night berries are about as warm.
func (t *sideTally) hourly(hours []float64, whole weather.Series) (out [24]float64) {
	for hour := range out {
		out[hour] = whole.Instants[0].Air_C
	}
	filled := [24]bool{}
	put := func(at, value float64) {
		if hour := min(int(at), 23); !filled[hour] || value > out[hour] {
			filled[hour], out[hour] = true, value
		}
	}
	for k, at := range hours {
		put(at, t.steps.Hottest_C[k])
	}
	lived := filled
	for i := range whole.Instants {
		if at := &whole.Instants[i]; !lived[min(int(at.Hour_h), 23)] {
			put(at.Hour_h, at.Air_C)
		}
	}
	return out
}

// turned is an option with its rows at an azimuth, ready for every stage of a sweep.
type turned struct {
	option scenario.Option
	stages map[standing]stageOf
}

// standing tells the canopies of a sweep apart: by stage, and by whether leaves have been pulled.
type standing struct {
	stage  growth.Stage
	pulled float64 // share of both sides together
}

func (d *SpanDay) standing(o scenario.Option) standing {
	then := o.On(d.Weather.Date)
	return standing{d.Stage, then.Leaves.RemovedMorning + then.Leaves.RemovedAfternoon}
}

// stageOf is an option in a stage.
type stageOf struct {
	*lean
	scenario scenario.Scenario
	option   scenario.Option
}

// prepare readies an option for the stages of the days.
func (w *Sweep) prepare(e *Engine, s scenario.Scenario, o scenario.Option, pace func() error) (turned, error) {
	t := turned{o, map[standing]stageOf{}}
	for _, day := range w.Days {
		if _, ok := t.stages[day.standing(o)]; ok {
			continue
		}
		then := stageOf{scenario: s, option: day.Stage.Option(o)}
		then.scenario.Fruit = day.Stage.Fruit(s.Fruit)
		at := s
		at.Weather.Date = day.Weather.Date // by which leaves hang or have been pulled
		var err error
		if then.lean, err = e.lean(at, then.option, pace); err != nil {
			return t, err
		}
		t.stages[day.standing(o)] = then
	}
	return t, nil
}

// live runs every day of a sweep, with several hands if so many are wanted. Each day has a place of its own in the
// answer, so that hands change nothing in it.
func (w *Sweep) live(t turned, courses []weather.Series, pace func() error, done func()) ([]daySum, error) {
	out := make([]daySum, len(w.Days))
	one := func(day int, on *desk) error {
		then := t.stages[w.Days[day].standing(t.option)]
		s := then.scenario
		s.Weather = w.Days[day].Weather
		d, err := then.lean.live(s, then.option, courses[day], on, pace)
		if err == nil {
			out[day] = d.keep(courses[day])
			done()
		}
		return err
	}
	return out, share(len(w.Days), w.Jobs, one)
}

// share gives tasks to hands, each with a desk of its own.
func share(tasks, hands int, one func(task int, on *desk) error) error {
	if hands <= 1 {
		on := &desk{}
		for i := range tasks {
			if err := one(i, on); err != nil {
				return err
			}
		}
		return nil
	}
	group, stop := errgroup.WithContext(context.Background())
	for hand := range hands {
		group.Go(func() error {
			on := &desk{}
			for i := hand; i < tasks && stop.Err() == nil; i += hands {
				if err := one(i, on); err != nil {
					return err
				}
			}
			return nil
		})
	}
	return group.Wait()
}

// dateOf reads the date of a day of a sweep.
func dateOf(day SpanDay) (time.Time, error) { return time.Parse(time.DateOnly, day.Weather.Date) }
