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
