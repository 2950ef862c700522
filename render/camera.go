package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/training"
)

// Camera is where one looks from: it orbits around a point above the middle of the middle row.
type Camera struct {
	Azimuth_deg   float64 // compass direction from which one looks [deg from true north, clockwise]
	Elevation_deg float64 // height of the eye above the target, seen from the target [deg, −5 … 89]
	Distance_m    float64 // from the target to the eye [m, 0.5 … 40]
	TargetZ_m     float64 // height of the target above the ground at the row line [m]
	Opened        bool    // the vines between the eye and the target are taken away along the rows
}

const (
	lowestEye_m   = 0.2  // the eye stays above the ground [m]; an assumption for the picture
	focalPerMean  = 0.95 // focal length over the geometric mean of the sides of the pane; an assumption for the picture
	nearestDepth  = 0.18 // nothing nearer to the eye is drawn [m]
	besideRow_m   = 0.5  // from the leaves to an eye beside or above them [m]
	drawnFar_m    = 44.0 // rows are drawn leaf by leaf up to here; haze and the far rows of the ground follow
	drawnNear_m   = 12.0 // an eye farther from its target than this sees as much farther
	defaultSwing  = 36.0 // default camera stands this far off square to the row, so that rows recede [deg]
	defaultRise   = 8.0  // default elevation of the camera [deg]
	defaultMetres = 3.2  // default distance: near enough that single bunches are seen [m]
)

// Limited is the camera with every value inside the range in which the picture makes sense.
func (c Camera) Limited() Camera {
	c.Azimuth_deg = math.Mod(math.Mod(c.Azimuth_deg, 360)+360, 360)
	c.Elevation_deg = min(max(c.Elevation_deg, -5), 89)
	c.Distance_m = min(max(c.Distance_m, 0.5), 40)
	c.TargetZ_m = min(max(c.TargetZ_m, 0), 4)
	return c
}

// Look is a camera told by the row that it looks at: rows of all directions are seen alike from it.
type Look struct {
	Turn_deg      float64 // from straight in front of the row to the eye [deg, clockwise seen from above]
	Elevation_deg float64 // as of a Camera [deg]
	Distance_m    float64 // as of a Camera [m]
	Opened        bool    // as of a Camera
}

// Front is the compass direction that the front of a row faces [deg]: the side that the sun of a summer
// afternoon is on. On east-west rows that is the side of the equator.
func Front(rowAzimuth_deg, latitude_deg float64) float64 {
	afternoonSun := 250.0 // its azimuth at mid latitudes, rounded
	if latitude_deg < 0 {
		afternoonSun = 290
	}
	front := rowAzimuth_deg + 90
	if angleBetween(front, afternoonSun) > 90 {
		front += 180
	}
	return math.Mod(front, 360)
}

// HomeLook is where one looks from at first: at the front from slightly above and aslant, along the rows as a slice
// looks along them, so that what is on the left in one is on the left in the other.
func HomeLook(rowAzimuth_deg, latitude_deg float64) Look {
	turn := -defaultSwing
	if angleBetween(Front(rowAzimuth_deg, latitude_deg), rowAzimuth_deg+90) < 90 {
		turn = defaultSwing // the front is on the right
	}
	return Look{Turn_deg: turn, Elevation_deg: defaultRise, Distance_m: defaultMetres}
}

// Camera puts a look in front of a row. It looks at the height of the fruit, and a little above where
// there are leaves.
func (l Look) Camera(stand *training.Stand, rowAzimuth_deg, latitude_deg float64) Camera {
	fruit, top := 1.0, 1.8
	if stand != nil {
		top = stand.Top
		fruit = meanFruitHeight(stand)
	}
	return Camera{
		Azimuth_deg: Front(rowAzimuth_deg, latitude_deg) + l.Turn_deg, Elevation_deg: l.Elevation_deg,
		Distance_m: l.Distance_m, TargetZ_m: fruit + 0.15*max(top-fruit, 0), Opened: l.Opened,
	}.Limited()
}

// DefaultCamera is the camera of the look at first.
func DefaultCamera(stand *training.Stand, rowAzimuth_deg, latitude_deg float64) Camera {
	return HomeLook(rowAzimuth_deg, latitude_deg).Camera(stand, rowAzimuth_deg, latitude_deg)
}

func meanFruitHeight(stand *training.Stand) float64 {
	if len(stand.Bunches) == 0 {
		return stand.Top / 2
	}
	var sum float64
	for _, b := range stand.Bunches {
		sum += b.Centre[2]
	}
	return sum / float64(len(stand.Bunches))
}

// angleBetween is the unsigned angle between two compass directions [deg, 0–180].
func angleBetween(a, b float64) float64 {
	return math.Abs(math.Mod(math.Mod(a-b, 360)+540, 360) - 180)
}

// rowFromCompass is the horizontal unit vector of a compass direction in the row frame.
func rowFromCompass(azimuth_deg, rowAzimuth_deg float64) (x, y float64) {
	sin, cos := math.Sincos((azimuth_deg - rowAzimuth_deg) * math.Pi / 180)
	return sin, cos
}

// View is a camera in front of one pane: the perspective from the row frame to pixels, x to the right
// and y down.
type View struct {
	Eye                mgl32.Vec3 // [m]
	Right, Up, Forward mgl32.Vec3 // orthonormal
	Focal              float32    // [px]
	Width, Height      float32    // of the pane [px]
	CentreX, CentreY   float32    // middle of the pane [px]
	Far                float32    // rows are drawn leaf by leaf up to here [m]
	First, Last        float32    // and between these places along the row [m]
	Way                Way
	Bunch              int  // whose sky is shown, of the ways that look out from a bunch
	Dark               bool // the paper of the ways that draw on paper is dark
	Objects            bool // every thing is drawn in an even colour of its own, to compare what is drawn where
}

// Pane is a rectangle of a picture [px]. A pane without width or height shows nothing.
type Pane struct{ X, Y, Width, Height float64 }

// NewView puts the camera in front of a pane, on level ground. The target lies halfway along the period of the stand.
func NewView(c Camera, stand *training.Stand, rowAzimuth_deg float64, pane Pane) View {
	return newView(c, stand, rowAzimuth_deg, terrain{}, pane)
}

func newView(c Camera, stand *training.Stand, rowAzimuth_deg float64, ground terrain, pane Pane) View {
	c = c.Limited()
	x, y := rowFromCompass(c.Azimuth_deg, rowAzimuth_deg)
	sin, cos := math.Sincos(c.Elevation_deg * math.Pi / 180)
	target := ground.lifted(0, float32(stand.Length/2)).Add(mgl32.Vec3{0, 0, float32(c.TargetZ_m)})
	eye := target.Add(mgl32.Vec3{
		float32(c.Distance_m * cos * x), float32(c.Distance_m * cos * y), float32(c.Distance_m * sin),
	})
	eye[2] = max(eye[2], ground.at(eye[0], eye[1])+lowestEye_m)
	first, last := float32(math.Inf(-1)), float32(math.Inf(1))
	if c.Opened {
		if eye[1] < target[1] {
			first = target[1]
		} else {
			last = target[1]
		}
	} else {
		aside := standAside(eye, ground, stand)
		eye, target = eye.Add(ground.lifted(aside, 0)), target.Add(ground.lifted(aside, 0))
	}
	forward := target.Sub(eye).Normalize()
	// Right stays defined when one looks straight down, because it comes from the azimuth alone.
	right := mgl32.Vec3{float32(-y), float32(x), 0}
	up := right.Cross(forward)
	return View{
		Eye: eye, Right: right, Up: up, Forward: forward,
		Focal: float32(focalPerMean * math.Sqrt(pane.Width*pane.Height)),
		Width: float32(pane.Width), Height: float32(pane.Height),
		Far:   drawnFar_m + float32(max(c.Distance_m-drawnNear_m, 0)),
		First: first, Last: last,
		CentreX: float32(pane.X + pane.Width/2), CentreY: float32(pane.Y + pane.Height/2),
	}
}

// standAside is how far an eye that would stand in the leaves of the middle row is moved sideways
// into the open [m], as when one looks along the row.
func standAside(eye mgl32.Vec3, ground terrain, stand *training.Stand) float32 {
	if eye[2]-ground.at(0, eye[1]) > float32(stand.Top)+besideRow_m {
		return 0
	}
	var reach float64
	for i := range stand.Leaves {
		reach += math.Abs(stand.Leaves[i].Centre[0]) / float64(len(stand.Leaves))
	}
	clear := float32(min(2*reach+besideRow_m, stand.RowSpacing/2))
	if eye[0] < 0 {
		return min(-clear-eye[0], 0)
	}
	return max(clear-eye[0], 0)
}

// Project gives the pixel of a point and its depth along the view [m]; a point with a depth of zero
// or less lies behind the eye and has no pixel.
func (v *View) Project(p mgl32.Vec3) (x, y, depth float32) {
	d := p.Sub(v.Eye)
	depth = d.Dot(v.Forward)
	scale := v.Focal / depth
	return v.CentreX + d.Dot(v.Right)*scale, v.CentreY - d.Dot(v.Up)*scale, depth
}

// Ray is the direction from the eye through a pixel; its part along the view is 1.
func (v *View) Ray(x, y float32) mgl32.Vec3 {
	return v.Forward.
		Add(v.Right.Mul((x - v.CentreX) / v.Focal)).
		Add(v.Up.Mul((v.CentreY - y) / v.Focal))
}
