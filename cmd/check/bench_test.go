package main

import (
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"
)

func TestFiguresAreReadAndJudged(t *testing.T) {
	suffix := ""
	if procs := runtime.GOMAXPROCS(0); procs > 1 {
		suffix = fmt.Sprintf("-%d", procs)
	}
	found := figures{}
	printed := strings.ReplaceAll(`goos: linux
BenchmarkDay#   	       3	 900 ns/op
BenchmarkDay#   	       3	 1000 ns/op	 12 B/op
BenchmarkWind#  	       9	 90 ns/op
BenchmarkSeason/by-2#  	 1	 7 ns/op	 640 cold-ms	 3 draws
PASS
`, "#", suffix)
	if err := found.add(native, printed); err != nil {
		t.Fatal(err)
	}
	want := figures{{native, "Day"}: 900, {native, "Day B/op"}: 12, {native, "Wind"}: 90, {native, "Season/by-2"}: 7, {native, "Season/by-2 cold-ms"}: 640, {native, "Season/by-2 draws"}: 3}
	if len(found) != len(want) {
		t.Errorf("read %v", found)
	}
	for key, value := range want {
		if found[key] != value {
			t.Errorf("%v is %g, want %g", key, found[key], value)
		}
	}
	over := []ratio{{"wind over a day", [2]string{native, "Wind"}, [2]string{native, "Day"}, 0.1, 0.1}}
	few := []limit{{"draws", [2]string{native, "Season/by-2 draws"}, 3, 0}}
	if err := found.judge(io.Discard, over, few); err != nil {
		t.Error(err)
	}
	over[0].bound, few[0].most = 0.09, 2
	over = append(over, ratio{"nothing", [2]string{wasm, "Day"}, [2]string{native, "Day"}, 9, 9})
	err := found.judge(io.Discard, over, few)
	for _, fault := range []string{"wind over a day: 0.1 is more than 0.09", "draws: 3 is more than 2", "nothing: not measured"} {
		if err == nil || !strings.Contains(err.Error(), fault) {
			t.Errorf("judged %v, without %q", err, fault)
		}
	}
}
