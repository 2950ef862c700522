package scenario

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestFormsAreCopies(t *testing.T) {
	first := Forms()
	first[0].Option.Trellis.Wires[0].Height_m = 99
	first[0].Sources[0] = "changed"
	form, ok := FormByKey(first[0].Key)
	if !ok || form.Option.Trellis.Wires[0].Height_m == 99 || form.Sources[0] == "changed" {
		t.Errorf("a caller changed the catalogue: %+v", form)
	}
}

func TestFormsNameThemselves(t *testing.T) {
	for _, form := range Forms() {
		if form.Name == "" || form.Line == "" || len(form.Sources) == 0 || form.Option.Form != form.Key {
			t.Errorf("form %q is incomplete: %+v", form.Key, form)
		}
		switch form.Habit {
		case "upright", "semi-upright", "trailing":
		default:
			t.Errorf("form %q: habit %q", form.Key, form.Habit)
		}
	}
	if _, ok := FormByKey("no-such-form"); ok {
		t.Error("found a form that does not exist")
	}
}

func TestReadFormsRefusesKeysUsedTwice(t *testing.T) {
	if _, err := readForms([]byte(`[{"key":"a"},{"key":"a"}]`)); err == nil {
		t.Error("a key used twice passed")
	}
}

func TestDefaultHasTwoForms(t *testing.T) {
	var keys []string
	for _, option := range Default().Options {
		keys = append(keys, option.Form)
	}
	if diff := cmp.Diff([]string{"vsp-spurs", "sprawl"}, keys); diff != "" {
		t.Error(diff)
	}
}

func TestDecodeFillsFromFormAndTags(t *testing.T) {
	s, err := Decode([]byte(`{"options":[{"form":"double-curtain","rows":{"azimuth_deg":45},
		"trellis":{"wires":[{"role":"fruiting"},{"height_m":1.4}]}}]}`))
	if err != nil {
		t.Fatal(err)
	}
	want, _ := FormByKey("double-curtain")
	want.Option.Rows.Azimuth_deg = 45
	want.Option.Trellis.Wires = []Wire{{Height_m: 1, Role: Fruiting}, {Height_m: 1.4, Role: Foliage}}
	if diff := cmp.Diff([]Option{want.Option}, s.Options); diff != "" {
		t.Error(diff)
	}
	if s.Weather.AirMax_C != Default().Weather.AirMax_C || s.Seed != 1 {
		t.Errorf("missing fields are not at their defaults: %+v", s)
	}
}

func TestRowsAt180AreRowsAtZeroSeenFromTheOtherEnd(t *testing.T) {
	s, err := Decode([]byte(`{"options":[{"form":"sprawl","rows":{"azimuth_deg":180},
		"trellis":{"wires":[{"role":"fruiting"},{"height_m":1.4,"offset_m":0.3}]}}]}`))
	if err != nil {
		t.Fatal(err)
	}
	option := s.Options[0]
	if option.Rows.Azimuth_deg != 0 || option.Trellis.Wires[1].Offset_m != -0.3 {
		t.Errorf("a wire on the west side moved: %+v", option)
	}
}
