package weather

import (
	"math"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

const (
	hoursOfDay = 24
	// stepsOfHour is the number of steps of five minutes over which the light of an hour is kept.
	stepsOfHour = 12
	// mostBeam is how far the beam of a measured hour may rise above that of a typical clear sky [1].
	// Clean skies stay under it; more tells of light where the sun is too low for it. An assumption.
	mostBeam = 2
	// stampTolerance_h is how near an hour must be to a stamp to lie on it [h].
	stampTolerance_h = 1e-9
)

// measured is a day of 24 measured hours. Row i runs from hour i to its stamp i+1. The light of an
// hour follows the sun within the hour: beam by the shape of a typical clear sky, diffuse by the
// sine of the elevation, each scaled so that trapezoids over five-minute steps give back the
// measured mean.
type measured struct {
	day         day
	rows        []scenario.Hour
	clear       sky.Atmosphere
	nodes       [hoursOfDay*stepsOfHour + 1]node
	beam        [hoursOfDay]float64 // beam over that of the typical clear sky [1]
	diffuse     [hoursOfDay]float64 // diffuse over the sine of the elevation [W/m²]
	thermal     [hoursOfDay]float64 // mean longwave of the hour [W/m²]
	unplaced_Wh float64
}

// node is what gives the light its shape at one five-minute step.
type node struct {
	sine float64 // of the elevation of the sun, 0 below the horizon
	beam float64 // of the typical clear sky [W/m²]
}

func (d day) newMeasured(w scenario.Weather) (*measured, error) {
	if len(w.Hours) != hoursOfDay {
		return nil, Fault{scenario.Fault{Code: "fault.hours", Path: "/weather/hours", Values: map[string]any{
			"count": len(w.Hours), "want": hoursOfDay}}}
	}
	m := &measured{day: d, rows: w.Hours, clear: typicalClear(d.site)}
	m.scaleLight()
	for i, row := range m.rows {
		m.thermal[i] = row.Longwave_Wm2
		if row.Longwave_Wm2 <= 0 { // the file has none
			air, dew := m.air(float64(i) + 0.5)
			m.thermal[i] = sky.Brutsaert(air, math.Min(dew, air))
		}
	}
	return m, nil
}

// typicalClear is the sky whose beam gives the shape within an hour; an assumption that matters
// little outside the hours of rise and set.
func typicalClear(site scenario.Site) sky.Atmosphere {
	return sky.Atmosphere{
		Ozone_cm: 0.3, Water_cm: 1.5, AOD380: 0.15, AOD500: 0.1,
		Pressure_Pa: sky.Pressure(site.Elevation_m), Albedo: regionalAlbedo,
	}
}

// scaleLight finds the scale of beam and diffuse for each hour and counts the light that has no place.
func (m *measured) scaleLight() {
	for k := range m.nodes {
		m.nodes[k] = m.nodeAt(m.day.sunAt(float64(k) / stepsOfHour))
	}
	for i, row := range m.rows {
		mean := meanOfHour(m.nodes[i*stepsOfHour : (i+1)*stepsOfHour+1])
		m.beam[i] = scale(row.DNI_Wm2, mean.beam, mostBeam)
		// No more diffuse light than all that comes down outside the atmosphere.
		m.diffuse[i] = scale(row.DHI_Wm2, mean.sine, m.day.extraterrestrial_Wm2)
		m.unplaced_Wh += row.DNI_Wm2 - m.beam[i]*mean.beam + row.DHI_Wm2 - m.diffuse[i]*mean.sine
	}
}

func (m *measured) nodeAt(at sun.Position) node {
	return node{
		sine: math.Max(math.Sin(at.Elevation_deg*math.Pi/180), 0),
		beam: m.day.clearSky(at, m.clear).DNI,
	}
}

// meanOfHour is the mean by trapezoids between evenly spaced nodes.
func meanOfHour(nodes []node) node {
	last := len(nodes) - 1
	mean := node{(nodes[0].sine + nodes[last].sine) / 2, (nodes[0].beam + nodes[last].beam) / 2}
	for _, n := range nodes[1:last] {
		mean.sine += n.sine
		mean.beam += n.beam
	}
	return node{mean.sine / float64(last), mean.beam / float64(last)}
}

// scale is the factor that brings the mean of a shape to the wanted one, at most the given factor.
func scale(wanted, mean, most float64) float64 {
	if mean <= 0 || wanted <= 0 {
		return 0
	}
	return math.Min(wanted/mean, most)
}

// light at a stamp is the mean of what the hours on both sides give, so that trapezoids over the
// whole day keep the light of the day.
func (m *measured) light(hour float64, at sun.Position) sky.Irradiance {
	before, after := m.hoursAround(hour)
	n := m.node(hour, at)
	dni := (m.beam[before] + m.beam[after]) / 2 * n.beam
	dhi := (m.diffuse[before] + m.diffuse[after]) / 2 * n.sine
	return sky.Irradiance{GHI: dni*n.sine + dhi, DNI: dni, DHI: dhi}
}

// node is the one of the five-minute step that the hour lies on, or a new one between steps.
func (m *measured) node(hour float64, at sun.Position) node {
	step := math.Round(hour * stepsOfHour)
	if step >= 0 && int(step) < len(m.nodes) && math.Abs(hour-step/stepsOfHour) < stampTolerance_h {
		return m.nodes[int(step)]
	}
	return m.nodeAt(at)
}

// hoursAround are the rows just before and just after an hour of the clock: the same row twice, but
// for the stamps. The day repeats.
func (m *measured) hoursAround(hour float64) (before, after int) {
	if stamp := math.Round(hour); math.Abs(hour-stamp) < stampTolerance_h {
		return row(stamp - 1), row(stamp)
	}
	return row(hour), row(hour)
}

// row is the index of the row that runs over an hour of the clock.
func row(hour float64) int { return int(wrap(math.Floor(hour))) }

// air interpolates between the stamps.
func (m *measured) air(hour float64) (air_C, dew_C float64) {
	a, b, share := m.stampsAround(hour)
	return mix(a.Air_C, b.Air_C, share), mix(a.DewPoint_C, b.DewPoint_C, share)
}

// wind interpolates between the stamps; the direction turns the shorter way.
func (m *measured) wind(hour float64) (speed_ms, from_deg float64) {
	a, b, share := m.stampsAround(hour)
	turn := math.Remainder(b.WindFrom_deg-a.WindFrom_deg, 360)
	return mix(a.Wind_ms, b.Wind_ms, share), math.Mod(a.WindFrom_deg+share*turn+720, 360)
}

// stampsAround are the rows whose stamps lie before and after an hour, and how far it is between them.
func (m *measured) stampsAround(hour float64) (a, b scenario.Hour, share float64) {
	stamp := math.Floor(hour)
	return m.rows[row(stamp-1)], m.rows[row(stamp)], hour - stamp
}

// longwave interpolates between the middles of the hours.
func (m *measured) longwave(hour, _, _ float64) float64 {
	middle := math.Floor(hour-0.5) + 0.5
	return mix(m.thermal[row(middle)], m.thermal[row(middle+1)], hour-middle)
}

func mix(a, b, share float64) float64 { return a + share*(b-a) }
