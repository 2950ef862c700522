package render

// Way is a way of looking at a planting.
type Way uint8

// The ways of looking.
const (
	Natural  Way = iota // as it looks, the fruit in the colours of its temperature
	Sunlight            // leaves and fruit in the colours of the sunlight on them
	Heat                // only the fruit in colour, the leaves like smoked glass
	Slice               // a slice of the row seen end-on before the field of light
	Outlook             // the sky as one bunch sees it, with the ways of the sun through the year
	wayCount
)

var wayNames = [wayCount]string{"natural", "light", "heat", "slice", "outlook"}

// Ways lists the ways of looking for people.
func Ways() []Way { return []Way{Natural, Sunlight, Heat, Slice, Outlook} }

// String is the name of a way; one that is none has the name of the first.
func (w Way) String() string {
	if w >= wayCount {
		w = Natural
	}
	return wayNames[w]
}

// WayNamed finds a way by its name.
func WayNamed(name string) (Way, bool) {
	for w, known := range wayNames {
		if known == name {
			return Way(w), true
		}
	}
	return Natural, false
}

// Flat reports whether a way draws on paper instead of before ground and sky.
func (w Way) Flat() bool { return w == Slice || w == Outlook }

// OnPaper reports whether a view is drawn on paper.
func (v *View) OnPaper() bool { return v.Way.Flat() || v.Objects }

// BrightestLight_Wm2 is the upper end of the common scale of sunlight; the lower end is 0. Full sun on a leaf
// square to it is a little more on the clearest days.
const BrightestLight_Wm2 = 1000.0

// Papers of the flat ways, and ink on them.
var (
	lightPaper = rgb{0.984, 0.984, 0.973}
	darkPaper  = rgb{0.071, 0.078, 0.071}
	lightInk   = rgb{0.16, 0.19, 0.15}
	darkInk    = rgb{0.80, 0.83, 0.77}
	amber      = rgb{0.95, 0.66, 0.10} // the sun and its ways
)

// Paper is the colour of the ground that a flat way draws on, each part 0–1.
func (v *View) Paper() [3]float32 {
	if v.Objects {
		return [3]float32{} // the colour of no object
	}
	if v.Dark {
		return darkPaper
	}
	return lightPaper
}

func (v *View) ink() rgb {
	if v.Dark {
		return darkInk
	}
	return lightInk
}

// Grey of what is not meant to be looked at.
const (
	muteShare  = 0.88 // of the colour that is taken away
	glassAlpha = 0.20 // of leaves that the fruit is seen through
	sliceAlpha = 0.62 // of leaves before the field of light
)

// muted takes most of the colour away from a display colour.
func (c rgb) muted() rgb {
	grey := 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2]
	return c.mix(rgb{grey, grey, grey}, muteShare)
}

// mute takes the colour away from ground and sky.
func (b *Backdrop) mute() {
	for _, c := range []*rgb{&b.Beam, &b.Sky, &b.Zenith, &b.Horizon, &b.Glow, &b.Haze, &b.FarRows, &b.Cover, &b.Worn, &b.Strip} {
		*c = c.muted()
	}
}

// lightColour is the display colour of sunlight [W/m²] on the common scale.
func (s *Scene) lightColour(light_Wm2 float32) rgb {
	return s.lights[int(min(max(light_Wm2/BrightestLight_Wm2, 0), 1)*float32(len(s.lights)-1)+0.5)]
}

// leafSunlight is the sunlight on a leaf out of the sun and in it [W/m²]: the light of the sky through the
// leaves around, and with it the beam by its angle. What leaves and ground throw back is left out.
func (s *Scene) leafSunlight(leaf *leafQuad) (shade, sunlit float32) {
	sun := s.light.sun
	shade = s.diffuse() * leaf.open
	return shade, shade + s.beam()*abs(leaf.normal.Dot(sun))
}

// faceSunlight is the sunlight on a bunch face [W/m²], counted as on a leaf.
func (s *Scene) faceSunlight(face int32) float32 {
	body := &s.bunches.bunch[face/2]
	light := s.diffuse() * s.open.at(float64(body.centre[0]), float64(body.centre[2]))
	if s.faceLit[face] {
		sign := float32(2*(face%2) - 1)
		light += s.beam() * max(sign*s.light.sun[0], 0) * s.behindNets(body.centre)
	}
	return light
}

// meanLeafLight is the display colour of the mean sunlight on the leaves that are seen from far away.
func (s *Scene) meanLeafLight() rgb {
	var sum, weight float32
	for i := range s.leaves.leaf {
		leaf, lit := &s.leaves.leaf[i], &s.leafColour[i].lit
		shade, sunlit := s.leafSunlight(leaf)
		sum += leaf.open * (shade + (lit[0]+lit[1]+lit[2]+lit[3])/4*(sunlit-shade))
		weight += leaf.open
	}
	return s.lightColour(sum / max(weight, 1e-6))
}
