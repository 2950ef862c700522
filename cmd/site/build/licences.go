package build

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// licencesFile lists what the site is made of, with the licence of every part.
const licencesFile = "licences.txt"

// part is a library that is shipped with the site.
type part struct {
	name, version string
	dir           string // in which its licence stands
}

// writeLicences writes the licences of the Go distribution, of the Go modules in the two programs and of the npm packages
// in the page, by name.
func (s *site) writeLicences(ctx context.Context) error {
	parts, err := s.goParts(ctx)
	if err != nil {
		return err
	}
	npm, err := npmParts(filepath.Join(s.Root, "web"))
	if err != nil {
		return err
	}
	parts = append(parts, npm...)
	slices.SortFunc(parts, func(a, b part) int { return cmp.Compare(a.name, b.name) })
	var text strings.Builder
	text.WriteString("The parts of other people that this site is made of, with their licences.\n")
	for _, p := range slices.Compact(parts) {
		licence, err := licenceIn(p.dir)
		if err != nil {
			return &Fault{What: fmt.Sprintf("%s has no licence file (%v)", p.name, err), Remedy: "ship only parts whose licence is known"}
		}
		fmt.Fprintf(&text, "\n%s\n%s %s\n\n%s\n", strings.Repeat("=", 72), p.name, p.version, strings.TrimSpace(licence))
	}
	return s.put(licencesFile, []byte(text.String()))
}

// goParts lists Go itself and the modules that the two programs contain.
func (s *site) goParts(ctx context.Context) ([]part, error) {
	arguments := []string{"list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Version}}\t{{.Dir}}{{end}}{{end}}"}
	for _, p := range programs {
		arguments = append(arguments, "./"+p.folder)
	}
	list := exec.CommandContext(ctx, "go", arguments...)
	list.Dir, list.Env = s.Root, append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	printed, err := list.Output()
	if err != nil {
		return nil, goFault(ctx, "go list", string(printed), err)
	}
	root := exec.CommandContext(ctx, "go", "env", "GOVERSION", "GOROOT")
	root.Dir = s.Root
	told, err := root.Output()
	if err != nil {
		return nil, goFault(ctx, "go env", string(told), err)
	}
	about := strings.Fields(string(told))
	if len(about) != 2 {
		return nil, &Fault{What: fmt.Sprintf("go env says %q", told), Remedy: "install Go in a folder without spaces in its name"}
	}
	parts := []part{{"Go", about[0], about[1]}}
	for line := range strings.Lines(string(printed)) {
		if fields := strings.Split(strings.TrimSpace(line), "\t"); len(fields) == 3 {
			if p := (part{fields[0], fields[1], fields[2]}); !slices.Contains(parts, p) {
				parts = append(parts, p)
			}
		}
	}
	return parts, nil
}

// npmParts lists the packages that the page is allowed to contain: those of package.json that are not for development,
// and what they need.
func npmParts(web string) ([]part, error) {
	lock, err := readLock(filepath.Join(web, "package-lock.json"))
	if err != nil {
		return nil, err
	}
	var parts []part
	for place, entry := range lock.Packages {
		dir := filepath.Join(web, filepath.FromSlash(place))
		if _, err := os.Stat(dir); place == "" || entry.Dev || entry.Optional && err != nil {
			continue // the project itself, a tool, or a package for another platform
		}
		parts = append(parts, part{strings.TrimPrefix(place, "node_modules/"), entry.Version, dir})
	}
	return parts, nil
}

// licenceIn is the text of the licence file of a folder; where a package has none, what its package.json says.
func licenceIn(dir string) (string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return "", err
	}
	for _, entry := range entries {
		name := strings.ToLower(entry.Name())
		if strings.HasPrefix(name, "licen") || strings.HasPrefix(name, "copying") {
			text, err := os.ReadFile(filepath.Join(dir, entry.Name()))
			return string(text), err
		}
	}
	var about struct {
		License string `json:"license"`
	}
	raw, err := os.ReadFile(filepath.Join(dir, "package.json"))
	if err == nil {
		err = json.Unmarshal(raw, &about)
	}
	if err == nil && about.License == "" {
		err = os.ErrNotExist
	}
	return about.License, err
}
