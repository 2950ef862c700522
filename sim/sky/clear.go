// Package sky gives the light and heat that come from the sky: sunlight of a clear day, its split
// into beam and diffuse, its share on a tilted plane, the longwave of the clear sky, and the
// properties of moist air that go with them.
package sky

import (
	"math"

	"rowlight/sim/sun"
)

// Irradiance is sunlight on the ground [W/m²].
type Irradiance struct {
	GHI float64 // global on the horizontal
	DNI float64 // direct on a plane that faces the sun
	DHI float64 // diffuse on the horizontal
}

// Atmosphere is what the light of a clear day passes through.
type Atmosphere struct {
	Ozone_cm    float64 // ozone column [cm]
	Water_cm    float64 // precipitable water [cm]
	AOD380      float64 // aerosol optical depth at 380 nm [1]
	AOD500      float64 // aerosol optical depth at 500 nm [1]
	Pressure_Pa float64 // at the ground [Pa]
	Albedo      float64 // share of sunlight that the ground around sends back [0–1]
}

// The constants of Bird & Hulstrom 1981.
const (
	birdPressure_Pa = 101325 // sea level, for the pressure-corrected air mass
	birdForward     = 0.85   // B_a: share of aerosol scattering that goes forward
	birdAbsorption  = 0.1    // K_1: aerosol absorption against aerosol extinction
	birdSkyAlbedo   = 0.0685 // sky albedo of a clean sky

	// birdRayleighTurn is the air mass, of a sun about 3.3° high, at which the published Rayleigh
	// fit turns round and lets more light through a longer path; it is held from there on.
	birdRayleighTurn = 14.094
)

// PAR is the part of sunlight of wavelengths 400–700 nm.
const (
	// PARShare is the share of the energy of sunlight on the ground that is PAR [1]; published
	// values run from 0.45 to 0.48, the middle is an assumption.
	PARShare = 0.46
	// PARPhotons is the photons per energy within PAR of sunlight [µmol/J], McCree 1972.
	PARPhotons = 4.57
)

// Bird is the sunlight of a clear sky by Bird & Hulstrom 1981 (SERI/TR-642-761), for a true zenith
// angle [deg] and the irradiance outside the atmosphere on a plane that faces the sun [W/m²]. With
// the sun on or below the horizon everything is 0. Other published clear-sky models differ from it
// by several per cent; below 4° of elevation it gives the size only.
func Bird(zenith_deg, extraterrestrial_Wm2 float64, a Atmosphere) Irradiance {
	cosZenith := math.Cos(zenith_deg * math.Pi / 180)
	if zenith_deg >= 90 || cosZenith <= 0 {
		return Irradiance{}
	}
	airMass := sun.AirMassKasten1966(zenith_deg) // the one that the authors use
	t := birdTransmittances(airMass, a)

	// The beam: Bird & Hulstrom 1981, I_d before the cosine.
	dni := extraterrestrial_Wm2 * 0.9662 * t.rayleigh * t.ozone * t.gases * t.water * t.aerosol

	// Light scattered once: Bird & Hulstrom 1981, I_as.
	aerosolScattering := t.aerosol / t.aerosolAbsorption
	scattered := extraterrestrial_Wm2 * cosZenith * 0.79 * t.ozone * t.water * t.gases * t.aerosolAbsorption *
		(0.5*(1-t.rayleigh) + birdForward*(1-aerosolScattering)) /
		(1 - airMass + math.Pow(airMass, 1.02))

	// Light that goes back and forth between ground and sky: Bird & Hulstrom 1981, r_s and I_T.
	skyAlbedo := birdSkyAlbedo + (1-birdForward)*(1-aerosolScattering)
	ghi := (dni*cosZenith + scattered) / (1 - a.Albedo*skyAlbedo)
	return Irradiance{GHI: ghi, DNI: dni, DHI: ghi - dni*cosZenith}
}

// transmittances are the shares of the beam that each constituent lets through.
type transmittances struct {
	rayleigh, ozone, gases, water, aerosol, aerosolAbsorption float64
}

func birdTransmittances(m float64, a Atmosphere) (t transmittances) {
	// Rayleigh scattering and uniformly mixed gases, T_R and T_UM, by pressure-corrected air mass.
	p := m * a.Pressure_Pa / birdPressure_Pa
	t.gases = math.Exp(-0.0127 * math.Pow(p, 0.26))
	p = math.Min(p, birdRayleighTurn)
	t.rayleigh = math.Exp(-0.0903 * math.Pow(p, 0.84) * (1 + p - math.Pow(p, 1.01)))

	// Ozone and water vapour along the slant path, T_o and T_w.
	x := a.Ozone_cm * m
	t.ozone = 1 - 0.1611*x*math.Pow(1+139.48*x, -0.3035) - 0.002715*x/(1+0.044*x+0.0003*x*x)
	w := a.Water_cm * m
	t.water = 1 - 2.4959*w/(math.Pow(1+79.034*w, 0.6828)+6.385*w)

	// Aerosol extinction by broadband optical depth, T_A, and its absorbing part, T_AA.
	depth := 0.2758*a.AOD380 + 0.35*a.AOD500
	t.aerosol = math.Exp(-math.Pow(depth, 0.873) * (1 + depth - math.Pow(depth, 0.7088)) * math.Pow(m, 0.9108))
	t.aerosolAbsorption = 1 - birdAbsorption*(1-m+math.Pow(m, 1.06))*(1-t.aerosol)
	// On the horizon the published fit has aerosol absorb more than it takes from the beam: held.
	t.aerosolAbsorption = math.Max(t.aerosolAbsorption, t.aerosol)
	return t
}
