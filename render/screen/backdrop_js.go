package screen

import (
	_ "embed"

	"github.com/go-gl/mathgl/mgl32"
	"github.com/hajimehoshi/ebiten/v2"

	"rowlight/render"
)

// backdropSource evaluates render.Backdrop for every pixel.
//
//go:embed backdrop.kage
var backdropSource []byte

// objectsSource draws things in even colours.
//
//go:embed objects.kage
var objectsSource []byte

// drawBackdrop fills the pane of a view with ground and sky.
func drawBackdrop(to *ebiten.Image, shader *ebiten.Shader, ground *ebiten.Image, view *render.View, b *render.Backdrop) {
	left, top := view.CentreX-view.Width/2, view.CentreY-view.Height/2
	corner := func(x, y float32) ebiten.Vertex {
		// The ray runs straight across the pane, so the corners are enough.
		ray := view.Ray(x, y)
		return ebiten.Vertex{DstX: x, DstY: y, ColorR: ray[0], ColorG: ray[1], ColorB: ray[2], ColorA: 1}
	}
	vertices := []ebiten.Vertex{
		corner(left, top), corner(left+view.Width, top), corner(left, top+view.Height), corner(left+view.Width, top+view.Height),
	}
	options := &ebiten.DrawTrianglesShaderOptions{Uniforms: uniforms(b), Blend: ebiten.BlendCopy}
	options.Images[0] = ground
	to.DrawTrianglesShader(vertices, []uint16{0, 1, 2, 1, 3, 2}, shader, options)
}

// uniforms names the numbers of the backdrop as the shader does.
func uniforms(b *render.Backdrop) map[string]any {
	vector := func(v mgl32.Vec3) []float32 { return v[:] }
	return map[string]any{
		"Eye": vector(b.Eye), "Sun": vector(b.Sun), "Slope": b.Slope[:], "SunOnGround": b.SunOnGround,
		"Spacing": b.Spacing, "Length": b.Length, "Top": b.Top, "HalfWidth": b.HalfWidth, "Focal": b.Focal, "Far": b.Far,
		"Beam": b.Beam[:], "Sky": b.Sky[:], "Zenith": b.Zenith[:], "Horizon": b.Horizon[:], "Glow": b.Glow[:],
		"Haze": b.Haze[:], "FarRows": b.FarRows[:], "Cover": b.Cover[:], "Worn": b.Worn[:], "Strip": b.Strip[:],
		"StripHalf": b.StripHalf, "Blades": b.Blades, "Grain": b.Grain, "SunDisc": b.SunDisc,
	}
}
