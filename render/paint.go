package render

import (
	"image"
	"image/color"
	"image/draw"
)

// Paint draws the view of a scene in software: ground and sky pixel by pixel, then the list over them.
func (s *Scene) Paint(camera Camera, width, height, budget int) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	view := s.View(Natural, camera, Pane{Width: float64(width), Height: float64(height)})
	s.PaintView(picture, &view, budget)
	return picture
}

// View looks at the scene in one of its ways. The flat ways take only the distance of the camera.
func (s *Scene) View(way Way, camera Camera, pane Pane) View {
	view := newView(camera, s.planting.Stand, s.planting.RowAzimuth_deg, s.terrain, pane)
	if way == Slice {
		view = s.sliceView(camera.Limited().Distance_m, pane)
	}
	view.Way, view.Bunch = way, -1
	return view
}

// PaintView draws a view of a scene into its pane of a picture.
func (s *Scene) PaintView(picture *image.RGBA, view *View, budget int) {
	var list List
	_ = s.paintView(picture, view, &list, budget, unhurried) // without haste it is not abandoned
}

// paintView is PaintView with a list to use, and a pace whose error abandons it.
func (s *Scene) paintView(picture *image.RGBA, view *View, list *List, budget int, pace func() error) error {
	pane := picture.SubImage(view.Bounds()).(*image.RGBA)
	if view.OnPaper() {
		fillPaper(pane, view.Paper())
	} else if err := s.paintBackdrop(pane, view, pace); err != nil {
		return err
	}
	s.Compose(list, view, budget)
	for i := range list.Quads() {
		if err := pace(); err != nil { // a near leaf covers much of the picture
			return err
		}
		if q := (*[4]Vertex)(list.Vertices[4*i:]); view.Objects {
			paintObject(pane, s.atlas.Image, q)
		} else {
			paintQuad(pane, s.atlas.Image, *q)
		}
	}
	return nil
}

// fillPaper lays an even opaque colour over a pane.
func fillPaper(pane *image.RGBA, c [3]float32) {
	paper := color.RGBA{uint8(c[0]*255 + 0.5), uint8(c[1]*255 + 0.5), uint8(c[2]*255 + 0.5), 255}
	draw.Draw(pane, pane.Rect, image.NewUniform(paper), image.Point{}, draw.Src)
}

// paintBackdrop draws ground and sky.
func (s *Scene) paintBackdrop(pane *image.RGBA, view *View, pace func() error) error {
	backdrop := s.Backdrop(view)
	for y := pane.Rect.Min.Y; y < pane.Rect.Max.Y; y++ {
		if err := pace(); err != nil {
			return err
		}
		for x := pane.Rect.Min.X; x < pane.Rect.Max.X; x++ {
			c := backdrop.at(view.Ray(float32(x)+0.5, float32(y)+0.5))
			to := pane.Pix[pane.PixOffset(x, y):]
			for k := range 3 {
				to[k] = uint8(min(max(c[k], 0), 1)*255 + 0.5)
			}
			to[3] = 255
		}
	}
	return nil
}

// Bounds is the pane in whole pixels.
func (v *View) Bounds() image.Rectangle {
	left, top := v.CentreX-v.Width/2, v.CentreY-v.Height/2
	return image.Rect(int(left+0.5), int(top+0.5), int(left+v.Width+0.5), int(top+v.Height+0.5))
}
