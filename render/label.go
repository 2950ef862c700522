package render

import (
	"math"
	"strconv"

	"rowlight/sim/scenario"
)

// Label is a word at a place of a picture, its middle there [px].
type Label struct {
	X, Y float32
	Text string
}

// Labels are the words that belong into the picture of a flat way: heights and sides of a slice, directions and
// hours of an outlook. Other pictures have none.
func (s *Scene) Labels(view *View) []Label {
	switch view.Way {
	case Slice:
		return s.sliceLabels(view)
	case Outlook:
		return s.outlookLabels(view)
	}
	return nil
}

func (s *Scene) sliceLabels(view *View) []Label {
	var labels []Label
	rows := scenario.Rows{Azimuth_deg: s.planting.RowAzimuth_deg}
	inset := max(view.Height/11, 18)
	for side, sign := range [2]float32{-1, 1} {
		labels = append(labels, Label{
			X:    view.CentreX + sign*(view.Width/2-2.2*inset),
			Y:    view.CentreY - view.Height/2 + inset*0.7,
			Text: scenario.Compass(rows.SideAzimuth(scenario.Side(side))) + " side",
		})
	}
	e := emitter{scene: s, view: view}
	for metres := 1; float64(metres) < s.stand.Top+sliceAbove_m; metres++ {
		x, y := e.inSlice((inset*0.8-view.Width/2)/view.sliceScale(), float32(metres))
		labels = append(labels, Label{X: x, Y: y, Text: strconv.Itoa(metres) + " m"})
	}
	return labels
}

func (s *Scene) outlookLabels(view *View) []Label {
	c := view.chart(s)
	var labels []Label
	for k, text := range [...]string{"N", "E", "S", "W"} {
		sin, cos := math.Sincos(math.Pi / 2 * float64(k))
		labels = append(labels, Label{X: c.x + float32(sin)*c.radius*1.1, Y: c.y - float32(cos)*c.radius*1.1, Text: text})
	}
	declination, hourAngle := s.sunCourse()
	for _, hour := range [...]int{6, 9, 12, 15, 18} {
		d := s.sunAt(declination, hourAngle+15*(float64(hour)-s.instant.Hour))
		if d[2] <= 0.02 {
			continue
		}
		x, y, _ := c.place(d)
		labels = append(labels, Label{X: x, Y: y + c.radius*0.075, Text: strconv.Itoa(hour) + ":00"})
	}
	return labels
}
