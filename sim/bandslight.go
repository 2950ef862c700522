package sim

import (
	"rowlight/sim/heat"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/spread"
	"rowlight/sim/weather"
)

// answer is what leaves and floor make of a unit of light.
type answer struct {
	short []light.Broad // scattered onto each face
	scattered
}

// answers are those of one stand at one factor on its optical depth, to the beam of each instant and to the even sky.
// Scattered light is linear in both.
type answers struct {
	beam     []answer
	sky      answer
	stripSky []float64
	openness float64
}

// thicker is the scattering of a stand with a factor on its optical depth, onto a model that has it already.
func thicker(s scenario.Scenario, o scenario.Option, stand *measured, model *light.Model, factor float64, pace func() error) (*scattering, error) {
	settings := lightSettings(s, o)
	settings.Clumping *= factor
	return newScattering(stand, model, settings, heat.FloorOf(s.Site.Floor).Albedo, leafScatter(o), pace)
}

// ask is the answer of a scattering onto a model to a sky.
func (s *scattering) ask(model *light.Model, sky light.Sky) answer {
	at := light.Instant{Short: make([]light.Broad, len(model.Faces))}
	for f := range at.Short {
		at.Short[f] = model.Glow(f, sky)
	}
	given := s.add(model, sky, &at)
	return answer{at.Short, given}
}

// newAnswers asks a scattering onto a model at the sun of each instant.
func newAnswers(scattering *scattering, model *light.Model, o scenario.Option, course weather.Series, pace func() error) (*answers, error) {
	a := &answers{stripSky: scattering.stripSky, openness: scattering.openness, beam: make([]answer, len(course.Instants))}
	over := roofOf(o)
	a.sky = scattering.ask(model, light.Sky{Sun: over.sky(&course.Instants[0], o.Rows).Sun, Diffuse: 1})
	for k := range course.Instants {
		if err := pace(); err != nil {
			return nil, err
		}
		if sky := over.sky(&course.Instants[k], o.Rows); sky.Beam > 0 {
			a.beam[k] = scattering.ask(model, light.Sky{Sun: sky.Sun, Beam: 1})
		}
	}
	return a, nil
}

// daylight is the light of the day of a draw on the faces of a model. Its arrays are reused by the next draw.
func (t *thinOption) daylight(course weather.Series, values spread.Draw, model *light.Model, shade shades) *daylight {
	n, factor, over := len(course.Instants), values[spread.LeafArea]*values[spread.Clumping], roofOf(t.option)
	if len(t.day.instants) != n {
		t.day = daylight{skies: make([]light.Sky, n), instants: make([]light.Instant, n), scatters: make([]scattered, n)}
		for k := range t.day.instants {
			none := newAnswer(model)
			t.day.instants[k], t.day.scatters[k] = light.Instant{Lit: make([]bool, len(model.Faces)), Short: none.short}, none.scattered
			model.Past(skyInRow(&course.Instants[k], t.option.Rows).Sun, &t.day.instants[k])
		}
	}
	weights := t.between.Weights(factor)
	day := t.day
	day.stripSky = make([]float64, model.Strips)
	even := newAnswer(model)
	for i, a := range t.answers {
		addScaled(day.stripSky, a.stripSky, weights[i])
		// Light that leaves catch is spread over more of them.
		day.openness += weights[i] * a.openness / values[spread.LeafArea]
		even.addFloor(&a.sky, weights[i])
		even.addFaces(&a.sky, weights[i])
	}
	for f := range even.short {
		sky, _ := model.SeenThrough(f)
		even.short[f].AddScaled(&sky, 1)
	}
	for k := range day.instants {
		sky := over.sky(&course.Instants[k], t.option.Rows)
		day.skies[k] = sky
		at := answer{day.instants[k].Short, day.scatters[k]}
		at.clear()
		at.addFloor(&even, sky.Diffuse)
		for i, a := range t.answers {
			at.addFloor(&a.beam[k], weights[i]*sky.Beam)
		}
		at.leafTaken /= values[spread.LeafArea]
		day.scatters[k] = at.scattered
		if k < t.from || k >= t.to {
			continue
		}
		at.addFaces(&even, sky.Diffuse)
		for i, a := range t.answers {
			at.addFaces(&a.beam[k], weights[i]*sky.Beam)
		}
		for f, threshold := range shade[k-t.from] {
			day.instants[k].Lit[f] = sky.Beam > 0 && factor < threshold
		}
	}
	return &day
}

// newAnswer is no light on the faces of a model.
func newAnswer(model *light.Model) answer {
	faces := len(model.Faces)
	return answer{make([]light.Broad, faces), scattered{strips: make([]float64, model.Strips), near: make([]light.Broad, faces)}}
}

// clear takes all light away.
func (a *answer) clear() {
	clear(a.short)
	clear(a.strips)
	clear(a.near)
	a.leafTaken = 0
}

// addFloor adds what floor and leaves receive in an answer, times a factor; addFaces what the faces do.
func (a *answer) addFloor(other *answer, factor float64) {
	if factor != 0 {
		addScaled(a.strips, other.strips, factor)
		a.leafTaken += factor * other.leafTaken
	}
}

func (a *answer) addFaces(other *answer, factor float64) {
	if factor == 0 {
		return
	}
	for f := range other.short {
		a.short[f].AddScaled(&other.short[f], factor)
		a.near[f].AddScaled(&other.near[f], factor)
	}
}

// addScaled adds values times a factor.
func addScaled(to, values []float64, factor float64) {
	for i, value := range values {
		to[i] += factor * value
	}
}
