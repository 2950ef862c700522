package scatter

import (
	"math"
	"slices"
)

// tracks are parallel ways through the section from the top to the floor, evenly spread over one row
// spacing.
type tracks struct {
	steps  []step
	ends   []int     // index after the last step of each way
	strips []strips  // in which each way ends
	gap    float64   // level distance between ways [m]
	length []float64 // scratch: of all ways in each cell
}

// strips are the floor strips from a first one to before a last one in which a way ends, in equal shares.
type strips struct{ first, last int }

// lay lays tracks for light that comes from the direction (x, z) in the section, z > 0, at most the given
// distance apart across the light [m], and at least so many.
func (t *tracks) lay(s *section, x, z, spacing float64, least int) {
	norm := math.Hypot(x, z)
	x, z = x/norm, z/norm
	n := ways(s, z, spacing, least)
	t.steps, t.ends, t.strips = t.steps[:0], t.ends[:0], t.strips[:0]
	t.gap = s.Width / float64(n)
	for k := range n {
		start := s.Width * ((float64(k)+0.5)/float64(n) - 0.5)
		var end float64
		t.steps, end = s.walk(t.steps, start, float64(s.highest+1)*s.dz, -x, -z)
		t.ends = append(t.ends, len(t.steps))
		t.strips = append(t.strips, s.landing(end, n))
	}
	t.fill(s, z)
}

// ways is the number of tracks for light of the given sine: a multiple of the number of strips, so that all
// strips get the same number, unless a quarter as many will do.
func ways(s *section, sine, spacing float64, least int) int {
	n := max(int(math.Ceil(s.Width*sine/spacing)), least)
	if n > s.strips/4 {
		n = (n + s.strips - 1) / s.strips * s.strips
	}
	return n
}

// landing is where a way ends. Nearly level light has few tracks, which stand for more that end all over the
// floor.
func (s *section) landing(end float64, ways int) strips {
	if ways < s.strips {
		return strips{0, s.strips}
	}
	strip := s.strip(end)
	return strips{strip, strip + 1}
}

// land adds light to the floor strips in which a way ends, which follow the leaf cells among the parts.
func (s *section) land(parts []float64, end strips, light float64) {
	light /= float64(end.last - end.first)
	for strip := end.first; strip < end.last; strip++ {
		parts[len(s.cells)+strip] += light
	}
}

// fill stretches the steps so that the tracks fill each cell exactly, as if they lay infinitely close (the
// volume correction of the method of characteristics).
func (t *tracks) fill(s *section, sine float64) {
	t.length = slices.Grow(t.length[:0], len(s.cells))[:len(s.cells)]
	clear(t.length)
	for _, step := range t.steps {
		t.length[step.cell] += step.length
	}
	full := s.dx * s.dz / (t.gap * sine)
	for i := range t.steps {
		step := &t.steps[i]
		if length := t.length[step.cell]; length > 0 { // a way may touch a corner
			step.length *= full / length
		}
	}
}
