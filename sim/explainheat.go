package sim

import (
	"fmt"
	"math"

	"rowlight/sim/heat"
	"rowlight/sim/sunburn"
)

// windLinks bring the wind from 10 m over open ground to the fruit.
func (i *inspection) windLinks(c *chain) {
	at, w, height := &i.course.Instants[i.k], i.near.wind, i.stand.measures.FruitHeight_m
	over := "wind10"
	const raupach = "raupach"
	c.part = "wind"
	c.given("wind10", at.Wind_ms, "m/s", "weather")
	c.given("windFrom", at.WindFrom_deg, "°", "weather")
	c.follows("windAngle", w.Angle_deg, "°", "acos(abs(cos(windFrom-rowAzimuth)))", fromGeometry)
	if i.roof.there() {
		over = "windUnder"
		c.given("overheadWind", i.slowed.roof, "", "netSlows")
		c.follows("windUnder", at.Wind_ms*i.slowed.roof, "m/s", "wind10*overheadWind", "")
	}
	c.given("top", w.Top_m, "m", fromStand)
	c.given("leafAreaIndex", i.leafArea, "m²/m²", fromStand)
	c.given("fruitHeight", height, "m", fromStand)
	c.given("displacement", w.Displacement_m, "m", raupach)
	c.given("roughness", w.Roughness_m, "m", raupach)
	c.follows("friction", w.FrictionVelocity_ms, "m/s",
		"0.4*"+over+"*ln(60/0.03)/ln(10/0.03)/ln((60-displacement)/roughness)", "wieringa")
	c.follows("shelter", w.Shelter, "", "1-exp(-leafAreaIndex/0.5)", "assumption")
	if w.Top_m > 0 {
		c.follows("windTop", w.TopWind_ms, "m/s",
			"friction/0.4*((1-shelter)*ln(max((top-displacement)/roughness,1))+shelter*(ln(2*(top-displacement)/roughness)-0.5))", raupach)
	}
	c.follows("attenuation", w.Attenuation, "", "1+1.5*sin(windAngle)*sin(windAngle)", "miller")
	name, left := "wind", i.slowed.side[i.face%2]
	if left < 1 {
		name = "windRow"
	}
	if height < w.Top_m && height > 0.03 {
		c.follows(name, w.At(height), "m/s",
			"max(windTop*(shelter*exp(-attenuation*(1-fruitHeight/top))+(1-shelter)*ln(fruitHeight/0.03)/ln(top/0.03)),0.15)", "exponential")
	} else {
		c.given(name, w.At(height), "m/s", "aboveCanopy")
	}
	if left < 1 {
		c.given("netWind", left, "", "netSlows")
		c.follows("wind", i.fruit().Wind_ms, "m/s", "max(windRow*netWind,0.15)", "")
	}
}

// airLinks warm the air from the screen to the fruit by what the floor gives off.
func (i *inspection) airLinks(c *chain) {
	p := i.near.air
	c.part = "air"
	c.given("airScreen", p.Screen_C, "°C", "weather")
	c.given("floorHeat", i.floor.Flux.Sensible, "W/m²", "deardorff")
	c.given("airCapacity", p.Capacity_Jm3K, "J/m³/K", "cengel")
	c.follows("airFriction", p.Friction_ms, "m/s", "max(friction,0.05)", "assumption")
	given := "floorHeat"
	misted := i.near.mist.Air > 0
	if misted {
		c.given("mistAir", i.near.mist.Air, "W/m²", "halfMist")
		given = "(floorHeat-mistAir)"
	}
	c.follows("airScale", p.Scale_K, "K", given+"/(airCapacity*airFriction)", "businger")
	c.follows("inverseL", p.Inverse_perm, "1/m", "-0.4*9.81*airScale/(airFriction*airFriction*(airScreen+273.15))", "obukhov")
	name := "air"
	if misted {
		name = "airMisted"
		defer i.mistLinks(c)
	}
	height := i.stand.measures.FruitHeight_m
	if height >= 2 {
		c.follows(name, p.At(height), "°C", "airScreen", "aboveScreen")
		return
	}
	c.follows("psiScreen", p.Stability(2), "", psi(p, "2"), "paulsonDyer")
	c.follows("psiFruit", p.Stability(math.Max(height, 0.05)), "", psi(p, "max(fruitHeight,0.05)"), "paulsonDyer")
	c.follows(name, p.At(height), "°C",
		"airScreen+max(-5,min(airScale/0.4*(ln(2/max(fruitHeight,0.05))-psiScreen+psiFruit),5))", "fluxProfile")
}

// psi is the relation of the stability function at a height.
func psi(p heat.AirProfile, height string) string {
	if p.Inverse_perm < 0 {
		return fmt.Sprintf("2*ln((1+sqrt(1-16*%s*inverseL))/2)", height)
	}
	return fmt.Sprintf("-5*min(%s*inverseL,1)", height)
}

// longwaveLinks are the longwave of all around the face.
func (i *inspection) longwaveLinks(c *chain) {
	at, v, net := &i.course.Instants[i.k], &i.views[i.face], i.load.LongNet
	viewSky, viewFloor, nets := "viewSky", "viewFloor", ""
	const emitted = "5.670374419e-8*pow(%s+273.15,4)"
	c.part = "longwave"
	source := "brutsaert"
	if len(i.scenario.Weather.Hours) > 0 {
		source = "longwaveMeasured"
	}
	if i.roof.there() {
		c.given("skyLongOpen", at.Longwave_Wm2, "W/m²", source)
		c.given("overheadTemperature", i.near.overhead_C, "°C", "churchillBernstein")
		c.follows("skyLong", i.near.sky, "W/m²",
			"overheadEven*skyLongOpen+(1-overheadEven)*"+fmt.Sprintf(emitted, "overheadTemperature"), "stefan")
	} else {
		c.given("skyLong", at.Longwave_Wm2, "W/m²", source)
	}
	if len(i.nets) > 0 {
		viewSky, viewFloor, nets = "viewSkyOpen", "viewFloorOpen", "+netIn"
		c.given("viewSkyOpen", v.sky.Mean, "", "dome")
		c.given("viewFloorOpen", v.ground.Mean, "", "floorRays")
		c.given("viewNets", v.threads.Mean, "", "hidden")
		c.given("netTemperature", i.near.threads[i.face%2], "°C", "churchillBernstein")
		c.follows("netIn", i.from.nets.Mean, "W/m²", "viewNets*"+fmt.Sprintf(emitted, "netTemperature"), "stefan")
	}
	c.follows("skyIn", i.from.sky.Mean, "W/m²", viewSky+"*skyLong", "")
	c.given("floorLong", perView(i.from.floor, v.ground), "W/m²", "floorTemperatures")
	c.follows("floorIn", i.from.floor.Mean, "W/m²", viewFloor+"*floorLong", "")
	c.given("viewLeaves", v.leaves.Mean, "", "remainder")
	c.given("stomata", i.leaf.Stomata, "mol/m²/s", "medrano")
	c.given("leafTemperature", i.near.leaves.Temperature_C, "°C", "monteith")
	c.follows("leafLong", i.near.leaf, "W/m²", fmt.Sprintf(emitted, "leafTemperature"), "stefan")
	c.follows("leavesIn", i.from.leaves.Mean, "W/m²", "viewLeaves*leafLong", "")
	c.given("viewOwn", v.own.Mean, "", "softHalf")
	c.given("before", i.before, "°C", "runSoFar")
	c.follows("ownIn", i.from.own.Mean, "W/m²", "viewOwn*"+fmt.Sprintf(emitted, "before"), "stefan")
	c.given("emissivity", i.berry.Emissivity, "", "memoryEmissivity")
	c.follows("long", net.Mean, "W/m²",
		"emissivity*(skyIn+floorIn+leavesIn+ownIn"+nets+"-"+fmt.Sprintf(emitted, "air")+")", "")
	c.given("longX", net.Vector[0], "W/m²", "firstTerm")
	c.given("longY", net.Vector[1], "W/m²", "firstTerm")
	c.given("longZ", net.Vector[2], "W/m²", "firstTerm")
}

// convectionLinks are the exchange of the berry with the air and its surroundings per kelvin.
func (i *inspection) convectionLinks(c *chain) {
	t, conv, fruit := &i.trace, &i.trace.Convection, i.fruit()
	film := (fruit.Air_C + i.before) / 2
	air, filmAir := heat.AirAt(fruit.Air_C, fruit.Pressure_Pa), heat.AirAt(film, fruit.Pressure_Pa)
	c.part = "exchange"
	c.given("diameter", i.berry.Diameter_m, "m", fromScenario)
	c.given("nu", air.KinematicViscosity, "m²/s", "cengelPressure")
	c.given("Pr", air.Prandtl, "", "cengel")
	c.given("kAir", air.Conductivity, "W/m/K", "cengel")
	c.given("muRatio", conv.ViscosityRatio, "", "cengel")
	c.follows("Re", conv.Reynolds, "", "wind*diameter/nu", "")
	c.follows("NuForced", conv.NusseltForced, "",
		"2+(0.4*sqrt(Re)+0.06*pow(Re,2/3))*pow(Pr,0.4)*pow(muRatio,0.25)", "whitaker")
	c.follows("hForced", conv.Forced, "W/m²/K", "NuForced*kAir/diameter", "")
	c.follows("film", film, "°C", "(air+before)/2", "")
	c.given("nuFilm", filmAir.KinematicViscosity, "m²/s", "cengel")
	c.given("PrFilm", filmAir.Prandtl, "", "cengel")
	c.given("kFilm", filmAir.Conductivity, "W/m/K", "cengel")
	c.follows("Ra", conv.Rayleigh, "", "9.81/(film+273.15)*abs(before-air)*pow(diameter,3)*PrFilm/(nuFilm*nuFilm)", "")
	c.follows("NuFree", conv.NusseltFree, "", "2+0.589*pow(Ra,0.25)/pow(1+pow(0.469/PrFilm,9/16),4/9)", "churchill1983")
	c.follows("hFree", conv.Free, "W/m²/K", "NuFree*kFilm/diameter", "")
	c.follows("Nu", conv.Nusselt, "", "cbrt(pow(NuForced,3)+pow(NuFree,3))", "churchill1977")
	c.follows("hAlone", conv.Mixed, "W/m²/K", "Nu*kAir/diameter", "")
	c.given("compactness", i.berry.Compactness, "", fromScenario)
	c.given("tight", heat.Berry{Compactness: 1}.ConvectionFactor(), "", "assumptionTight")
	c.follows("bunchFactor", t.Factor, "", "1-(1-tight)*compactness", "assumption")
	c.follows("h", t.Convective, "W/m²/K", "hAlone*bunchFactor", "")
	c.follows("hr", t.Radiative, "W/m²/K", "4*emissivity*5.670374419e-8*pow((before+air)/2+273.15,3)", "stefanLinear")
	c.follows("hTotal", t.Convective+t.Radiative, "W/m²/K", "h+hr", "")
}

// meanLinks carry the whole berry through the step.
func (i *inspection) meanLinks(c *chain) {
	t, b := &i.trace, &i.berry
	c.part = "berry"
	c.follows("absorbed", t.FluxAbsorbed, "W/m²", "absorptance*(beamOnBerry/4+felt)", "quarter")
	i.latentLinks(c)
	c.follows("inflow", t.Inflow_Wm2, "W/m²", "absorbed+long-transpiration", "")
	c.follows("balance", t.Balance_C, "°C", "air+inflow/hTotal", "")
	c.given("density", b.Density, "kg/m³", "memoryDensity")
	c.given("heatCapacity", b.HeatCapacity, "J/kg/K", "memoryHeat")
	c.given("bunchRadius", b.BunchRadius_m, "m", fromScenario)
	c.follows("capacityRadius", t.CapacityRadius, "m",
		"diameter/2+compactness*compactness*max(bunchRadius-diameter/2,0)", "assumption")
	c.follows("capacity", t.Capacity_Jm2K, "J/m²/K", "density*heatCapacity*capacityRadius/3", "lumped")
	c.follows("timeConstant", t.Capacity_Jm2K/(t.Convective+t.Radiative), "s", "capacity/hTotal", "")
	c.given("step", i.dt_s, "s", "stepLength")
	c.follows("after", t.Mean_C, "°C", "balance+(before-balance)*exp(-step/timeConstant)", "exact")
}

// surfaceLinks lay the pattern of the skin over the mean.
func (i *inspection) surfaceLinks(c *chain) {
	t := &i.trace
	c.part = "skin"
	c.given("k", i.berry.Conductivity, "W/m/K", "memory")
	c.follows("inward", t.Inward_Wm2K, "W/m²/K", "k/(diameter/2)", "")
	c.follows("q0", i.berry.Absorptance*i.load.Beam_Wm2, "W/m²", "absorptance*beamOnBerry", "")
	const tilt = "(absorptance*felt%[1]s+long%[1]s+q0/2*sun%[2]s)/(hTotal+inward)"
	c.follows("tiltX", t.Tilt[0], "K", fmt.Sprintf(tilt, "X", "Across"), "legendreFirst")
	c.follows("tiltY", t.Tilt[1], "K", fmt.Sprintf(tilt, "Y", "Along"), "legendreFirst")
	c.follows("tiltZ", t.Tilt[2], "K", fmt.Sprintf(tilt, "Z", "Up"), "legendreFirst")
	along := t.Tilt.Dot(i.load.Sun)
	c.follows("tiltSun", along, "K", "tiltX*sunAcross+tiltY*sunAlong+tiltZ*sunUp", "")
	c.given("evenPole", t.EvenPole, "", "legendreEven")
	c.given("evenSlope", t.EvenSlope, "", "legendreEven")
	c.follows("evenRise", t.Even_K, "K", "(evenPole-0.25)*q0/hTotal", "")
	c.follows("slopeRise", t.Slope_K, "K", "evenSlope*q0/hTotal", "")
	lit := "after+evenRise+tiltSun"
	if i.load.Beam_Wm2 <= 0 {
		lit = "after+length(tiltX,tiltY,tiltZ)" // without a beam the pole is the hottest point
	}
	c.follows("litPole", t.Lit_C, "°C", lit, "")
	tangent := math.Copysign(t.Slope_K, along)
	c.follows("tangent", tangent, "K", "(2*(tiltSun >= 0)-1)*slopeRise", "")
	c.follows("surface", i.hottest, "°C",
		"after+evenRise-slopeRise+length(tiltX+tangent*sunAcross,tiltY+tangent*sunAlong,tiltZ+tangent*sunUp)", "largest")
}

// damageLinks are what the skin suffers at that temperature.
func (i *inspection) damageLinks(c *chain) {
	limits := i.scenario.Limits
	var t sunburn.Tally
	i.rule.Step(&t, i.hottest, i.hottest, i.load.Beam_Wm2 > 0, 1)
	c.part = "damage"
	c.given("T50", sunburn.T50(i.scenario.Fruit, limits), "°C", "limitsFruit")
	c.given("doubling", limits.Doubling_K, "K", "limits")
	c.given("tolerated", limits.Tolerated_K, "K", "limitsAssumed")
	c.follows("damageRate", t.Dose, "1/h",
		"2*max(pow(2,(surface-T50)/doubling)-pow(2,-tolerated/doubling),0)/(1-pow(2,-tolerated/doubling))", "damageRule")
}
