package main

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
)

// numbers are the flags of a command that take a number in a range.
type numbers struct {
	command *cobra.Command
	flags   []numberFlag
}

// numberFlag is one of them.
type numberFlag struct {
	name     string
	value    *float64
	min, max float64
	unit     string
}

// like adds a flag whose range, unit, meaning and default are those of a field of the scenario; a
// fallback replaces the default.
func (n *numbers) like(value *float64, name, pointer string, fallback ...float64) {
	field, ok := document.NumberField(pointer)
	if !ok { // the pointers stand in this program
		panic("no number in the schema at " + pointer)
	}
	n.add(value, name, meaningOf(field.Description), append(fallback, field.Default)[0], numberFlag{min: field.Min, max: field.Max, unit: field.Unit})
}

// meaningOf turns the description of a field, "Water is the precipitable water of the column.", into
// the meaning of a flag, "precipitable water of the column".
func meaningOf(description string) string {
	meaning := strings.TrimSuffix(description, ".")
	if _, after, found := strings.Cut(meaning, " is "); found {
		meaning = strings.TrimPrefix(after, "the ")
	}
	first, size := utf8.DecodeRuneInString(meaning)
	return string(unicode.ToLower(first)) + meaning[size:]
}

// add adds a flag with a range of its own.
func (n *numbers) add(value *float64, name, meaning string, fallback float64, flag numberFlag) {
	n.command.Flags().Float64Var(value, name, fallback, meaning)
	flag.name, flag.value = name, value
	n.flags = append(n.flags, flag)
}

// check names every flag that is outside its range.
func (n *numbers) check() []scenario.Fault {
	var faults []scenario.Fault
	for _, flag := range n.flags {
		if value := *flag.value; math.IsNaN(value) || value < flag.min || value > flag.max {
			faults = append(faults, scenario.Fault{Code: "fault.range", Path: "/--" + flag.name, Values: map[string]any{
				"value": value, "min": flag.min, "max": flag.max, "unit": flag.unit}})
		}
	}
	return faults
}

// faultsOf is an error when there are faults, nil when there are none.
func faultsOf(source string, faults []scenario.Fault) error {
	if len(faults) == 0 {
		return nil
	}
	return &faultsError{source, faults}
}
