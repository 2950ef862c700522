package sim

import (
	"fmt"

	"rowlight/sim/canopy"
	"rowlight/sim/growth"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// clumping is the factor on Ω, which light finds for every stand from its own leaves: 1 leaves it as it is.
const clumping = 1.0

// measured is a stand with its measures.
type measured struct {
	*training.Stand
	measures training.Measures
	leafArea float64 // of one period of the row [m²]
}

// leafAreaIndex is the leaf area over the ground of the row.
func (m *measured) leafAreaIndex() float64 { return m.leafArea / (m.Length * m.RowSpacing) }

// Stand grows the vines of an option by its index, as they stand on the day of the scenario. Errors are those of training.Build, with the option's name.
func (e *Engine) Stand(s scenario.Scenario, option int) (*training.Stand, error) {
	s = growth.Grown(s)
	stand, _, err := e.stand(s, s.Options[option])
	if err != nil {
		return nil, err
	}
	return stand.Stand, nil
}

// standKey tells stands apart by their inputs.
func standKey(s scenario.Scenario, o scenario.Option) (string, error) {
	vines, err := vinesKey(s, o)
	if err != nil {
		return "", err
	}
	o = o.On(s.Weather.Date)
	// The stand is the same for every row azimuth: only which side leaves are pulled from depends on it.
	left, right := o.Removed(scenario.Left, s.Site.Latitude_deg), o.Removed(scenario.Right, s.Site.Latitude_deg)
	return keyOf(vines, left, right, o.Leaves.RemovedFrom_m, o.Leaves.RemovedTo_m)
}

// vinesKey tells vines apart whose leaves have not been pulled.
func vinesKey(s scenario.Scenario, o scenario.Option) (string, error) {
	inputs := o.On(s.Weather.Date).WithAfternoonWire(s.Site.Latitude_deg)
	inputs.Name, inputs.Rows.Azimuth_deg = "", 0
	inputs.Cost, inputs.Shade = scenario.Cost{}, scenario.Shade{}
	leaves := &inputs.Leaves
	leaves.Water = "" // leaves hang as they do, thirsty or not
	leaves.RemovedMorning, leaves.RemovedAfternoon, leaves.RemovedFrom_m, leaves.RemovedTo_m = 0, 0, 0, 0
	return keyOf(inputs, s.Seed)
}

// stand builds the stand of an option, or takes the one built from the same inputs.
func (e *Engine) stand(s scenario.Scenario, o scenario.Option) (stand *measured, key string, err error) {
	if key, err = standKey(s, o); err != nil {
		return nil, "", err
	}
	o = o.On(s.Weather.Date)
	stand, err = e.stands.get(key, func() (*measured, error) {
		built, err := training.Build(o, s.Site.Latitude_deg, s.Seed)
		if err != nil {
			return nil, err
		}
		return &measured{built, built.Measure(), leafArea(built)}, nil
	})
	if err != nil {
		return nil, "", fmt.Errorf("option %q: %w", o.Name, err)
	}
	return stand, key, nil
}

// light prepares the light of a stand, or takes the one prepared from the same inputs.
func (e *Engine) light(s scenario.Scenario, o scenario.Option, stand *measured, standKey string, pace func() error) (model *light.Model, key string, err error) {
	settings := lightSettings(s, o)
	if key, err = keyOf(standKey, settings); err != nil {
		return nil, "", err
	}
	model, err = e.lights.get(key, func() (*light.Model, error) { return light.New(stand.Stand, settings, pace) })
	return model, key, err
}

// behind puts nets about the rows of a light model, or takes the one that has them.
func (e *Engine) behind(s scenario.Scenario, o scenario.Option, stand *measured, model *light.Model, lightKey string, pace func() error) (netted *light.Model, key string, err error) {
	nets := about(s, o, stand)
	if len(nets) == 0 {
		return model, lightKey, nil
	}
	if key, err = keyOf(lightKey, nets); err != nil {
		return nil, "", err
	}
	netted, err = e.netted.get(key, func() (*light.Model, error) { return model.Behind(nets, pace) })
	return netted, key, err
}

// lightSettings are the inputs of the light of an option beside its stand.
func lightSettings(s scenario.Scenario, o scenario.Option) light.Settings {
	return light.Settings{Seed: s.Seed, Slope: slopeInRow(s.Site, o.Rows), Clumping: clumping}
}

// slopeInRow is the rise of the ground across and along a row.
func slopeInRow(site scenario.Site, rows scenario.Rows) canopy.Slope {
	if site.Slope_deg == 0 {
		return canopy.Slope{} // without a sign that would tell even ground from even ground
	}
	across, along := site.Rise(rows)
	return canopy.Slope{Across: across, Along: along}
}

// leafArea is the leaf area of one period of the row [m²].
func leafArea(stand *training.Stand) float64 {
	sum := 0.0
	for i := range stand.Leaves {
		sum += stand.Leaves[i].Area
	}
	return sum
}
