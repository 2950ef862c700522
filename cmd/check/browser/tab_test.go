//go:build browser

package browser

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// patience is how long a tab may take for one thing. Software rendering on two busy cores is slow.
const patience = 3 * time.Minute

// keepViolations collects what the Content-Security-Policy of each document blocks.
const keepViolations = `
	window.violations = [];
	document.addEventListener("securitypolicyviolation", (event) =>
		window.violations.push(event.violatedDirective + " " + event.blockedURI + " " + event.sourceFile));`

// tab is one page in a browser profile of its own.
type tab struct {
	t   testing.TB
	ctx context.Context

	mu       sync.Mutex
	requests []string // every address that the page asked for
	problems []string // errors of the console, exceptions that nothing caught
}

// newTab opens an empty tab that is closed, and judged, at the end of the test: an error on its
// console fails the test.
func newTab(t testing.TB, browser context.Context) *tab {
	t.Helper()
	ctx, cancel := chromedp.NewContext(browser, chromedp.WithNewBrowserContext(func(c *target.CreateBrowserContextParams) {
		c.ProxyServer = bench.outside.address()
	}))
	ctx, stop := context.WithTimeout(ctx, 30*time.Minute)
	p := &tab{t: t, ctx: ctx}
	t.Cleanup(func() {
		p.mu.Lock()
		defer p.mu.Unlock()
		for _, problem := range p.problems {
			t.Errorf("the page's console: %s", problem)
		}
		stop()
		cancel()
	})
	if err := chromedp.Listen(ctx, p.hear); err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.EmulateViewport(1440, 900), chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		// Two tests run at once: each tab counts as the one in front.
		_, err := cdp.Call(ctx, t, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
		return err
	}))
	p.beforeLoad(keepViolations)
	return p
}

// hear notes what the browser reports.
func (p *tab) hear(event any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		p.requests = append(p.requests, e.Request.URL)
	case *runtime.EventExceptionThrown:
		p.problems = append(p.problems, exceptionText(e.ExceptionDetails))
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError {
			p.problems = append(p.problems, argumentText(e.Args))
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			p.problems = append(p.problems, fmt.Sprintf("%s (%s)", e.Entry.Text, e.Entry.URL))
		}
	}
}

func exceptionText(d *runtime.ExceptionDetails) string {
	if d.Exception != nil && d.Exception.Description != "" {
		return d.Exception.Description
	}
	return d.Text
}

func argumentText(args []*runtime.RemoteObject) string {
	var words []string
	for _, a := range args {
		if a.Description != "" {
			words = append(words, a.Description)
		} else {
			words = append(words, string(a.Value))
		}
	}
	return strings.Join(words, " ")
}

// do runs actions that must succeed within the patience of the tests.
func (p *tab) do(actions ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	if err := chromedp.Do(ctx, actions...); err != nil {
		p.t.Fatal(err)
	}
}

// eval evaluates an expression of JavaScript that must succeed.
func eval[T any](p *tab, expression string) T {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		p.t.Fatalf("%s: %v", expression, err)
	}
	return value
}

// until waits for an expression to be truthy.
func (p *tab) until(expression string) {
	p.t.Helper()
	wait := chromedp.Poll[chromedp.Void](expression, chromedp.WithPollingInterval(50*time.Millisecond), chromedp.WithPollingTimeout(patience))
	if err := chromedp.Do(p.ctx, wait); err != nil {
		p.shot("stuck")
		p.t.Fatalf("waiting for %s: %v; the page says: %.600s", expression, err, eval[string](p, `document.body.innerText`))
	}
}

// beforeLoad runs a script in every document before its own scripts.
func (p *tab) beforeLoad(script string) {
	p.t.Helper()
	p.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		return err
	}))
}

// open loads an address.
func (p *tab) open(address string) *tab {
	p.t.Helper()
	p.do(chromedp.Navigate(address))
	return p
}

// openPage opens the page at an address in a new tab and waits for its first numbers.
func openPage(t testing.TB, address string) *tab {
	t.Helper()
	p := newTab(t, bench.browser).open(address)
	p.settled()
	return p
}

// settled waits until the numbers shown belong to the newest input.
func (p *tab) settled() {
	p.t.Helper()
	p.until(hook("calculation") + `?.dataset.pending === "false" && !!` + hook("option-A-hottest") + `?.dataset.value`)
}

// drawn waits until the view has drawn.
func (p *tab) drawn() {
	p.t.Helper()
	p.until(`[...document.querySelectorAll("iframe")].some((frame) => frame.contentWindow?.rowlightView?.frames?.() > 0)`)
}
