package render

import (
	"slices"
	"strconv"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// wires draws every wire end-on, by its role.
func (p *sectionPen) wires(s *training.Stand) {
	for i := range s.Wires {
		x, y := sectionAt(s.Wires[i].X, s.Wires[i].Z)
		p.wire(s.Wires[i].Role, x, y)
	}
	if len(s.CrossWires) > 0 {
		p.put(`<path class="cross-wire" fill="none" stroke="currentColor" stroke-width="1" d="`)
		for k, point := range s.CrossWires[0].Points {
			x, y := sectionAt(point[0], point[1])
			p.put("%s%s %s", [2]string{"L", "M"}[min(max(1-k, 0), 1)], px(x), px(y))
		}
		p.put("\"/>\n")
	}
}

// wire draws the sign of one role: a full disc carries arms, a ring holds shoots, a diamond holds canes.
func (p *sectionPen) wire(role string, x, y float64) {
	const edge = `stroke="currentColor" stroke-width="1.4"`
	switch scenario.WireRole(role) {
	case scenario.Fruiting:
		p.put(`<circle class="wire %s" cx="%s" cy="%s" r="4" stroke="#fff" stroke-width="1"/>`, role, px(x), px(y))
	case scenario.Tie:
		p.put(`<path class="wire %s" d="M%s %sl4 4 -4 4 -4 -4z" fill="#fff" %s/>`, role, px(x), px(y-4), edge)
	case scenario.Roof:
		p.put(`<circle class="wire %s" cx="%s" cy="%s" r="2.2"/>`, role, px(x), px(y))
	default:
		p.put(`<circle class="wire %s" cx="%s" cy="%s" r="2.8" fill="#fff" %s/>`, role, px(x), px(y), edge)
	}
}

// sectionLabel is a saying beside the drawing and the height that it speaks of.
type sectionLabel struct {
	height float64 // [m]
	saying string
	class  string
}

// labels writes the heights of wires and fruit zone on the right, each with a line to its height; labels that would
// meet move apart.
func (p *sectionPen) labels(c *CrossSection) {
	labels := c.sayings()
	places := placesApart(labels)
	right := sectionHalf_m * sectionScale
	for i, label := range labels {
		_, y := sectionAt(0, label.height)
		p.put(`<path d="M%s %sL%s %s" fill="none" stroke="currentColor" stroke-opacity="0.5" stroke-width="0.8"/>`,
			px(right), px(y), px(right+11), px(places[i]))
		p.put(`<text class="%s" x="%s" y="%s">%s</text>`+"\n", label.class, px(right+14), px(places[i]+4), escaped(p.say(label.saying)))
	}
}

// sayings lists the labels from above.
func (c *CrossSection) sayings() []sectionLabel {
	var labels []sectionLabel
	for _, height := range c.wireHeights() {
		about := []string{c.height(height.height), c.unit()}
		for i, role := range height.roles {
			about = append(about, role, strconv.Itoa(height.wires[i]))
		}
		labels = append(labels, sectionLabel{height.height, saying(sayWires, about...), "height"})
	}
	for _, zone := range c.Stand.FruitZones() {
		said := saying(sayFruit, c.height(zone.Bottom_m), c.height(zone.Top_m), c.unit())
		labels = append(labels, sectionLabel{(zone.Bottom_m + zone.Top_m) / 2, said, "fruit"})
	}
	slices.SortStableFunc(labels, func(a, b sectionLabel) int { return compareDown(a.height, b.height) })
	return labels
}

const feetPerMetre = 1 / 0.3048 // exact

// length turns a length into the units of the drawing.
func (c *CrossSection) length(length_m float64) float64 {
	if c.Feet {
		return length_m * feetPerMetre
	}
	return length_m
}

// height writes a height to a centimetre or a tenth of a foot.
func (c *CrossSection) height(height_m float64) string {
	decimals := 2
	if c.Feet {
		decimals = 1
	}
	return strconv.FormatFloat(c.length(height_m), 'f', decimals, 64)
}

// unit is the sign of the units.
func (c *CrossSection) unit() string {
	if c.Feet {
		return "ft"
	}
	return "m"
}

// placesApart gives each label, from above, the place nearest to its height that leaves room for the others: those
// that would meet stand as a block about the middle of their heights.
func placesApart(labels []sectionLabel) []float64 {
	type block struct{ sum, count float64 } // sum of the places that its labels would have at the top of the block
	var blocks []block
	top := func(b block) float64 { return b.sum / b.count }
	for _, label := range labels {
		_, y := sectionAt(0, label.height)
		blocks = append(blocks, block{y, 1})
		for len(blocks) > 1 {
			last, before := blocks[len(blocks)-1], blocks[len(blocks)-2]
			if top(last) >= top(before)+labelApart*before.count {
				break
			}
			joined := block{before.sum + last.sum - labelApart*before.count*last.count, before.count + last.count}
			blocks = append(blocks[:len(blocks)-2], joined)
		}
	}
	var places []float64
	for _, b := range blocks {
		for k := range int(b.count) {
			places = append(places, top(b)+labelApart*float64(k))
		}
	}
	return places
}
