package render

import "image"

// Easel shows a stage with the software painter, in slices, where there is no graphics card: first a rough picture, and a
// fine one when nobody is waiting. It is not safe for use by several goroutines at once.
type Easel struct {
	stage  *Stage
	clear  func()
	show   func(picture *image.RGBA, place image.Rectangle)
	canvas []canvas // by option

	work   *work
	at     int // option that is painted, or was last
	frames int
}

// canvas is what the easel holds for an option.
type canvas struct {
	list    List // of what is shown
	next    List // of what is being painted
	picture *image.RGBA
	step    int // pixels of the screen for each one of the picture
	rough   bool
}

// Steps of the two kinds of pictures, and the quads of a rough one.
const (
	roughStep   = 3
	fineStep    = 1
	roughBudget = 4000
)

// NewEasel is an easel for a stage. Clear empties the space between the panes; show puts a picture to its place on the
// screen, enlarged to fill it.
func NewEasel(stage *Stage, clear func(), show func(picture *image.RGBA, place image.Rectangle)) *Easel {
	return &Easel{stage: stage, clear: clear, show: show}
}

// Frames is the number of pictures that were shown so far.
func (e *Easel) Frames() int { return e.frames }

// Quads is the number of quads that stand in all panes now.
func (e *Easel) Quads() int {
	sum := 0
	for i := range e.canvas {
		sum += e.canvas[i].list.Quads()
	}
	return sum
}

// Busy reports whether pictures are still being made, or made finer.
func (e *Easel) Busy() bool { return e.work != nil || e.stage.Stale() || e.anyRough() }

// Bunch is the bunch that is shown at a place of the screen [px] in the pane of an option, −1 where none is.
func (e *Easel) Bunch(option int, x, y float32) int {
	if option < 0 || option >= len(e.canvas) || e.canvas[option].step == 0 || e.stage.Atlas() == nil {
		return -1
	}
	c := &e.canvas[option]
	return c.list.Bunch(x/float32(c.step), y/float32(c.step), e.stage.Atlas())
}

// Paint paints what the stage has to draw until enough reports true; it answers whether anything is left. With calm it
// also makes rough pictures fine. While a picture is under way, the stage must not work.
func (e *Easel) Paint(calm bool, enough func() bool) (left bool) {
	for {
		if e.work == nil && !e.begin(calm) {
			return false
		}
		if !e.work.slice(enough) {
			return true
		}
		e.work = nil
		e.frames++
		if enough() {
			return e.stage.Stale() || calm && e.anyRough()
		}
	}
}

// UnderWay reports whether a picture has been begun.
func (e *Easel) UnderWay() bool { return e.work != nil }

// begin starts the next picture; false if there is none. Options take turns.
func (e *Easel) begin(calm bool) bool {
	st := e.stage
	if st.stale {
		st.stale = false
		e.clear()
		for _, o := range st.options {
			o.stale = true
		}
	}
	for len(e.canvas) < len(st.options) {
		e.canvas = append(e.canvas, canvas{})
	}
	e.canvas = e.canvas[:len(st.options)]
	for _, fine := range [2]bool{false, true} {
		for k := range st.options {
			i := (e.at + 1 + k) % len(st.options)
			stale := st.options[i].stale
			if !st.visible(i) || fine && (!calm || !e.canvas[i].rough) || !fine && !stale {
				continue
			}
			e.at = i
			e.start(i, fine)
			return true
		}
	}
	return false
}

// start begins the picture of an option.
func (e *Easel) start(option int, fine bool) {
	st, c := e.stage, &e.canvas[option]
	view, scene := st.view(option), st.options[option].scene
	place, budget := view.Bounds(), st.budget()
	step := fineStep
	if !fine {
		step, budget = roughStep, min(budget, roughBudget)
	}
	small := view.smaller(step)
	bounds := small.Bounds()
	e.work = newWork(func(pace func() error) {
		picture := c.picture
		if picture == nil || picture.Rect != bounds {
			picture = image.NewRGBA(bounds)
		}
		if scene.paintView(picture, &small, &c.next, budget, pace) == nil {
			c.list, c.next = c.next, c.list
			c.picture, c.step, c.rough = picture, step, !fine
			e.show(picture, place)
		}
	})
}

// anyRough reports whether a pane shows a rough picture.
func (e *Easel) anyRough() bool {
	for i := range e.canvas {
		if i < len(e.stage.options) && e.canvas[i].rough && e.stage.visible(i) {
			return true
		}
	}
	return false
}

// smaller is the view for a screen with fewer pixels: one for step of them in both directions.
func (v View) smaller(step int) View {
	f := float32(step)
	v.Focal, v.Width, v.Height, v.CentreX, v.CentreY = v.Focal/f, v.Width/f, v.Height/f, v.CentreX/f, v.CentreY/f
	return v
}
