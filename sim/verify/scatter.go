package verify

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/floats"

	"rowlight/sim/canopy"
	"rowlight/sim/internal/known"
	"rowlight/sim/light/scatter"
)

// scatterChecks compare sim/light/scatter.
func scatterChecks() []check {
	shares := check{
		table: "hedgerow_mc", unit: "1", cites: "Monte Carlo",
		asks:    append([]column{oneOf("src", "beam", "diffuse"), number("omega", 0, 1), number("ground_albedo", 0, 1)}, hedgerowSun...),
		answers: numbers(shareColumns...),
	}
	fine, coarse := shares, shares
	fine.compares, fine.allowed = "shares of the light, cells of 5 cm", 0.005
	fine.begin = compareShares(scatter.Resolution{Across: 0.05, Up: 0.05, Spacing: 0.05, Bearings: 16, Slants: 4})
	coarse.compares, coarse.allowed = "shares of the light, cells of the simulation", 0.01
	coarse.begin = compareShares(scatter.Resolution{})
	return []check{fine, coarse,
		{
			table: "rt_slab", compares: "reflected, transmitted, absorbed by a slab", allowed: 1e-3, unit: "1", cites: "Adding-doubling",
			asks:    []column{number("omega", 0, 1), number("tau", 1e-3, 40), number("mu0", 1e-3, 1)},
			answers: numbers("R", "Tdif", "Tdir", "A", "R_diffuse", "T_diffuse"),
			begin:   compareSlab,
		},
		{
			table: "rt_H", compares: "plane albedo of deep leaves, ω ≤ 0.95, µ > 0", allowed: 2e-3, unit: "1", cites: "Computed from",
			asks:    []column{number("omega", 0, 1), number("mu0", 0, 1)},
			answers: numbers("plane_albedo"),
			begin:   compareHalfSpace,
		},
	}
}

// shareColumns are where the light of hedgerow_mc goes: absorbed by canopy and ground, sent back to the sky; and what of it
// reaches the ground at first hand.
var shareColumns = []string{"abs_canopy", "abs_ground", "reflected", "direct_ground"}

// floorStrips across one row spacing, as in the simulation.
const floorStrips = 16

// bands remembers models and their bands from row to row.
type bands[K comparable] struct {
	make   func(K) (*scatter.Model, error)
	pace   func() error
	models map[K]*scatter.Model
	bands  map[bandKey[K]]*scatter.Band
}

type bandKey[K comparable] struct {
	canopy       K
	leaf, albedo float64
}

func newBands[K comparable](pace func() error, model func(K) (*scatter.Model, error)) *bands[K] {
	return &bands[K]{model, pace, map[K]*scatter.Model{}, map[bandKey[K]]*scatter.Band{}}
}

// of is the model of a canopy, and the model solved for one leaf and a floor of one albedo.
func (b *bands[K]) of(canopy K, leaf, albedo float64, strips int) (m *scatter.Model, band *scatter.Band, err error) {
	m, key := b.models[canopy], bandKey[K]{canopy, leaf, albedo}
	if m == nil {
		if m, err = b.make(canopy); err != nil {
			return nil, nil, err
		}
		b.models[canopy] = m
	}
	if band = b.bands[key]; band == nil {
		floor := make([]float64, strips)
		floats.AddConst(albedo, floor)
		if band, err = m.Band(leaf, floor, b.pace); err != nil {
			return nil, nil, err
		}
		b.bands[key] = band
	}
	return m, band, nil
}

// sums are shares of the light that comes in.
type sums struct{ leaves, floor, direct, up float64 }

// sumsOf finds where the light of a source goes: caught by leaves and floor, the floor at first hand, and up.
func sumsOf(m *scatter.Model, band *scatter.Band, first *scatter.Source, strips int) sums {
	var s scatter.Solution
	band.At(first, &s)
	in := first.Total()
	return sums{
		leaves: floats.Sum(s.Cells) / in, floor: floats.Sum(s.Strips) * m.Width() / float64(strips) / in,
		direct: first.Floor(m) / in, up: s.Up / in,
	}
}

// compareShares compares the light in rows of scattering leaves over a Lambertian ground. The leaves of rows with phase
// "bilambertian" send light out by the face that they show; those of the model do not, and keep the same bound.
func compareShares(resolution scatter.Resolution) func(pace func() error) rowCheck {
	return func(pace func() error) rowCheck {
		known := newBands(pace, func(h known.Hedgerow) (*scatter.Model, error) {
			settings := scatter.Settings{Clumping: 1, Strips: floorStrips, Resolution: resolution}
			return scatter.New(h.Grid(), canopy.Uniform(), settings, pace)
		})
		return func(r row, f *found) error {
			h, err := hedgerowOf(r)
			if err != nil {
				return err
			}
			leaf, albedo := r.at("omega"), r.at("ground_albedo")
			m, band, err := known.of(h, leaf, albedo, floorStrips)
			if err != nil {
				return err
			}
			first := m.Sky()
			if r.word("src") == "beam" {
				first = new(scatter.Source)
				m.Beam(sunOf(r), first)
			}
			got := sumsOf(m, band, first, floorStrips)
			for i, share := range []float64{got.leaves * (1 - leaf), got.floor * (1 - albedo), got.up, got.direct} {
				f.near(r, shareColumns[i], share)
			}
			return nil
		}
	}
}

// layer is the greatest optical depth of a layer of leaves.
const layer = 0.03

// slabs are closed canopies by optical depth over black ground.
func slabs(pace func() error) *bands[known.Slab] {
	return newBands(pace, func(s known.Slab) (*scatter.Model, error) {
		grid := s.Grid(layer)
		r := scatter.Resolution{Across: grid.Width(), Up: 1 / math.Ceil(s.Depth/layer-1e-9), Spacing: grid.Width(), Bearings: 24, Slants: 6}
		return scatter.New(grid, canopy.Uniform(), scatter.Settings{Clumping: 1, Strips: 1, Resolution: r}, pace)
	})
}

// beamAt is the beam of a sun of the given cosine to the zenith.
func beamAt(m *scatter.Model, mu float64) *scatter.Source {
	beam := new(scatter.Source)
	m.Beam(mgl64.Vec3{math.Sqrt(1 - mu*mu), 0, mu}, beam)
	return beam
}

// compareSlab compares a beam and an even sky on a slab.
func compareSlab(pace func() error) rowCheck {
	slabs := slabs(pace)
	return func(r row, f *found) error {
		leaf := r.at("omega")
		m, band, err := slabs.of(known.Slab{Depth: r.at("tau")}, leaf, 0, 1)
		if err != nil {
			return err
		}
		beam := sumsOf(m, band, beamAt(m, r.at("mu0")), 1)
		f.near(r, "R", beam.up)
		f.near(r, "Tdif", beam.floor-beam.direct)
		f.near(r, "Tdir", beam.direct)
		f.near(r, "A", beam.leaves*(1-leaf))
		even := sumsOf(m, band, m.Sky(), 1)
		f.near(r, "R_diffuse", even.up)
		f.near(r, "T_diffuse", even.floor)
		return nil
	}
}

// halfSpace stands for leaves without end: at ω = 0.95 less than 1e-4 of the light returns from deeper (decay length 2.6).
var halfSpace = known.Slab{Depth: 12}

// compareHalfSpace compares the light that comes back. Above ω = 0.95 it comes from too deep, and a beam along the
// surface (µ = 0) brings none.
func compareHalfSpace(pace func() error) rowCheck {
	slabs := slabs(pace)
	return func(r row, f *found) error {
		leaf, mu := r.at("omega"), r.at("mu0")
		if leaf > 0.95 || mu == 0 {
			return nil
		}
		m, band, err := slabs.of(halfSpace, leaf, 0, 1)
		if err != nil {
			return err
		}
		f.near(r, "plane_albedo", sumsOf(m, band, beamAt(m, mu), 1).up)
		return nil
	}
}
