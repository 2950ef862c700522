package render

// leafLight is what the light on all leaves has in common, per colour.
type leafLight struct {
	sky   rgb // through gaps, on a level leaf
	glow  rgb // from the leaves around
	beam  rgb // square to the sun
	shine rgb // of the beam that wax throws back
}

// Shares of light on leaves, set by eye.
const (
	beamInGlow = 0.10  // of the beam that is on its way between leaves
	waxShine   = 0.012 // of the beam that the wax of the upper skin throws back
	sunGain    = 1.35  // lifts sunlit leaves against the shade
)

func newLeafLight(light *daylight) leafLight {
	return leafLight{
		sky:  light.sky.scaled(shadeGain),
		glow: leafGlow.times(light.sky.plus(light.beam.scaled(beamInGlow))).scaled(shadeGain),
		beam: light.beam.scaled(sunGain), shine: light.beam.scaled(sunGain * waxShine),
	}
}

// lightLeaves colours all leaves for the sun of the map.
func (next *lighting) lightLeaves(set *leafSet, m *sunMap, tone *toneTable, film float32, pace func() error) error {
	light, sun := newLeafLight(&next.light), next.light.sun
	next.average = rgb{}
	var weight float32 // outer leaves are the ones that are seen
	for i := range set.leaf {
		if i%leavesPerPace == 0 {
			if err := pace(); err != nil {
				return err
			}
		}
		leaf, colour := &set.leaf[i], &next.leafColour[i]
		lit := m.seesCorners(int32(i), leaf, &colour.lit)
		dust := film * (0.5 + float32(hash(uint64(i), 51)&255)/255) // droplets dry in an uneven layer
		colour.set(leaf, &light, leaf.normal[0]*sun[0]+leaf.normal[1]*sun[1]+leaf.normal[2]*sun[2], dust, tone)
		for k := range next.average {
			shade, sunlit := colour.shade[upperFace][k], colour.sunlit[upperFace][k]
			next.average[k] += leaf.open * (shade + lit*(sunlit-shade))
		}
		weight += leaf.open
	}
	if weight > 0 {
		next.average = next.average.scaled(1 / weight)
	}
	return nil
}

// seesCorners finds how far the sun reaches the places halfway from the middle of a leaf to the corners of
// its square, and their mean.
func (m *sunMap) seesCorners(owner int32, leaf *leafQuad, lit *[4]float32) (mean float32) {
	if !m.lit {
		*lit = [4]float32{}
		return 0
	}
	centre, tip, side := m.terrain.above(leaf.centre), m.terrain.tilted(leaf.tip), m.terrain.tilted(leaf.side)
	cu, cv := m.texel(&centre)
	au, av := m.texel(&tip)
	bu, bv := m.texel(&side)
	for k := range lit {
		a, b := 0.5*cornerSigns[k][0], 0.5*cornerSigns[k][1]
		lit[k] = 0
		if m.reaches(owner, cu+a*au+b*bu, cv+a*av+b*bv, centre[2]+a*tip[2]+b*side[2]) {
			lit[k] = 1
			mean += 0.25
		}
	}
	return mean
}

// set colours both faces of a leaf out of the sun and in it. Incidence is the part of its normal that
// points to the sun. Out of the sun it has light from the sky above, through the gaps, and green light from
// the leaves around; in the sun one face throws the beam back and the other lets it through. A film adds its share to
// what the upper face throws back, of all colours alike.
func (c *leafColour) set(leaf *leafQuad, light *leafLight, incidence, film float32, tone *toneTable) {
	sunFace, strength := upperFace, incidence
	if incidence < 0 {
		sunFace, strength = lowerFace, -incidence
	}
	fromSky := leaf.open * (0.4 + 0.6*leaf.open) * (0.55 + 0.45*abs(leaf.normal[2]))
	fromLeaves := 0.05 + 0.35*leaf.open
	for k := range 3 {
		ambient := light.sky[k]*fromSky + light.glow[k]*fromLeaves
		upper := leaf.green[k]
		reflected := [2]float32{upper + film, upper * underside[k]}
		through := light.beam[k] * strength * passedOn[k] * (0.4 + 0.6*upper/oldGreen[1])
		direct := [2]float32{through, through}
		direct[sunFace] = strength * (light.beam[k]*reflected[sunFace] + light.shine[k])
		for face := range reflected {
			shade := ambient * reflected[face]
			c.shade[face][k], c.sunlit[face][k] = tone.at(shade), tone.at(shade+direct[face])
		}
	}
}
