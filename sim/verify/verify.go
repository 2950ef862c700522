// Package verify compares tables of independent origin with the very functions that the simulation uses. It
// holds no formula of its own: it reads a row, asks the function, and keeps the worst difference.
package verify

import (
	"errors"
	"fmt"
	"io/fs"
	"sync"
)

// Comparison is what came of comparing one table, or one part of it, with the simulation.
type Comparison struct {
	Table    string  // name of the table, without folder and ending
	Compares string  // what is compared
	Rows     int     // that were compared
	Worst    float64 // largest difference found, or +Inf where the simulation gives no number
	Allowed  float64 // largest difference that holds
	Unit     string  // of both
	At       Place   // where the worst difference is
	Source   string  // from the notes of the table, short
	Notes    []string
}

// Place is a cell of a table and what the simulation gives for it.
type Place struct {
	Line      int    // of the file, from 1
	Column    string // name
	Got, Want string // by the simulation and in the cell
}

// Holds tells whether the worst difference is within what is allowed.
func (c Comparison) Holds() bool { return c.Worst <= c.Allowed }

// Report is all comparisons of a folder of tables.
type Report struct {
	Comparisons []Comparison
	Missing     []string // tables that the folder does not hold
}

// Outside are the comparisons that do not hold.
func (r Report) Outside() (list []Comparison) {
	for _, c := range r.Comparisons {
		if !c.Holds() {
			list = append(list, c)
		}
	}
	return list
}

// Names are the tables that Tables looks for, in order.
func Names() []string { return names(checks()) }

// Tables compares the tables of a folder, files such as airmass.csv, with the simulation. Files of other names are
// passed over and tables that are not there are listed; none at all is an error. Tables that cannot be read are an Unreadable error.
// Comparisons run at the same time; pace is called by all of them between rows and its error abandons the work.
func Tables(folder fs.FS, pace func() error) (Report, error) {
	return run(folder, checks(), pace)
}

// Some is Tables for the named tables, all of which must be there.
func Some(folder fs.FS, pace func() error, tables ...string) (Report, error) {
	var chosen []check
	for _, name := range tables {
		before := len(chosen)
		for _, c := range checks() {
			if c.table == name {
				chosen = append(chosen, c)
			}
		}
		if len(chosen) == before {
			return Report{}, fmt.Errorf("verify: no comparison is known for a table %q", name)
		}
	}
	report, err := run(folder, chosen, pace)
	if err == nil && len(report.Missing) > 0 {
		err = fmt.Errorf("verify: tables %v are missing", report.Missing)
	}
	return report, err
}

// run reads all tables first, so that every fault is told at once, and then compares.
func run(folder fs.FS, all []check, pace func() error) (Report, error) {
	tables, missing, err := readAll(folder, all)
	if err != nil {
		return Report{}, err
	}
	if len(tables) == 0 {
		return Report{}, &Unreadable{[]error{fmt.Errorf("none of the tables is there; their names are %v", names(all))}}
	}
	report := Report{Missing: missing}
	var present []check
	for _, c := range all {
		if _, ok := tables[c.table]; ok {
			present = append(present, c)
		}
	}
	report.Comparisons = make([]Comparison, len(present))
	faults := make([]error, len(present))
	var group sync.WaitGroup
	for i, c := range present {
		group.Go(func() { report.Comparisons[i], faults[i] = c.compare(tables[c.table], pace) })
	}
	group.Wait()
	return report, errors.Join(faults...)
}

// names are the tables of checks, each once.
func names(all []check) (list []string) {
	for i, c := range all {
		if i == 0 || c.table != all[i-1].table {
			list = append(list, c.table)
		}
	}
	return list
}
