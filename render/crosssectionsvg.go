package render

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/training"
)

// Sizes of a drawn cross-section [px]; all are drawn to the same scale, so that they compare.
const (
	sectionScale  = 100.0 // per metre
	sectionHalf_m = 1.8   // drawn to both sides of the row line
	sectionTop_m  = 2.75  // drawn above the ground
	axisRoom      = 40.0  // left of the drawing, for heights
	labelRoom     = 160.0 // right of it, for wires
	titleRoom     = 50.0
	footRoom      = 44.0
	labelApart    = 15.0 // least distance between the lines of two labels

	// SectionWidth and SectionHeight are the size of one cross-section.
	SectionWidth  = axisRoom + 2*sectionHalf_m*sectionScale + labelRoom
	SectionHeight = titleRoom + sectionTop_m*sectionScale + footRoom
)

// Colours of a cross-section. Lines and texts take the colour of the text around the drawing.
const (
	leafLine    = "#3d5a1e"
	woodFill    = "#6b4a32"
	shootLine   = "#7d8f3a"
	berryFill   = "#5b2a5e"
	berryLine   = "#2f1231"
	postFill    = "#9a958c"
	groundFill  = "#8a7458"
	fruitBand   = "#8d4f91"
	leafDepths  = 9 // layers of leaves from back to front
	bunchLayers = 5 // of berries drawn on a bunch
)

// leafFills are the greens from back to front.
var leafFills = [...]string{"#5d7f33", "#6d9140", "#7fa34c"}

// sectionPen writes one cross-section. Its origin is the row line at the ground, y downwards as in SVG.
type sectionPen struct {
	w    io.Writer
	say  Say
	err  error
	path []byte // that is being written
}

func (p *sectionPen) put(format string, values ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, values...)
	}
}

// flush puts the path.
func (p *sectionPen) flush() {
	if p.err == nil {
		_, p.err = p.w.Write(p.path)
	}
	p.path = p.path[:0]
}

// bareTitleRoom is left above a drawing without a title.
const bareTitleRoom = 8.0

// WriteSVG writes the cross-section, in the words of say, as an SVG document of SectionWidth by SectionHeight, less high without a title.
func (c *CrossSection) WriteSVG(w io.Writer, say Say) error {
	p, top := sectionPen{w: w, say: say}, 0.0
	if c.Title == "" {
		top = titleRoom - bareTitleRoom
	}
	p.put(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 %s %s %s" role="img">`, px(top), px(SectionWidth), px(SectionHeight-top))
	p.section(c, "section-"+escaped(c.Key), 0, 0)
	p.put("</svg>\n")
	return p.err
}

// section draws one cross-section with its upper left corner at (x, y); id tells its clip path from others.
func (p *sectionPen) section(c *CrossSection, id string, x, y float64) {
	p.put(`<g transform="translate(%s %s)" font-family="system-ui,sans-serif" font-size="12" fill="currentColor">`,
		px(x+axisRoom+sectionHalf_m*sectionScale), px(y+titleRoom+sectionTop_m*sectionScale))
	p.clip(id)
	if c.Title != "" {
		p.put("<title>%s</title>\n", escaped(c.Title))
		p.titles(c)
	}
	p.axis(c)
	p.put(`<g clip-path="url(#%s)">`+"\n", id)
	p.band(c)
	p.put(`<g id="%s-row">`+"\n", id)
	p.posts(c.Stand)
	cut := c.cut()
	p.leavesOf(c.Stand, &cut, 0, leafDepths/2)
	p.wood(c.Stand, &cut)
	p.leavesOf(c.Stand, &cut, leafDepths/2, leafDepths)
	p.shootsOf(c.Stand, &cut)
	p.crossarms(c.Stand) // in front of the leaves, which would hide them
	p.bunchesOf(c.Stand, &cut)
	p.wires(c.Stand)
	p.put("</g>\n")
	p.neighbours(c.Stand, id)
	p.put("</g>\n")
	p.ground(c)
	p.labels(c)
	p.put("</g>\n")
}

// at turns a place of the row frame into drawing units.
func sectionAt(x, z float64) (float64, float64) { return x * sectionScale, -z * sectionScale }

// px writes a length with a tenth of a pixel.
func px(v float64) string { return string(appendPx(nil, v)) }

// appendPx appends a length with a tenth of a pixel, without a float to be printed: a section has ten thousands of them.
func appendPx(to []byte, v float64) []byte {
	tenths := math.Round(v * 10)
	if !(math.Abs(tenths) < 1<<31) {
		return strconv.AppendFloat(to, v, 'f', -1, 64) // nothing that could be drawn
	}
	n := int64(tenths)
	if n < 0 {
		to, n = append(to, '-'), -n
	}
	to = strconv.AppendInt(to, n/10, 10)
	if n%10 > 0 {
		to = append(to, '.', byte('0'+n%10))
	}
	return to
}

// appendPlace appends a command of a path and the place to which it goes.
func appendPlace(to []byte, command string, x, y float64) []byte {
	to = appendPx(append(to, command...), x)
	return appendPx(append(to, ' '), y)
}

func escaped(text string) string {
	var out strings.Builder
	xml.EscapeText(&out, []byte(text))
	return out.String()
}

func (p *sectionPen) clip(id string) {
	half, top := sectionHalf_m*sectionScale, sectionTop_m*sectionScale
	p.put(`<clipPath id="%s"><rect x="%s" y="%s" width="%s" height="%s"/></clipPath>`+"\n",
		id, px(-half), px(-top), px(2*half), px(top))
}

// neighbours repeats the row, faintly, where the next rows stand.
func (p *sectionPen) neighbours(s *training.Stand, id string) {
	for _, side := range [2]float64{-1, 1} {
		p.put(`<use href="#%s-row" x="%s" opacity="0.3"/>`, id, px(side*s.RowSpacing*sectionScale))
	}
	p.put("\n")
}

func (p *sectionPen) titles(c *CrossSection) {
	left, top := -sectionHalf_m*sectionScale-axisRoom+6, -sectionTop_m*sectionScale
	p.put(`<text class="title" x="%s" y="%s" font-size="16" font-weight="600">%s</text>`+"\n", px(left), px(top-28), escaped(c.Title))
	if c.Note != "" {
		p.put(`<text class="note" x="%s" y="%s" fill-opacity="0.75">%s</text>`+"\n", px(left), px(top-10), escaped(c.Note))
	}
}

// axis marks heights every half metre or every two feet.
func (p *sectionPen) axis(c *CrossSection) {
	left, step := -sectionHalf_m*sectionScale, 0.5
	if c.Feet {
		step = 2 / feetPerMetre
	}
	p.put(`<g class="axis" stroke="currentColor" stroke-opacity="0.22" stroke-width="0.7">`)
	for z := step; z < sectionTop_m; z += step {
		_, y := sectionAt(0, z)
		p.put(`<path d="M%s %sH%s"/>`, px(left), px(y), px(-left))
	}
	p.put("</g>\n")
	for z := 0.0; z < sectionTop_m; z += step {
		_, y := sectionAt(0, z)
		p.put(`<text x="%s" y="%s" text-anchor="end" fill-opacity="0.75">%s</text>`, px(left-5), px(y+4), escaped(p.say(saying(sayLength, px(c.length(z))))))
	}
	p.put(`<text x="%s" y="%s" text-anchor="end" fill-opacity="0.75">%s</text>`+"\n",
		px(left-5), px(-sectionTop_m*sectionScale+8), c.unit())
}

// ground draws the floor with a mark half way to the neighbouring rows, and the scale.
func (p *sectionPen) ground(c *CrossSection) {
	half := sectionHalf_m * sectionScale
	p.put(`<rect class="ground" x="%s" y="0" width="%s" height="5" fill="%s"/>`, px(-half), px(2*half), groundFill)
	for _, x := range [2]float64{-c.Stand.RowSpacing / 2, c.Stand.RowSpacing / 2} {
		if math.Abs(x) <= sectionHalf_m {
			p.put(`<path class="alley" d="M%s 0v-14" stroke="currentColor" stroke-dasharray="3 2"/>`, px(x*sectionScale))
		}
	}
	bar := 1.0
	if c.Feet {
		bar = 3 / feetPerMetre
	}
	p.put(`<text x="%s" y="22" fill-opacity="0.75">%s</text>`, px(-half),
		escaped(p.say(saying(saySpacing, px(c.length(c.Stand.RowSpacing)), px(c.length(c.Stand.VineSpacing)), c.unit()))))
	right := half - bar*sectionScale
	p.put(`<path class="scale" d="M%s 14v6h%sv-6" fill="none" stroke="currentColor"/>`, px(right), px(bar*sectionScale))
	p.put(`<text x="%s" y="33" text-anchor="middle">%s</text>`+"\n", px(right+bar*sectionScale/2),
		escaped(p.say(saying(sayLength, px(c.length(bar)), c.unit()))))
}

// band marks the fruit zones.
func (p *sectionPen) band(c *CrossSection) {
	for _, zone := range c.Stand.FruitZones() {
		_, y := sectionAt(0, zone.Top_m)
		p.put(`<rect class="fruit-zone" x="%s" y="%s" width="%s" height="%s" fill="%s" fill-opacity="0.1"/>`+"\n",
			px(-sectionHalf_m*sectionScale), px(y), px(2*sectionHalf_m*sectionScale), px((zone.Top_m-zone.Bottom_m)*sectionScale), fruitBand)
	}
}

func (p *sectionPen) posts(s *training.Stand) {
	if len(s.Posts) == 0 {
		return
	}
	post := &s.Posts[0]
	_, y := sectionAt(0, post.Height)
	p.put(`<g class="post" fill="none" stroke="%s" stroke-linecap="round"><path d="M0 0V%s" stroke-width="7" stroke-opacity="0.55"/></g>`+"\n", postFill, px(y))
}

func (p *sectionPen) crossarms(s *training.Stand) {
	if len(s.Posts) == 0 || len(s.Posts[0].Crossarms) == 0 {
		return
	}
	p.put(`<g class="crossarms" fill="none" stroke="%s" stroke-linecap="round">`, postFill)
	for _, arm := range s.Posts[0].Crossarms {
		x1, y1 := sectionAt(arm.Left, arm.Z+arm.Slope*arm.Left)
		x2, y2 := sectionAt(arm.Right, arm.Z+arm.Slope*arm.Right)
		p.put(`<path d="M%s %sL%s %s" stroke-width="4" stroke-opacity="0.8"/>`, px(x1), px(y1), px(x2), px(y2))
	}
	p.put("</g>\n")
}

// leavesOf draws some of the layers of leaves, back to front along the row.
func (p *sectionPen) leavesOf(s *training.Stand, cut *sectionCut, from, to int) {
	order := slices.Clone(cut.leaves)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.Leaves[b].Centre.Y(), s.Leaves[a].Centre.Y()) })
	for layer := from; layer < to; layer++ {
		first, end := layer*len(order)/leafDepths, (layer+1)*len(order)/leafDepths
		if first == end {
			continue
		}
		p.put(`<path class="leaves" fill="%s" fill-opacity="0.8" stroke="%s" stroke-width="0.35" stroke-opacity="0.55" d="`,
			leafFills[layer*len(leafFills)/leafDepths], leafLine)
		for _, i := range order[first:end] {
			p.outline(bladeOutline(&s.Leaves[i]))
		}
		p.put("\"/>\n")
	}
}

// outline writes a closed path in whole tenths of a pixel, each point relative to the one before.
func (p *sectionPen) outline(points []mgl64.Vec3) {
	lastX, lastY := 0.0, 0.0
	for k, point := range points {
		x, y := sectionAt(point.X(), point.Z())
		x, y = math.Round(x*10)/10, math.Round(y*10)/10
		p.path = appendPlace(p.path, [...]string{"M", "l", " "}[min(k, 2)], x-lastX, y-lastY)
		lastX, lastY = x, y
	}
	p.path = append(p.path, 'z')
	p.flush()
}

// wood draws trunks and arms, each as thick as it is.
func (p *sectionPen) wood(s *training.Stand, cut *sectionCut) {
	p.put(`<g class="wood" fill="none" stroke="%s" stroke-linecap="round" stroke-linejoin="round">`, woodFill)
	for _, i := range cut.trunks {
		p.limb(&s.Trunks[i])
	}
	for _, i := range cut.arms {
		p.limb(&s.Arms[i])
	}
	p.put("</g>\n")
}

func (p *sectionPen) limb(limb *training.Limb) {
	thick := 0.0
	for _, r := range limb.Radius {
		thick += 2 * r / float64(len(limb.Radius)) * sectionScale
	}
	p.put(`<path stroke-width="%s" d="`, px(max(thick, 1.6)))
	p.line(limb.Points)
	p.put(`"/>`)
}

func (p *sectionPen) line(points []mgl64.Vec3) {
	for k, point := range points {
		x, y := sectionAt(point.X(), point.Z())
		p.path = appendPlace(p.path, [...]string{"M", "L"}[min(k, 1)], x, y)
	}
	p.flush()
}

func (p *sectionPen) shootsOf(s *training.Stand, cut *sectionCut) {
	p.put(`<path class="shoots" fill="none" stroke="%s" stroke-width="1.3" stroke-linejoin="round" d="`, shootLine)
	for _, i := range cut.shoots {
		p.line(s.Shoots[i].Points)
	}
	p.put("\"/>\n")
}

// bunchesOf draws each bunch as layers of berries that narrow to the tip.
func (p *sectionPen) bunchesOf(s *training.Stand, cut *sectionCut) {
	p.put(`<path class="bunches" fill="%s" stroke="%s" stroke-width="0.4" d="`, berryFill, berryLine)
	for _, i := range cut.bunches {
		b := &s.Bunches[i]
		radius := b.Length / bunchLayers / 1.6 * sectionScale
		for layer := range bunchLayers {
			count := max(1, 3-layer*2/3)
			z := b.Centre.Z() + b.Length*(0.5-(float64(layer)+0.5)/bunchLayers)
			for k := range count {
				aside := (float64(k) - float64(count-1)/2) * b.Radius * 0.75
				x, y := sectionAt(b.Centre.X()+aside, z)
				p.path = appendPlace(p.path, "M", x-radius, y)
				for _, across := range [2]float64{2 * radius, -2 * radius} {
					p.path = appendPlace(p.path, "a", radius, radius)
					p.path = appendPlace(append(p.path, " 0 1 0 "...), "", across, 0)
				}
			}
		}
	}
	p.flush()
	p.put("\"/>\n")
}
