package sim

import (
	"rowlight/sim/heat"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/sky"
	"rowlight/sim/sun"
	"rowlight/sim/weather"
)

// daylight is the light of one day on one stand: what a change of air or wind leaves as it is.
type daylight struct {
	skies       []light.Sky
	instants    []light.Instant // direct, sky, floor and leaf light
	scatters    []scattered
	stripSky    []float64 // share of the sky's light that reaches each strip of floor
	intercepted float64   // share of the day's PAR that does not reach the floor [0–1]
	openness    float64   // sky light caught by the leaves per leaf area, for a sky of unit irradiance
}

// daylight finds the light of the day, or takes the one found from the same sun and sky.
func (e *Engine) daylight(s scenario.Scenario, o scenario.Option, stand *measured, model *light.Model, lightKey, nettedKey string, course weather.Series, pace func() error) (*daylight, error) {
	skies := skiesOver(course, o)
	scattering, scatterKey, err := e.scattering(s, o, stand, model, lightKey, pace)
	if err != nil {
		return nil, err
	}
	key, err := keyOf(scatterKey, nettedKey, skies)
	if err != nil {
		return nil, err
	}
	return e.days.get(key, func() (*daylight, error) { return daylightOf(skies, model, scattering, pace) })
}

// daylightOf is the light of some skies on a stand.
func daylightOf(skies []light.Sky, model *light.Model, scattering *scattering, pace func() error) (*daylight, error) {
	day := &daylight{
		skies: skies, instants: make([]light.Instant, len(skies)),
		scatters: make([]scattered, len(skies)), openness: scattering.openness,
		stripSky: scattering.stripSky,
	}
	for k, sky := range skies {
		if err := pace(); err != nil {
			return nil, err
		}
		model.At(sky, &day.instants[k])
		day.scatters[k] = scattering.add(model, sky, &day.instants[k])
	}
	day.intercepted = intercepted(day.scatters)
	return day, nil
}

// skiesOver are the skies of a course over the rows of an option.
func skiesOver(course weather.Series, o scenario.Option) []light.Sky {
	skies, over := make([]light.Sky, len(course.Instants)), roofOf(o)
	for k := range skies {
		skies[k] = over.sky(&course.Instants[k], o.Rows)
	}
	return skies
}

// scattering prepares the scattered light of a stand, or takes the one prepared from the same inputs.
func (e *Engine) scattering(s scenario.Scenario, o scenario.Option, stand *measured, model *light.Model, lightKey string, pace func() error) (*scattering, string, error) {
	albedo, leaf := heat.FloorOf(s.Site.Floor).Albedo, leafScatter(o)
	key, err := keyOf(lightKey, albedo, leaf)
	if err != nil {
		return nil, "", err
	}
	made, err := e.scatterings.get(key, func() (*scattering, error) {
		return newScattering(stand, model, lightSettings(s, o), albedo, leaf, pace)
	})
	return made, key, err
}

// skyInRow puts the light of an instant into the row frame: circumsolar light follows the beam
// (Hay & Davies 1980).
func skyInRow(at *weather.Instant, rows scenario.Rows) light.Sky {
	toSun := at.Sun.Vector()
	split := sky.HayDavies(at.Irradiance, at.Extraterrestrial_Wm2, toSun[2])
	return light.Sky{
		Sun:     sun.InRow(toSun, rows.Azimuth_deg),
		Beam:    at.DNI + split.Circumsolar_Wm2,
		Diffuse: split.Even_Wm2,
	}
}

// intercepted is the share of a day's PAR that leaves, wood and fruit keep from the floor, or send back to the sky [0–1];
// 0 for a day without light. Under a net over all rows it is a share of what comes through.
func intercepted(instants []scattered) float64 {
	falls, floor := 0.0, 0.0
	for k := range instants {
		falls += instants[k].falls
		floor += instants[k].onFloor
	}
	if falls <= 0 {
		return 0
	}
	return 1 - floor/falls
}
