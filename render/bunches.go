package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/training"
)

// bunchSet is the bunches of a stand as spheres, in several finenesses: seen from afar fewer, larger
// spheres fill the same bunch.
type bunchSet struct {
	bunch  []bunchBody
	berry  [bunchLevels][]berry
	starts [bunchLevels][]int // by bunch, with the end behind the last
	radius [bunchLevels]float32
	// halfWidth is the mean half width of a bunch [m].
	halfWidth float32
}

type bunchBody struct {
	centre         mgl32.Vec3
	radius, length float32
	slice          int
	apart          float32 // from the next bunch, between the middles [m]
}

// berry is one sphere of a bunch.
type berry struct {
	centre  mgl32.Vec3
	outward mgl32.Vec3 // unit vector away from the axis of the bunch
	radius  float32
	face    int32
	shine   float32 // own brightness, 1 on average
	core    bool    // fills the inside of the bunch, so that one does not look through it
}

const (
	bunchLevels = 4
	coarser     = 1.55 // each level has berries this much larger than the one before
	// Berries are drawn where their direction from the axis has at least this cosine with the direction
	// to the eye; the others are hidden by them. That is this share of all.
	facingFrom      = -0.3
	facingShare     = 0.6
	fallbackBerry_m = 0.014
	coreShine       = 0.62 // brightness of what one sees between the berries
	shoulderShare   = 0.22 // of the length of a bunch down to its widest place; common shape of a bunch
)

// newBunchSet lays berries of the given diameter on the surface of each bunch.
func newBunchSet(stand *training.Stand, berry_m float64, slices int, pace func() error) (*bunchSet, error) {
	if !(berry_m > 0) {
		berry_m = fallbackBerry_m
	}
	set := &bunchSet{}
	for b := range stand.Bunches {
		bunch := &stand.Bunches[b]
		set.halfWidth += float32(bunch.Radius) / float32(len(stand.Bunches))
		set.bunch = append(set.bunch, bunchBody{
			centre: vec32(bunch.Centre), radius: float32(bunch.Radius), length: float32(bunch.Length),
			slice: sliceOf(bunch.Centre[1], stand.Length, slices),
		})
	}
	set.findApart()
	for level := range bunchLevels {
		set.radius[level] = float32(berry_m / 2 * math.Pow(coarser, float64(level)))
		set.starts[level] = []int{0}
		for b := range stand.Bunches {
			if err := pace(); err != nil {
				return nil, err
			}
			set.berry[level] = appendBerries(set.berry[level], &stand.Bunches[b], int32(b), 2*float64(set.radius[level]))
			set.starts[level] = append(set.starts[level], len(set.berry[level]))
		}
	}
	return set, nil
}

// findApart finds how far each bunch hangs from the next; a single one hangs infinitely far.
func (set *bunchSet) findApart() {
	for i := range set.bunch {
		a := &set.bunch[i]
		a.apart = float32(math.Inf(1))
		for j := range set.bunch[:i] {
			b := &set.bunch[j]
			apart := a.centre.Sub(b.centre).Len()
			a.apart, b.apart = min(a.apart, apart), min(b.apart, apart)
		}
	}
}

// unknownFruit is the colour of berries whose temperature is not known: a muted plum, off the scale.
var unknownFruit = rgb{0.34, 0.30, 0.38}

// bunchWidth is the radius of the outline of a bunch at a share of its length from the shoulder, in
// units of its half width: round shoulders, then a cone to a blunt tip.
func bunchWidth(share float64) float64 {
	if share < shoulderShare {
		t := 1 - share/shoulderShare
		return math.Sqrt(max(1-0.72*t*t, 0))
	}
	t := (share - shoulderShare) / (1 - shoulderShare)
	return (1 - 0.62*t) * math.Sqrt(max(1-t*t*t*t*t*t, 0))
}

// appendBerries winds berries around the bunch in a golden-angle spiral with frozen unevenness. Whole
// berries stay inside the half width and length of the bunch. No more are laid than the bunch has.
func appendBerries(list []berry, bunch *training.Bunch, index int32, diameter float64) []berry {
	radius := min(diameter/2, bunch.Radius*0.6, bunch.Length*0.3)
	span := bunch.Length - 2*radius
	var area float64 // of the surface on which the centres lie
	const steps = 24
	for i := range steps {
		r := max(bunch.Radius*bunchWidth((float64(i)+0.5)/steps)-radius, 0)
		area += 2 * math.Pi * (r + 0.2*radius) * span / steps
	}
	count := max(int(area/(3.1*radius*radius)), 3)
	if bunch.Berries > 0 {
		count = min(count, max(bunch.Berries, 3))
	}
	turn := 2 * math.Pi * hashUnit(bunch.Seed, 1)
	share, step := 0.0, area/float64(count)
	for i := range count {
		// Equal area per berry: narrow places take a longer piece of the axis.
		r := max(bunch.Radius*bunchWidth(share)-radius, 0)
		piece := step / (2 * math.Pi * (r + 0.2*radius)) / span
		at := min(share+piece/2, 1)
		share = min(share+piece, 1)
		r = max(bunch.Radius*bunchWidth(at)-radius, 0)
		seed := uint64(i)
		size := 0.88 + 0.12*hashUnit(bunch.Seed, seed, 2)
		r *= 0.80 + 0.20*hashUnit(bunch.Seed, seed, 3)
		angle := turn + float64(i)*2.39996 + 0.5*(hashUnit(bunch.Seed, seed, 4)-0.5)
		sin, cos := math.Sincos(angle)
		z := bunch.Length/2 - radius - at*span
		face := 2 * index
		if cos > 0 {
			face++
		}
		list = append(list, berry{
			centre:  vec32(bunch.Centre).Add(mgl32.Vec3{float32(r * cos), float32(r * sin), float32(z)}),
			outward: mgl32.Vec3{float32(cos), float32(sin), 0}, radius: float32(radius * size), face: face,
			shine: float32(0.93 + 0.14*hashUnit(bunch.Seed, seed, 5)),
		})
	}
	return appendCore(list, bunch, index, radius)
}

// appendCore fills the inside of a bunch with a few dark balls.
func appendCore(list []berry, bunch *training.Bunch, index int32, berry_m float64) []berry {
	for _, share := range [...]float64{0.22, 0.42, 0.62} {
		radius := 0.78 * (bunch.Radius*bunchWidth(share) - 0.6*berry_m)
		radius = min(radius, bunch.Length*share, bunch.Length*(1-share))
		if radius <= 0 {
			continue
		}
		centre := vec32(bunch.Centre)
		centre[2] += float32(bunch.Length * (0.5 - share))
		list = append(list, berry{centre: centre, radius: float32(radius), face: 2 * index, shine: coreShine, core: true})
	}
	return list
}

// cast lays the bunches on the map of the sun as discs that face the sun.
func (set *bunchSet) cast(m *sunMap, sun mgl32.Vec3, owner int32) {
	a, b := across(sun)
	berries := set.berry[bunchLevels-1]
	for i := range berries {
		ball := &berries[i]
		down, side := a.Mul(0.9*ball.radius), b.Mul(0.9*ball.radius)
		m.add(owner, &ball.centre, &down, &side, nil)
	}
}

// across gives two unit vectors square to a direction and to each other.
func across(d mgl32.Vec3) (a, b mgl32.Vec3) {
	a = d.Cross(mgl32.Vec3{0, 0, 1})
	if a.Len() < 1e-3 {
		a = mgl32.Vec3{1, 0, 0}
	}
	a = a.Normalize()
	return a, a.Cross(d)
}
