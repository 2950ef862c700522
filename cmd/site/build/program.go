package build

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// program is one Go program that runs in the browser.
type program struct {
	folder, file string
	sparing      []string // options of the compiler for this program alone
}

// programs lists the browser programs, the slower one first.
var programs = [...]program{
	{folder: "wasm/view", file: "view.wasm"},
	{folder: "wasm/engine", file: "engine.wasm", sparing: slices.Concat(unchecked, []string{ // 35 kB compressed; the view would grow
		"-gcflags=rowlight/sim/weather=-l", "-gcflags=rowlight/wasm/...=-l", "-gcflags=rowlight/sim/crop=-l", "-gcflags=rowlight/sim/frost=-l",
		"-gcflags=rowlight/sim/words=-l", "-gcflags=rowlight/sim/scenario/...=-l", "-gcflags=rowlight/sim/result=-l", "-gcflags=rowlight/sim/training=-l",
	})},
}

// unchecked leaves out the checks of indices where light is followed through leaves and from leaf to leaf, which take a seventh of a
// day's run in a browser. Natively, and in all tests of the models in WebAssembly, indices are checked.
var unchecked = []string{"-gcflags=rowlight/sim/canopy/...=-B", "-gcflags=rowlight/sim/light/...=-B"}

// Quick are the options of the compiler that make the engine of the site quick, for benchmarks of its parts.
func Quick() []string { return unchecked }

// sparing are the compiler's options. What is called once or seldom (reading JSON, compiling shaders, writing texts)
// is not copied into its callers, which saves 0.2 MB compressed; the last option that names a package counts.
var sparing = []string{
	"-gcflags=std=-l",
	"-gcflags=github.com/hajimehoshi/ebiten/v2/internal/shader...=-l", "-gcflags=github.com/hajimehoshi/ebiten/v2/internal/ui=-l",
	"-gcflags=github.com/hajimehoshi/ebiten/v2/internal/gamepad...=-l",
	"-gcflags=github.com/hajimehoshi/ebiten/v2/internal/graphicsdriver/opengl/gl=-l",
	"-gcflags=runtime=", "-gcflags=internal/...=", "-gcflags=math/...=", "-gcflags=sync/...=", "-gcflags=syscall/js=",
	"-gcflags=slices=", "-gcflags=sort=", "-gcflags=cmp=", "-gcflags=unsafe=",
}

// buildProgram compiles one browser program. Go's build cache makes an unchanged one cheap.
func (s *site) buildProgram(ctx context.Context, p program) error {
	out, err := filepath.Abs(filepath.Join(s.Out, p.file))
	if err != nil {
		return err
	}
	arguments := slices.Concat([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w"}, sparing, p.sparing, []string{"-o", out, "./" + p.folder})
	cmd := exec.CommandContext(ctx, "go", arguments...)
	cmd.Dir = s.Root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if printed, err := cmd.CombinedOutput(); err != nil {
		return goFault(ctx, p.folder, string(printed), err)
	}
	text, err := os.ReadFile(out)
	if err != nil {
		return err
	}
	s.record(p.file, text)
	return nil
}

// goFault says in one line why the go command failed.
func goFault(ctx context.Context, folder, printed string, err error) error {
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case errors.Is(err, exec.ErrNotFound):
		return &Fault{What: "the go command is not on the PATH", Remedy: "install Go (the version stands in go.mod) and open a new terminal"}
	case strings.Contains(printed, "requires go >=") || strings.Contains(printed, "toolchain not available"):
		return &Fault{What: "this Go is too old", Remedy: "install the version that go.mod names, or newer", Detail: lastLines(printed, 3)}
	case strings.Contains(printed, "dial tcp") || strings.Contains(printed, "i/o timeout"):
		return &Fault{What: "Go cannot fetch the modules", Remedy: "connect to the network once and run again", Detail: lastLines(printed, 3)}
	default:
		return &Fault{What: folder + " does not build", Remedy: "mend what the compiler says above", Detail: lastLines(printed, 20)}
	}
}

// copyLoader copies wasm_exec.js from the Go installation in use: it must match the compiler.
func (s *site) copyLoader(ctx context.Context) error {
	cmd := exec.CommandContext(ctx, "go", "env", "GOROOT")
	cmd.Dir = s.Root
	printed, err := cmd.Output()
	if err != nil {
		return goFault(ctx, "go env", string(printed), err)
	}
	loader := filepath.Join(strings.TrimSpace(string(printed)), "lib", "wasm", "wasm_exec.js")
	text, err := os.ReadFile(loader)
	if err != nil {
		return &Fault{
			What:   fmt.Sprintf("the Go installation has no %s", loader),
			Remedy: "install the complete Go distribution (some systems split it: look for a package golang-misc or golang-src)",
		}
	}
	return s.put("wasm_exec.js", text)
}
