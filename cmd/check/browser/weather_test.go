//go:build browser

package browser

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// weatherFile is an invented weather file of the test data.
func weatherFile(name string) string {
	return filepath.Join(bench.root, "testdata", "weather", name)
}

// TestDayOfAWeatherFile takes days of a file and compares the page with the command line, which takes the
// same day of the same file; each day is one step that can be undone; nothing leaves the machine.
func TestDayOfAWeatherFile(t *testing.T) {
	t.Parallel()
	asked := len(bench.outside.requests())
	file := weatherFile("stony-bend-hot-week.epw")
	p := openPage(t, bench.origin)
	p.openWeather(file)
	p.says("weather-status", "Stony Bend (invented)")
	p.says("weather-summary", "36.4° N", "119.9° W", "UTC−8", "7 days, 12 July to 18 July 2019")
	p.says("sheet", "Your files stay in this browser")
	p.says("weather-preview", "The clearest day", "the sun is highest at 12:00", "The clock fits the sun")
	if generation := p.generation(); generation != 1 {
		t.Errorf("opening a file alone computes a day: generation %d", generation)
	}

	p.choose("weather-day", "15")
	p.answered()
	measured := rowlightDay(t, firstScenario(), "--weather", file, "--date", "07-15")
	p.agrees(measured)
	p.says("facts", "15 July 2019, measured")
	p.says("note", "stony-bend-hot-week.epw", "Stony Bend (invented)")
	p.says("measured-day", "15 July 2019", fmt.Sprintf("%.1f", measured.Scenario.Weather.AirMax_C))

	p.press("undo")
	p.agrees(rowlightDay(t, firstScenario()))
	p.says("facts", "18 July 2026")
	p.press("redo")
	p.agrees(measured)
	p.press("weather-hottest")
	p.agrees(rowlightDay(t, firstScenario(), "--weather", file))
	p.press("measured-back")
	p.agrees(rowlightDay(t, firstScenario()))

	for _, request := range append(p.strangers(bench.origin), bench.outside.requests()[asked:]...) {
		t.Errorf("something left the page: %s", request)
	}
}

// TestRealWeatherFilesInThePage takes the hottest day of the measured file of the test data, of an invented file of the
// format of NASA POWER, and of every real file in the folder that ROWLIGHT_WEATHER names, else beside the checkout.
func TestRealWeatherFilesInThePage(t *testing.T) {
	t.Parallel()
	folder := os.Getenv("ROWLIGHT_WEATHER")
	if folder == "" {
		folder = filepath.Join(bench.root, "..", "shared", "weather")
	}
	files := []string{weatherFile("greensboro-july-tmy3.csv"), weatherFile("stony-bend-hot-week-power.csv")}
	for _, pattern := range []string{"*.epw", "*.csv"} {
		found, err := filepath.Glob(filepath.Join(folder, pattern))
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, found...)
	}
	t.Logf("%d files, of the test data and of %s", len(files), folder)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			p := newTab(t, bench.browser)
			p.beforeLoad(keepEngine)
			p.open(bench.origin)
			p.settled()
			p.openWeather(file)
			t.Logf("read in %.0f ms; %s", eval[float64](p, `(() => {
				const at = (kind) => window.engineLog.find((m) => m.kind === kind).at_ms;
				return at("weatherFile") - at("weather");
			})()`), p.text("weather-summary"))
			p.press("weather-hottest")
			p.agrees(rowlightDay(t, firstScenario(), "--weather", file))
		})
	}
}

// TestBackToTheDesignDayKeepsWhatTheUserHad changes the design day and, on the measured day, the site: the
// one comes back, the other stays.
func TestBackToTheDesignDayKeepsWhatTheUserHad(t *testing.T) {
	t.Parallel()
	p := openPage(t, bench.origin)
	p.openWeather(weatherFile("kestrel-flat-hot-week-tmy3.csv"))
	p.enter("field-weather-airMax_C", "38.5")
	p.answered()
	p.press("weather-hottest")
	p.enter("field-site-slope_deg", "8")
	p.answered()
	p.press("measured-back")
	p.agrees(rowlightDay(t, changedDocument(t, func(document map[string]any) {
		document["weather"].(map[string]any)["airMax_C"] = 38.5
		document["site"].(map[string]any)["slope_deg"] = 8
	})))
	if at := eval[string](p, `document.activeElement.id`); at != "field-weather-date" {
		t.Errorf("the focus is on %q, not on the design day", at)
	}
}

// TestFaultsOfAWeatherFileInThePage drops files that cannot be used: line, column, what and remedy are
// said, and the numbers and the file that is open stay.
func TestFaultsOfAWeatherFileInThePage(t *testing.T) {
	t.Parallel()
	good := weatherFile("stony-bend-hot-week.epw")
	text, err := os.ReadFile(good)
	if err != nil {
		t.Fatal(err)
	}
	p := openPage(t, bench.origin)
	p.openWeather(good)
	p.choose("weather-day", "16")
	p.answered()
	measured := rowlightDay(t, firstScenario(), "--weather", good, "--date", "07-16")
	before := p.generation()

	for name, test := range map[string]struct{ text, says string }{
		"letter.txt":    {"Dear all,\nit was hot.", "The weather file begins with “Dear all,” and is neither EPW, TMY3, NASA POWER nor a table"},
		"north.epw":     {strings.Replace(string(text), ",36.40,", ",136.40,", 1), "Line 1, field 7: “136.40” is no latitude from −90 to 90"},
		"half-hour.epw": {strings.Replace(string(text), "DATA PERIODS,1,1,", "DATA PERIODS,1,2,", 1), "Line 8, field 3: 2 records in an hour, only whole hours are read. Give an hourly file"},
		"empty.epw":     {"", "The weather file is empty. Give a file with hours"},
		"parted.epw":    {strings.ReplaceAll(string(text), ",", ";"), "Line 1: the fields are parted by semicolons. Save the file with commas"},
		"cut.epw":       {string(text[:bytes.Index(text, []byte("2019,7,12,1,"))]), "has no hour that could be read"},
		"void.epw":      {regexp.MustCompile(`(?m)^(2019(?:,[^,]*){5}),[^,]*`).ReplaceAllString(string(text), "$1,99.9"), "has no air temperature in any of its 168 hours. Give a file that has it"},
	} {
		p.drop(name, test.text)
		p.until(hook("weather-faults") + `?.innerText.includes(` + quoted(name) + `)`)
		p.says("weather-faults", test.says, "Your weather stays as it was")
		p.says("weather-status", "stony-bend-hot-week.epw")
	}
	p.dropHuge("huge.epw", string(text))
	p.until(hook("weather-faults") + `?.innerText.includes("huge.epw")`)
	p.says("weather-faults", "longer than 33,554,432 bytes", "Your weather stays as it was")
	p.agrees(measured)
	if now := p.generation(); now != before {
		t.Errorf("a file that was refused was computed: generation %d, before %d", now, before)
	}
	p.shot("weather-refused")

	// A file with a fault in one line can be used: it says which, and what stands in for it.
	odd := strings.Replace(string(text), ",19.2,12.8,66,", ",warm,12.8,66,", 1)
	line := 1 + strings.Count(odd[:strings.Index(odd, ",warm,")], "\n")
	p.drop("odd.epw", odd)
	p.until(hook("weather-status") + `?.innerText.includes("odd.epw is open")`)
	p.says("weather-notices", fmt.Sprintf("Line %d, field 7: air temperature “warm” is no number", line))
	if p.there("weather-faults") {
		t.Error("the fault of the file before is still shown")
	}
	// An hour of another zone shows in the light.
	p.drop("zone.epw", strings.Replace(string(text), ",-8.0,90.0", ",-7.0,90.0", 1))
	p.until(hook("weather-status") + `?.innerText.includes("zone.epw is open")`)
	p.says("weather-notices", "The clock of the weather file goes 60 minutes behind the sun")
	p.drop("odd.epw", odd)
	p.until(hook("weather-status") + `?.innerText.includes("odd.epw is open")`)
	p.choose("weather-day", "13")
	p.answered()
	p.says("day-notices", "1 missing values were filled between their neighbours")
}

// TestWeatherFileByKeyboard opens the sheet, takes the hottest day and goes to others without a mouse; going
// through the days is one step. The sheet is accessible in both looks.
func TestWeatherFileByKeyboard(t *testing.T) {
	t.Parallel()
	file := weatherFile("stony-bend-hot-week.epw")
	p := openPage(t, bench.origin)
	p.focus("site")
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(hook("sheet"))
	p.tabTo("weather-file")
	p.do(chromedp.SetUploadFiles(chromedp.CSS(`[data-testid="weather-file"]`), []string{file}, chromedp.NodeReady))
	p.until(hook("weather-hottest"))
	p.tabTo("weather-hottest")
	p.do(chromedp.KeyEvent(kb.Enter))
	p.answered()
	p.agrees(rowlightDay(t, firstScenario(), "--weather", file, "--date", "07-18"))
	p.tabTo("weather-day")
	for range 2 {
		p.do(chromedp.KeyEvent(kb.ArrowUp))
		p.answered()
	}
	p.agrees(rowlightDay(t, firstScenario(), "--weather", file, "--date", "07-16"))
	p.do(chromedp.KeyEvent(kb.Tab, chromedp.KeyModifiers(chromedp.ModifierShift)), chromedp.KeyEvent("z", chromedp.KeyModifiers(chromedp.ModifierCtrl)))
	p.answered()
	p.agrees(rowlightDay(t, firstScenario(), "--weather", file, "--date", "07-18"))

	for _, scheme := range []string{"light", "dark"} {
		p.colourScheme(scheme)
		p.accessible()
	}
	p.do(chromedp.KeyEvent(kb.Escape))
	p.until(`!` + hook("sheet"))
}

// TestWeatherSheetInEveryLook opens a file with odd lines, takes a day and looks at the sheet on wide and narrow
// windows, light and dark.
func TestWeatherSheetInEveryLook(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile(weatherFile("stony-bend-hot-week.epw"))
	if err != nil {
		t.Fatal(err)
	}
	odd := string(text)
	for _, air := range []string{",19.2,12.8,66,", ",20.0,12.8,63,", ",20.4,11.2,56,", ",19.7,11.4,59,", ",19.1,11.6,62,"} {
		odd = strings.Replace(odd, air, ",warm"+air[strings.Index(air[1:], ",")+1:], 1)
	}
	p := openPage(t, bench.origin)
	p.drop("week.epw", odd)
	p.until(hook("weather-hottest"))
	p.press("weather-hottest")
	logger, err := os.ReadFile(weatherFile("stony-bend-logger.csv"))
	if err != nil {
		t.Fatal(err)
	}
	p.drop("logger.csv", string(logger)) // its columns are to be confirmed while the week stays open
	p.until(hook("mapping"))
	eval[bool](p, `document.querySelectorAll('[data-testid="normals"], [data-testid="mapping"] details').forEach((part) => part.open = true) ?? true`)
	p.until(hook("normals-7-airMax_C"))
	p.looks([]look{{"light", 1440, 1000}, {"dark", 1440, 1000}, {"light", 768, 1024}, {"dark", 768, 1024}, {"light", 360, 740}, {"dark", 360, 740}}, func(look look, name string) {
		p.until(hook("sheet"))
		eval[bool](p, `(`+hook("sheet")+`.scrollTop = 0, true)`)
		p.still()
		p.laidOut(look.width)
		if over := eval[float64](p, hook("sheet")+`.getBoundingClientRect().bottom - document.querySelector(".ribbon").getBoundingClientRect().top`); over > 0 {
			p.t.Errorf("the end of the sheet lies %.0f px below the ribbon", over)
		}
		p.accessible()
		p.shot("sheet-" + name)
		for _, part := range []string{"mapping", "weather-preview", "normals"} {
			eval[bool](p, `(`+hook(part)+`.scrollIntoView(), true)`)
			p.shot("sheet-" + name + "-" + part)
		}
	})
}

// TestWeatherFileSurvivesTheEngine ends the engine: the one that starts anew knows the file again.
func TestWeatherFileSurvivesTheEngine(t *testing.T) {
	t.Parallel()
	file := weatherFile("stony-bend-hot-week.epw")
	p := newTab(t, bench.browser)
	p.beforeLoad(keepEngine)
	p.open(bench.origin)
	p.settled()
	p.openWeather(file)
	p.restartEngine()
	p.answered()
	p.choose("weather-day", "13")
	p.answered()
	p.agrees(rowlightDay(t, firstScenario(), "--weather", file, "--date", "07-13"))
}

// TestTableOfALogger opens a logger's table: what its columns hold is guessed, shown and confirmed before it is read; a
// clock taken wrong shows in the light; read, it agrees with the command line.
func TestTableOfALogger(t *testing.T) {
	t.Parallel()
	file := weatherFile("stony-bend-logger.csv")
	p := openPage(t, bench.origin)
	give := func() {
		p.do(chromedp.SetUploadFiles(chromedp.CSS(`[data-testid="weather-file"]`), []string{file}, chromedp.NodeReady))
		p.until(hook("mapping"))
	}
	p.click("site")
	p.until(hook("sheet"))
	give()
	if p.there("weather-summary") {
		t.Error("the table is read before it is confirmed")
	}
	for mark, want := range map[string]string{
		"column-1": "date", "column-2": "clock", "column-3": "air", "unit-3": "°C", "column-5": "global", "unit-6": "km/h", "column-7": "",
		"clock": "standard", "dateOrder": "dmy", "separator": ";", "utcOffset_h": "-8", "windHeight_m": "2", "step_min": "30",
	} {
		if got := eval[string](p, hook("mapping-"+mark)+`.value`); got != want {
			t.Errorf("%s is %q, want %q", mark, got, want)
		}
	}

	// A table whose fields are parted elsewhere has other columns; where that makes no table, this one stays.
	p.choose("mapping-separator", "|")
	p.until(hook("weather-faults"))
	p.says("weather-faults", "no table of readings")
	p.choose("mapping-separator", ";")
	p.until(hook("mapping") + `.ariaBusy === "false"`)

	p.choose("mapping-clock", "daylight")
	p.click("mapping-read")
	p.until(hook("weather-summary"))
	p.says("weather-notices", "60 minutes behind the sun, by the light of 5 clear days")

	give()
	p.choose("mapping-column-5", "") // nothing says where the light is
	p.click("mapping-read")
	p.until(hook("weather-faults"))
	p.says("weather-faults", "no column holds the global light")
	p.choose("mapping-column-5", "global")
	p.click("mapping-read")
	p.until(`!` + hook("mapping"))
	p.says("weather-clock", "The clock fits the sun")
	p.choose("weather-day", "15")
	p.answered()
	p.agrees(rowlightDay(t, firstScenario(), "--weather", file, "--mapping", weatherFile("stony-bend-logger.json"), "--date", "07-15"))

	// Monthly normals, typed in.
	eval[bool](p, hook("normals")+`.open = true`)
	p.until(hook("normals-7-airMax_C"))
	for key, value := range map[string]string{"airMax_C": "36.6", "airMin_C": "19.1", "light_MJm2": "28.6"} {
		p.enterBox("normals-7-"+key, value)
	}
	p.click("normals-make")
	p.until(hook("weather-status") + `?.innerText.includes("Monthly normals is open")`)
	p.says("weather-summary", "31 days, 1 July to 31 July 2019")
	p.says("weather-notices", "each is an average day")
	p.press("weather-hottest")
	p.says("measured-day", "mean wind 2.7 m/s")
}
