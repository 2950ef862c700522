package sim

import (
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
	c.given("elevation", at.Elevation_deg, "°", "suncalc")
	c.given("azimuth", at.Azimuth_deg, "°", "suncalc")
	c.given("rowAzimuth", rows.Azimuth_deg, "°", fromScenario)
	c.follows("sunAcross", toSun[0], "", "cos(elevation)*sin(azimuth-rowAzimuth)", fromGeometry)
	c.follows("sunAlong", toSun[1], "", "cos(elevation)*cos(azimuth-rowAzimuth)", fromGeometry)
	c.follows("sunUp", toSun[2], "", "sin(elevation)", fromGeometry)
	c.given("side", i.light.Faces[i.face].Normal[0], "", "asked")
	c.follows("outward", i.sight.Outward, "", "side*sunAcross", fromGeometry)
	slope := slopeInRow(i.scenario.Site, rows)
	c.given("slopeAcross", slope.Across, "", fromScenario)
	c.given("slopeAlong", slope.Along, "", fromScenario)
	c.follows("groundward", i.sight.Ground, "",
		"(sunUp-slopeAcross*sunAcross-slopeAlong*sunAlong)/sqrt(1+slopeAcross*slopeAcross+slopeAlong*slopeAlong)", fromGeometry)
}

// skyLinks are the sunlight above the rows, beam and even sky.
func (i *inspection) skyLinks(c *chain) {
	at := &i.course.Instants[i.k]
	open := skyInRow(at, i.option.Rows)
	source := "bird"
	if len(i.scenario.Weather.Hours) > 0 {
		source = "measured"
	}
	c.part = "sky"
	c.given("outside", at.Extraterrestrial_Wm2, "W/m²", "spencer")
	c.given("dni", at.DNI, "W/m²", source)
	c.given("dhi", at.DHI, "W/m²", source)
	const share = "min(dni/outside,1)*(sunUp > 0)"
	c.follows("circumsolar", open.Beam-at.DNI, "W/m²", share+"*dhi/max(sunUp,0.01745)", "hayDavies")
	even, beam := "even", "beam"
	if i.roof.there() {
		even, beam = "evenOpen", "beamOpen"
	}
	c.follows(even, open.Diffuse, "W/m²", "dhi*(1-"+share+")", "hayDavies")
	c.follows(beam, open.Beam, "W/m²", "dni+circumsolar", "")
	if i.roof.there() {
		i.roofLinks(c)
	}
}

// leafLinks are the way through the leaves and whether the face is lit.
func (i *inspection) leafLinks(c *chain) {
	s := &i.sight
	c.part = "leaves"
	c.given("faceHeight", s.At[2], "m", fromStand)
	c.given("edge", s.Edge, "", "drawnEdge")
	if i.seen {
		path, straight := i.straight()
		c.given("leafPath", path, "m²/m²", "ray")
		c.given("straightDepth", straight, "", "rayDepth")
		if path > 0 {
			c.follows("G", straight/path, "",
				"straightDepth/leafPath", "")
		}
		c.given("depth", s.Depth, "", "interpolated")
		c.given("Omega", s.Clumping, "", "fitted")
		c.follows("gap", s.Gap, "", "exp(-Omega*depth)", "monsiNilson")
		c.given("field", s.Field, "", "drawnField")
		c.follows("lit", one(i.load.Beam_Wm2 > 0), "",
			"(beam > 0)*(groundward > 0)*(outward > edge)*(field < gap)", "")
	} else {
		c.given("lit", one(i.load.Beam_Wm2 > 0), "", "behind")
	}
	beam := "lit*beam"
	if len(i.nets) > 0 {
		beam += "*" + i.netLinks(c)
	}
	c.follows("beamOnBerry", i.load.Beam_Wm2, "W/m²", beam, "")
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
	c.part = "face"
	c.given("viewSky", viewSky.Mean, "", "dome")
	c.follows("skyLight", fromSky.Mean, "W/m²", "viewSky*even", "")
	c.given("viewFloor", viewFloor.Mean, "", "floorRays")
	c.given("floorSent", perView(fromFloor, viewFloor), "W/m²", "radiosityFloor")
	c.follows("floorReflected", fromFloor.Mean, "W/m²", "viewFloor*floorSent", "")
	scattered := leafScatter(i.option)
	c.given("leafScatter", scattered[0], "", "smart")
	c.given("leafScatterNear", scattered[1], "", "memory")
	c.given("leafVisible", visible, "W/m²", "radiosity")
	c.given("leafNear", near, "W/m²", "radiosity")
	sum := "skyLight+floorReflected+leafVisible+leafNear"
	if len(i.nets) > 0 {
		c.given("netGlow", glow, "W/m²", "threadsColour")
		sum += "+netGlow"
	}
	c.follows("short", short.Mean, "W/m²", sum, "")
	c.given("shortX", short.Vector[0], "W/m²", "firstTerm")
	c.follows("faceLight", i.load.Beam_Wm2*math.Max(i.sight.Outward, 0)+math.Max(short.On(&normal), 0), "W/m²", "beamOnBerry*max(outward,0)+max(short+side*shortX,0)", "")
	i.skinLinks(c)
	c.given("nearInfrared", i.berry.NearInfrared, "", "memoryInfrared")
	felt := i.load.Short
	c.follows("felt", felt.Mean, "W/m²", "short+leafNear*(nearInfrared/absorptance-1)", "")
	c.given("feltX", felt.Vector[0], "W/m²", "firstTerm")
	c.given("feltY", felt.Vector[1], "W/m²", "firstTerm")
	c.given("feltZ", felt.Vector[2], "W/m²", "firstTerm")
}

// perView is a flux as a face receives it over what the face sees of where it comes from.
func perView(received, view light.Broad) float64 {
	if view.Mean == 0 {
		return 0
	}
	return received.Mean / view.Mean
}
