package build

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"os"
	"path/filepath"
)

// ManifestName is the file that lists the site. The page reads the sizes to show loading progress
// in bytes: a compressed answer does not tell how long it is once unpacked.
const ManifestName = "manifest.json"

// Manifest lists the files of the site by their path in it, with forward slashes. It does not list
// itself nor the compressed copies.
type Manifest map[string]File

// File is one file of the site as it is before compression.
type File struct {
	Bytes  int    `json:"bytes"`
	SHA256 string `json:"sha256"` // hexadecimal
}

func describe(text []byte) File {
	sum := sha256.Sum256(text)
	return File{Bytes: len(text), SHA256: hex.EncodeToString(sum[:])}
}

// ReadManifest reads the list that an earlier build left in the folder.
func ReadManifest(dir string) (Manifest, error) {
	text, err := os.ReadFile(filepath.Join(dir, ManifestName))
	if err != nil {
		return nil, err
	}
	var m Manifest
	return m, json.Unmarshal(text, &m)
}

func (m Manifest) write(dir string) error {
	text, err := json.MarshalIndent(m, "", "  ")
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, ManifestName), append(text, '\n'), 0o644)
}

// removeStale removes the files of an earlier build that this one did not write. Names that would
// lead out of the folder are not ours and are left alone.
func (s *site) removeStale(before, after Manifest) {
	for name := range before {
		if _, kept := after[name]; kept || !filepath.IsLocal(name) {
			continue
		}
		path := filepath.Join(s.Out, filepath.FromSlash(name))
		for _, suffix := range []string{"", ".br", ".gz"} {
			os.Remove(path + suffix) // what is not there need not go
		}
	}
}
