package serve

import (
	"context"
	"errors"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowlight/cmd/site/build"
)

// site is a folder with a program, its copies and a page below a sub-folder.
func site(t *testing.T) http.Handler {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"index.html": "<title>rows</title>", "engine.wasm": "plain", "engine.wasm.br": "brotli", "engine.wasm.gz": "gzip",
		"docs/index.html": "<title>docs</title>", "view.wasm": "plain only",
	} {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return Handler(dir)
}

func TestHandler(t *testing.T) {
	handler := site(t)
	cases := []struct {
		path, accept string
		status       int
		body, kind   string
		coding       string
	}{
		{"/", "", 200, "<title>rows</title>", "text/html; charset=utf-8", ""},
		{"/engine.wasm", "", 200, "plain", "application/wasm", ""},
		{"/engine.wasm", "gzip, deflate, br, zstd", 200, "brotli", "application/wasm", "br"},
		{"/engine.wasm", "gzip", 200, "gzip", "application/wasm", "gzip"},
		{"/engine.wasm", "br;q=0, gzip;q=0.5", 200, "gzip", "application/wasm", "gzip"},
		{"/engine.wasm", "br;q=0.0", 200, "plain", "application/wasm", ""},
		{"/view.wasm", "br, gzip", 200, "plain only", "application/wasm", ""},
		{"/docs/", "br", 200, "<title>docs</title>", "text/html; charset=utf-8", ""},
		{"/docs", "", 404, "404 page not found\n", "text/plain; charset=utf-8", ""},
		{"/missing.wasm", "br", 404, "404 page not found\n", "text/plain; charset=utf-8", ""},
		{"/../../etc/passwd", "", 404, "404 page not found\n", "text/plain; charset=utf-8", ""},
	}
	for _, c := range cases {
		request := httptest.NewRequest("GET", "http://localhost"+c.path, nil)
		if c.accept != "" {
			request.Header.Set("Accept-Encoding", c.accept)
		}
		answer := httptest.NewRecorder()
		handler.ServeHTTP(answer, request)
		header := answer.Header()
		if answer.Code != c.status || answer.Body.String() != c.body ||
			header.Get("Content-Type") != c.kind || header.Get("Content-Encoding") != c.coding {
			t.Errorf("GET %s, accepting %q: got %d %q %q %q, want %d %q %q %q", c.path, c.accept,
				answer.Code, answer.Body, header.Get("Content-Type"), header.Get("Content-Encoding"),
				c.status, c.body, c.kind, c.coding)
		}
	}
}

func TestHandlerTakesNoUploads(t *testing.T) {
	answer := httptest.NewRecorder()
	site(t).ServeHTTP(answer, httptest.NewRequest("POST", "http://localhost/", strings.NewReader("x")))
	if answer.Code != http.StatusMethodNotAllowed {
		t.Errorf("POST is answered with %d", answer.Code)
	}
}

func TestTakenPortNamesTheNextOne(t *testing.T) {
	first, err := Listen("localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	_, port, err := net.SplitHostPort(first.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	_, err = Listen("localhost:" + port)
	var fault *build.Fault
	if !errors.As(err, &fault) || fault.What != "port "+port+" is taken" || fault.Remedy != "run with -addr localhost:"+nextPort(port) {
		t.Errorf("a taken port gives %v", err)
	}
	if _, err := Listen("8080"); !errors.As(err, &fault) || !strings.Contains(fault.Remedy, "host:port") {
		t.Errorf("an address without a host gives %v", err)
	}
	if nextPort("65535") != "8081" || nextPort("http") != "8081" || nextPort("8080") != "8081" {
		t.Error("the next port is not a port")
	}
}

func TestUntilStopsWithItsContext(t *testing.T) {
	listener, err := Listen("localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- Until(ctx, listener, site(t)) }()
	answer, err := http.Get("http://" + listener.Addr().String() + "/")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if text, err := io.ReadAll(answer.Body); err != nil || string(text) != "<title>rows</title>" {
		t.Errorf("got %q, %v", text, err)
	}
	cancel()
	if err := <-done; err != nil {
		t.Errorf("stopping gives %v", err)
	}
}
