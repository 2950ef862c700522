package weather

import (
	"bufio"
	"encoding/binary"
	"errors"
	"io"
	"unicode/utf16"
	"unicode/utf8"
)

// The decoders here are a few lines; those of the usual library bring tables of all encodings, which the page
// would load.

// textReader gives UTF-8 of characters that it reads one by one.
type textReader struct {
	next func() (rune, error)
	rest []byte // of the last character
	err  error
}

// Read fills p.
func (t *textReader) Read(p []byte) (n int, err error) {
	for n < len(p) {
		if len(t.rest) == 0 {
			if t.err != nil {
				break
			}
			var r rune
			if r, t.err = t.next(); t.err != nil {
				break
			}
			t.rest = utf8.AppendRune(t.rest[:0], r)
		}
		copied := copy(p[n:], t.rest)
		n, t.rest = n+copied, t.rest[copied:]
	}
	if n == 0 && len(p) > 0 {
		return 0, t.err
	}
	return n, nil
}

// utf16Reader reads UTF-16; what is no character becomes the sign for that.
func utf16Reader(r io.Reader, order binary.ByteOrder) io.Reader {
	in := bufio.NewReader(r)
	unit := func() (rune, error) {
		var pair [2]byte
		if _, err := io.ReadFull(in, pair[:]); err != nil {
			if errors.Is(err, io.ErrUnexpectedEOF) {
				err = io.EOF // half a character at the end
			}
			return 0, err
		}
		return rune(order.Uint16(pair[:])), nil
	}
	return &textReader{next: func() (rune, error) {
		first, err := unit()
		if err != nil || !utf16.IsSurrogate(first) {
			return first, err
		}
		second, err := unit()
		return utf16.DecodeRune(first, second), err
	}}
}

// windows1252 are the characters of the bytes from 0x80 to 0x9f; all others are as in Unicode.
const windows1252 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ"

// windowsReader reads Windows-1252.
func windowsReader(r io.Reader) io.Reader {
	in := bufio.NewReader(r)
	high := []rune(windows1252)
	return &textReader{next: func() (rune, error) {
		b, err := in.ReadByte()
		if b >= 0x80 && b < 0xa0 {
			return high[b-0x80], err
		}
		return rune(b), err
	}}
}
