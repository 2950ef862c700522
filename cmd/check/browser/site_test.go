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

// budgets are how many bytes the files may come to over the network, compressed. The engine is 1.72 MB, a
// third of it the validation of scenarios, about an eighth what has come with the draws of uncertain inputs, 0.04 MB the
// reader of weather files, 0.06 MB nets, film and mist and what weighs the options, 0.07 MB the chain that explains a
// number and the directions of rows; the view is 2.08 MB, nearly all of it the drawing library. A larger one makes a
// phone on a slow line wait and needs a reason.
var budgets = map[string]int64{"engine.wasm": 1_760_000, "view.wasm": 2_300_000, "app.js": 150_000}

// TestSiteForAHost builds the compressed site, keeps it within its budget, and opens it from a host that
// sends the compressed copies.
func TestSiteForAHost(t *testing.T) {
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
	for name := range budgets {
		if listed[name].Bytes == 0 {
			t.Errorf("the site has no %s", name)
		}
	}
	for name, file := range listed {
		for _, suffix := range []string{".br", ".gz"} {
			info, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name)) + suffix)
			if err != nil {
				t.Errorf("no compressed copy: %v", err)
				continue
			}
			if suffix == ".br" {
				if budget := budgets[name]; budget > 0 && info.Size() > budget {
					t.Errorf("%s comes to %d bytes, more than %d", name, info.Size(), budget)
				}
				t.Logf("%-20s %9d bytes, brotli %9d", name, file.Bytes, info.Size())
			}
		}
	}
	host := httptest.NewServer(serve.Handler(dir))
	t.Cleanup(host.Close)
	p := openPage(t, host.URL+"/")
	p.agrees(rowlightDay(t, firstScenario()))
	p.drawn()
}
