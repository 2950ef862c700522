package verify

import (
	"math"
	"strconv"
	"time"

	"rowlight/sim/internal/table"
)

// check is how one table, or one part of it, is compared.
type check struct {
	table    string
	compares string
	allowed  float64
	unit     string
	cites    string   // word of the notes that marks the source
	asks     []column // what the functions are asked with
	answers  []column // what they should answer
	begin    func(pace func() error) rowCheck
}

// rowCheck compares one row; it may remember what it needs from row to row.
type rowCheck func(r row, f *found) error

// each is the beginning of a check that remembers nothing.
func each(compare func(r row, f *found)) func(func() error) rowCheck {
	return func(func() error) rowCheck {
		return func(r row, f *found) error {
			compare(r, f)
			return nil
		}
	}
}

// compare runs a check over its table.
func (c check) compare(t table.Table, pace func() error) (Comparison, error) {
	result := Comparison{
		Table: c.table, Compares: c.compares, Allowed: c.allowed, Unit: c.unit,
		Source: sourceOf(t.Notes, c.cites), Notes: t.Notes,
	}
	found := found{worst: -1}
	compareRow := c.begin(pace)
	for i := range t.Rows {
		if err := pace(); err != nil {
			return result, err
		}
		before := found.cells
		if err := compareRow(row{t, i}, &found); err != nil {
			return result, err
		}
		if found.cells > before {
			result.Rows++
		}
	}
	result.Worst, result.At = found.worst, found.at
	if found.cells == 0 {
		return result, &Unreadable{[]error{Fault{File: t.Name, What: "no row can be compared"}}}
	}
	return result, nil
}

// found keeps the worst difference of a check.
type found struct {
	cells int
	worst float64
	at    Place
}

// near compares a number with a cell by their difference.
func (f *found) near(r row, column string, got float64) {
	f.off(r, column, got, math.Abs(got-r.at(column)))
}

// ratio compares a number with a cell by their difference as a share of the cell [%].
func (f *found) ratio(r row, column string, got float64) {
	want := r.at(column)
	if got == want {
		f.off(r, column, got, 0)
		return
	}
	f.off(r, column, got, math.Abs(got-want)/math.Abs(want)*100)
}

// off keeps a difference that is measured otherwise.
func (f *found) off(r row, column string, got, difference float64) {
	if f.isWorst(difference) {
		f.at = Place{r.table.Line(r.index), column, strconv.FormatFloat(got, 'g', 8, 64), r.word(column)}
	}
}

// moment compares a moment with a cell [s].
func (f *found) moment(r row, column string, got, want time.Time) {
	if f.isWorst(math.Abs(got.Sub(want).Seconds())) {
		f.at = Place{r.table.Line(r.index), column, got.UTC().Format(time.RFC3339), r.word(column)}
	}
}

// state compares a word with what a cell says, such as that the sun does not set; another one is infinitely off.
func (f *found) state(r row, column, got string) {
	difference := 0.0
	if got != r.word(column) {
		difference = math.Inf(1)
	}
	if f.isWorst(difference) {
		f.at = Place{r.table.Line(r.index), column, got, r.word(column)}
	}
}

// isWorst counts a cell and tells whether its difference is the largest yet. No number is as far off as can be.
func (f *found) isWorst(difference float64) bool {
	f.cells++
	if math.IsNaN(difference) {
		difference = math.Inf(1)
	}
	if difference <= f.worst {
		return false
	}
	f.worst = difference
	return true
}
