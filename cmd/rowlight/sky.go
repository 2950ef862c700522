package main

import (
	"encoding/json"
	"io"
	"time"

	"github.com/spf13/cobra"

	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

// skyCommand is the flags of rowlight sky.
type skyCommand struct {
	place       place
	output      output
	elevation_m float64
	atmosphere  sky.Atmosphere
}

// newSky makes rowlight sky.
func newSky() *cobra.Command {
	var flags skyCommand
	command := &cobra.Command{
		Use:   "sky --lat DEG --lon DEG --date YYYY-MM-DD",
		Short: "Sunlight of one clear day: GHI, DNI, DHI",
		Long: "Lists the sunlight of a clear sky over one day by Bird & Hulstrom 1981: global and diffuse on the\n" +
			"horizontal (GHI, DHI), direct on a plane that faces the sun (DNI).",
		Args: cobra.NoArgs,
	}
	p, a := &flags.place, &flags.atmosphere
	p.addFlags(command)
	p.like(&flags.elevation_m, "elevation_m", "/site/elevation_m", 0)
	p.like(&a.Ozone_cm, "ozone_cm", "/weather/ozone_cm")
	p.like(&a.Water_cm, "water_cm", "/weather/water_cm")
	p.like(&a.AOD380, "aod380", "/weather/aod380")
	p.like(&a.AOD500, "aod500", "/weather/aod500")
	p.add(&a.Albedo, "albedo", "share of sunlight that the land around sends back to the sky", 0.2, numberFlag{min: 0, max: 1})
	flags.output.addFlags(command)
	command.RunE = func(command *cobra.Command, _ []string) error {
		if err := faultsOf("sky", flags.place.checkPlace()); err != nil {
			return err
		}
		return flags.output.write(command.OutOrStdout(), flags.write)
	}
	return command
}

// skyRow is the sunlight at one moment.
type skyRow struct {
	Time          time.Time `json:"time"`
	Elevation_deg float64   `json:"elevation_deg"`
	GHI_Wm2       float64   `json:"ghi_Wm2"`
	DNI_Wm2       float64   `json:"dni_Wm2"`
	DHI_Wm2       float64   `json:"dhi_Wm2"`
}

// compute finds the sunlight of the day.
func (c skyCommand) compute() []skyRow {
	p, atmosphere := c.place, c.atmosphere
	atmosphere.Pressure_Pa = sky.Pressure(c.elevation_m)
	outside := sun.ExtraterrestrialNormal(p.day().YearDay())
	var rows []skyRow
	for _, moment := range p.moments() {
		elevation := sun.At(p.latitude_deg, p.longitude_deg, moment).Elevation_deg
		light := sky.Bird(90-elevation, outside, atmosphere)
		rows = append(rows, skyRow{moment, elevation, light.GHI, light.DNI, light.DHI})
	}
	return rows
}

// write writes the day in the chosen format.
func (c skyCommand) write(w io.Writer) error {
	day := c.compute()
	if c.output.format.value == "json" {
		return json.NewEncoder(w).Encode(day)
	}
	rows := sheet{columns: []column{
		{"time", "time", "", 0},
		{"elevation_deg", "elevation_deg", "", 3},
		{"ghi_Wm2", "ghi_Wm2", "", 1},
		{"dni_Wm2", "dni_Wm2", "", 1},
		{"dhi_Wm2", "dhi_Wm2", "", 1},
	}}
	for _, row := range day {
		rows.rows = append(rows.rows, []any{row.Time, row.Elevation_deg, row.GHI_Wm2, row.DNI_Wm2, row.DHI_Wm2})
	}
	if c.output.format.value == "csv" {
		return rows.writeCSV(w)
	}
	return rows.writeTable(w, c.output.system())
}
