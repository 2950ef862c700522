package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"
	"time"
	"unicode/utf8"

	"rowlight/sim/words"
)

// column is one column of a sheet.
type column struct {
	key      string // name in csv, with the unit; empty leaves the column out there
	title    string // name in a table; empty leaves the column out there
	unit     string // unit of the stored value, as the scenario's schema writes it
	decimals int    // in a table; csv keeps every digit
}

// sheet is rows of texts, moments and numbers under columns.
type sheet struct {
	columns []column
	rows    [][]any
}

// writeCSV writes the sheet as RFC 4180 with every digit of its numbers.
func (s sheet) writeCSV(w io.Writer) error { return s.writePiece(w, shard{}) }

// writePiece writes a sheet that holds a shard of an answer: as CSV, with a header in the first one only.
func (s sheet) writePiece(w io.Writer, of shard) error {
	s = s.only(func(c column) bool { return c.key != "" })
	out := csv.NewWriter(w)
	line := make([]string, len(s.columns))
	for i, column := range s.columns {
		line[i] = column.key
	}
	if of.headed() {
		if err := out.Write(line); err != nil {
			return err
		}
	}
	for _, row := range s.rows {
		for i, cell := range row {
			line[i] = exact(cell)
		}
		if err := out.Write(line); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// only keeps the columns that pass.
func (s sheet) only(pass func(column) bool) sheet {
	var out sheet
	var kept []int
	for i, column := range s.columns {
		if pass(column) {
			out.columns = append(out.columns, column)
			kept = append(kept, i)
		}
	}
	for _, row := range s.rows {
		line := make([]any, 0, len(kept))
		for _, i := range kept {
			line = append(line, row[i])
		}
		out.rows = append(out.rows, line)
	}
	return out
}

// exact writes a cell so that it reads back as it was.
func exact(cell any) string {
	switch cell := cell.(type) {
	case float64:
		return strconv.FormatFloat(cell, 'g', -1, 64)
	case time.Time:
		return cell.Format(time.RFC3339)
	default:
		return fmt.Sprint(cell)
	}
}

// writeTable writes the sheet for reading: a line of titles, a line of units, aligned columns.
func (s sheet) writeTable(w io.Writer, units words.Units) error {
	s = s.only(func(c column) bool { return c.title != "" })
	lines := [][]string{make([]string, len(s.columns)), make([]string, len(s.columns))}
	for i, column := range s.columns {
		_, unit := words.Convert(0, column.unit, units)
		lines[0][i], lines[1][i] = column.title, unit
	}
	if strings.Join(lines[1], "") == "" {
		lines = lines[:1]
	}
	for _, row := range s.rows {
		line := make([]string, len(row))
		for i, cell := range row {
			line[i] = s.columns[i].shown(cell, units)
		}
		lines = append(lines, line)
	}
	for i := range s.columns {
		if s.hasNumbers(i) {
			alignRight(lines, i)
		}
	}
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, line := range lines {
		fmt.Fprintln(table, strings.TrimRight(strings.Join(line, "\t"), " \t"))
	}
	return table.Flush()
}

// shown writes a cell for reading.
func (c column) shown(cell any, units words.Units) string {
	switch cell := cell.(type) {
	case float64:
		converted, _ := words.Convert(cell, c.unit, units)
		return words.Number(converted, c.decimals)
	default:
		return exact(cell)
	}
}

// hasNumbers tells whether a column holds numbers.
func (s sheet) hasNumbers(column int) bool {
	if len(s.rows) == 0 {
		return false
	}
	_, ok := s.rows[0][column].(float64)
	return ok
}

// alignRight pads the cells of a column on their left.
func alignRight(lines [][]string, column int) {
	widest := 0
	for _, line := range lines {
		widest = max(widest, utf8.RuneCountInString(line[column]))
	}
	for _, line := range lines {
		line[column] = strings.Repeat(" ", widest-utf8.RuneCountInString(line[column])) + line[column]
	}
}
