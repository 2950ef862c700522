package render

import "image"

// Paint draws the view of a scene in software: ground and sky pixel by pixel, then the list over them.
func (s *Scene) Paint(camera Camera, width, height, budget int) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	view := NewView(camera, s.planting.Stand, s.planting.RowAzimuth_deg, Pane{Width: float64(width), Height: float64(height)})
	s.PaintView(picture, &view, budget)
	return picture
}

// PaintView draws a view of a scene into its pane of a picture.
func (s *Scene) PaintView(picture *image.RGBA, view *View, budget int) {
	pane := picture.SubImage(view.Bounds()).(*image.RGBA)
	backdrop := s.Backdrop(view)
	for y := pane.Rect.Min.Y; y < pane.Rect.Max.Y; y++ {
		for x := pane.Rect.Min.X; x < pane.Rect.Max.X; x++ {
			c := backdrop.at(view.Ray(float32(x)+0.5, float32(y)+0.5))
			to := pane.Pix[pane.PixOffset(x, y):]
			for k := range 3 {
				to[k] = uint8(min(max(c[k], 0), 1)*255 + 0.5)
			}
			to[3] = 255
		}
	}
	var list List
	s.Compose(&list, view, budget)
	for i := range list.Quads() {
		paintQuad(pane, s.atlas.Image, [4]Vertex(list.Vertices[4*i:]))
	}
}

// Bounds is the pane in whole pixels.
func (v *View) Bounds() image.Rectangle {
	left, top := v.CentreX-v.Width/2, v.CentreY-v.Height/2
	return image.Rect(int(left+0.5), int(top+0.5), int(left+v.Width+0.5), int(top+v.Height+0.5))
}
