package weather

import (
	"fmt"
	"math"

	"rowlight/sim/scenario"
)

// longestSource is how many characters of the source a scenario keeps.
const longestSource = 200

// The ranges that a scenario has for the extremes of a design day; a colder or hotter measured day is
// told by the nearest value, and computed by its hours all the same.
const (
	lowestMax_C, highestMax_C = -10, 55
	lowestMin_C, highestMin_C = -25, 45
	lowestDew_C, highestDew_C = -30, 32
	highestWind_ms            = 20
)

// Put takes a day of the file into a scenario: its 24 hours and date, the place and clock of the file,
// to whose sun the light belongs, and where it comes from. The numbers of a design day become those
// of the hours, so that whoever reads them is not misled; slope, floor and the rest stay. Faults are
// those of Day; when one blocks, the scenario stays as it was.
func (f *File) Put(month, day int, s *scenario.Scenario) []Fault {
	hours, faults := f.Day(month, day)
	if Blocked(faults) {
		return faults
	}
	f.PutPlace(s)
	s.Weather.Date, _ = f.DateOf(month, day)
	s.Weather.Hours = hours
	s.Weather.Source = f.source()
	describe(&s.Weather)
	return faults
}

// PutPlace takes the place and clock of the file into a scenario.
func (f *File) PutPlace(s *scenario.Scenario) {
	s.Site.Latitude_deg, s.Site.Longitude_deg = f.Latitude_deg, f.Longitude_deg
	s.Site.Elevation_m, s.Site.UTCOffset_h = f.Elevation_m, f.UTCOffset_h
}

// source names the file and its place, if it has one.
func (f *File) source() string {
	source := []rune(f.Name)
	if f.Place != "" {
		source = []rune(fmt.Sprintf("%s, %s", f.Name, f.Place))
	}
	return string(source[:min(len(source), longestSource)])
}

// describe sets the numbers of a design day to those of its hours, to a tenth as weather files have
// them: highest and lowest air temperature, mean wind and where most of it comes from, and the mean
// dew point, which a design day cannot have above its lowest air temperature. Without wind the
// direction stays.
func describe(w *scenario.Weather) {
	warmest, coolest := math.Inf(-1), math.Inf(1)
	dew, wind, east, north := 0.0, 0.0, 0.0, 0.0
	for _, hour := range w.Hours {
		warmest, coolest = math.Max(warmest, hour.Air_C), math.Min(coolest, hour.Air_C)
		dew += hour.DewPoint_C / hoursOfDay
		wind += hour.Wind_ms / hoursOfDay
		sine, cosine := math.Sincos(hour.WindFrom_deg * math.Pi / 180)
		east, north = east+hour.Wind_ms*sine, north+hour.Wind_ms*cosine
	}
	w.AirMax_C = tenth(warmest, lowestMax_C, highestMax_C)
	w.AirMin_C = tenth(coolest, lowestMin_C, highestMin_C)
	w.DewPoint_C = tenth(math.Min(dew, coolest), lowestDew_C, highestDew_C)
	w.Wind_ms = tenth(wind, 0, highestWind_ms)
	if east != 0 || north != 0 {
		w.WindFrom_deg = math.Mod(math.Round(math.Atan2(east, north)*180/math.Pi)+360, 360)
	}
}

// tenth rounds to a tenth within a range.
func tenth(value, lowest, highest float64) float64 {
	return math.Min(math.Max(math.Round(value*10)/10, lowest), highest)
}
