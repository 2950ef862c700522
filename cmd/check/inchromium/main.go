//go:build !js

// Command inchromium runs a test binary of WebAssembly in a worker of headless Chromium, where users run the simulation:
//
//	GOOS=js GOARCH=wasm go test -exec inchromium -bench . ./sim
//
// What the tests print goes to standard output, and their exit code is its own. Tests that read files do not find them.
package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"github.com/chromedp/chromedp"
)

func main() {
	code, err := run(context.Background(), os.Args[1:])
	if err != nil {
		fmt.Fprintln(os.Stderr, "inchromium:", err)
		code = 1
	}
	os.Exit(code)
}

// page holds the worker and what it has said.
const page = `<!doctype html><title>Tests</title><script>
	let said = "", code = null;
	const worker = new Worker("worker.js");
	worker.onmessage = ({ data }) => typeof data === "string" ? (said += data) : (code = data);
	worker.onerror = ({ message }) => { if (code === null) said += message + "\n", code = 1; }; // timers may outlive the program
	const heard = () => { const news = { said, code }; said = ""; return JSON.stringify(news); };
</script>`

// worker runs the binary: output comes as text, the exit code as a number.
const worker = `importScripts("wasm_exec.js");
	const decoder = new TextDecoder();
	globalThis.fs.writeSync = (_, bytes) => (postMessage(decoder.decode(bytes, { stream: true })), bytes.length);
	(async () => {
		const go = new Go();
		go.argv = await (await fetch("args.json")).json();
		let code = 0;
		go.exit = (with_) => (code = with_);
		const { instance } = await WebAssembly.instantiateStreaming(fetch("test.wasm"), go.importObject);
		await go.run(instance);
		postMessage(code);
	})().catch((error) => { postMessage(String(error) + "\n"); postMessage(1); });`

// run serves the binary, its first argument, to a browser and waits for its end.
func run(ctx context.Context, args []string) (code int, err error) {
	if len(args) == 0 {
		return 0, errors.New("name the binary and its arguments")
	}
	goroot, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return 0, fmt.Errorf("go env GOROOT: %w", err)
	}
	argv, err := json.Marshal(args)
	if err != nil {
		return 0, err
	}
	files := http.NewServeMux()
	text := func(kind, content string) http.HandlerFunc {
		return func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", kind)
			fmt.Fprint(w, content)
		}
	}
	file := func(kind, path string) http.HandlerFunc {
		return func(w http.ResponseWriter, r *http.Request) {
			w.Header().Set("Content-Type", kind)
			http.ServeFile(w, r, path)
		}
	}
	files.HandleFunc("/", text("text/html", page))
	files.HandleFunc("/worker.js", text("text/javascript", worker))
	files.HandleFunc("/args.json", text("application/json", string(argv)))
	files.HandleFunc("/wasm_exec.js", file("text/javascript", filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec.js")))
	files.HandleFunc("/test.wasm", file("application/wasm", args[0]))
	host := httptest.NewServer(files)
	defer host.Close()

	allocator, stop := chromedp.NewExecAllocator(ctx,
		chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck,
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-background-timer-throttling", true), chromedp.Flag("disable-renderer-backgrounding", true),
		chromedp.Flag("disable-dev-shm-usage", true))
	defer stop()
	browser, end := chromedp.NewContext(allocator)
	defer end()
	if err := chromedp.Do(browser, chromedp.Navigate(host.URL)); err != nil {
		return 0, err
	}
	return listen(browser)
}

// listen prints what the worker says until it has ended.
func listen(browser context.Context) (code int, err error) {
	for {
		text, err := chromedp.Run(browser, chromedp.Evaluate[string]("heard()"))
		if err != nil {
			return 0, err
		}
		var news struct {
			Said string
			Code *int
		}
		if err := json.Unmarshal([]byte(text), &news); err != nil {
			return 0, err
		}
		fmt.Print(news.Said)
		if news.Code != nil {
			return *news.Code, nil
		}
		time.Sleep(200 * time.Millisecond)
	}
}
