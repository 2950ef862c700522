package sky_test

import (
	"fmt"

	"rowlight/sim/sky"
)

// FAO-56 (Allen et al. 1998), example 2: air pressure 81.8 kPa and psychrometric constant
// 0.054 kPa/°C at 1800 m.
func ExamplePressure() {
	pressure := sky.Pressure(1800)
	fmt.Printf("%.1f kPa, %.3f kPa/°C\n", pressure/1000, sky.Psychrometric(pressure)/1000)
	// Output: 81.8 kPa, 0.054 kPa/°C
}

// FAO-56 (Allen et al. 1998), example 3: saturation pressures at 24.5 °C and 15 °C. The book prints
// 3.075 (figure from memory) and 1.705 kPa.
func ExampleSaturationPressure() {
	fmt.Printf("%.3f kPa, %.3f kPa\n", sky.SaturationPressure(24.5)/1000, sky.SaturationPressure(15)/1000)
	// Output: 3.075 kPa, 1.705 kPa
}

// FAO-56 (Allen et al. 1998), example 17: the slope at 30.2 °C is 0.246 kPa/°C.
func ExampleSaturationSlope() {
	fmt.Printf("%.3f kPa/°C\n", sky.SaturationSlope(30.2)/1000)
	// Output: 0.246 kPa/°C
}

// FAO-56 (Allen et al. 1998), example 20: air that saturates at 14.8 °C holds 1.68 kPa.
func ExampleDewPoint() {
	vapour := sky.SaturationPressure(14.8)
	fmt.Printf("%.2f kPa, %.1f °C\n", vapour/1000, sky.DewPoint(vapour))
	// Output: 1.68 kPa, 14.8 °C
}

// FAO-56 (Allen et al. 1998), example 8 (20° S, 3 September), example 10 (22.9° S, 15 May) and
// example 18 (50.8° N, 6 July): 32.2, 25.1 and 41.09 MJ m⁻² d⁻¹.
func ExampleDailyExtraterrestrial() {
	fmt.Printf("%.1f %.1f %.2f\n", sky.DailyExtraterrestrial(-20, 246),
		sky.DailyExtraterrestrial(-22.9, 135), sky.DailyExtraterrestrial(50.8, 187))
	// Output: 32.2 25.1 41.09
}

// FAO-56 (Allen et al. 1998), example 9 (20° S, 3 September) and example 10 (22.9° S, 15 May):
// 11.7 and 10.9 h.
func ExampleDaylightHours() {
	fmt.Printf("%.1f %.1f\n", sky.DaylightHours(-20, 246), sky.DaylightHours(-22.9, 135))
	// Output: 11.7 10.9
}
