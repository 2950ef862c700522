package scenario

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestDefaultAndFormsAreValid(t *testing.T) {
	s := Default()
	if faults := s.Validate(); len(faults) != 0 {
		t.Errorf("default: %v", faults)
	}
	for _, form := range Forms() {
		s.Options, s.Compare = []Option{form.Option}, 0
		if faults := s.Validate(); len(faults) != 0 {
			t.Errorf("form %s: %v", form.Key, faults)
		}
	}
}

// TestValidateFindsEachFault spoils one thing at a time and expects exactly the fault that names it.
func TestValidateFindsEachFault(t *testing.T) {
	tests := map[string]struct {
		spoil      func(*Scenario)
		code, path string
	}{
		"date":          {func(s *Scenario) { s.Weather.Date = "2026-02-30" }, "fault.date", "/weather/date"},
		"year":          {func(s *Scenario) { s.Weather.Date = "1826-07-18" }, "fault.year", "/weather/date"},
		"air order":     {func(s *Scenario) { s.Weather.AirMin_C = 41 }, "fault.air-order", "/weather/airMin_C"},
		"dew point":     {func(s *Scenario) { s.Weather.DewPoint_C = 24.5 }, "fault.dew-point", "/weather/dewPoint_C"},
		"hours":         {func(s *Scenario) { s.Weather.Hours = make([]Hour, 23) }, "fault.hours", "/weather/hours"},
		"limits":        {func(s *Scenario) { s.Limits.Hot_C = 35 }, "fault.limits-order", "/limits"},
		"compare":       {func(s *Scenario) { s.Compare = 2 }, "fault.compare", "/compare"},
		"form":          {func(s *Scenario) { s.Options[1].Form = "hop-pole" }, "fault.form", "/options/1/form"},
		"narrow rows":   {func(s *Scenario) { s.Options[1].Trellis.Wires[1].Offset_m = 1.5; s.Options[1].Rows.RowSpacing_m = 1.9 }, "fault.rows-narrow", "/options/1/rows/rowSpacing_m"},
		"no fruit wire": {func(s *Scenario) { s.Options[1].Trellis.Wires[0].Role = Foliage }, "fault.no-fruiting-wire", "/options/1/trellis/wires"},
		"too few arms": {func(s *Scenario) {
			s.Options[1].Training.ArmsPerVine = 1
			s.Options[1].Trellis.Wires[1].Role = Fruiting
		}, "fault.arms", "/options/1/training/armsPerVine"},
		"trimmed arms": {func(s *Scenario) { s.Options[0].Shoots.TrimTop_m = 0.9 }, "fault.trim-low", "/options/0/shoots/trimTop_m"},
		"skirted arms": {func(s *Scenario) { s.Options[1].Shoots.Skirt_m = 1.1 }, "fault.skirt-high", "/options/1/shoots/skirt_m"},
		"nothing to tie to": {func(s *Scenario) {
			s.Options[1].Training.Wood, s.Options[1].Training.CaneLayout = Canes, CanesTiedDown
			s.Options[1].Trellis.Wires[1].Role = Tie // above the arms
		}, "fault.no-tie-wire", "/options/1/trellis/wires"},
		"band upside down": {func(s *Scenario) { s.Options[0].Leaves.RemovedFrom_m, s.Options[0].Leaves.RemovedTo_m = 1.2, 0.9 }, "fault.pulled-band", "/options/0/leaves/removedFrom_m"},
		"net upside down": {func(s *Scenario) {
			s.Options[0].Shade.NetSides, s.Options[0].Shade.NetFrom_m, s.Options[0].Shade.NetTo_m = MorningSide, 1.2, 1.2
		}, "fault.net-band", "/options/0/shade/netFrom_m"},
		"net on the wires": {func(s *Scenario) { s.Options[0].Shade.OverheadShade, s.Options[0].Shade.OverheadHeight_m = 0.3, 1.5 }, "fault.overhead-low", "/options/0/shade/overheadHeight_m"},
		"mist backwards":   {func(s *Scenario) { s.Options[1].Shade.MistRate_mmh, s.Options[1].Shade.MistFrom_h = 1, 18 }, "fault.mist-hours", "/options/1/shade/mistFrom_h"},
		"lone catch":       {func(s *Scenario) { s.Options[0].Trellis.Wires[2].Height_m = 1.4 }, "fault.catch-pair", ""},
		"same place":       {func(s *Scenario) { s.Options[0].Trellis.Wires[2].Offset_m = s.Options[0].Trellis.Wires[1].Offset_m }, "fault.catch-pair", "/options/0/trellis/wires/1"},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			s := Default()
			test.spoil(&s)
			faults := s.Validate()
			if len(faults) == 0 {
				t.Fatal("no fault")
			}
			for _, fault := range faults {
				if fault.Code != test.code || test.path != "" && fault.Path != test.path {
					t.Errorf("got %+v, want %s at %s", fault, test.code, test.path)
				}
			}
		})
	}
}

// What is not hung or run is not judged.
func TestUnusedShadeIsNotJudged(t *testing.T) {
	s := Default()
	shade := &s.Options[0].Shade
	shade.NetFrom_m, shade.NetTo_m, shade.OverheadHeight_m, shade.MistFrom_h = 1.2, 1, 1.5, 20
	if faults := s.Validate(); len(faults) != 0 {
		t.Errorf("nets and misters that are not there were judged: %v", faults)
	}
}

func TestValidateFindsAllAtOnce(t *testing.T) {
	s := Default()
	s.Weather.AirMin_C, s.Limits.Burn_C, s.Compare = 45, 30, 3
	var paths []string
	for _, fault := range s.Validate() {
		paths = append(paths, fault.Path)
	}
	if diff := cmp.Diff([]string{"/weather/airMin_C", "/limits", "/compare"}, paths); diff != "" {
		t.Error(diff)
	}
}

func TestMeasuredHoursReplaceTheDesignDay(t *testing.T) {
	s := Default()
	s.Weather.Hours = make([]Hour, 24)
	s.Weather.AirMin_C, s.Weather.AirMax_C = 30, 20
	if faults := s.Validate(); len(faults) != 0 {
		t.Errorf("extremes that are not used were judged: %v", faults)
	}
}

// The extra foliage wire hangs on the afternoon side: west of north–south rows, which is their left, on either hemisphere, and
// toward the equator from east–west ones. It takes room between rows.
func TestAfternoonWire(t *testing.T) {
	for _, c := range []struct{ azimuth, latitude, offset float64 }{
		{0, 36, -0.6}, {0, -34, -0.6}, {90, 36, 0.6}, {90, -34, -0.6}, {135, 36, 0.6}, {45, 36, -0.6},
	} {
		o := Default().Options[1]
		before := len(o.Trellis.Wires)
		o.Rows.Azimuth_deg, o.Trellis.AfternoonWire_m, o.Trellis.AfternoonOut_m = c.azimuth, 1.6, 0.6
		got := o.WithAfternoonWire(c.latitude)
		if wires := got.Trellis.Wires; len(wires) != before+1 || len(o.Trellis.Wires) != before || wires[before] != (Wire{1.6, c.offset, Foliage}) {
			t.Errorf("rows at %g°, latitude %g: %+v, want a wire at %g", c.azimuth, c.latitude, wires, c.offset)
		}
		if again := got.WithAfternoonWire(c.latitude); len(again.Trellis.Wires) != before+1 {
			t.Error("the wire is hung twice")
		}
	}
	s := Default()
	s.Options[0].Trellis.AfternoonWire_m, s.Options[0].Trellis.AfternoonOut_m, s.Options[0].Rows.RowSpacing_m = 1.6, 1.4, 1.8
	if faults := s.Validate(); len(faults) != 1 || faults[0].Code != "fault.rows-narrow" {
		t.Errorf("a wire in the next row's way: %v", faults)
	}
}
