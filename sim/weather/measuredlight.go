package weather

import (
	"math"

	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

const (
	// stepsOfHour is the number of steps of five minutes over which the light of an hour is kept.
	stepsOfHour = 12
	stepsOfDay  = hoursOfDay * stepsOfHour
	// typicalBeam is how far the beam of a measured hour may rise above that of a typical clear sky
	// and still take its shape [1], mostBeam how far above that of the cleanest sky: more is light
	// that does not belong to the sun of the hour. Both are assumptions.
	typicalBeam = 1.2
	mostBeam    = 1.1
)

// lightCourse is beam and diffuse light at the five-minute steps of a day [W/m²].
type lightCourse struct {
	beam, diffuse stepCourse
}

// rebuildLight lays beam and diffuse light through the hours. Within an hour beam has the shape of a clear sky, typical,
// or the cleanest where the hour is brighter than that, as low suns in cold air are; diffuse that of the sine of the
// elevation.
func (m *measured) rebuildLight() {
	var typical, clean, sine, mostBeams, mostDiffuse stepCourse
	for k := range sine {
		at := m.day.sunAt(float64(k) / stepsOfHour)
		sine[k] = math.Max(math.Sin(at.Elevation_deg*math.Pi/180), 0)
		if sine[k] > 0 {
			typical[k] = m.day.clearSky(at, m.typical).DNI
			clean[k] = m.day.clearSky(at, m.cleanest).DNI
		}
		mostBeams[k] = math.Max(typicalBeam*typical[k], mostBeam*clean[k])
		mostDiffuse[k] = m.day.extraterrestrial_Wm2 * sine[k] // no more than comes down outside the atmosphere
	}
	beam, diffuse := hourlyLight{most: &mostBeams}, hourlyLight{most: &mostDiffuse}
	for i, row := range m.rows {
		shape := &typical
		if row.DNI_Wm2 > typicalBeam*typical.mean(i) {
			shape = &clean
		}
		beam.add(i, row.DNI_Wm2, shape)
		diffuse.add(i, row.DHI_Wm2, &sine)
	}
	var lost [2]float64
	m.lights.beam, lost[0] = beam.through()
	m.lights.diffuse, lost[1] = diffuse.through()
	m.unplaced_Wh = lost[0] + lost[1]
}

// light is the light at a moment, straight between the five-minute steps; with the sun down there is none.
func (m *measured) light(hour float64, at sun.Position) sky.Irradiance {
	sine := math.Sin(at.Elevation_deg * math.Pi / 180)
	if sine <= 0 {
		return sky.Irradiance{}
	}
	dni, dhi := m.lights.beam.at(hour), m.lights.diffuse.at(hour)
	return sky.Irradiance{GHI: dni*sine + dhi, DNI: dni, DHI: dhi}
}
