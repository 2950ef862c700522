package sim

import (
	"math"

	"rowlight/sim/light"
	"rowlight/sim/result"
	"rowlight/sim/spread"
	"rowlight/sim/weather"
)

// What is drawn of each side: the numbers of its summary, then three of every whole hour.
const (
	hourNumbers = 3
	dayHours    = 25
	allNumbers  = result.SummaryNumbers + hourNumbers*dayHours
)

// numbers are those of both sides of an option.
type numbers [2][allNumbers]float64

// put takes the numbers of a side from its summary and from the steps at some hours.
func (n *numbers) put(side int, summary result.Summary, steps *result.Steps, hours []float64) {
	of := summary.Numbers()
	copy(n[side][:], of[:])
	for k, hour := range hours {
		if whole := int(hour); float64(whole) == hour {
			at := result.SummaryNumbers + hourNumbers*whole
			n[side][at], n[side][at+1], n[side][at+2] = steps.LitShare[k], steps.Mean_C[k], steps.Hottest_C[k]
		}
	}
}

// summary is that of a side.
func (n *numbers) summary(side int) (s result.Summary) {
	s.SetNumbers([result.SummaryNumbers]float64(n[side][:result.SummaryNumbers]))
	return s
}

// drawnOption is what the draws make of an option.
type drawnOption struct {
	central numbers
	usual   numbers   // of the thin option, without any draw
	fields  []numbers // what other light fields add
	noise   []numbers // what the light field of each draw adds
	values  []numbers // of each draw
}

// begin takes the central numbers and finds what draws are held against. What the light field adds is found once for a
// few fields with everything else as it is, and made as small as it is for all bunches.
func (t *thinOption) begin(day *result.Day, option int, c *coarse, pace func() error) (out drawnOption, err error) {
	for side := range out.central {
		of := &day.Options[option].Sides[side]
		out.central.put(side, of.Summary, &of.Steps, day.Hour)
	}
	if out.usual, err = t.live(c.usual, c.inputs, t.shade, pace); err != nil {
		return out, err
	}
	out.fields, err = t.fields(c, pace)
	return out, err
}

// draw lives through one draw.
func (t *thinOption) draw(out *drawnOption, course weather.Series, values spread.Draw, pace func() error) error {
	lived, err := t.live(course, values, t.shade, pace)
	if err != nil {
		return err
	}
	field := numbers{}
	if n := len(out.fields); n > 0 {
		field = out.fields[min(int(values[spread.Field]*float64(n)), n-1)]
	}
	out.noise = append(out.noise, field)
	out.values = append(out.values, shifted(out.central, &lived, &out.usual, &field))
	return nil
}

// fieldsDrawn is the number of light fields that are looked at: their standard deviation is then known within a fifth.
const fieldsDrawn = 12

// fields are what other light fields add to each number, with mean zero and the deviation of all bunches.
func (t *thinOption) fields(c *coarse, pace func() error) ([]numbers, error) {
	if c.inputs[spread.Field] == c.fieldHigh {
		return nil, nil
	}
	all := make([]numbers, fieldsDrawn)
	var mean numbers
	for k := range all {
		lived, err := t.live(c.usual, c.inputs, t.shades[k], pace)
		if err != nil {
			return nil, err
		}
		all[k] = lived
		each(&mean, func(side, i int, to *float64) { *to += lived[side][i] / fieldsDrawn })
	}
	// The mean of n bunches deviates √(N/n) times as far as that of N; and the mean was taken of the same draws.
	scale := math.Sqrt(t.kept) * math.Sqrt(fieldsDrawn/(fieldsDrawn-1.0))
	for k := range all {
		each(&all[k], func(side, i int, value *float64) { *value = scale * (*value - mean[side][i]) })
	}
	return all, nil
}

// shifted adds to the central numbers what a draw changes, within what each number can be.
func shifted(central numbers, lived, usual, field *numbers) numbers {
	each(&central, func(side, i int, value *float64) {
		moved := *value + (lived[side][i] - usual[side][i]) + field[side][i]
		*value = math.Min(math.Max(moved, math.Min(possible[i].low, *value)), math.Max(possible[i].high, *value))
	})
	return central
}

// possible are the bounds of each number, in its order.
var possible = func() (bounds [allNumbers]struct{ low, high float64 }) {
	low := result.Summary{Hottest_C: math.Inf(-1), MeanMax_C: math.Inf(-1)}
	high := result.Summary{
		Lit_h: 24, Light_MJm2: math.Inf(1), Hottest_C: math.Inf(1), HottestAt_h: 24, MeanMax_C: math.Inf(1),
		OverWatch_h: 24, OverHot_h: 24, OverBurn_h: 24,
		HottestOverWatch_h: 24, HottestOverHot_h: 24, HottestOverBurn_h: 24, AtRisk: 1, Browning: math.Inf(1),
	}
	for i, value := range low.Numbers() {
		bounds[i].low, bounds[i].high = value, high.Numbers()[i]
	}
	for i := result.SummaryNumbers; i < allNumbers; i++ {
		bounds[i].low, bounds[i].high = math.Inf(-1), math.Inf(1)
		if (i-result.SummaryNumbers)%hourNumbers == 0 { // a share
			bounds[i].low, bounds[i].high = 0, 1
		}
	}
	return bounds
}()

// each goes through the numbers of both sides.
func each(n *numbers, do func(side, i int, value *float64)) {
	for side := range n {
		for i := range n[side] {
			do(side, i, &n[side][i])
		}
	}
}

// shades are the thresholds of every face in the instants of a day that berries live through.
type shades [][]float64

// newShades finds them for the suns of a day.
func newShades(model *light.Model, suns []light.Sky) shades {
	s := make(shades, len(suns))
	for k := range s {
		s[k] = make([]float64, len(model.Faces))
		if suns[k].Beam > 0 {
			model.Thresholds(suns[k].Sun, s[k])
		}
	}
	return s
}
