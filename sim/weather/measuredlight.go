package weather

import (
	"math"

	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

const (
	// stepsOfHour is the number of steps of five minutes over which the light of an hour is kept.
	stepsOfHour = 12
	// typicalBeam is how far the beam of a measured hour may rise above that of a typical clear sky
	// and still take its shape [1], mostBeam how far above that of the cleanest sky: more is light
	// that does not belong to the sun of the hour. Both are assumptions.
	typicalBeam = 1.2
	mostBeam    = 1.1
	// stampTolerance_h is how near an hour must be to a step to lie on it [h].
	stampTolerance_h = 1e-9
)

// hourLight is how the light of a measured hour follows the sun within the hour: beam by the shape
// of a clear sky, typical, or the cleanest where the hour is brighter than that, as low suns in cold
// air are; diffuse by the sine of the elevation. Each is scaled so that trapezoids over five-minute
// steps give back the measured mean.
type hourLight struct {
	clean   bool    // the shape is that of the cleanest sky
	beam    float64 // beam over that of the clear sky [1]
	diffuse float64 // diffuse over the sine of the elevation [W/m²]
}

// node is what gives the light its shape at one five-minute step.
type node struct {
	sine float64 // of the elevation of the sun, 0 below the horizon
	beam float64 // of a clear sky [W/m²]
}

// scaleLight scales the light of each hour and counts what has no place.
func (m *measured) scaleLight() {
	for k := range m.nodes {
		m.nodes[k] = m.nodeAt(m.day.sunAt(float64(k)/stepsOfHour), m.typical)
	}
	for i, row := range m.rows {
		mean, most := meanOfHour(m.nodes[i*stepsOfHour:(i+1)*stepsOfHour+1]), typicalBeam
		l := &m.lights[i]
		if row.DNI_Wm2 > typicalBeam*mean.beam && mean.sine > 0 {
			l.clean = true
			mean, most = m.cleanMean(i), mostBeam
		}
		l.beam = scale(row.DNI_Wm2, mean.beam, most)
		// No more diffuse light than all that comes down outside the atmosphere.
		l.diffuse = scale(row.DHI_Wm2, mean.sine, m.day.extraterrestrial_Wm2)
		m.unplaced_Wh += row.DNI_Wm2 - l.beam*mean.beam + row.DHI_Wm2 - l.diffuse*mean.sine
	}
}

func (m *measured) nodeAt(at sun.Position, a sky.Atmosphere) node {
	return node{
		sine: math.Max(math.Sin(at.Elevation_deg*math.Pi/180), 0),
		beam: m.day.clearSky(at, a).DNI,
	}
}

// cleanMean is the mean of an hour under the cleanest sky.
func (m *measured) cleanMean(hour int) node {
	var nodes [stepsOfHour + 1]node
	for step := range nodes {
		nodes[step] = m.nodeAt(m.day.sunAt(float64(hour*stepsOfHour+step)/stepsOfHour), m.cleanest)
	}
	return meanOfHour(nodes[:])
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
	dni := (m.beam(before, n, at) + m.beam(after, n, at)) / 2
	dhi := (m.lights[before].diffuse + m.lights[after].diffuse) / 2 * n.sine
	return sky.Irradiance{GHI: dni*n.sine + dhi, DNI: dni, DHI: dhi}
}

// beam is the beam that a row gives at a moment.
func (m *measured) beam(row int, n node, at sun.Position) float64 {
	l := m.lights[row]
	if l.clean {
		return l.beam * m.day.clearSky(at, m.cleanest).DNI
	}
	return l.beam * n.beam
}

// node is the one of the five-minute step that the hour lies on, or a new one between steps.
func (m *measured) node(hour float64, at sun.Position) node {
	step := math.Round(hour * stepsOfHour)
	if step >= 0 && int(step) < len(m.nodes) && math.Abs(hour-step/stepsOfHour) < stampTolerance_h {
		return m.nodes[int(step)]
	}
	return m.nodeAt(at, m.typical)
}

// hoursAround are the rows just before and just after an hour of the clock: the same row twice, but
// for the stamps. The day repeats.
func (m *measured) hoursAround(hour float64) (before, after int) {
	if stamp := math.Round(hour); math.Abs(hour-stamp) < stampTolerance_h {
		return row(stamp - 1), row(stamp)
	}
	return row(hour), row(hour)
}
