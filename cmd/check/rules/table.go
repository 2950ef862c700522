package rules

// The picture, from top to bottom. Data goes one way: nothing imports anything drawn below it.
//
//	scenario → training → canopy → light → heat → sunburn → sim → cmd, wasm
//	scenario → sun, sky, weather ────┘

// Table is the import rule of every folder.
var Table = []Folder{
	{Path: "sim/scenario", Why: "the input document stands at the top of the picture and computes no physics, so it imports nothing of ours"},
	{Path: "sim/result", May: []string{"sim/scenario"}, Why: "results are plain structs that every part may read, so they import only the scenario"},
	{Path: "sim/words", May: []string{"sim/scenario/…", "sim/result"}, Why: "words speak of scenarios and results and know nothing of how they are computed"},
	{Path: "sim/internal", May: []string{"sim/scenario", "testdata"}, Why: "helpers are below no model, so every model can use them"},
	{Path: "sim/internal/known", May: []string{"sim/scenario", "sim/training", "sim/cover", "sim/canopy", "sim/internal/table", "testdata"}, Why: "it holds problems whose answer is known in closed form, for the tests of the models; it runs none of them"},
	{Path: "sim/training", May: []string{"sim/scenario", "sim/internal/…"}, Why: "vines are built from wires and wood; they must not know the sun, the weather or what is computed on them"},
	{Path: "sim/growth", May: []string{"sim/scenario", "sim/training", "sim/internal/…"}, Why: "growth changes the vine with the date; it must not know the sun or what is computed on the vine"},
	{Path: "sim/cover", May: []string{"sim/scenario", "sim/training", "sim/internal/…"}, Why: "nets and films are surfaces that hang about vines; they know no weather"},
	{Path: "sim/sun", May: []string{"sim/scenario", "sim/internal/…"}, Why: "the sun's course depends on place and time only; it must not know vines"},
	{Path: "sim/sky", May: []string{"sim/scenario", "sim/sun", "sim/internal/…"}, Why: "the sky depends on the sun and the air; it must not know vines"},
	{Path: "sim/weather", May: []string{"sim/scenario", "sim/sun", "sim/sky", "sim/internal/…"}, Why: "weather is what comes from above and outside; it must not know vines"},
	{Path: "sim/canopy", May: []string{"sim/scenario", "sim/training", "sim/growth", "sim/cover", "sim/internal/…"}, Why: "a canopy is leaves in space; domes are reused under any sky, so it must not know the weather"},
	{Path: "sim/light", May: []string{"sim/scenario", "sim/training", "sim/growth", "sim/cover", "sim/sun", "sim/sky", "sim/weather", "sim/canopy", "sim/canopy/…", "sim/internal/…"}, Why: "light falls on fruit whatever its temperature; it must not know heat or risk"},
	{Path: "sim/heat", May: []string{"sim/scenario", "sim/training", "sim/cover", "sim/sun", "sim/sky", "sim/weather", "sim/canopy", "sim/light", "sim/internal/…"}, Why: "heat is a balance of energy; it must not know the rules of risk"},
	{Path: "sim/sunburn", May: []string{"sim/scenario", "sim/result", "sim/training", "sim/weather", "sim/light", "sim/heat", "sim/internal/…"}, Why: "it says what light and heat mean for fruit; it draws nothing and stands below the façade"},
	{Path: "sim/frost", May: []string{"sim/scenario", "sim/result", "sim/training", "sim/growth", "sim/sun", "sim/sky", "sim/weather", "sim/heat", "sim/internal/…"}, Why: "it says what a cold night means; it draws nothing and stands below the façade"},
	{Path: "sim/crop", May: []string{"sim/scenario", "sim/result", "sim/training", "sim/growth", "sim/weather", "sim/light", "sim/internal/…"}, Why: "it says what the canopy means for the crop; it draws nothing and stands below the façade"},
	{Path: "sim/spread", May: []string{"sim/scenario", "sim/result", "sim/internal/…"}, Why: "it draws inputs and sums up outputs; the façade runs the chain in between"},
	{Path: "sim/lesson", May: []string{"sim", "sim/scenario/…", "sim/result", "sim/sun", "testdata"}, Why: "it runs the lessons of the page as anybody else would, to hold what they say against published values"},
	{Path: "sim/verify", May: []string{"sim/…", "testdata"}, Why: "it compares tables with the very functions of the simulation and has nothing to do with pages or pictures"},
	{Path: "sim", May: []string{
		"sim/scenario/…", "sim/result", "sim/words", "sim/training", "sim/growth", "sim/cover", "sim/sun", "sim/sky", "sim/weather",
		"sim/canopy", "sim/light", "sim/light/…", "sim/heat", "sim/sunburn", "sim/frost", "sim/crop", "sim/spread", "sim/internal/…",
	}, Why: "the façade runs the chain on plain data; files, pages and pictures are for its callers"},
	{Path: "render", May: []string{"sim/scenario", "sim/training", "sim/growth", "sim/cover", "sim/result"}, Why: "a picture shows vines and results that it is given; it computes no physics"},
	{Path: "render/screen", May: []string{"render", "sim/scenario", "sim/training", "sim/growth", "sim/cover", "sim/result"}, Why: "the screen draws what render lists; it computes no physics"},
	{Path: "wasm/engine", May: []string{"sim", "sim/scenario/…", "sim/result", "sim/words", "sim/weather", "wasm/memory", "testdata"}, Why: "the engine's program hands scenarios to the façade and weather files to their reader, and answers with results; it cannot draw (a js program that imports Ebiten dies in a worker)"},
	{Path: "wasm/memory", May: nil, Why: "what a program holds, it asks of Go alone"},
	{Path: "wasm/view", May: []string{"render", "render/…", "sim/scenario/…", "sim/training", "sim/growth", "sim/cover", "sim/result", "wasm/memory"}, Why: "the view's program draws what it is told; the engine computes"},
	{Path: "cmd/rowlight", May: []string{"sim", "sim/…", "render", "testdata"}, Why: "the command line reads files and prints results; it draws with the software painter, never with a screen"},
	{Path: "cmd/site", May: []string{"cmd/site/…"}, Why: "building and serving the page needs nothing of the simulation"},
	{Path: "cmd/check", May: []string{"cmd/site/…", "sim", "sim/…", "testdata"}, Why: "checks read what is there; nothing else builds on them"},
	{Path: "testdata", Why: "it holds files for tests and imports nothing"},
}

// Bans are the packages from outside that some folders must not import.
var Bans = []Ban{
	{In: "", Except: []string{"render/screen"}, What: []string{"github.com/hajimehoshi/ebiten/v2"}, Why: "Ebiten needs a document and, natively, C headers: it stays in render/screen, compiled for js only"},
	{In: "", Except: []string{"wasm", "render/screen"}, What: []string{"syscall/js"}, Why: "the bridge to JavaScript is in wasm alone, so that everything else runs and is tested natively"},
	{In: "", Except: []string{"cmd/rowlight"}, What: []string{"github.com/qmuntal/gltf"}, Why: "files for other programs are written by the command line alone"},
	{In: "", Except: []string{"cmd/check"}, What: []string{"github.com/chromedp"}, Why: "a browser is driven by the checks alone"},
	{In: "", Except: []string{"cmd/site"}, What: []string{"github.com/evanw/esbuild", "github.com/andybalholm/brotli"}, Why: "only cmd/site builds the page; others call its package"},
	{In: "sim", What: []string{"os", "io/ioutil", "path/filepath", "net", "syscall", "log", "plugin"}, Why: "the simulation touches no files, network or machine, so that it runs the same in a browser; callers read and write"},
	{In: "sim", What: []string{"math/rand", "crypto/rand"}, Why: "every draw is a hash of seed, ids and purpose, so that moving one slider does not reshuffle the vine"},
	{In: "sim/scenario", What: []string{"gonum.org/v1/gonum", "github.com/go-gl/mathgl", "github.com/sixdouglas/suncalc"}, Why: "the input document computes no physics"},
	{In: "sim/result", What: []string{"gonum.org/v1/gonum", "github.com/go-gl/mathgl", "github.com/sixdouglas/suncalc"}, Why: "results are plain structs"},
	{In: "", Except: []string{"sim/sun"}, What: []string{"github.com/sixdouglas/suncalc"}, Why: "its convention and its correction are converted in one place"},
	{In: "render", What: []string{"github.com/sixdouglas/suncalc", "gonum.org/v1/gonum"}, Why: "pictures compute no physics"},
	{In: "cmd", What: []string{"gonum.org/v1/gonum", "github.com/sixdouglas/suncalc"}, Why: "commands hold no physics: put it where the page can use it too"},
	{In: "wasm", What: []string{"gonum.org/v1/gonum", "github.com/sixdouglas/suncalc"}, Why: "the browser programs hold no logic that a native test cannot reach"},
}

// Nevers say the rules of the picture once more as what must not be reached by any way round, so
// that a loosened table still fails.
var Nevers = []Never{
	{From: "sim/training", To: "sim/sun", Why: "a vine must not know the sun"},
	{From: "sim/growth", To: "sim/sun", Why: "a growing vine must not know the sun"},
	{From: "sim/canopy", To: "sim/weather", Why: "domes are reused under any weather"},
	{From: "sim/canopy", To: "sim/sky", Why: "domes are reused under any sky"},
	{From: "sim/sun", To: "sim/training", Why: "the sun must not know vines"},
	{From: "sim/sky", To: "sim/training", Why: "the sky must not know vines"},
	{From: "sim/weather", To: "sim/training", Why: "the weather must not know vines"},
	{From: "sim/light", To: "sim/heat", Why: "light must not know temperatures"},
	{From: "sim/heat", To: "sim/sunburn", Why: "heat must not know the rules of risk"},
	{From: "sim", Except: []string{"sim/verify"}, To: "sim/internal/known", Why: "problems with known answers are for tests and sim/verify; the simulation does not run on them"},
	{From: "sim", To: "render", Why: "the simulation draws nothing"},
	{From: "sim", To: "wasm", Why: "the simulation does not know the browser"},
	{From: "sim", To: "cmd", Why: "the simulation does not know its commands"},
	{From: "render", To: "sim/light", Why: "pictures compute no physics"},
	{From: "render", To: "sim/heat", Why: "pictures compute no physics"},
	{From: "render", To: "sim/weather", Why: "pictures compute no physics"},
	{From: "wasm/engine", To: "render", Why: "a js program that imports Ebiten dies in a worker"},
	{From: "wasm/view", To: "sim/heat", Why: "the view draws; the engine computes"},
	{From: "cmd/rowlight", To: "render/screen", Why: "the command line has no screen"},
}
