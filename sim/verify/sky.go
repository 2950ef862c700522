package verify

import (
	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/sky"
	"rowlight/sim/sun"
)

// brightest bounds sunlight in a table [W/m²]; more than 1412 never reaches the Earth.
const brightest = 2000

// skyChecks compare sim/sky.
func skyChecks() []check {
	return []check{
		{
			table: "clearsky_bird", compares: "GHI, DNI, DHI", allowed: 0.1, unit: "%", cites: "Bird & Hulstrom",
			asks: []column{
				number("zenith_deg", 0, 90), number("dni_extra", 0, brightest), number("ozone_cm", 0, 10), number("pw_cm", 0, 20),
				number("aod380", 0, 10), number("aod500", 0, 10), number("pressure_pa", 0, 150000), number("albedo", 0, 1),
			},
			answers: numbers("ghi", "dni", "dhi"),
			begin:   each(compareClearSky),
		},
		{
			table: "decomposition", compares: "DNI, DHI of Erbs", allowed: 0.5, unit: "W/m²", cites: "Erbs et al. 1982",
			asks: []column{
				number("ghi", 0, brightest), number("zenith_deg", 0, 180), number("dni_extra_1366.1", 1, brightest),
			},
			answers: numbers("erbs_dni", "erbs_dhi"),
			begin: each(func(r row, f *found) {
				got := sky.Erbs(r.at("ghi"), r.at("zenith_deg"), r.at("dni_extra_1366.1"))
				f.near(r, "erbs_dni", got.DNI)
				f.near(r, "erbs_dhi", got.DHI)
			}),
		},
		{
			table: "transposition_vertical", compares: "beam, isotropic and Hay & Davies sky, ground", allowed: 0.1, unit: "W/m²", cites: "Hay & Davies 1980",
			asks: []column{
				oneOf("facing", "N", "E", "S", "W"), number("zenith_deg", 0, 180), number("sun_azimuth_deg", -360, 360),
				number("dni", 0, brightest), number("dhi", 0, brightest), number("ghi", 0, brightest),
				number("dni_extra", 1, brightest), number("albedo", 0, 1),
			},
			answers: numbers("beam", "sky_isotropic", "sky_haydavies", "ground"),
			begin:   each(compareWall),
		},
		{
			table: "fao56_ra", compares: "daily extraterrestrial light, daylight hours", allowed: 0.1, unit: "%", cites: "FAO-56",
			asks:    []column{latitude, whole("J_mid15", 1, 366)},
			answers: numbers("Ra_MJ_m2_d", "N_h"),
			begin: each(func(r row, f *found) {
				f.ratio(r, "Ra_MJ_m2_d", sky.DailyExtraterrestrial(r.at("lat_deg"), int(r.at("J_mid15"))))
				f.ratio(r, "N_h", sky.DaylightHours(r.at("lat_deg"), int(r.at("J_mid15"))))
			}),
		},
		{
			table: "sky_emissivity", compares: "emissivity of Brutsaert", allowed: 1e-4, unit: "1", cites: "Brutsaert",
			asks:    skyAir,
			answers: numbers("brutsaert"),
			begin: each(func(r row, f *found) {
				f.near(r, "brutsaert", sky.BrutsaertEmissivity(r.at("T_C"), r.at("e_hPa")*100))
			}),
		},
		{
			table: "sky_emissivity", compares: "longwave of Brutsaert", allowed: 0.05, unit: "W/m²", cites: "Brutsaert",
			asks:    skyAir,
			answers: numbers("Ld_brutsaert_W_m2"),
			begin: each(func(r row, f *found) {
				f.near(r, "Ld_brutsaert_W_m2", sky.Brutsaert(r.at("T_C"), sky.DewPoint(r.at("e_hPa")*100)))
			}),
		},
	}
}

// skyAir are the columns of the air below a clear sky.
var skyAir = []column{number("T_C", -80, 70), number("e_hPa", 1e-3, 200)}

// compareClearSky compares the sunlight of a clear sky.
func compareClearSky(r row, f *found) {
	got := sky.Bird(r.at("zenith_deg"), r.at("dni_extra"), sky.Atmosphere{
		Ozone_cm: r.at("ozone_cm"), Water_cm: r.at("pw_cm"), AOD380: r.at("aod380"), AOD500: r.at("aod500"),
		Pressure_Pa: r.at("pressure_pa"), Albedo: r.at("albedo"),
	})
	f.ratio(r, "ghi", got.GHI)
	f.ratio(r, "dni", got.DNI)
	f.ratio(r, "dhi", got.DHI)
}

// compareWall compares the sunlight on a wall.
func compareWall(r row, f *found) {
	facing := map[string]float64{"N": 0, "E": 90, "S": 180, "W": 270}[r.word("facing")]
	light := sky.Irradiance{GHI: r.at("ghi"), DNI: r.at("dni"), DHI: r.at("dhi")}
	var toSun, normal mgl64.Vec3 = sun.Position{Elevation_deg: 90 - r.at("zenith_deg"), Azimuth_deg: r.at("sun_azimuth_deg")}.Vector(),
		sun.Position{Azimuth_deg: facing}.Vector()
	even := sky.OnPlaneIsotropic(light, toSun, normal, r.at("albedo"))
	hay := sky.OnPlaneHayDavies(light, r.at("dni_extra"), toSun, normal, r.at("albedo"))
	f.near(r, "beam", hay.Beam)
	f.near(r, "sky_isotropic", even.Sky+even.Circumsolar)
	f.near(r, "sky_haydavies", hay.Sky+hay.Circumsolar)
	f.near(r, "ground", hay.Ground)
}
