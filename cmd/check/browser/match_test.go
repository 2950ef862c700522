//go:build browser

package browser

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// How alike the pictures of the page and of the command line must be.
const (
	leastSameObjects = 0.98 // share of pixels that show the same thing
	largestApart     = 3.0  // mean difference of the mean colours of blocks [CIE ΔE*ab of 1976]
	blockSide        = 16   // [px]
)

// TestBackEndsMatch holds the pictures on the screen against those of the software painter in every way of looking: the
// same things in the same places, and the same colours. Then it does so for forms with other frames behind nets on a slope.
func TestBackEndsMatch(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.drawn()
	p.viewport(1280, 900, 1)
	for _, way := range []string{"natural", "light", "heat", "slice", "outlook"} {
		p.paneMatches(firstScenario(), "A", way)
	}
	covered := changedDocument(t, func(document map[string]any) {
		site := document["site"].(map[string]any)
		site["slope_deg"], site["aspect_deg"] = 10, 200
		shade := map[string]any{
			"netSides": "both", "netShade": 0.5, "netColour": "white", "birdNet": "draped", "overheadShade": 0.3, "overheadHeight_m": 4, "film": "full",
		}
		document["options"] = []map[string]any{{"form": "double-curtain", "shade": shade}, {"form": "lyre", "shade": shade, "rows": map[string]any{"azimuth_deg": 60}}}
	})
	text, err := os.ReadFile(covered)
	if err != nil {
		t.Fatal(err)
	}
	p.drop("covered.json", string(text))
	p.answered()
	p.paneMatches(covered, "A", "natural")
	p.paneMatches(covered, "A", "slice")
	p.paneMatches(covered, "B", "natural")
	p.paneMatches(covered, "B", "outlook")
}

// paneMatches compares one pane in one way.
func (p *tab) paneMatches(scenario, option, way string) {
	p.t.Helper()
	p.click("way-" + way)
	if way != "outlook" && way != "slice" {
		p.focus("option-" + option + "-pane")
		p.do(chromedp.KeyEvent("1"))
	}
	p.still()
	p.wordless(true)
	// The painted picture is as large as the pane is then: notices come and go above it.
	compare := func(name string, flags ...string) (screen, painted image.Image, shown image.Rectangle) {
		box := p.paneBox(option)
		// Compass, tools and the mark of the focus lie over the picture.
		shown = image.Rect(92, 40, box.Dx()-9, box.Dy()-60)
		return paneOf(p.t, p.shot(name), box), rowlightPicture(p.t, scenario, option, box, way, flags...), shown
	}
	name := "match-" + option + "-" + way
	apart := blocksApart(compare(name))
	same := 1.0
	if way != "light" && way != "heat" { // these show the things of the natural way
		p.objects(true)
		same = sharePixels(compare(name+"-objects", "--objects"))
		p.objects(false)
	}
	p.wordless(false)
	p.t.Logf("%s %s: colours differ by ΔE %.2f on average, %.2f %% of the pixels show the same thing", option, way, apart, 100*same)
	if apart > largestApart || same < leastSameObjects {
		p.t.Errorf("%s %s: colours differ by ΔE %.2f on average, %.2f %% of the pixels show the same thing", option, way, apart, 100*same)
	}
}

// objects draws every thing in a colour of its own, or as it looks.
func (p *tab) objects(on bool) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`(document.querySelector("iframe").contentWindow.rowlightView.setObjects(%v), true)`, on))
	p.still()
}

// paneBox is where the view draws the pane of an option, in whole pixels of the window.
func (p *tab) paneBox(option string) image.Rectangle {
	p.t.Helper()
	b := eval[[4]float64](p, fmt.Sprintf(`(() => {
		const frame = document.querySelector("iframe").getBoundingClientRect();
		const pane = document.querySelector("[data-pane='%d']").getBoundingClientRect();
		const edge = (at, from) => Math.round(at - from);
		return [edge(pane.left, frame.left), edge(pane.top, frame.top), edge(pane.right, frame.left), edge(pane.bottom, frame.top), ]
			.map((at, i) => at + Math.round(i %% 2 ? frame.top : frame.left));
	})()`, option[0]-'A'))
	return image.Rect(int(b[0]), int(b[1]), int(b[2]), int(b[3]))
}

// wordless hides the words over the panes, or shows them again.
func (p *tab) wordless(hidden bool) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`(document.querySelectorAll(".pane-labels").forEach((words) => (words.hidden = %v)), true)`, hidden))
}

// paneOf is a part of a picture of the page.
func paneOf(t testing.TB, picture []byte, box image.Rectangle) image.Image {
	t.Helper()
	whole, err := png.Decode(bytes.NewReader(picture))
	if err != nil {
		t.Fatal(err)
	}
	part := image.NewRGBA(image.Rect(0, 0, box.Dx(), box.Dy()))
	for y := range box.Dy() {
		for x := range box.Dx() {
			part.Set(x, y, whole.At(box.Min.X+x, box.Min.Y+y))
		}
	}
	return part
}

// rowlightPicture is the picture of an option as the command line paints it, as large as a pane and as fine.
func rowlightPicture(t testing.TB, scenario, option string, box image.Rectangle, mode string, flags ...string) image.Image {
	t.Helper()
	path := filepath.Join(t.TempDir(), mode+".png")
	cmd := exec.Command(bench.rowlight, append([]string{"picture", scenario, "--hour", "15.5", "--option", option, "--mode", mode, "--bare",
		"--size", fmt.Sprintf("%dx%d", box.Dx(), box.Dy()), "--quads", "12000", "-o", path}, flags...)...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("rowlight picture: %v\n%s", err, out)
	}
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

func rgbAt(p image.Image, x, y int) [3]float64 {
	c := color.RGBAModel.Convert(p.At(x, y)).(color.RGBA)
	return [3]float64{float64(c.R), float64(c.G), float64(c.B)}
}

// sharePixels is the share of pixels of a part in which two pictures are alike to one step of the display.
func sharePixels(a, b image.Image, part image.Rectangle) float64 {
	same, all := 0, 0
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			p, q := rgbAt(a, x, y), rgbAt(b, x, y)
			if all++; p == q {
				same++
			}
		}
	}
	return float64(same) / float64(max(all, 1))
}

// blocksApart is the mean difference of the mean colours of the blocks of a part.
func blocksApart(a, b image.Image, part image.Rectangle) float64 {
	sum, blocks := 0.0, 0
	for y := part.Min.Y; y+blockSide <= part.Max.Y; y += blockSide {
		for x := part.Min.X; x+blockSide <= part.Max.X; x += blockSide {
			p, q := labOf(a, x, y), labOf(b, x, y)
			sum += math.Sqrt((p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) + (p[2]-q[2])*(p[2]-q[2]))
			blocks++
		}
	}
	return sum / float64(max(blocks, 1))
}

// labOf is the mean colour of a block in CIE L*a*b* under D65 (CIE 1976, sRGB of IEC 61966-2-1).
func labOf(p image.Image, left, top int) [3]float64 {
	var mean [3]float64
	for y := top; y < top+blockSide; y++ {
		for x := left; x < left+blockSide; x++ {
			c := rgbAt(p, x, y)
			for k := range mean {
				mean[k] += c[k] / 255 / (blockSide * blockSide)
			}
		}
	}
	for k, v := range mean {
		if v <= 0.04045 {
			mean[k] = v / 12.92
		} else {
			mean[k] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	r, g, b := mean[0], mean[1], mean[2]
	x := (0.4124*r + 0.3576*g + 0.1805*b) / 0.9505
	y := 0.2126*r + 0.7152*g + 0.0722*b
	z := (0.0193*r + 0.1192*g + 0.9505*b) / 1.089
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	return [3]float64{116*f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))}
}
