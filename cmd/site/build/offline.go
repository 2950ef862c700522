package build

import (
	"encoding/json"
	"path"

	"github.com/evanw/esbuild/pkg/api"
)

// offlineEntry is the service worker: the script that stores the site in the browser and answers from there.
var offlineEntry = entry{source: "service-worker.ts", out: "service-worker", format: api.FormatIIFE}

// bundleOffline writes the service worker with the list of all other files and their hashes before it. So any
// change of the site changes this script, by which a browser finds out that there is a newer version.
func (s *site) bundleOffline() error {
	text, err := json.Marshal(storedFiles(s.files))
	if err != nil {
		return err
	}
	return s.bundleEntry(offlineEntry, "const siteFiles="+string(text)+";")
}

// storedFiles are the files that the page needs without a network, with their hashes. The manifest lists the
// service worker, so its own hash cannot stand in it: it is stored unchecked.
func storedFiles(files Manifest) map[string]string {
	stored := map[string]string{ManifestName: ""}
	for name, file := range files {
		if path.Ext(name) != ".map" {
			stored[name] = file.SHA256
		}
	}
	return stored
}
