//go:build browser

package browser

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rowlight/sim/lesson"
)

// TestEveryLesson goes through all lessons, below a path and without pictures: no answer before the guess, numbers as
// the simulation gives them outside of the page, something to try out; and behind them the reader's own work as it was.
func TestEveryLesson(t *testing.T) {
	t.Parallel()
	all, err := lesson.Load()
	if err != nil {
		t.Fatal(err)
	}
	p := newTab(t, bench.browser)
	p.beforeLoad(withoutPictures)
	p.open(bench.below).settled()
	p.choose("option-B-form", "lyre")
	p.until(kept("option.form === 'lyre'"))
	before := p.ownWork()
	for _, l := range all {
		p.lesson(l)
	}
	p.click("lesson-leave")
	p.until(`!` + hook("lesson"))
	p.settled()
	if after := p.ownWork(); after != before {
		t.Errorf("behind the lessons the page was %s, it is %s", before, after)
	}
	p.click("undo")
	p.until(hook("option-B-form") + `.value === "sprawl"`)
	for _, violation := range p.violations() {
		t.Errorf("the Content-Security-Policy blocked %s", violation)
	}
}

// ownWork is what a reader would miss: his options, the hour and the way of looking.
func (p *tab) ownWork() string {
	p.t.Helper()
	return eval[string](p, `JSON.stringify([`+hook("option-A-form")+`.value, `+hook("option-B-form")+`.value, !!`+hook("option-C")+`,
		`+hook("hour-slider")+`.value, `+hook("undo")+`.disabled])`)
}

// lesson goes through one lesson by its address.
func (p *tab) lesson(l lesson.Lesson) {
	outer := p.t.(*testing.T)
	defer func() { p.t = outer }()
	outer.Run(l.Key, func(t *testing.T) {
		p.t = t
		p.viewport(1280, 720, 1)
		p.click("projector")
		want, err := l.Run(nil)
		if err != nil {
			t.Fatal(err)
		}
		eval[bool](p, `(location.hash = `+quoted("lesson="+l.Key)+`, true)`)
		p.stage(l.Key, "question")
		p.click("lesson-next")
		p.stage(l.Key, "predict")
		if eval[bool](p, `!`+hook("lesson-next")+`.disabled || [...document.querySelectorAll(".verdict, .day")].some((e) => e.offsetParent)`) {
			t.Error("one can go on without a guess, or reads the answer before it")
		}
		p.click("lesson-guess-" + l.Guesses[0])
		p.click("lesson-next")
		p.stage(l.Key, "run")
		p.click("lesson-run")
		compared := map[string]bool{}
		for _, stage := range l.Stages[3:] {
			p.stage(l.Key, stage.Key)
			p.until(hook("lesson") + `.dataset.seen === "true"`)
			p.readsLesson(want, compared)
			if stage.Key == "explain" {
				if found, wanted := eval[string](p, hook("lesson-outcome")+`.dataset.found`), l.BorneOut(want); found != wanted {
					t.Errorf("the page finds %q, the simulation %q", found, wanted)
				}
			}
			if stage.Key != "mind" {
				p.click("lesson-next")
			}
		}
		p.click("projector")
		p.viewport(1440, 900, 1)
		if len(compared) < 6 {
			t.Errorf("only %d numbers were compared", len(compared))
		}
		p.click("lesson-try-" + l.Tries[0].Key)
		p.until(`document.querySelector(".lesson-before")`)
		p.sheetOfLesson("sheet-" + l.Key)
	})
}

// sheetOfLesson prints the sheet: one page with the address and its code.
func (p *tab) sheetOfLesson(name string) {
	p.t.Helper()
	eval[bool](p, `(window.printed = false, window.print = () => { window.printed = true; window.dispatchEvent(new Event("beforeprint")); }, true)`)
	p.click("lesson-print")
	p.until(`window.printed && document.querySelector(".sheet-address path")?.getAttribute("d").length > 1000`)
	if address := eval[string](p, `document.querySelector(".sheet-address p").innerText`); !strings.HasPrefix(address, bench.below+"#lesson=") {
		p.t.Errorf("the address on the sheet is %q", address)
	}
	p.printed(name+"-a4", 8.27, 11.69, 1)
	p.printed(name+"-letter", 8.5, 11, 1)
}

// stage waits for a stage of a lesson, and wants its text to hold neither gaps nor names of values.
func (p *tab) stage(key, stage string) {
	p.t.Helper()
	p.until(hook("lesson") + `?.dataset.lesson === ` + quoted(key) + ` && ` + hook("lesson") + `.dataset.stage === ` + quoted(stage))
	p.until(hook("lesson") + `.dataset.seen === "true" || ` + hook("lesson-run") + ` || ` + hook("lesson-next"))
	text := eval[string](p, `document.querySelector(".lesson-text").innerText`)
	if len(text) < 40 || strings.ContainsAny(text, "{}") {
		p.t.Errorf("%s, %s: the text is %q", key, stage, text)
	}
	if eval[bool](p, `document.documentElement.dataset.theme === "projector"`) {
		for _, fault := range eval[[]string](p, readInRoom) {
			p.t.Errorf("%s, %s before a room: %s", key, stage, fault)
		}
	}
}

// readInRoom lists what of a stage a room cannot read as it opens: question, name of the stage and sentence above the
// buttons that go on, and the picture above the ribbon.
const readInRoom = `new Promise((shown) => requestAnimationFrame(() => requestAnimationFrame(shown))).then(() => {
	const box = (mark) => document.querySelector(mark).getBoundingClientRect();
	const [ribbon, onward] = [box(".ribbon").top, box(".lesson-onward").top];
	const least = { ".lesson h1": onward, ".lesson h2": onward, ".lesson-text": onward, "[data-pane]": ribbon };
	return Object.entries(least).filter(([mark, end]) => box(mark).top < 0 || box(mark).bottom > Math.min(end, ribbon) + 1)
		.map(([mark, end]) => mark + " reaches from " + box(mark).top + " to " + box(mark).bottom + ", seen is 0 to " + Math.min(end, ribbon));
})`

// readsLesson compares the numbers of a stage with those of the simulation.
func (p *tab) readsLesson(want map[string]float64, compared map[string]bool) {
	p.t.Helper()
	if text := p.text("lesson"); strings.Contains(text, "–\n") {
		p.t.Errorf("a number is missing: %q", text)
	}
	for mark, got := range p.numbers() {
		name, isValue := strings.CutPrefix(mark, "lesson-value-")
		if !isValue {
			continue
		}
		compared[name] = true
		if value, there := want[name]; !there || !(math.Abs(got-value) <= agreement*math.Max(1, math.Abs(value))) {
			p.t.Errorf("%s: the page shows %.15g, the simulation says %.15g", name, got, value)
		}
	}
}

// TestTeacher goes through one lesson before a class: by the list, on a projector, loaded again in the middle and
// left and come back to, by the list and by the browser's Back.
func TestTeacher(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.below)
	p.drawn()
	p.click("projector")
	p.click("lessons")
	p.until(hook("lesson-open-west-side"))
	p.shot("lesson-list")
	p.accessible()
	p.click("lesson-open-west-side")
	p.stage("west-side", "question")
	p.settled()
	p.still()
	p.shot("lesson-question")
	p.click("lesson-next")
	p.stage("west-side", "predict")
	p.click("lesson-guess-both")
	p.shot("lesson-predict")
	p.click("lesson-next")

	eval[bool](p, `(window.before = true, location.reload(), true)`)
	p.loadedAnew()
	p.click("projector") // a choice of the room, which is not remembered
	p.stage("west-side", "run")
	p.click("lesson-run")
	p.stage("west-side", "look1")
	p.click("lesson-back")
	p.click("lesson-back")
	if !eval[bool](p, hook("lesson-guess-both")+`.checked && `+hook("lesson-guess-east")+`.disabled`) {
		t.Error("the guess does not stand")
	}
	p.click("lesson-next")
	p.click("lesson-run")
	p.stage("west-side", "look1")
	p.drawn()
	p.click("lesson-next")
	p.stage("west-side", "look2")
	p.until(hook("hour-slider") + `.value === "186"`)
	p.looksOfLesson("lesson-look2")
	p.click("lesson-next")
	p.stage("west-side", "explain")
	p.says("lesson-outcome", "Both about as much", "The west side, in the afternoon sun")
	p.shot("lesson-explain")
	p.click("lesson-next")
	p.stage("west-side", "mind")
	p.paste(hook("lesson-notes"), "Air as warm in the morning.")
	p.click("lesson-try-evenDay")
	p.until(`document.querySelector(".lesson-before")`)
	p.settled()
	p.shot("lesson-mind")
	p.accessible()

	// Leaving and coming back: by the list the lesson stands where it was, with what was written.
	p.click("lesson-leave")
	p.until(`!` + hook("lesson"))
	p.click("lessons")
	p.click("lesson-open-west-side")
	p.stage("west-side", "mind")
	if written := eval[string](p, hook("lesson-notes")+`.value`); !strings.HasPrefix(written, "Air as warm") {
		t.Errorf("what was written is now %q", written)
	}
	eval[bool](p, `(history.back(), true)`)
	p.until(`!` + hook("lesson"))
	if strangers := p.strangers(bench.below); len(strangers) > 0 {
		t.Errorf("asked of others: %v", slices.Compact(strangers))
	}
}

// looksOfLesson keeps pictures of a stage in several looks and wants each to be accessible and no wider than the window.
func (p *tab) looksOfLesson(name string) {
	p.t.Helper()
	p.click("projector")
	p.looks([]look{{"light", 1440, 900}, {"dark", 768, 1024}, {"light", 360, 780}}, func(look look, size string) {
		p.still()
		p.shot(name + "-" + size)
		p.accessible()
		if wide := eval[int](p, `document.scrollingElement.scrollWidth`); wide > int(look.width) {
			p.t.Errorf("the page is %d px wide in a window of %d", wide, look.width)
		}
	})
	p.viewport(1024, 768, 1)
	p.colourScheme("light")
	p.click("projector")
	p.still()
	p.shot(name + "-projector")
	p.accessible()
	p.viewport(1440, 900, 1)
}
