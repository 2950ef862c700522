// Package render makes the picture of a planting: from the Stand that was computed, an instant of
// the day and a camera it makes flat lists of textured quads in painter's order, and the ground and
// sky behind them. Two back ends draw the same lists: the software painter of this package and the
// screen package.
//
// Everything happens in the row frame (x across the row, y along it, z up). Colours are linear light
// until the tone curve makes them display values. Nothing here is a result: light on leaves and floor
// is computed for the look alone, berry temperatures are given.
package render
