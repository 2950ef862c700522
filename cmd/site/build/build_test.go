package build

import (
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"golang.org/x/tools/txtar"
)

// tinyProject lays out the project of testdata in a temporary folder.
func tinyProject(t *testing.T) (root string) {
	t.Helper()
	archive, err := txtar.ParseFile(filepath.Join("testdata", "project.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	root = t.TempDir()
	for _, file := range archive.Files {
		writeFile(t, filepath.Join(root, filepath.FromSlash(file.Name)), string(file.Data))
	}
	return root
}

func writeFile(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func readFile(t *testing.T, parts ...string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(parts...))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func TestSiteHoldsEveryFile(t *testing.T) {
	root, out := tinyProject(t), t.TempDir()
	m, err := Site(context.Background(), Options{Root: root, Out: out})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"app.js", "app.js.map", "charts.js", "charts.js.map", "engine-worker.js", "engine-worker.js.map", "engine.wasm", "icons/sun.svg",
		"index.html", "licences.txt", "qr.js", "qr.js.map", "service-worker.js", "service-worker.js.map", "styles.css", "view-host.js", "view-host.js.map", "view.html", "view.wasm", "wasm_exec.js",
	}
	var got []string
	for name, file := range m {
		got = append(got, name)
		text := readFile(t, out, filepath.FromSlash(name))
		if describe(text) != file {
			t.Errorf("manifest says %+v of %s, the file is %+v", file, name, describe(text))
		}
	}
	if slices.Sort(got); !slices.Equal(got, want) {
		t.Errorf("the site holds\n%v, want\n%v", got, want)
	}
	licences := string(readFile(t, out, licencesFile))
	for _, part := range []string{"Go go1.", "Redistribution and use", "preact 1.0.0", "May be used by whoever reads this."} {
		if !strings.Contains(licences, part) {
			t.Errorf("the licences lack %q", part)
		}
	}
	if program := readFile(t, out, "engine.wasm"); !bytes.HasPrefix(program, []byte("\x00asm")) {
		t.Error("engine.wasm does not begin as a WebAssembly module")
	}
	if read, err := ReadManifest(out); err != nil || len(read) != len(want) {
		t.Errorf("the manifest in the folder lists %d files (%v), want %d", len(read), err, len(want))
	}
}

func TestScriptsSuitTheirPlace(t *testing.T) {
	root, out := tinyProject(t), t.TempDir()
	if _, err := Site(context.Background(), Options{Root: root, Out: out}); err != nil {
		t.Fatal(err)
	}
	if worker := string(readFile(t, out, "engine-worker.js")); !strings.HasPrefix(worker, "(()=>{") {
		t.Errorf("the worker is no wrapped classic script: %.60s", worker)
	}
	app := string(readFile(t, out, "app.js"))
	if !strings.Contains(app, "rows in the light") || !strings.Contains(app, "export{") {
		t.Errorf("app.js lacks the JSON text or is no module: %.200s", app)
	}
}

// TestServiceWorkerListsTheSite holds that the worker knows every file but the source maps and itself, and that
// it is another one when a file changes.
func TestServiceWorkerListsTheSite(t *testing.T) {
	root, out := tinyProject(t), t.TempDir()
	m, err := Site(context.Background(), Options{Root: root, Out: out})
	if err != nil {
		t.Fatal(err)
	}
	worker := string(readFile(t, out, "service-worker.js"))
	for name, file := range m {
		listed := strings.Contains(worker, `"`+name+`":"`+file.SHA256+`"`)
		if want := !strings.HasSuffix(name, ".map") && name != "service-worker.js"; listed != want {
			t.Errorf("the service worker lists %s: %v, want %v", name, listed, want)
		}
	}
	if !strings.Contains(worker, `"manifest.json":""`) {
		t.Error("the service worker does not store the manifest")
	}
	writeFile(t, filepath.Join(root, "web", "styles.css"), "body { margin: 1px }")
	if _, err := Site(context.Background(), Options{Root: root, Out: out}); err != nil {
		t.Fatal(err)
	}
	if string(readFile(t, out, "service-worker.js")) == worker {
		t.Error("another style sheet, and the same service worker")
	}
}

func TestCompressedCopiesUnpackToTheFile(t *testing.T) {
	root, out := tinyProject(t), t.TempDir()
	o := Options{Root: root, Out: out, Compress: true}
	m, err := Site(context.Background(), o)
	if err != nil {
		t.Fatal(err)
	}
	for name := range m {
		plain := readFile(t, out, filepath.FromSlash(name))
		unbrotli, err := io.ReadAll(brotli.NewReader(bytes.NewReader(readFile(t, out, filepath.FromSlash(name)+".br"))))
		if err != nil || !bytes.Equal(unbrotli, plain) {
			t.Errorf("%s.br does not unpack to the file (%v)", name, err)
		}
		packed, err := gzip.NewReader(bytes.NewReader(readFile(t, out, filepath.FromSlash(name)+".gz")))
		if err != nil {
			t.Fatal(err)
		}
		if ungzip, err := io.ReadAll(packed); err != nil || !bytes.Equal(ungzip, plain) {
			t.Errorf("%s.gz does not unpack to the file (%v)", name, err)
		}
		if strings.HasSuffix(name, ".map") {
			t.Errorf("%s: a site for a host carries no source maps", name)
		}
	}

	// A second build keeps the copies of unchanged files and renews those of changed ones.
	kept, renewed := filepath.Join(out, "view.html.br"), filepath.Join(out, "index.html.br")
	writeFile(t, kept, "left as it is")
	writeFile(t, filepath.Join(root, "web", "index.html"), "<!doctype html><title>changed</title>")
	if _, err := Site(context.Background(), o); err != nil {
		t.Fatal(err)
	}
	if string(readFile(t, kept)) != "left as it is" {
		t.Error("the copy of an unchanged file was made again")
	}
	if text, _ := io.ReadAll(brotli.NewReader(bytes.NewReader(readFile(t, renewed)))); !strings.Contains(string(text), "changed") {
		t.Error("the copy of a changed file is old")
	}

	// A build without copies leaves none that could be served in place of newer files.
	if _, err := Site(context.Background(), Options{Root: root, Out: out}); err != nil {
		t.Fatal(err)
	}
	if exists(kept) || exists(renewed) {
		t.Error("compressed copies stay behind after a build without them")
	}
}

func TestStaleFilesGoAndForeignFilesStay(t *testing.T) {
	root, out := tinyProject(t), t.TempDir()
	if _, err := Site(context.Background(), Options{Root: root, Out: out}); err != nil {
		t.Fatal(err)
	}
	writeFile(t, filepath.Join(out, "CNAME"), "vineyard.example")
	if err := os.Remove(filepath.Join(root, "web", "icons", "sun.svg")); err != nil {
		t.Fatal(err)
	}
	if _, err := Site(context.Background(), Options{Root: root, Out: out}); err != nil {
		t.Fatal(err)
	}
	if exists(filepath.Join(out, "icons", "sun.svg")) {
		t.Error("an icon that is no longer in the project is still in the site")
	}
	if !exists(filepath.Join(out, "CNAME")) {
		t.Error("a file that is not ours was removed")
	}
}

func TestFaultsSayWhatToDo(t *testing.T) {
	cases := map[string]struct {
		spoil        func(t *testing.T, root string)
		what, remedy string
		detail       string
	}{
		"go program": {
			spoil: func(t *testing.T, root string) {
				writeFile(t, filepath.Join(root, "wasm", "engine", "main_js.go"), "package main\n\nfunc main() { missing() }\n")
			},
			what: "wasm/engine does not build", remedy: "compiler", detail: "undefined: missing",
		},
		"script": {
			spoil: func(t *testing.T, root string) {
				writeFile(t, filepath.Join(root, "web", "src", "main.tsx"), `import { leaf } from "./missing";`+"\nleaf();\n")
			},
			what: "web/src/main.tsx does not bundle", remedy: "bundler", detail: "./missing",
		},
		"npm": {
			spoil: func(t *testing.T, root string) {
				if err := os.RemoveAll(filepath.Join(root, "web", "node_modules")); err != nil {
					t.Fatal(err)
				}
				goOnly(t)
			},
			what: "npm is not on the PATH", remedy: "install Node.js",
		},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			root := tinyProject(t)
			c.spoil(t, root)
			_, err := Site(context.Background(), Options{Root: root, Out: t.TempDir()})
			wantFault(t, err, c.what, c.remedy, c.detail)
		})
	}
}

func TestFolderThatCannotBeWritten(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	writeFile(t, blocked, "a file where a folder should be")
	_, err := Site(context.Background(), Options{Root: tinyProject(t), Out: filepath.Join(blocked, "site")})
	wantFault(t, err, "cannot be written", "-out DIR", "")
}

// goOnly leaves a PATH on which only the go command is found.
func goOnly(t *testing.T) {
	t.Helper()
	tools := t.TempDir()
	for _, folder := range filepath.SplitList(os.Getenv("PATH")) {
		if path := filepath.Join(folder, "go"); exists(path) {
			if err := os.Symlink(path, filepath.Join(tools, "go")); err != nil {
				t.Fatal(err)
			}
			break
		}
	}
	t.Setenv("PATH", tools)
}

func wantFault(t *testing.T, err error, what, remedy, detail string) {
	t.Helper()
	var fault *Fault
	if !errors.As(err, &fault) {
		t.Fatalf("got %v, want a fault", err)
	}
	if !strings.Contains(fault.What, what) || !strings.Contains(fault.Remedy, remedy) || !strings.Contains(fault.Detail, detail) {
		t.Errorf("got %q / %q / %q, want %q / %q / %q", fault.What, fault.Remedy, fault.Detail, what, remedy, detail)
	}
	if strings.Contains(fault.Error(), "\n") {
		t.Errorf("the fault is longer than a line: %q", fault.Error())
	}
}

func TestPackagesInstalled(t *testing.T) {
	web := filepath.Join(tinyProject(t), "web")
	if !packagesInstalled(web) {
		t.Fatal("packages as in the lock file count as missing")
	}
	record := filepath.Join(web, "node_modules", ".package-lock.json")
	other := strings.ReplaceAll(string(readFile(t, record)), "1.0.0", "1.0.1")
	writeFile(t, record, other)
	if packagesInstalled(web) {
		t.Error("another version counts as installed")
	}
	if err := os.Remove(record); err != nil {
		t.Fatal(err)
	}
	if packagesInstalled(web) {
		t.Error("packages without a record count as installed")
	}
}

func TestFindRoot(t *testing.T) {
	root := tinyProject(t)
	got, err := FindRoot(filepath.Join(root, "web", "src"))
	if err != nil || got != root {
		t.Errorf("FindRoot from below is %q, %v; want %q", got, err, root)
	}
	_, err = FindRoot(t.TempDir())
	wantFault(t, err, "not around", "go.mod", "")
}

func TestPartsWithoutALicenceAreNotShipped(t *testing.T) {
	root := tinyProject(t)
	for _, name := range []string{"LICENSE", "package.json"} {
		if err := os.Remove(filepath.Join(root, "web", "node_modules", "preact", name)); err != nil {
			t.Fatal(err)
		}
	}
	s := &site{Options: Options{Root: root, Out: t.TempDir()}, files: Manifest{}}
	var fault *Fault
	if err := s.writeLicences(context.Background()); !errors.As(err, &fault) || !strings.Contains(err.Error(), "preact") {
		t.Errorf("a part without a licence gives %v", err)
	}
}
