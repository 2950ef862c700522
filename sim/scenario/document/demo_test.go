package document_test

import (
	"io/fs"
	"path"
	"strings"
	"testing"

	"rowlight/sim/scenario/document"
	"rowlight/testdata"
)

func TestDemoScenariosAreValidAndMarkedInvented(t *testing.T) {
	files, err := fs.Glob(testdata.FS, "scenarios/*.json")
	if err != nil || len(files) < 2 {
		t.Fatal(files, err)
	}
	north, south := false, false
	for _, name := range files {
		raw, err := fs.ReadFile(testdata.FS, name)
		if err != nil {
			t.Fatal(err)
		}
		s, faults := document.Parse(raw)
		if len(faults) != 0 {
			t.Errorf("%s: %v", path.Base(name), faults)
		}
		if notices := document.Notices(raw); len(notices) != 0 {
			t.Errorf("%s: %v", path.Base(name), notices)
		}
		if !strings.Contains(s.Note, "Invented") {
			t.Errorf("%s is not marked as invented: %q", path.Base(name), s.Note)
		}
		north, south = north || s.Site.Latitude_deg > 0, south || s.Site.Latitude_deg < 0
	}
	if !north || !south {
		t.Error("a hemisphere is missing")
	}
}
