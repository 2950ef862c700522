package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowlight/sim/scenario"
)

// formsPage is the page of the docs that the command makes.
const formsPage = "../../web/docs/forms.md"

func TestSheetOfFormsDrawsEach(t *testing.T) {
	file := filepath.Join(t.TempDir(), "forms.svg")
	if got := rowlight("", "forms", "--sheet", "-o", file); got.code != 0 || got.stdout != "" {
		t.Fatalf("%+v", got)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, form := range scenario.Forms() {
		if !strings.Contains(string(text), "<title>"+form.Name+"</title>") {
			t.Errorf("%s is not on the sheet", form.Name)
		}
	}
}

func TestFormsTakeOneOutput(t *testing.T) {
	if got := rowlight("", "forms", "--sheet", "--measures"); got.code != exitFailed {
		t.Errorf("two outputs at once: %+v", got)
	}
}

// The page of the docs is what the command makes now: rowlight forms --measures -o web/docs/forms.md.
func TestFormsPageIsCurrent(t *testing.T) {
	got := rowlight("", "forms", "--measures")
	if got.code != 0 {
		t.Fatalf("%+v", got)
	}
	page, err := os.ReadFile(formsPage)
	if err != nil {
		t.Fatal(err)
	}
	made, kept := strings.Split(got.stdout, "\n"), strings.Split(string(page), "\n")
	for i := range max(len(made), len(kept)) {
		if i >= len(made) || i >= len(kept) || made[i] != kept[i] {
			t.Fatalf("%s differs from line %d: make it anew with rowlight forms --measures -o web/docs/forms.md", formsPage, i+1)
		}
	}
}
