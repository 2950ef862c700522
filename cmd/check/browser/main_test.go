//go:build browser

package browser

import (
	"context"
	"flag"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"rowlight/cmd/site/build"
	"rowlight/cmd/site/serve"
	"rowlight/sim/result"
)

var (
	pictureFile = flag.String("picture", "", "write the README's picture to this `file`")
	shotsFolder = flag.String("shots", "", "keep the screenshots of the tests in this `folder`")
)

// bench is what all tests share: the built site behind two servers, one browser, and the command
// line to compare with.
var bench struct {
	root     string   // of the repository
	site     string   // folder of the built site
	rowlight string   // the built command line
	origin   string   // server with the site at its root
	below    string   // server with the site in a sub-path, as a project page has it
	outside  *outside // what pages ask of other hosts
	maker    *outside // what the browser itself asks, mostly of its maker
	mu       sync.Mutex
	days     map[string]result.Day // answers of the command line by document and flags
	browser  context.Context
	packing  func() (dir string, err error) // waits for the compressed site
}

func TestMain(m *testing.M) {
	flag.Parse()
	code, err := runBench(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, "browser tests:", err)
		code = 1
	}
	os.Exit(code)
}

// runBench builds the site and the command line, starts the servers and Chromium, and runs the tests.
func runBench(m *testing.M) (code int, err error) {
	work, err := os.MkdirTemp("", "rowlight-browser-")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(work)
	bench.days = map[string]result.Day{}
	if bench.root, err = build.FindRoot("."); err != nil {
		return 0, err
	}
	bench.site, bench.rowlight = filepath.Join(work, "site"), filepath.Join(work, "rowlight")
	if _, err := build.Site(context.Background(), build.Options{Root: bench.root, Out: bench.site, Log: os.Stderr}); err != nil {
		return 0, err
	}
	compile := exec.Command("go", "build", "-o", bench.rowlight, "./cmd/rowlight")
	compile.Dir, compile.Stderr = bench.root, os.Stderr
	if err := compile.Run(); err != nil {
		return 0, err
	}

	if bench.packing, err = pack(work); err != nil {
		return 0, err
	}

	handler := serve.Handler(bench.site)
	atRoot := httptest.NewServer(handler)
	defer atRoot.Close()
	inSubPath := httptest.NewServer(http.StripPrefix("/vineyards/rowlight", handler))
	defer inSubPath.Close()
	bench.origin, bench.below = atRoot.URL+"/", inSubPath.URL+"/vineyards/rowlight/"

	if bench.outside, err = listenOutside(); err != nil {
		return 0, err
	}
	defer bench.outside.close()
	if bench.maker, err = listenOutside(); err != nil {
		return 0, err
	}
	defer bench.maker.close()
	browser, stop, err := startChromium(filepath.Join(work, "profile"))
	if err != nil {
		return 0, err
	}
	defer stop()
	bench.browser = browser
	return m.Run(), nil
}

// pack builds the compressed site, which takes over a minute. Where all tests run it does so at once, at the lowest
// priority, on what the tests of the page leave idle of the processors.
func pack(work string) (wait func() (dir string, err error), err error) {
	command, dir := filepath.Join(work, "site-command"), filepath.Join(work, "packed")
	compile := exec.Command("go", "build", "-o", command, "./cmd/site")
	compile.Dir, compile.Stderr = bench.root, os.Stderr
	if err := compile.Run(); err != nil {
		return nil, err
	}
	done := sync.OnceValue(func() error {
		site := exec.Command("nice", "-n", "19", command, "-out", dir)
		site.Dir, site.Stderr = bench.root, os.Stderr
		return site.Run()
	})
	if flag.Lookup("test.run").Value.String() == "" {
		go done()
	}
	return func() (string, error) { return dir, done() }, nil
}
