package sim

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// Season runs every option through the days of a sweep, with its rows as they are planned. Progress may be nil.
func (e *Engine) Season(s scenario.Scenario, sweep Sweep, pace func() error, progress Progress) (*result.Season, error) {
	courses, err := sweep.courses(s, pace)
	if err != nil {
		return nil, err
	}
	out := &result.Season{ModelVersion: result.ModelVersion, Name: s.Name, Days: seasonDays(&sweep, courses), Scenario: s}
	out.Waves = heatWaves(out.Days)
	count := counter{all: len(courses) * len(s.Options), tell: progress}
	for _, o := range s.Options {
		ready, err := sweep.prepare(e, s, o, pace)
		if err != nil {
			return nil, err
		}
		days, err := sweep.live(ready, courses, pace, count.one)
		if err != nil {
			return nil, err
		}
		of := result.SeasonOption{Name: nameOf(o), Form: o.Form}
		for _, side := range scenario.Sides {
			of.Sides[side] = seasonSide(s, o, days, side)
		}
		out.Options = append(out.Options, of)
	}
	count.end()
	return out, nil
}

// seasonDays is what all options share.
func seasonDays(sweep *Sweep, courses []weather.Series) []result.SeasonDay {
	days := make([]result.SeasonDay, len(courses))
	for i := range courses {
		warmest := math.Inf(-1)
		for k := range courses[i].Instants {
			warmest = max(warmest, courses[i].Instants[k].Air_C)
		}
		days[i] = result.SeasonDay{Date: sweep.Days[i].Weather.Date, Stage: string(sweep.Days[i].Stage), AirMax_C: warmest}
	}
	return days
}

// A heat wave is a run of so many days above such a share of all days; see result.HeatWave.
const (
	waveDays  = 3
	waveShare = 0.9
)

// heatWaves finds the heat waves of a span. A span of less than ten days has none, since no tenth of it is a day.
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

// seasonSide puts the days of a side together.
func seasonSide(s scenario.Scenario, o scenario.Option, days []daySum, side scenario.Side) result.SeasonSide {
	out := result.SeasonSide{
		Compass: scenario.Compass(o.Rows.SideAzimuth(side)), SunSide: o.Rows.SunSideOf(side, s.Site.Latitude_deg),
		AtRisk: worstDays(days, side), Worst: []int{},
	}
	for i := range days {
		of := &days[i].sides[side]
		out.Days = append(out.Days, result.SideDay{
			OverWatch_h: of.over[0], OverHot_h: of.over[1], OverBurn_h: of.over[2], Heat_Kh: of.heat[1], AtRisk: of.risk,
			Hottest_C: of.hottest, HottestAt_h: of.at, Hourly_C: of.hourly,
		})
		out.OverHot_h += of.over[1]
		out.Heat_Kh += of.heat[1]
		if of.heat[1] > 0 {
			out.Worst = append(out.Worst, i)
		}
	}
	slices.SortStableFunc(out.Worst, func(a, b int) int { return cmp.Compare(out.Days[b].Heat_Kh, out.Days[a].Heat_Kh) })
	out.Worst = out.Worst[:min(len(out.Worst), worstShown)]
	return out
}
