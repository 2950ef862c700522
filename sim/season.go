package sim

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// Season runs every option through the days of a sweep, with its rows as they are planned. Progress may be nil.
func (e *Engine) Season(s scenario.Scenario, sweep Sweep, pace func() error, progress Progress) (*result.Season, error) {
	return e.Sweep(s, sweep).Whole(pace, progress)
}

// Whole runs all parts of a season and puts them together.
func (w *Sweeping) Whole(pace func() error, progress Progress) (*result.Season, error) {
	var parts []result.SeasonPart
	known := func(part result.SeasonPart) { parts = append(parts, part) }
	if err := w.Course(w.sweep.Courses(w.scenario, len(w.sweep.Days)), pace, known, progress); err != nil {
		return nil, err
	}
	return w.Season(parts)
}

// Course runs parts of a season. Known is told each of them, in their order; it may be called from any goroutine, from one
// at a time.
func (w *Sweeping) Course(parts []Part, pace func() error, known func(result.SeasonPart), progress Progress) error {
	return w.live(parts, pace, func(st *strand) { known(seasonPart(st)) }, progress)
}

// Season puts the parts of a season together. They must have every day of every option once.
func (w *Sweeping) Season(parts []result.SeasonPart) (*result.Season, error) {
	out := &result.Season{ModelVersion: result.ModelVersion, Name: w.scenario.Name, Scenario: w.scenario}
	for i := range w.sweep.Days {
		day, err := w.Day(i)
		if err != nil {
			return nil, err
		}
		out.Days = append(out.Days, day)
	}
	out.Waves = heatWaves(out.Days)
	for i, o := range w.scenario.Options {
		of := result.SeasonOption{Name: o.Called(), Form: o.Form}
		for _, side := range scenario.Sides {
			of.Sides[side] = result.SeasonSide{
				Compass: scenario.Compass(o.Rows.SideAzimuth(side)), SunSide: o.Rows.SunSideOf(side, w.scenario.Site.Latitude_deg),
				Days: make([]result.SideDay, len(out.Days)), Worst: []int{},
			}
		}
		var doses [2][]float64
		for _, part := range parts {
			if part.Option != i {
				continue
			}
			for _, side := range scenario.Sides {
				copy(of.Sides[side].Days[part.From:], part.Sides[side].Days)
				doses[side] = worseDoses(doses[side], part.Sides[side].WorstDoses)
			}
		}
		for _, side := range scenario.Sides {
			of.Sides[side].AtRisk = atRisk(doses[side])
			sumUp(&of.Sides[side])
		}
		out.Options = append(out.Options, of)
	}
	return out, nil
}

// Day is what all options share of a day, by its index.
func (w *Sweeping) Day(day int) (result.SeasonDay, error) {
	course, err := w.course(day)
	if err != nil {
		return result.SeasonDay{}, err
	}
	of := w.sweep.Days[day]
	out := result.SeasonDay{Date: of.Weather.Date, Stage: string(of.Stage), AirMax_C: math.Inf(-1)}
	for k := range course.Instants {
		out.AirMax_C = max(out.AirMax_C, course.Instants[k].Air_C)
	}
	return out, nil
}

// A heat wave is a run of so many days above such a share of all days; see result.HeatWave.
const (
	waveDays  = 3
	waveShare = 0.9
	// waveRise is how far the hottest day must lie above the middle one [K]: a design day that goes through the dates is as
	// hot on all of them, and no run of it is a wave.
	waveRise = 1.0
)

// heatWaves finds the heat waves of a span. A span of less than ten days has none, since no tenth of it is a day, nor has one of days
// that are all alike.
func heatWaves(days []result.SeasonDay) []result.HeatWave {
	waves := []result.HeatWave{}
	if len(days) < 10 {
		return waves
	}
	sorted := make([]float64, len(days))
	for i, day := range days {
		sorted[i] = day.AirMax_C
	}
	slices.Sort(sorted)
	if sorted[len(sorted)-1]-sorted[len(sorted)/2] < waveRise {
		return waves
	}
	above := sorted[int(waveShare*float64(len(days)))-1]
	for from := 0; from < len(days); from++ {
		to := from
		wave := result.HeatWave{From: days[from].Date, AirMax_C: math.Inf(-1)}
		for to < len(days) && days[to].AirMax_C > above {
			wave.To, wave.AirMax_C = days[to].Date, max(wave.AirMax_C, days[to].AirMax_C)
			to++
		}
		if wave.Days = to - from; wave.Days >= waveDays {
			waves = append(waves, wave)
		}
		from = max(from, to)
	}
	return waves
}

// worstShown is how many of the worst days a side names.
const worstShown = 5

// seasonPart is what is kept of the days of a part.
func seasonPart(st *strand) result.SeasonPart {
	out := result.SeasonPart{Option: st.Option, From: st.From}
	for _, side := range scenario.Sides {
		of := &out.Sides[side]
		of.WorstDoses = worstDoses(st.days, side)
		for i := range st.days {
			day := &st.days[i].sides[side]
			of.Days = append(of.Days, result.SideDay{
				OverWatch_h: day.over[0], OverHot_h: day.over[1], OverBurn_h: day.over[2], Heat_Kh: day.heat[1], AtRisk: day.risk,
				Hottest_C: day.hottest, HottestAt_h: day.at, Hourly_C: day.hourly,
			})
		}
	}
	return out
}

// sumUp finds the sums and the worst days of a side.
func sumUp(side *result.SeasonSide) {
	for i := range side.Days {
		side.OverHot_h += side.Days[i].OverHot_h
		side.Heat_Kh += side.Days[i].Heat_Kh
		if side.Days[i].Heat_Kh > 0 {
			side.Worst = append(side.Worst, i)
		}
	}
	slices.SortStableFunc(side.Worst, func(a, b int) int { return cmp.Compare(side.Days[b].Heat_Kh, side.Days[a].Heat_Kh) })
	side.Worst = side.Worst[:min(len(side.Worst), worstShown)]
}
