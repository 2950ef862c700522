package sim

import (
	"math"
	"slices"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/sunburn"
	"rowlight/sim/words"
)

// Directions turns the rows of every option through the compass and runs each azimuth over the days of a sweep. Vines
// and their domes are made once for each stage; a turn only moves the sun about them, but where the ground slopes or
// leaves are pulled by the sun side. Progress may be nil.
func (e *Engine) Directions(s scenario.Scenario, sweep Sweep, step_deg float64, pace func() error, progress Progress) (*result.Directions, error) {
	rows := make([][]result.Direction, len(s.Options))
	drawn := func(option int, d result.Direction) { rows[option] = append(rows[option], d) }
	if err := e.Sweep(s, sweep).Turn(sweep.Turns(s, step_deg), pace, drawn, progress); err != nil {
		return nil, err
	}
	return NewDirections(s, sweep, step_deg, rows), nil
}

// Turn runs parts of a turn of the rows. Drawn is told every direction as it is known, in the order of the parts; it may
// be called from any goroutine, from one at a time.
func (w *Sweeping) Turn(parts []Part, pace func() error, drawn func(option int, d result.Direction), progress Progress) error {
	return w.live(parts, pace, func(st *strand) { drawn(st.Option, w.directionOf(st)) }, progress)
}

// NewDirections puts the directions of every option, in rising azimuth, into one answer. Without any an option has no
// trade-off.
func NewDirections(s scenario.Scenario, sweep Sweep, step_deg float64, rows [][]result.Direction) *result.Directions {
	first, last := sweep.Days[0].Weather.Date, sweep.Days[len(sweep.Days)-1].Weather.Date
	out := &result.Directions{
		ModelVersion: result.ModelVersion, Name: s.Name, From: first[5:], To: last[5:],
		Days: len(sweep.Days), Step_deg: step_deg, Scenario: s, Yours: words.YoursToWeigh(),
	}
	for i, o := range s.Options {
		of := result.DirectionOption{Name: o.Called(), Form: o.Form, Own_deg: o.Rows.Azimuth_deg, Rows: rows[i]}
		if len(of.Rows) > 0 {
			of.TradeOff = words.TradeOff(of, s)
		}
		out.Options = append(out.Options, of)
	}
	return out
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
func (w *Sweeping) directionOf(st *strand) result.Direction {
	d, n := result.Direction{Azimuth_deg: st.Azimuth_deg}, float64(len(st.days))
	fallen := 0.0
	for i := range st.days {
		d.Intercepted_MJm2 += st.days[i].intercepted / n
		fallen += st.days[i].fallen / n
	}
	if fallen > 0 {
		d.InterceptedShare = d.Intercepted_MJm2 / fallen
	}
	rows := scenario.Rows{Azimuth_deg: st.Azimuth_deg}
	for _, side := range scenario.Sides {
		azimuth := rows.SideAzimuth(side)
		sum := result.DirectionSide{
			Compass: scenario.Compass(azimuth), Azimuth_deg: azimuth,
			SunSide: rows.SunSideOf(side, w.scenario.Site.Latitude_deg), Hottest_C: math.Inf(-1),
		}
		for i := range st.days {
			addDay(&sum, &st.days[i].sides[side], n, w.sweep.Days[st.From+i].Weather.Date)
		}
		sum.AtRisk = atRisk(worstDoses(st.days, side))
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

// worstDoses are the doses of damage of every face of a side by the worst of its days, since damage is not summed over a
// season. Faces are in the order of what they see of the sky, so that stage by stage each stands for as open a part of the fruit.
func worstDoses(days []daySum, side scenario.Side) []float64 {
	var worst []float64
	for i := range days {
		worst = worseDoses(worst, days[i].sides[side].doses)
	}
	return worst
}

// worseDoses are the worse of two doses of every face.
func worseDoses(a, b []float64) []float64 {
	worst := make([]float64, max(len(a), len(b)))
	copy(worst, a)
	for f, dose := range b {
		worst[f] = max(worst[f], dose)
	}
	return worst
}

// atRisk is the share of fruit at risk by the doses of its faces.
func atRisk(doses []float64) (sum float64) {
	for _, dose := range doses {
		sum += sunburn.Damaged(dose) / float64(len(doses))
	}
	return sum
}
