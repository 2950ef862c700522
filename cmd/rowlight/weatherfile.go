package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/pflag"

	"rowlight/sim/scenario"
	"rowlight/sim/weather"
	"rowlight/sim/words"
)

// weatherFile is the flags that name a weather file.
type weatherFile struct {
	file    string
	mapping string
}

// addFlags adds --weather, with what it is for, and --mapping.
func (f *weatherFile) addFlags(flags *pflag.FlagSet, use string) {
	flags.StringVar(&f.file, "weather", "", "weather file (EPW, TMY3, NASA POWER, a logger's table, monthly normals) "+use)
	f.addMapping(flags)
}

func (f *weatherFile) addMapping(flags *pflag.FlagSet) {
	flags.StringVar(&f.mapping, "mapping", "", "JSON file that tells how to read a logger's table; rowlight weather FILE --guess writes a first one")
}

// read reads the file. What it does not say itself is taken from a scenario: place, clock and year. What was left out, filled or looks odd is told
// to stderr.
func (f *weatherFile) read(s scenario.Scenario, stderr io.Writer) (*weather.File, error) {
	setting := weather.Setting{Site: s.Site}
	if date, err := time.Parse(time.DateOnly, s.Weather.Date); err == nil {
		setting.Year = date.Year()
	}
	if f.mapping != "" {
		raw, err := os.ReadFile(f.mapping)
		if err != nil {
			return nil, err
		}
		mapping, faults := weather.ParseMapping(raw, s.Site.UTCOffset_h)
		if len(faults) > 0 {
			return nil, &faultsError{f.mapping, faults}
		}
		setting.Mapping = &mapping
	}
	opened, err := os.Open(f.file)
	if err != nil {
		return nil, err
	}
	defer opened.Close()
	file, faults := setting.Read(filepath.Base(f.file), opened)
	if err := f.tell(faults, stderr); err != nil {
		return nil, err
	}
	return &file, nil
}

// tell is an error with all faults when one of them blocks; else it tells them to stderr.
func (f *weatherFile) tell(faults []weather.Fault, stderr io.Writer) error {
	var plain []scenario.Fault
	for _, fault := range faults {
		plain = append(plain, fault.Fault)
	}
	if weather.Blocked(faults) {
		return &faultsError{f.file, plain}
	}
	for _, fault := range plain {
		fmt.Fprintf(stderr, "rowlight: %s: note: %s\n", f.file, words.Style{}.Fault(fault))
	}
	return nil
}
