// Package table reads reference tables: comma-separated text whose lines that begin with "#" say
// source, units and conventions, followed by one header line and the rows.
package table

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strconv"
	"strings"
)

// Table is one reference table. The zero value is an empty table.
type Table struct {
	Name    string     // path it was read from
	Notes   []string   // the "#" lines in order, without the mark
	Columns []string   // names, in order
	Rows    [][]string // cells; every row has one cell per column
}

// Read reads the table at a path of fsys, such as "reference/airmass.csv". A row with another
// number of cells than the header, a repeated column, or no header at all is an error that names
// the line.
func Read(fsys fs.FS, name string) (Table, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return Table{}, err
	}
	defer file.Close()
	t, err := Parse(file)
	if err != nil {
		return Table{}, fmt.Errorf("%s: %w", name, err)
	}
	t.Name = name
	return t, nil
}

// ReadStrict is Read, and an error as well when the columns are not exactly the wanted ones in any
// order, so that a renamed or forgotten column of an outsider's table is noticed.
func ReadStrict(fsys fs.FS, name string, columns ...string) (Table, error) {
	t, err := Read(fsys, name)
	if err != nil {
		return Table{}, err
	}
	for _, column := range columns {
		if !t.Has(column) {
			return Table{}, fmt.Errorf("%s: column %q is missing; the columns are %s", name, column, strings.Join(t.Columns, ", "))
		}
	}
	for _, column := range t.Columns {
		if !slices.Contains(columns, column) {
			return Table{}, fmt.Errorf("%s: unknown column %q; the known ones are %s", name, column, strings.Join(columns, ", "))
		}
	}
	return t, nil
}

// Parse reads a table from a stream; see Read.
func Parse(r io.Reader) (Table, error) {
	buffered := bufio.NewReader(r)
	notes, err := readNotes(buffered)
	if err != nil {
		return Table{}, err
	}
	reader := csv.NewReader(buffered)
	reader.Comment = '#'
	records, err := reader.ReadAll()
	if fault, ok := errors.AsType[*csv.ParseError](err); ok {
		return Table{}, fmt.Errorf("line %d: %w", fault.Line+len(notes), fault.Err)
	}
	if err != nil {
		return Table{}, err
	}
	if len(records) == 0 {
		return Table{}, fmt.Errorf("no header line")
	}
	t := Table{Notes: notes, Columns: records[0], Rows: records[1:]}
	for i, column := range t.Columns {
		if slices.Contains(t.Columns[:i], column) {
			return Table{}, fmt.Errorf("column %q is there twice", column)
		}
	}
	return t, nil
}

// readNotes takes the leading "#" lines off the stream.
func readNotes(r *bufio.Reader) (notes []string, err error) {
	for {
		mark, err := r.Peek(1)
		if err == io.EOF {
			return notes, nil
		}
		if err != nil {
			return nil, err
		}
		if mark[0] != '#' {
			return notes, nil
		}
		line, err := r.ReadString('\n')
		if err != nil && err != io.EOF {
			return nil, err
		}
		notes = append(notes, strings.TrimSpace(strings.TrimPrefix(line, "#")))
	}
}

// Len is the number of rows.
func (t Table) Len() int { return len(t.Rows) }

// Has tells whether the table has a column of that name.
func (t Table) Has(column string) bool { return slices.Contains(t.Columns, column) }

// String is the cell of a row, counted from 0, in the named column. An unknown column or a row
// outside the table panics: ask Has, or read with ReadStrict, where the columns are not known.
func (t Table) String(row int, column string) string {
	index := slices.Index(t.Columns, column)
	if index < 0 {
		panic(t.unknown(column))
	}
	return t.Rows[row][index]
}

// Float is the number in a cell; an unknown column or a cell that holds no number is an error with
// its place.
func (t Table) Float(row int, column string) (float64, error) {
	if !t.Has(column) {
		return 0, t.unknown(column)
	}
	cell := t.String(row, column)
	value, err := strconv.ParseFloat(strings.TrimSpace(cell), 64)
	if err != nil {
		return 0, fmt.Errorf("%s: row %d, column %s: %q is not a number", t.Name, row+1, column, cell)
	}
	return value, nil
}

// Floats are the numbers of the named column, one per row.
func (t Table) Floats(column string) ([]float64, error) {
	values := make([]float64, t.Len())
	for row := range t.Rows {
		value, err := t.Float(row, column)
		if err != nil {
			return nil, err
		}
		values[row] = value
	}
	return values, nil
}

func (t Table) unknown(column string) error {
	return fmt.Errorf("%s: no column %q; the columns are %s", t.Name, column, strings.Join(t.Columns, ", "))
}
