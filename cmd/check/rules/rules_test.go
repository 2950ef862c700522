package rules

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// wantBreaches compares breaches with pieces of text, one for each, in order.
func wantBreaches(t *testing.T, got []Breach, want ...string) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("got %d breaches %v, want %d", len(got), got, len(want))
	}
	for i, piece := range want {
		if !strings.Contains(got[i].String(), piece) {
			t.Errorf("breach %d is %q, want it to hold %q", i, got[i], piece)
		}
		if got[i].Why == "" {
			t.Errorf("breach %d gives no reason", i)
		}
	}
}

func TestImportsOnMadeUpGraph(t *testing.T) {
	graph := []Package{
		{Folder: "sim/training", Imports: []string{"./sim/scenario", "./sim/training/internal/wood", "math"}},
		{Folder: "sim/training/internal/wood", Imports: []string{"./sim/sun"}},
		{Folder: "sim/light", Imports: []string{"./sim/canopy", "./sim/heat", "math/rand/v2", "os/exec"}},
		{Folder: "sim", Imports: []string{"./sim/heat", "./sim/verify"}},
		{Folder: "render", Imports: []string{"github.com/hajimehoshi/ebiten/v2/vector", "syscall/js"}},
		{Folder: "render/screen", Imports: []string{"./render", "github.com/hajimehoshi/ebiten/v2", "syscall/js"}},
		{Folder: "wasm/engine", Imports: []string{"./sim", "./render/screen", "syscall/js"}},
		{Folder: "cmd/rowlight", Imports: []string{"./sim", "os", "./wasm/engine", "github.com/evanw/esbuild/pkg/api"}},
		{Folder: "weather", Imports: nil},
	}
	wantBreaches(t, Imports(graph, Table, Bans),
		"sim/training/internal/wood imports sim/sun: vines",
		"sim/light imports sim/heat: light falls",
		"sim/light imports math/rand/v2: every draw",
		"sim/light imports os/exec: the simulation touches no files",
		"sim imports sim/verify: the façade",
		"render imports github.com/hajimehoshi/ebiten/v2/vector: Ebiten",
		"render imports syscall/js: the bridge",
		"wasm/engine imports render/screen: the engine",
		"cmd/rowlight imports wasm/engine: the command line",
		"cmd/rowlight imports github.com/evanw/esbuild/pkg/api: only cmd/site",
		"weather has no import rule",
	)
}

func TestReachFindsTheWayRound(t *testing.T) {
	graph := []Package{
		{Folder: "sim/canopy", Imports: []string{"./sim/cover"}},
		{Folder: "sim/cover", Imports: []string{"./sim/weather"}},
		{Folder: "sim/weather", Imports: []string{"./sim/sky"}},
		{Folder: "sim/light", Imports: []string{"./sim/canopy", "./sim/weather"}},
	}
	nevers := []Never{{From: "sim/canopy", To: "sim/weather", Why: "domes are reused"}, {From: "sim/light", To: "sim/heat", Why: "light comes first"},
		{From: "sim", Except: []string{"sim/canopy", "sim/cover", "sim/light"}, To: "sim/sky", Why: "a rule with exceptions"}}
	wantBreaches(t, Reach(graph, nevers), "sim/canopy reaches sim/weather (through sim/cover): domes are reused",
		"sim/weather reaches sim/sky (through sim/weather): a rule with exceptions")
}

// TestTableKeepsThePicture proves that code which keeps to the table keeps the rules of the picture:
// the graph in which every folder imports all it may still reaches nothing forbidden.
func TestTableKeepsThePicture(t *testing.T) {
	var graph []Package
	for _, f := range Table {
		var imports []string
		for _, other := range Table {
			if !under(other.Path, f.Path) && f.allows(other.Path) && other.Path != "sim/internal/known" {
				imports = append(imports, "./"+other.Path)
			}
		}
		graph = append(graph, Package{Folder: f.Path, Imports: imports})
	}
	wantBreaches(t, Imports(graph, Table, nil))
	wantBreaches(t, Reach(graph, Nevers))
}

func TestEveryRuleGivesItsReason(t *testing.T) {
	for _, f := range Table {
		if len(f.Why) < 20 {
			t.Errorf("%s: no reason", f.Path)
		}
	}
	for _, b := range Bans {
		if len(b.Why) < 20 {
			t.Errorf("%v in %q: no reason", b.What, b.In)
		}
	}
}

func TestLoadSeesEachPlatform(t *testing.T) {
	root := t.TempDir()
	for name, text := range map[string]string{
		"sim/sun/sun.go":              "package sun\n\nimport _ \"math\"\n",
		"sim/sun/sun_test.go":         "package sun\n\nimport _ \"os\"\n",
		"sim/sun/testdata/x/x.go":     "package x\n",
		"render/screen/draw_js.go":    "package screen\n\nimport _ \"rowlight/render\"\n",
		"testdata/testdata.go":        "package testdata\n",
		"web/node_modules/a/a.go":     "package a\n",
		"web/src/main.tsx":            "",
		"cmd/check/browser/b_test.go": "package browser\n",
	} {
		path := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want := map[Platform]string{
		Native:  "cmd/check/browser[] sim/sun[math] testdata[]",
		Browser: "cmd/check/browser[] render/screen[./render] sim/sun[math] testdata[]",
	}
	for platform, list := range want {
		packages, err := Load(root, platform)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range packages {
			got = append(got, p.Folder+"["+strings.Join(p.Imports, " ")+"]")
		}
		if strings.Join(got, " ") != list {
			t.Errorf("%v: got %v, want %s", platform, got, list)
		}
	}
}

func TestSources(t *testing.T) {
	root := t.TempDir()
	text := "package sky\n\nimport clock \"time\"\n\nfunc init() { _ = clock.Now() }\n\nfunc date() clock.Time { return clock.Unix(0, 0) }\n"
	if err := os.WriteFile(filepath.Join(root, "sky.go"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	packages := []Package{{Folder: "", Files: []string{"sky.go"}}}
	found, err := Sources(root, packages)
	if err != nil {
		t.Fatal(err)
	}
	wantBreaches(t, found, "sky.go:5 has an init function")

	if err := os.MkdirAll(filepath.Join(root, "sim", "sky"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(filepath.Join(root, "sky.go"), filepath.Join(root, "sim", "sky", "sky.go")); err != nil {
		t.Fatal(err)
	}
	found, err = Sources(root, []Package{{Folder: "sim/sky", Files: []string{"sky.go"}}})
	if err != nil {
		t.Fatal(err)
	}
	wantBreaches(t, found, "sim/sky/sky.go:5 has an init function", "sim/sky/sky.go:5 uses time.Now")
}

func TestFiles(t *testing.T) {
	goMod := "module rowlight\n\nrequire (\n"
	for _, pin := range pins {
		goMod += "\t" + pin + "\n"
	}
	sound := fstest.MapFS{
		"go.mod":                            {Data: []byte(goMod + ")\n")},
		"README.md":                         {Data: []byte("# Rowlight\n")},
		".gitignore":                        {Data: []byte("/dist/\n")},
		"sim/sun/sun.go":                    {Data: []byte(strings.Repeat("//\n", 500))},
		"web/package-lock.json":             {Data: []byte("{}\n")},
		"web/node_modules/a/long.ts":        {Data: []byte(strings.Repeat("//\n", 900))},
		"web/src/generated/scenario.ts":     {Data: []byte(strings.Repeat("//\n", 900))},
		"dist/app.js":                       {Data: []byte("//")},
		"testdata/reference/long_table.csv": {Data: []byte(strings.Repeat("1\n", 900))},
	}
	found, err := Files(sound)
	if err != nil {
		t.Fatal(err)
	}
	wantBreaches(t, found)

	broken := fstest.MapFS{
		"go.mod":                {Data: []byte(strings.Replace(goMod, "ebiten/v2 v2.8.8", "ebiten/v2 v2.9.0", 1))},
		"scripts/run.sh":        {Data: []byte("")},
		"sim/sun/sun.go":        {Data: []byte(strings.Repeat("//\n", 501))},
		"web/package-lock.json": {Data: []byte("{\n  \"resolved\": \"https://registry.example/a.tgz\"\n}\n")},
		"web/src/page.tsx":      {Data: []byte("// " + unfinished[0] + ": later\n")},
	}
	found, err = Files(broken)
	if err != nil {
		t.Fatal(err)
	}
	wantBreaches(t, found,
		"scripts is a new name at the top",
		"sim/sun/sun.go has 501 lines",
		"web/package-lock.json:2 names a registry",
		"web/src/page.tsx:1 holds "+unfinished[0],
		"go.mod does not pin github.com/hajimehoshi/ebiten/v2 v2.8.8",
	)
}
