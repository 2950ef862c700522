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

// newAnswers asks the scattering of a stand at the sun of each instant. Model has the faces, and the factor already.
func newAnswers(s scenario.Scenario, o scenario.Option, stand *measured, model *light.Model, factor float64, course weather.Series, pace func() error) (*answers, error) {
	settings := lightSettings(s, o)
	settings.Clumping *= factor
	scattering, err := newScattering(stand, model, settings, heat.FloorOf(s.Site.Floor).Albedo, pace)
	if err != nil {
		return nil, err
	}
	ask := func(sky light.Sky) answer {
		at := light.Instant{Short: make([]light.Broad, len(model.Faces))}
		given := scattering.add(model, sky, &at)
		return answer{at.Short, given}
	}
	a := &answers{stripSky: scattering.stripSky, openness: scattering.openness, beam: make([]answer, len(course.Instants))}
	up := skyInRow(&course.Instants[0], o.Rows)
	a.sky = ask(light.Sky{Sun: up.Sun, Diffuse: 1})
	for k := range course.Instants {
		if err := pace(); err != nil {
			return nil, err
		}
		if sky := skyInRow(&course.Instants[k], o.Rows); sky.Beam > 0 {
			a.beam[k] = ask(light.Sky{Sun: sky.Sun, Beam: 1})
		}
	}
	return a, nil
}

// daylight is the light of the day of a draw on the faces of a model. Its arrays are reused by the next draw.
func (t *thinOption) daylight(course weather.Series, values spread.Draw, model *light.Model) *daylight {
	n := len(course.Instants)
	if len(t.day.instants) != n {
		t.day = daylight{skies: make([]light.Sky, n), instants: make([]light.Instant, n), scatters: make([]scattered, n)}
		for k := range t.day.scatters {
			t.day.scatters[k] = newAnswer(model).scattered
		}
	}
	weights := t.between.Weights(values[spread.LeafArea] * values[spread.Clumping])
	day := t.day
	day.stripSky = make([]float64, model.Strips)
	for i, a := range t.answers {
		addScaled(day.stripSky, a.stripSky, weights[i])
		// Light that leaves catch is spread over more of them.
		day.openness += weights[i] * a.openness / values[spread.LeafArea]
	}
	even := newAnswer(model)
	for i, a := range t.answers {
		even.addScaled(&a.sky, weights[i])
	}
	for k := range day.instants {
		sky := skyInRow(&course.Instants[k], t.option.Rows)
		day.skies[k] = sky
		at, sum := &day.instants[k], answer{scattered: day.scatters[k]}
		model.At(sky, at)
		sum.short = at.Short // which holds the light of the sky
		sum.clear()
		sum.addScaled(&even, sky.Diffuse)
		if sky.Beam > 0 {
			for i, a := range t.answers {
				sum.addScaled(&a.beam[k], weights[i]*sky.Beam)
			}
		}
		sum.leafTaken /= values[spread.LeafArea]
		day.scatters[k] = sum.scattered
	}
	return &day
}

// newAnswer is no light on the faces of a model.
func newAnswer(model *light.Model) answer {
	faces := len(model.Faces)
	return answer{make([]light.Broad, faces), scattered{strips: make([]float64, model.Strips), near: make([]light.Broad, faces)}}
}

// clear leaves what is scattered onto faces as it is and takes the rest away.
func (a *answer) clear() {
	clear(a.strips)
	clear(a.near)
	a.leafTaken = 0
}

// addScaled adds an answer times a factor.
func (a *answer) addScaled(other *answer, factor float64) {
	if factor == 0 {
		return
	}
	for f := range other.short {
		a.short[f].AddScaled(&other.short[f], factor)
		a.near[f].AddScaled(&other.near[f], factor)
	}
	addScaled(a.strips, other.strips, factor)
	a.leafTaken += factor * other.leafTaken
}

// addScaled adds values times a factor.
func addScaled(to, values []float64, factor float64) {
	for i, value := range values {
		to[i] += factor * value
	}
}
