package rules

import (
	"testing"

	"rowlight/cmd/site/build"
)

// TestImportsOfTheRepository holds the table of folders on the code as it stands, for the machine of
// the user and for the browser.
func TestImportsOfTheRepository(t *testing.T) {
	root, err := build.FindRoot(".")
	if err != nil {
		t.Fatal(err)
	}
	for name, platform := range map[string]Platform{"native": Native, "js": Browser} {
		t.Run(name, func(t *testing.T) {
			packages, err := Load(root, platform)
			if err != nil {
				t.Fatal(err)
			}
			if !holds(packages, "sim/scenario") || !holds(packages, "cmd/check/rules") {
				t.Fatalf("only %d packages were found: the walk lost its way", len(packages))
			}
			breaches, err := Code(root, platform)
			if err != nil {
				t.Fatal(err)
			}
			for _, b := range breaches {
				t.Error(b)
			}
		})
	}
}

func holds(packages []Package, folder string) bool {
	for _, p := range packages {
		if p.Folder == folder {
			return true
		}
	}
	return false
}
