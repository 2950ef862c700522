package render

import (
	"fmt"
	"testing"
)

func BenchmarkAtlas(b *testing.B) {
	for b.Loop() {
		NewAtlas()
	}
}

func BenchmarkScene(b *testing.B) {
	stand := grownStand(b, 0)
	a := testAtlas()
	for b.Loop() {
		NewScene(Planting{Stand: stand}, a, firstInstant)
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

func BenchmarkInstant(b *testing.B) {
	s := NewScene(Planting{Stand: grownStand(b, 0)}, testAtlas(), firstInstant)
	for _, elevation := range []float64{70, 42, 12, 4} {
		b.Run(fmt.Sprintf("%g°", elevation), func(b *testing.B) {
			now := afternoon
			now.SunElevation_deg = elevation
			for b.Loop() {
				s.SetInstant(now)
			}
		})
	}
}
