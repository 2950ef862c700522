package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
)

// step is one check with a name to choose it by.
type step struct {
	name  string
	title string
	run   func(ctx context.Context, j job) error
}

// job is what every step is told.
type job struct {
	root string    // the folder that holds go.mod
	out  io.Writer // takes what tools print
	fix  bool      // mend what a tool can mend
	long bool      // run the long tests too
}

// steps are all checks in the order in which they run: what the others need first, then what fails
// fastest.
var steps = []step{
	{"chromium", "Chromium for the browser tests", ensureChromium},
	{"packages", "Node.js and the npm packages", ensurePackages},
	{"audit", "known weaknesses of what is built upon", audit},
	{"format", "Go code as gofmt writes it", checkFormat},
	{"rules", "rules of the repository", checkRules},
	{"generated", "generated files as the Go types make them", checkGenerated},
	{"types", "TypeScript types", checkTypes},
	{"page", "tests of the page's own parts in Node.js", testPage},
	{"vet", "go vet, natively and for the browser", vet},
	{"build", "go build, natively and for the browser", buildAll},
	{"test", "Go tests, natively", testNative},
	{"verify", "reference tables against the simulation", verifyTables},
	{"wasm", "Go tests of the simulation as WebAssembly in Node.js", testWasm},
	{"browser", "tests of the page in Chromium", testBrowser},
}

// pictureSteps make the README's picture.
var pictureSteps = []step{
	{"chromium", "Chromium", ensureChromium},
	{"picture", "the README's picture", makePicture},
}

func names(steps []step) []string {
	var names []string
	for _, s := range steps {
		names = append(names, s.name)
	}
	return names
}

// choose picks steps by their names with commas between; an empty list picks all.
func choose(steps []step, list string) ([]step, error) {
	if list == "" {
		return steps, nil
	}
	var chosen []step
	for name := range strings.SplitSeq(list, ",") {
		i := slices.IndexFunc(steps, func(s step) bool { return s.name == strings.TrimSpace(name) })
		if i < 0 {
			return nil, fmt.Errorf("there is no step %q: choose from %s", name, strings.Join(names(steps), ", "))
		}
		chosen = append(chosen, steps[i])
	}
	return chosen, nil
}

// runSteps runs one step after the other, goes on after a failed one, and lists what failed.
func runSteps(ctx context.Context, j job, chosen []step) error {
	var failed []string
	start := time.Now()
	for _, s := range chosen {
		fmt.Fprintf(j.out, "\n== %s: %s\n", s.name, s.title)
		began := time.Now()
		err := s.run(ctx, j)
		took := time.Since(began).Seconds()
		switch {
		case ctx.Err() != nil:
			return ctx.Err()
		case err != nil:
			failed = append(failed, s.name)
			fmt.Fprintf(j.out, "== %s FAILED after %.1f s: %v\n", s.name, took, err)
		default:
			fmt.Fprintf(j.out, "== %s passed in %.1f s\n", s.name, took)
		}
	}
	fmt.Fprintf(j.out, "\nAll steps took %.0f s.\n%d passed, %d failed\n", time.Since(start).Seconds(), len(chosen)-len(failed), len(failed))
	if len(failed) > 0 {
		return fmt.Errorf("failed: %s (run them alone with -only %s)", strings.Join(failed, ", "), strings.Join(failed, ","))
	}
	return nil
}
