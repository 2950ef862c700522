package sim

import (
	"fmt"
	"math"

	"rowlight/sim/cover"
	"rowlight/sim/heat"
)

// fruit is the air about the face.
func (i *inspection) fruit() heat.Around { return i.near.fruit[i.face%2] }

const ofColour = "ofColour"

// roofLinks are what the net over all rows leaves of the sunlight.
func (i *inspection) roofLinks(c *chain) {
	sky, cloth := &i.day.skies[i.k], i.roof.cloth
	direct, _ := cloth.Overhead(sky.Sun)
	c.given("overheadShade", cloth.Shade, "", fromScenario)
	c.follows("overheadCover", cloth.Cover(), "", "1-sqrt(1-overheadShade)", fromGeometry)
	const across = "max(1-overheadCover*sqrt(1+pow(%s/max(sunUp,0.000001),2)),0)"
	c.follows("overheadThrough", direct, "",
		"(sunUp > 0)*"+fmt.Sprintf(across, "sunAcross")+"*"+fmt.Sprintf(across, "sunAlong"), "crossedThreads")
	c.given("overheadForward", cloth.Forward, "", ofColour)
	c.given("overheadEven", i.roof.direct, "", "allDirections")
	c.follows("beam", sky.Beam, "W/m²", "beamOpen*overheadThrough", "")
	c.follows("even", sky.Diffuse, "W/m²",
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
			source = "birdNet"
		}
		c.given(lies, net.Cloth.Cover(), "", source)
		const across = "max(1-%s*sqrt(1+pow(%s/%s,2)),0)"
		c.follows(through, net.Direct(sky.Sun), "",
			fmt.Sprintf(across, lies, "sunAlong", normal)+"*"+fmt.Sprintf(across, lies, second, normal), "crossedThreads")
		product += "*" + through
	}
	c.follows("netThrough", i.light.Through(i.face, sky.Sun), "", product, "")
	return "netThrough"
}

// skinLinks are the share of sunlight that the skin takes in, with or without a film.
func (i *inspection) skinLinks(c *chain) {
	const source = "skinColour"
	film := cover.Skin(i.option.Shade.Film)
	if film == 1 {
		c.given("absorptance", i.berry.Absorptance, "", source)
		return
	}
	c.given("bareSkin", i.berry.Absorptance/film, "", source)
	c.given("filmLeaves", film, "", "residue")
	c.follows("absorptance", i.berry.Absorptance, "", "bareSkin*filmLeaves", "")
}

// mistLinks hold the air at the fruit to its wet bulb while misters run.
func (i *inspection) mistLinks(c *chain) {
	c.given("airDry", i.near.dry_C, "°C", "dryProfile")
	c.given("wetBulb", i.near.wetBulb_C, "°C", "psychrometric")
	c.follows("air", i.fruit().Air_C, "°C", "min(max(airMisted,wetBulb),airDry)", "")
}

// latentLinks are the latent heat that leaves the skin.
func (i *inspection) latentLinks(c *chain) {
	const source = "skinConductance"
	if i.near.mist.Skin == 0 {
		c.given("transpiration", i.load.Transpiration_Wm2, "W/m²", source)
		return
	}
	dry := i.near.skin.SkinLatent(i.before)
	c.given("skinDry", dry, "W/m²", source)
	c.given("skinWet", math.Max(i.load.Transpiration_Wm2-dry, 0), "W/m²", "mistTaken")
	c.follows("transpiration", i.load.Transpiration_Wm2, "W/m²", "skinDry+skinWet", "")
}
