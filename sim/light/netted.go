package light

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/cover"
)

// netted are the views of faces past and through the nets that hang about a row. Behind a cloth light goes on from
// everywhere alike: every way through it brings its direct share of what lies beyond and the scattered share of even
// light. That the nets also shade the leaves beside the fruit and the floor is in Leaves and left out.
type netted struct {
	nets []cover.Panel

	sky, ground         []Broad   // as the views of the model, for light
	openSky, openGround []Broad   // what is seen between the threads, for longwave
	glow                []Broad   // view of each net [face*nets + net]
	leaves              []float64 // share of light from leaves that is left to each face
}

// Behind is the model with nets about every row, those upright or draped. Without nets it is the model itself. Pace
// is as for New.
func (m *Model) Behind(nets []cover.Panel, pace func() error) (*Model, error) {
	if len(nets) == 0 {
		return m, nil
	}
	other := *m
	other.netted = &netted{nets: nets}
	return &other, other.viewNets(pace)
}

// viewNets finds the views of all faces past and through the nets: those without nets, less what nets take of them.
func (m *Model) viewNets(pace func() error) error {
	n := &netted{nets: m.netted.nets, glow: make([]Broad, len(m.Faces)*len(m.netted.nets))}
	n.sky, n.openSky = slices.Clone(m.sky), slices.Clone(m.sky)
	n.ground, n.openGround = slices.Clone(m.ground), slices.Clone(m.ground)
	on := n.scattered()
	for _, domes := range []*canopy.Domes{m.domes, m.down} {
		for i := range domes.Lattice.Size() {
			if err := pace(); err != nil {
				return err
			}
			m.lookPast(n, domes, i, on)
		}
	}
	m.netted = n
	m.viewLeaves()
	return nil
}

// lookPast takes from the views of all faces what nets stop of a direction of a dome.
func (m *Model) lookPast(n *netted, domes *canopy.Domes, i int, on []float64) {
	local := domes.Lattice.Direction(i)
	weight := domes.Lattice.SolidAngle(i) * Shown(local[0])
	ways := [2]way{n.toward(domes.Points[0].InFrame(local), on), n.toward(domes.Points[1].InFrame(local), on)}
	if weight == 0 || len(ways[0].nets)+len(ways[1].nets) == 0 {
		return
	}
	omega := [2]float64{m.factor, m.factor}
	if domes == m.domes {
		omega = [2]float64{m.omega(0, local), m.omega(1, local)}
	}
	for f, depth := range domes.Depth(i) {
		at, w := domes.Points[f].At, &ways[f%2]
		direct, all, met := 1.0, 1.0, false
		var field Broad
		for k := range w.nets {
			net := &w.nets[k]
			if !net.panel.Meets(at, w.d) {
				continue
			}
			if !met {
				met, field = true, broadOf(w.d, weight*canopy.Gap(omega[f%2], float64(depth)))
			}
			direct, all = direct*net.direct, all*net.all
			n.glow[f*len(n.nets)+net.index].AddScaled(&field, 1)
		}
		if !met {
			continue
		}
		light, open := &n.sky[f], &n.openSky[f]
		if domes == m.down {
			strip := f*m.Strips + m.hit(at, w.d, m.slope, m.width)
			light, open = &n.ground[strip], &n.openGround[strip]
		}
		light.AddScaled(&field, all-1)
		open.AddScaled(&field, direct-1)
	}
}

// way is a direction with the nets that it may meet.
type way struct {
	d    mgl64.Vec3
	nets []metNet
}

// metNet is a net as light from a direction meets it: shares that go straight through, and through in all.
type metNet struct {
	index       int
	panel       *cover.Panel
	direct, all float64
}

// toward is a way with the nets on the side to which it leads, by the share of even light that each sends on.
func (n *netted) toward(d mgl64.Vec3, on []float64) way {
	w := way{d: d}
	for k := range n.nets {
		net := &n.nets[k]
		if outward := d[0] > 0; net.Level() && d[2] > 0 || !net.Level() && d[0] != 0 && outward == net.Right() {
			direct := net.Direct(d)
			w.nets = append(w.nets, metNet{k, net, direct, direct + on[k]})
		}
	}
	return w
}

// scattered are the shares of even light that each net sends on.
func (n *netted) scattered() []float64 {
	shares := make([]float64, len(n.nets))
	for k := range n.nets {
		_, shares[k] = n.nets[k].Cloth.Even()
	}
	return shares
}

// viewLeaves finds how much of the light from leaves is left to a face: as much as of that from sky and floor, since a
// net shades the leaves at the fruit as it does the fruit [assumption].
func (m *Model) viewLeaves() {
	n := m.netted
	n.leaves = make([]float64, len(m.Faces))
	for f := range n.leaves {
		n.leaves[f] = 1
		sky, ground, _, _ := m.Views(f)
		if bare := sky.Mean + ground.Mean; bare > 0 {
			n.leaves[f] = math.Min((n.sky[f].Mean+m.all(n.ground, f).Mean)/bare, 1)
		}
	}
}

// Through is the share of the beam that the nets leave a face.
func (m *Model) Through(face int, toSun mgl64.Vec3) float64 {
	direct := 1.0
	if m.netted == nil {
		return direct
	}
	at := m.Place(face)
	for k := range m.netted.nets {
		if net := &m.netted.nets[k]; net.Meets(at, toSun) {
			direct *= net.Direct(toSun)
		}
	}
	return direct
}

// Past finds the share of the beam that nets leave each face: all of it without nets, whatever the instant held before.
func (m *Model) Past(toSun mgl64.Vec3, into *Instant) {
	if m.netted == nil {
		into.Through = nil
		return
	}
	if len(into.Through) != len(m.Faces) {
		into.Through = make([]float64, len(m.Faces))
	}
	for f := range m.Faces {
		into.Through[f] = m.Through(f, toSun)
	}
}

// glow puts what nets make of the beam onto the faces.
func (m *Model) glow(sky Sky, short []Broad) {
	if m.netted == nil {
		return
	}
	for f := range short {
		short[f] = short[f].Plus(m.Glow(f, sky))
	}
}

// skyLight are the views of the sky by which its light comes, past and through nets.
func (m *Model) skyLight() []Broad {
	if m.netted == nil {
		return m.sky
	}
	return m.netted.sky
}

// SeenThrough are the views of sky and floor by which light comes to a face, past and through nets.
func (m *Model) SeenThrough(face int) (sky, ground Broad) {
	sky, floor := m.LightViews(face)
	for _, strip := range floor {
		ground = ground.Plus(strip)
	}
	return sky, ground
}

// LightViews are the views of a face for light from the sky and from each strip of floor, past and through nets.
func (m *Model) LightViews(face int) (sky Broad, floor []Broad) {
	sky, views := m.sky[face], m.ground
	if m.netted != nil {
		sky, views = m.netted.sky[face], m.netted.ground
	}
	return sky, views[face*m.Strips : (face+1)*m.Strips]
}

// FloorLight is light that leaves each strip of floor as a face receives it, past and through nets.
func (m *Model) FloorLight(face int, flux []float64) (sum Broad) {
	_, floor := m.LightViews(face)
	sum.AddOf(floor, flux)
	return sum
}

// FloorLongwave is longwave that leaves each strip of floor as a face receives it between the threads of nets.
func (m *Model) FloorLongwave(face int, flux []float64) (sum Broad) {
	m.AddFloorLongwave(face, flux, &sum)
	return sum
}

// AddFloorLongwave adds it to other longwave.
func (m *Model) AddFloorLongwave(face int, flux []float64, to *Broad) {
	views := m.ground
	if m.netted != nil {
		views = m.netted.openGround
	}
	to.AddOf(views[face*m.Strips:(face+1)*m.Strips], flux)
}

// Netted are the views of a face between the threads of nets, of sky and floor, and the view of the threads. Together
// they are sky and floor of Views.
func (m *Model) Netted(face int) (sky, ground, threads Broad) {
	sky, ground, _, _ = m.Views(face)
	if m.netted == nil {
		return sky, ground, threads
	}
	openSky, openGround := m.netted.openSky[face], m.all(m.netted.openGround, face)
	threads = sky.Plus(ground).Plus(openSky.Times(-1)).Plus(openGround.Times(-1))
	return openSky, openGround, threads
}

// LeavesThrough is the share of light from leaves that nets leave a face.
func (m *Model) LeavesThrough(face int) float64 {
	if m.netted == nil {
		return 1
	}
	return m.netted.leaves[face]
}

// Glow is the diffuse light that nets make of the beam on them, as a face receives it.
func (m *Model) Glow(face int, sky Sky) (sum Broad) {
	if m.netted == nil || sky.Beam <= 0 || sky.Sun.Dot(m.up) <= 0 {
		return sum
	}
	for k := range m.netted.nets {
		sum.AddScaled(&m.netted.glow[face*len(m.netted.nets)+k], m.glowOf(&m.netted.nets[k], sky))
	}
	return sum
}

// glowOf is the diffuse light that leaves the inner side of a net in the beam [W/m² of net]. A sun behind the row
// lights the vines before the net: then none.
func (m *Model) glowOf(net *cover.Panel, sky Sky) float64 {
	if net.Level() {
		return sky.Beam * math.Max(sky.Sun[2], 0) * net.Cloth.Scattered(sky.Sun[2], sky.Sun[0], sky.Sun[1])
	}
	return m.BeamOn(net, sky) * net.Cloth.Scattered(sky.Sun[0], sky.Sun[1], sky.Sun[2])
}

// BeamOn is the beam on the outer side of an upright net, mean over its height [W/m² of net]. The next row, taken as a
// wall as high as the canopy, shades its lower part.
func (m *Model) BeamOn(net *cover.Panel, sky Sky) float64 {
	place := net.Edges[0][0]
	out := sky.Sun[0] * math.Copysign(1, place)
	if out <= 0 || sky.Beam <= 0 || sky.Sun.Dot(m.up) <= 0 {
		return 0
	}
	low, high := net.Edges[0][1], net.Edges[1][1]
	wall := m.top + m.slope.Across*math.Copysign(m.width, place)
	shadow := wall - (m.width-math.Abs(place))*sky.Sun[2]/out
	return sky.Beam * out * math.Min(math.Max((high-shadow)/(high-low), 0), 1)
}

// all is the sum of a face's views of all strips.
func (m *Model) all(views []Broad, face int) (sum Broad) {
	for _, strip := range views[face*m.Strips : (face+1)*m.Strips] {
		sum = sum.Plus(strip)
	}
	return sum
}

// tables are the views with the rows that each face has.
func (n *netted) tables(strips int) (tables [5]*[]Broad, rows [5]int) {
	return [5]*[]Broad{&n.sky, &n.openSky, &n.ground, &n.openGround, &n.glow}, [5]int{1, 1, strips, strips, len(n.nets)}
}

// every keeps the views of some faces.
func (n *netted) every(kept []int, strips int) *netted {
	if n == nil {
		return nil
	}
	few := *n
	tables, rows := few.tables(strips)
	for i, table := range tables {
		*table = pick(*table, kept, rows[i])
	}
	few.leaves = pick(n.leaves, kept, 1)
	return &few
}

// mixed are the views of some models by their weights.
func mixed(models []*Model, weights []float64) *netted {
	if models[0].netted == nil {
		return nil
	}
	sum := *models[0].netted
	to, _ := sum.tables(models[0].Strips)
	for _, table := range to {
		*table = make([]Broad, len(*table))
	}
	sum.leaves = make([]float64, len(sum.leaves))
	for i, m := range models {
		from, _ := m.netted.tables(m.Strips)
		for t, table := range from {
			for k := range *table {
				(*to[t])[k].AddScaled(&(*table)[k], weights[i])
			}
		}
		for f, share := range m.netted.leaves {
			sum.leaves[f] += weights[i] * share
		}
	}
	return &sum
}
