package render

import (
	"fmt"
	"io"

	"rowlight/sim/scenario"
)

// Sizes of a sheet of cross-sections [px].
const (
	sheetEdge   = 20.0
	sheetGap    = 18.0
	sheetHead   = 34.0
	legendStep  = 150.0
	legendStart = 10.0
)

// WriteSheet writes cross-sections side by side, in rows of the given number, as an SVG document on white, with a
// heading and what the signs of the wires mean, in the words of say.
func WriteSheet(w io.Writer, say Say, heading string, sections []CrossSection, columns int) error {
	columns = max(1, min(columns, len(sections)))
	rows := (len(sections) + columns - 1) / columns
	width := 2*sheetEdge + float64(columns)*SectionWidth + float64(columns-1)*sheetGap
	height := 2*sheetEdge + 2*sheetHead + float64(rows)*(SectionHeight+sheetGap)
	p := sectionPen{w: w, say: say}
	p.put(`<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %s %s" color="#222">`+"\n",
		px(width), px(height), px(width), px(height))
	p.put(`<rect width="%s" height="%s" fill="#fff"/>`+"\n", px(width), px(height))
	p.put(`<text x="%s" y="%s" font-family="system-ui,sans-serif" font-size="20" font-weight="600" fill="currentColor">%s</text>`+"\n",
		px(sheetEdge), px(sheetEdge+16), escaped(heading))
	for i := range sections {
		x := sheetEdge + float64(i%columns)*(SectionWidth+sheetGap)
		y := sheetEdge + sheetHead + float64(i/columns)*(SectionHeight+sheetGap)
		p.section(&sections[i], fmt.Sprintf("section-%d", i+1), x, y)
	}
	p.legend(sheetEdge, height-sheetEdge-10)
	p.put("</svg>\n")
	return p.err
}

// legend says what the signs of the wires and the other marks mean.
func (p *sectionPen) legend(x, y float64) {
	p.put(`<g transform="translate(%s %s)" font-family="system-ui,sans-serif" font-size="12" fill="currentColor">`, px(x), px(y))
	roles := []scenario.WireRole{scenario.Fruiting, scenario.Foliage, scenario.Tie, scenario.Roof}
	for i, role := range roles {
		at := legendStart + legendStep*float64(i)
		p.wire(string(role), at, -4)
		p.put(`<text class="legend" x="%s" y="0">%s</text>`, px(at+10), escaped(p.say(saying(saySign, string(role)))))
	}
	at := legendStart + legendStep*float64(len(roles))
	p.put(`<text class="legend" x="%s" y="0">%s</text>`, px(at), escaped(p.say(sayMarks)))
	p.put("</g>\n")
}
