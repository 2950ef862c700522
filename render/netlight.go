package render

import (
	"github.com/go-gl/mathgl/mgl32"
	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/cover"
	"rowlight/sim/scenario"
)

// roofLight is what a net over all rows leaves of the light: shares of the beam and of the light of the sky, and the share
// of the beam on a level surface that comes as light of the sky instead.
type roofLight struct{ direct, even, scattered float32 }

// come takes the light through the net over all rows, if there is one, as the simulation does.
func (d *daylight) come(nets []cover.Panel) {
	for i := range nets {
		if nets[i].Kind != cover.OverheadNet {
			continue
		}
		cloth := &nets[i].Cloth
		direct, scattered := cloth.Overhead(mgl64.Vec3{float64(d.sun[0]), float64(d.sun[1]), float64(d.sun[2])})
		through, on := cloth.Even()
		d.roof = roofLight{float32(direct), float32(through + on), float32(scattered)}
	}
	d.sky = d.sky.scaled(d.roof.even).plus(d.beam.scaled(d.roof.scattered * max(d.sun[2], 0)))
	d.beam = d.beam.scaled(d.roof.direct)
}

// beam is the direct normal irradiance on the rows while the sun throws shadows, else 0 [W/m²].
func (s *Scene) beam() float32 { return s.openBeam() * s.light.roof.direct }

// openBeam is the same above a net over the rows.
func (s *Scene) openBeam() float32 {
	if !s.light.casts() {
		return 0
	}
	return float32(max(s.instant.DNI_Wm2, 0))
}

// diffuse is the light on a level surface among the rows that does not come straight from the sun [W/m²].
func (s *Scene) diffuse() float32 {
	roof := &s.light.roof
	return float32(max(s.instant.DHI_Wm2, 0))*roof.even + float32(max(s.instant.DNI_Wm2, 0))*roof.scattered*max(s.light.sun[2], 0)
}

// behindNets is the share of the beam that the nets about the row leave at a place of the stand.
func (s *Scene) behindNets(at mgl32.Vec3) float32 {
	left, sun := 1.0, wide(s.light.sun)
	for i := range s.nets {
		if net := &s.nets[i]; net.Kind != cover.OverheadNet && net.Meets(wide(at), sun) {
			left *= net.Direct(sun)
		}
	}
	return float32(left)
}

func wide(v mgl32.Vec3) mgl64.Vec3 { return mgl64.Vec3{float64(v[0]), float64(v[1]), float64(v[2])} }

// spanned is a part of a net between two places along the row as the middle and half the sides of a rectangle: along the
// row, and from its lower or left edge to the other.
func spanned(net *cover.Panel, from, to float32) (middle, along, across mgl32.Vec3) {
	a := mgl32.Vec3{float32(net.Edges[0][0]), from, float32(net.Edges[0][1])}
	b := mgl32.Vec3{float32(net.Edges[1][0]), to, float32(net.Edges[1][1])}
	return a.Add(b).Mul(0.5), mgl32.Vec3{0, (to - from) / 2, 0}, mgl32.Vec3{(b[0] - a[0]) / 2, 0, (b[2] - a[2]) / 2}
}

// castNets lays the nets about the row on the map of the sun, as thin as they are, and finds where the sun is on them.
func (s *Scene) castNets(next *lighting) {
	m := s.sunMap
	length := float32(s.stand.Length)
	for i := range next.nets {
		net := &next.nets[i]
		if net.Kind == cover.OverheadNet {
			continue
		}
		middle, along, across := spanned(net, 0, length)
		m.veil = uint8(veilSteps*(1-net.Direct(wide(next.light.sun))) + 0.5)
		m.add(netOwner, &middle, &across, &along, nil)
		m.veil = 0
	}
	next.netLit = resized(next.netLit, len(next.nets)*s.slices*2)
	for i := range next.nets {
		for k := range s.slices {
			for edge := range 2 {
				at := next.nets[i].Edges[edge]
				p := mgl32.Vec3{float32(at[0]), length * float32(k) / float32(s.slices), float32(at[1])}
				next.netLit[(i*s.slices+k)*2+edge] = m.sees(netOwner, p)
			}
		}
	}
}

// threadColours are the hues of threads at the same brightness; how bright they are says cover.Cloth.
var threadColours = map[scenario.ClothColour]rgb{
	scenario.BlackCloth: {1, 1, 1}, scenario.GreenCloth: {0.45, 1.25, 0.62}, scenario.WhiteCloth: {1, 1, 1}, scenario.PearlCloth: {1.03, 1, 0.93},
}

// threadLight is the light that the threads of a net send to one of its sides, from beams and even light of as many watts
// on the side that is seen and on the other.
func threadLight(net *cover.Panel, seen, behind rgb) rgb {
	back := 1 - float32(net.Cloth.Absorbed) - float32(net.Cloth.Forward)
	return threadColours[net.Colour].times(seen.scaled(back).plus(behind.scaled(float32(net.Cloth.Forward))))
}
