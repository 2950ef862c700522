package scenario

import "testing"

// Geometry: the sides of a row face square to it, and the half of the sky that a side faces names it.
func TestSidesOfRows(t *testing.T) {
	for _, c := range []struct {
		row, latitude float64
		side          Side
		compass       string
		sun           SunSide
	}{
		{0, 36, Right, "east", Morning}, {0, 36, Left, "west", Afternoon},
		{180, 36, Right, "west", Afternoon}, {180, 36, Left, "east", Morning},
		{45, 36, Right, "south-east", Morning}, {45, 36, Left, "north-west", Afternoon},
		{135, -34, Right, "south-west", Afternoon}, {135, -34, Left, "north-east", Morning},
		{90, 36, Right, "south", Equator}, {90, 36, Left, "north", Pole},
		{90, -34, Right, "south", Pole}, {90, -34, Left, "north", Equator},
		{20, 36, Right, "east-south-east", Morning},
	} {
		rows := Rows{Azimuth_deg: c.row}
		if got := Compass(rows.SideAzimuth(c.side)); got != c.compass {
			t.Errorf("row %g side %d: faces %s, want %s", c.row, c.side, got, c.compass)
		}
		if got := rows.SunSideOf(c.side, c.latitude); got != c.sun {
			t.Errorf("row %g at latitude %g side %d: %s side, want %s", c.row, c.latitude, c.side, got, c.sun)
		}
	}
}

// Leaves pulled on the morning side are those of the east side, whichever way the row is counted.
func TestRemovalFollowsTheSun(t *testing.T) {
	leaves := Leaves{RemovedMorning: 0.6, RemovedAfternoon: 0.1}
	for azimuth, east := range map[float64]Side{0: Right, 45: Right, 135: Left, 180: Left} {
		o := Option{Rows: Rows{Azimuth_deg: azimuth}, Leaves: leaves}
		if got := o.Removed(east, 36); got != 0.6 {
			t.Errorf("row %g: %g pulled on the morning side, want 0.6", azimuth, got)
		}
		if got := o.Removed(1-east, 36); got != 0.1 {
			t.Errorf("row %g: %g pulled on the afternoon side, want 0.1", azimuth, got)
		}
	}
}
