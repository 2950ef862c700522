package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
	"rowlight/sim/words"
)

// The exit codes.
const (
	exitDone   = 0
	exitFailed = 1 // anything else: files, flags
	exitFaults = 2 // faults of the input, each on a line of its own
)

// run executes one command line and gives its exit code. Data goes to stdout, all else to stderr.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	root := newRoot()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.ExecuteContext(ctx)
	var faults inputError
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &faults):
		fmt.Fprint(stderr, faults.Error())
		return exitFaults
	default:
		fmt.Fprintf(stderr, "rowlight: %v\n", err)
		return exitFailed
	}
}

// newRoot makes the command with all below it.
func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:           "rowlight",
		Short:         "Sunlight on the fruit and its temperature, by training form and row direction",
		Long:          "Rowlight computes how training form, row direction and shading change the sunlight on grapes and the\ntemperature of the berries, hour by hour. It compares and teaches; it is no forecast.",
		SilenceUsage:  true,
		SilenceErrors: true,
	}
	root.CompletionOptions.DisableDefaultCmd = true
	root.AddCommand(newDay(), newDirections(), newSeason(), newRegion(), newForms(), newSun(), newSky(), newBerry(), newVerify(), newExplain(), newYardstick(),
		newPicture(), newExport(), newWeigh(), newWeather(), newFrost(), newCrop())
	return root
}

// inputError is input that cannot be used; its text has a line for each fault, all at once.
type inputError interface {
	error
	badInput()
}

// faultsError is input that cannot be used: what is wrong with it, all at once.
type faultsError struct {
	source string // file or flag that the input came from
	faults []scenario.Fault
}

// Error writes one line for each fault.
func (e *faultsError) Error() string {
	var lines string
	for _, fault := range e.faults {
		lines += fmt.Sprintf("rowlight: %s: %s\n", e.source, words.Style{}.Fault(fault))
	}
	return lines
}

func (e *faultsError) badInput() {}
