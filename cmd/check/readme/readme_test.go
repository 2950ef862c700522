package readme

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rowlight/cmd/site/build"
)

const sample = "# Title\n\n```sh example\necho one\necho two\n```\n\n```text output\none\nold\n```\n\n```sh\necho not run\n```\n\n```sh example\nprintf 'three\\n' > file.txt\n```\n"

func TestExamples(t *testing.T) {
	examples, err := Examples(sample)
	if err != nil {
		t.Fatal(err)
	}
	if len(examples) != 2 {
		t.Fatalf("found %d examples, want 2", len(examples))
	}
	first, second := examples[0], examples[1]
	if first.Line != 4 || first.Commands != "echo one\necho two\n" || first.Shown != "one\nold\n" {
		t.Errorf("the first is %+v", first)
	}
	if second.Line != 18 || second.Shown != "" || second.from != 0 {
		t.Errorf("the second is %+v", second)
	}
	if _, err := Examples("```sh example\necho one\n"); err == nil {
		t.Error("a block without an end is taken")
	}
}

func TestRenew(t *testing.T) {
	b := &Bench{dir: t.TempDir(), program: "false"}
	renewed, stale, err := b.Renew(context.Background(), sample)
	if err != nil {
		t.Fatal(err)
	}
	if want := strings.Replace(sample, "one\nold\n", "one\ntwo\n", 1); renewed != want {
		t.Errorf("got\n%s\nwant\n%s", renewed, want)
	}
	if !slices.Equal(stale, []int{4}) {
		t.Errorf("stale are %v", stale)
	}
	if again, stale, err := b.Renew(context.Background(), renewed); err != nil || again != renewed || len(stale) > 0 {
		t.Errorf("a fresh README is changed: %v, %v", stale, err)
	}
	_, _, err = b.Renew(context.Background(), strings.Replace(sample, "echo two", program+" day", 1))
	if err == nil || !strings.Contains(err.Error(), "README.md:4") {
		t.Errorf("a failing command gives %v", err)
	}
}

// TestReadmeOfTheRepository runs every example of the README and looks at the other commands, paths
// and pictures that it names.
func TestReadmeOfTheRepository(t *testing.T) {
	root, err := build.FindRoot(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			t.Fatal(err)
		}
		for _, found := range regexp.MustCompile(`go (?:run|test) (?:-\S+ )*\./([\w/]+)|\]\(([\w./-]+)\)`).FindAllStringSubmatch(string(text), -1) {
			path := found[1] + found[2]
			if _, err := os.Stat(filepath.Join(root, filepath.FromSlash(path))); err != nil {
				t.Errorf("%s names %s, which is not there", name, path)
			}
		}
	}

	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	examples, err := Examples(string(text))
	if err != nil || len(examples) == 0 {
		t.Fatalf("found %d examples, %v", len(examples), err)
	}
	b, err := NewBench(context.Background(), root, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range examples {
		if _, err := b.Run(context.Background(), e); err != nil {
			t.Error(err)
		}
	}
}
