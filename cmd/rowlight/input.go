package main

import (
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/sim/words"
)

// readScenario reads and checks the scenario of a file, or of standard input for "-". Fields that are not
// known, and cautions, are told to stderr.
func readScenario(command *cobra.Command, path string) (scenario.Scenario, error) {
	raw, err := readInput(command.InOrStdin(), path)
	if err != nil {
		return scenario.Scenario{}, err
	}
	s, faults := document.Parse(raw)
	if len(faults) > 0 {
		return s, &faultsError{path, faults}
	}
	notices := document.Notices(raw)
	for i, option := range s.Options {
		notices = append(notices, option.Cautions(fmt.Sprintf("/options/%d", i))...)
	}
	for _, notice := range notices {
		fmt.Fprintf(command.ErrOrStderr(), "rowlight: %s: note: %s\n", path, words.Style{}.Fault(notice))
	}
	return s, nil
}

// readInput reads a file, or standard input for "-", and a little more than a document may hold at most.
func readInput(stdin io.Reader, path string) ([]byte, error) {
	source := stdin
	if path != "-" {
		file, err := os.Open(path)
		if err != nil {
			return nil, err
		}
		defer file.Close()
		source = file
	}
	return io.ReadAll(io.LimitReader(source, document.MaxBytes+1))
}
