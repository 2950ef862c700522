package render

import (
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

func BenchmarkAtlas(b *testing.B) {
	for b.Loop() {
		NewAtlas()
	}
}

func BenchmarkScene(b *testing.B) {
	s := scenario.Default()
	stand, _ := training.Build(s.Options[0], 36, 1)
	a := testAtlas()
	for b.Loop() {
		NewScene(Planting{Stand: stand}, a, firstInstant)
	}
}

func BenchmarkCompose(b *testing.B) {
	s := scenario.Default()
	stand, _ := training.Build(s.Options[0], 36, 1)
	sc := NewScene(Planting{Stand: stand}, testAtlas(), firstInstant)
	v := NewView(DefaultCamera(stand, 0, 36), stand, 0, Pane{Width: 700, Height: 420})
	var l List
	for b.Loop() {
		sc.Compose(&l, &v, 12000)
	}
	b.ReportMetric(float64(l.Quads()), "quads")
}

func BenchmarkInstant(b *testing.B) {
	s := scenario.Default()
	stand, _ := training.Build(s.Options[0], 36, 1)
	sc := NewScene(Planting{Stand: stand}, testAtlas(), firstInstant)
	for b.Loop() {
		sc.SetInstant(Instant{SunAzimuth_deg: 265, SunElevation_deg: 43, DNI_Wm2: 850, DHI_Wm2: 110})
	}
}
