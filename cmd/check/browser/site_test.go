//go:build browser

package browser

import (
	"bufio"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"rowlight/cmd/site/build"
	"rowlight/cmd/site/serve"
)

// TestSiteCommand runs the command that a newcomer runs, reads the one line that it prints, opens that
// address and interrupts the command.
func TestSiteCommand(t *testing.T) {
	program := filepath.Join(t.TempDir(), "site")
	compile := exec.Command("go", "build", "-o", program, "./cmd/site")
	compile.Dir = bench.root
	if printed, err := compile.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, printed)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	site := exec.CommandContext(ctx, program, "-addr", "127.0.0.1:0")
	site.Dir, site.Stderr = bench.root, os.Stderr
	out, err := site.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := site.Start(); err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	address := regexp.MustCompile(`^Rowlight is at (http://127\.0\.0\.1:\d+/)\n$`).FindStringSubmatch(line)
	if address == nil {
		t.Fatalf("it prints %q, %v", line, err)
	}
	answer, err := http.Get(address[1])
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if page, err := io.ReadAll(answer.Body); err != nil || !strings.Contains(string(page), "<title>Rowlight</title>") {
		t.Errorf("the address answers %.200q, %v", page, err)
	}
	if err := site.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if err := site.Wait(); err != nil {
		t.Errorf("interrupted, it ends with %v", err)
	}
}

// budgets are how many bytes the files may come to over the network, compressed: a larger page makes a phone on a
// slow line wait. Both programs hold the Go runtime and reading JSON, 0.7 MB each; of the view most is the drawing
// library.
var budgets = map[string]int64{"app.js": 150_000, "charts.js": 90_000, programs: 3_500_000}

// programs stands for both together.
const programs = "engine.wasm and view.wasm"

// TestSiteForAHost builds the compressed site, keeps it within its budget, and opens it from a host that
// sends the compressed copies.
func TestSiteForAHost(t *testing.T) {
	t.Parallel()
	dir, err := bench.packing()
	if err != nil {
		t.Fatal(err)
	}
	var listed build.Manifest
	text, err := os.ReadFile(filepath.Join(dir, build.ManifestName))
	if err == nil {
		err = json.Unmarshal(text, &listed)
	}
	if err != nil {
		t.Fatal(err)
	}
	compressed := map[string]int64{}
	for name, file := range listed {
		for _, suffix := range []string{".br", ".gz"} {
			info, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name)) + suffix)
			if err != nil {
				t.Errorf("no compressed copy: %v", err)
				continue
			}
			if suffix == ".br" {
				compressed[name] = info.Size()
				t.Logf("%-20s %9d bytes, brotli %9d", name, file.Bytes, info.Size())
			}
		}
	}
	for _, program := range []string{"engine.wasm", "view.wasm"} {
		if compressed[program] == 0 {
			t.Errorf("the site has no %s", program)
		}
		compressed[programs] += compressed[program]
	}
	for name, budget := range budgets {
		t.Logf("%s: %d of %d bytes", name, compressed[name], budget)
		if compressed[name] == 0 || compressed[name] > budget {
			t.Errorf("%s comes to %d bytes, allowed are %d", name, compressed[name], budget)
		}
	}
	host := httptest.NewServer(serve.Handler(dir))
	t.Cleanup(host.Close)
	p := openPage(t, host.URL+"/")
	p.agrees(rowlightDay(t, firstScenario()))
	p.drawn()
}
