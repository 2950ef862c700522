package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"
	"time"

	"rowlight/cmd/site/build"
)

// benchSteps measure how fast everything is. Nothing of it is part of the check: a busy machine would fail it.
var benchSteps = []step{
	{"chromium", "Chromium", ensureChromium},
	{"packages", "Node.js and the npm packages", ensurePackages},
	{"bench", "benchmarks natively, as WebAssembly in Chromium and in the page, and their ratios", measure},
}

// The places where benchmarks run.
const (
	native = "native"
	wasm   = "wasm"
	page   = "page"
)

// benchmarks are those of the ratios and those that tell where the time goes.
var benchmarks = []struct{ folder, names string }{
	{"./sim", "Day|Preview|PreviewLeaves|PreviewWire|Sighted|WindChange|AzimuthChange|LeafRemovalChange|WireHeightChange|SeasonByOne|SeasonByTwo|TurnedWeek"},
	{"./sim/canopy", "Domes|SingleRays"},
	{"./sim/heat", "Step|FloorStep"},
	{"./sim/light", "Instant|Model"},
	{"./sim/scenario/document", "Parse"},
	{"./render", "Compose|Recolour|CrossSection"},
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
	{"a day as WebAssembly over natively", [2]string{wasm, "Day"}, [2]string{native, "Day"}, 1.7, 1.6},
	{"a preview of two options over a day, as WebAssembly", [2]string{wasm, "Preview"}, [2]string{wasm, "Day"}, 0.025, 0.02},
	{"the same for leaves pulled on one of them", [2]string{wasm, "PreviewLeaves"}, [2]string{wasm, "Day"}, 0.06, 0.04},
	{"the same for a fruiting wire that is moved on one of them", [2]string{wasm, "PreviewWire"}, [2]string{wasm, "Day"}, 0.08, 0.06},
	{"the reading of a document over a preview", [2]string{native, "Parse"}, [2]string{native, "Preview"}, 0.15, 0.05},
	{"a picture whose fruit alone has other colours over one in another light", [2]string{native, "Recolour"}, [2]string{native, "Compose"}, 0.35, 0.25},
	{"a cross-section over a picture", [2]string{native, "CrossSection"}, [2]string{native, "Compose"}, 3, 2},
	{"the first numbers after leaves were pulled over the middle ones", [2]string{page, "Feel/leaves first-ms"}, [2]string{page, "Feel/leaves middle-ms"}, 3, 1},
	{"what is seen of all bunches after a change of both, as WebAssembly", [2]string{wasm, "Sighted"}, [2]string{wasm, "Day"}, 0.01, 0.01},
	{"a change of wind over a day", [2]string{native, "WindChange"}, [2]string{native, "Day"}, 0.1, 0.1},
	{"a change of wind over a day, as WebAssembly", [2]string{wasm, "WindChange"}, [2]string{wasm, "Day"}, 0.12, 0.1},
	{"36 directions over a week over a day: 252 days at 50 times their speed", [2]string{native, "TurnedWeek"}, [2]string{native, "Day"}, 7, 252.0 / 50},
	{"a season by two hands over one", [2]string{native, "SeasonByTwo"}, [2]string{native, "SeasonByOne"}, 0.65, 1 / 1.7},
	{"leaves pulled on one of two options over a day", [2]string{native, "LeafRemovalChange"}, [2]string{native, "Day"}, 0.6, 0.6},
	{"a season in the page by two helpers over one, with their start", [2]string{page, "Season/by-2 cold-ms"}, [2]string{page, "Season/by-1 cold-ms"}, 0.8, 1 / 1.7},
	{"the same with other vines, when they have started", [2]string{page, "Season/by-2 vines-ms"}, [2]string{page, "Season/by-1 vines-ms"}, 0.8, 1 / 1.7},
	{"the same with vines that they remember", [2]string{page, "Season/by-2 warm-ms"}, [2]string{page, "Season/by-1 warm-ms"}, 0.9, 1 / 1.7},
	{"what the programs hold after 1,000 changes over 100", [2]string{page, "Memory changes-held-last-MB"}, [2]string{page, "Memory changes-held-first-MB"}, 1.2, 1},
	{"what the programs hold after 20 seasons over 2", [2]string{page, "Memory seasons-held-last-MB"}, [2]string{page, "Memory seasons-held-first-MB"}, 1.1, 1},
	// WebAssembly gives no memory back: what its programs have is the most that they ever needed at once, garbage that had not been
	// collected among it, and the longer they run the more comes together once.
	{"memory of the programs after 1,000 changes over 100", [2]string{page, "Memory changes-programs-last-MB"}, [2]string{page, "Memory changes-programs-first-MB"}, 1.3, 1},
	{"memory of the page after 1,000 changes over 100", [2]string{page, "Memory changes-page-last-MB"}, [2]string{page, "Memory changes-page-first-MB"}, 1.2, 1},
	{"memory of the programs after 20 seasons over 2", [2]string{page, "Memory seasons-programs-last-MB"}, [2]string{page, "Memory seasons-programs-first-MB"}, 1.1, 1},
	{"memory of the page after 20 seasons over 2", [2]string{page, "Memory seasons-page-last-MB"}, [2]string{page, "Memory seasons-page-first-MB"}, 1.1, 1},
}

// limit is a figure of its own. It fails past the most; times, which other work on the machine makes longer, have none.
type limit struct {
	what       string
	of         [2]string // where, name
	most, wish float64
}

var none = math.Inf(1)

var limits = []limit{
	{"draws of the view in three seconds in which nothing happens", [2]string{page, "Ranges idle-draws"}, 0, 0},
	{"numbers, nearly, after a turn of one option [ms]", [2]string{page, "Feel/azimuth numbers-ms"}, none, 100},
	{"the result after it [ms]", [2]string{page, "Feel/azimuth exact-ms"}, none, 100},
	{"the view's Draw of it, nearly [ms]", [2]string{page, "Feel/azimuth drawn-ms"}, none, 100},
	{"the view's Draw of the result [ms]", [2]string{page, "Feel/azimuth drawn-exact-ms"}, none, 100},
	{"numbers, nearly, after a change of wind [ms]", [2]string{page, "Feel/wind numbers-ms"}, none, 100},
	{"the result after it [ms]", [2]string{page, "Feel/wind exact-ms"}, none, 100},
	{"the view's Draw of it, nearly [ms]", [2]string{page, "Feel/wind drawn-ms"}, none, 100},
	{"the view's Draw of the result [ms]", [2]string{page, "Feel/wind drawn-exact-ms"}, none, 100},
	{"numbers, nearly, after leaves were pulled [ms]", [2]string{page, "Feel/leaves numbers-ms"}, none, 100},
	{"the result after it [ms]", [2]string{page, "Feel/leaves exact-ms"}, none, 100},
	{"the view's Draw of it, nearly [ms]", [2]string{page, "Feel/leaves drawn-ms"}, none, 100},
	{"the view's Draw of the result [ms]", [2]string{page, "Feel/leaves drawn-exact-ms"}, none, 100},
	{"numbers, nearly, after the fruiting wire was moved [ms]", [2]string{page, "Feel/wire numbers-ms"}, none, 100},
	{"the result after it [ms]", [2]string{page, "Feel/wire exact-ms"}, none, 100},
	{"the view's Draw of it, nearly [ms]", [2]string{page, "Feel/wire drawn-ms"}, none, 100},
	{"the view's Draw of the result [ms]", [2]string{page, "Feel/wire drawn-exact-ms"}, none, 100},
	{"the longest task of the page itself as rows turn [ms]", [2]string{page, "Feel/azimuth longest-task-ms"}, none, 50},
	{"with the wind [ms]", [2]string{page, "Feel/wind longest-task-ms"}, none, 50},
	{"as leaves are pulled [ms]", [2]string{page, "Feel/leaves longest-task-ms"}, none, 50},
	{"as a wire moves [ms]", [2]string{page, "Feel/wire longest-task-ms"}, none, 50},
	{"ranges after a change [ms]", [2]string{page, "Ranges first-ms"}, none, 3000},
}

// figures are the least of what benchmarks measured by place and name; of a unit other than ns/op the name tells.
type figures map[[2]string]float64

// add reads what go test -bench prints. Of several runs the least counts: all else is what the machine did besides.
func (f figures) add(place, printed string) error {
	lines := bufio.NewScanner(strings.NewReader(printed))
	for lines.Scan() {
		// BenchmarkName-2  10  1234 ns/op  5.6 unit: a benchmark may report units of its own.
		words := strings.Fields(lines.Text())
		if len(words) < 4 || !strings.HasPrefix(words[0], "Benchmark") {
			continue
		}
		name := strings.TrimPrefix(words[0], "Benchmark")
		if procs := runtime.GOMAXPROCS(0); procs > 1 {
			name = strings.TrimSuffix(name, fmt.Sprintf("-%d", procs))
		}
		for pair := range slices.Chunk(words[2:], 2) {
			value, err := strconv.ParseFloat(pair[0], 64)
			if err != nil {
				return fmt.Errorf("%q: %w", lines.Text(), err)
			}
			key := [2]string{place, name}
			if unit := pair[len(pair)-1]; unit != "ns/op" {
				key[1] += " " + unit
			}
			if old, known := f[key]; !known || value < old {
				f[key] = value
			}
		}
	}
	return lines.Err()
}

// benchRounds are how often all is measured in turn: a machine whose host has other work is slower for minutes, and a ratio wants both
// of its parts from its better times.
const benchRounds = 3

// measure runs the benchmarks and prints figures and ratios.
func measure(ctx context.Context, j job) error {
	found := figures{}
	runner, away, err := j.chromiumRunner(ctx)
	if err != nil {
		return err
	}
	defer away()
	for range benchRounds {
		for _, b := range benchmarks {
			for _, at := range []struct{ place, count string }{
				{native, "1"},
				{wasm, "3"}, // a browser compiles for speed what has run for some seconds
			} {
				if err := j.benchmark(ctx, at.place, runner, found, "-run", "^$", "-bench", "^Benchmark("+b.names+")$", "-benchtime", "3s", "-count", at.count, b.folder); err != nil {
					return err
				}
			}
		}
	}
	if err := j.benchmark(ctx, page, runner, found, "-tags", "browser", "-run", "^$", "-bench", ".", "-benchtime", "1x", "-timeout", "60m", "./cmd/check/browser"); err != nil {
		return err
	}
	fmt.Fprintf(j.out, "\n%s, %d processors, %s\n\n", runtime.Version(), runtime.NumCPU(), time.Now().Format(time.DateOnly))
	if err := found.write(j.out); err != nil {
		return err
	}
	return found.judge(j.out, ratios, limits)
}

// chromiumRunner builds the program that runs WebAssembly tests in Chromium; away removes it.
func (j job) chromiumRunner(ctx context.Context) (path string, away func(), err error) {
	folder, err := os.MkdirTemp("", "rowlight-bench-")
	if err != nil {
		return "", nil, err
	}
	path = filepath.Join(folder, "inchromium")
	if err := j.stream(ctx, command{env: nativeEnv, args: []string{"go", "build", "-o", path, "./cmd/check/inchromium"}}); err != nil {
		os.RemoveAll(folder)
		return "", nil, err
	}
	return path, func() { os.RemoveAll(folder) }, nil
}

// benchmark runs go test in a place and takes its figures.
func (j job) benchmark(ctx context.Context, place, runner string, into figures, args ...string) error {
	args = append([]string{"go", "test"}, args...)
	cmd := j.prepare(ctx, command{env: nativeEnv, args: args})
	if place == wasm {
		cmd = j.prepare(ctx, command{args: slices.Concat([]string{"go", "test", "-exec", runner}, build.Quick(), args[2:])})
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
	for _, name := range sortedNames(f, page) {
		if strings.Contains(name, " ") { // what the whole of a benchmark took says nothing
			fmt.Fprintf(w, "%s %s\t%.4g\t\t\n", page, name, f[[2]string{page, name}])
		}
	}
	return w.Flush()
}

// judge prints the ratios and limits and fails for those past their bounds.
func (f figures) judge(out io.Writer, ratios []ratio, limits []limit) error {
	var faults []error
	fmt.Fprintln(out)
	for _, l := range limits {
		got, known := f[l.of]
		if !known {
			faults = append(faults, fmt.Errorf("%s: not measured", l.what))
			continue
		}
		fmt.Fprintf(out, "%s: %.4g (wished %g)\n", l.what, got, l.wish)
		if got > l.most {
			faults = append(faults, fmt.Errorf("%s: %.4g is more than %g", l.what, got, l.most))
		}
	}
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
