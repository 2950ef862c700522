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
	const raupach = "Raupach 1994"
	c.part = "wind"
	c.given("wind10", at.Wind_ms, "m/s", "10 m above open ground", "weather")
	c.given("windFrom", at.WindFrom_deg, "°", "where it comes from", "weather")
	c.follows("windAngle", w.Angle_deg, "°", "between wind and row line", "acos(abs(cos(windFrom-rowAzimuth)))", fromGeometry)
	if i.roof.there() {
		over = "windUnder"
		c.given("overheadWind", i.slowed.roof, "", "share of the wind that the net over all rows leaves", "0.7 at a shade factor of 0.4: assumption")
		c.follows("windUnder", at.Wind_ms*i.slowed.roof, "m/s", "what is left of it", "wind10*overheadWind", "")
	}
	c.given("top", w.Top_m, "m", "height of the canopy", fromStand)
	c.given("leafAreaIndex", i.leafArea, "m²/m²", "leaf area per ground area", fromStand)
	c.given("fruitHeight", height, "m", "mean height of the bunches", fromStand)
	c.given("displacement", w.Displacement_m, "m", "height that the flow over the rows takes for the ground, d", raupach)
	c.given("roughness", w.Roughness_m, "m", "roughness length of the planting, z0", raupach)
	c.follows("friction", w.FrictionVelocity_ms, "m/s", "friction velocity u* over the planting",
		"0.4*"+over+"*ln(60/0.03)/ln(10/0.03)/ln((60-displacement)/roughness)", "logarithmic profiles joined at 60 m (Wieringa 1986)")
	c.follows("shelter", w.Shelter, "", "share of the canopy's own profile", "1-exp(-leafAreaIndex/0.5)", "assumption")
	if w.Top_m > 0 {
		c.follows("windTop", w.TopWind_ms, "m/s", "at the top of the canopy",
			"friction/0.4*((1-shelter)*ln(max((top-displacement)/roughness,1))+shelter*(ln(2*(top-displacement)/roughness)-0.5))", raupach)
	}
	c.follows("attenuation", w.Attenuation, "", "how fast it falls below the top", "1+1.5*sin(windAngle)*sin(windAngle)", "weaker across the rows: Miller et al. 2017; numbers assumed")
	name, left := "wind", i.slowed.side[i.face%2]
	if left < 1 {
		name = "windRow"
	}
	if height < w.Top_m && height > 0.03 {
		c.follows(name, w.At(height), "m/s", "at the fruit, never below 0.15",
			"max(windTop*(shelter*exp(-attenuation*(1-fruitHeight/top))+(1-shelter)*ln(fruitHeight/0.03)/ln(top/0.03)),0.15)", "exponential profile")
	} else {
		c.given(name, w.At(height), "m/s", "at the fruit, never below 0.15", "profile above the canopy")
	}
	if left < 1 {
		c.given("netWind", left, "", "share of it that the nets on this side leave", "0.7 at a shade factor of 0.4: assumption")
		c.follows("wind", i.fruit().Wind_ms, "m/s", "behind the nets, never below 0.15", "max(windRow*netWind,0.15)", "")
	}
}

// airLinks warm the air from the screen to the fruit by what the floor gives off.
func (i *inspection) airLinks(c *chain) {
	p := i.near.air
	c.part = "air"
	c.given("airScreen", p.Screen_C, "°C", "air at 2 m", "weather")
	c.given("floorHeat", i.floor.Flux.Sensible, "W/m²", "that the floor gives to the air", "force–restore balance of 16 strips (Deardorff 1978)")
	c.given("airCapacity", p.Capacity_Jm3K, "J/m³/K", "heat that the air takes up", "Cengel & Ghajar, table A-15")
	c.follows("airFriction", p.Friction_ms, "m/s", "friction velocity, at least 0.05", "max(friction,0.05)", "assumption")
	given := "floorHeat"
	misted := i.near.mist.Air > 0
	if misted {
		c.given("mistAir", i.near.mist.Air, "W/m²", "that mist takes out of the air by evaporating", "half of the water, 2.43 MJ/kg: assumption")
		given = "(floorHeat-mistAir)"
	}
	c.follows("airScale", p.Scale_K, "K", "temperature scale -θ* of the profile", given+"/(airCapacity*airFriction)", "surface layer, Businger et al. 1971")
	c.follows("inverseL", p.Inverse_perm, "1/m", "one over the length of Obukhov", "-0.4*9.81*airScale/(airFriction*airFriction*(airScreen+273.15))", "Obukhov")
	const meaning = "air at the fruit, within 5 K of that at 2 m"
	name := "air"
	if misted {
		name = "airMisted"
		defer i.mistLinks(c)
	}
	height := i.stand.measures.FruitHeight_m
	if height >= 2 {
		c.follows(name, p.At(height), "°C", meaning, "airScreen", "fruit above the screen")
		return
	}
	c.follows("psiScreen", p.Stability(2), "", "stability ψ at 2 m", psi(p, "2"), "Paulson 1970; Dyer 1974")
	c.follows("psiFruit", p.Stability(math.Max(height, 0.05)), "", "stability ψ at the fruit", psi(p, "max(fruitHeight,0.05)"), "same")
	c.follows(name, p.At(height), "°C", meaning,
		"airScreen+max(-5,min(airScale/0.4*(ln(2/max(fruitHeight,0.05))-psiScreen+psiFruit),5))", "flux–profile relation")
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
	const medrano = "Medrano et al. 2002, from memory"
	c.part = "longwave"
	source := "clear sky, Brutsaert 1975"
	if len(i.scenario.Weather.Hours) > 0 {
		source = "measured, or by clouds, or Brutsaert 1975"
	}
	if i.roof.there() {
		c.given("skyLongOpen", at.Longwave_Wm2, "W/m²", "from the open sky on the horizontal", source)
		c.given("overheadTemperature", i.near.overhead_C, "°C", "threads of the net over all rows", "their own balance (Churchill & Bernstein 1977)")
		c.follows("skyLong", i.near.sky, "W/m²", "from sky and net on the horizontal",
			"overheadEven*skyLongOpen+(1-overheadEven)*"+fmt.Sprintf(emitted, "overheadTemperature"), "Stefan & Boltzmann")
	} else {
		c.given("skyLong", at.Longwave_Wm2, "W/m²", "from the sky on the horizontal", source)
	}
	if len(i.nets) > 0 {
		viewSky, viewFloor, nets = "viewSkyOpen", "viewFloorOpen", "+netIn"
		c.given("viewSkyOpen", v.sky.Mean, "", "share of the sky that they see between the threads of nets", "dome of the face")
		c.given("viewFloorOpen", v.ground.Mean, "", "share of their surroundings that is floor between the threads", "rays to the floor strips")
		c.given("viewNets", v.threads.Mean, "", "share of their surroundings that is threads", "what of sky and floor they hide")
		c.given("netTemperature", i.near.threads[i.face%2], "°C", "threads of the closest net on this side", "their own balance (Churchill & Bernstein 1977)")
		c.follows("netIn", i.from.nets.Mean, "W/m²", "from the threads on the skin, mean", "viewNets*"+fmt.Sprintf(emitted, "netTemperature"), "Stefan & Boltzmann")
	}
	c.follows("skyIn", i.from.sky.Mean, "W/m²", "of it on the skin, mean", viewSky+"*skyLong", "")
	c.given("floorLong", perView(i.from.floor, v.ground), "W/m²", "that leaves the floor, mean of the strips as the face sees them", "floor temperatures")
	c.follows("floorIn", i.from.floor.Mean, "W/m²", "of it on the skin, mean", viewFloor+"*floorLong", "")
	c.given("viewLeaves", v.leaves.Mean, "", "share of their surroundings that is leaves", "what sky, floor and bunch leave")
	c.given("stomata", i.leaf.Stomata, "mol/m²/s", "conductance of a leaf in full light, in air that is not dry", "water of the vines, "+medrano)
	c.given("leafTemperature", i.near.leaves.Temperature_C, "°C", "mean leaf", "its own balance (Monteith 1965, for one leaf)")
	c.follows("leafLong", i.near.leaf, "W/m²", "that leaves send out", fmt.Sprintf(emitted, "leafTemperature"), "Stefan & Boltzmann")
	c.follows("leavesIn", i.from.leaves.Mean, "W/m²", "of it on the skin, mean", "viewLeaves*leafLong", "")
	c.given("viewOwn", v.own.Mean, "", "share of their surroundings that is their own bunch", "half, with a soft edge")
	c.given("before", i.before, "°C", "whole berry at the instant before", "the run so far")
	c.follows("ownIn", i.from.own.Mean, "W/m²", "from the own bunch, as warm as the berry was", "viewOwn*"+fmt.Sprintf(emitted, "before"), "Stefan & Boltzmann")
	c.given("emissivity", i.berry.Emissivity, "", "of the skin in the longwave", "from memory, 0.95 – 0.98")
	c.follows("long", net.Mean, "W/m²", "taken in, less what the skin gives off at air temperature",
		"emissivity*(skyIn+floorIn+leavesIn+ownIn"+nets+"-"+fmt.Sprintf(emitted, "air")+")", "")
	c.given("longX", net.Vector[0], "W/m²", "how much more comes from across the row", "the same views by direction (first Legendre term)")
	c.given("longY", net.Vector[1], "W/m²", "from along the row", "same")
	c.given("longZ", net.Vector[2], "W/m²", "from above", "same")
}

// convectionLinks are the exchange of the berry with the air and its surroundings per kelvin.
func (i *inspection) convectionLinks(c *chain) {
	t, conv, fruit := &i.trace, &i.trace.Convection, i.fruit()
	film := (fruit.Air_C + i.before) / 2
	air, filmAir := heat.AirAt(fruit.Air_C, fruit.Pressure_Pa), heat.AirAt(film, fruit.Pressure_Pa)
	const table = "Cengel & Ghajar, table A-15"
	c.part = "exchange"
	c.given("diameter", i.berry.Diameter_m, "m", "of the berry", fromScenario)
	c.given("nu", air.KinematicViscosity, "m²/s", "kinematic viscosity of the air", table+", at the pressure of the site")
	c.given("Pr", air.Prandtl, "", "Prandtl number of the air", table)
	c.given("kAir", air.Conductivity, "W/m/K", "conductivity of the air", table)
	c.given("muRatio", conv.ViscosityRatio, "", "viscosity of the air over that at the skin", table)
	c.follows("Re", conv.Reynolds, "", "Reynolds number", "wind*diameter/nu", "")
	c.follows("NuForced", conv.NusseltForced, "", "Nusselt number of the wind",
		"2+(0.4*sqrt(Re)+0.06*pow(Re,2/3))*pow(Pr,0.4)*pow(muRatio,0.25)", "Whitaker 1972")
	c.follows("hForced", conv.Forced, "W/m²/K", "forced convection", "NuForced*kAir/diameter", "")
	c.follows("film", film, "°C", "air at the skin, mean of skin and air", "(air+before)/2", "")
	c.given("nuFilm", filmAir.KinematicViscosity, "m²/s", "kinematic viscosity there", table)
	c.given("PrFilm", filmAir.Prandtl, "", "Prandtl number there", table)
	c.given("kFilm", filmAir.Conductivity, "W/m/K", "conductivity there", table)
	c.follows("Ra", conv.Rayleigh, "", "Rayleigh number", "9.81/(film+273.15)*abs(before-air)*pow(diameter,3)*PrFilm/(nuFilm*nuFilm)", "")
	c.follows("NuFree", conv.NusseltFree, "", "Nusselt number of rising air", "2+0.589*pow(Ra,0.25)/pow(1+pow(0.469/PrFilm,9/16),4/9)", "Churchill 1983")
	c.follows("hFree", conv.Free, "W/m²/K", "free convection", "NuFree*kFilm/diameter", "")
	c.follows("Nu", conv.Nusselt, "", "both, blended", "cbrt(pow(NuForced,3)+pow(NuFree,3))", "Churchill 1977")
	c.follows("hAlone", conv.Mixed, "W/m²/K", "convection of a berry alone", "Nu*kAir/diameter", "")
	c.given("compactness", i.berry.Compactness, "", "of the bunch, 0 loose, 1 tight", fromScenario)
	c.given("tight", heat.Berry{Compactness: 1}.ConvectionFactor(), "", "what a tight bunch leaves of it", "assumption, 0.5 – 0.8")
	c.follows("bunchFactor", t.Factor, "", "what this bunch leaves of it", "1-(1-tight)*compactness", "assumption")
	c.follows("h", t.Convective, "W/m²/K", "convection of the berry in its bunch", "hAlone*bunchFactor", "")
	c.follows("hr", t.Radiative, "W/m²/K", "longwave per kelvin over the air", "4*emissivity*5.670374419e-8*pow((before+air)/2+273.15,3)", "Stefan & Boltzmann, linear")
	c.follows("hTotal", t.Convective+t.Radiative, "W/m²/K", "both", "h+hr", "")
}

// meanLinks carry the whole berry through the step.
func (i *inspection) meanLinks(c *chain) {
	t, b := &i.trace, &i.berry
	c.part = "whole berry"
	c.follows("absorbed", t.FluxAbsorbed, "W/m²", "sunlight taken in, mean over the skin", "absorptance*(beamOnBerry/4+felt)", "a sphere catches the beam on a quarter of its skin")
	i.latentLinks(c)
	c.follows("inflow", t.Inflow_Wm2, "W/m²", "heat taken in at air temperature", "absorbed+long-transpiration", "")
	c.follows("balance", t.Balance_C, "°C", "where the berry would come to rest", "air+inflow/hTotal", "")
	c.given("density", b.Density, "kg/m³", "of the berry", "from memory, 1050 – 1080")
	c.given("heatCapacity", b.HeatCapacity, "J/kg/K", "of the berry", "from memory, 3600 – 3800")
	c.given("bunchRadius", b.BunchRadius_m, "m", "radius of a sphere of the bunch's mass", fromScenario)
	c.follows("capacityRadius", t.CapacityRadius, "m", "radius of the sphere that warms together",
		"diameter/2+compactness*compactness*max(bunchRadius-diameter/2,0)", "assumption")
	c.follows("capacity", t.Capacity_Jm2K, "J/m²/K", "heat that it takes up per skin", "density*heatCapacity*capacityRadius/3", "lumped sphere")
	c.follows("timeConstant", t.Capacity_Jm2K/(t.Convective+t.Radiative), "s", "in which 63 % of the way is gone", "capacity/hTotal", "")
	c.given("step", i.dt_s, "s", "since the instant before", "simulation; 12 h at midnight, to rest")
	c.follows("after", t.Mean_C, "°C", "whole berry now", "balance+(before-balance)*exp(-step/timeConstant)", "exact for a constant load")
}

// surfaceLinks lay the pattern of the skin over the mean.
func (i *inspection) surfaceLinks(c *chain) {
	t := &i.trace
	const legendre = "Legendre series of max(cosθ,0), Carslaw & Jaeger 1959"
	c.part = "skin"
	c.given("k", i.berry.Conductivity, "W/m/K", "conductivity of the pulp", "from memory")
	c.follows("inward", t.Inward_Wm2K, "W/m²/K", "conduction through the berry, k/R", "k/(diameter/2)", "")
	c.follows("q0", i.berry.Absorptance*i.load.Beam_Wm2, "W/m²", "beam taken in where the skin faces the sun", "absorptance*beamOnBerry", "")
	const tilt = "(absorptance*felt%[1]s+long%[1]s+q0/2*sun%[2]s)/(hTotal+inward)"
	c.follows("tiltX", t.Tilt[0], "K", "rise of a skin that looks across the row", fmt.Sprintf(tilt, "X", "Across"), legendre+", n = 1")
	c.follows("tiltY", t.Tilt[1], "K", "along the row", fmt.Sprintf(tilt, "Y", "Along"), "same")
	c.follows("tiltZ", t.Tilt[2], "K", "upward", fmt.Sprintf(tilt, "Z", "Up"), "same")
	along := t.Tilt.Dot(i.load.Sun)
	c.follows("tiltSun", along, "K", "toward the sun", "tiltX*sunAcross+tiltY*sunAlong+tiltZ*sunUp", "")
	c.given("evenPole", t.EvenPole, "", "even terms at a pole of the beam, h·rise/q0, for inward/hTotal", legendre+", n = 0, 2, 4 …")
	c.given("evenSlope", t.EvenSlope, "", "their slope by cosθ there", "same")
	c.follows("evenRise", t.Even_K, "K", "rise by them at a pole over the mean", "(evenPole-0.25)*q0/hTotal", "")
	c.follows("slopeRise", t.Slope_K, "K", "its slope by cosθ", "evenSlope*q0/hTotal", "")
	lit := "after+evenRise+tiltSun"
	if i.load.Beam_Wm2 <= 0 {
		lit = "after+length(tiltX,tiltY,tiltZ)" // without a beam the pole is the hottest point
	}
	c.follows("litPole", t.Lit_C, "°C", "skin that faces the sun; the hottest without beam", lit, "")
	tangent := math.Copysign(t.Slope_K, along)
	c.follows("tangent", tangent, "K", "the slope on the side where the vector leans", "(2*(tiltSun >= 0)-1)*slopeRise", "")
	c.follows("surface", i.hottest, "°C", "hottest point of the skin",
		"after+evenRise-slopeRise+length(tiltX+tangent*sunAcross,tiltY+tangent*sunAlong,tiltZ+tangent*sunUp)", "largest of the vector and the tangent of the even terms")
}

// damageLinks are what the skin suffers at that temperature.
func (i *inspection) damageLinks(c *chain) {
	limits := i.scenario.Limits
	var t sunburn.Tally
	i.rule.Step(&t, i.hottest, i.hottest, i.load.Beam_Wm2 > 0, 1)
	c.part = "damage"
	c.given("T50", sunburn.T50(i.scenario.Fruit, limits), "°C", "surface temperature that kills half of the skins in 30 minutes", "limits of the scenario, for cultivar and hardening: assumption")
	c.given("doubling", limits.Doubling_K, "K", "rise that doubles the rate", "limits of the scenario")
	c.given("tolerated", limits.Tolerated_K, "K", "below T50 up to which skins repair themselves", "limits of the scenario: assumption")
	c.follows("damageRate", t.Dose, "1/h", "dose in an hour at that temperature; a dose of 1 kills half of the skins",
		"2*max(pow(2,(surface-T50)/doubling)-pow(2,-tolerated/doubling),0)/(1-pow(2,-tolerated/doubling))", "damage rule")
}
