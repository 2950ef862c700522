package render

import (
	"math"

	"rowlight/sim/training"
)

// openness is the share of the sky that reaches each place of the cross-section of the rows through
// the leaves, averaged along the row: the soft shade of the picture. It is a look, coarser than the
// light that the simulation computes.
type openness struct {
	spacing       float64
	columns, rows int
	share         []float32 // [row*columns+column]
}

const (
	opennessCell_m  = 0.12
	opennessRays    = 9
	opennessReach_m = 6.0
	// leafShadow is the mean projection of leaf area on a plane across the ray, spherical leaves, made
	// larger for rays that run aslant through the cross-section.
	leafShadow = 0.5 * 1.15
)

func newOpenness(stand *training.Stand, pace func() error) (*openness, error) {
	o := &openness{
		spacing: stand.RowSpacing,
		columns: max(int(math.Ceil(stand.RowSpacing/opennessCell_m)), 1),
		rows:    max(int(math.Ceil(stand.Top/opennessCell_m))+1, 2),
	}
	density := make([]float64, o.columns*o.rows) // [m²/m³]
	cell := stand.RowSpacing / float64(o.columns) * opennessCell_m * stand.Length
	for _, leaf := range stand.Leaves {
		if row := int(leaf.Centre[2] / opennessCell_m); row >= 0 && row < o.rows {
			density[row*o.columns+o.column(leaf.Centre[0])] += leaf.Area / cell
		}
	}
	o.share = make([]float32, len(density))
	for row := range o.rows {
		if err := pace(); err != nil {
			return nil, err
		}
		for column := range o.columns {
			o.share[row*o.columns+column] = float32(o.seen(density, row, column))
		}
	}
	return o, nil
}

// column is the cell across the row of a place; rows repeat.
func (o *openness) column(x float64) int {
	share := x / o.spacing
	share -= math.Floor(share)
	return min(int(share*float64(o.columns)), o.columns-1)
}

// seen is the share of a sky of even brightness that is seen from a cell, each direction weighted by
// its height as on a level surface.
func (o *openness) seen(density []float64, row, column int) float64 {
	x0 := (float64(column) + 0.5) * o.spacing / float64(o.columns)
	z0 := (float64(row) + 0.5) * opennessCell_m
	top := float64(o.rows) * opennessCell_m
	var sum, weights float64
	for ray := range opennessRays {
		sin, cos := math.Sincos(math.Pi * (float64(ray) + 0.5) / opennessRays)
		var through float64
		for t := opennessCell_m / 2; t < opennessReach_m && z0+t*sin < top; t += opennessCell_m {
			through += density[int((z0+t*sin)/opennessCell_m)*o.columns+o.column(x0+t*cos)] * opennessCell_m
		}
		sum += sin * math.Exp(-leafShadow*through)
		weights += sin
	}
	return sum / weights
}

// at is the openness of a place, read with linear interpolation.
func (o *openness) at(x, z float64) float32 {
	share := x / o.spacing
	u := (share-math.Floor(share))*float64(o.columns) - 0.5
	v := min(max(z/opennessCell_m-0.5, 0), float64(o.rows-1))
	i, j := int(math.Floor(u)), int(v)
	fu, fv := float32(u-float64(i)), float32(v-float64(j))
	i0, i1 := (i+o.columns)%o.columns, (i+1)%o.columns
	j1 := min(j+1, o.rows-1)
	low := o.share[j*o.columns+i0]*(1-fu) + o.share[j*o.columns+i1]*fu
	high := o.share[j1*o.columns+i0]*(1-fu) + o.share[j1*o.columns+i1]*fu
	return low*(1-fv) + high*fv
}
