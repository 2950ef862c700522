package sim

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/heat"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// after is the lean of an option of the run as it is now: the same if nothing of it has changed, a sketch if only leaves have,
// and nil if more has.
func (of *previewed) after(s scenario.Scenario, o scenario.Option, pace func() error) (*lean, error) {
	key, err := leanKey(s, o)
	if err != nil || key == of.key {
		return of.lean, err
	}
	if key == of.last.key {
		return of.last.lean, nil
	}
	about, err := keyOf(aboutStand(s, o))
	if err != nil || about != of.about {
		return nil, err
	}
	sketch, err := of.lean.sketch(s, o, pace)
	if err == nil {
		of.last = drawn{key, sketch}
	}
	return sketch, err
}

// drawn is the sketch that was made last, for numbers and picture alike; none where there was no telling.
type drawn struct {
	key  string // of its lean
	lean *lean
}

// sketched is what a sketch differs in from the lean that it was made of.
type sketched struct {
	change  *light.Change
	before  *light.Model
	sky     [2][]light.Broad // views by which the light of the sky came and comes to each face
	leaves  []float64        // share that is left to each face of the light from leaves
	albedo  float64          // of the floor
	leaving []float64        // scratch
}

// sketch is nearly the lean of the same bunches among other leaves, nil for other bunches or where no leaves were. Clumping,
// light fields, the light on the floor and that which leaves take in stay those of l.
func (l *lean) sketch(s scenario.Scenario, o scenario.Option, pace func() error) (*lean, error) {
	was := l.stand
	stand, err := training.BuildPaced(o.On(s.Weather.Date), s.Site.Latitude_deg, s.Seed, pace)
	if err != nil {
		return nil, err
	}
	if len(was.Leaves) == 0 || stand.Length != was.Length || stand.RowSpacing != was.RowSpacing || !slices.Equal(stand.Bunches, was.Bunches) {
		return nil, nil
	}
	other := *l
	measures := was.measures // but for its top they need not be exact, and take as long as the stand
	measures.Top_m += stand.Top - was.Top
	other.stand = &measured{stand, measures, leafArea(stand)}
	change := light.NewChange(was.Stand, stand, slopeInRow(s.Site, o.Rows))
	if other.model, err = l.model.Sketch(change, pace); err != nil {
		return nil, err
	}
	other.sketched = newSketched(l.model, other.model, heat.FloorOf(s.Site.Floor).Albedo)
	other.sketched.change = change
	return &other, nil
}

func newSketched(before, after *light.Model, albedo float64) *sketched {
	faces := len(before.Faces)
	k := &sketched{before: before, albedo: albedo, leaving: make([]float64, before.Strips), leaves: make([]float64, faces)}
	for i, model := range [2]*light.Model{before, after} {
		k.sky[i] = make([]light.Broad, faces)
		for f := range k.leaves {
			k.sky[i][f], _ = model.SeenThrough(f)
			_, _, _, leaves := model.Views(f)
			switch seen := k.leaves[f]; {
			case i == 0:
				k.leaves[f] = leaves.Mean
			case seen > 0:
				// Where leaves go, the others get more light: about half of what a face no longer sees of them comes back
				// (scattered light on the forms of the catalogue, with and without the leaves of the fruit zone).
				k.leaves[f] = math.Sqrt(math.Max(leaves.Mean, 0) / seen)
			default:
				k.leaves[f] = 1
			}
		}
	}
	return k
}

// turn makes of the light on faces in the lean that in its sketch.
func (k *sketched) turn(after *light.Model, sky light.Sky, at *answer) {
	if k == nil {
		return
	}
	clear(k.leaving)
	addScaled(k.leaving, at.strips, k.albedo)
	for f := range at.short {
		var others [2]light.Broad // from floor and sky
		for i, model := range [2]*light.Model{k.before, after} {
			others[i] = model.FloorLight(f, k.leaving)
			others[i].AddScaled(&k.sky[i][f], sky.Diffuse)
		}
		at.short[f].AddScaled(&others[0], -1)
		others[1].AddScaled(&at.short[f], k.leaves[f])
		at.short[f], at.near[f] = others[1], at.near[f].Times(k.leaves[f])
	}
}

// allDaylight is nearly the light of some skies on the faces of a model of all bunches as it was before: a lean looks at few of them. The
// beam is looked at anew; of other light each face gets the share that is left, or more, to one of its side that has seen as much of
// the sky.
func (l *lean) allDaylight(skies []light.Sky, model *light.Model, all *scattering, pace func() error) (*daylight, error) {
	if l.sketched == nil {
		return daylightOf(skies, model, all, pace)
	}
	suns := make([]mgl64.Vec3, len(skies))
	for k := range skies {
		suns[k] = skies[k].Sun
	}
	model, err := model.SketchBeam(l.sketched.change, suns, pace)
	if err != nil {
		return nil, err
	}
	day, err := daylightOf(skies, model, all, pace)
	if err != nil {
		return nil, err
	}
	left, like := l.left(skies[len(skies)-1]), alike(l.sketched.before, model)
	for f, as := range like {
		for k := range skies {
			at, near := &day.instants[k], day.scatters[k].near
			at.Short[f].SetScaled(&at.Short[f], left[as])
			near[f].SetScaled(&near[f], l.sketched.leaves[as])
		}
	}
	return day, nil
}

// left is what is left to each face of a sketch of its light but for the beam, over that before.
func (l *lean) left(sky light.Sky) []float64 {
	at := newAnswer(l.model)
	l.answer(sky, &at, true)
	left := make([]float64, len(at.short))
	for f := range left {
		left[f] = at.short[f].Mean
	}
	l.sketched.turn(l.model, sky, &at)
	for f, before := range left {
		left[f] = 1
		if before > 0 {
			left[f] = math.Max(at.short[f].Mean/before, 0)
		}
	}
	return left
}

// alike are, for each face of a model of all bunches, the face of few, as light.Model.Typical takes them, that sees about as much of the
// sky on its side.
func alike(few, all *light.Model) []int {
	sees := func(model *light.Model, f int) float64 {
		sky, _, _, _ := model.Views(f)
		return sky.Mean
	}
	like := make([]int, len(all.Faces))
	for side := range 2 {
		from := make([]float64, len(few.Faces)/2) // the most hidden to the most open
		for i := range from {
			from[i] = sees(few, 2*i+side)
		}
		for f := side; f < len(like); f += 2 {
			i, _ := slices.BinarySearch(from, sees(all, f))
			like[f] = 2*min(i, len(from)-1) + side
		}
	}
	return like
}
