package sim

import (
	"fmt"
	"math"

	"rowlight/sim/cover"
	"rowlight/sim/heat"
)

// fruit is the air about the face.
func (i *inspection) fruit() heat.Around { return i.near.fruit[i.face%2] }

const ofColour = "colour of the threads: assumption"

// roofLinks are what the net over all rows leaves of the sunlight.
func (i *inspection) roofLinks(c *chain) {
	sky, cloth := &i.day.skies[i.k], i.roof.cloth
	direct, _ := cloth.Overhead(sky.Sun)
	c.given("overheadShade", cloth.Shade, "", "share of light that the net over all rows stops straight on", fromScenario)
	c.follows("overheadCover", cloth.Cover(), "", "share of a line across its threads that lies on one", "1-sqrt(1-overheadShade)", fromGeometry)
	const across = "max(1-overheadCover*sqrt(1+pow(%s/max(sunUp,0.000001),2)),0)"
	c.follows("overheadThrough", direct, "", "share of the beam that goes through between its threads",
		"(sunUp > 0)*"+fmt.Sprintf(across, "sunAcross")+"*"+fmt.Sprintf(across, "sunAlong"), "crossed round threads, geometry")
	c.given("overheadForward", cloth.Forward, "", "share of what its threads stop that goes on as diffuse light", ofColour)
	c.given("overheadEven", i.roof.direct, "", "share of even light that goes through between its threads", "the same geometry over all directions")
	c.follows("beam", sky.Beam, "W/m²", "beam under the net, facing the sun", "beamOpen*overheadThrough", "")
	c.follows("even", sky.Diffuse, "W/m²", "even light under the net, on the horizontal",
		"evenOpen*(overheadEven+overheadForward*(1-overheadEven))+beamOpen*max(sunUp,0)*overheadForward*(1-overheadThrough)", "")
}

// netLinks are the nets about the row on the way to the sun. It gives the share of the beam that they leave, as a
// symbol.
func (i *inspection) netLinks(c *chain) string {
	sky, at, product := i.day.skies[i.k], i.light.Place(i.face), "1"
	for n := range i.nets {
		net := &i.nets[n]
		if !net.Meets(at, sky.Sun) {
			continue
		}
		lies, through := fmt.Sprintf("net%dCover", n+1), fmt.Sprintf("net%dThrough", n+1)
		normal, second := "sunAcross", "sunUp"
		if net.Level() {
			normal, second = second, normal
		}
		source := fromScenario
		if net.Kind == cover.BirdNet {
			source = "bird net of a shade factor of 0.15: assumption"
		}
		c.given(lies, net.Cloth.Cover(), "", "share of a line across the threads of a net on the way to the sun that lies on one", source)
		const across = "max(1-%s*sqrt(1+pow(%s/%s,2)),0)"
		c.follows(through, net.Direct(sky.Sun), "", "share of the beam that goes through between its threads",
			fmt.Sprintf(across, lies, "sunAlong", normal)+"*"+fmt.Sprintf(across, lies, second, normal), "crossed round threads, geometry")
		product += "*" + through
	}
	c.follows("netThrough", i.light.Through(i.face, sky.Sun), "", "share of the beam that the nets about the row leave", product, "")
	return "netThrough"
}

// skinLinks are the share of sunlight that the skin takes in, with or without a film.
func (i *inspection) skinLinks(c *chain) {
	const source = "scenario, or by colour from memory"
	film := cover.Skin(i.option.Shade.Film)
	if film == 1 {
		c.given("absorptance", i.berry.Absorptance, "", "share of sunlight that the skin takes in", source)
		return
	}
	c.given("bareSkin", i.berry.Absorptance/film, "", "share of sunlight that the bare skin takes in", source)
	c.given("filmLeaves", film, "", "what a particle film leaves of it", "0.85 – 0.90 by residue: assumption")
	c.follows("absorptance", i.berry.Absorptance, "", "share of sunlight that the skin takes in", "bareSkin*filmLeaves", "")
}

// mistLinks hold the air at the fruit to its wet bulb while misters run.
func (i *inspection) mistLinks(c *chain) {
	c.given("airDry", i.near.dry_C, "°C", "air at the fruit without mist", "the same profile by the floor alone")
	c.given("wetBulb", i.near.wetBulb_C, "°C", "its wet bulb, the coolest that evaporation makes it", "psychrometric constant, FAO-56")
	c.follows("air", i.fruit().Air_C, "°C", "air at the fruit", "min(max(airMisted,wetBulb),airDry)", "")
}

// latentLinks are the latent heat that leaves the skin.
func (i *inspection) latentLinks(c *chain) {
	const meaning, source = "latent heat that leaves the skin", "conductance of the skin from memory"
	if i.near.mist.Skin == 0 {
		c.given("transpiration", i.load.Transpiration_Wm2, "W/m²", meaning, source)
		return
	}
	dry := i.near.skin.SkinLatent(i.before)
	c.given("skinDry", dry, "W/m²", "latent heat that leaves the skin itself", source)
	c.given("skinWet", math.Max(i.load.Transpiration_Wm2-dry, 0), "W/m²", "latent heat of the mist that wets it", "what lands on it, or what the air takes up")
	c.follows("transpiration", i.load.Transpiration_Wm2, "W/m²", meaning, "skinDry+skinWet", "")
}
