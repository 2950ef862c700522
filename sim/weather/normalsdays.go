package weather

import (
	"math"
	"time"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

// rows are the hours of all days of the months.
func (n *normals) rows() []Row {
	var rows []Row
	for _, run := range n.runs() {
		days := n.daily(run)
		for i, day := range days {
			date := dayOfMonth(n.year, run[0]+1, 1).AddDate(0, 0, i)
			rows = append(rows, n.hours(date, day, n.line[date.Month()-1])...)
		}
	}
	return rows
}

// runs are the months that follow each other, each as its first and last, from 0.
func (n *normals) runs() (runs [][2]int) {
	for m := range n.month {
		switch last := len(runs) - 1; {
		case !n.given[m]:
		case last >= 0 && runs[last][1] == m-1:
			runs[last][1] = m
		default:
			runs = append(runs, [2]int{m, m})
		}
	}
	return runs
}

// daily makes means of days from those of a run of months, one after the other, so that the days change evenly and each
// month keeps its mean (Rymes & Myers 2001, Solar Energy 71: every value becomes the mean of itself and its neighbours,
// then each month is set back to its mean, here ten times as often as a month has days, for days that change more evenly). A whole year runs round; else
// its ends stay level.
func (n *normals) daily(run [2]int) [][normalCount]float64 {
	var month []int // of each day, from 0
	for m := run[0]; m <= run[1]; m++ {
		for range dayOfMonth(n.year, m+2, 0).Day() {
			month = append(month, m)
		}
	}
	days := make([][normalCount]float64, len(month))
	for i, m := range month {
		days[i] = n.month[m]
	}
	round := run == [2]int{0, 11}
	at := func(i int) int {
		if round {
			return (i + len(days)) % len(days)
		}
		return min(max(i, 0), len(days)-1)
	}
	const times = 300
	for range times {
		smoothed := make([][normalCount]float64, len(days))
		var off [12][normalCount]float64 // of the means of the months
		var count [12]float64
		for i := range days {
			for q := range days[i] {
				smoothed[i][q] = (days[at(i-1)][q] + days[i][q] + days[at(i+1)][q]) / 3
				off[month[i]][q] += n.month[month[i]][q] - smoothed[i][q]
			}
			count[month[i]]++
		}
		for i, m := range month {
			for q := range smoothed[i] {
				smoothed[i][q] += off[m][q] / count[m]
			}
		}
		days = smoothed
	}
	return days
}

// hours makes the hours of one day from its means.
func (n *normals) hours(date time.Time, day [normalCount]float64, line int) []Row {
	s := scenario.Scenario{Site: n.site, Weather: scenario.Default().Weather}
	w := &s.Weather
	w.Date = date.Format(time.DateOnly)
	w.AirMax_C, w.AirMin_C, w.Wind_ms = day[normalMax], day[normalMin], math.Max(day[normalWind], 0)
	w.DewPoint_C = math.Min(day[normalDew], day[normalMin])
	ends := make([]float64, hoursOfDay)
	for i := range ends {
		ends[i] = float64(i + 1)
	}
	course, err := Course(s, ends)
	if fault, ok := FaultIn(err); ok { // a sun that does not both rise and set
		n.faults.block(line, 0, fault.Code, fault.Values)
		return nil
	}
	outside := sky.DailyExtraterrestrial(n.site.Latitude_deg, date.YearDay())
	light := n.light(date, day[normalLight], outside)
	rows := make([]Row, hoursOfDay)
	for i, at := range course.Instants {
		rows[i] = Row{
			Line: line, Year: date.Year(), Month: int(date.Month()), Day: date.Day(), Hour: i + 1, stamped: true,
			Air_C: at.Air_C, Dew_C: at.Dew_C, Humidity_pct: missing(), Longwave_Wm2: missing(),
			Wind_ms: at.Wind_ms, WindFrom_deg: at.WindFrom_deg, Opaque_tenths: n.cloud(day[normalLight], outside),
			GHI: light[i].GHI, DNI: light[i].DNI, DHI: light[i].DHI,
		}
	}
	return rows
}

// cloud is the cover of the sky [tenths] by the light that a clear one lacks (Crawford & Duchon 1999; clear by FAO-56
// eq. 37).
func (n *normals) cloud(light, outside float64) float64 {
	clear := (0.75 + 2e-5*n.site.Elevation_m) * outside
	return 10 * math.Max(0, math.Min(1-light/clear, 1))
}

// light shares the light of a day [MJ/m²] among its hours, by means over five-minute steps; their sum is that of the day.
func (n *normals) light(date time.Time, day, outside float64) (hours [hoursOfDay]sky.Irradiance) {
	set := sky.DaylightHours(n.site.Latitude_deg, date.YearDay()) / 24 * math.Pi // hour angle [rad]
	diffuse := erbsMonthly(day/outside, set)
	var global, scattered [hoursOfDay]float64
	var over [hoursOfDay]sunlit
	allGlobal, allScattered := 0.0, 0.0
	midnight := sun.Midnight(date, n.site.UTCOffset_h)
	for i := range hours {
		for step := range stepsOfHour {
			t := midnight.Add(time.Duration((float64(i) + (float64(step)+0.5)/stepsOfHour) * float64(time.Hour)))
			over[i].add(math.Sin(sun.At(n.site.Latitude_deg, n.site.Longitude_deg, t).Elevation_deg * math.Pi / 180))
			angle := sun.HourAngle(n.site.Latitude_deg, n.site.Longitude_deg, t) * math.Pi / 180
			share := math.Max(math.Cos(angle)-math.Cos(set), 0) // Liu & Jordan 1960
			// Collares-Pereira & Rabl 1979
			a, b := 0.409+0.5016*math.Sin(set-math.Pi/3), 0.6609-0.4767*math.Sin(set-math.Pi/3)
			global[i] += share * (a + b*math.Cos(angle))
			scattered[i] += share
		}
		if over[i].end(); over[i].share == 0 { // the horizon of the sun is a trifle lower than that of the formula
			global[i], scattered[i] = 0, 0
		}
		allGlobal, allScattered = allGlobal+global[i], allScattered+scattered[i]
	}
	const perHour = 1e6 / 3600 // [W h/MJ]
	for i := range hours {
		if allGlobal == 0 || over[i].share == 0 {
			continue
		}
		over[i].extraterrestrial_Wm2 = sun.ExtraterrestrialNormal(date.YearDay())
		ghi := day * perHour * global[i] / allGlobal
		dhi := math.Min(day*perHour*diffuse*scattered[i]/allScattered, ghi)
		dni := over[i].beam(ghi - dhi)
		hours[i] = sky.Irradiance{GHI: ghi, DNI: dni, DHI: ghi - dni*over[i].sine}
	}
	return hours
}

// erbsMonthly is the diffuse share of the light of a mean day of a month, by its share of what comes from outside and the
// hour angle of sunset [rad] (Erbs, Klein & Duffie 1982, Solar Energy 28, for monthly means from 0.3 to 0.8, which
// bound it).
func erbsMonthly(share, set float64) float64 {
	k := math.Max(0.3, math.Min(share, 0.8))
	if set <= 81.4*math.Pi/180 {
		return 1.391 - 3.560*k + 4.189*k*k - 2.137*k*k*k
	}
	return 1.311 - 3.022*k + 3.427*k*k - 1.821*k*k*k
}
