package render

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestSortIsFromFarToNearAndStable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		depths := rapid.SliceOfN(rapid.Float32Range(nearestDepth, 60), 0, 400).Draw(t, "depths")
		var l List
		for i, d := range depths {
			l.items, l.keys = append(l.items, item{index: int32(i)}), append(l.keys, depthKey(d))
		}
		l.sort()
		want := make([]uint32, len(depths))
		for i := range want {
			want[i] = uint32(i)
		}
		slices.SortStableFunc(want, func(a, b uint32) int { return cmp.Compare(depthKey(depths[b]), depthKey(depths[a])) })
		if !slices.Equal(l.order, want) {
			t.Fatalf("order %v, want %v", l.order, want)
		}
	})
}

// The key of a farther thing is never smaller, and 2 mm at 5 m make a difference.
func TestDepthKey(t *testing.T) {
	last := uint16(0)
	for d := float32(0.01); d < 80; d *= 1.01 {
		key := depthKey(d)
		if key < last {
			t.Fatalf("the key falls at %g m", d)
		}
		last = key
	}
	if depthKey(5) == depthKey(5.002) || last == math.MaxUint16 {
		t.Error("the keys are too coarse or run out")
	}
}

// cameras are ways to look at a planting: usual, along the row, from above, from close by, from far away.
func cameras(s *Scene) []Camera {
	return []Camera{
		DefaultCamera(s.planting.Stand, 0, 36), {182, 6, 5, 1.1, false}, {230, 60, 9, 1, false}, {200, 89, 12, 1, false}, {240, 4, 1.6, 1.2, false},
		{20, 2, 0.5, 1, false}, {0, 30, 40, 1, false}, {90, -5, 4, 0.3, false},
	}
}

// Lists stay inside their budget, use it where there is much to see, and hold only finite corners.
func TestListsKeepTheBudget(t *testing.T) {
	for option := range 2 {
		s := NewScene(Planting{Stand: grownStand(t, option)}, testAtlas(), afternoon)
		for i, c := range cameras(s) {
			view := NewView(c, s.planting.Stand, 0, testPane)
			for _, budget := range []int{QuadBudget / 4, QuadBudget / 2, QuadBudget} {
				var l List
				s.Compose(&l, &view, budget)
				if l.Quads() > budget || len(l.items) > budget*5/4 {
					t.Errorf("option %d camera %d: %d quads of %d for a budget of %d", option, i, l.Quads(), len(l.items), budget)
				}
				if budget == QuadBudget/2 && l.Quads() < budget/2 {
					t.Errorf("option %d camera %d: only %d quads", option, i, l.Quads())
				}
				for v := range l.Vertices {
					checkVertex(t, &l.Vertices[v])
				}
			}
		}
	}
}

func checkVertex(t *testing.T, v *Vertex) {
	t.Helper()
	for _, x := range [...]float32{v.X, v.Y, v.U, v.V, v.R, v.G, v.B, v.A} {
		if x-x != 0 {
			t.Fatalf("a corner is not finite: %+v", *v)
		}
	}
	if v.U < 0 || v.U > atlasWidth || v.V < 0 || v.V > atlasHeight {
		t.Fatalf("a corner lies outside the atlas: %+v", *v)
	}
	if v.R < 0 || v.G < 0 || v.B < 0 || v.A < 0 || v.A > 1 || max(v.R, v.G, v.B) > 2 {
		t.Fatalf("the colour of a corner is out of range: %+v", *v)
	}
}

func TestItemsComeFromFarToNear(t *testing.T) {
	s := smallScene(t, afternoon)
	view := NewView(DefaultCamera(s.planting.Stand, 0, 36), s.planting.Stand, 0, testPane)
	var l List
	s.Compose(&l, &view, 6000)
	last := uint16(math.MaxUint16)
	kinds := map[itemKind]int{}
	for _, i := range l.order {
		if l.keys[i] > last {
			t.Fatal("a farther thing comes after a nearer one")
		}
		last = l.keys[i]
		kinds[l.items[i].kind]++
	}
	for _, kind := range []itemKind{leafItem, berryItem, woodItem} {
		if kinds[kind] == 0 {
			t.Errorf("nothing of kind %d is drawn: %v", kind, kinds)
		}
	}
}

// The same scene and camera give the same list, also when the list was used for another picture before.
func TestListsHaveNoMemory(t *testing.T) {
	s := smallScene(t, afternoon)
	view := NewView(DefaultCamera(s.planting.Stand, 0, 36), s.planting.Stand, 0, testPane)
	other := NewView(Camera{Azimuth_deg: 10, Elevation_deg: 50, Distance_m: 8, TargetZ_m: 1}, s.planting.Stand, 0, testPane)
	var fresh, used List
	s.Compose(&fresh, &view, 5000)
	s.Compose(&used, &other, 9000)
	s.Compose(&used, &view, 5000)
	if !slices.Equal(fresh.Vertices, used.Vertices) {
		t.Error("a used list differs from a fresh one")
	}
}

// A list that shows the same things in another light is that of a fresh one.
func TestListsTakeTheLight(t *testing.T) {
	s := NewScene(netted(t), testAtlas(), firstInstant)
	for _, way := range Ways() {
		view := s.View(way, DefaultCamera(s.stand, 0, 36), testPane)
		var fresh, used List
		s.SetInstant(firstInstant)
		s.Compose(&used, &view, 6000)
		before := slices.Clone(used.Vertices)
		s.SetInstant(afternoon)
		s.Compose(&used, &view, 6000)
		s.Compose(&fresh, &view, 6000)
		if !slices.Equal(fresh.Vertices, used.Vertices) {
			t.Errorf("%s: a used list differs from a fresh one", way)
		}
		if slices.Equal(before, used.Vertices) {
			t.Errorf("%s: the light makes no difference", way)
		}
	}
}

// So is a list whose fruit alone has other colours, from near by and from afar, where bunches are single spheres.
func TestListsTakeTheColoursOfTheFruit(t *testing.T) {
	s := NewScene(netted(t), testAtlas(), afternoon)
	hot, lit := make([]float32, s.Faces()), make([]uint8, s.Faces())
	for _, way := range Ways() {
		for _, distance := range []float64{4, 20} {
			camera := DefaultCamera(s.stand, 0, 36)
			camera.Distance_m = distance
			view := s.View(way, camera, testPane)
			var fresh, used List
			s.SetFaces(nil, nil, Scale{20, 50})
			s.Compose(&used, &view, 6000)
			before := slices.Clone(used.Vertices)
			for f := range hot {
				hot[f], lit[f] = 25+float32(f%20), uint8(f%2)
			}
			s.SetFaces(hot, lit, Scale{20, 50})
			s.Compose(&used, &view, 6000)
			s.Compose(&fresh, &view, 6000)
			if !slices.Equal(fresh.Vertices, used.Vertices) {
				t.Errorf("%s from %g m: a used list differs from a fresh one", way, distance)
			}
			if way == Heat && slices.Equal(before, used.Vertices) {
				t.Errorf("%s from %g m: the colours make no difference", way, distance)
			}
		}
	}
}

// A leaf near by is drawn at its place and size: the corners of its quad are those of its square.
func TestNearLeafIsAtItsPlace(t *testing.T) {
	s := NewScene(Planting{Stand: oneLeaf(0, 1, 1)}, testAtlas(), afternoon)
	view := NewView(Camera{Azimuth_deg: 250, Elevation_deg: 40, Distance_m: 2, TargetZ_m: 1}, s.planting.Stand, 0, testPane)
	var l List
	s.Compose(&l, &view, 1000)
	if l.Quads() == 0 {
		t.Fatal("the leaf is not drawn")
	}
	nearest := l.Vertices[len(l.Vertices)-4:]
	leaf := &s.leaves.leaf[0]
	for i, sign := range cornerSigns {
		x, y, _ := view.Project(leaf.centre.Add(leaf.tip.Mul(sign[0])).Add(leaf.side.Mul(sign[1])))
		if abs(nearest[i].X-x) > 0.01 || abs(nearest[i].Y-y) > 0.01 {
			t.Errorf("corner %d is at %g, %g, want %g, %g", i, nearest[i].X, nearest[i].Y, x, y)
		}
	}
}

// Rows between the eye and the middle row are left out, all others are drawn.
func TestRowsInFrontAreLeftOut(t *testing.T) {
	s := smallScene(t, afternoon)
	from := func(elevation, distance float64) View {
		return NewView(Camera{Azimuth_deg: 270, Elevation_deg: elevation, Distance_m: distance, TargetZ_m: 1}, s.planting.Stand, 0, testPane)
	}
	low, high := from(5, 6), from(70, 6)
	for row, want := range map[int]float32{-1: 0, -2: 0, 0: 1, 1: 1, 2: 1} {
		if got := s.rowPresence(row, &low); got != want {
			t.Errorf("from low in the west row %d has presence %g", row, got)
		}
		if got := s.rowPresence(row, &high); got != 1 {
			t.Errorf("from above row %d has presence %g", row, got)
		}
	}
}

func TestTheNextRowHidesWhatIsBehindTheNextRow(t *testing.T) {
	s := smallScene(t, afternoon)
	view := NewView(Camera{Azimuth_deg: 270, Elevation_deg: 3, Distance_m: 2, TargetZ_m: 1}, s.planting.Stand, 0, testPane)
	if c := s.hiddenFrom(0, &view); c.hides(1.2) || c.seen != 1 {
		t.Errorf("the middle row is hidden: %+v", c)
	}
	c := s.hiddenFrom(1, &view)
	if !c.hides(1.4) || c.hides(0.1) || c.seen != seenThrough {
		t.Errorf("the next row is not hidden as it should: %+v", c)
	}
	if far := s.hiddenFrom(2, &view); far.seen >= c.seen {
		t.Errorf("the third row shows more than the second: %+v", far)
	}
}

// A mirrored camera over a mirrored planting under a mirrored sun sees the mirror image: as many
// quads of each kind, at mirrored places.
func TestPictureMirrors(t *testing.T) {
	atlas := testAtlas()
	east, west := afternoon, afternoon
	east.SunAzimuth_deg, west.SunAzimuth_deg = 98, 262
	a := NewScene(Planting{Stand: smallStand()}, atlas, east)
	b := NewScene(Planting{Stand: mirrored(smallStand())}, atlas, west)
	seen := func(s *Scene, azimuth float64) (counts [farBunchItem + 1]int) {
		view := NewView(Camera{Azimuth_deg: azimuth, Elevation_deg: 10, Distance_m: 3, TargetZ_m: 1.1}, s.planting.Stand, 0, testPane)
		var l List
		s.Compose(&l, &view, 6000)
		for i := range l.items {
			counts[l.items[i].kind]++
		}
		return counts
	}
	left, right := seen(a, 60), seen(b, 300)
	for kind := range left {
		if d := left[kind] - right[kind]; math.Abs(float64(d)) > 0.05*float64(left[kind])+12 {
			t.Errorf("kind %d: %d and %d items", kind, left[kind], right[kind])
		}
	}
	if p := a.average.luminance() / b.average.luminance(); math.Abs(float64(p)-1) > 0.02 {
		t.Errorf("the canopies differ in brightness by a factor %g", p)
	}
}
