package training

import (
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

func BenchmarkBuild(b *testing.B) {
	for _, f := range scenario.Forms() {
		b.Run(f.Key, func(b *testing.B) {
			for b.Loop() {
				build(b, f.Option, 1)
			}
		})
	}
}
