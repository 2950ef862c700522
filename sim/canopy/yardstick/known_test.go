package yardstick_test

import (
	"testing"

	"rowlight/sim/scenario"
	"rowlight/sim/training"
)

// formStand is the stand of one form of the catalogue.
func formStand(t testing.TB, key string, seed int) *training.Stand {
	t.Helper()
	form, ok := scenario.FormByKey(key)
	if !ok {
		t.Fatalf("no form %q", key)
	}
	stand, err := training.Build(form.Option, 36.4, seed)
	if err != nil {
		t.Fatal(err)
	}
	return stand
}
