package render

import (
	"fmt"
	"image"
	"math"
	"strings"
	"testing"
	"time"

	"rowlight/sim/scenario"
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

// BenchmarkSlices plants and lights two options from nothing and tells the longest step between two looks at the clock:
// so much longer than it should a slice may take. Of all runs it tells the shortest, as other work on the machine only
// adds.
func BenchmarkSlices(b *testing.B) {
	least := math.Inf(1)
	for b.Loop() {
		st := NewStage()
		st.SetPanes(twoPanes)
		st.SetScenario(scenario.Default())
		last, longest := time.Now(), time.Duration(0)
		st.Work(true, func() bool {
			now := time.Now()
			longest, last = max(longest, now.Sub(last)), now
			return false
		})
		least = min(least, longest.Seconds()*1000)
	}
	b.ReportMetric(least, "longest-step-ms")
}

func BenchmarkCompose(b *testing.B) { benchmarkCompose(b, func(l *List) { l.coloured = coloured{} }) }

// BenchmarkRecolour composes lists whose fruit alone has changed.
func BenchmarkRecolour(b *testing.B) { benchmarkCompose(b, func(*List) {}) }

func benchmarkCompose(b *testing.B, before func(*List)) {
	stand := grownStand(b, 0)
	sc := NewScene(Planting{Stand: stand}, testAtlas(), firstInstant)
	v := NewView(DefaultCamera(stand, 0, 36), stand, 0, Pane{Width: 700, Height: 420})
	var l List
	for b.Loop() {
		before(&l)
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

// BenchmarkCrossSection writes the cross-section of an option.
func BenchmarkCrossSection(b *testing.B) {
	section := CrossSection{Key: "option-0", Stand: grownStand(b, 0)}
	for b.Loop() {
		var text strings.Builder
		if err := section.WriteSVG(&text, Unsaid); err != nil {
			b.Fatal(err)
		}
	}
}
