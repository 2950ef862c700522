package rules

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
)

// topLevel are all the names at the top of the repository; dot-files are free, and dist is what
// cmd/site writes and git ignores.
var topLevel = []string{"cmd", "sim", "render", "wasm", "web", "testdata", "go.mod", "go.sum", "README.md", "DEVELOPERS.md", "dist"}

// maxLines is the length of a source file above which nobody reads it as a whole.
const maxLines = 500

// pins are the modules whose version was chosen by measurement or whose version list is not served.
var pins = []string{
	"github.com/hajimehoshi/ebiten/v2 v2.8.8",
	"github.com/go-gl/mathgl v1.2.0",
	"github.com/sixdouglas/suncalc v0.0.0-20250114185126-291b1938b70c",
	"github.com/chromedp/chromedp v0.23.0",
	"github.com/evanw/esbuild v0.28.2",
	"gonum.org/v1/gonum v0.17.0",
	"github.com/andybalholm/brotli v1.2.8",
}

// unfinished are the marks of work left over, put together here so that this file does not hold them.
var unfinished = []string{"TO" + "DO", "FIX" + "ME", "X" + "XX", "t.Sk" + "ip(", "t.Skip" + "Now("}

// Files checks the files of the repository under its root.
func Files(root fs.FS) ([]Breach, error) {
	breaches, err := names(root)
	if err != nil {
		return nil, err
	}
	err = fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && name != "." && skippedFiles(name):
			return fs.SkipDir
		case entry.IsDir():
			return nil
		}
		found, err := file(root, name)
		breaches = append(breaches, found...)
		return err
	})
	if err != nil {
		return nil, err
	}
	more, err := pinned(root)
	return append(breaches, more...), err
}

// skippedFiles are folders whose files are not written by hand or not ours.
func skippedFiles(folder string) bool {
	switch path.Base(folder) {
	case "node_modules", ".git", "generated":
		return true
	}
	return folder == "dist"
}

func names(root fs.FS) ([]Breach, error) {
	entries, err := fs.ReadDir(root, ".")
	var breaches []Breach
	for _, entry := range entries {
		if name := entry.Name(); !strings.HasPrefix(name, ".") && !slices.Contains(topLevel, name) {
			breaches = append(breaches, Breach{name, "is a new name at the top", "a newcomer finds everything under " + strings.Join(topLevel[:6], ", ")})
		}
	}
	return breaches, err
}

// file checks one file by its kind.
func file(root fs.FS, name string) ([]Breach, error) {
	switch path.Base(name) {
	case "package-lock.json", ".npmrc":
		return registry(root, name)
	}
	switch path.Ext(name) {
	case ".go", ".ts", ".tsx", ".mjs", ".css":
		return source(root, name)
	}
	return nil, nil
}

// source checks a file of code.
func source(root fs.FS, name string) ([]Breach, error) {
	text, err := fs.ReadFile(root, name)
	if err != nil {
		return nil, err
	}
	var breaches []Breach
	if lines := bytes.Count(text, []byte("\n")); lines > maxLines {
		breaches = append(breaches, Breach{name, fmt.Sprintf("has %d lines", lines), fmt.Sprintf("nobody reads a file of over %d lines as a whole: one noun per file", maxLines)})
	}
	for _, mark := range unfinished {
		if at := bytes.Index(text, []byte(mark)); at >= 0 {
			line := 1 + bytes.Count(text[:at], []byte("\n"))
			breaches = append(breaches, Breach{fmt.Sprintf("%s:%d", name, line), "holds " + mark, "what is not finished or not tested is not committed"})
		}
	}
	return breaches, nil
}

// registry checks that a file does not tie the project to one package registry.
func registry(root fs.FS, name string) ([]Breach, error) {
	text, err := fs.ReadFile(root, name)
	if err != nil {
		return nil, err
	}
	var breaches []Breach
	for number, line := range strings.Split(string(text), "\n") {
		if strings.Contains(line, `"resolved": "http`) || strings.HasPrefix(line, "registry=") || strings.Contains(line, "_auth") {
			breaches = append(breaches, Breach{fmt.Sprintf("%s:%d", name, number+1), "names a registry", "whoever installs uses his own registry: keep omit-lockfile-registry-resolved=true in web/.npmrc"})
		}
	}
	return breaches, nil
}

// pinned checks the chosen versions in go.mod.
func pinned(root fs.FS) ([]Breach, error) {
	text, err := fs.ReadFile(root, "go.mod")
	if err != nil {
		return nil, err
	}
	var breaches []Breach
	for _, pin := range pins {
		if !strings.Contains(string(text), "\t"+pin+"\n") {
			breaches = append(breaches, Breach{"go.mod", "does not pin " + pin, "the version was chosen by measurement: change it here and there together"})
		}
	}
	return breaches, nil
}

// Repository checks all rules of the repository at root.
func Repository(root string) ([]Breach, error) {
	breaches, err := Files(os.DirFS(root))
	if err != nil {
		return nil, err
	}
	for _, platform := range []Platform{Native, Browser} {
		found, err := Code(root, platform)
		if err != nil {
			return nil, err
		}
		for _, b := range found {
			if !slices.Contains(breaches, b) {
				breaches = append(breaches, b)
			}
		}
	}
	return breaches, nil
}

// Code checks the imports and the syntax of the packages as one platform sees them.
func Code(root string, platform Platform) ([]Breach, error) {
	packages, err := Load(root, platform)
	if err != nil {
		return nil, err
	}
	breaches, err := Sources(root, packages)
	breaches = append(breaches, Imports(packages, Table, Bans)...)
	return append(breaches, Reach(packages, Nevers)...), err
}
