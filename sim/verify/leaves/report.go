// Package leaves measures how well the leaf-area grid stands for leaves: it compares what reaches the bunch
// faces of a form through the grid, by the very functions of the simulation, with what passes between the
// leaves of the same stands one by one.
package leaves

import (
	"fmt"
	"math"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// The goal: how far the grid may be from the leaves in the mean gap of the bunch faces of one side of the
// row, in any one direction.
const (
	BiasAllowed = 0.02 // of the mean over seeds
	RMSAllowed  = 0.05 // over seeds, with the sampling error subtracted
)

// Settings say how much is measured.
type Settings struct {
	Seeds int // stands of each form, with seeds from 1
	Rays  int // at leaves, from each face in each direction
}

// Report compares, for one form, what reaches the bunch faces between the very leaves of its stands and
// through their leaf-area grids.
type Report struct {
	Form       string
	Seeds      int
	Faces      float64 // on each side of the row, on average
	Clumping   float64 // Ω by least squares on the side means of all directions
	Directions []Direction
}

// Direction is one direction to the sun in which one side of the row is compared. The azimuth is counted
// from the way the side faces, positive towards the y axis of the row.
type Direction struct {
	Side          scenario.Side
	Elevation_deg float64
	Azimuth_deg   float64
	Day           bool // one that the sun of the hot day takes, not one of the lattice

	Leaves   float64 // gap between leaves: mean over faces and seeds [0–1]
	Even     float64 // gap through the grid with Ω = 1
	Single   float64 // gap through the grid with the one Ω of the form
	Grid     float64 // gap through the grid as the simulation takes it, with Ω of each stand by direction
	Bias     float64 // Grid − Leaves
	BiasSE   float64 // standard error of Bias: sampling error of so many stands
	RMS      float64 // of Grid − Leaves of one stand, with its sampling error subtracted
	Sampling float64 // sampling error of one stand: of so many faces and rays
}

// Measure builds the stands of a form and looks from their bunch faces into all directions.
func Measure(form scenario.Form, settings Settings, pace func() error) (Report, error) {
	r := Report{Form: form.Key, Seeds: settings.Seeds}
	day, err := newHotDay()
	if err != nil {
		return r, err
	}
	r.Directions = day.directions()
	looks := make([][]look, len(r.Directions))
	for seed := 1; seed <= settings.Seeds; seed++ {
		stand, err := training.Build(form.Option, day.latitude_deg, seed)
		if err != nil {
			return r, fmt.Errorf("form %q, seed %d: %w", form.Key, seed, err)
		}
		r.Faces += float64(len(stand.Bunches)) / float64(settings.Seeds)
		o, err := newObserver(stand, settings.Rays, pace)
		if err != nil {
			return r, err
		}
		for i := range r.Directions {
			if err := pace(); err != nil {
				return r, err
			}
			looks[i] = append(looks[i], o.look(&r.Directions[i]))
		}
	}
	r.Clumping = fit(looks)
	for i := range r.Directions {
		r.Directions[i].compare(looks[i], r.Clumping)
	}
	return r, nil
}

// Worst is the direction with the largest bias of the lattice or of the day.
func (r *Report) Worst(day bool) (worst Direction) {
	for _, d := range r.Directions {
		if d.Day == day && math.Abs(d.Bias) >= math.Abs(worst.Bias) {
			worst = d
		}
	}
	return worst
}

// Outside lists the directions in which the grid is farther from the leaves than is allowed, the sampling error
// subtracted in squares.
func (r *Report) Outside() (outside []Direction) {
	for _, d := range r.Directions {
		if d.Bias*d.Bias-d.BiasSE*d.BiasSE > BiasAllowed*BiasAllowed || d.RMS > RMSAllowed {
			outside = append(outside, d)
		}
	}
	return outside
}

// WorstRMS is the largest RMS of any direction.
func (r *Report) WorstRMS() (worst float64) {
	for _, d := range r.Directions {
		worst = math.Max(worst, d.RMS)
	}
	return worst
}

// Means are the mean gaps over the directions of the lattice.
func (r *Report) Means() (leaves, even, grid float64) {
	n := 0.0
	for _, d := range r.Directions {
		if !d.Day {
			leaves, even, grid, n = leaves+d.Leaves, even+d.Even, grid+d.Grid, n+1
		}
	}
	return leaves / n, even / n, grid / n
}
