package render

import "math"

// leafShape is the outline of a vine leaf around the point where the petiole meets the blade: the
// distance to the margin as a function of the angle from the midrib, and the veins. Lengths are in
// units of the midrib.
type leafShape struct {
	radius   [outlineSteps + 1]float32 // over the angle 0 (tip) … π (petiole)
	veins    []vein
	centroid float32 // of the blade, along the midrib from the petiole
	area     float32
	reach    float32 // half side of the square around the centroid that holds the blade
}

const outlineSteps = 720

// vein is one straight piece of a vein on the right half of the blade, x across and y along the
// midrib: from a by d, thick at a and thin at its end.
type vein struct {
	ax, ay, dx, dy float64
	width          float64 // at a
	perLength2     float64 // 1 over the square of its length
}

func newVein(ax, ay, dx, dy, width float64) vein {
	return vein{ax, ay, dx, dy, width, 1 / (dx*dx + dy*dy)}
}

// lobing describes one leaf: the lengths of the upper and lower side lobes relative to the middle one,
// how far the sinuses reach in, and the teeth. Ratios and the angles between main veins of near 50° are
// those of common five-lobed blades (from memory of Galet's ampelometry).
type lobing struct {
	upper, lower        float64 // lengths of the side lobes
	upperSinus, inSinus float64 // distance of the upper and lower sinus from the petiole
	petioleSinus        float64 // half opening of the petiole sinus [deg]
	teeth               float64
}

var lobings = [leafShapes]lobing{
	{upper: 0.88, lower: 0.68, upperSinus: 0.64, inSinus: 0.56, petioleSinus: 16, teeth: 0.075},
	{upper: 0.84, lower: 0.66, upperSinus: 0.52, inSinus: 0.46, petioleSinus: 22, teeth: 0.085},
	{upper: 0.92, lower: 0.76, upperSinus: 0.78, inSinus: 0.70, petioleSinus: 12, teeth: 0.065},
	{upper: 0.80, lower: 0.60, upperSinus: 0.58, inSinus: 0.50, petioleSinus: 26, teeth: 0.090},
}

const (
	leafShapes     = 4
	upperVein_deg  = 53.0
	lowerVein_deg  = 107.0
	upperSinus_deg = 29.0
	lowerSinus_deg = 80.0
	teethPerHalf   = 21
)

func newLeafShape(l lobing) *leafShape {
	s := &leafShape{}
	outline := []struct{ angle_deg, radius float64 }{
		{0, 1}, {upperSinus_deg, l.upperSinus}, {upperVein_deg, l.upper}, {lowerSinus_deg, l.inSinus},
		{lowerVein_deg, l.lower}, {140, 0.9 * l.lower}, {180 - l.petioleSinus, 0.74 * l.lower}, {180, 0.05},
	}
	k := 0
	for i := range s.radius {
		angle := float64(i) / outlineSteps * 180
		for angle > outline[k+1].angle_deg {
			k++
		}
		t := (angle - outline[k].angle_deg) / (outline[k+1].angle_deg - outline[k].angle_deg)
		// Half straight, half rounded: lobes come to a point, sinuses stay open.
		t = 0.5*t + 0.5*t*t*(3-2*t)
		s.radius[i] = float32(outline[k].radius + (outline[k+1].radius-outline[k].radius)*t)
	}
	s.cutTeeth(l.teeth)
	s.drawVeins(l)
	s.measure()
	return s
}

// cutTeeth notches the margin at equal steps along it; teeth lean to the tip of the leaf and die out
// in the petiole sinus.
func (s *leafShape) cutTeeth(depth float64) {
	var along [outlineSteps + 1]float64
	for i := 1; i <= outlineSteps; i++ {
		r0, r1 := float64(s.radius[i-1]), float64(s.radius[i])
		along[i] = along[i-1] + math.Hypot(r1-r0, (r0+r1)/2*math.Pi/outlineSteps)
	}
	for i := range s.radius {
		phase := along[i] / along[outlineSteps] * teethPerHalf
		saw := phase - math.Floor(phase)
		notch := saw / 0.68
		if saw > 0.68 {
			notch = (1 - saw) / 0.32
		}
		// Every third tooth, nearest to a vein end, is the largest.
		size := 0.75 + 0.25*math.Cos(2*math.Pi*phase/3)
		fade := 1 - smooth(150, 168, float64(i)/outlineSteps*180)
		s.radius[i] *= float32(1 - depth*notch*size*fade)
	}
}

func (s *leafShape) drawVeins(l lobing) {
	mains := []struct{ angle_deg, length, width float64 }{
		{0, 0.97, 0.024}, {upperVein_deg, l.upper * 0.96, 0.020}, {lowerVein_deg, l.lower * 0.96, 0.017}, {143, l.lower * 0.8, 0.011},
	}
	for m, main := range mains {
		sin, cos := math.Sincos(main.angle_deg * math.Pi / 180)
		s.veins = append(s.veins, newVein(0, 0, sin*main.length, cos*main.length, main.width))
		for b := range 5 {
			at := (0.24 + 0.145*float64(b)) * main.length
			for _, turn := range []float64{-47, 47} {
				if m == 0 && turn < 0 {
					continue // the mirrored half draws it
				}
				side, forth := math.Sincos((main.angle_deg + turn) * math.Pi / 180)
				length := 0.42 * (main.length - at)
				s.veins = append(s.veins, newVein(sin*at, cos*at, side*length, forth*length, 0.45*main.width))
			}
		}
	}
}

// measure finds area and centroid of the whole blade and the square that holds it.
func (s *leafShape) measure() {
	var area, moment float64
	step := math.Pi / outlineSteps
	for i := range s.radius {
		r, angle := float64(s.radius[i]), float64(i)*step
		area += r * r * step // both halves: 2 · r²/2
		moment += 2.0 / 3 * r * r * r * math.Cos(angle) * step
	}
	s.area = float32(area)
	s.centroid = float32(moment / area)
	for i := range s.radius {
		sin, cos := math.Sincos(float64(i) * step)
		r := float64(s.radius[i])
		s.reach = max(s.reach, float32(r*sin), float32(math.Abs(r*cos-float64(s.centroid))))
	}
	s.reach *= 1.04
}

// inside is how far a point lies inside the margin, counted along the line from the petiole.
func (s *leafShape) inside(x, y float64) float64 {
	angle := math.Atan2(math.Abs(x), y)
	place := angle / math.Pi * outlineSteps
	i := min(int(place), outlineSteps-1)
	f := place - float64(i)
	return float64(s.radius[i])*(1-f) + float64(s.radius[i+1])*f - math.Sqrt(x*x+y*y)
}

// relief is the brightness of the blade at a point: 1 on a vein, about 0.8 on the flat, less in the
// groove beside a vein.
func (s *leafShape) relief(x, y float64) float64 {
	x = math.Abs(x)
	on, groove := 0.0, 0.0
	for i := range s.veins {
		v := &s.veins[i]
		px, py := x-v.ax, y-v.ay
		t := min(max((px*v.dx+py*v.dy)*v.perLength2, 0), 1)
		px, py = px-t*v.dx, py-t*v.dy
		w := v.width * (1.1 - 0.8*t)
		d2 := px*px + py*py
		if d2 > 20.25*w*w {
			continue // beyond the groove
		}
		d := math.Sqrt(d2)
		on = max(on, 1-smooth(0.35*w, 1.1*w, d))
		groove = max(groove, (1-smooth(w, 4.5*w, d))*(0.4+30*w))
	}
	blade := 0.80 + 0.05*(1-math.Sqrt(x*x+y*y)) - 0.11*min(groove, 1)
	return blade + (1-blade)*on
}
