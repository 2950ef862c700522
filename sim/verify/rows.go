package verify

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"time"

	"rowlight/sim/internal/table"
)

// Fault is what keeps a table from being read.
type Fault struct {
	File   string
	Line   int    // from 1; 0 for the whole file
	Column string // name, empty for the whole line
	What   string
}

// Error names the file, the line and the column.
func (f Fault) Error() string {
	text := f.File
	if f.Line > 0 {
		text += fmt.Sprintf(": line %d", f.Line)
	}
	if f.Column != "" {
		text += fmt.Sprintf(", column %s", f.Column)
	}
	return text + ": " + f.What
}

// Unreadable is all faults of the tables of a folder.
type Unreadable struct{ Faults []error }

// Error has a line for each fault.
func (u *Unreadable) Error() string { return errors.Join(u.Faults...).Error() }

// column is one that a check reads, with what its cells may hold.
type column struct {
	name string
	hold func(cell string) error
}

// number is a column of numbers within a range that the functions take.
func number(name string, least, most float64) column {
	return column{name, func(cell string) error {
		value, err := finite(cell)
		if err == nil && (value < least || value > most) {
			err = fmt.Errorf("%s is outside %g to %g", strings.TrimSpace(cell), least, most)
		}
		return err
	}}
}

// whole is a column of whole numbers within a range.
func whole(name string, least, most float64) column {
	inner := number(name, least, most)
	return column{name, func(cell string) error {
		if value, err := finite(cell); err == nil && value != math.Trunc(value) {
			return fmt.Errorf("%s is no whole number", strings.TrimSpace(cell))
		}
		return inner.hold(cell)
	}}
}

// numbers are columns of any numbers.
func numbers(names ...string) (list []column) {
	for _, name := range names {
		list = append(list, column{name, func(cell string) error {
			_, err := finite(cell)
			return err
		}})
	}
	return list
}

// oneOf is a column of given words.
func oneOf(name string, words ...string) column {
	return column{name, func(cell string) error {
		if !slices.Contains(words, cell) {
			return fmt.Errorf("%q is none of %s", cell, strings.Join(words, ", "))
		}
		return nil
	}}
}

// moment is a column of moments or of given words in their place.
func moment(name, layout string, words ...string) column {
	return column{name, func(cell string) error {
		if slices.Contains(words, cell) {
			return nil
		}
		if _, err := time.Parse(layout, cell); err != nil {
			return fmt.Errorf("%q is not written as %s", cell, layout)
		}
		return nil
	}}
}

// finite reads a number.
func finite(cell string) (float64, error) {
	value, err := table.Number(cell)
	if err == nil && (math.IsNaN(value) || math.IsInf(value, 0)) {
		err = fmt.Errorf("%q is not finite", cell)
	}
	return value, err
}

// row is one row of a table whose cells were checked.
type row struct {
	table table.Table
	index int
}

// at is the number in a column.
func (r row) at(column string) float64 {
	value, err := finite(r.word(column))
	if err != nil { // the table was checked
		panic(err)
	}
	return value
}

// word is the text in a column.
func (r row) word(column string) string { return r.table.String(r.index, column) }

// moment is the moment in a column; ok is false where a word stands in its place.
func (r row) moment(column, layout string) (t time.Time, ok bool) {
	t, err := time.Parse(layout, r.word(column))
	return t, err == nil
}

// fault is a fault of this row.
func (r row) fault(column, what string) error {
	return Fault{r.table.Name, r.table.Line(r.index), column, what}
}

// readAll reads the tables of all checks and checks every cell that they read.
func readAll(folder fs.FS, all []check) (tables map[string]table.Table, missing []string, err error) {
	tables = map[string]table.Table{}
	var faults []error
	for _, name := range names(all) {
		t, err := table.Read(folder, name+".csv")
		switch {
		case errors.Is(err, fs.ErrNotExist):
			missing = append(missing, name)
		case err != nil:
			faults = append(faults, err)
		default:
			tables[name] = t
		}
	}
	for _, name := range names(all) {
		if t, ok := tables[name]; ok {
			faults = append(faults, faultsOf(t, columnsOf(name, all))...)
		}
	}
	if len(faults) > 0 {
		return nil, nil, &Unreadable{faults}
	}
	return tables, missing, nil
}

// columnsOf are the columns of a table that any check reads.
func columnsOf(name string, all []check) (list []column) {
	for _, c := range all {
		if c.table != name {
			continue
		}
		for _, one := range slices.Concat(c.answers, c.asks) {
			if !slices.ContainsFunc(list, func(have column) bool { return have.name == one.name }) {
				list = append(list, one)
			}
		}
	}
	return list
}

// mostFaults of one table are told; the rest is likely the same.
const mostFaults = 10

// faultsOf checks a table.
func faultsOf(t table.Table, columns []column) (faults []error) {
	if t.Len() == 0 {
		return []error{Fault{File: t.Name, What: "no rows under the header"}}
	}
	for _, c := range columns {
		if !t.Has(c.name) {
			faults = append(faults, Fault{t.Name, t.Line(-1), c.name, "the column is missing; the columns are " + strings.Join(t.Columns, ", ")})
			continue
		}
		for i := range t.Rows {
			if err := c.hold(t.String(i, c.name)); err != nil {
				faults = append(faults, row{t, i}.fault(c.name, err.Error()))
			}
		}
	}
	if more := len(faults) - mostFaults; more > 0 {
		faults = append(faults[:mostFaults], Fault{File: t.Name, What: fmt.Sprintf("and %d more", more)})
	}
	return faults
}
