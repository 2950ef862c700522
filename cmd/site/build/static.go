package build

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
)

// staticKinds are the files in web/ that go into the site as they are.
var staticKinds = [...]string{".html", ".css", ".svg", ".png", ".ico", ".webmanifest"}

// copyStatic copies the pages and what stands beside them, and the icons.
func (s *site) copyStatic() error {
	web := os.DirFS(filepath.Join(s.Root, "web"))
	return fs.WalkDir(web, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && name != "." && name != "icons":
			return fs.SkipDir
		case entry.IsDir() || !slices.Contains(staticKinds[:], path.Ext(name)):
			return nil
		}
		text, err := fs.ReadFile(web, name)
		if err != nil {
			return err
		}
		return s.put(name, text)
	})
}
