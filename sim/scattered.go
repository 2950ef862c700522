package sim

import (
	"slices"

	"gonum.org/v1/gonum/floats"

	"rowlight/sim/canopy"
	"rowlight/sim/cover"
	"rowlight/sim/light"
	"rowlight/sim/light/scatter"
	"rowlight/sim/scenario"
	"rowlight/sim/sky"
)

// scattering finds the light that leaves and floor scatter on one stand over one floor, all orders
// together. It keeps scratch.
type scattering struct {
	model     *scatter.Model
	bands     [2]*scatter.Band // PAR and near infrared
	receivers *scatter.Receivers
	sky       *scatter.Source
	albedo    float64
	leaf      [2]float64 // share of each band that leaves send on
	leafArea  float64    // per metre of row [m²/m]
	openness  float64    // sky light caught by the leaves per leaf area, for a sky of unit irradiance
	stripSky  []float64  // share of the sky's light that reaches each strip of floor

	beam, first scatter.Source
	solutions   [2]scatter.Solution
	leaves      []light.Broad
	dark        []light.Broad // nothing on any face, which all instants without light share
}

// bandShares are what of the energy of sunlight lies in each band.
var bandShares = [2]float64{sky.PARShare, 1 - sky.PARShare}

// leafScatter is what leaves send on of each band, more under a particle film.
func leafScatter(o scenario.Option) [2]float64 {
	par, near := cover.Leaves(o.Shade.Film)
	return [2]float64{scatter.LeafPAR + par, scatter.LeafNIR + near}
}

// scattered is the scattered light of an instant beside what add puts onto faces and floor.
type scattered struct {
	strips    []float64     // sunlight on each strip of floor: beam, sky and scattered [W/m²]
	leaving   []float64     // of it, what the strip sends back [W/m²]
	near      []light.Broad // near infrared from leaves on each face, part of its light [W/m²]
	falls     float64       // PAR on the ground area of the row [W/m]
	onFloor   float64       // PAR on its floor [W/m]
	leafTaken float64       // sunlight that the leaves absorb, per leaf area, one-sided [W/m²]
}

// newScattering prepares the exchange of light of a stand onto the faces of a model.
func newScattering(stand *measured, model *light.Model, settings light.Settings, albedo float64, leaf [2]float64, pace func() error) (*scattering, error) {
	s, err := newExchange(stand, model.Strips, settings, albedo, leaf, pace)
	if err != nil {
		return nil, err
	}
	return s.onto(model, pace)
}

// newExchange prepares the exchange of light between leaves, floor and sky, without faces. The floor sends back the
// same share of both bands: its albedo is known for all sunlight only.
func newExchange(stand *measured, strips int, settings light.Settings, albedo float64, leaf [2]float64, pace func() error) (*scattering, error) {
	grid := canopy.FromStand(stand.Stand, settings.Slope)
	if err := pace(); err != nil {
		return nil, err
	}
	s := &scattering{albedo: albedo, leaf: leaf, leafArea: stand.leafArea / stand.Length}
	var err error
	if s.model, err = scatter.New(grid, nil, scatter.Settings{Clumping: settings.Clumping, Strips: strips}, pace); err != nil {
		return nil, err
	}
	floor := slices.Repeat([]float64{albedo}, strips)
	for k, leaf := range s.leaf {
		if s.bands[k], err = s.model.Band(leaf, floor, pace); err != nil {
			return nil, err
		}
	}
	s.sky = s.model.Sky()
	s.stripSky = s.sky.Strips(s.model)
	if s.leafArea > 0 {
		s.openness = (s.sky.Total() - s.sky.Floor(s.model)) / s.leafArea
	}
	return s, nil
}

// onto is the same exchange as the faces of a model of the same stand receive it.
func (s *scattering) onto(model *light.Model, pace func() error) (*scattering, error) {
	other := *s
	other.leaves, other.dark = make([]light.Broad, len(model.Faces)), make([]light.Broad, len(model.Faces))
	places := make([]scatter.Place, len(model.Faces))
	for f, face := range model.Faces {
		places[f] = scatter.Place{At: model.Place(f), Right: face.Right}
	}
	var err error
	if other.receivers, err = s.model.Receivers(places, light.Shown, pace); err != nil {
		return nil, err
	}
	return &other, nil
}

// add puts the scattered light of an instant onto the faces, which must hold the light of the sky alone before.
func (s *scattering) add(model *light.Model, sky light.Sky, at *light.Instant) scattered {
	out := s.share(sky, model.Strips)
	if sky.Beam <= 0 && sky.Diffuse <= 0 {
		out.near = s.dark
		return out
	}
	out.near = make([]light.Broad, len(at.Short))
	for k := range s.solutions {
		s.receivers.Leaves(&s.solutions[k], s.leaves)
		for f := range s.leaves {
			at.Short[f].AddScaled(&s.leaves[f], model.LeavesThrough(f))
		}
	}
	for f := range at.Short {
		out.near[f].SetScaled(&s.leaves[f], model.LeavesThrough(f)) // of the last band
		floor := model.FloorLight(f, out.leaving)
		at.Short[f].AddScaled(&floor, 1)
	}
	return out
}

// share finds what leaves and strips of floor make of the light of an instant; the solutions keep it by band.
func (s *scattering) share(sky light.Sky, strips int) scattered {
	out := scattered{strips: make([]float64, strips), leaving: make([]float64, strips)}
	if sky.Beam <= 0 && sky.Diffuse <= 0 {
		return out
	}
	s.model.Beam(sky.Sun, &s.beam)
	for k, share := range bandShares {
		s.first.Mix(&s.beam, share*sky.Beam, s.sky, share*sky.Diffuse)
		solution := &s.solutions[k]
		s.bands[k].At(&s.first, solution)
		for strip, falls := range solution.Strips {
			out.strips[strip] += falls
			out.leaving[strip] += s.albedo * falls
		}
		if k == 0 {
			out.falls, out.onFloor = s.first.Total(), floats.Sum(solution.Strips)*s.model.Width()/float64(strips)
		}
		for _, caught := range solution.Cells {
			out.leafTaken += (1 - s.leaf[k]) * caught
		}
	}
	if s.leafArea > 0 {
		out.leafTaken /= s.leafArea
	}
	return out
}
