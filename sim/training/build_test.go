package training

import (
	"errors"
	"reflect"
	"testing"

	"rowlight/sim/scenario"
)

// form is the option of one form of the catalogue.
func form(t testing.TB, key string) scenario.Option {
	t.Helper()
	f, ok := scenario.FormByKey(key)
	if !ok {
		t.Fatalf("no form %q", key)
	}
	return f.Option
}

func build(t testing.TB, o scenario.Option, seed int) *Stand {
	t.Helper()
	s, err := Build(o, 36.4, seed)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Growing in slices gives the same Stand; an error of pace abandons it, whenever it comes.
func TestPacedBuild(t *testing.T) {
	o, calls := form(t, "vsp-spurs"), 0
	stand, err := BuildPaced(o, 36.4, 1, func() error { calls++; return nil })
	if err != nil || !reflect.DeepEqual(stand, build(t, o, 1)) {
		t.Errorf("a paced build gives another stand (%v)", err)
	}
	if shoots := len(stand.Shoots); calls < 3*shoots {
		t.Errorf("%d calls of pace for %d shoots: the pieces of work are too large", calls, shoots)
	}
	enough := errors.New("enough")
	for _, last := range []int{1, calls / 2, calls} {
		left := last
		stand, err := BuildPaced(o, 36.4, 1, func() error {
			if left--; left == 0 {
				return enough
			}
			return nil
		})
		if stand != nil || !errors.Is(err, enough) {
			t.Errorf("abandoned at call %d it gives %v, %v", last, stand, err)
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	for _, f := range scenario.Forms() {
		b.Run(f.Key, func(b *testing.B) {
			for b.Loop() {
				build(b, f.Option, 1)
			}
		})
	}
}

// Vines that are pulled one way and then another give the stands that are built so, and nothing that is pulled is gone from the next.
func TestVinesArePulledAsBuilt(t *testing.T) {
	for _, f := range scenario.Forms() {
		vines, err := Grow(f.Option, 36.4, 3, func() error { return nil })
		if err != nil {
			t.Fatal(err)
		}
		pulled := map[int]bool{}
		for _, way := range []struct{ morning, afternoon, from_m, to_m, azimuth_deg float64 }{
			{0.3, 0.8, 0, 0, 0}, {}, {0, 0.5, 0, 0, 180}, {1, 1, 0.6, 1.4, 45}, {1, 0, 0, 0, 90},
		} {
			o := f.Option
			l := &o.Leaves
			l.RemovedMorning, l.RemovedAfternoon, l.RemovedFrom_m, l.RemovedTo_m = way.morning, way.afternoon, way.from_m, way.to_m
			o.Rows.Azimuth_deg = way.azimuth_deg
			got, want := vines.Pulled(o, 36.4), build(t, o, 3)
			if !reflect.DeepEqual(got, want) {
				t.Errorf("%s pulled %+v: %d leaves below %.4f m, built so %d below %.4f", f.Key, way, len(got.Leaves), got.Top, len(want.Leaves), want.Top)
			}
			pulled[len(want.Leaves)] = true
		}
		if len(pulled) < 4 {
			t.Errorf("%s: only %d numbers of leaves in 5 ways: the test says little", f.Key, len(pulled))
		}
	}
}
