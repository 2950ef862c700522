package sim

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/sunburn"
	"rowlight/sim/weather"
	"rowlight/sim/words"
)

// Directions turns the rows of every option through the compass and runs each azimuth over the days of a sweep. Vines
// and their domes are made once for each stage; a turn only moves the sun about them, but where the ground slopes or
// leaves are pulled by the sun side. Drawn is told every direction as it is known, in the order of the answer; it and
// progress may be nil.
func (e *Engine) Directions(s scenario.Scenario, sweep Sweep, step_deg float64, pace func() error, drawn func(option int, d result.Direction), progress Progress) (*result.Directions, error) {
	courses, err := sweep.courses(s, pace)
	if err != nil {
		return nil, err
	}
	first, last := sweep.Days[0].Weather.Date, sweep.Days[len(sweep.Days)-1].Weather.Date
	out := &result.Directions{
		ModelVersion: result.ModelVersion, Name: s.Name, From: first[5:], To: last[5:],
		Days: len(sweep.Days), Step_deg: step_deg, Scenario: s, Yours: words.YoursToWeigh(),
	}
	count := counter{all: len(courses) * len(s.Options) * len(azimuths(step_deg, 0)), tell: progress}
	for i, o := range s.Options {
		of := result.DirectionOption{Name: nameOf(o), Form: o.Form, Own_deg: o.Rows.Azimuth_deg}
		for _, azimuth := range azimuths(step_deg, o.Rows.Azimuth_deg) {
			o.Rows.Azimuth_deg = azimuth
			direction, err := e.direction(s, o, &sweep, courses, pace, count.one)
			if err != nil {
				return nil, err
			}
			if of.Rows = append(of.Rows, direction); drawn != nil {
				drawn(i, direction)
			}
		}
		of.TradeOff = words.TradeOff(of, s)
		out.Options = append(out.Options, of)
	}
	count.end()
	return out, nil
}

// direction runs an option over all days.
func (e *Engine) direction(s scenario.Scenario, o scenario.Option, sweep *Sweep, courses []weather.Series, pace func() error, done func()) (result.Direction, error) {
	ready, err := sweep.prepare(e, s, o, pace)
	if err != nil {
		return result.Direction{}, err
	}
	days, err := sweep.live(ready, courses, pace, done)
	if err != nil {
		return result.Direction{}, fmt.Errorf("rows at %g°: %w", o.Rows.Azimuth_deg, err)
	}
	return directionOf(s, o, sweep, days), nil
}

// azimuths are those of a turn, with an option's own among them.
func azimuths(step_deg, own_deg float64) []float64 {
	var all []float64
	for k := 0; float64(k)*step_deg < 180; k++ {
		all = append(all, float64(k)*step_deg)
	}
	if !slices.Contains(all, own_deg) {
		all = append(all, own_deg)
		slices.Sort(all)
	}
	return all
}

// directionOf sums up the days of an azimuth.
func directionOf(s scenario.Scenario, o scenario.Option, sweep *Sweep, days []daySum) result.Direction {
	d, n := result.Direction{Azimuth_deg: o.Rows.Azimuth_deg}, float64(len(days))
	fallen := 0.0
	for i := range days {
		d.Intercepted_MJm2 += days[i].intercepted / n
		fallen += days[i].fallen / n
	}
	if fallen > 0 {
		d.InterceptedShare = d.Intercepted_MJm2 / fallen
	}
	for _, side := range scenario.Sides {
		azimuth := o.Rows.SideAzimuth(side)
		sum := result.DirectionSide{
			Compass: scenario.Compass(azimuth), Azimuth_deg: azimuth,
			SunSide: o.Rows.SunSideOf(side, s.Site.Latitude_deg), Hottest_C: math.Inf(-1),
		}
		for i := range days {
			addDay(&sum, &days[i].sides[side], n, sweep.Days[i].Weather.Date)
		}
		sum.AtRisk = worstDays(days, side)
		d.Sides[side] = sum
	}
	return d
}

// addDay adds one of n days.
func addDay(sum *result.DirectionSide, day *sideDay, n float64, date string) {
	sum.Lit_h += day.lit / n
	sum.Light_MJm2 += day.light / n
	sum.LightBefore_MJm2 += day.before / n
	sum.LightAfter_MJm2 += day.after / n
	sum.OverWatch_h += day.over[0] / n
	sum.OverHot_h += day.over[1] / n
	sum.OverBurn_h += day.over[2] / n
	sum.HeatOverWatch_Kh += day.heat[0] / n
	sum.HeatOverHot_Kh += day.heat[1] / n
	sum.HeatOverBurn_Kh += day.heat[2] / n
	if day.hottest > sum.Hottest_C {
		sum.Hottest_C, sum.HottestAt_h, sum.HottestOn = day.hottest, day.at, date
	}
}

// worstDays is the share of fruit at risk over days: every face by the worst of its days, since damage is not summed
// over a season. Stages have the same bunches in the same order.
func worstDays(days []daySum, side scenario.Side) float64 {
	faces := 0
	for i := range days {
		faces = max(faces, len(days[i].sides[side].doses))
	}
	worst := make([]float64, faces)
	for i := range days {
		for f, dose := range days[i].sides[side].doses {
			worst[f] = max(worst[f], dose)
		}
	}
	sum := 0.0
	for _, dose := range worst {
		sum += sunburn.Damaged(dose) / float64(faces)
	}
	return sum
}

// nameOf is what an option is called.
func nameOf(o scenario.Option) string {
	if form, ok := scenario.FormByKey(o.Form); ok && o.Name == "" {
		return form.Name
	}
	return o.Name
}

// counter tells progress by the days that are done, from any goroutine.
type counter struct {
	mutex     sync.Mutex
	done, all int
	tell      Progress
}

func (c *counter) one() {
	if c.tell == nil {
		return
	}
	c.mutex.Lock()
	defer c.mutex.Unlock()
	c.done++
	c.tell("days", min(float64(c.done)/float64(c.all), 1))
}

func (c *counter) end() {
	if c.tell != nil {
		c.tell("done", 1)
	}
}
