package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/sim/words"
)

// output is where and how a command writes its answer.
type output struct {
	format choice
	units  choice
	file   string
}

// addFlags gives a command the flags of its output.
func (o *output) addFlags(command *cobra.Command) {
	o.format = choice{value: "table", allowed: []string{"table", "csv", "json"}}
	command.Flags().Var(&o.format, "format", "table to read, csv or json to go on computing")
	command.Flags().StringVarP(&o.file, "output", "o", "", "file to write instead of standard output")
}

// addUnits lets the table of a command be in other units.
func (o *output) addUnits(command *cobra.Command) {
	o.units = choice{value: "metric", allowed: []string{"metric", "us"}}
	command.Flags().Var(&o.units, "units", "units of the table; csv and json are always metric")
}

// system is the chosen system of units.
func (o *output) system() words.Units {
	if o.units.value == "us" {
		return words.US
	}
	return words.Metric
}

// write sends an answer to the file or to stdout once it is complete, so that a failure leaves no half file.
func (o *output) write(stdout io.Writer, fill func(io.Writer) error) error {
	var answer bytes.Buffer
	if err := fill(&answer); err != nil {
		return err
	}
	if o.file != "" {
		return os.WriteFile(o.file, answer.Bytes(), 0o644)
	}
	_, err := stdout.Write(answer.Bytes())
	return err
}

// choice is a flag that takes one of a few words.
type choice struct {
	value   string
	allowed []string
}

// String is the chosen word.
func (c *choice) String() string { return c.value }

// Type names the words in the help.
func (c *choice) Type() string { return strings.Join(c.allowed, "|") }

// Set takes a word if it is one of the allowed.
func (c *choice) Set(word string) error {
	if !slices.Contains(c.allowed, word) {
		return fmt.Errorf("write one of %s", strings.Join(c.allowed, ", "))
	}
	c.value = word
	return nil
}
