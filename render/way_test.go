package render

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl32"
)

func TestWaysHaveTheirNames(t *testing.T) {
	for _, w := range Ways() {
		if found, known := WayNamed(w.String()); !known || found != w {
			t.Errorf("%v is found as %v, %v", w, found, known)
		}
	}
	if _, known := WayNamed("by night"); known {
		t.Error("a way without meaning is known")
	}
}

// Above the leaves all is in the sun; at night nothing is.
func TestFieldOfLightEndsInTheSun(t *testing.T) {
	s := smallScene(t, afternoon)
	stand := s.planting.Stand
	for x := -1.2; x < 1.2; x += 0.3 {
		if share := s.field.at(float32(x), float32(stand.Top)+0.1, float32(stand.RowSpacing), float32(stand.Top)); share != 1 {
			t.Errorf("above the leaves at %g m a share of %g is in the sun", x, share)
		}
	}
	inside := s.field.at(0.1, 1.2, float32(stand.RowSpacing), float32(stand.Top))
	if inside > 0.5 {
		t.Errorf("deep in the leaves a share of %g is in the sun", inside)
	}
	s.SetInstant(Instant{Hour: 0, SunElevation_deg: -30})
	if share := s.field.at(0, 3, float32(stand.RowSpacing), float32(stand.Top)); share != 0 {
		t.Errorf("at night a share of %g is in the sun", share)
	}
}

// The mean of the field along the ground is the share of ground in the sun on the map itself.
func TestFieldOfLightOnTheGround(t *testing.T) {
	s := smallScene(t, afternoon)
	var field, ground float64
	for column := range s.field.columns {
		field += float64(s.field.share[column]) / float64(s.field.columns)
	}
	for _, owner := range s.sunMap.owner {
		if owner == noOwner {
			ground += 1 / float64(len(s.sunMap.owner))
		}
	}
	if math.Abs(field-ground) > 0.03 {
		t.Errorf("the field has %.3f of the ground in the sun, the map %.3f", field, ground)
	}
}

// The sun of the instant lies on its own way, whatever the place and the direction of the rows (geometry).
func TestTodaysTrackGoesThroughTheSun(t *testing.T) {
	for _, azimuth := range []float64{0, 35, 120} {
		for _, latitude := range []float64{36.4, -33, 0, 66} {
			s := smallScene(t, afternoon)
			s.planting.Latitude_deg, s.planting.RowAzimuth_deg = latitude, azimuth
			s.SetInstant(Instant{Hour: 15, SunAzimuth_deg: 255, SunElevation_deg: 41, DNI_Wm2: 800, DHI_Wm2: 100})
			d := s.sunAt(s.sunCourse())
			if apart := d.Sub(s.light.sun).Len(); apart > 1e-4 {
				t.Errorf("latitude %g, rows %g°: %v is not the sun %v", latitude, azimuth, d, s.light.sun)
			}
		}
	}
}

// At the equator on the day of equal day and night the sun passes the zenith, and at 45° north it stands 45°
// high in the south at noon (geometry).
func TestTracksStandWhereGeometryPutsThem(t *testing.T) {
	s := smallScene(t, afternoon)
	s.planting.RowAzimuth_deg = 0
	for latitude, want := range map[float64]mgl32.Vec3{0: {0, 0, 1}, 45: {0, -math.Sqrt2 / 2, math.Sqrt2 / 2}} {
		s.planting.Latitude_deg = latitude
		if d := s.sunAt(0, 0); d.Sub(want).Len() > 1e-5 {
			t.Errorf("latitude %g: noon at %v, want %v", latitude, d, want)
		}
	}
}

// North is up and east to the right on the chart, the zenith in the middle and the horizon on the rim.
func TestChartLiesAsAMap(t *testing.T) {
	s := smallScene(t, afternoon)
	s.planting.RowAzimuth_deg = 30
	view := s.View(Outlook, Camera{}, Pane{Width: 200, Height: 100})
	c := view.chart(s)
	sin, cos := math.Sincos(30 * math.Pi / 180)
	for name, test := range map[string]struct {
		east, north, up float64
		x, y            float32
	}{
		"north": {0, 1, 0, 0, -1}, "east": {1, 0, 0, 1, 0}, "south-west, 45° high": {-0.5, -0.5, math.Sqrt2 / 2, -0.35355, 0.35355},
		"zenith": {0, 0, 1, 0, 0},
	} {
		d := mgl32.Vec3{float32(test.east*cos - test.north*sin), float32(test.east*sin + test.north*cos), float32(test.up)}
		x, y, _ := c.place(d)
		x, y = (x-c.x)/c.radius, (y-c.y)/c.radius
		if abs(x-test.x) > 1e-4 || abs(y-test.y) > 1e-4 {
			t.Errorf("%s lies at %g, %g; want %g, %g", name, x, y, test.x, test.y)
		}
	}
}

// In the middle of a bunch that nothing hides one finds this bunch.
func TestBunchIsFoundWhereItIsDrawn(t *testing.T) {
	s := smallScene(t, afternoon)
	view := s.View(Heat, DefaultCamera(s.planting.Stand, 0, 36), Pane{Width: 640, Height: 400})
	var list List
	s.Compose(&list, &view, 20000)
	if len(list.objects) != list.Quads() {
		t.Fatalf("%d objects for %d quads", len(list.objects), list.Quads())
	}
	found := 0
	for i := range s.bunches.bunch {
		x, y, depth := view.Project(s.bunches.bunch[i].centre)
		if depth > 0 && list.Bunch(x, y, s.atlas) == i {
			found++
		}
	}
	if found < len(s.bunches.bunch)/3 {
		t.Errorf("%d of %d bunches are found where they are drawn", found, len(s.bunches.bunch))
	}
	if got := list.Bunch(5, 5, s.atlas); got != -1 {
		t.Errorf("bunch %d is found in the sky", got)
	}
}

// Every way stays inside its budget of quads, on every pane.
func TestWaysKeepTheirBudget(t *testing.T) {
	s := smallScene(t, afternoon)
	for _, way := range Ways() {
		for _, pane := range []Pane{{Width: 640, Height: 400}, {Width: 120, Height: 300}, {Width: 900, Height: 90}} {
			for _, distance := range []float64{1.2, 3.2, 40} {
				view := s.View(way, Camera{Azimuth_deg: 230, Elevation_deg: 10, Distance_m: distance, TargetZ_m: 1}, pane)
				var list List
				s.Compose(&list, &view, 15000)
				if list.Quads() > 15000 || list.Quads() < 100 {
					t.Errorf("%v at %g m on %v: %d quads", way, distance, pane, list.Quads())
				}
				for i := range list.Vertices {
					v := &list.Vertices[i]
					if sum := v.X + v.Y + v.U + v.V + v.R + v.G + v.B + v.A; sum-sum != 0 {
						t.Fatalf("%v: vertex %+v is no number", way, *v)
					}
				}
			}
		}
	}
}
