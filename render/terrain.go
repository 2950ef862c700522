package render

import (
	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/scenario"
)

// terrain is the plane of the ground: how much it rises per metre across the row and along it. Vines stay plumb: heights
// of a stand count from the ground at its row line.
type terrain struct{ across, along float32 }

func (p *Planting) terrain() terrain {
	site := scenario.Site{Slope_deg: p.Slope_deg, Aspect_deg: p.Aspect_deg}
	across, along := site.Rise(scenario.Rows{Azimuth_deg: p.RowAzimuth_deg})
	return terrain{float32(across), float32(along)}
}

// at is the height of the ground at a place [m]; it is 0 at the foot of the row line at its start.
func (g terrain) at(x, y float32) float32 { return g.across*x + g.along*y }

// above is a place of a stand with its height counted from the ground below it instead of from that at the row line.
func (g terrain) above(p mgl32.Vec3) mgl32.Vec3 { return mgl32.Vec3{p[0], p[1], p[2] - g.across*p[0]} }

// tilted is a direction whose upward part counts from the ground that falls or rises along it.
func (g terrain) tilted(d mgl32.Vec3) mgl32.Vec3 {
	return mgl32.Vec3{d[0], d[1], d[2] - g.at(d[0], d[1])}
}

// lifted is the offset of a copy of the stand with the height of the ground at its row line.
func (g terrain) lifted(x, y float32) mgl32.Vec3 { return mgl32.Vec3{x, y, g.at(x, y)} }

// normal is the unit vector square to the ground.
func (g terrain) normal() mgl32.Vec3 { return mgl32.Vec3{-g.across, -g.along, 1}.Normalize() }
