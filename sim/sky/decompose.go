package sky

import "math"

// lowestSplit_deg is the elevation of the sun below which global light counts as all diffuse: the
// clearness of so low a sun says nothing.
const lowestSplit_deg = 3

// Erbs splits global horizontal irradiance [W/m²] into beam and diffuse by the clearness of the
// sky, Erbs, Klein & Duffie 1982. The true zenith angle [deg] is that of the sun, or of the middle
// of the hour for an hourly mean; the extraterrestrial irradiance [W/m²] is on a plane that faces
// the sun. With the sun less than 3° high all light is diffuse. The split is a mean over
// many skies: a single hour may be far from it.
func Erbs(ghi_Wm2, zenith_deg, extraterrestrial_Wm2 float64) Irradiance {
	if ghi_Wm2 <= 0 {
		return Irradiance{}
	}
	if zenith_deg > 90-lowestSplit_deg {
		return Irradiance{GHI: ghi_Wm2, DHI: ghi_Wm2}
	}
	cosZenith := math.Cos(zenith_deg * math.Pi / 180)
	clearness := math.Min(ghi_Wm2/(extraterrestrial_Wm2*cosZenith), 1)
	dhi := ghi_Wm2 * diffuseShare(clearness)
	return Irradiance{GHI: ghi_Wm2, DNI: (ghi_Wm2 - dhi) / cosZenith, DHI: dhi}
}

// diffuseShare is the diffuse share of global light by the clearness index, Erbs et al. 1982, eq. 1.
func diffuseShare(k float64) float64 {
	switch {
	case k <= 0.22:
		return 1 - 0.09*k
	case k <= 0.80:
		return 0.9511 - 0.1604*k + 4.388*k*k - 16.638*k*k*k + 12.336*k*k*k*k
	default:
		return 0.165
	}
}
