package render

import (
	"image"
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/scenario"
)

// Backdrop is ground and sky of one view, ready for evaluation at any pixel. The shader of the screen
// evaluates the same formulas; a change here is a change there.
type Backdrop struct {
	Eye              mgl32.Vec3
	Spacing, Length  float32 // period of the ground across and along the rows [m]
	Top, HalfWidth   float32 // of the rows, for those too far to be drawn leaf by leaf [m]
	Focal            float32 // [px]
	Far              float32 // rows are drawn leaf by leaf up to here [m]
	Sun              mgl32.Vec3
	Slope            [2]float32 // rise of the ground across and along the rows
	SunOnGround      float32    // cosine between the sun and the normal of the ground
	Beam, Sky        rgb
	Zenith, Horizon  rgb
	Glow             rgb
	Haze, FarRows    rgb // display colours
	Cover, Worn      rgb // reflectance of the floor between the rows, and of its dry patches
	Strip            rgb // reflectance of the strip under the vines
	StripHalf        float32
	Blades, Grain    float32 // strength of the two textures
	SunDisc          float32 // cosine of the edge of the disc
	ground           *image.RGBA
	tone             *toneTable
	along, acrossPer float32 // texels of the ground image per metre
}

// Looks of the ground.
const (
	stripHalf_m   = 0.42 // half width of the strip kept free under the vines; common practice 0.8–1 m in all
	fineTile_m    = 1.6  // side of the noise tile for blades and grain
	patchTile_m   = 9.0  // side of the noise tile for patches
	sunDisc_deg   = 0.62 // drawn radius of the sun; the true 0.27 is lost in its glare
	discBrightest = 14.0
	farRowsOver_m = 20.0 // the ground turns into far rows over this distance
)

// floorLook is how a floor looks: reflectances are brighter or darker in the order of the measured
// albedos of the floors, the rest is set by eye.
type floorLook struct {
	cover, worn, strip rgb
	blades, grain      float32
}

var drySoil = rgb{0.290, 0.205, 0.135}

func lookOf(floor scenario.Floor) floorLook {
	switch floor {
	case scenario.BareDry:
		return floorLook{cover: drySoil, worn: drySoil.scaled(1.18), strip: drySoil.scaled(0.92), blades: 0.10, grain: 0.55}
	case scenario.BareMoist:
		moist := rgb{0.120, 0.082, 0.056}
		return floorLook{cover: moist, worn: moist.scaled(1.3), strip: moist.scaled(0.9), blades: 0.10, grain: 0.60}
	case scenario.Straw:
		return floorLook{cover: rgb{0.45, 0.34, 0.14}, worn: rgb{0.50, 0.41, 0.22}, strip: drySoil, blades: 0.75, grain: 0.15}
	case scenario.Pale:
		pale := rgb{0.44, 0.40, 0.33}
		return floorLook{cover: pale, worn: pale.scaled(0.9), strip: pale.scaled(0.95), blades: 0.05, grain: 0.30}
	default:
		return floorLook{cover: rgb{0.092, 0.158, 0.034}, worn: rgb{0.215, 0.205, 0.080}, strip: drySoil, blades: 0.75, grain: 0.20}
	}
}

// Backdrop prepares ground and sky for a view of the scene.
func (s *Scene) Backdrop(view *View) Backdrop {
	stand, light, look := s.planting.Stand, &s.light, lookOf(s.planting.Floor)
	b := Backdrop{
		Eye: view.Eye, Spacing: float32(stand.RowSpacing), Length: float32(stand.Length),
		Top: float32(stand.Top), HalfWidth: s.leaves.halfWidth, Focal: view.Focal, Far: view.Far,
		Sun: light.sun, Slope: [2]float32{s.terrain.across, s.terrain.along}, SunOnGround: max(s.terrain.normal().Dot(light.sun), 0), Beam: light.beam, Sky: light.sky, Zenith: light.zenith, Horizon: light.horizon, Glow: light.glow,
		Haze: s.tone.colour(light.haze), FarRows: s.average,
		Cover: look.cover, Worn: look.worn, Strip: look.strip, StripHalf: stripHalf_m, Blades: look.blades, Grain: look.grain,
		SunDisc: float32(math.Cos(sunDisc_deg * math.Pi / 180)),
		ground:  s.ground.pixels, tone: s.tone,
		along: mapAlong / float32(stand.Length), acrossPer: mapAcross / float32(stand.RowSpacing),
	}
	switch view.Way {
	case Sunlight:
		b.mute()
		b.FarRows = s.meanLeafLight()
	case Heat:
		b.mute()
	}
	return b
}

// Ground is the image that the ground is read from: shadows in several sizes and noise. The version
// changes with its content.
func (s *Scene) Ground() (pixels *image.RGBA, version int) { return s.ground.pixels, s.version }

// at is the display colour along a ray whose part along the view is 1.
func (b *Backdrop) at(ray mgl32.Vec3) rgb {
	fall := b.Slope[0]*ray[0] + b.Slope[1]*ray[1] - ray[2] // towards the ground
	if fall < 1e-4 {
		return b.skyAt(ray)
	}
	t := (b.Eye[2] - b.Slope[0]*b.Eye[0] - b.Slope[1]*b.Eye[1]) / fall
	size := ray.Len()
	distance := t * size
	// Side of the square on the ground that has the area of one pixel.
	foot := t / b.Focal * float32(math.Sqrt(float64(size/fall)))
	x, y := b.Eye[0]+t*ray[0], b.Eye[1]+t*ray[1]
	colour := b.tone.colour(b.groundAt(x, y, foot))

	// Rows too far to be drawn hide the ground the more, the flatter one looks.
	hidden := min((2*b.HalfWidth+b.Top*abs(ray[0])/fall)/b.Spacing, 1)
	colour = colour.mix(b.FarRows, 0.92*hidden*smooth32(b.Far-farRowsOver_m, b.Far, distance))
	return colour.mix(b.Haze, thickness(distance))
}

func smooth32(a, b, x float32) float32 { return float32(smooth(float64(a), float64(b), float64(x))) }

// groundAt is the light that a place on the ground sends up.
func (b *Backdrop) groundAt(x, y, foot float32) rgb {
	fine := b.noise(x, y, fineTile_m)
	patch := b.noise(y, x, patchTile_m)[2]
	patch += (b.noise(x+3.1, y, 0.23*patchTile_m)[2] - 0.5) * 0.5 * fadeOut(foot, 0.08)
	near := fadeOut(foot, 0.012)

	// Strip under the vines with a ragged edge, wheel tracks to both sides of the middle.
	off := x/b.Spacing + 0.5
	off = abs(off-floor32(off)-0.5) * b.Spacing
	edge := b.StripHalf + 0.22*(patch-0.5) + 0.10*near*(fine[1]-0.5)
	bare := 1 - smooth32(edge-0.07-foot, edge+0.07+foot, off)
	track := (b.Spacing/2 - off - 0.62) / 0.17
	dry := min(max(1.5*(patch-0.42), 0)+0.30*float32(math.Exp(float64(-track*track))), 1)

	texture := 1 + near*b.Blades*1.15*(fine[1]-0.5) + near*b.Grain*(fine[0]-0.5) + 0.35*(patch-0.5)
	soil := 1 + near*0.55*(fine[0]-0.5) + 0.40*(patch-0.5)
	surface := b.Cover.mix(b.Worn, dry).scaled(texture).mix(b.Strip.scaled(soil), bare)

	lit, open := b.shadow(x, y, foot)
	light := b.Beam.scaled(lit * b.SunOnGround).plus(b.Sky.scaled(0.15 + 0.85*open))
	return surface.times(light)
}

// fadeOut takes a texture away where its grain [m] is finer than a pixel.
func fadeOut(foot, grain float32) float32 { return min(max(1.6-foot/grain, 0), 1) }

func floor32(x float32) float32 { return float32(math.Floor(float64(x))) }

// noise reads the noise tile, laid out with the given side [m].
func (b *Backdrop) noise(x, y, side float32) (n [3]float32) {
	u, v := x/side*noiseSide-0.5, y/side*noiseSide-0.5
	u0, v0 := floor32(u), floor32(v)
	fu, fv := u-u0, v-v0
	for k, weight := range [4]float32{(1 - fu) * (1 - fv), fu * (1 - fv), (1 - fu) * fv, fu * fv} {
		i, j := (int(u0)+k&1)&(noiseSide-1), (int(v0)+k>>1)&(noiseSide-1)
		texel := b.ground.Pix[b.ground.PixOffset(noiseX+i, noiseY+j):]
		for c := range 3 {
			n[c] += weight * float32(texel[c]) / 255
		}
	}
	return n
}

// shadow is the share in the sun and the openness of a place, averaged over about a pixel.
func (b *Backdrop) shadow(x, y, foot float32) (lit, open float32) {
	level := float32(math.Log2(float64(max(foot*0.5*(b.along+b.acrossPer), 1))))
	level = min(level, groundLevels-1)
	low := min(floor32(level), groundLevels-2)
	lit0, open0 := b.shadowAt(x, y, int(low))
	lit1, open1 := b.shadowAt(x, y, int(low)+1)
	f := level - low
	return lit0 + (lit1-lit0)*f, open0 + (open1-open0)*f
}

func (b *Backdrop) shadowAt(x, y float32, level int) (lit, open float32) {
	top, w, h := groundLevel(level)
	u, v := y/b.Length*float32(w)-0.5, x/b.Spacing*float32(h)-0.5
	u0, v0 := floor32(u), floor32(v)
	fu, fv := u-u0, v-v0
	for k, weight := range [4]float32{(1 - fu) * (1 - fv), fu * (1 - fv), (1 - fu) * fv, fu * fv} {
		i, j := (int(u0)+k&1)&(w-1), (int(v0)+k>>1)&(h-1)
		texel := b.ground.Pix[b.ground.PixOffset(i, top+j):]
		lit += weight * float32(texel[0]) / 255
		open += weight * float32(texel[1]) / 255
	}
	return lit, open
}

// skyAt is the display colour of the sky: paler to the horizon, brighter around the sun.
func (b *Backdrop) skyAt(ray mgl32.Vec3) rgb {
	ray = ray.Normalize()
	up := max(ray[2], 0)
	colour := b.Horizon.mix(b.Zenith, float32(math.Pow(float64(up), 0.52)))
	cos := max(ray.Dot(b.Sun), 0)
	near := cos * cos
	near *= near
	near *= near // eighth power
	halo := float32(math.Pow(float64(cos), 220))
	colour = colour.plus(b.Glow.scaled(0.16*near + 0.55*halo))
	disc := smooth32(b.SunDisc-2.4e-5, b.SunDisc+2.4e-5, cos)
	colour = colour.plus(b.Glow.scaled(disc * discBrightest))
	shown := b.tone.colour(colour)
	return b.Haze.mix(shown, smooth32(0, 0.06, up))
}
