package scatter

import (
	"math"

	"rowlight/sim/internal/exp"
)

// exchange is how light goes between the parts of a vineyard, the leaf cells followed by the floor strips.
// Light is counted per metre of row; a part of unit radiosity sends out as much in every direction as one
// square metre of a white wall in unit light would, times what the part shows in that direction. Each way
// carries the same light to and fro, so the exchange is symmetric and uniform light stays uniform.
type exchange struct {
	section *section
	parts   int
	between []float64 // caught by part i from part j of unit radiosity [m], at [i*parts + j]
	out     []float64 // sent out by each part of unit radiosity [m]
	lost    []float64 // of it, out into the sky [m]
	sky     []float64 // caught from a sky of unit radiosity above the horizon [m]
	caught  []float64 // scratch: share of the light that each step of a way catches
}

// newExchange follows light along all bearings. Pace is called for every way.
func newExchange(s *section, all []bearing, spacing float64, pace func() error) (*exchange, error) {
	n := s.parts()
	e := &exchange{
		section: s, parts: n,
		between: make([]float64, n*n), out: make([]float64, n), lost: make([]float64, n), sky: make([]float64, n),
	}
	var t tracks
	for i := range all {
		t.lay(s, all[i].x, all[i].z, spacing, fewest)
		for j := range all[i].slants {
			slant := &all[i].slants[j]
			depths := slant.depths(s)
			first := 0
			for k, end := range t.ends {
				if err := pace(); err != nil {
					return nil, err
				}
				e.addWay(t.steps[first:end], depths, t.strips[k], t.gap, slant)
				first = end
			}
		}
	}
	e.complete()
	return e, nil
}

// fewest is the least number of ways of one bearing: nearly level light crosses all cells on each of them.
const fewest = 2

// dark is the share of light below which a way is followed no further. It bounds the energy that is lost.
const dark = 1e-11

// addWay adds one way from the sky to the floor and back.
func (e *exchange) addWay(way []step, depths []float64, end strips, gap float64, s *slant) {
	weight := gap * s.rise * s.solidAngle / math.Pi

	// What every step and the floor catch, keep of their own light, and have of the sky.
	fromSky, above := weight, s.aboveHorizon()
	e.caught = e.caught[:0]
	for _, step := range way {
		i := int(step.cell)
		depth := depths[i] * step.length
		caught := 1 - exp.Of(-depth)
		e.caught = append(e.caught, caught)
		e.out[i] += 2 * weight * depth
		e.between[i*e.parts+i] += weight * (depth - caught)
		e.lost[i] += fromSky * caught
		e.sky[i] += fromSky * caught * above
		fromSky *= 1 - caught
	}
	e.section.land(e.out, end, weight)
	e.section.land(e.lost, end, fromSky)
	e.section.land(e.sky, end, fromSky*above)

	// From every step to those below it and to the floor.
	for k, step := range way {
		row := e.between[int(step.cell)*e.parts:][:e.parts]
		sent := weight * e.caught[k]
		for j := k + 1; j < len(way) && sent > dark*weight; j++ {
			row[way[j].cell] += sent * e.caught[j]
			sent *= 1 - e.caught[j]
		}
		e.section.land(row, end, sent)
	}
}

// aboveHorizon is the share of a pair of directions from which the sky shines.
func (s *slant) aboveHorizon() float64 {
	share := 0.0
	for _, to := range s.to {
		if to[2] > 0 {
			share += 0.5
		}
	}
	return share
}

// complete adds the ways back.
func (e *exchange) complete() {
	for i := range e.parts {
		for j := range i + 1 {
			sum := e.between[i*e.parts+j] + e.between[j*e.parts+i]
			e.between[i*e.parts+j], e.between[j*e.parts+i] = sum, sum
		}
	}
}
