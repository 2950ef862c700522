package render

import (
	"slices"
	"testing"
)

// What the ways of looking say, each saying in the shape that saying.go lists.
func TestLabelsSay(t *testing.T) {
	planting := netted(t)
	planting.RowAzimuth_deg = 10
	s := NewScene(planting, testAtlas(), afternoon)
	said := func(way Way, camera Camera) (sayings []string) {
		view := s.View(way, camera, testPane)
		for _, label := range s.Labels(&view) {
			sayings = append(sayings, label.Saying)
		}
		return sayings
	}
	across := Camera{Elevation_deg: 10, Distance_m: 5, TargetZ_m: 1.2}
	for _, c := range []struct {
		way  Way
		want []string
	}{
		{Slice, []string{"side west", "side east", "length 1 m", "net shade", "net bird", "net overhead"}},
		{Outlook, []string{"point N", "point E", "point S", "point W", "hour 12", "hour 15"}},
	} {
		got := said(c.way, across)
		for _, want := range c.want {
			if !slices.Contains(got, want) {
				t.Errorf("%v says %q, not %q", c.way, got, want)
			}
		}
	}
	var rows []string
	for _, azimuth := range []float64{10, 100, 190, 280} {
		camera := across
		camera.Azimuth_deg = azimuth
		rows = append(rows, said(Natural, camera)...)
	}
	slices.Sort(rows)
	if want := []string{"looking north", "looking south", "row east", "row west"}; !slices.Equal(rows, want) {
		t.Errorf("the rows from four sides say %q, want %q", rows, want)
	}
}
