package screen

import (
	"fmt"
	"image"
	"image/color"
	"syscall/js"
	"time"
	"unsafe"

	"github.com/hajimehoshi/ebiten/v2"

	"rowlight/render"
)

// Screen shows a stage on the canvas that Ebiten puts into its document. It draws only when it was
// asked to and the stage has changed; the canvas keeps its picture in between.
type Screen struct {
	stage   *render.Stage
	turns   *turns
	ratio   float64 // canvas pixels per CSS pixel
	paper   color.Color
	atlas   *ebiten.Image
	shader  *ebiten.Shader
	objects *ebiten.Shader // nil until it is asked for
	panes   map[int]*pane
	size    image.Point
	frames  int
	last    time.Duration
	drawn   time.Time
	stopped bool
}

// pane is what the screen holds for one option.
type pane struct {
	list    render.List
	ground  *ebiten.Image
	scene   *render.Scene
	version int
}

// quadsPerCall is as many as 16-bit indices can address.
const quadsPerCall = 1 << 16 / 4

// A vertex of a list is a vertex of Ebiten, so that lists pass without a copy.
var _ [unsafe.Sizeof(render.Vertex{})]byte = [unsafe.Sizeof(ebiten.Vertex{})]byte{}

// New prepares a screen for a stage.
func New(stage *render.Stage) (*Screen, error) {
	shader, err := ebiten.NewShader(backdropSource)
	if err != nil {
		return nil, fmt.Errorf("the shader of ground and sky: %w", err)
	}
	return &Screen{stage: stage, turns: newTurns(stage), ratio: 1, paper: color.White, shader: shader, panes: map[int]*pane{}}, nil
}

// Run shows the stage until the program ends.
func (s *Screen) Run() error {
	ebiten.SetScreenClearedEveryFrame(false)
	ebiten.SetFPSMode(ebiten.FPSModeVsyncOffMinimum) // nothing runs until ScheduleFrame
	ebiten.SetTPS(ebiten.SyncWithFPS)
	s.keepFitting()
	return ebiten.RunGameWithOptions(s, &ebiten.RunGameOptions{InitUnfocused: true})
}

// Refresh says that the stage may have changed: its work is done in slices and what changes is drawn soon.
func (s *Screen) Refresh() {
	s.turns.touch()
	s.turns.schedule()
}

// Busy reports whether the picture is still being made, or made finer.
func (s *Screen) Busy() bool { return s.stage.Stale() || s.stage.Left() != render.Nothing }

// SetRatio sets the canvas pixels per CSS pixel, within 1–2: beyond, nobody sees the difference.
func (s *Screen) SetRatio(ratio float64) float64 {
	s.ratio = min(max(ratio, 1), 2)
	s.fit()
	return s.ratio
}

// SetPaper sets the colour of the space between the panes, and of what nothing has been drawn on yet.
func (s *Screen) SetPaper(c color.Color) {
	s.paper = c
	r, g, b, _ := c.RGBA()
	js.Global().Get("document").Get("body").Get("style").Set("backgroundColor", fmt.Sprintf("rgb(%d %d %d)", r>>8, g>>8, b>>8))
	s.stage.Invalidate()
}

// Frames is the number of frames in which a pane was drawn so far.
func (s *Screen) Frames() int { return s.frames }

// Quads is the number of quads that stand in all panes now.
func (s *Screen) Quads() int {
	sum := 0
	for _, p := range s.panes {
		sum += p.list.Quads()
	}
	return sum
}

// LastFrame is the time that the program worked for the last frame, without the work of the graphics card.
func (s *Screen) LastFrame() time.Duration { return s.last }

// LastDrawn is when the program had drawn the last frame, which the graphics card then makes a picture of.
func (s *Screen) LastDrawn() time.Time { return s.drawn }

// LastRaster is the time that the graphics card took for the last frame, to a few milliseconds; 0 while it is at work.
func (s *Screen) LastRaster() time.Duration { return s.turns.card.last }

// LongestSlice is the longest time, since it was asked for last, that the program worked at a stretch for the next picture.
func (s *Screen) LongestSlice() time.Duration {
	longest := s.turns.longest
	s.turns.longest = 0
	return longest
}

// Stop ends Run soon, without another frame.
func (s *Screen) Stop() {
	s.stopped = true
	ebiten.ScheduleFrame()
}

// Update changes nothing: the page changes the stage.
func (s *Screen) Update() error {
	if s.stopped {
		return ebiten.Termination
	}
	return nil
}

// Layout makes the canvas as large as the frame, in device pixels.
func (s *Screen) Layout(width, height int) (int, int) {
	return max(int(float64(width)*s.ratio+0.5), 1), max(int(float64(height)*s.ratio+0.5), 1)
}

// Draw draws the panes that changed.
func (s *Screen) Draw(canvas *ebiten.Image) {
	if size := canvas.Bounds().Size(); size != s.size {
		s.size = size
		s.stage.Invalidate()
	}
	if !s.stage.Stale() {
		return
	}
	start, drawn := time.Now(), 0
	s.stage.Draw(
		func() { canvas.Fill(s.paper) },
		func(option int, scene *render.Scene, view *render.View, budget int) {
			s.drawPane(canvas, option, scene, view, budget)
			drawn++
		},
	)
	if drawn > 0 {
		s.drawn = time.Now()
		s.last = s.drawn.Sub(start)
		s.frames++
	}
	s.turns.drew()
}

func (s *Screen) drawPane(canvas *ebiten.Image, option int, scene *render.Scene, view *render.View, budget int) {
	if s.atlas == nil {
		s.atlas = unmanaged(s.stage.Atlas().Image)
	}
	p := s.panes[option]
	if p == nil {
		p = &pane{}
		s.panes[option] = p
	}
	p.refreshGround(scene)
	part := canvas.SubImage(view.Bounds()).(*ebiten.Image)
	if view.OnPaper() {
		paper := view.Paper()
		part.Fill(color.RGBA{byteOf(paper[0]), byteOf(paper[1]), byteOf(paper[2]), 255})
	} else {
		backdrop := scene.Backdrop(view)
		drawBackdrop(part, s.shader, p.ground, view, &backdrop)
	}
	scene.Compose(&p.list, view, budget)
	if view.Objects {
		s.drawObjects(part, p.list.Vertices)
		return
	}
	s.drawQuads(part, p.list.Vertices)
}

func byteOf(share float32) uint8 { return uint8(share*255 + 0.5) }

// Bunch is the bunch that is shown at a place of the canvas [px] in the pane of an option, −1 where none is.
func (s *Screen) Bunch(option int, x, y float32) int {
	if p := s.panes[option]; p != nil && s.stage.Atlas() != nil {
		return p.list.Bunch(x, y, s.stage.Atlas())
	}
	return -1
}

// refreshGround sends the ground image to the graphics card when it has changed.
func (p *pane) refreshGround(scene *render.Scene) {
	pixels, version := scene.Ground()
	if p.ground == nil {
		p.ground = unmanaged(pixels)
	} else if p.scene != scene || p.version != version {
		p.ground.WritePixels(pixels.Pix)
	}
	p.scene, p.version = scene, version
}

// unmanaged is a texture of its own, outside the shared atlas of Ebiten.
func unmanaged(pixels *image.RGBA) *ebiten.Image {
	texture := ebiten.NewImageWithOptions(pixels.Rect, &ebiten.NewImageOptions{Unmanaged: true})
	texture.WritePixels(pixels.Pix)
	return texture
}

func (s *Screen) drawQuads(to *ebiten.Image, vertices []render.Vertex) {
	options := &ebiten.DrawTrianglesOptions{Filter: ebiten.FilterLinear, DisableMipmaps: true}
	for len(vertices) > 0 {
		part := vertices[:min(len(vertices), 4*quadsPerCall)]
		vertices = vertices[len(part):]
		same := unsafe.Slice((*ebiten.Vertex)(unsafe.Pointer(&part[0])), len(part))
		to.DrawTriangles(same, quadIndices(len(part)/4), s.atlas, options)
	}
}

// drawObjects draws every quad in its even colour. Its shader is made when it is first asked for.
func (s *Screen) drawObjects(to *ebiten.Image, vertices []render.Vertex) {
	if s.objects == nil {
		shader, err := ebiten.NewShader(objectsSource)
		if err != nil {
			panic(err) // the shader is part of the program
		}
		s.objects = shader
	}
	options := &ebiten.DrawTrianglesShaderOptions{}
	options.Images[0] = s.atlas
	for len(vertices) > 0 {
		part := vertices[:min(len(vertices), 4*quadsPerCall)]
		vertices = vertices[len(part):]
		same := unsafe.Slice((*ebiten.Vertex)(unsafe.Pointer(&part[0])), len(part))
		to.DrawTrianglesShader(same, quadIndices(len(part)/4), s.objects, options)
	}
}

// quadIndices are two triangles for each quad, cut along the same diagonal as the software painter's.
func quadIndices(quads int) []uint16 {
	indices := make([]uint16, 0, 6*quads)
	for q := range quads {
		i := uint16(4 * q)
		indices = append(indices, i, i+1, i+2, i+1, i+3, i+2)
	}
	return indices
}
