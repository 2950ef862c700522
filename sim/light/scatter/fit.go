package scatter

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/exp"
)

// The suns to which oblique light is fitted: at one height, evenly around half a turn, which is all that a
// row tells apart.
const (
	fitSuns   = 6
	fitHeight = 40.0 // [deg]
	fitRays   = 128  // to the floor for each
	fitSteps  = 10   // halvings of the range from which the share comes
)

// fit finds the share of the extinction that works for oblique light: the one with which, over several suns,
// as much of the beam reaches the floor as through the uneven row itself.
func (m *Model) fit(l *looker) error {
	if len(m.section.cells) == 0 {
		return nil
	}
	suns := obliqueSuns()
	want := 0.0
	for _, sun := range suns {
		if err := l.look(sun); err != nil {
			return err
		}
		want += l.passed(sun, m.section.Slope)
	}
	low, high := 0.2, 2.0
	for range fitSteps {
		if err := l.pace(); err != nil {
			return err
		}
		m.section.oblique = (low + high) / 2
		got := 0.0
		for _, sun := range suns {
			m.Beam(sun, &m.fitted)
			got += m.fitted.Floor(m) / m.fitted.Total()
		}
		if got > want {
			low = m.section.oblique
		} else {
			high = m.section.oblique
		}
	}
	return nil
}

// obliqueSuns are the unit vectors to the suns of the fit.
func obliqueSuns() []mgl64.Vec3 {
	var suns []mgl64.Vec3
	for k := range fitSuns {
		sin, cos := math.Sincos(math.Pi * (float64(k) + 0.5) / fitSuns)
		rise, level := math.Sincos(mgl64.DegToRad(fitHeight))
		suns = append(suns, mgl64.Vec3{level * cos, level * sin, rise})
	}
	return suns
}

// passed is the share of the beam that reaches the floor through the uneven row, for the sun toward which
// the looker looks. Rays that mirror each other start at the same place along the row, so that a mirrored
// row passes the mirrored light.
func (l *looker) passed(sun mgl64.Vec3, slope canopy.Slope) float64 {
	const golden = 0.6180339887498949 // spreads places along the row evenly however many there are
	ray := canopy.NewRay(l.grid)
	sum := 0.0
	for i := range fitRays {
		x := l.grid.Width() * ((float64(i)+0.5)/fitRays - 0.5)
		_, along := math.Modf(golden * float64(1+min(i, fitRays-1-i)))
		from := mgl64.Vec3{x, along * l.grid.Length(), x*slope.Across + 1e-9}
		sum += exp.Of(-l.clumping * ray.Depth(l.thickness, from, sun))
	}
	return sum / fitRays
}
