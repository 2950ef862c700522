package verify

import (
	"math"
	"time"

	"rowlight/sim/sun"
)

// sunChecks compare sim/sun.
func sunChecks() []check {
	var list []check
	for _, name := range []string{"solarpos_1", "solarpos_2", "solarpos_3"} {
		list = append(list, check{
			table: name, compares: "elevation, azimuth·cos(elevation)", allowed: 0.03, unit: "deg", cites: "NREL SPA",
			asks:    []column{latitude, longitude, moment("utc", time.RFC3339)},
			answers: numbers("true_elev_deg", "azimuth_deg"),
			begin:   each(comparePosition),
		})
	}
	return append(list,
		check{
			table: "suntimes", compares: "rise, transit, set", allowed: 60, unit: "s", cites: "Root-found",
			asks:    []column{latitude, longitude, moment("local_date", time.DateOnly)},
			answers: events(),
			begin:   each(compareEvents),
		},
		check{
			table: "airmass", compares: "Kasten 1966; Kasten & Young 1989", allowed: 1e-3, unit: "%", cites: "Kasten",
			asks:    []column{number("zenith_deg", 0, 90)},
			answers: numbers("kasten_1966", "kasten_young_1989"),
			begin: each(func(r row, f *found) {
				f.ratio(r, "kasten_1966", sun.AirMassKasten1966(r.at("zenith_deg")))
				f.ratio(r, "kasten_young_1989", sun.AirMassKastenYoung1989(r.at("zenith_deg")))
			}),
		},
		check{
			table: "extraterrestrial", compares: "normal irradiance outside the air", allowed: 0.1, unit: "%", cites: "Spencer",
			asks:    []column{whole("doy", 1, 366)},
			answers: numbers("E0n_spencer"),
			begin: each(func(r row, f *found) {
				f.ratio(r, "E0n_spencer", sun.ExtraterrestrialNormal(int(r.at("doy"))))
			}),
		},
	)
}

// The columns of a site.
var latitude, longitude = number("lat_deg", -90, 90), number("lon_deg", -180, 180)

// comparePosition compares where the sun stands. An error in azimuth counts by the arc that it makes in the sky.
func comparePosition(r row, f *found) {
	at, _ := r.moment("utc", time.RFC3339)
	got := sun.At(r.at("lat_deg"), r.at("lon_deg"), at)
	f.near(r, "true_elev_deg", got.Elevation_deg)
	turn := math.Remainder(got.Azimuth_deg-r.at("azimuth_deg"), 360)
	f.off(r, "azimuth_deg", got.Azimuth_deg, math.Abs(turn)*math.Cos(r.at("true_elev_deg")*math.Pi/180))
}

// The events of suntimes, and what stands in their place where the sun stays up or down.
var (
	eventColumns = []string{"sunrise_utc", "transit_utc", "sunset_utc"}
	polarWords   = []string{"polar-" + sun.PolarDay, "polar-" + sun.PolarNight}
)

// events are the columns of the events.
func events() (list []column) {
	for _, name := range eventColumns {
		list = append(list, moment(name, time.RFC3339, polarWords...))
	}
	return list
}

// compareEvents compares when the sun rises, crosses the meridian and sets. The table names days by local mean solar time.
func compareEvents(r row, f *found) {
	date, _ := r.moment("local_date", time.DateOnly)
	events := sun.DayOf(r.at("lat_deg"), r.at("lon_deg"), date, r.at("lon_deg")/15)
	for i, got := range []time.Time{events.Rise, events.Transit, events.Set} {
		column := eventColumns[i]
		want, ok := r.moment(column, time.RFC3339)
		switch {
		case ok && !got.IsZero():
			f.moment(r, column, got, want)
		case ok:
			f.state(r, column, "polar-"+events.Polar)
		case got.IsZero() || i == 1: // a table may name the state for the transit too
			f.state(r, column, "polar-"+events.Polar)
		default:
			f.state(r, column, got.UTC().Format(time.RFC3339))
		}
	}
}
