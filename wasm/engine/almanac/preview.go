package almanac

import (
	"rowlight/sim/scenario"
	"rowlight/sim/weather"
)

// Preview is one clear day of a file, to judge it by before it is used: at every quarter of an hour.
type Preview struct {
	Day           Day       `json:"day"`
	Hour_h        []float64 `json:"hour_h"`
	Air_C         []float64 `json:"air_C"`
	GHI_Wm2       []float64 `json:"ghi_Wm2"`
	Elevation_deg []float64 `json:"elevation_deg"` // of the sun
}

// previewOf is the clearest day of a file.
func previewOf(file *weather.File) *Preview {
	day, hours, ok := file.ClearDay()
	if !ok {
		return nil
	}
	s := scenario.Default()
	file.PutPlace(&s)
	s.Weather.Date, _ = file.DateOf(day.Month, day.Day)
	s.Weather.Hours = hours
	const steps = 96
	p := &Preview{Day: listed(day)}
	for i := range steps + 1 {
		p.Hour_h = append(p.Hour_h, 24*float64(i)/steps)
	}
	course, err := weather.Course(s, p.Hour_h)
	if err != nil {
		return nil
	}
	for _, at := range course.Instants {
		p.Air_C = append(p.Air_C, at.Air_C)
		p.GHI_Wm2 = append(p.GHI_Wm2, at.GHI)
		p.Elevation_deg = append(p.Elevation_deg, at.Sun.Elevation_deg)
	}
	return p
}

// Table is a table of readings whose mapping is a guess, to be confirmed.
type Table struct {
	Name       string          `json:"name"`
	Mapping    weather.Mapping `json:"mapping"`
	Names      []string        `json:"names"` // of the columns
	Rows       [][]string      `json:"rows"`  // the first readings
	Quantities []Quantity      `json:"quantities"`
}

// Quantity is what a column may hold.
type Quantity struct {
	Name  string   `json:"name"`
	Units []string `json:"units"` // that it is read in; none of a part of a time
}

func tableOf(name string, sketch weather.Sketch) *Table {
	t := &Table{Name: name, Mapping: sketch.Mapping, Names: sketch.Names, Rows: sketch.Rows}
	for _, quantity := range weather.Quantities() {
		units := weather.Units(quantity)
		if units == nil {
			units = []string{}
		}
		t.Quantities = append(t.Quantities, Quantity{quantity, units})
	}
	return t
}
