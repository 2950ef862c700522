package sky

import "math"

// DailyExtraterrestrial is the sunlight outside the atmosphere on the horizontal over one day
// [MJ/m²] by latitude [deg] and day of the year, FAO-56 eq. 21. In polar night it is 0; in polar
// day the sun stays up for 24 h.
func DailyExtraterrestrial(latitude_deg float64, dayOfYear int) float64 {
	const solarConstant = 0.0820 // FAO-56 [MJ m⁻² min⁻¹]
	phi := latitude_deg * math.Pi / 180
	delta := fao56Declination(dayOfYear)
	set := fao56SunsetAngle(phi, delta)
	return 24 * 60 / math.Pi * solarConstant * fao56Distance(dayOfYear) *
		(set*math.Sin(phi)*math.Sin(delta) + math.Cos(phi)*math.Cos(delta)*math.Sin(set))
}

// DaylightHours is the time between geometric sunrise and sunset [h], FAO-56 eq. 34.
func DaylightHours(latitude_deg float64, dayOfYear int) float64 {
	return 24 / math.Pi * fao56SunsetAngle(latitude_deg*math.Pi/180, fao56Declination(dayOfYear))
}

// fao56Distance is the inverse relative distance of the sun, FAO-56 eq. 23.
func fao56Distance(dayOfYear int) float64 {
	return 1 + 0.033*math.Cos(2*math.Pi*float64(dayOfYear)/365)
}

// fao56Declination is the declination of the sun [rad], FAO-56 eq. 24.
func fao56Declination(dayOfYear int) float64 {
	return 0.409 * math.Sin(2*math.Pi*float64(dayOfYear)/365-1.39)
}

// fao56SunsetAngle is the hour angle of the sunset [rad], FAO-56 eq. 25.
func fao56SunsetAngle(latitude, declination float64) float64 {
	cos := -math.Tan(latitude) * math.Tan(declination)
	return math.Acos(math.Max(-1, math.Min(cos, 1)))
}
