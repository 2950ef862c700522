package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
	"rowlight/sim/weather"
	"rowlight/sim/words"
)

// weatherCommand is the flags of rowlight weather.
type weatherCommand struct {
	output   output
	file     weatherFile
	scenario string
	guess    bool
}

// newWeather makes rowlight weather.
func newWeather() *cobra.Command {
	var flags weatherCommand
	command := &cobra.Command{
		Use:   "weather FILE",
		Short: "What a weather file holds: place, hours, days, and whether its clock fits the sun",
		Long: "Reads a weather file (EPW, TMY3, NASA POWER, a logger's table, monthly normals) and tells what is in it. The\n" +
			"table shows a summary, csv lists the hours as they are used, json both. A logger's table needs --mapping;\n" +
			"--guess writes a first one, to be checked. A table or normals take their place from --scenario.",
		Args: cobra.ExactArgs(1),
	}
	flags.output.addFlags(command)
	flags.output.addUnits(command)
	flags.file.addMapping(command.Flags())
	command.Flags().StringVar(&flags.scenario, "scenario", "", "scenario whose site is the place of a logger or of normals")
	command.Flags().BoolVar(&flags.guess, "guess", false, "write a mapping of a logger's table as JSON, guessed from its beginning")
	command.RunE = func(command *cobra.Command, args []string) error { return flags.run(command, args[0]) }
	return command
}

// run reads the file and writes what it holds.
func (c weatherCommand) run(command *cobra.Command, path string) error {
	s := scenario.Default()
	if c.scenario != "" {
		var err error
		if s, err = readScenario(command, c.scenario); err != nil {
			return err
		}
	}
	if c.guess {
		return c.writeGuess(command.OutOrStdout(), path, s.Site)
	}
	c.file.file = path
	file, err := c.file.read(s, command.ErrOrStderr())
	if err != nil {
		return err
	}
	if c.scenario == "" && !file.Placed() {
		return fmt.Errorf("%s does not say where it is from: give the place with --scenario", path)
	}
	return c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.writeFile(w, file) })
}

// writeGuess writes a guessed mapping.
func (c weatherCommand) writeGuess(stdout io.Writer, path string, site scenario.Site) error {
	opened, err := os.Open(path)
	if err != nil {
		return err
	}
	defer opened.Close()
	sketch, ok := weather.Look(opened, site, "")
	if !ok {
		return &faultsError{path, []scenario.Fault{{Code: "fault.file-no-table"}}}
	}
	return c.output.write(stdout, func(w io.Writer) error {
		out := json.NewEncoder(w)
		out.SetIndent("", "  ")
		return out.Encode(sketch.Mapping)
	})
}

// writeFile writes what a file holds in the chosen format.
func (c weatherCommand) writeFile(w io.Writer, file *weather.File) error {
	switch c.output.format.value {
	case "csv":
		return hoursSheet(file).writeCSV(w)
	case "json":
		return json.NewEncoder(w).Encode(summaryOf(file))
	}
	units := c.output.system()
	fmt.Fprintf(w, "%s: %s", file.Name, file.Format)
	if file.Place != "" {
		fmt.Fprintf(w, ", %s", file.Place)
	}
	fmt.Fprintf(w, "\nlatitude %g°, longitude %g°, %s, UTC%+g\n", file.Latitude_deg, file.Longitude_deg, words.Quantity(file.Elevation_m, "m", 0, units), file.UTCOffset_h)
	days := file.Days()
	fmt.Fprintf(w, "%d hours, %d whole days", len(file.Rows), len(days))
	if len(days) > 0 {
		fmt.Fprintf(w, " from %s to %s", dayName(days[0]), dayName(days[len(days)-1]))
	}
	if hottest, ok := file.Hottest(); ok {
		fmt.Fprintf(w, "; the hottest is %s with %s", dayName(hottest), words.Quantity(hottest.AirMax_C, "degC", 1, units))
	}
	_, err := fmt.Fprintf(w, "\n%s\n", words.Style{Units: units}.Fault(file.Times.Verdict()))
	return err
}

// dayName is a day of a file as year-month-day.
func dayName(day weather.Day) string {
	return fmt.Sprintf("%04d-%02d-%02d", day.Year, day.Month, day.Day)
}

// weatherSummary is a file in JSON.
type weatherSummary struct {
	weather.Head
	Clock weatherClock  `json:"clock"`
	Hours []weatherHour `json:"hours"`
}

// weatherClock is what the light says about the clock.
type weatherClock struct {
	By         string  `json:"by"`         // closure, clear-days, noon; empty where nothing tells
	Ahead_min  float64 `json:"ahead_min"`  // of the sun
	Unsure_min float64 `json:"unsure_min"` // of clear days
	Shifted    bool    `json:"shifted"`
}

// weatherHour is one hour; a missing value is absent.
type weatherHour struct {
	Date         string   `json:"date"`
	Hour         int      `json:"hour"` // that ends at Hour:00
	Air_C        *float64 `json:"air_C,omitempty"`
	Dew_C        *float64 `json:"dewPoint_C,omitempty"`
	Humidity_pct *float64 `json:"humidity_pct,omitempty"`
	GHI_Wm2      *float64 `json:"ghi_Wm2,omitempty"`
	DNI_Wm2      *float64 `json:"dni_Wm2,omitempty"`
	DHI_Wm2      *float64 `json:"dhi_Wm2,omitempty"`
	Longwave_Wm2 *float64 `json:"longwave_Wm2,omitempty"`
	Wind_ms      *float64 `json:"wind_ms,omitempty"`
	WindFrom_deg *float64 `json:"windFrom_deg,omitempty"`
}

func summaryOf(file *weather.File) weatherSummary {
	t := file.Times
	s := weatherSummary{
		Head:  file.Head,
		Clock: weatherClock{By: string(t.By), Unsure_min: t.Unsure_min, Shifted: t.Shifted()},
	}
	if t.By != "" {
		s.Clock.Ahead_min = t.Shift_min()
	}
	for _, row := range file.Rows {
		s.Hours = append(s.Hours, weatherHour{
			dateOf(row), row.Hour, known(row.Air_C), known(row.Dew_C), known(row.Humidity_pct), known(row.GHI), known(row.DNI), known(row.DHI),
			known(row.Longwave_Wm2), known(row.Wind_ms), known(row.WindFrom_deg),
		})
	}
	return s
}

func dateOf(row weather.Row) string {
	return fmt.Sprintf("%04d-%02d-%02d", row.Year, row.Month, row.Day)
}

// known is a value, or nothing where it is missing.
func known(value float64) *float64 {
	if math.IsNaN(value) {
		return nil
	}
	return &value
}

// hoursSheet lists the hours of a file; a missing value is an empty cell.
func hoursSheet(file *weather.File) sheet {
	table := sheet{columns: []column{
		{"date", "", "", 0}, {"hour", "", "", 0}, {"air_C", "", "", 0}, {"dewPoint_C", "", "", 0}, {"humidity_pct", "", "", 0}, {"ghi_Wm2", "", "", 0},
		{"dni_Wm2", "", "", 0}, {"dhi_Wm2", "", "", 0}, {"longwave_Wm2", "", "", 0}, {"wind_ms", "", "", 0}, {"windFrom_deg", "", "", 0},
	}}
	for _, row := range file.Rows {
		cells := []any{dateOf(row), row.Hour}
		for _, value := range []float64{
			row.Air_C, row.Dew_C, row.Humidity_pct, row.GHI, row.DNI, row.DHI, row.Longwave_Wm2, row.Wind_ms, row.WindFrom_deg,
		} {
			if math.IsNaN(value) {
				cells = append(cells, "")
			} else {
				cells = append(cells, value)
			}
		}
		table.rows = append(table.rows, cells)
	}
	return table
}
