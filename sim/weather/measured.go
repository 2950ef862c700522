package weather

import (
	"math"

	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

const hoursOfDay = 24

// measured is a day of 24 measured hours. Row i runs from hour i to its stamp i+1.
type measured struct {
	day         day
	rows        []scenario.Hour
	typical     sky.Atmosphere
	cleanest    sky.Atmosphere
	lights      lightCourse
	thermal     [hoursOfDay]float64 // mean longwave of the hour [W/m²]
	unplaced_Wh float64
}

func (d day) newMeasured(w scenario.Weather) (*measured, error) {
	if len(w.Hours) != hoursOfDay {
		return nil, scenarioFault("fault.hours", "/weather/hours", map[string]any{"count": len(w.Hours), "want": hoursOfDay})
	}
	pressure_Pa := sky.Pressure(d.site.Elevation_m)
	m := &measured{
		day: d, rows: w.Hours,
		typical:  sky.Atmosphere{Ozone_cm: 0.3, Water_cm: 1.5, AOD380: 0.15, AOD500: 0.1, Pressure_Pa: pressure_Pa},
		cleanest: sky.Atmosphere{Ozone_cm: 0.3, Water_cm: 0.5, Pressure_Pa: pressure_Pa},
	}
	m.rebuildLight()
	for i, row := range m.rows {
		m.thermal[i] = row.Longwave_Wm2
		if row.Longwave_Wm2 <= 0 { // the file has none
			air, dew := m.air(float64(i) + 0.5)
			m.thermal[i] = sky.Brutsaert(air, math.Min(dew, air))
		}
	}
	return m, nil
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
