package weather

import "math"

// stepCourse is one quantity at the five-minute steps of a day, the first and the last at its midnights.
type stepCourse [stepsOfDay + 1]float64

// mean is the mean over an hour by trapezoids.
func (c *stepCourse) mean(hour int) float64 {
	nodes := c[hour*stepsOfHour : (hour+1)*stepsOfHour+1]
	sum := (nodes[0] + nodes[stepsOfHour]) / 2
	for _, value := range nodes[1:stepsOfHour] {
		sum += value
	}
	return sum / stepsOfHour
}

// at is the value at an hour of the clock, straight between the steps. The day repeats.
func (c *stepCourse) at(hour float64) float64 {
	step := hour * stepsOfHour
	if step < 0 || step > stepsOfDay {
		step = wrap(hour) * stepsOfHour
	}
	nearest := math.Round(step)
	if math.Abs(step-nearest) < stampTolerance_h*stepsOfHour {
		return c[int(nearest)]
	}
	before := int(step)
	return mix(c[before], c[before+1], step-float64(before))
}

// stampTolerance_h is how near an hour must be to a step to lie on it [h].
const stampTolerance_h = 1e-9

// hourlyLight is one part of the light as the mean of each hour, to be made a course through the day.
type hourlyLight struct {
	wanted [hoursOfDay]float64
	shapes [hoursOfDay][stepsOfHour + 1]float64 // of each hour, with the wanted mean
	most   *stepCourse                          // what the sky can send; none with the sun down
}

// add gives an hour its mean and the shape that its light would have if nothing changed in it.
func (h *hourlyLight) add(hour int, wanted float64, shape *stepCourse) {
	mean := shape.mean(hour)
	if wanted <= 0 || mean <= 0 {
		h.wanted[hour] = math.Max(wanted, 0)
		return
	}
	h.wanted[hour] = wanted
	for k := range h.shapes[hour] {
		h.shapes[hour][k] = shape[hour*stepsOfHour+k] * wanted / mean
	}
}

// through lays a course through the hours that keeps the mean of each, does not jump where hours meet, is never below
// zero and nowhere above what the sky can send. It is a mean-preserving interpolation (as Rymes & Myers 2001, Solar
// Energy 71, made one by iteration), here of the shapes: at each stamp the course stands between the shapes of both
// hours; within an hour the shape is turned from the one end to the other and lifted or lowered by a parabola until the
// mean is kept. What has no place, as light with the sun down, is given back [Wh/m²].
func (h *hourlyLight) through() (c stepCourse, unplaced float64) {
	for stamp := 0; stamp <= hoursOfDay; stamp++ {
		c[stamp*stepsOfHour] = h.atStamp(stamp)
	}
	for hour := range hoursOfDay {
		h.within(hour, &c)
		unplaced += h.wanted[hour] - c.mean(hour)
	}
	return c, unplaced
}

// mostOfShape is how far a stamp may lie above the shape of either hour [1]. With twice the shape at both ends, an hour
// keeps half of it in its middle.
const mostOfShape = 2

// atStamp is the value where two hours meet: the mean of their shapes, but no more than each can balance.
func (h *hourlyLight) atStamp(stamp int) float64 {
	left, right := (stamp+hoursOfDay-1)%hoursOfDay, stamp%hoursOfDay
	a, b := h.shapes[left][stepsOfHour], h.shapes[right][0]
	most := math.Min(h.most[0], h.most[stepsOfDay])
	if stamp > 0 && stamp < hoursOfDay {
		most = h.most[stamp*stepsOfHour]
	}
	value := math.Min((a+b)/2, mostOfShape*math.Min(a, b))
	// Where the sun is up at the end of an hour only, the stamp alone carries its light; the other hour gives way
	// with up to half of its own.
	const halfOfHour = stepsOfHour
	switch {
	case a > 0 && h.dark(left):
		value = math.Min(a, halfOfHour*h.wanted[right])
	case b > 0 && h.dark(right):
		value = math.Min(b, halfOfHour*h.wanted[left])
	}
	return math.Min(value, most)
}

// dark tells whether an hour has no light between its ends.
func (h *hourlyLight) dark(hour int) bool {
	for _, value := range h.shapes[hour][1:stepsOfHour] {
		if value > 0 {
			return false
		}
	}
	return true
}

// within fills the steps between the ends of an hour so that its mean is kept.
func (h *hourlyLight) within(hour int, c *stepCourse) {
	shape := &h.shapes[hour]
	first := hour * stepsOfHour
	a, b := c[first], c[first+stepsOfHour]
	turn := [2]float64{1, 1} // of the shape at both ends
	if shape[0] > 0 {
		turn[0] = a / shape[0]
	}
	if shape[stepsOfHour] > 0 {
		turn[1] = b / shape[stepsOfHour]
	}
	fill := func(lift float64) (sum float64) {
		for k := 1; k < stepsOfHour; k++ {
			s := float64(k) / stepsOfHour
			value := shape[k] * (mix(turn[0], turn[1], s) + lift*4*s*(1-s))
			c[first+k] = math.Max(0, math.Min(value, h.most[first+k]))
			sum += c[first+k]
		}
		return sum
	}
	solveRising(fill, stepsOfHour*h.wanted[hour]-(a+b)/2)
}

// solveRising finds the argument at which a function that never falls, made of straight pieces, has a value, and leaves
// the function called with it; where the value is out of reach, with one at which it is nearest.
func solveRising(f func(float64) float64, want float64) {
	low, high := -1.0, 1.0
	const farthest = 1 << 30
	for f(low) > want && low > -farthest {
		low *= 2
	}
	for f(high) < want && high < farthest {
		high *= 2
	}
	// False position and halving in turn: the one ends on a straight piece at once, the other comes there.
	for range 100 {
		atLow, atHigh := f(low), f(high)
		if !(atHigh > atLow) {
			break
		}
		between := low + (high-low)*(want-atLow)/(atHigh-atLow)
		for _, x := range []float64{between, (low + high) / 2} {
			if !(x > low && x < high) {
				continue
			}
			switch value := f(x); {
			case math.Abs(value-want) <= 1e-13*math.Abs(want):
				return
			case value < want:
				low = x
			default:
				high = x
			}
		}
	}
	f(high)
}
