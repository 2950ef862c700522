package main

import (
	"encoding/json"
	"io"
	"math"

	"github.com/go-gl/mathgl/mgl64"
	"github.com/spf13/cobra"

	"rowlight/sim/heat"
	"rowlight/sim/scenario"
	"rowlight/sim/sky"
	"rowlight/sim/words"
)

// berryCommand is the flags of rowlight berry: a berry on open ground under sun and sky.
type berryCommand struct {
	numbers
	output output

	air_C, dewPoint_C, wind_ms, elevation_m float64
	dni_Wm2, dhi_Wm2, sunElevation_deg      float64
	albedo, floor_C, longwave_Wm2           float64
	diameter_mm, absorptance, compactness   float64
	transpiration_Wm2                       float64
}

// newBerry makes rowlight berry.
func newBerry() *cobra.Command {
	var flags berryCommand
	command := &cobra.Command{
		Use:   "berry",
		Short: "One berry at rest under sun and sky: its temperatures and heat flows",
		Long: "Computes the steady balance of one berry above open ground, with conduction inside it: the poles under the sun\n" +
			"and opposite, the mean, the hottest point, and each heat flow averaged over its surface.",
		Args: cobra.NoArgs,
	}
	flags.addFlags(command)
	command.RunE = func(command *cobra.Command, _ []string) error {
		if err := faultsOf("berry", flags.check()); err != nil {
			return err
		}
		if !command.Flags().Changed("floor_C") {
			flags.floor_C = flags.air_C
		}
		return flags.output.write(command.OutOrStdout(), flags.write)
	}
	return command
}

// addFlags gives the command its flags. A bright calm afternoon is what they start from.
func (c *berryCommand) addFlags(command *cobra.Command) {
	c.command = command
	hour := "/weather/hours/0/"
	c.like(&c.air_C, "air_C", hour+"air_C", 35)
	c.like(&c.dewPoint_C, "dewPoint_C", hour+"dewPoint_C", 10)
	c.like(&c.wind_ms, "wind_ms", hour+"wind_ms", 1)
	command.Flags().Lookup("wind_ms").Usage = "wind speed at the berry"
	c.like(&c.elevation_m, "elevation_m", "/site/elevation_m", 0)
	c.like(&c.dni_Wm2, "dni_Wm2", hour+"dni_Wm2", 850)
	c.like(&c.dhi_Wm2, "dhi_Wm2", hour+"dhi_Wm2", 100)
	c.add(&c.sunElevation_deg, "sunElevation_deg", "elevation of the sun", 45, numberFlag{min: 0, max: 90, unit: "deg"})
	c.add(&c.albedo, "albedo", "share of sunlight that the ground sends back", 0.2, numberFlag{min: 0, max: 1})
	c.add(&c.floor_C, "floor_C", "temperature of the ground; that of the air unless given", 0, numberFlag{min: -60, max: 90, unit: "degC"})
	c.add(&c.longwave_Wm2, "longwave_Wm2", "sky longwave on the horizontal; 0 takes that of a clear sky by Brutsaert 1975", 0, numberFlag{min: 0, max: 700, unit: "W/m2"})
	c.like(&c.diameter_mm, "diameter_mm", "/fruit/diameter_mm")
	c.add(&c.absorptance, "absorptance", "share of sunlight that the skin absorbs", heat.RedAbsorptance, numberFlag{min: 0, max: 1})
	c.like(&c.compactness, "compactness", "/fruit/compactness", 0)
	c.add(&c.transpiration_Wm2, "transpiration_Wm2", "latent heat that leaves the skin", 0, numberFlag{min: 0, max: 100, unit: "W/m2"})
	c.output.addFlags(command)
	c.output.addUnits(command)
}

// compute finds the berry at rest.
func (c berryCommand) compute() heat.Steady {
	up := mgl64.Vec3{0, 0, 1}
	down := up.Mul(-1)
	sin, cos := math.Sincos(c.sunElevation_deg * math.Pi / 180)
	global := c.dhi_Wm2 + c.dni_Wm2*sin
	longwave := c.longwave_Wm2
	if longwave == 0 {
		longwave = sky.Brutsaert(c.air_C, math.Min(c.dewPoint_C, c.air_C))
	}
	berry := heat.NewBerry(scenario.Fruit{Diameter_mm: c.diameter_mm, Compactness: c.compactness}, 0)
	berry.Absorptance = c.absorptance
	load := heat.Load{
		Beam_Wm2:          c.dni_Wm2,
		Sun:               mgl64.Vec3{cos, 0, sin},
		Short:             heat.Hemisphere(c.dhi_Wm2, up).Add(heat.Hemisphere(c.albedo*global, down)),
		LongNet:           heat.Longwave(heat.Hemisphere(1, up), heat.Hemisphere(1, down), heat.Broad{}, longwave, heat.Emitted(c.floor_C), 0, c.air_C, berry.Emissivity),
		Transpiration_Wm2: c.transpiration_Wm2,
	}
	return berry.Steady(load, heat.Around{Air_C: c.air_C, Dew_C: c.dewPoint_C, Wind_ms: c.wind_ms, Pressure_Pa: sky.Pressure(c.elevation_m)})
}

// quantity is one line of the answer.
type quantity struct {
	key, meaning, unit string
	decimals           int
	value              float64
}

// quantities lists temperatures, then flows into the berry as positive, then coefficients.
func quantities(s heat.Steady) []quantity {
	return []quantity{
		{"litPole_C", "sunlit pole", "degC", 2, s.Lit_C},
		{"shadedPole_C", "shaded pole", "degC", 2, s.Shaded_C},
		{"mean_C", "mean", "degC", 2, s.Mean_C},
		{"hottest_C", "hottest point", "degC", 2, s.Hottest_C},
		{"beam_Wm2", "direct sun taken in", "W/m2", 1, s.FluxBeam},
		{"diffuse_Wm2", "diffuse sunlight taken in", "W/m2", 1, s.FluxDiffuse},
		{"surroundings_Wm2", "longwave of sky and ground, over that at air temperature", "W/m2", 1, s.FluxFrom},
		{"emission_Wm2", "longwave given off for being warmer than the air", "W/m2", 1, 0 - s.FluxEmission},
		{"convection_Wm2", "given to the air", "W/m2", 1, 0 - s.FluxConvection},
		{"transpiration_Wm2", "latent heat given off", "W/m2", 1, 0 - s.FluxTranspiration},
		{"convection_Wm2K", "coefficient of convection", "W/m²/K", 2, s.Convective},
		{"radiation_Wm2K", "coefficient of longwave", "W/m²/K", 2, s.Radiative},
	}
}

// write writes the answer in the chosen format.
func (c berryCommand) write(w io.Writer) error {
	answer := quantities(c.compute())
	switch c.output.format.value {
	case "json":
		object := map[string]float64{}
		for _, q := range answer {
			object[q.key] = q.value
		}
		return json.NewEncoder(w).Encode(object)
	case "csv":
		line := sheet{rows: [][]any{{}}}
		for _, q := range answer {
			line.columns = append(line.columns, column{key: q.key})
			line.rows[0] = append(line.rows[0], q.value)
		}
		return line.writeCSV(w)
	}
	lines := sheet{columns: []column{{title: "berry at rest"}, {title: "value"}}}
	for _, q := range answer {
		lines.rows = append(lines.rows, []any{q.meaning, words.Quantity(q.value, q.unit, q.decimals, c.output.system())})
	}
	return lines.writeTable(w, c.output.system())
}
