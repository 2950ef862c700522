package main

import (
	"flag"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"rowlight/render"
	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/testdata"
)

var update = flag.Bool("update", false, "write the pictures of the tests anew")

// stonyBend is the day of a scenario that all pictures show.
var stonyBend = sync.OnceValues(func() (*sim.Run, error) {
	raw, err := testdata.FS.ReadFile("scenarios/stony-bend.json")
	if err != nil {
		return nil, err
	}
	s, _ := document.Parse(raw)
	return sim.NewEngine().Day(s, func() error { return nil }, nil)
})

var atlas = sync.OnceValue(render.NewAtlas)

func shotOf(t *testing.T, option int, hour_h float64) *shot {
	t.Helper()
	run, err := stonyBend()
	if err != nil {
		t.Fatal(err)
	}
	return newShot(run, option, letter(option), hour_h, atlas())
}

// covered is option A on a slope, sprayed, behind nets of every kind.
func covered(t *testing.T) *shot {
	t.Helper()
	run, err := stonyBend()
	if err != nil {
		t.Fatal(err)
	}
	s := run.Result.Scenario
	s.Options, s.Compare = slices.Clone(s.Options[:1]), 0
	s.Options[0].Shade = scenario.Shade{
		NetSides: scenario.AfternoonSide, NetShade: 0.4, NetColour: scenario.WhiteCloth, NetDistance_m: 0.3, BirdNet: scenario.DrapedNet,
		OverheadShade: 0.3, OverheadColour: scenario.BlackCloth, OverheadHeight_m: 3, Film: scenario.LightFilm,
	}
	s.Site.Slope_deg, s.Site.Aspect_deg = 10, 200
	run, err = sim.NewEngine().Day(s, func() error { return nil }, nil)
	if err != nil {
		t.Fatal(err)
	}
	return newShot(run, 0, "A", 15.5, atlas())
}

// goldens are the pictures that are compared: every way of looking at two forms, every place to look from, and what covers
// vines.
func goldens(t *testing.T) map[string]*image.RGBA {
	looks := pictureLooks{width: 320, height: 240, quads: 12000, bare: true, bunch: -1}
	pictures := map[string]*image.RGBA{}
	for option := range 2 {
		afternoon := shotOf(t, option, 15.5)
		for _, way := range render.Ways() {
			pictures[letter(option)+"-"+way.String()] = afternoon.draw(way, render.FromFront, looks)
		}
	}
	morning := shotOf(t, 1, 8)
	for _, from := range render.FixedLooks()[1:] {
		pictures["B-from-"+string(from)] = morning.draw(render.Natural, from, looks)
	}
	covered := covered(t)
	for _, way := range []render.Way{render.Natural, render.Slice} {
		pictures["covered-"+way.String()] = covered.draw(way, render.FromFront, looks)
	}
	looks.bare, looks.dark = false, true
	pictures["A-page-dark"] = shotOf(t, 0, 12).draw(render.Slice, render.FromFront, looks)
	return pictures
}

// A picture stays as it was looked at and found good, up to the last bits of numbers on other machines; -update
// writes it anew.
func TestPicturesStayAsTheyWere(t *testing.T) {
	for name, picture := range goldens(t) {
		path := filepath.Join("testdata", "pictures", name+".png")
		if *update {
			if err := writePNG(path, picture); err != nil {
				t.Fatal(err)
			}
			continue
		}
		file, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		kept, err := png.Decode(file)
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		if apart := difference(picture, kept); apart > 0.4 {
			t.Errorf("%s differs by %.2f of 255 on average; look at it, then write it anew with -update", name, apart)
		}
	}
}

// difference is the mean difference of the parts of the colours, 0–255.
func difference(a, b image.Image) float64 {
	if a.Bounds() != b.Bounds() {
		return math.Inf(1)
	}
	sum, n := 0.0, 0
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			p := color.RGBAModel.Convert(a.At(x, y)).(color.RGBA)
			q := color.RGBAModel.Convert(b.At(x, y)).(color.RGBA)
			for _, d := range [3]int{int(p.R) - int(q.R), int(p.G) - int(q.G), int(p.B) - int(q.B)} {
				sum += math.Abs(float64(d))
				n++
			}
		}
	}
	return sum / float64(n)
}

func TestPictureCommandWritesAPicture(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out.png")
	got := rowlight("", "picture", demo, "--hour", "17", "--option", "b", "--mode", "heat", "--view", "end", "--size", "200x150", "-o", path)
	if got.code != 0 {
		t.Fatal(got.stderr)
	}
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if drawn, err := png.Decode(file); err != nil || drawn.Bounds() != image.Rect(0, 0, 200, 150) {
		t.Errorf("the picture is %v, %v", drawn.Bounds(), err)
	}
}

func TestPictureCommandSaysWhatIsWrong(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out.png")
	for flag, says := range map[string]string{
		"--hour=25": "--hour: 25 is outside 0 to 24", "--size=10x10": "is outside 64 to 4096", "--size=wide": "no size as 1280x720",
		"--option=E": "is none of A to", "--mode=x-ray": "write one of natural, light, heat, slice, outlook",
		"--view=moon": "write one of front, along, end, above, sun", "--forms=vsp": "goes with --sheet",
	} {
		got := rowlight("", "picture", demo, "-o", path, flag)
		if got.code != 1 || !strings.Contains(got.stderr, says) {
			t.Errorf("%s: code %d, %q; want %q", flag, got.code, got.stderr, says)
		}
	}
}
