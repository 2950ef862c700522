//go:build browser

package browser

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os/exec"
	"testing"

	"rowlight/sim/result"
)

// rowlightSeason runs the command line over the days that a weather file has of the season.
func rowlightSeason(t *testing.T, file, weather string) (season result.Season) {
	t.Helper()
	var out, faults bytes.Buffer
	cmd := exec.Command(bench.rowlight, "season", file, "--weather", weather, "--format", "json")
	cmd.Stdout, cmd.Stderr = &out, &faults
	if err := cmd.Run(); err != nil {
		t.Fatalf("rowlight season %s: %v\n%s", file, err, faults.String())
	}
	if err := json.Unmarshal(out.Bytes(), &season); err != nil {
		t.Fatal(err)
	}
	return season
}

// TestSeasonAndDirectionsOnMeasuredDays runs two options over the days that a measured file has of the season, stops it
// and goes on, and turns their rows over those of ripening. Results are drawn as they come, by more than one helper, the
// sums are those of the command line, and the page answers all the while.
func TestSeasonAndDirectionsOnMeasuredDays(t *testing.T) {
	file := weatherFile("greensboro-july-tmy3.csv")
	p := newTab(t, bench.browser)
	p.beforeLoad(keepLongTasks)
	p.beforeLoad(keepEngine)
	p.beforeLoad(withoutPictures)
	p.beforeLoad(`Object.defineProperty(navigator, "hardwareConcurrency", { value: 2 });`)
	p.open(bench.origin)
	p.settled()
	p.openWeather(file)
	p.press("weather-hottest")
	eval[bool](p, hook("sheet")+`.querySelector(".sheet-head button").click() === undefined`)

	eval[bool](p, `(window.longTasks.length = 0, `+hook("season")+`.querySelector("summary").click() === undefined)`)
	p.until(hook("season-state-stop"))
	p.click("season-state-stop")
	p.says("season-state", "Stopped")
	p.click("season-state-run")
	seasonDone := hook("season-state") + `?.dataset.done === "true"`
	p.until(seasonDone)
	if working := eval[int](p, `new Set(window.engineLog.filter((m) => m.kind === "part" && m.way === "from").map((m) => m.worker)).size`); working != 2 {
		t.Errorf("%d helpers have done parts of the season, want 2", working)
	}

	season := rowlightSeason(t, firstScenario(), file)
	numbers := p.numbers()
	for o, option := range season.Options {
		for side, of := range option.Sides {
			mark := fmt.Sprintf("season-%c-%s", 'A'+o, [2]string{"left", "right"}[side])
			if days := eval[int](p, `Number(`+hook(mark)+`.dataset.days)`); days != len(season.Days) {
				t.Errorf("%s has %d days, the command line %d", mark, days, len(season.Days))
			}
			for name, want := range map[string]float64{"-overHot": of.OverHot_h, "-heat": of.Heat_Kh, "-risk": of.AtRisk} {
				if got := numbers[mark+name]; math.Abs(got-want) > agreement*math.Max(1, math.Abs(want)) {
					t.Errorf("%s%s is %g, by the command line %g", mark, name, got, want)
				}
			}
		}
	}
	p.says("season-waves", "No heat wave")
	eval[bool](p, hook("season-table")+`.querySelector("summary").click() === undefined`)
	p.until(fmt.Sprintf(`%s.querySelectorAll("tbody tr").length === %d`, hook("season-table"), 2*len(season.Days)))
	p.keepsItsTasksShort(func() {
		p.choose("season-to", "1981-07-14")
		p.until(`!!` + hook("season-all"))
		p.until(seasonDone)
		p.click("season-all")
		p.until(`!` + hook("season-all"))
		p.until(seasonDone)
	})
	eval[bool](p, hook("season-table")+`.querySelector("summary").click() === undefined`)
	p.looks([]look{{"light", 1440, 1000}, {"dark", 1440, 1000}, {"light", 768, 1024}, {"dark", 360, 740}}, func(look look, name string) {
		eval[bool](p, hook("season")+`.scrollIntoView() === undefined`)
		p.laidOut(look.width)
		p.accessible()
		p.shot("season-" + name)
	})

	eval[bool](p, `(window.longTasks.length = 0, window.engineLog.length = 0, `+hook("directions")+`.querySelector("summary").click() === undefined)`)
	p.choose("directions-over", "ripening")
	p.until(hook("directions-state") + `?.dataset.done === "true"`)
	p.says("directions-words", "At 36.1° north", "yours to weigh")
	if drawn := eval[int](p, `window.engineLog.filter((m) => m.kind === "part" && m.way === "from").length`); drawn < 72 {
		t.Errorf("%d directions were handed back, want 36 of two options", drawn)
	}
	p.keepsItsTasksShort(func() {
		p.choose("directions-over", "day")
		p.until(hook("directions-state") + `?.dataset.done === "true"`)
	})
	p.shot("season-directions")
}
