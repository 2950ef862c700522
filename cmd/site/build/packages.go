package build

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
)

// EnsurePackages runs `npm ci` in web/ unless the packages of the lock file are already there.
func EnsurePackages(ctx context.Context, root string) error {
	web := filepath.Join(root, "web")
	if packagesInstalled(web) {
		return nil
	}
	cmd := exec.CommandContext(ctx, "npm", "ci", "--no-audit", "--no-fund")
	cmd.Dir = web
	printed, err := cmd.CombinedOutput()
	switch {
	case err == nil:
		return nil
	case ctx.Err() != nil:
		return ctx.Err()
	case errors.Is(err, exec.ErrNotFound):
		return &Fault{What: "npm is not on the PATH", Remedy: "install Node.js 20 or newer, which brings npm, and open a new terminal"}
	default:
		return &Fault{
			What:   "`npm ci` failed in web/",
			Remedy: "see what npm says above; it needs the network the first time",
			Detail: lastLines(string(printed), 12),
		}
	}
}

// lockFile is the part of an npm lock file that tells which packages are meant.
type lockFile struct {
	Packages map[string]lockedPackage `json:"packages"`
}

type lockedPackage struct {
	Version   string `json:"version"`
	Integrity string `json:"integrity"`
	Optional  bool   `json:"optional"`
	Dev       bool   `json:"dev"`
}

// packagesInstalled compares the lock file with the record that npm leaves in node_modules. File
// times would not do: a fresh checkout sets them all to now.
func packagesInstalled(web string) bool {
	wanted, err := readLock(filepath.Join(web, "package-lock.json"))
	if err != nil {
		return false
	}
	installed, err := readLock(filepath.Join(web, "node_modules", ".package-lock.json"))
	if err != nil {
		return false
	}
	for name, want := range wanted.Packages {
		have, present := installed.Packages[name]
		if name == "" || (want.Optional && !present) {
			continue // the project itself, or a package for another platform
		}
		if have.Version != want.Version || have.Integrity != want.Integrity {
			return false
		}
	}
	return true
}

func readLock(path string) (lockFile, error) {
	var lock lockFile
	text, err := os.ReadFile(path)
	if err != nil {
		return lock, err
	}
	return lock, json.Unmarshal(text, &lock)
}
