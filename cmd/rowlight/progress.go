package main

import (
	"io"
	"os"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"

	"rowlight/sim"
)

// onTerminal shows how far a run is, on a terminal only.
func onTerminal(stderr io.Writer) sim.Progress {
	if file, ok := stderr.(*os.File); !ok || !term.IsTerminal(int(file.Fd())) {
		return nil
	}
	return progressOn(stderr)
}

// progressOn draws a bar with the time that is left, and takes it away at the end.
func progressOn(w io.Writer) sim.Progress {
	const steps = 1000
	bar := progressbar.NewOptions(steps,
		progressbar.OptionSetWriter(w), progressbar.OptionClearOnFinish(), progressbar.OptionSetWidth(40), progressbar.OptionSetPredictTime(true))
	return func(_ string, done float64) {
		_ = bar.Set(int(steps * done)) // a bar that cannot be drawn is no reason to end the run
	}
}
