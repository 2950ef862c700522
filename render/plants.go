package render

import (
	"cmp"
	"math"
	"slices"

	"rowlight/sim/training"
)

// plants is what a stand looks like whatever the light, the direction of the rows and the temperatures:
// leaves, fruit, wood, and how open the canopy is. Nothing in it changes after it is made, so scenes may
// share it.
type plants struct {
	stand      *training.Stand
	open       *openness
	slices     int
	leaves     *leafSet
	leafStarts []int // by slice
	bunches    *bunchSet
	bunchOf    [][]int32 // bunches by slice
	wood       []woodPiece
	woodOf     [][]int32 // pieces by slice
}

// newPlants lays out a stand for drawing. It calls pace often; an error of pace abandons it.
func newPlants(stand *training.Stand, berry_m float64, atlas *Atlas, pace func() error) (*plants, error) {
	p := &plants{stand: stand, slices: max(int(math.Round(stand.Length/sliceLength_m)), 1)}
	var err error
	if p.open, err = newOpenness(stand, pace); err != nil {
		return nil, err
	}
	if p.leaves, p.leafStarts, err = newLeafSet(stand, atlas, p.open, p.slices, pace); err != nil {
		return nil, err
	}
	if p.bunches, err = newBunchSet(stand, berry_m, p.slices, pace); err != nil {
		return nil, err
	}
	p.wood = newWood(stand, p.open, p.slices)
	if err := pace(); err != nil {
		return nil, err
	}
	p.sortIntoSlices()
	return p, pace()
}

// sortIntoSlices lists bunches and wood by slice.
func (p *plants) sortIntoSlices() {
	p.bunchOf, p.woodOf = make([][]int32, p.slices), make([][]int32, p.slices)
	for i := range p.bunches.bunch {
		at := p.bunches.bunch[i].slice
		p.bunchOf[at] = append(p.bunchOf[at], int32(i))
	}
	for _, members := range p.bunchOf {
		// Far slices show the first few of their bunches: a fair sample.
		slices.SortFunc(members, func(a, b int32) int { return cmp.Compare(hash(uint64(a), 12), hash(uint64(b), 12)) })
	}
	for i := range p.wood {
		at := p.wood[i].slice
		p.woodOf[at] = append(p.woodOf[at], int32(i))
	}
}

// unhurried is the pace of those who have the thread to themselves.
func unhurried() error { return nil }
