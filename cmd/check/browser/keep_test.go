//go:build browser

package browser

import (
	"bytes"
	"context"
	"math"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"rowlight/cmd/site/serve"
)

// TestConsultant is a visit to a client without a network: the page was opened once and has found a newer one,
// then the server is gone. Gone over to the newer page, the work is as it was left, an option is compared, the
// report printed, and the link that stands on it gives the same numbers in an empty profile.
func TestConsultant(t *testing.T) {
	t.Parallel()
	var newer atomic.Bool
	host := httptest.NewServer(newerFrom(&newer, serve.Handler(bench.site)))
	t.Cleanup(host.Close)
	p := openPage(t, host.URL+"/")
	p.press("add-option")
	p.until(`navigator.serviceWorker.ready.then(() => !!navigator.serviceWorker.controller)`)
	p.until(kept(`work.document.options.length === 3`))
	newer.Store(true)
	eval[bool](p, `(window.before = true, navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true))`)
	p.until(hook("use-update"))
	host.CloseClientConnections()
	host.Close()

	p.click("use-update")
	p.loadedAnew()
	p.settled()
	p.drawn()
	if !p.there("option-C") {
		t.Fatal("the third option is gone")
	}
	eval[bool](p, `(window.seenGeneration = 0, window.print = () => { window.printed = true; }, true)`)
	p.answered()
	p.choose("option-C-form", "sprawl")
	p.answered()
	p.enter("field-options-1-rows-azimuth_deg", "45")
	p.answered()
	p.press("add-option") // four is the most that stands on paper
	here := p.numbers()

	p.click("report")
	p.until(`window.printed`)
	p.report("report-a4", 8.27, 11.69, 2)
	p.report("report-letter", 8.5, 11, 2)
	for _, want := range []string{"2 × catch wire 1.85\u00a0m", "; fruiting wire 1.10\u00a0m", "45° (north-east to south-west)"} { // wires of the form and an edit
		if inputs := eval[string](p, `document.querySelector(".report-inputs").textContent`); !strings.Contains(inputs, want) {
			t.Errorf("the inputs of the report lack %q: %s", want, inputs)
		}
	}
	for _, violation := range p.violations() {
		t.Errorf("the Content-Security-Policy blocked %s", violation)
	}
	p.click("share")
	p.until(hook("link") + `?.value`)
	p.shot("share")
	link := eval[string](p, hook("link")+`.value`)
	p.click("keep")
	p.until(hook("save-named"))
	p.namedScenarios()
	p.shot("keep")
	p.linkAgrees(strings.Replace(link, host.URL+"/", bench.origin, 1), here)
}

// TestNothingMadeIsLost loads the page again while it computes, ends its engine and its pictures, and opens a second
// tab beside it: what was made stays, and neither tab writes over the other.
func TestNothingMadeIsLost(t *testing.T) {
	t.Parallel()
	p := newTab(t, bench.browser)
	p.beforeLoad(keepEngine)
	p.open(bench.origin)
	p.settled()
	p.press("add-option")
	p.choose("option-C-form", "lyre")
	p.until(kept("option.form === 'lyre'"))
	p.until(hook("calculation") + `.dataset.pending === "true"`)
	eval[bool](p, `(window.before = true, location.reload(), true)`)
	p.loadedAnew()
	p.settled()
	p.holdsForm("option-C-form", "lyre")

	p.restartEngine()
	p.settled()
	p.holdsForm("option-C-form", "lyre")

	p.drawn()
	eval[bool](p, `(document.querySelector("iframe").contentDocument.querySelector("canvas").getContext("webgl2").getExtension("WEBGL_lose_context").loseContext(), true)`)
	p.until(hook("restart-view"))
	p.click("restart-view")
	p.until(`!` + hook("restart-view"))
	p.drawn()
	p.holdsForm("option-C-form", "lyre")

	other := p.beside()
	other.beforeLoad(withoutPictures)
	other.open(bench.origin)
	other.settled()
	other.holdsForm("option-C-form", "lyre")
	other.until(hook("other-tabs"))
	p.until(hook("other-tabs"))
	other.choose("option-A-form", "goblet")
	other.until(kept("option.form === 'goblet'"))
	p.choose("option-B-form", "scott-henry")
	p.until(kept("option.form === 'scott-henry'"))
	p.until(kept("option.form === 'goblet'"))
	p.holdsForm("option-A-form", "vsp-spurs")

	// A link in the address of an open page opens; what that tab held before stays in the store.
	p.click("share")
	p.until(hook("link") + `?.value`)
	link := eval[string](p, hook("link")+`.value`)
	eval[bool](other, `(window.before = true, location.href = `+quoted(link)+`, true)`)
	other.loadedAnew()
	other.settled()
	other.holdsForm("option-B-form", "scott-henry")
	other.holdsForm("option-A-form", "vsp-spurs")
	other.until(kept("option.form === 'goblet'"))
}

// namedScenarios keeps the scenario under a name, changes it, opens the kept one, removes it and puts it back.
func (p *tab) namedScenarios() {
	p.t.Helper()
	entries := hook("named") + `.querySelectorAll("li")`
	press := func(expression string) { eval[bool](p, `(`+expression+`.click(), true)`) }
	p.enterBox("save-name", "Before the change")
	p.click("save-named")
	p.until(entries + `.length === 1`)
	p.choose("option-A-form", "goblet")
	press(entries + `[0].querySelector("button")`)
	p.holdsForm("option-A-form", "vsp-spurs")
	if !p.there("named") {
		p.click("keep")
		p.until(hook("named"))
	}
	press(`[...` + entries + `[0].querySelectorAll("button")].at(-1)`)
	p.until(entries + `.length === 0`)
	press(hook("named") + `.nextElementSibling.querySelector("button")`)
	p.until(entries + `.length === 1`)
	if !strings.Contains(p.text("named"), "Before the change") {
		p.t.Errorf("put back is %q", p.text("named"))
	}
}

// kept tells whether a work in the store of the browser has an option that meets a condition.
func kept(condition string) string {
	return `new Promise((done) => {
		const open = indexedDB.open("rowlight");
		open.onsuccess = () => {
			const all = open.result.transaction("work").objectStore("work").getAll();
			all.onsuccess = () => { open.result.close(); done(all.result.some((work) => work.document.options.some((option) => ` + condition + `))); };
		};
	})`
}

func (p *tab) holdsForm(mark, form string) {
	p.t.Helper()
	if chosen := eval[string](p, hook(mark)+`?.value ?? "nothing"`); chosen != form {
		p.t.Errorf("%s is %s, not %s", mark, chosen, form)
	}
}

// beside is a second tab of the same profile.
func (p *tab) beside() *tab {
	p.t.Helper()
	ctx, cancel := chromedp.NewContext(p.ctx)
	p.t.Cleanup(cancel)
	other := &tab{t: p.t, ctx: ctx}
	if err := chromedp.Listen(ctx, other.hear); err != nil {
		p.t.Fatal(err)
	}
	other.do(chromedp.EmulateViewport(1440, 900))
	return other
}

// newerFrom is a host whose service worker is another one from a moment on.
func newerFrom(newer *atomic.Bool, handler http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if newer.Load() && r.URL.Path == "/service-worker.js" {
			text, _ := os.ReadFile(filepath.Join(bench.site, "service-worker.js")) // without it the test finds no newer page
			w.Header().Set("Content-Type", "text/javascript")
			_, _ = w.Write(append(text, "// newer\n"...))
			return
		}
		handler.ServeHTTP(w, r)
	})
}

// loadedAnew waits until the page has loaded itself again: the mark on its window is gone.
func (p *tab) loadedAnew() {
	p.t.Helper()
	for deadline := time.Now().Add(patience); time.Now().Before(deadline); time.Sleep(100 * time.Millisecond) {
		// While one page gives way to the next an expression may fail.
		anew, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](`!window.before && document.readyState === "complete"`))
		if err == nil && anew {
			return
		}
	}
	p.t.Fatal("the page does not load itself again")
}

// linkAgrees opens a link in an empty profile and wants the same numbers within 1e-9, and then the same link as a
// page to be looked at only, as a teacher puts it into a page of her own.
func (p *tab) linkAgrees(link string, want map[string]float64) {
	t := p.t
	t.Helper()
	for name, address := range map[string]string{"link": link, "embedded": strings.Replace(link, "#", "?embed#", 1)} {
		other := newTab(t, bench.browser)
		other.beforeLoad(withoutPictures)
		other.open(address).settled()
		got := other.numbers()
		for mark, value := range want {
			if strings.HasPrefix(mark, "option-") && !(math.Abs(got[mark]-value) <= agreement*math.Max(1, math.Abs(value))) {
				t.Errorf("%s: %s is %g, not %g", name, mark, got[mark], value)
			}
		}
		if other.there("keep-notices") {
			t.Errorf("%s: %s", name, other.text("keep-notices"))
		}
		other.shot(name)
		if name == "link" {
			other.fullStorage()
			continue
		}
		other.choose("option-A-form", "sprawl")
		if other.there("keep") || eval[bool](other, `!!`+hook("option-A-edit")+`.offsetParent`) || other.generation() != 1 {
			t.Error("what is to be looked at only can be changed")
		}
	}
}

// fullStorage lets the browser have no room any more: the page says so, and offers the file.
func (p *tab) fullStorage() {
	p.t.Helper()
	eval[bool](p, `(IDBObjectStore.prototype.put = () => { throw new DOMException("no room", "QuotaExceededError"); }, true)`)
	p.choose("option-A-form", "goblet")
	p.until(hook("not-kept"))
	p.says("not-kept", "full", "Save as a file")
	p.click("keep")
	p.until(hook("save-named"))
	p.click("save-named")
	p.until(`/under that name/.test(` + hook("not-kept") + `.innerText)`)
}

var pageOfPDF = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// report prints the page on paper of a size [in] and wants no more than some pages, with pictures on them.
func (p *tab) report(name string, width, height float64, most int) {
	p.t.Helper()
	pdf := p.printed(name, width, height, most)
	if pictures := bytes.Count(pdf, []byte("/Subtype /Image")); pictures < 3 {
		p.t.Errorf("%s has %d pictures, not one for each option", name, pictures)
	}
}

// printed is the page on paper of a size [in], of no more than some pages.
func (p *tab) printed(name string, width, height float64, most int) (pdf []byte) {
	p.t.Helper()
	background := true
	p.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		printed, err := cdp.Call(ctx, t, cdpage.PrintToPDF, cdpage.PrintToPDFParams{
			PaperWidth: width, PaperHeight: height, PreferCSSPageSize: &background, PrintBackground: &background,
		})
		pdf = printed.Data
		return err
	}))
	p.keepShot(name+".pdf", pdf)
	if pages := len(pageOfPDF.FindAll(pdf, -1)); pages < 1 || pages > most {
		p.t.Errorf("%s has %d pages, not 1 to %d", name, pages, most)
	}
	return pdf
}
