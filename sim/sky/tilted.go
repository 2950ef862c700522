package sky

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Tilted is the sunlight on one side of a plane [W/m²], by where it comes from.
type Tilted struct {
	Beam        float64 // from the disc of the sun
	Circumsolar float64 // sky light from around the sun
	Sky         float64 // sky light from all over the sky
	Ground      float64 // light that the ground sends back
}

// Total is all the sunlight on the plane [W/m²].
func (t Tilted) Total() float64 { return t.Beam + t.Circumsolar + t.Sky + t.Ground }

// lowestSine keeps the share of circumsolar light finite for a sun within 1° of the horizon.
const lowestSine = 0.01745

// Split is sunlight parted, after Hay & Davies 1980, into light that comes from the direction of
// the sun and light that comes evenly from the whole sky.
type Split struct {
	Circumsolar_Wm2 float64 // sky light from around the sun, on a plane that faces it [W/m²]
	Even_Wm2        float64 // light of an even sky, on the horizontal [W/m²]
}

// HayDavies parts the diffuse light: a share equal to the transmittance of the beam follows the
// sun, the rest is even (Hay & Davies 1980). sinElevation is the sine of the elevation of the sun
// [1]; with the sun down all is even. The split keeps DHI while the sun stands more than 1° high.
func HayDavies(i Irradiance, extraterrestrial_Wm2, sinElevation float64) Split {
	if sinElevation <= 0 || extraterrestrial_Wm2 <= 0 {
		return Split{Even_Wm2: i.DHI}
	}
	share := math.Min(i.DNI/extraterrestrial_Wm2, 1)
	return Split{
		Circumsolar_Wm2: share * i.DHI / math.Max(sinElevation, lowestSine),
		Even_Wm2:        (1 - share) * i.DHI,
	}
}

// OnPlane gives the sunlight on a plane under a split sky. sun and normal are unit vectors in the
// world frame, to the sun and out of the plane; groundAlbedo is the share of light that flat ground
// around sends back evenly [0–1]. Nothing shades the plane.
func OnPlane(i Irradiance, s Split, sun, normal mgl64.Vec3, groundAlbedo float64) Tilted {
	facing := 0.0
	if sun[2] > 0 {
		facing = math.Max(sun.Dot(normal), 0)
	}
	return Tilted{
		Beam:        i.DNI * facing,
		Circumsolar: s.Circumsolar_Wm2 * facing,
		Sky:         s.Even_Wm2 * (1 + normal[2]) / 2,
		Ground:      i.GHI * groundAlbedo * (1 - normal[2]) / 2,
	}
}

// OnPlaneHayDavies is the sunlight on a plane by Hay & Davies 1980.
func OnPlaneHayDavies(i Irradiance, extraterrestrial_Wm2 float64, sun, normal mgl64.Vec3, groundAlbedo float64) Tilted {
	return OnPlane(i, HayDavies(i, extraterrestrial_Wm2, sun[2]), sun, normal, groundAlbedo)
}

// OnPlaneIsotropic is the sunlight on a plane when all diffuse light comes evenly from the whole sky.
func OnPlaneIsotropic(i Irradiance, sun, normal mgl64.Vec3, groundAlbedo float64) Tilted {
	return OnPlane(i, Split{Even_Wm2: i.DHI}, sun, normal, groundAlbedo)
}
