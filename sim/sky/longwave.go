package sky

import "math"

const (
	zero_K = 273.15 // 0 °C [K]
	// stefanBoltzmann is the constant of radiation [W m⁻² K⁻⁴], CODATA 2018, exact.
	stefanBoltzmann = 5.670374419e-8
)

// BrutsaertEmissivity is the emissivity of a clear sky [1] at air temperature [°C] and vapour
// pressure [Pa] of screen height, Brutsaert 1975 (its eq. 11, from memory), with the pressure in hPa.
func BrutsaertEmissivity(air_C, vapour_Pa float64) float64 {
	return 1.24 * math.Pow(vapour_Pa/100/(air_C+zero_K), 1.0/7)
}

// Brutsaert is the longwave of a clear sky on the horizontal [W/m²] at air temperature and dew point
// [°C] of screen height, Brutsaert 1975. Published formulas for the emissivity spread by about 0.1; a
// cloudy sky sends more.
func Brutsaert(air_C, dewPoint_C float64) float64 {
	return BrutsaertEmissivity(air_C, SaturationPressure(dewPoint_C)) * blackBody(air_C)
}

// CloudySky is the longwave of the sky on the horizontal [W/m²] at air temperature and dew point
// [°C] of screen height under opaque clouds that cover so many tenths of it [0–10]: the formula
// that the data dictionary of EnergyPlus weather files gives for hours without a measured value
// (Clark & Allen 1978 for the clear sky, the authors from memory).
func CloudySky(air_C, dewPoint_C, opaque_tenths float64) float64 {
	n := opaque_tenths
	clear := 0.787 + 0.764*math.Log((dewPoint_C+zero_K)/273)
	return clear * (1 + 0.0224*n - 0.0035*n*n + 0.00028*n*n*n) * blackBody(air_C)
}

// blackBody is what a black body of a temperature [°C] sends out [W/m²].
func blackBody(surface_C float64) float64 {
	t := surface_C + zero_K
	return stefanBoltzmann * t * t * t * t
}
