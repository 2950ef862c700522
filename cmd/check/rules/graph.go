package rules

import (
	"errors"
	"go/build"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// module is the import path of the repository.
const module = "rowlight"

// Platform is a target of the Go compiler.
type Platform struct{ OS, Arch string }

// The two platforms that the repository is built for: the machine of the user, and the browser.
var (
	Native  = Platform{OS: "linux", Arch: "amd64"}
	Browser = Platform{OS: "js", Arch: "wasm"}
)

// Package is one folder of Go code as one platform sees it, without its tests.
type Package struct {
	Folder  string   // below the root, with forward slashes
	Files   []string // names of the files that this platform compiles
	Imports []string // import paths; those of the repository as folders, with a leading "./"
}

// Load reads the imports of every package of the repository. It reads the files itself, so that the
// test cache sees which files the answer hangs on.
func Load(root string, p Platform) ([]Package, error) {
	context := build.Default
	context.GOOS, context.GOARCH, context.CgoEnabled = p.OS, p.Arch, false
	var packages []Package
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !entry.IsDir() {
			return err
		}
		folder := filepath.ToSlash(strings.TrimPrefix(strings.TrimPrefix(path, root), string(os.PathSeparator)))
		if skipped(folder) {
			return fs.SkipDir
		}
		found, err := context.ImportDir(path, 0)
		if none := (*build.NoGoError)(nil); errors.As(err, &none) {
			return nil
		}
		if err != nil {
			return err
		}
		packages = append(packages, Package{Folder: folder, Files: found.GoFiles, Imports: shorten(found.Imports)})
		return nil
	})
	return packages, err
}

// skipped tells which folders hold no code of the repository: hidden ones, what a build writes, the
// packages of npm, and test data other than the package of that name at the top.
func skipped(folder string) bool {
	name := folder[strings.LastIndex(folder, "/")+1:]
	switch {
	case folder == "":
		return false
	case strings.HasPrefix(name, "."), name == "node_modules", folder == "dist":
		return true
	}
	return name == "testdata" && folder != name
}

// shorten marks the packages of the repository.
func shorten(imports []string) []string {
	short := make([]string, len(imports))
	for i, path := range imports {
		short[i] = path
		if folder, ours := strings.CutPrefix(path, module+"/"); ours {
			short[i] = "./" + folder
		}
	}
	return short
}

// under tells whether a folder or import path is tree or lies below it.
func under(path, tree string) bool {
	return path == tree || strings.HasPrefix(path, tree+"/")
}
