package render

import "image"

// Paint draws the view of a scene in software: ground and sky pixel by pixel, then the list over them.
func (s *Scene) Paint(camera Camera, width, height, budget int) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	view := NewView(camera, s.planting.Stand, s.planting.RowAzimuth_deg, float64(width), float64(height))
	backdrop := s.Backdrop(&view)
	for y := range height {
		for x := range width {
			c := backdrop.at(view.Ray(float32(x)+0.5, float32(y)+0.5))
			to := picture.Pix[picture.PixOffset(x, y):]
			for k := range 3 {
				to[k] = uint8(min(max(c[k], 0), 1)*255 + 0.5)
			}
			to[3] = 255
		}
	}
	var list List
	s.Compose(&list, &view, budget)
	for i := range list.Quads() {
		paintQuad(picture, s.atlas.Image, [4]Vertex(list.Vertices[4*i:]))
	}
	return picture
}
