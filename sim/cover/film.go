package cover

import "rowlight/sim/scenario"

// Skin is the factor of a particle film on the share of sunlight that a berry takes in, 1 without. Assumption: 0.85
// to 0.90 by the residue left on fruit, of 1 to 4 g/m².
func Skin(film scenario.Film) float64 {
	switch film {
	case scenario.LightFilm:
		return 0.90
	case scenario.FullFilm:
		return 0.85
	}
	return 1
}

// Leaves is what a particle film adds to the shares of PAR and of near infrared that leaves send on, 0 without.
// Assumption: white leaves reflect a little more, mostly in the visible.
func Leaves(film scenario.Film) (par, near float64) {
	switch film {
	case scenario.LightFilm:
		return 0.04, 0.01
	case scenario.FullFilm:
		return 0.08, 0.02
	}
	return 0, 0
}
