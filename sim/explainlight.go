package sim

import (
	"fmt"
	"math"

	"rowlight/sim/canopy"
	"rowlight/sim/light"
	"rowlight/sim/result"
)

// Where numbers of a chain come from.
const (
	fromScenario = "scenario"
	fromStand    = "stand"
	fromGeometry = "geometry"
)

// links writes the chain down, from the sun to the skin.
func (i *inspection) links() []result.Link {
	var c chain
	i.sunLinks(&c)
	i.skyLinks(&c)
	i.leafLinks(&c)
	i.diffuseLinks(&c)
	i.windLinks(&c)
	i.airLinks(&c)
	i.longwaveLinks(&c)
	i.convectionLinks(&c)
	i.meanLinks(&c)
	i.surfaceLinks(&c)
	i.damageLinks(&c)
	return c.links
}

// sunLinks are the place of the sun in the world and in the frame of the row.
func (i *inspection) sunLinks(c *chain) {
	at, rows, toSun := i.course.Instants[i.k].Sun, i.option.Rows, i.day.skies[i.k].Sun
	c.part = "sun"
	c.given("elevation", at.Elevation_deg, "°", "sun above the horizon, true, without refraction", "suncalc, corrected for precession (Meeus 1998, ch. 12, 25)")
	c.given("azimuth", at.Azimuth_deg, "°", "sun, clockwise from true north", "same")
	c.given("rowAzimuth", rows.Azimuth_deg, "°", "row line, clockwise from true north", fromScenario)
	c.follows("sunAcross", toSun[0], "", "direction to the sun, across the row", "cos(elevation)*sin(azimuth-rowAzimuth)", fromGeometry)
	c.follows("sunAlong", toSun[1], "", "along the row", "cos(elevation)*cos(azimuth-rowAzimuth)", fromGeometry)
	c.follows("sunUp", toSun[2], "", "upward", "sin(elevation)", fromGeometry)
	c.given("side", i.light.Faces[i.face].Normal[0], "", "face looks to rowAzimuth + 90° (1) or - 90° (-1)", "asked for")
	c.follows("outward", i.sight.Outward, "", "cosine of the sun to the face", "side*sunAcross", fromGeometry)
	slope := slopeInRow(i.scenario.Site, rows)
	c.given("slopeAcross", slope.Across, "", "rise of the ground across the row", fromScenario)
	c.given("slopeAlong", slope.Along, "", "rise of the ground along the row", fromScenario)
	c.follows("groundward", i.sight.Ground, "", "cosine of the sun to the ground",
		"(sunUp-slopeAcross*sunAcross-slopeAlong*sunAlong)/sqrt(1+slopeAcross*slopeAcross+slopeAlong*slopeAlong)", fromGeometry)
}

// skyLinks are the sunlight above the rows, beam and even sky.
func (i *inspection) skyLinks(c *chain) {
	at := &i.course.Instants[i.k]
	open := skyInRow(at, i.option.Rows)
	source := "clear sky, Bird & Hulstrom 1981"
	if len(i.scenario.Weather.Hours) > 0 {
		source = "measured hours of the scenario"
	}
	c.part = "sky"
	c.given("outside", at.Extraterrestrial_Wm2, "W/m²", "sunlight outside the air, facing the sun", "Spencer 1971, 1361 W/m²")
	c.given("dni", at.DNI, "W/m²", "direct sunlight, facing the sun", source)
	c.given("dhi", at.DHI, "W/m²", "sky light on the horizontal", source)
	const share = "min(dni/outside,1)*(sunUp > 0)"
	c.follows("circumsolar", open.Beam-at.DNI, "W/m²", "sky light from around the sun, facing it", share+"*dhi/max(sunUp,0.01745)", "Hay & Davies 1980")
	even, beam := "even", "beam"
	if i.roof.there() {
		even, beam = "evenOpen", "beamOpen"
	}
	c.follows(even, open.Diffuse, "W/m²", "the rest of the sky light, even over the sky, on the horizontal", "dhi*(1-"+share+")", "Hay & Davies 1980")
	c.follows(beam, open.Beam, "W/m²", "light that follows the sun, facing it", "dni+circumsolar", "")
	if i.roof.there() {
		i.roofLinks(c)
	}
}

// leafLinks are the way through the leaves and whether the face is lit.
func (i *inspection) leafLinks(c *chain) {
	s := &i.sight
	c.part = "leaves"
	c.given("faceHeight", s.At[2], "m", "height of the face above the row line's ground", fromStand)
	c.given("edge", s.Edge, "", "cosine of the sun to the face up to which its own bunch shades it", "drawn for this face; ±0.2 is an assumption")
	if i.seen {
		path, straight := i.straight()
		c.given("leafPath", path, "m²/m²", "leaf area along the straight way to the sun", "ray through the leaf-area grid")
		c.given("straightDepth", straight, "", "optical depth of it at Ω = 1", "same ray; every cell shows the sun its own leaves")
		if path > 0 {
			c.follows("G", straight/path, "", "depth per leaf area: what these leaves turn to the sun, more where whole blades overlap less than at random",
				"straightDepth/leafPath", "")
		}
		c.given("depth", s.Depth, "", "optical depth that counts, from the dome of the face", "interpolated between directions 2.5° apart")
		c.given("Omega", s.Clumping, "", "clumping Ω of the leaves", "fitted to the leaves of this stand, for this side and direction")
		c.follows("gap", s.Gap, "", "probability that the way is free", "exp(-Omega*depth)", "Monsi & Saeki 1953; Nilson 1971")
		c.given("field", s.Field, "", "value of the face in the frozen field, even in 0 – 1", "drawn for this face; correlated over the angle of a leaf")
		c.follows("lit", one(i.load.Beam_Wm2 > 0), "", "1 in the sun, 0 in the shade",
			"(beam > 0)*(groundward > 0)*(outward > edge)*(field < gap)", "")
	} else {
		c.given("lit", one(i.load.Beam_Wm2 > 0), "", "1 in the sun, 0 in the shade", "the sun is behind the bunch")
	}
	beam := "lit*beam"
	if len(i.nets) > 0 {
		beam += "*" + i.netLinks(c)
	}
	c.follows("beamOnBerry", i.load.Beam_Wm2, "W/m²", "direct sun on the berries of the face, facing it", beam, "")
}

// straight is the leaf area along the straight way from the face to the sun, and its optical depth.
func (i *inspection) straight() (path, depth float64) {
	grid, toSun := canopy.FromStand(i.stand.Stand, slopeInRow(i.scenario.Site, i.option.Rows)), i.day.skies[i.k].Sun
	ray, thickness, from := canopy.NewRay(grid), canopy.NewThickness(grid), grid.Snap(i.sight.At)
	thickness.Toward(toSun)
	return ray.Path(from, toSun), ray.Depth(thickness, from, toSun)
}

// diffuseLinks are the light of sky, floor and leaves on the face.
func (i *inspection) diffuseLinks(c *chain) {
	sky, scatter := i.day.skies[i.k], &i.day.scatters[i.k]
	short, normal := i.day.instants[i.k].Short[i.face], i.light.Faces[i.face].Normal
	viewSky, viewFloor := i.light.SeenThrough(i.face)
	fromSky, fromFloor := viewSky.Times(sky.Diffuse), i.light.FloorLight(i.face, scatter.leaving)
	near, glow := scatter.near[i.face].Mean, i.light.Glow(i.face, sky).Mean
	visible := short.Mean - fromSky.Mean - fromFloor.Mean - near - glow
	c.part = "light on the face"
	c.given("viewSky", viewSky.Mean, "", "share of the sky that the berries see, mean over their skin", "dome of the face")
	c.follows("skyLight", fromSky.Mean, "W/m²", "sky light on the skin, mean", "viewSky*even", "")
	c.given("viewFloor", viewFloor.Mean, "", "share of their surroundings that is floor", "rays to the floor strips")
	c.given("floorSent", perView(fromFloor, viewFloor), "W/m²", "sunlight that the floor sends back, mean of the strips as the face sees them", "radiosity of leaves and floor, albedo by kind of floor")
	c.follows("floorReflected", fromFloor.Mean, "W/m²", "light of the floor on the skin, mean", "viewFloor*floorSent", "")
	c.given("leafVisible", visible, "W/m²", "PAR from leaves on the skin, mean", fmt.Sprintf("radiosity; leaves send on %.0f %% of it (Smart 2019)", 100*leafScatter(i.option)[0]))
	c.given("leafNear", near, "W/m²", "near infrared from leaves on the skin, mean", fmt.Sprintf("radiosity; leaves send on %.0f %% of it (from memory)", 100*leafScatter(i.option)[1]))
	sum := "skyLight+floorReflected+leafVisible+leafNear"
	if len(i.nets) > 0 {
		c.given("netGlow", glow, "W/m²", "light that the nets make of the beam on them on the skin, mean", "threads of their colour: assumption")
		sum += "+netGlow"
	}
	c.follows("short", short.Mean, "W/m²", "diffuse sunlight on the skin, mean", sum, "")
	c.given("shortX", short.Vector[0], "W/m²", "how much more comes from across the row", "the same views by direction (first Legendre term)")
	c.follows("faceLight", i.load.Beam_Wm2*math.Max(i.sight.Outward, 0)+math.Max(short.On(normal), 0), "W/m²",
		"all sunlight on an upright plane at the face", "beamOnBerry*max(outward,0)+max(short+side*shortX,0)", "")
	i.skinLinks(c)
	c.given("nearInfrared", i.berry.NearInfrared, "", "share of the near infrared from leaves that it takes in", "from memory, 0.4 – 0.6")
	felt := i.load.Short
	c.follows("felt", felt.Mean, "W/m²", "sunlight that would be taken in as much, mean", "short+leafNear*(nearInfrared/absorptance-1)", "")
	c.given("feltX", felt.Vector[0], "W/m²", "how much more of it comes from across the row", "the same views by direction (first Legendre term)")
	c.given("feltY", felt.Vector[1], "W/m²", "from along the row", "same")
	c.given("feltZ", felt.Vector[2], "W/m²", "from above", "same")
}

// perView is a flux as a face receives it over what the face sees of where it comes from.
func perView(received, view light.Broad) float64 {
	if view.Mean == 0 {
		return 0
	}
	return received.Mean / view.Mean
}
