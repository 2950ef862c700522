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

	header int   // line of the columns' names
	lines  []int // of each row
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
	skipMark(buffered)
	notes, err := readNotes(buffered)
	if err != nil {
		return Table{}, err
	}
	t := Table{Notes: notes}
	if err := t.readRows(buffered); err != nil {
		return Table{}, err
	}
	for i, column := range t.Columns {
		if slices.Contains(t.Columns[:i], column) {
			return Table{}, fmt.Errorf("line %d: column %q is there twice", t.header, column)
		}
	}
	return t, nil
}

// skipMark passes over the mark of UTF-8 that some spreadsheets write first.
func skipMark(r *bufio.Reader) {
	const mark = "\ufeff"
	if start, err := r.Peek(len(mark)); err == nil && string(start) == mark {
		_, _ = r.Discard(len(mark))
	}
}

// readRows takes the header and the rows off the stream, with their lines.
func (t *Table) readRows(r io.Reader) error {
	reader := csv.NewReader(r)
	reader.Comment = '#'
	for {
		cells, err := reader.Read()
		if errors.Is(err, csv.ErrFieldCount) {
			line, _ := reader.FieldPos(0)
			return fmt.Errorf("line %d: %d cells under %d columns", line+len(t.Notes), len(cells), len(t.Columns))
		}
		if fault, ok := errors.AsType[*csv.ParseError](err); ok {
			return fmt.Errorf("line %d: %w", fault.Line+len(t.Notes), fault.Err)
		}
		if err == io.EOF && t.header > 0 {
			return nil
		}
		if err == io.EOF {
			return errors.New("no header line")
		}
		if err != nil {
			return err
		}
		line, _ := reader.FieldPos(0)
		line += len(t.Notes)
		if t.header == 0 {
			t.header, t.Columns = line, cells
			continue
		}
		t.Rows, t.lines = append(t.Rows, cells), append(t.lines, line)
	}
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

// Line is the line of the file on which a row begins, counted from 1; rows count from 0, and row -1 is the
// header.
func (t Table) Line(row int) int {
	if row < 0 {
		return t.header
	}
	return t.lines[row]
}

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
	value, err := Number(cell)
	if err != nil {
		return 0, fmt.Errorf("%s: line %d, column %s: %w", t.Name, t.Line(row), column, err)
	}
	return value, nil
}

// Number reads a cell that holds a number, with spaces around it or not.
func Number(cell string) (float64, error) {
	value, err := strconv.ParseFloat(strings.TrimSpace(cell), 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not a number", cell)
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
