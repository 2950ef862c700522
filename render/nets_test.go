package render

import (
	"image"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl32"

	"rowlight/sim/cover"
	"rowlight/sim/scenario"
)

// netted is a planting behind all kinds of nets and a film on a slope.
func netted(t testing.TB) Planting {
	return Planting{
		Stand: grownStand(t, 0), Floor: scenario.MownCover, Latitude_deg: 36, Slope_deg: 12, Aspect_deg: 250,
		Shade: scenario.Shade{
			NetSides: scenario.BothSides, NetShade: 0.5, NetColour: scenario.WhiteCloth, NetDistance_m: 0.3, BirdNet: scenario.DrapedNet,
			OverheadShade: 0.3, OverheadColour: scenario.BlackCloth, OverheadHeight_m: 3, Film: scenario.FullFilm,
		},
	}
}

// Nets, film and slope stay inside the budget in every way and from everywhere, and hold only finite corners.
func TestNetsKeepTheBudget(t *testing.T) {
	s := NewScene(netted(t), testAtlas(), afternoon)
	for i, c := range cameras(s) {
		for k, way := range append(Ways(), Natural) {
			view := s.View(way, c, testPane)
			view.Objects = k == len(Ways())
			for _, budget := range []int{QuadBudget / 4, QuadBudget / 2} {
				var l List
				s.Compose(&l, &view, budget)
				if l.Quads() > budget || len(l.objects) != l.Quads() {
					t.Errorf("camera %d, %s: %d quads, %d objects for a budget of %d", i, way, l.Quads(), len(l.objects), budget)
				}
				for v := range l.Vertices {
					checkVertex(t, &l.Vertices[v])
				}
			}
		}
	}
}

// The nets of an option change its picture in every way of looking, and each kind does.
func TestEveryNetIsSeen(t *testing.T) {
	all := netted(t)
	bare := all
	bare.Shade, bare.Slope_deg = scenario.Shade{}, 0
	only := map[string]func(p *Planting){
		"side nets": func(p *Planting) {
			p.Shade.NetSides, p.Shade.NetShade, p.Shade.NetColour = all.Shade.NetSides, 0.5, all.Shade.NetColour
		},
		"bird net": func(p *Planting) { p.Shade.BirdNet = scenario.DrapedNet },
		"roof": func(p *Planting) {
			p.Shade.OverheadShade, p.Shade.OverheadHeight_m, p.Shade.OverheadColour = 0.3, 3, scenario.BlackCloth
		},
		"film":  func(p *Planting) { p.Shade.Film = scenario.FullFilm },
		"slope": func(p *Planting) { p.Slope_deg, p.Aspect_deg = 12, 250 },
	}
	draw := func(p Planting, way Way) *image.RGBA {
		s := NewScene(p, testAtlas(), afternoon)
		picture := image.NewRGBA(image.Rect(0, 0, 160, 120))
		view := s.View(way, DefaultCamera(p.Stand, 0, 36), Pane{Width: 160, Height: 120})
		s.PaintView(picture, &view, 6000)
		return picture
	}
	for _, way := range Ways() {
		without := draw(bare, way)
		for name, hang := range only {
			if name == "film" && way != Natural {
				continue // it whitens leaves that are seen in their own colour
			}
			p := bare
			hang(&p)
			with, changed := draw(p, way), 0
			for i := range with.Pix {
				if math.Abs(float64(with.Pix[i])-float64(without.Pix[i])) > 8 {
					changed++
				}
			}
			if share := float64(changed) / float64(len(with.Pix)); share < 0.01 {
				t.Errorf("%s, %s: only %.2f %% of the picture changes", way, name, 100*share)
			}
		}
	}
}

// A net throws the shade that it computes: of the ground behind it, the share that its threads cover (cover.Panel.Direct).
func TestNetsThrowTheirShade(t *testing.T) {
	stand := oneLeaf(0, 0.1, 1)
	stand.Leaves[0].Area = 1e-6
	p := Planting{Stand: stand, Latitude_deg: 36, Shade: scenario.Shade{
		NetSides: scenario.BothSides, NetShade: 0.5, NetColour: scenario.BlackCloth, NetFrom_m: 0, NetTo_m: 1, NetDistance_m: 0.4,
	}}
	now := afternoon
	now.SunAzimuth_deg, now.SunElevation_deg = 90, 45
	s := NewScene(p, testAtlas(), now)
	if len(s.nets) != 2 {
		t.Fatalf("%d nets", len(s.nets))
	}
	shaded, sun := 0.0, wide(s.light.sun)
	for _, owner := range s.sunMap.owner {
		if owner == netOwner {
			shaded += 1 / float64(len(s.sunMap.owner))
		}
	}
	// Each throws a stripe as wide as it is high; over each other they let the product through.
	through := s.nets[0].Direct(sun)
	overlap := 1 - 0.8 // m of the two stripes
	want := (2*(1-overlap)*(1-through) + overlap*(1-through*through)) / stand.RowSpacing
	if math.Abs(shaded-want) > 0.04 {
		t.Errorf("%.3f of the ground is in the shade of nets, want %.3f", shaded, want)
	}
	if got := s.behindNets(mgl32.Vec3{0, 1, 0.5}); math.Abs(float64(got)-through) > 1e-6 {
		t.Errorf("%.3f of the beam comes to the fruit, want %.3f", got, through)
	}
}

// Under a net over all rows the picture has the very light that cloth leaves: its shares by cover.Cloth.
func TestLightUnderTheRoof(t *testing.T) {
	p := Planting{Stand: smallStand(), Latitude_deg: 36, Shade: scenario.Shade{OverheadShade: 0.4, OverheadColour: scenario.WhiteCloth, OverheadHeight_m: 4}}
	under, open := NewScene(p, testAtlas(), afternoon), smallScene(t, afternoon)
	cloth := cover.Of(0.4, scenario.WhiteCloth)
	direct, scattered := cloth.Overhead(wide(open.light.sun))
	through, on := cloth.Even()
	level := afternoon.DNI_Wm2 * math.Sin(afternoon.SunElevation_deg*math.Pi/180)
	if got, want := float64(under.beam()), direct*afternoon.DNI_Wm2; math.Abs(got-want) > 0.01 {
		t.Errorf("beam %.2f W/m², want %.2f", got, want)
	}
	if got, want := float64(under.diffuse()), (through+on)*afternoon.DHI_Wm2+scattered*level; math.Abs(got-want) > 0.01 {
		t.Errorf("diffuse %.2f W/m², want %.2f", got, want)
	}
	if dark := under.light.beam.luminance() / open.light.beam.luminance(); math.Abs(float64(dark)-direct) > 1e-5 {
		t.Errorf("the beam in the picture is %.3f of the open one, want %.3f", dark, direct)
	}
}
