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

// backEndsMatch holds the picture on the screen against that of the software painter: the same things in the same
// places, and the same colours.
func (p *tab) backEndsMatch() {
	p.t.Helper()
	p.viewport(1280, 900, 1)
	p.click("way-natural")
	p.focus("option-A-pane")
	p.do(chromedp.KeyEvent("1"))
	p.still()
	// The pane is wider than what takes the pointer by its border. Compass, tools and the mark of the focus lie over it.
	box := p.box("option-A-pane").Inset(-1)
	shown := image.Rect(92, 9, box.Dx()-9, box.Dy()-60)
	screen := paneOf(p.t, p.shot("match-natural"), box)
	painted := rowlightPicture(p.t, box, "natural")
	if apart := blocksApart(screen, painted, shown); apart > largestApart {
		p.t.Errorf("colours differ by ΔE %.2f on average", apart)
	} else {
		p.t.Logf("colours differ by ΔE %.2f on average", apart)
	}
	eval[bool](p, `(() => { document.querySelector("iframe").contentWindow.rowlightView.setWay("objects"); return true; })()`)
	p.still()
	screen = paneOf(p.t, p.shot("match-objects"), box)
	painted = rowlightPicture(p.t, box, "objects")
	if same := sharePixels(screen, painted, shown); same < leastSameObjects {
		p.t.Errorf("%.2f %% of the pixels show the same thing", 100*same)
	} else {
		p.t.Logf("%.2f %% of the pixels show the same thing", 100*same)
	}
	eval[bool](p, `(() => { document.querySelector("iframe").contentWindow.rowlightView.setWay("natural"); return true; })()`)
}

// paneOf is a part of a picture of the page.
func paneOf(t *testing.T, picture []byte, box image.Rectangle) image.Image {
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

// rowlightPicture is the picture of option A as the command line paints it, as large as a pane and as fine.
func rowlightPicture(t *testing.T, box image.Rectangle, mode string) image.Image {
	t.Helper()
	path := filepath.Join(t.TempDir(), mode+".png")
	cmd := exec.Command(bench.rowlight, "picture", firstScenario(), "--hour", "15.5", "--option", "A", "--mode", mode, "--bare",
		"--size", fmt.Sprintf("%dx%d", box.Dx(), box.Dy()), "--quads", "12000", "-o", path)
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
