package weather

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"io"
	"unicode/utf8"
)

// Encoding is how the text of a file stands in its bytes.
type Encoding string

// The encodings that are read. The first 256 characters of Unicode with a few more, as Windows writes them in the
// west, stand for all older one-byte texts: digits and signs are the same in every one.
const (
	UTF8        Encoding = "utf-8"
	UTF16LE     Encoding = "utf-16le"
	UTF16BE     Encoding = "utf-16be"
	Windows1252 Encoding = "windows-1252"
)

// encodings are all that are read.
var encodings = []Encoding{UTF8, UTF16LE, UTF16BE, Windows1252}

var (
	byteOrderMark = []byte("\xef\xbb\xbf") // of UTF-8
	littleMark    = []byte("\xff\xfe")
	bigMark       = []byte("\xfe\xff")
	packedMark    = []byte("PK\x03\x04")
)

// encodingOf finds the encoding by the mark at the beginning of a file, else by where its zero bytes stand: text in
// UTF-16 that is mostly digits has one in every pair. ok is false where they stand as in no text.
func encodingOf(start []byte) (e Encoding, ok bool) {
	switch {
	case bytes.HasPrefix(start, littleMark):
		return UTF16LE, true
	case bytes.HasPrefix(start, bigMark):
		return UTF16BE, true
	case bytes.IndexByte(start, 0) < 0:
		if utf8.Valid(trimPartOfRune(start)) {
			return UTF8, true
		}
		return Windows1252, true
	}
	zeros := [2]int{}
	for i, b := range start {
		if b == 0 {
			zeros[i%2]++
		}
	}
	const mostly = 0.8
	switch pairs := float64(len(start)) / 2; {
	case zeros[0] == 0 && float64(zeros[1]) > mostly*pairs:
		return UTF16LE, true
	case zeros[1] == 0 && float64(zeros[0]) > mostly*pairs:
		return UTF16BE, true
	}
	return "", false
}

// trimPartOfRune drops a character that the end of a peek has cut.
func trimPartOfRune(start []byte) []byte {
	for cut := 0; cut < utf8.UTFMax && cut < len(start); cut++ {
		if r, _ := utf8.DecodeLastRune(start[:len(start)-cut]); r != utf8.RuneError {
			return start[:len(start)-cut]
		}
	}
	return start
}

// reader gives the text as UTF-8. Text in UTF-8 goes through as it is, what is wrong in it too: names of places in
// older files are in other encodings, numbers are not.
func (e Encoding) reader(r io.Reader) io.Reader {
	switch e {
	case UTF16LE:
		return utf16Reader(r, binary.LittleEndian)
	case UTF16BE:
		return utf16Reader(r, binary.BigEndian)
	case Windows1252:
		return windowsReader(r)
	}
	return r
}

// peeked is how much of a file is looked at to tell what it is.
const peeked = 16 << 10

// opened is a file that is about to be read.
type opened struct {
	raw      *bufio.Reader
	encoding Encoding
	start    []byte // the beginning of its text, as UTF-8
}

// open looks at the beginning of a file. Faults are of what is no text.
func open(r io.Reader, faults *report) opened {
	o := opened{raw: bufio.NewReaderSize(r, peeked)}
	start, _ := o.raw.Peek(peeked) // a shorter file gives what it has; a fault comes again when read
	encoding, ok := encodingOf(start)
	o.encoding = encoding
	switch {
	case bytes.HasPrefix(start, packedMark):
		faults.block(0, 0, "fault.file-packed", nil)
		return o
	case !ok:
		faults.block(0, 0, "fault.file-binary", nil)
		return o
	}
	text, _ := io.ReadAll(encoding.reader(bytes.NewReader(start))) // half a character at the cut is no fault
	o.start = bytes.TrimPrefix(text, byteOrderMark)
	if len(bytes.TrimSpace(o.start)) == 0 {
		faults.block(0, 0, "fault.file-empty", nil)
	}
	return o
}

// text is the file as UTF-8, but for names in older one-byte texts, which utf8Text mends.
func (o opened) text() io.Reader {
	if o.encoding == Windows1252 {
		return o.raw
	}
	return o.encoding.reader(o.raw)
}
