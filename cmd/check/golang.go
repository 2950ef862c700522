package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"rowlight/cmd/check/rules"
)

// everyPackage are the patterns that match all Go code: "./..." passes over a folder named testdata.
var everyPackage = []string{"./...", "./testdata"}

// checkFormat lists or mends the files that gofmt would write differently.
func checkFormat(ctx context.Context, j job) error {
	verb := "-l"
	if j.fix {
		verb = "-w"
	}
	args := []string{"gofmt", verb}
	for _, folder := range []string{"cmd", "sim", "render", "wasm", "testdata"} {
		if _, err := os.Stat(filepath.Join(j.root, folder)); err == nil {
			args = append(args, folder)
		}
	}
	printed, err := j.capture(ctx, command{args: args})
	if err != nil || printed == "" {
		return err
	}
	fmt.Fprint(j.out, printed)
	return errors.New("these files are not formatted: run with -fix")
}

// checkRules holds the rules of the repository.
func checkRules(_ context.Context, j job) error {
	breaches, err := rules.Repository(j.root)
	if err != nil {
		return err
	}
	for _, b := range breaches {
		fmt.Fprintln(j.out, b)
	}
	if len(breaches) > 0 {
		return fmt.Errorf("%d broken", len(breaches))
	}
	return nil
}

// vet looks at all code as each platform sees it, and at the browser tests.
func vet(ctx context.Context, j job) error {
	return errors.Join(
		j.stream(ctx, command{env: nativeEnv, args: append([]string{"go", "vet"}, everyPackage...)}),
		j.stream(ctx, command{env: nativeEnv, args: []string{"go", "vet", "-tags", "browser", "./cmd/check/browser"}}),
		j.stream(ctx, command{env: browserEnv, args: append([]string{"go", "vet"}, everyPackage...)}),
	)
}

func buildAll(ctx context.Context, j job) error {
	return errors.Join(
		j.stream(ctx, command{env: nativeEnv, args: append([]string{"go", "build"}, everyPackage...)}),
		j.stream(ctx, command{env: browserEnv, args: append([]string{"go", "build"}, everyPackage...)}),
	)
}

// testNative runs all tests but those in a browser, which have a step of their own.
func testNative(ctx context.Context, j job) error {
	args := append([]string{"go", "test", "-timeout", j.timeout()}, j.tags()...)
	return j.stream(ctx, command{env: nativeEnv, args: append(args, everyPackage...)})
}

// verifyTables compares the reference tables as a user does.
func verifyTables(ctx context.Context, j job) error {
	return j.stream(ctx, command{env: nativeEnv, args: []string{"go", "run", "./cmd/rowlight", "verify"}})
}

// testWasm runs the tests of the simulation and of the drawing code as WebAssembly.
func testWasm(ctx context.Context, j job) error {
	packages, err := wasmPackages(ctx, j)
	if err != nil {
		return err
	}
	runner, err := j.wasmRunner(ctx)
	if err != nil {
		return err
	}
	args := append([]string{"go", "test", "-vet=off", "-timeout", j.timeout(), "-exec", runner}, j.tags()...)
	cmd := j.prepare(ctx, command{args: append(args, packages...)})
	cmd.Env = append(smallEnv(os.Environ()), browserEnv...)
	cmd.Stdout, cmd.Stderr = j.out, j.out
	return toolFault(command{args: args}, cmd.Run())
}

// wasmRunner is the program that runs WebAssembly tests in Node.js, which comes with Go.
func (j job) wasmRunner(ctx context.Context) (string, error) {
	goroot, err := j.capture(ctx, command{args: []string{"go", "env", "GOROOT"}})
	return filepath.Join(strings.TrimSpace(goroot), "lib", "wasm", "go_js_wasm_exec"), err
}

// wasmPackages lists the packages with tests that run without a document: one that imports Ebiten
// ends at once in Node.js.
func wasmPackages(ctx context.Context, j job) ([]string, error) {
	const line = `{{if or .TestGoFiles .XTestGoFiles}}{{.ImportPath}} {{join .Deps " "}}{{end}}`
	printed, err := j.capture(ctx, command{env: browserEnv, args: []string{"go", "list", "-f", line, "./sim/...", "./render/..."}})
	if err != nil {
		return nil, err
	}
	packages := withoutScreen(printed)
	if len(packages) == 0 {
		return nil, errors.New("no package with tests was found in sim and render")
	}
	return packages, nil
}

// withoutScreen picks the first word of each line that names no package of Ebiten.
func withoutScreen(list string) []string {
	var packages []string
	for line := range strings.Lines(list) {
		if words := strings.Fields(line); len(words) > 0 && !strings.Contains(line, "github.com/hajimehoshi/ebiten/") {
			packages = append(packages, words[0])
		}
	}
	return packages
}

// tags chooses the long tests too when they are asked for.
func (j job) tags() []string {
	if j.long {
		return []string{"-tags", "long"}
	}
	return nil
}

func (j job) timeout() string {
	if j.long {
		return "60m"
	}
	return "10m"
}
