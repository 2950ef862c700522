package verify

import (
	"strings"
	"unicode/utf8"
)

// sourceLength is the length to which a source is cut [characters].
const sourceLength = 60

// sourceOf is the part of a table's notes that names its source: from the given words to the end of their sentence or
// parenthesis, or else the first sentence.
func sourceOf(notes []string, cites string) string {
	text := strings.Join(notes, " ")
	if i := strings.Index(text, cites); i >= 0 {
		text = text[i:]
	}
	end := sentence(text)
	if end == len(text) {
		end = len(strings.TrimRight(text, ". "))
	}
	return cut(text[:end], sourceLength)
}

// sentence is where the first sentence of a text ends: at a stop, a semicolon, or a parenthesis that was open before.
func sentence(text string) int {
	open := 0
	for i, r := range text {
		rest := text[i+1:]
		switch {
		case r == '(':
			open++
		case r == ')' && open == 0:
			return i
		case r == ')':
			open--
		case open > 0:
		case r == ';', r == '.' && strings.HasPrefix(rest, " ") && !strings.HasSuffix(text[:i], " al"):
			return i
		}
	}
	return len(text)
}

// cut shortens a text at a space, and before a parenthesis that would stay open.
func cut(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	text = string([]rune(text)[:most-1])
	if i := strings.LastIndexByte(text, '('); i > 0 && !strings.Contains(text[i:], ")") {
		return strings.TrimRight(text[:i], " ")
	}
	if i := strings.LastIndexByte(text, ' '); i > most/2 {
		text = text[:i]
	}
	return strings.TrimRight(text, " ,") + "…"
}
