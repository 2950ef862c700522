package render

import (
	"fmt"
	"image"
	"testing"
)

func BenchmarkAtlas(b *testing.B) {
	for b.Loop() {
		NewAtlas()
	}
}

func BenchmarkPlants(b *testing.B) {
	stand, a := grownStand(b, 0), testAtlas()
	for b.Loop() {
		if _, err := newPlants(stand, 0, a, unhurried); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCompose(b *testing.B) {
	stand := grownStand(b, 0)
	sc := NewScene(Planting{Stand: stand}, testAtlas(), firstInstant)
	v := NewView(DefaultCamera(stand, 0, 36), stand, 0, Pane{Width: 700, Height: 420})
	var l List
	for b.Loop() {
		sc.Compose(&l, &v, 12000)
	}
	b.ReportMetric(float64(l.Quads()), "quads")
}

func BenchmarkRelight(b *testing.B) {
	s := NewScene(Planting{Stand: grownStand(b, 0)}, testAtlas(), firstInstant)
	for _, elevation := range []float64{70, 42, 12, 4} {
		for _, coarse := range []bool{false, true} {
			b.Run(fmt.Sprintf("%g°,coarse=%v", elevation, coarse), func(b *testing.B) {
				now := afternoon
				now.SunElevation_deg = elevation
				for b.Loop() {
					if err := s.relight(now, s.planting, coarse, unhurried); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkPaint(b *testing.B) {
	stand := grownStand(b, 0)
	s := NewScene(Planting{Stand: stand}, testAtlas(), firstInstant)
	for _, way := range Ways() {
		b.Run(way.String(), func(b *testing.B) {
			view := s.View(way, DefaultCamera(stand, 0, 36), Pane{Width: 640, Height: 420})
			picture := image.NewRGBA(view.Bounds())
			for b.Loop() {
				s.PaintView(picture, &view, 12000)
			}
		})
	}
}
