package weather

import (
	"math"
	"slices"
	"strings"
)

// unit is how a number of a file becomes one of the quantity's own unit: number·scale + shift. A sum over the time of
// the reading is divided by that time.
type unit struct {
	name         string // as mappings write it
	scale, shift float64
	sum          bool // over the time of the reading, for one hour
	also         []string
}

// PAR sensors count photons. Of sunlight 0.46 is in their band, between 0.45 and 0.48 as skies go (Monteith & Unsworth,
// Principles of Environmental Physics), and a joule there has 4.57 µmol (McCree 1972).
const photons_perJ = 0.46 * 4.57 // [µmol/J]

// The units that are read, the quantity's own first.
var (
	temperatureUnits = []unit{
		{name: "°C", scale: 1, also: []string{"c", "degc", "degreesc", "celsius", "deg_c", "ºc"}},
		{name: "°F", scale: 5.0 / 9, shift: -160.0 / 9, also: []string{"f", "degf", "degreesf", "fahrenheit", "deg_f", "ºf"}},
		{name: "K", scale: 1, shift: -273.15, also: []string{"kelvin", "degk"}},
	}
	humidityUnits = []unit{{name: "%", scale: 1, also: []string{"pct", "percent", "%rh"}}, {name: "0–1", scale: 100, also: []string{"0-1", "fraction"}}}
	lightUnits    = []unit{
		{name: "W/m²", scale: 1, also: []string{"w/m2", "w/m^2", "wm-2", "w/sqm", "watts/meter^2", "wattspersquaremeter"}},
		{name: "kW/m²", scale: 1000, also: []string{"kw/m2", "kw/m^2", "kwm-2"}},
		{name: "Wh/m²", scale: 1, sum: true, also: []string{"wh/m2", "wh/m^2", "w-hr/m^2", "whm-2"}},
		{name: "kWh/m²", scale: 1000, sum: true, also: []string{"kwh/m2", "kwh/m^2", "kw-hr/m^2", "kwhm-2"}},
		{name: "MJ/m²", scale: 1e6 / 3600, sum: true, also: []string{"mj/m2", "mj/m^2", "mjm-2", "mj/hr", "mj/m^2/hr", "mj/m2/hr", "mj/m^2/hour"}},
		{name: "kJ/m²", scale: 1e3 / 3600, sum: true, also: []string{"kj/m2", "kj/m^2", "kjm-2"}},
		{name: "µmol/m²/s", scale: 1 / photons_perJ, also: []string{"umol/m2/s", "umol/m^2/s", "µmol/m^2/s", "umol/s/m^2", "umolm-2s-1", "µmolm-2s-1", "µmolm⁻²s⁻¹", "μmol/m²/s", "ppfd", "µe", "ue"}},
	}
	windUnits = []unit{
		{name: "m/s", scale: 1, also: []string{"ms-1", "meters/second", "mps"}},
		{name: "km/h", scale: 1 / 3.6, also: []string{"kmh", "kph", "km/hr"}},
		{name: "mph", scale: 0.44704, also: []string{"mi/h", "mileshour"}},
		{name: "kn", scale: 1852.0 / 3600, also: []string{"kt", "kts", "knots"}},
	}
	directionUnits = []unit{{name: "°", scale: 1, also: []string{"deg", "degrees", "degree", "º"}}}
	tenthsUnits    = []unit{{name: "tenths", scale: 1}, {name: "oktas", scale: 1.25}}
)

// unitsOf are the units that a quantity is read in.
func unitsOf(q quantity) []unit {
	switch q.name {
	case airQuantity.name, dewQuantity.name:
		return temperatureUnits
	case humidityQuantity.name:
		return humidityUnits
	case windQuantity.name:
		return windUnits
	case fromQuantity.name:
		return directionUnits
	case opaqueQuantity.name:
		return tenthsUnits
	}
	return lightUnits
}

// unitOf finds a unit by its name as files write it.
func unitOf(q quantity, name string) (unit, bool) {
	plain := strings.ToLower(strings.NewReplacer(" ", "", "*", "", "·", "").Replace(name))
	for _, u := range unitsOf(q) {
		if plain == strings.ToLower(u.name) || slices.Contains(u.also, plain) {
			return u, true
		}
	}
	return unit{}, false
}

// unitNames are the names of the units of a quantity.
func unitNames(q quantity) []string {
	var names []string
	for _, u := range unitsOf(q) {
		names = append(names, u.name)
	}
	return names
}

// windTo10m is the wind at 10 m over that at a height [m] above short grass (Allen et al. 1998, FAO-56 eq. 47, from
// one height to the other); heights below 0.5 m count as that.
func windTo10m(height_m float64) float64 {
	profile := func(z float64) float64 { return math.Log(67.8*z - 5.42) }
	return profile(10) / profile(math.Max(height_m, lowestSensor_m))
}
