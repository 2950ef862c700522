package leaves

import (
	"math"
	"time"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/scenario"
	"rowlight/sim/sun"
)

// hotDay is the place and the day of the default scenario, whose sun is followed.
type hotDay struct {
	latitude_deg, longitude_deg float64
	midnight                    time.Time
}

func newHotDay() (hotDay, error) {
	s := scenario.Default()
	date, err := time.Parse(time.DateOnly, s.Weather.Date)
	return hotDay{s.Site.Latitude_deg, s.Site.Longitude_deg, sun.Midnight(date, s.Site.UTCOffset_h)}, err
}

// lowest is the height of the sun below which nothing is compared [deg].
const lowest = 5.0

// rows are the row azimuths over which the sun of the day passes [deg].
var rows = [...]float64{0, 90}

// toSun is the unit vector to the sun in the row frame at an hour of the clock; ok is false below the lowest height.
func (h *hotDay) toSun(row_deg, hour float64) (d mgl64.Vec3, ok bool) {
	p := sun.At(h.latitude_deg, h.longitude_deg, h.midnight.Add(time.Duration(hour*float64(time.Hour))))
	return sun.InRow(p.Vector(), row_deg), p.Elevation_deg >= lowest
}

// directions are those in which a form is compared: for both sides of the row a lattice of heights and
// azimuths, and the sun of the hot day every hour over north–south and east–west rows.
func (h *hotDay) directions() (all []Direction) {
	for _, side := range scenario.Sides {
		for elevation := 5.0; elevation <= 75; elevation += 10 {
			for azimuth := -75.0; azimuth <= 75; azimuth += 30 {
				all = append(all, Direction{Side: side, Elevation_deg: elevation, Azimuth_deg: azimuth})
			}
		}
	}
	for _, row := range rows {
		for hour := range 24 {
			d, ok := h.toSun(row, float64(hour))
			if !ok {
				continue
			}
			side := scenario.Right
			if d[0] < 0 {
				side, d[0] = scenario.Left, -d[0]
			}
			all = append(all, Direction{
				Side: side, Day: true,
				Elevation_deg: mgl64.RadToDeg(math.Asin(d[2])), Azimuth_deg: mgl64.RadToDeg(math.Atan2(d[1], d[0])),
			})
		}
	}
	return all
}
