package weather

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// builder puts rows into a file.
type builder struct {
	file   *File
	faults *report
}

// add appends a row, and is false when the file is full. Rows of which nothing could be made are
// left out. An hour 0 is the hour 24 of the day before, or of the same day where it follows its
// hour 23.
func (b *builder) add(row Row) bool {
	if !row.stamped {
		return true
	}
	if len(b.file.Rows) == mostRows {
		b.faults.notice("notice.file-long", map[string]any{"max": mostRows})
		return false
	}
	if row.Hour == 0 {
		row.Hour = hoursOfDay
		last := Row{}
		if n := len(b.file.Rows); n > 0 {
			last = b.file.Rows[n-1]
		}
		if last.Hour != hoursOfDay-1 || last.Month != row.Month || last.Day != row.Day {
			before := row.date().AddDate(0, 0, -1)
			row.Year, row.Month, row.Day = before.Year(), int(before.Month()), before.Day()
		}
	}
	b.file.Rows = append(b.file.Rows, row)
	return true
}

// checkEnd notes a file that stops within a day, within the year that it begins, or before the last
// day that it declares ("12/31", empty for none).
func (b *builder) checkEnd(declared string) {
	rows := b.file.Rows
	if len(rows) == 0 || Blocked(b.faults.faults) {
		return
	}
	first, last := rows[0], rows[len(rows)-1]
	month, day, ok := monthDay(declared)
	if !ok {
		month, day = last.Month, last.Day
	}
	const nearlyYear = 8000 // hours: who begins so much meant all of it
	whole := len(rows) == mostRows || len(rows) == mostRows-hoursOfDay
	if first.Hour != 1 || last.Hour != hoursOfDay || last.Month != month || last.Day != day || len(rows) > nearlyYear && !whole {
		b.faults.notice("notice.file-short", map[string]any{"count": len(rows), "from": first.stamp(), "to": last.stamp()})
	}
}

// monthDay reads "12/31", with or without a year behind it.
func monthDay(text string) (month, day int, ok bool) {
	parts := strings.Split(text, "/")
	if len(parts) < 2 {
		return 0, 0, false
	}
	month, monthErr := strconv.Atoi(strings.TrimSpace(parts[0]))
	day, dayErr := strconv.Atoi(strings.TrimSpace(parts[1]))
	return month, day, monthErr == nil && dayErr == nil
}

// checkSequence notes where the hours of the file do not follow each other. Years do not count: the
// months of a typical year come from different ones.
func (f *File) checkSequence(faults *report) {
	for i, row := range f.Rows[1:] {
		before := f.Rows[i]
		if !before.precedes(row) {
			faults.at(row.Line, 0, "fault.file-gap", map[string]any{"before": before.stamp(), "found": row.stamp()})
		}
	}
}

// precedes tells whether the next row is the hour after this one, whatever the year.
func (r Row) precedes(next Row) bool {
	if r.Hour < hoursOfDay {
		return next.Month == r.Month && next.Day == r.Day && next.Hour == r.Hour+1
	}
	if next.Hour != 1 {
		return false
	}
	const common, leap = 2001, 2004
	for _, year := range []int{common, leap} {
		tomorrow := time.Date(year, time.Month(r.Month), r.Day+1, 0, 0, 0, 0, time.UTC)
		if int(tomorrow.Month()) == next.Month && tomorrow.Day() == next.Day {
			return true
		}
	}
	return false
}

func (r Row) date() time.Time {
	return time.Date(r.Year, time.Month(r.Month), r.Day, 0, 0, 0, 0, time.UTC)
}

// stamp is month, day and hour of the row as text.
func (r Row) stamp() string { return fmt.Sprintf("%02d-%02d %02d:00", r.Month, r.Day, r.Hour) }

func missing() float64 { return math.NaN() }
