package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"runtime"
	"slices"
	"strings"
	"text/tabwriter"
	"time"

	"golang.org/x/tools/benchmark/parse"
)

// benchSteps measure how fast everything is. Nothing of it is part of the check: a busy machine would fail it.
var benchSteps = []step{
	{"chromium", "Chromium", ensureChromium},
	{"packages", "Node.js and the npm packages", ensurePackages},
	{"bench", "benchmarks natively, as WebAssembly and in the page, and their ratios", measure},
}

// The places where benchmarks run.
const (
	native = "native"
	wasm   = "wasm"
	page   = "page"
)

// benchmarks are those of the ratios and those that tell where the time goes.
var benchmarks = []struct{ folder, names string }{
	{"./sim", "Day|WindChange|AzimuthChange|LeafRemovalChange|WireHeightChange|SeasonByOne|SeasonByTwo|TurnedWeek"},
	{"./sim/canopy", "Domes|SingleRays"},
	{"./sim/heat", "Step|FloorStep"},
	{"./sim/light", "Instant|Model"},
}

// ratio is one benchmark over another of the same run. It fails past the bound, which holds what was reached; the wish
// is what is hoped for.
type ratio struct {
	what        string
	over, under [2]string // where, name
	bound, wish float64
}

var ratios = []ratio{
	{"rays streamed into domes over rays one by one", [2]string{native, "Domes"}, [2]string{native, "SingleRays"}, 0.25, 0.2},
	{"a day as WebAssembly over natively", [2]string{wasm, "Day"}, [2]string{native, "Day"}, 3.6, 1.6},
	{"a change of wind over a day", [2]string{native, "WindChange"}, [2]string{native, "Day"}, 0.45, 0.1},
	{"36 directions over a week over a day: 252 days at 50 times their speed", [2]string{native, "TurnedWeek"}, [2]string{native, "Day"}, 7, 252.0 / 50},
	{"a season by two hands over one", [2]string{native, "SeasonByTwo"}, [2]string{native, "SeasonByOne"}, 0.65, 1 / 1.7},
	{"leaves pulled on one of two options over a day", [2]string{native, "LeafRemovalChange"}, [2]string{native, "Day"}, 0.6, 0.6},
}

// figures are the least times of benchmarks [ns] by place and name.
type figures map[[2]string]float64

// add reads what go test -bench prints. Of several runs the least counts: all else is what the machine did besides.
func (f figures) add(place, printed string) error {
	set, err := parse.ParseSet(strings.NewReader(printed))
	if err != nil {
		return err
	}
	for name, runs := range set {
		name, _, _ = strings.Cut(strings.TrimPrefix(name, "Benchmark"), fmt.Sprintf("-%d", runtime.GOMAXPROCS(0)))
		key := [2]string{place, name}
		for _, run := range runs {
			if old, known := f[key]; !known || run.NsPerOp < old {
				f[key] = run.NsPerOp
			}
		}
	}
	return nil
}

// measure runs the benchmarks and prints figures and ratios.
func measure(ctx context.Context, j job) error {
	found := figures{}
	for _, place := range []string{native, wasm} {
		for _, b := range benchmarks {
			if err := j.benchmark(ctx, place, found, "-run", "^$", "-bench", "^Benchmark("+b.names+")$", "-benchtime", "2s", "-count", "3", b.folder); err != nil {
				return err
			}
		}
	}
	if err := j.benchmark(ctx, page, found, "-tags", "browser", "-run", "^$", "-bench", ".", "-benchtime", "1x", "./cmd/check/browser"); err != nil {
		return err
	}
	fmt.Fprintf(j.out, "\n%s, %d processors, %s\n\n", runtime.Version(), runtime.NumCPU(), time.Now().Format(time.DateOnly))
	if err := found.write(j.out); err != nil {
		return err
	}
	return found.judge(j.out, ratios)
}

// benchmark runs go test in a place and takes its figures.
func (j job) benchmark(ctx context.Context, place string, into figures, args ...string) error {
	args = append([]string{"go", "test"}, args...)
	cmd := j.prepare(ctx, command{env: nativeEnv, args: args})
	if place == wasm {
		runner, err := j.wasmRunner(ctx)
		if err != nil {
			return err
		}
		cmd = j.prepare(ctx, command{args: append([]string{"go", "test", "-exec", runner}, args[2:]...)})
		cmd.Env = append(smallEnv(os.Environ()), browserEnv...)
	}
	var printed bytes.Buffer
	cmd.Stdout, cmd.Stderr = io.MultiWriter(&printed, j.out), j.out
	if err := cmd.Run(); err != nil {
		return toolFault(command{args: args}, err)
	}
	return into.add(place, printed.String())
}

// sortedNames are the names of the figures of a place.
func sortedNames(f figures, place string) []string {
	var names []string
	for key := range f {
		if key[0] == place {
			names = append(names, key[1])
		}
	}
	slices.Sort(names)
	return names
}

// write lists the figures, those of a benchmark that ran in two places beside each other.
func (f figures) write(out io.Writer) error {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintf(w, "\t%s [ms]\t%s [ms]\t\n", native, wasm)
	for _, b := range benchmarks {
		for name := range strings.SplitSeq(b.names, "|") {
			fmt.Fprintf(w, "%s %s\t%.4g\t%.4g\t\n", strings.TrimPrefix(b.folder, "./"), name, f[[2]string{native, name}]/1e6, f[[2]string{wasm, name}]/1e6)
		}
	}
	fmt.Fprintf(w, "in the page\t[ms]\t\t\n")
	for _, name := range sortedNames(f, page) {
		fmt.Fprintf(w, "%s\t%.4g\t\t\n", name, f[[2]string{page, name}]/1e6)
	}
	return w.Flush()
}

// judge prints the ratios and fails for those past their bounds.
func (f figures) judge(out io.Writer, ratios []ratio) error {
	var faults []error
	fmt.Fprintln(out)
	for _, r := range ratios {
		over, under := f[r.over], f[r.under]
		got := over / under
		if over == 0 || under == 0 || math.IsNaN(got) {
			faults = append(faults, fmt.Errorf("%s: not measured", r.what))
			continue
		}
		fmt.Fprintf(out, "%s: %.3g (wished %g, at most %g)\n", r.what, got, r.wish, r.bound)
		if got > r.bound {
			faults = append(faults, fmt.Errorf("%s: %.3g is more than %g", r.what, got, r.bound))
		}
	}
	return errors.Join(faults...)
}
