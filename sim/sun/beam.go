package sun

import "math"

// SolarConstant_Wm2 is the mean irradiance outside the atmosphere at one astronomical unit [W/m²],
// Kopp & Lean 2011: 1360.8 ± 0.5.
const SolarConstant_Wm2 = 1361

// DistanceFactor is the square of the mean over the present distance of the sun [1], by day of the
// year from 1. Accuracy 0.1 %, Spencer 1971.
func DistanceFactor(dayOfYear int) float64 {
	angle := 2 * math.Pi * float64(dayOfYear-1) / 365
	// Spencer 1971, the Fourier series of (mean distance / distance)².
	return 1.00011 + 0.034221*math.Cos(angle) + 0.00128*math.Sin(angle) +
		0.000719*math.Cos(2*angle) + 0.000077*math.Sin(2*angle)
}

// ExtraterrestrialNormal is the irradiance outside the atmosphere on a plane that faces the sun
// [W/m²], by day of the year from 1.
func ExtraterrestrialNormal(dayOfYear int) float64 {
	return SolarConstant_Wm2 * DistanceFactor(dayOfYear)
}

// AirMassKasten1966 is the relative optical air mass [1] at a zenith angle [deg, 0 – 90], Kasten
// 1966, the one that Bird & Hulstrom 1981 use. A sun below the horizon counts as on it.
func AirMassKasten1966(zenith_deg float64) float64 {
	z := math.Min(zenith_deg, 90)
	return 1 / (math.Cos(z/degPerRad) + 0.15*math.Pow(93.885-z, -1.253))
}

// AirMassKastenYoung1989 is the relative optical air mass [1] at an apparent zenith angle [deg, 0 –
// 90], Kasten & Young 1989. A sun below the horizon counts as on it.
func AirMassKastenYoung1989(zenith_deg float64) float64 {
	z := math.Min(zenith_deg, 90)
	return 1 / (math.Cos(z/degPerRad) + 0.50572*math.Pow(96.07995-z, -1.6364))
}
