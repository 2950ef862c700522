package build

import (
	"os"
	"path/filepath"
	"strings"
)

// modulePath is the first line of the go.mod file that marks the root of the repository.
const modulePath = "module rowlight"

// FindRoot walks up from dir to the folder that holds the go.mod file of Rowlight.
func FindRoot(dir string) (string, error) {
	start, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	for folder := start; ; folder = filepath.Dir(folder) {
		text, err := os.ReadFile(filepath.Join(folder, "go.mod"))
		if err == nil && strings.HasPrefix(string(text), modulePath+"\n") {
			return folder, nil
		}
		if folder == filepath.Dir(folder) {
			return "", &Fault{
				What:   "the Rowlight repository is not around " + start,
				Remedy: "change into the folder that holds its go.mod and run the command again",
			}
		}
	}
}
