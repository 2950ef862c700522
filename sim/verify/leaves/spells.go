package leaves

import (
	"fmt"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"rowlight/sim/canopy"
	"rowlight/sim/canopy/yardstick"
	"rowlight/sim/light"
	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// Spells are the times for which the sun stays on one bunch face, over the hot day and rows either way.
type Spells struct {
	Count         float64 // per face and day
	Mean_min      float64
	Median_min    float64
	LitMinute_min float64 // length of the spell in which a minute of sun falls, on average
}

// Timing compares, for one form, when and for how long the sun is on bunch faces.
type Timing struct {
	Form       string
	Leaves     Spells  // between leaves, at one berry of each face
	Field      Spells  // in the simulation
	Moment_min float64 // how far the moment at which a face comes into or out of the sun by its dome lies from that by a ray through the same grid
}

// MomentAllowed is how far it may lie [min].
const MomentAllowed = 2.0

// MeasureTiming follows the sun of the hot day minute by minute over stands of a form.
func MeasureTiming(form scenario.Form, seeds int, pace func() error) (Timing, error) {
	t := Timing{Form: form.Key}
	day, err := newHotDay()
	if err != nil {
		return t, err
	}
	var byLeaves, byField spells
	var moments turns
	for seed := 1; seed <= seeds; seed++ {
		stand, err := training.Build(form.Option, day.latitude_deg, seed)
		if err != nil {
			return t, fmt.Errorf("form %q, seed %d: %w", form.Key, seed, err)
		}
		model, err := light.New(stand, light.Settings{Seed: seed, Clumping: 1}, pace)
		if err != nil {
			return t, err
		}
		for _, row := range rows {
			w := newWatch(stand, model)
			for minute := range 24 * 60 {
				if err := pace(); err != nil {
					return t, err
				}
				if sun, ok := day.toSun(row, float64(minute)/60); ok {
					w.minute(sun, &moments)
				}
			}
			byLeaves.add(w.byLeaves)
			byField.add(w.byField)
		}
	}
	t.Leaves, t.Field, t.Moment_min = byLeaves.sum(), byField.sum(), moments.off()
	return t, nil
}

// watch follows all faces of one stand over one day.
type watch struct {
	model     *light.Model
	caster    *yardstick.Caster
	stand     *training.Stand
	ray       *canopy.Ray
	grid      *canopy.Grid
	thickness *canopy.Thickness
	instant   light.Instant

	byLeaves, byField [][]bool // of each face, minute by minute
	was               []bool   // by ray, of the faces whose moments are compared
}

func newWatch(stand *training.Stand, model *light.Model) *watch {
	grid := canopy.FromStand(stand, canopy.Slope{})
	faces := len(model.Faces)
	return &watch{
		model: model, stand: stand, caster: yardstick.NewCaster(stand, canopy.Slope{}),
		grid: grid, ray: canopy.NewRay(grid), thickness: canopy.NewThickness(grid),
		byLeaves: make([][]bool, faces), byField: make([][]bool, faces), was: make([]bool, faces),
	}
}

// momentFaces: of so many bunches one has its moments compared.
const momentFaces = 4

// minute looks at one minute of the day. Whether its own bunch shades a face is left to the model on both sides of
// the comparison.
func (w *watch) minute(sun mgl64.Vec3, moments *turns) {
	sky := light.Sky{Sun: sun, Beam: 1}
	w.model.At(sky, &w.instant)
	w.thickness.Toward(sun)
	for f, lit := range w.instant.Lit {
		side := scenario.Side(f % 2)
		outward := canopy.Point{Mirrored: side == scenario.Left}.InFrame(sun)[0]
		free := false
		if outward > w.model.Edge(f) {
			bunch := &w.stand.Bunches[f/2]
			// The berry that looks straight out draws the same spot all day.
			from := yardstick.Spot(bunch, side, yardstick.Direction(side, 0, 0), firstRay)
			free = !w.caster.Hit(from, sun)
		}
		w.byLeaves[f] = append(w.byLeaves[f], free)
		w.byField[f] = append(w.byField[f], lit)
		if f/2%momentFaces == 0 {
			w.moment(f, sky, lit, moments)
		}
	}
}

// moment compares a face by dome and by ray.
func (w *watch) moment(f int, sky light.Sky, lit bool, moments *turns) {
	s, ok := w.model.Sight(f, sky)
	byRay := ok && s.Outward > s.Edge &&
		s.Field < canopy.Gap(s.Clumping, w.ray.Depth(w.thickness, w.grid.Snap(s.At), sky.Sun))
	if byRay != lit {
		moments.wrong++
	}
	if byRay != w.was[f] {
		moments.count++
	}
	w.was[f] = byRay
}

// turns counts the moments at which faces come into or out of the sun, and the minutes in which two ways of
// finding out disagree.
type turns struct{ wrong, count float64 }

// off is the mean time between the moment by one way and by the other [min].
func (t *turns) off() float64 {
	if t.count == 0 {
		return 0
	}
	return t.wrong / t.count
}

// spells gathers spells.
type spells struct {
	lengths []float64 // [min]
	faces   float64
}

// add adds the spells of one day of all faces.
func (s *spells) add(faces [][]bool) {
	for _, minutes := range faces {
		s.faces++
		length := 0.0
		for _, lit := range minutes {
			switch {
			case lit:
				length++
			case length > 0:
				s.lengths = append(s.lengths, length)
				length = 0
			}
		}
		if length > 0 {
			s.lengths = append(s.lengths, length)
		}
	}
}

// sum puts the spells into a few numbers; all are 0 where there is no sun.
func (s *spells) sum() (all Spells) {
	n := float64(len(s.lengths))
	if n == 0 {
		return all
	}
	minutes, squares := 0.0, 0.0
	for _, length := range s.lengths {
		minutes += length
		squares += length * length
	}
	slices.Sort(s.lengths)
	return Spells{
		Count: n / s.faces, Mean_min: minutes / n, Median_min: s.lengths[len(s.lengths)/2], LitMinute_min: squares / minutes,
	}
}
