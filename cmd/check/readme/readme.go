// Package readme runs the examples of the README, so that what it shows is what the programs do.
//
// A fenced block that begins with ```sh example holds commands, one a line; it is run. A block that
// follows at once and begins with ```text output is what they print; it is compared and, on demand,
// written anew.
package readme

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// The marks of the blocks.
const (
	exampleMark = "```sh example\n"
	outputMark  = "```text output\n"
	endMark     = "```\n"
)

// program is how the README starts the command line from a checkout.
const program = "go run ./cmd/rowlight"

// Example is one block of commands with what the README says they print.
type Example struct {
	Line     int    // of the README on which the commands begin
	Commands string // one a line
	Shown    string // the output block; empty when there is none
	from, to int    // the place of the output block's text; 0 when there is none
}

// Examples lists the blocks of a README.
func Examples(text string) ([]Example, error) {
	var examples []Example
	for at := 0; ; {
		start := strings.Index(text[at:], exampleMark)
		if start < 0 {
			return examples, nil
		}
		from := at + start + len(exampleMark)
		length := strings.Index(text[from:], endMark)
		if length < 0 {
			return nil, fmt.Errorf("the block on line %d does not end", lineOf(text, from))
		}
		example := Example{Line: lineOf(text, from), Commands: text[from : from+length]}
		at = from + length + len(endMark)
		if rest := strings.TrimLeft(text[at:], "\n"); strings.HasPrefix(rest, outputMark) {
			example.from = len(text) - len(rest) + len(outputMark)
			length := strings.Index(text[example.from:], endMark)
			if length < 0 {
				return nil, fmt.Errorf("the block on line %d does not end", lineOf(text, example.from))
			}
			example.to = example.from + length
			example.Shown = text[example.from:example.to]
			at = example.to + len(endMark)
		}
		examples = append(examples, example)
	}
}

func lineOf(text string, at int) int { return 1 + strings.Count(text[:at], "\n") }

// Bench is a folder in which the examples run: it holds the test data and the built command line,
// and takes the files that they write.
type Bench struct {
	dir     string
	program string
}

// NewBench builds the command line into an empty folder.
func NewBench(ctx context.Context, root, dir string) (*Bench, error) {
	b := &Bench{dir: dir, program: filepath.Join(dir, "rowlight")}
	build := exec.CommandContext(ctx, "go", "build", "-o", b.program, "./cmd/rowlight")
	build.Dir = root
	if printed, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("building ./cmd/rowlight: %w\n%s", err, printed)
	}
	return b, os.Symlink(filepath.Join(root, "testdata"), filepath.Join(dir, "testdata"))
}

// Run runs the commands of an example and returns what they print.
func (b *Bench) Run(ctx context.Context, e Example) (string, error) {
	script := strings.ReplaceAll(e.Commands, program, "'"+b.program+"'")
	cmd := exec.CommandContext(ctx, "sh", "-e", "-c", script)
	cmd.Dir = b.dir
	var out, faults bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &faults
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("README.md:%d: %s: %w\n%s", e.Line, strings.TrimSpace(e.Commands), err, faults.String())
	}
	return out.String(), nil
}

// Renew returns the README with every output block as the commands print it now, and the lines of
// the examples whose block was another.
func (b *Bench) Renew(ctx context.Context, text string) (renewed string, stale []int, err error) {
	examples, err := Examples(text)
	if err != nil {
		return "", nil, err
	}
	var out strings.Builder
	done := 0
	for _, e := range examples {
		printed, err := b.Run(ctx, e)
		if err != nil {
			return "", nil, err
		}
		if e.from == 0 {
			continue // shows no output
		}
		if printed != e.Shown {
			stale = append(stale, e.Line)
		}
		out.WriteString(text[done:e.from])
		out.WriteString(printed)
		done = e.to
	}
	out.WriteString(text[done:])
	return out.String(), stale, nil
}
