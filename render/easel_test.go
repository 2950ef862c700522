package render

import (
	"image"
	"testing"
)

// An easel shows each pane roughly first and then as the painter of whole pictures paints it; a still stage costs nothing.
func TestEaselPaintsWhatTheStageShows(t *testing.T) {
	st, _ := shownStage(t)
	st.Invalidate()
	type shown struct {
		picture *image.RGBA
		place   image.Rectangle
	}
	var got []shown
	cleared := 0
	e := NewEasel(st, func() { cleared++ }, func(picture *image.RGBA, place image.Rectangle) { got = append(got, shown{picture, place}) })
	if !e.Busy() {
		t.Error("an easel with all to paint is not busy")
	}
	slices := 0
	for e.Paint(false, func() bool { slices++; return true }) {
	}
	if len(got) != 2 || cleared != 1 || slices < 20 {
		t.Fatalf("%d rough pictures, cleared %d times, in %d slices", len(got), cleared, slices)
	}
	for i, one := range got {
		if want := st.panes[i]; one.place.Dx() != int(want.Width) || one.picture.Rect.Dx()*roughStep < int(want.Width)-roughStep || one.picture.Rect.Dx() > int(want.Width)/2 {
			t.Errorf("pane %d: a rough picture of %v for %v", i, one.picture.Rect, one.place)
		}
	}
	if e.Paint(false, never) || len(got) != 2 || !e.Busy() {
		t.Errorf("while somebody is waiting it goes on painting: %d pictures", len(got))
	}
	e.Paint(true, never)
	if len(got) != 4 || e.Busy() || e.Frames() != 4 {
		t.Fatalf("%d pictures in the end, %d counted, busy %v", len(got), e.Frames(), e.Busy())
	}
	for option := range 2 {
		view := st.look(option)
		want := image.NewRGBA(view.Bounds())
		st.options[option].scene.PaintView(want, &view, st.budget())
		for _, one := range got[2:] {
			if one.place == view.Bounds() && string(one.picture.Pix) != string(want.Pix) {
				t.Errorf("the fine picture of option %d is another than that of the painter", option)
			}
		}
	}
	if e.Paint(true, never); len(got) != 4 {
		t.Error("it paints although nothing has changed")
	}
	st.SetLook(1, Look{Turn_deg: 20, Elevation_deg: 10, Distance_m: 3})
	if e.Paint(false, never); len(got) != 5 || got[4].place.Min.X != int(st.panes[1].X) {
		t.Errorf("one look changed, %d pictures were painted", len(got)-4)
	}
}

// A bunch is found on an easel where the picture shows it, on a rough picture too.
func TestEaselFindsBunches(t *testing.T) {
	st, _ := shownStage(t)
	st.SetWay(Heat)
	e := NewEasel(st, func() {}, func(*image.RGBA, image.Rectangle) {})
	if e.Bunch(0, 150, 100) != -1 || e.Bunch(9, 1, 1) != -1 {
		t.Error("a bunch is found before anything was painted")
	}
	found := func() (count int) {
		for y := float32(60); y < 190; y += 4 {
			for x := float32(10); x < 290; x += 4 {
				if e.Bunch(0, x, y) >= 0 {
					count++
				}
			}
		}
		return count
	}
	e.Paint(false, never)
	rough := found()
	e.Paint(true, never)
	if fine := found(); rough == 0 || fine == 0 {
		t.Errorf("bunches at %d places of the rough picture, at %d of the fine one", rough, fine)
	}
}
