// Package serve hands out a built site over HTTP as a good static host would: the right types,
// compressed copies where the client takes them, and no folder listings.
package serve

import (
	"io/fs"
	"net/http"
	"os"
	"path"
	"strings"
	"time"
)

// kinds are the types of the files in a site. They are fixed here since the tables of operating
// systems differ, and a browser compiles a program while it loads only as application/wasm.
var kinds = map[string]string{
	".html":        "text/html; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".map":         "application/json",
	".wasm":        "application/wasm",
	".svg":         "image/svg+xml",
	".png":         "image/png",
	".ico":         "image/x-icon",
	".webmanifest": "application/manifest+json",
}

// copies are the compressed copies by preference.
var copies = [...]struct{ coding, suffix string }{{"br", ".br"}, {"gzip", ".gz"}}

// Handler serves the site in a folder.
func Handler(dir string) http.Handler {
	files := os.DirFS(dir)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
			return
		}
		name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
		if name == "" || strings.HasSuffix(r.URL.Path, "/") {
			name = path.Join(name, "index.html")
		}
		header := w.Header()
		header.Set("X-Content-Type-Options", "nosniff")
		header.Set("Referrer-Policy", "no-referrer")
		header.Set("Cache-Control", "no-cache") // ask again each time, and take the answer "not modified"
		header.Set("Vary", "Accept-Encoding")
		if kind := kinds[path.Ext(name)]; kind != "" {
			header.Set("Content-Type", kind)
		}
		for _, c := range copies {
			if accepts(r.Header.Get("Accept-Encoding"), c.coding) && send(w, r, files, name, name+c.suffix, c.coding) {
				return
			}
		}
		if !send(w, r, files, name, name, "") {
			header.Del("Content-Type")
			http.NotFound(w, r)
		}
	})
}

// send answers with one stored file, and says whether there is such a file.
func send(w http.ResponseWriter, r *http.Request, files fs.FS, name, stored, coding string) bool {
	info, err := fs.Stat(files, stored)
	if err != nil || info.IsDir() {
		return false
	}
	text, err := fs.ReadFile(files, stored)
	if err != nil {
		return false
	}
	if coding != "" {
		w.Header().Set("Content-Encoding", coding)
	}
	http.ServeContent(w, r, name, info.ModTime().Truncate(time.Second), strings.NewReader(string(text)))
	return true
}

// accepts tells whether an Accept-Encoding header takes a coding (RFC 9110, section 12.5.3). A
// coding with weight 0 is refused.
func accepts(header, coding string) bool {
	for part := range strings.SplitSeq(header, ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(part), ";")
		if strings.TrimSpace(name) != coding {
			continue
		}
		q := strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(weight), "q="))
		return strings.Trim(q, "0.") != "" || q == ""
	}
	return false
}
