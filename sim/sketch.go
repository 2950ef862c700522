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
	stand, err := of.pulled(s, o, pace)
	if err != nil {
		return nil, err
	}
	sketch, err := of.lean.sketch(of.before, stand, s, o, pace)
	if err == nil {
		of.last = drawn{key, sketch}
	}
	return sketch, err
}

// pulled is the stand of an option as it is now, of the vines that were pulled last if they are the same.
func (of *previewed) pulled(s scenario.Scenario, o scenario.Option, pace func() error) (*training.Stand, error) {
	key, err := vinesKey(s, o)
	if err != nil {
		return nil, err
	}
	o = o.On(s.Weather.Date)
	if of.vines == nil || key != of.vines.key {
		vines, err := training.Grow(o, s.Site.Latitude_deg, s.Seed, pace)
		if err != nil {
			return nil, err
		}
		of.vines = &unpulled{key, vines}
	}
	return of.vines.Pulled(o, s.Site.Latitude_deg), nil
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
	leaves  []float64     // share that is left to each face of the light from leaves
	sky     []light.Broad // what each face sees of the sky beside that share of what it saw
	floor   []light.Broad // and of the strips of floor [face*strips + strip]
	albedo  float64       // of the floor
	leaving []float64     // scratch
}

// sketch is nearly the lean of the same bunches among the leaves of another stand, nil for other bunches or where no leaves were, and where
// nets hang by bunches that have moved. Clumping, light fields, the light on the floor and that which leaves take in stay those of l.
func (l *lean) sketch(before *light.Before, stand *training.Stand, s scenario.Scenario, o scenario.Option, pace func() error) (*lean, error) {
	was := l.stand
	if len(was.Leaves) == 0 || stand.Length != was.Length || stand.RowSpacing != was.RowSpacing || !slices.EqualFunc(stand.Bunches, was.Bunches, isBunch) {
		return nil, nil
	}
	moved := before.Moves(stand)
	if moved && len(about(s, o, was)) > 0 {
		return nil, nil
	}
	other := *l
	measures := was.measures // of which but few are asked for, and all take as long as the stand
	if moved {
		leaves := stand.MeasureLeaves()
		measures.Top_m, measures.Bottom_m, measures.FruitHeight_m = leaves.Top_m, leaves.Bottom_m, stand.FruitHeight()
	} else {
		measures.Top_m += stand.Top - was.Top
	}
	other.stand = &measured{stand, measures, leafArea(stand)}
	change := before.Change(stand)
	var err error
	if other.model, err = l.model.Sketch(change, pace); err != nil {
		return nil, err
	}
	other.sketched = newSketched(l.model, other.model, heat.FloorOf(s.Site.Floor).Albedo)
	other.sketched.change = change
	return &other, nil
}

// isBunch says whether two bunches are the same, wherever they hang.
func isBunch(a, b training.Bunch) bool {
	a.Centre = b.Centre
	return a == b
}

func newSketched(before, after *light.Model, albedo float64) *sketched {
	faces := len(before.Faces)
	k := &sketched{
		before: before, albedo: albedo, leaving: make([]float64, before.Strips),
		leaves: make([]float64, faces), sky: make([]light.Broad, faces), floor: make([]light.Broad, 0, faces*before.Strips),
	}
	for f := range k.leaves {
		_, _, _, saw := before.Views(f)
		_, _, _, sees := after.Views(f)
		left := 1.0
		if saw.Mean > 0 {
			// Where leaves go, the others get more light: about half of what a face no longer sees of them comes back
			// (scattered light on the forms of the catalogue, with and without the leaves of the fruit zone).
			left = math.Sqrt(math.Max(sees.Mean, 0) / saw.Mean)
		}
		k.leaves[f] = left
		skyBefore, floorBefore := before.LightViews(f)
		skyAfter, floorAfter := after.LightViews(f)
		k.sky[f] = skyAfter.Plus(skyBefore.Times(-left))
		for strip := range floorAfter {
			k.floor = append(k.floor, floorAfter[strip].Plus(floorBefore[strip].Times(-left)))
		}
	}
	return k
}

// turn makes of the light on faces in the lean that in its sketch.
func (k *sketched) turn(sky light.Sky, at *answer) {
	if k == nil {
		return
	}
	clear(k.leaving)
	addScaled(k.leaving, at.strips, k.albedo)
	strips := len(k.leaving)
	for f, left := range k.leaves {
		short := at.short[f].Times(left)
		short.AddScaled(&k.sky[f], sky.Diffuse)
		short.AddOf(k.floor[f*strips:(f+1)*strips], k.leaving)
		at.short[f], at.near[f] = short, at.near[f].Times(left)
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
	l.sketched.turn(sky, &at)
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
