package render

import (
	"math"
	"strconv"

	"rowlight/sim/cover"
	"rowlight/sim/scenario"
)

// Label is a saying at a place of a picture, its middle there [px].
type Label struct {
	X, Y   float32
	Saying string
}

// Labels are the words that belong into the picture of a flat way: heights and sides of a slice, directions and
// hours of an outlook; of another, which side is seen.
func (s *Scene) Labels(view *View) []Label {
	switch view.Way {
	case Slice:
		return s.sliceLabels(view)
	case Outlook:
		return s.outlookLabels(view)
	}
	return s.rowLabels(view)
}

// alongFrom is the part of the view along the row, against that across it, from which one rather looks along the row.
const alongFrom = 4

// rowLabels say which side of the rows one looks at, or where one looks along them.
func (s *Scene) rowLabels(view *View) []Label {
	rows := scenario.Rows{Azimuth_deg: s.planting.RowAzimuth_deg}
	said := ""
	if f := view.Forward; abs(f[1]) > alongFrom*abs(f[0]) {
		towards := s.planting.RowAzimuth_deg
		if f[1] < 0 {
			towards += 180
		}
		said = saying(sayLooking, scenario.Compass(towards))
	} else if f[0] > 0 {
		said = saying(sayRow, scenario.Compass(rows.SideAzimuth(scenario.Left)))
	} else {
		said = saying(sayRow, scenario.Compass(rows.SideAzimuth(scenario.Right)))
	}
	return []Label{{X: view.CentreX, Y: view.CentreY + view.Height/2 - max(view.Height/22, 11), Saying: said}}
}

func (s *Scene) sliceLabels(view *View) []Label {
	var labels []Label
	rows := scenario.Rows{Azimuth_deg: s.planting.RowAzimuth_deg}
	inset := max(view.Height/11, 18)
	for side, sign := range [2]float32{-1, 1} {
		labels = append(labels, Label{
			X:      view.CentreX + sign*(view.Width/2-2.2*inset),
			Y:      view.CentreY - view.Height/2 + inset*0.7,
			Saying: saying(saySide, scenario.Compass(rows.SideAzimuth(scenario.Side(side)))),
		})
	}
	e := emitter{scene: s, view: view}
	for metres := 1; float64(metres) < s.stand.Top+sliceAbove_m; metres++ {
		x, y := e.inSlice((inset*0.8-view.Width/2)/view.sliceScale(), float32(metres))
		labels = append(labels, Label{X: x, Y: y, Saying: saying(sayLength, strconv.Itoa(metres), "m")})
	}
	for i := range s.nets {
		net := &s.nets[i]
		x, y := e.acrossRow(0, float32(net.Edges[1][0]), float32(net.Edges[1][1]))
		switch {
		case net.Kind == cover.SideNet:
			labels = append(labels, Label{X: x + float32(math.Copysign(float64(inset)*1.5, net.Edges[1][0])), Y: y, Saying: saying(sayNet, "shade")})
		case net.Kind == cover.BirdNet && net.Level():
			x, y = e.acrossRow(0, 0, float32(net.Edges[1][1]))
			labels = append(labels, Label{X: x, Y: y - inset*0.5, Saying: saying(sayNet, "bird")})
		case net.Kind == cover.OverheadNet:
			x, y = e.acrossRow(0, 0, float32(net.Edges[1][1]))
			labels = append(labels, Label{X: x, Y: y + inset*0.6, Saying: saying(sayNet, "overhead")})
		}
	}
	return labels
}

func (s *Scene) outlookLabels(view *View) []Label {
	c := view.chart(s)
	var labels []Label
	for k, point := range [...]string{"N", "E", "S", "W"} {
		sin, cos := math.Sincos(math.Pi / 2 * float64(k))
		labels = append(labels, Label{X: c.x + float32(sin)*c.radius*1.1, Y: c.y - float32(cos)*c.radius*1.1, Saying: saying(sayPoint, point)})
	}
	declination, hourAngle := s.sunCourse()
	for _, hour := range [...]int{6, 9, 12, 15, 18} {
		d := s.sunAt(declination, hourAngle+15*(float64(hour)-s.instant.Hour))
		if d[2] <= 0.02 {
			continue
		}
		x, y, _ := c.place(d)
		labels = append(labels, Label{X: x, Y: y + c.radius*0.075, Saying: saying(sayHour, strconv.Itoa(hour))})
	}
	return labels
}
