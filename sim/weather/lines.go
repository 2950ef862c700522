package weather

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strings"
)

// A year of hours takes 2 MB and 8792 lines. The bounds keep a wrong file from filling memory and time.
const (
	mostBytes     = 32 << 20
	mostLineBytes = 64 << 10
	mostLines     = 20000
)

// lines gives the lines of a weather file as fields, without holding more than one of them. Lines
// end with LF, CR LF or CR.
type lines struct {
	scanner *bufio.Scanner
	number  int // of the line read last, from 1
	most    int // lines that are read
	bytes   int64
}

// newLines reads the lines of a file of hours.
func newLines(r io.Reader) *lines { return newLinesOf(r, mostLines) }

func newLinesOf(r io.Reader, most int) *lines {
	scanner := bufio.NewScanner(r)
	scanner.Buffer(make([]byte, 0, 4096), mostLineBytes)
	l := &lines{scanner: scanner, most: most}
	scanner.Split(func(data []byte, atEOF bool) (int, []byte, error) {
		advance, token, err := splitLine(data, atEOF)
		l.bytes += int64(advance)
		if l.bytes > mostBytes {
			return 0, nil, errTooBig
		}
		return advance, token, err
	})
	return l
}

var errTooBig = errors.New("weather: file too big")

// next reads the next line; it is false at the end, or where a fault ends the reading.
func (l *lines) next(faults *report) (line string, ok bool) {
	if l.number == l.most {
		faults.notice("notice.file-lines", map[string]any{"max": l.most})
		return "", false
	}
	if l.scanner.Scan() {
		l.number++
		text := l.scanner.Bytes()
		if l.number == 1 {
			text = bytes.TrimPrefix(text, byteOrderMark)
		}
		return string(text), true
	}
	switch err := l.scanner.Err(); {
	case err == nil:
	case errors.Is(err, errTooBig):
		faults.block(0, 0, "fault.file-too-big", map[string]any{"max": mostBytes})
	case errors.Is(err, bufio.ErrTooLong):
		faults.block(l.number+1, 0, "fault.file-line-long", map[string]any{"max": mostLineBytes})
	default:
		faults.block(l.number+1, 0, "fault.file-unreadable", map[string]any{"detail": err.Error()})
	}
	return "", false
}

// splitLine is a bufio.SplitFunc for lines that end with LF, CR LF or CR.
func splitLine(data []byte, atEOF bool) (advance int, token []byte, err error) {
	end := bytes.IndexAny(data, "\r\n")
	switch {
	case end < 0 && atEOF && len(data) > 0:
		return len(data), data, nil
	case end < 0:
		return 0, nil, nil
	case data[end] == '\n':
		return end + 1, data[:end], nil
	case end+1 < len(data) && data[end+1] == '\n':
		return end + 2, data[:end], nil
	case end+1 == len(data) && !atEOF: // LF may follow
		return 0, nil, nil
	default:
		return end + 1, data[:end], nil
	}
}

// split parts a line into fields without the blanks around them.
func split(line string) []string { return splitAt(line, ",") }

// splitAt is split at another separator of one byte.
func splitAt(line, separator string) []string {
	fields := strings.Split(line, separator)
	if strings.Contains(line, `"`) {
		reader := csv.NewReader(strings.NewReader(line))
		reader.Comma = rune(separator[0])
		reader.LazyQuotes = true
		if quoted, err := reader.Read(); err == nil {
			fields = quoted
		}
	}
	for i := range fields {
		fields[i] = strings.TrimSpace(fields[i])
	}
	return fields
}
