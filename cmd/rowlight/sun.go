package main

import (
	"encoding/json"
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"rowlight/sim/sun"
)

// sunCommand is the flags of rowlight sun.
type sunCommand struct {
	place  place
	output output
}

// newSun makes rowlight sun.
func newSun() *cobra.Command {
	var flags sunCommand
	command := &cobra.Command{
		Use:   "sun --lat DEG --lon DEG --date YYYY-MM-DD",
		Short: "Where the sun stands over one day, and when it rises and sets",
		Long: "Lists elevation and azimuth of the sun over one day: true and geometric, without refraction; azimuth clockwise\n" +
			"from true north. Rise and set are those of the almanacs: the centre of the sun 50' below the horizon.",
		Args: cobra.NoArgs,
	}
	flags.place.addFlags(command)
	flags.output.addFlags(command)
	command.RunE = func(command *cobra.Command, _ []string) error {
		if err := faultsOf("sun", flags.place.checkPlace()); err != nil {
			return err
		}
		return flags.output.write(command.OutOrStdout(), flags.write)
	}
	return command
}

// sunRow is the sun at one moment.
type sunRow struct {
	Time          time.Time `json:"time"`
	Elevation_deg float64   `json:"elevation_deg"`
	Azimuth_deg   float64   `json:"azimuth_deg"`
}

// sunDay is the sun over one day; rise and set are missing where polar says why.
type sunDay struct {
	Latitude_deg  float64    `json:"latitude_deg"`
	Longitude_deg float64    `json:"longitude_deg"`
	UTCOffset_h   float64    `json:"utcOffset_h"`
	Date          string     `json:"date"`
	Rows          []sunRow   `json:"rows"`
	Rise          *time.Time `json:"rise,omitempty"`
	Transit       time.Time  `json:"transit"`
	Set           *time.Time `json:"set,omitempty"`
	Polar         string     `json:"polar,omitempty"`
}

// compute finds the sun of the day.
func (c sunCommand) compute() sunDay {
	p := c.place
	events := sun.DayOf(p.latitude_deg, p.longitude_deg, p.day(), p.utcOffset_h)
	day := sunDay{
		Latitude_deg: p.latitude_deg, Longitude_deg: p.longitude_deg, UTCOffset_h: p.utcOffset_h, Date: p.date,
		Transit: events.Transit.Round(time.Second), Polar: events.Polar,
	}
	if events.Polar == "" {
		rise, set := events.Rise.Round(time.Second), events.Set.Round(time.Second)
		day.Rise, day.Set = &rise, &set
	}
	for _, moment := range p.moments() {
		at := sun.At(p.latitude_deg, p.longitude_deg, moment)
		day.Rows = append(day.Rows, sunRow{moment, at.Elevation_deg, at.Azimuth_deg})
	}
	return day
}

// write writes the day in the chosen format.
func (c sunCommand) write(w io.Writer) error {
	day := c.compute()
	rows := sheet{columns: []column{
		{"time", "time", "", 0},
		{"elevation_deg", "elevation_deg", "", 3},
		{"azimuth_deg", "azimuth_deg", "", 3},
	}}
	for _, row := range day.Rows {
		rows.rows = append(rows.rows, []any{row.Time, row.Elevation_deg, row.Azimuth_deg})
	}
	switch c.output.format.value {
	case "json":
		return json.NewEncoder(w).Encode(day)
	case "csv":
		return rows.writeCSV(w)
	}
	if err := rows.writeTable(w, c.output.system()); err != nil {
		return err
	}
	fmt.Fprintf(w, "\n%s", day.events())
	return nil
}

// events writes rise, transit and set for reading.
func (d sunDay) events() string {
	transit := fmt.Sprintf("transit  %s\n", d.Transit.Format(time.RFC3339))
	if d.Polar != "" {
		return fmt.Sprintf("%sno rise and no set: polar %s\n", transit, d.Polar)
	}
	return fmt.Sprintf("rise     %s\n%sset      %s\n", d.Rise.Format(time.RFC3339), transit, d.Set.Format(time.RFC3339))
}
