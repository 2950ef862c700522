package cover

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Fence is a net that hangs upright along a row, in the row frame: x across the row, y along it, z up. The nets of the
// next rows are others: they meet the way only of a sun below about 7°, which the vines of those rows hide as well.
type Fence struct {
	Cloth    Cloth
	Sign     float64 // of the side of the row on which it hangs: -1 left, 1 right
	Distance float64 // from the row line [m]
	From, To float64 // heights of its edges [m]
}

// Meets tells whether the way from a point in a unit direction goes through the net. Around a point beyond its plane
// the net bulges: there it hangs at the point.
func (f *Fence) Meets(from, d mgl64.Vec3) bool {
	out := d[0] * f.Sign
	if out <= 0 {
		return false
	}
	z := from[2] + d[2]/out*math.Max(f.Distance-from[0]*f.Sign, 0)
	return z >= f.From && z <= f.To
}

// Direct is the share of light toward a direction that goes through between its threads, which run along the row and
// upright.
func (f *Fence) Direct(d mgl64.Vec3) float64 { return f.Cloth.Direct(d[0], d[1], d[2]) }

// Glow is the diffuse light that leaves the inner side of a net in a beam [W/m² of net], which is given normal to
// the sun; shadow is the height up to which the net lies in the shade of the next row [m]. A sun behind the row lights
// the vines before the net: then none.
func (f *Fence) Glow(toSun mgl64.Vec3, beam, shadow float64) float64 {
	out := toSun[0] * f.Sign
	if out <= 0 {
		return 0
	}
	lit := math.Min(math.Max((f.To-shadow)/(f.To-f.From), 0), 1)
	return beam * out * lit * f.Cloth.Scattered(toSun[0], toSun[1], toSun[2])
}
