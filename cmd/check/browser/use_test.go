//go:build browser

package browser

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What a person does with the page, by test marks.

// click presses the mouse on an element; again, where something came onto the page as the mouse went down and moved it away.
func (p *tab) click(mark string) {
	p.t.Helper()
	missed := true
	for tries := 3; missed && tries > 0; tries-- {
		eval[bool](p, fmt.Sprintf(`(() => {
			window.aim?.abort();
			window.aim = new AbortController();
			window.missed = undefined; // one press may be two clicks: of a label and of what it belongs to
			document.addEventListener("click", (event) => {
				window.missed = window.missed !== false && !event.target.closest("[data-testid=%s]");
			}, { capture: true, signal: window.aim.signal });
			return true;
		})()`, mark))
		p.do(chromedp.Click(chromedp.CSS(fmt.Sprintf(`[data-testid=%q]`, mark))))
		missed = eval[bool](p, `window.missed === true`)
	}
}

// press clicks and waits for the answer to the document that this makes.
func (p *tab) press(mark string) {
	p.t.Helper()
	p.click(mark)
	p.answered()
}

// choose picks a value of a select.
func (p *tab) choose(mark, value string) {
	p.t.Helper()
	chosen := eval[string](p, `(() => {
		const choice = `+hook(mark)+`;
		choice.value = `+quoted(value)+`;
		choice.dispatchEvent(new Event("change", { bubbles: true }));
		return choice.value;
	})()`)
	if chosen != value {
		p.t.Fatalf("%s has no %q", mark, value)
	}
}

// pick picks a value of the select of the field with an id.
func (p *tab) pick(field, value string) {
	p.t.Helper()
	if chosen := eval[string](p, `(() => {
		const choice = document.getElementById(`+quoted(field)+`);
		choice.value = `+quoted(value)+`;
		choice.dispatchEvent(new Event("change", { bubbles: true }));
		return choice.value;
	})()`); chosen != value {
		p.t.Fatalf("%s has no %q", field, value)
	}
}

// enter puts a number into the typed box of the field with an id, as pasting does.
func (p *tab) enter(field, value string) {
	p.t.Helper()
	p.paste(`document.getElementById(`+quoted(field)+`).closest(".field").querySelector(".box input")`, value)
}

// enterBox puts a number into a typed box by its test mark.
func (p *tab) enterBox(mark, value string) {
	p.t.Helper()
	p.paste(hook(mark), value)
}

// paste replaces the text of a box.
func (p *tab) paste(box, text string) {
	p.t.Helper()
	eval[bool](p, `(() => {
		const box = `+box+`;
		box.focus();
		box.value = `+quoted(text)+`;
		box.dispatchEvent(new Event("input", { bubbles: true }));
		box.dispatchEvent(new Event("change", { bubbles: true }));
		box.blur();
		return true;
	})()`)
}

// tabTo goes on with the Tab key until an element has the focus.
func (p *tab) tabTo(mark string) {
	p.t.Helper()
	for range 60 {
		p.do(chromedp.KeyEvent(kb.Tab))
		if eval[string](p, `document.activeElement?.dataset?.testid ?? ""`) == mark {
			return
		}
	}
	p.t.Fatalf("Tab does not reach %s", mark)
}

// openWeather opens the sheet of site and weather, where it is not open, and gives a weather file to it.
func (p *tab) openWeather(file string) {
	p.t.Helper()
	if !p.there("sheet") {
		p.click("site")
		p.until(hook("sheet"))
	}
	p.do(chromedp.SetUploadFiles(chromedp.CSS(`[data-testid="weather-file"]`), []string{file}, chromedp.NodeReady))
	p.until(hook("weather-summary"))
}

// drop lets go of a dragged file over the page.
func (p *tab) drop(name, text string) {
	p.t.Helper()
	eval[bool](p, `(() => {
		const dataTransfer = new DataTransfer();
		dataTransfer.items.add(new File([`+quoted(text)+`], `+quoted(name)+`));
		const drag = (type) => document.body.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
		return !drag("dragover") && !drag("drop");
	})()`)
}

// dropHuge drops 200 MB that begin as a text does.
func (p *tab) dropHuge(name, text string) {
	p.t.Helper()
	eval[bool](p, `(() => {
		const chunk = ("x".repeat(4095) + "\n").repeat(1024), dataTransfer = new DataTransfer();
		dataTransfer.items.add(new File([`+quoted(text)+`, ...Array(50).fill(chunk)], `+quoted(name)+`));
		return !document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
	})()`)
}

// says wants the text of an element to hold each of some words.
func (p *tab) says(mark string, words ...string) {
	p.t.Helper()
	text := strings.ReplaceAll(p.text(mark), "\u00a0", " ")
	for _, word := range words {
		if !strings.Contains(text, word) {
			p.t.Errorf("%s says %q, without %q", mark, text, word)
		}
	}
}

// there tells whether an element is on the page.
func (p *tab) there(mark string) bool {
	p.t.Helper()
	return eval[bool](p, `!!`+hook(mark))
}

// generation counts the documents that the page has sent up to the answer shown.
func (p *tab) generation() int {
	p.t.Helper()
	return eval[int](p, `Number(`+hook("calculation")+`.dataset.generation)`)
}

// quoted is a text as an expression of JavaScript.
func quoted(text string) string {
	expression, err := json.Marshal(text)
	if err != nil { // a text always has one
		panic(err)
	}
	return string(expression)
}
