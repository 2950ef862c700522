package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestRunStepsGoesOnAndListsWhatFailed(t *testing.T) {
	var ran []string
	makeStep := func(name string, err error) step {
		return step{name, "a step", func(context.Context, job) error { ran = append(ran, name); return err }}
	}
	var out bytes.Buffer
	all := []step{makeStep("first", nil), makeStep("second", errors.New("a leaf is missing")), makeStep("third", nil)}
	err := runSteps(context.Background(), job{out: &out}, all)
	if err == nil || !strings.Contains(err.Error(), "-only second") {
		t.Errorf("a failed step gives %v", err)
	}
	if !slices.Equal(ran, []string{"first", "second", "third"}) {
		t.Errorf("ran %v", ran)
	}
	for _, line := range []string{"== first passed in 0.0 s", "== second FAILED after 0.0 s: a leaf is missing", "\n2 passed, 1 failed\n"} {
		if !strings.Contains(out.String(), line) {
			t.Errorf("the output lacks %q:\n%s", line, out.String())
		}
	}
	if err := runSteps(context.Background(), job{out: &out}, all[:1]); err != nil {
		t.Errorf("a sound run gives %v", err)
	}
}

func TestRunStepsStopsWhenInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	ran := 0
	interrupted := step{"one", "a step", func(context.Context, job) error { ran++; cancel(); return nil }}
	err := runSteps(ctx, job{out: &bytes.Buffer{}}, []step{interrupted, interrupted})
	if !errors.Is(err, context.Canceled) || ran != 1 {
		t.Errorf("got %v after %d steps", err, ran)
	}
}

func TestChoose(t *testing.T) {
	chosen, err := choose(steps, "rules, format")
	if err != nil || !slices.Equal(names(chosen), []string{"rules", "format"}) {
		t.Errorf("got %v, %v", names(chosen), err)
	}
	if _, err := choose(steps, "ruled"); err == nil || !strings.Contains(err.Error(), "browser") {
		t.Errorf("an unknown step gives %v", err)
	}
	if all, err := choose(steps, ""); err != nil || len(all) != len(steps) {
		t.Errorf("no choice gives %v, %v", names(all), err)
	}
}

func TestSmallEnvFitsTheLoader(t *testing.T) {
	environ := []string{"PATH=/bin", "GOFLAGS=-mod=mod", "HOME=/root", "SECRET=" + strings.Repeat("x", 9000)}
	if got := smallEnv(environ); !slices.Equal(got, environ[:3]) {
		t.Errorf("kept %v", got)
	}
}

func TestWithoutScreen(t *testing.T) {
	list := "rowlight/sim/sun math time\n\nrowlight/render/screen image github.com/hajimehoshi/ebiten/v2\nrowlight/render image\n"
	if got := withoutScreen(list); !slices.Equal(got, []string{"rowlight/sim/sun", "rowlight/render"}) {
		t.Errorf("got %v", got)
	}
}

// TestStaleTypesAreFoundAndPutBack runs the real comparison on a project whose generator writes
// another text than the committed one.
func TestStaleTypesAreFoundAndPutBack(t *testing.T) {
	root := t.TempDir()
	folder := filepath.Join(root, filepath.FromSlash(generatedTypes))
	if err := os.MkdirAll(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	write := func(path, text string) {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(filepath.Join(root, "web", "package.json"), `{"scripts": {"generate": "echo new > src/generated/day.ts && echo same > src/generated/sun.ts && echo more > src/generated/air.ts"}}`)
	write(filepath.Join(folder, "day.ts"), "old\n")
	write(filepath.Join(folder, "sun.ts"), "same\n")

	want := []string{generatedTypes + "/air.ts", generatedTypes + "/day.ts"}
	stale, err := regenerate(context.Background(), job{root: root, out: &bytes.Buffer{}}, folder)
	if err != nil || !slices.Equal(stale, want) {
		t.Fatalf("stale are %v, %v; want %v", stale, err, want)
	}
	files, err := readFolder(folder)
	if err != nil || len(files) != 2 || string(files["day.ts"]) != "old\n" {
		t.Errorf("the folder is not as it was: %q, %v", files, err)
	}

	if _, err := regenerate(context.Background(), job{root: root, out: &bytes.Buffer{}, fix: true}, folder); err != nil {
		t.Fatal(err)
	}
	files, err = readFolder(folder)
	if err != nil || len(files) != 3 || string(files["day.ts"]) != "new\n" {
		t.Errorf("the folder was not mended: %q, %v", files, err)
	}
}

func TestFormatFindsAFile(t *testing.T) {
	root := t.TempDir()
	if err := os.MkdirAll(filepath.Join(root, "sim"), 0o755); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(root, "sim", "sun.go")
	if err := os.WriteFile(file, []byte("package sim\nvar  x = 1\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := checkFormat(context.Background(), job{root: root, out: &out}); err == nil || !strings.Contains(out.String(), "sim/sun.go") {
		t.Errorf("a file that is not formatted gives %v and %q", err, out.String())
	}
	if err := checkFormat(context.Background(), job{root: root, out: &out, fix: true}); err != nil {
		t.Fatal(err)
	}
	if err := checkFormat(context.Background(), job{root: root, out: &out}); err != nil {
		t.Errorf("after mending: %v", err)
	}
}
