package training

import (
	"errors"
	"fmt"
	"math"

	"rowlight/sim/internal/draw"
	"rowlight/sim/scenario"
)

// fewestVines and fewestBunches set the length of the period: sides of a row are compared by the
// faces of their bunches, and 200 of them keep the sampling error of a share under 4 %.
const (
	fewestVines      = 4
	fewestLargeVines = 2 // where one vine bears most of these bunches
	fewestBunches    = 200
	mostVines        = 1000 // sparser crops get fewer bunches
)

// Build grows the Stand of one option: the same option, latitude and seed always give the same
// Stand. The latitude [deg, positive north] only decides which side of an east-west row counts as the
// morning side when leaves are pulled. Points of shoots and leaves may stick out of the period at
// both ends; whoever uses the Stand repeats it every Length.
//
// An option outside the ranges of the scenario schema gives an error or a strange vine, never a
// value that is not a number.
func Build(o scenario.Option, latitude_deg float64, seed int) (*Stand, error) {
	return BuildPaced(o, latitude_deg, seed, func() error { return nil })
}

// BuildPaced is Build for callers that share their thread: pace is called often, between shoots and steps,
// and its error abandons the Stand.
func BuildPaced(o scenario.Option, latitude_deg float64, seed int, pace func() error) (*Stand, error) {
	vines, err := Grow(o, latitude_deg, seed, pace)
	if err != nil {
		return nil, err
	}
	return vines.Pulled(o, latitude_deg), nil
}

// Vines are the vines of an option with all leaves that crews may pull.
type Vines struct{ grown *grower }

// Grow is BuildPaced but for the pulling of leaves.
func Grow(o scenario.Option, latitude_deg float64, seed int, pace func() error) (*Vines, error) {
	o = o.WithAfternoonWire(latitude_deg)
	if err := check(o); err != nil {
		return nil, err
	}
	g := newGrower(o, seed)
	if err := g.grow(pace); err != nil {
		return nil, err
	}
	return &Vines{g}, nil
}

// grow takes the vine from the planting to the last cut of its leaves.
func (g *grower) grow(pace func() error) error {
	// The number of vines follows from the crop, which is drawn shoot by shoot.
	g.planPeriod()
	g.placePosts()
	g.growWood()

	for i := range g.plans {
		if err := pace(); err != nil {
			return err
		}
		g.growShoot(&g.plans[i])
	}
	g.hangBunches()
	if err := g.unfoldLeaves(pace); err != nil {
		return err
	}
	g.clipLeaves()
	g.fruit = g.fruitZones()
	g.stand.finish()
	return pace()
}

// grower carries one Build from step to step.
type grower struct {
	option   scenario.Option
	source   draw.Source
	cordons  []scenario.Wire // the fruiting wires, or the head of a vine without any
	supports []support       // what holds shoots, from below
	roof     *roof
	arms     []arm
	canes    []cane // that leave a cordon
	plans    []shootPlan
	complete int       // shoots that complete, full-grown vines would bear
	nodes    []node    // of all shoots, shoot after shoot
	pulled   []float64 // of all leaves: a leaf is pulled where this is below the share pulled
	fruit    []zone    // of each fruiting wire
	stand    *Stand
}

func newGrower(o scenario.Option, seed int) *grower {
	g := &grower{
		option:   o,
		source:   draw.New(seed),
		supports: supportsOf(o.Trellis.Wires),
		roof:     roofOf(o),
		stand:    &Stand{RowSpacing: o.Rows.RowSpacing_m, VineSpacing: o.Rows.VineSpacing_m},
	}
	for _, wire := range o.Trellis.Wires {
		if wire.Role == scenario.Fruiting {
			g.cordons = append(g.cordons, wire)
		}
		g.stand.Wires = append(g.stand.Wires, Strand{X: wire.Offset_m, Z: wire.Height_m, Role: string(wire.Role)})
	}
	if len(g.cordons) == 0 {
		g.cordons = []scenario.Wire{{Height_m: o.Training.HeadHeight_m + headDrop}}
	}
	return g
}

// check refuses what no vine can be built from, all faults at once.
func check(o scenario.Option) error {
	var faults []error
	positive := func(name string, value float64) {
		if !(value > 0) || math.IsInf(value, 0) {
			faults = append(faults, fmt.Errorf("%s is %g: it must be above 0", name, value))
		}
	}
	finite := func(name string, values ...float64) {
		for _, value := range values {
			if math.IsNaN(value) || math.IsInf(value, 0) || value < 0 {
				faults = append(faults, fmt.Errorf("%s is %g: it must be a number of at least 0", name, value))
			}
		}
	}
	positive("rows.rowSpacing_m", o.Rows.RowSpacing_m)
	positive("rows.vineSpacing_m", o.Rows.VineSpacing_m)
	positive("trellis.postSpacing_m", o.Trellis.PostSpacing_m)
	positive("training.armsPerVine", float64(o.Training.ArmsPerVine))
	positive("training.spurSpacing_m", o.Training.SpurSpacing_m)
	if o.Training.ArmLayout == scenario.ArmsSpread {
		positive("training.armLength_m", o.Training.ArmLength_m)
	}
	positive("shoots.perMetre", o.Shoots.PerMetre)
	positive("shoots.length_m", o.Shoots.Length_m)
	positive("shoots.internode_cm", o.Shoots.Internode_cm)
	positive("leaves.blade_cm2", o.Leaves.Blade_cm2)
	positive("bunches.perShoot", o.Bunches.PerShoot)
	positive("bunches.mass_g", o.Bunches.Mass_g)
	t, s, l := o.Training, o.Shoots, o.Leaves
	finite("training", t.ArmRise_deg, t.HeadHeight_m, t.BareBase, float64(t.CaneNodes),
		t.SingleArmVines, t.YoungVines, t.MissingVines, t.BlindNodes)
	finite("shoots", s.Habit, s.Positioning, s.CombedDown, s.TurnedDown, s.Thinned, s.TrimTop_m, s.TrimSide_m, s.Skirt_m, math.Abs(s.Start_deg))
	finite("leaves", l.Area_m2_per_m, l.Laterals, l.RemovedMorning, l.RemovedAfternoon, l.RemovedFrom_m, l.RemovedTo_m)

	fruiting := 0
	for i, wire := range o.Trellis.Wires {
		finite(fmt.Sprintf("trellis.wires[%d]", i), wire.Height_m, math.Abs(wire.Offset_m))
		if wire.Role == scenario.Fruiting {
			fruiting++
		}
	}
	if fruiting == 0 && o.Training.ArmLayout != scenario.ArmsSpread {
		faults = append(faults, errors.New("trellis.wires holds no fruiting wire: the arms need one"))
	}
	return errors.Join(faults...)
}

// canopyLength is the length of all fruiting wires in the period [m].
func (g *grower) canopyLength() float64 {
	return g.stand.Length * float64(len(g.cordons))
}
