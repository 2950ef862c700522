package render

// Fixed is a place that one looks from, told by what one sees from there.
type Fixed string

// The places.
const (
	FromFront Fixed = "front"  // the look at first
	Along     Fixed = "along"  // down an alley, along the rows
	RowEnd    Fixed = "end"    // at the end of the rows
	Corner    Fixed = "corner" // beside the end of a row, which shows its cross-section and the length of one side
	FromAbove Fixed = "above"
	FromSun   Fixed = "sun" // where the sun of the afternoon stands, three hours after it was highest
)

// FixedLooks lists the places.
func FixedLooks() []Fixed { return []Fixed{FromFront, Along, RowEnd, FromAbove, FromSun, Corner} }

// Look is the look from a place, given the look at first and the direction of Front. The azimuth and elevation of
// the sun of the afternoon are those of the day [deg].
func (f Fixed) Look(home Look, front_deg, sunAzimuth_deg, sunElevation_deg float64) Look {
	look := home
	aside := 90.0
	if look.Turn_deg < 0 {
		aside = -90
	}
	switch f {
	case Along:
		look = Look{Turn_deg: aside * 0.92, Elevation_deg: 5, Distance_m: 5}
	case RowEnd:
		look = Look{Turn_deg: aside, Elevation_deg: 7, Distance_m: 4.6, Opened: true}
	case Corner:
		look = Look{Turn_deg: aside * 0.76, Elevation_deg: 10, Distance_m: 3.5, Opened: true}
	case FromAbove:
		look = Look{Turn_deg: look.Turn_deg, Elevation_deg: 62, Distance_m: 8.5}
	case FromSun:
		look = Look{Turn_deg: sunAzimuth_deg - front_deg, Elevation_deg: max(sunElevation_deg, 1), Distance_m: 5}
	}
	return look
}

// AfterNoon_h is how long after its highest the sun of the afternoon stands [h].
const AfterNoon_h = 3.0
