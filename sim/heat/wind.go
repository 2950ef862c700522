package heat

import "math"

// karman is the von Kármán constant; 0.40 is the usual value.
const karman = 0.4

// The wind of a scenario is measured over open ground.
const (
	windHeight_m    = 10   // where it is measured (convention of weather stations, WMO-No. 8)
	openRoughness_m = 0.03 // open flat ground with grass, few obstacles (Davenport class 3 "open", WMO-No. 8)
	blendHeight_m   = 60   // where the wind no longer knows the ground below it (Wieringa 1986, QJRMS 112:867)
)

// StillWind_ms is the least wind at the fruit: thermals keep even a calm day from standing still.
// Assumption, range 0.15–0.2 m/s.
const StillWind_ms = 0.15

// Attenuation of the wind inside a canopy, for U = U(top)·exp(−a(1−z/top)). The wind runs more
// freely along the rows than across them (Miller et al. 2017, Boundary-Layer Meteorology,
// doi 10.1007/s10546-017-0265-y, an Oregon vineyard of upright shoots: along the rows the canopy acts
// as a sparse one, across them as a dense one). The two numbers are an assumption.
const (
	attenuationAlong  = 1.0
	attenuationAcross = 2.5
)

// sparseLeafArea is the leaf area index [m²/m²] at which the open profile still has a share of 1/e:
// with little leaf the canopy no longer holds the wind. Assumption.
const sparseLeafArea = 0.5

// Raupach 1994, Boundary-Layer Meteorology 71:211: roughness of a canopy from its height and area.
const (
	groundDrag      = 0.003 // C_S, of the ground below
	elementDrag     = 0.3   // C_R, of the canopy, by frontal area
	largestDrag     = 0.3   // the largest friction velocity over wind at the top
	displacementFit = 7.5   // c_d1
	sublayerDepth   = 2     // c_w, depth of the roughness sublayer over that of the top, both above d
)

// WindProfile is the wind by height over and in a planting, at one instant. Build it with
// NewWindProfile.
type WindProfile struct {
	Top_m               float64 // height of the canopy
	Displacement_m      float64 // d
	Roughness_m         float64 // z0
	FrictionVelocity_ms float64 // u*, over the planting
	TopWind_ms          float64 // at the canopy top
	Angle_deg           float64 // between wind and row line, 0 along … 90 across
	Attenuation         float64 // a
	Shelter             float64 // share of the canopy's own profile below the top, the rest is the open one [0–1]
}

// NewWindProfile makes the profile from the wind at 10 m over open ground [m/s], the direction that it
// comes from and the azimuth of the row line [°], the height of the canopy [m] and its one-sided
// leaf area per ground [m²/m²]. Without leaves or height it is the logarithmic profile of open ground.
func NewWindProfile(wind10_ms, windFrom_deg, rowAzimuth_deg, top_m, leafAreaIndex float64) WindProfile {
	p := WindProfile{Top_m: math.Max(top_m, 0), Angle_deg: angleToRow(windFrom_deg, rowAzimuth_deg)}
	p.Displacement_m, p.Roughness_m = roughness(p.Top_m, math.Max(leafAreaIndex, 0))
	across := math.Sin(p.Angle_deg * math.Pi / 180)
	p.Attenuation = attenuationAlong + (attenuationAcross-attenuationAlong)*across*across
	p.Shelter = 1 - math.Exp(-math.Max(leafAreaIndex, 0)/sparseLeafArea)
	aloft := math.Max(wind10_ms, 0) * math.Log(blendHeight_m/openRoughness_m) / math.Log(windHeight_m/openRoughness_m)
	p.FrictionVelocity_ms = karman * aloft / math.Log((blendHeight_m-p.Displacement_m)/p.Roughness_m)
	p.TopWind_ms = p.above(p.Top_m)
	return p
}

// angleToRow is the angle between a wind and a row line, either way along it, 0…90°.
func angleToRow(windFrom_deg, rowAzimuth_deg float64) float64 {
	angle := math.Mod(math.Abs(windFrom_deg-rowAzimuth_deg), 180)
	return math.Min(angle, 180-angle)
}

// roughness is displacement height and roughness length [m] of a canopy, at least that of open ground.
func roughness(top_m, leafAreaIndex float64) (displacement, length float64) {
	if top_m <= 0 || leafAreaIndex <= 0 {
		return 0, openRoughness_m
	}
	x := math.Sqrt(displacementFit * leafAreaIndex)
	gap := -math.Expm1(-x) / x                                                       // 1 − d/h, Raupach 1994 eq. 8
	drag := math.Min(math.Sqrt(groundDrag+elementDrag*leafAreaIndex/2), largestDrag) // eq. 7
	atTop := math.Log(sublayerDepth) - 1 + 1.0/sublayerDepth                         // Ψ_h
	length = top_m * gap * math.Exp(atTop-karman/drag)
	return top_m * (1 - gap), math.Max(length, openRoughness_m)
}

// above is the profile over the planting, not yet held to StillWind_ms: logarithmic, but straight in
// the roughness sublayer, up to sublayerDepth times as far above d as the top, where the wakes of
// the vines mix the air harder (Raupach 1994). Open ground has none.
func (p WindProfile) above(z_m float64) float64 {
	scale := p.FrictionVelocity_ms / karman
	wind := scale * math.Log(math.Max((z_m-p.Displacement_m)/p.Roughness_m, 1))
	depth := sublayerDepth * (p.Top_m - p.Displacement_m)
	if x := (z_m - p.Displacement_m) / depth; depth > 0 && x < 1 {
		wind += p.Shelter * (scale*(math.Log(depth/p.Roughness_m)+x-1) - wind)
	}
	return wind
}

// At is the wind at a height above the ground [m/s]: logarithmic above the top, exponential below it,
// never under StillWind_ms.
func (p WindProfile) At(z_m float64) float64 {
	if z_m >= p.Top_m || p.Top_m <= 0 {
		return math.Max(p.above(z_m), StillWind_ms)
	}
	canopy := math.Exp(-p.Attenuation * (1 - z_m/p.Top_m))
	open := 0.0
	if p.Top_m > openRoughness_m && z_m > openRoughness_m {
		open = math.Log(z_m/openRoughness_m) / math.Log(p.Top_m/openRoughness_m)
	}
	return math.Max(p.TopWind_ms*(p.Shelter*canopy+(1-p.Shelter)*open), StillWind_ms)
}
