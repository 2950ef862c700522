package render

import (
	"math"

	"github.com/go-gl/mathgl/mgl32"
)

// sunMap is the planting seen from the sun: every place is moved along the beam down to the ground,
// and the ground of one period and one row spacing is divided into texels. The highest thing over a
// texel is the one in the sun; a texel with nothing over it is sunlit ground. Because the planting
// repeats, what leaves the map on one edge comes in on the other.
type sunMap struct {
	along, across                 int // texels along a period and across a row spacing, powers of two
	alongPerMetre, acrossPerMetre float32
	slopeX, slopeY                float32 // how far the beam moves sideways for each metre that it comes nearer to the ground
	terrain                       terrain
	top                           []float32 // [across*along], height of the highest thing [m]
	owner                         []int32   // whose it is
	lit                           bool      // false when the sun throws no shadows
	soft, blurred                 []uint8   // of softened
	veil                          uint8     // share of its texels that what is laid on covers, of veilSteps; 0 is all
}

const (
	mapAlong  = 512 // most texels along one period of the row
	mapAcross = 256 // most texels across one row spacing
	// A low sun draws shadows out; the texels may be as long, up to this power of two.
	longestTexel = 4
	noOwner      = -1
	leastFall    = 0.035 // of the beam toward the ground; on a slope that falls away from the sun less is shade
	// Things this much under the highest one still count as lit: the texel is no finer.
	sunMapBias_m = 0.012
)

func newSunMap() *sunMap {
	return &sunMap{top: make([]float32, mapAlong*mapAcross), owner: make([]int32, mapAlong*mapAcross)}
}

// aim clears the map and turns it to the sun. The texels of a coarse map are twice as long and wide.
func (m *sunMap) aim(light *daylight, ground terrain, spacing, length float64, coarse bool) {
	m.terrain = ground
	sun := ground.tilted(light.sun)
	m.lit = light.casts() && sun[2] > leastFall
	m.slopeX, m.slopeY = 0, 0
	if m.lit {
		m.slopeX, m.slopeY = sun[0]/sun[2], sun[1]/sun[2]
	}
	m.along, m.across = mapAlong>>drawnOut(m.slopeY), mapAcross>>drawnOut(m.slopeX)
	if coarse {
		m.along, m.across = m.along/2, m.across/2
	}
	m.alongPerMetre, m.acrossPerMetre = float32(m.along)/float32(length), float32(m.across)/float32(spacing)
	m.top, m.owner = m.top[:m.along*m.across], m.owner[:m.along*m.across]
	for i := range m.owner {
		m.top[i], m.owner[i] = 0, noOwner
	}
}

// drawnOut is how often shadows double in length, rounded down, for a beam of this slope.
func drawnOut(slope float32) uint {
	return uint(min(max(math.Log2(float64(abs(slope))), 0), longestTexel))
}

// texel is the place on the map of a point whose height counts from the ground below it, along and across.
func (m *sunMap) texel(p *mgl32.Vec3) (u, v float32) {
	return (p[1] - p[2]*m.slopeY) * m.alongPerMetre, (p[0] - p[2]*m.slopeX) * m.acrossPerMetre
}

// add lays a flat piece of the stand on the map: all points centre + p·a + q·b with p and q in −1 … 1 that the mask
// (maskSide × maskSide, q along its lines and p down them) covers; no mask covers all.
func (m *sunMap) add(owner int32, centre, a, b *mgl32.Vec3, mask *[maskSide * maskSide]bool) {
	m.lay(owner, m.terrain.above(*centre), m.terrain.tilted(*a), m.terrain.tilted(*b), mask)
}

// lay is add for heights that count from the ground below.
func (m *sunMap) lay(owner int32, centre, a, b mgl32.Vec3, mask *[maskSide * maskSide]bool) {
	cu, cv := m.texel(&centre)
	au, av := m.texel(&a)
	bu, bv := m.texel(&b)
	det := au*bv - av*bu
	if det*det < 0.01 {
		return // edge-on to the sun
	}
	// One step along u changes p by pu and q by qu; v likewise.
	pu, pv, qu, qv := bv/det, -bu/det, -av/det, au/det
	// Where p and q stay within −1 … 1 on a line: around a middle that moves evenly from line to line.
	pShift, pHalf := stripe(pu, pv)
	qShift, qHalf := stripe(qu, qv)
	r := run{
		owner: owner, mask: mask, iStep: fixed(-pu * (maskSide / 2)), jStep: fixed(qu * (maskSide / 2)), zStep: pu*a[2] + qu*b[2],
	}
	half := abs(av) + abs(bv)
	first, last := int(math.Floor(float64(cv-half))), int(math.Floor(float64(cv+half)))
	for line := first; line <= last; line++ {
		dv := float32(line) + 0.5 - cv
		from := max(pShift*dv-pHalf, qShift*dv-qHalf)
		to := min(pShift*dv+pHalf, qShift*dv+qHalf)
		r.from, r.to = int(math.Ceil(float64(cu+from-0.5))), int(math.Floor(float64(cu+to-0.5)))
		if r.from > r.to {
			continue
		}
		du := float32(r.from) + 0.5 - cu
		p, q := pu*du+pv*dv, qu*du+qv*dv
		r.i, r.j, r.z = fixed((1-p)*(maskSide/2)), fixed((1+q)*(maskSide/2)), centre[2]+p*a[2]+q*b[2]
		row := (line & (m.across - 1)) * m.along
		if m.veil > 0 {
			r.thin(m.top[row:row+m.along], m.owner[row:row+m.along], line, m.veil)
			continue
		}
		r.fill(m.top[row:row+m.along], m.owner[row:row+m.along])
	}
}

// run is a line of texels: where it meets the mask and how high it is at its start, and the change per
// texel. Places on the mask are whole numbers with 16 bits behind the point, which are quick to turn into
// indices.
type run struct {
	owner    int32
	mask     *[maskSide * maskSide]bool
	from, to int
	i, iStep int32
	j, jStep int32
	z, zStep float32
}

func fixed(x float32) int32 { return int32(x * (1 << 16)) }

// fill writes the texels of the run that are higher than what is there.
func (r *run) fill(tops []float32, owners []int32) {
	owners = owners[:len(tops)]
	i, j, z, iStep, jStep, zStep := r.i, r.j, r.z, r.iStep, r.jStep, r.zStep
	owner, mask, wrap, last := r.owner, r.mask, len(tops)-1, r.to
	for column := r.from; column <= last; column++ {
		at := column & wrap
		if z > tops[at] {
			row, place := min(max(i>>16, 0), maskSide-1), min(max(j>>16, 0), maskSide-1)
			if mask == nil || mask[row*maskSide+place] {
				tops[at], owners[at] = z, owner
			}
		}
		i, j, z = i+iStep, j+jStep, z+zStep
	}
}

// veilSteps are the steps of cover that a net may have on the map, and veilOrder which of so many texels of a line it takes
// first, so that few or many lie evenly (by the bits of their places the other way round); each next line is shifted.
const veilSteps, veilShift = 16, 5

var veilOrder = [veilSteps]uint8{0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15}

// thin writes some texels of the run of a net on a line: those that its threads cover.
func (r *run) thin(tops []float32, owners []int32, line int, veil uint8) {
	z := r.z
	for column := r.from; column <= r.to; column++ {
		at := column & (len(tops) - 1)
		if z > tops[at] && veilOrder[(column+veilShift*line)&(veilSteps-1)] < veil {
			tops[at], owners[at] = z, r.owner
		}
		z += r.zStep
	}
}

// stripe is the part of each line on which along·x + down·y stays within −1 … 1: for the line at y it is
// shift·y ± half.
func stripe(along, down float32) (shift, half float32) {
	// A stripe that runs along the lines is turned a very little, so that it ends somewhere.
	const least = 1e-4
	if abs(along) < least {
		along = least
	}
	return -down / along, 1 / abs(along)
}

// sees is 1 where the sun reaches a point of the stand that belongs to the owner, 0 where something else is in
// between.
func (m *sunMap) sees(owner int32, p mgl32.Vec3) float32 {
	if !m.lit {
		return 0
	}
	p = m.terrain.above(p)
	if u, v := m.texel(&p); m.reaches(owner, u, v, p[2]) {
		return 1
	}
	return 0
}

// reaches reports whether the sun of a lit map reaches what belongs to the owner at a place and height.
func (m *sunMap) reaches(owner int32, u, v, z float32) bool {
	at := (int(math.Floor(float64(v)))&(m.across-1))*m.along + int(math.Floor(float64(u)))&(m.along-1)
	return m.owner[at] == owner || z > m.top[at]-sunMapBias_m
}

func abs(x float32) float32 { return max(x, -x) }
