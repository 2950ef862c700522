package weather

import (
	"strings"
	"time"

	"rowlight/sim/scenario"
)

// stampText is a date, a clock or both as a field has them.
type stampText struct {
	numbers []int // in the order of the text
	month   int   // place among the numbers of a month that is a word; -1 without one
	clock   int   // place among the numbers of the hour; -1 without one
	half    string
	zone_h  float64
	zoned   bool
}

// scanStamp parts a text such as 2024-07-01T13:10:00Z, 7/1/2024 1:10 PM or 01-Jul-2024. ok is false for what has
// other signs or words in it.
func scanStamp(text string) (s stampText, ok bool) {
	s.month, s.clock = -1, -1
	for i := 0; i < len(text); {
		switch c := text[i]; {
		case c >= '0' && c <= '9':
			start := i
			for i < len(text) && text[i] >= '0' && text[i] <= '9' {
				i++
			}
			if i-start > 4 || len(s.numbers) == 7 {
				return s, false
			}
			s.numbers = append(s.numbers, number(text[start:i]))
			if i < len(text) && text[i] == ':' && s.clock < 0 {
				s.clock = len(s.numbers) - 1
			}
		case s.clock >= 0 && (c == '.' || c == ',') && len(s.numbers) == s.clock+3: // parts of a second
			for i++; i < len(text) && text[i] >= '0' && text[i] <= '9'; {
				i++
			}
		case s.clock >= 0 && (c == '+' || c == '-') && len(s.numbers) > s.clock+1:
			zone, ok := zoneHours(text[i:])
			s.zone_h, s.zoned = zone, ok
			return s, ok
		case strings.IndexByte("-/.: ,", c) >= 0:
			i++
		default:
			start := i
			for i < len(text) && letter(text[i]) {
				i++
			}
			if i == start || !s.word(strings.ToLower(text[start:i])) {
				return s, false
			}
		}
	}
	return s, len(s.numbers) > 0
}

func letter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

// number reads at most four digits.
func number(digits string) (n int) {
	for _, digit := range []byte(digits) {
		n = 10*n + int(digit-'0')
	}
	return n
}

var monthWords = []string{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

// word takes a word of a time.
func (s *stampText) word(word string) bool {
	switch word {
	case "t":
		return true
	case "am", "pm":
		s.half = word
		return s.clock >= 0
	case "z", "utc", "gmt":
		s.zoned = true
		return s.clock >= 0
	}
	for i, month := range monthWords {
		if strings.HasPrefix(word, month) && s.month < 0 {
			s.month = len(s.numbers)
			s.numbers = append(s.numbers, i+1)
			return true
		}
	}
	return false
}

// zoneHours reads +02:00, -0330 or +2.
func zoneHours(text string) (float64, bool) {
	digits := strings.Replace(text[1:], ":", "", 1)
	if len(digits) == 0 || len(digits) > 4 || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	hours, minutes := number(digits), 0
	if len(digits) > 2 {
		hours, minutes = number(digits[:len(digits)-2]), number(digits[len(digits)-2:])
	}
	zone := float64(hours) + float64(minutes)/60
	if text[0] == '-' {
		zone = -zone
	}
	return zone, hours <= 14 && minutes < 60
}

// date reads the three numbers of a date in an order; a month as a word and a year of four digits before the others tell
// the order themselves.
func (s stampText) date(order string) (t time.Time, ok bool) {
	numbers := s.numbers
	if s.clock >= 0 {
		numbers = numbers[:s.clock]
	}
	if len(numbers) != 3 {
		return t, false
	}
	year, month, day := numbers[0], numbers[1], numbers[2]
	switch {
	case numbers[0] > 31:
	case s.month == 0:
		year, month, day = numbers[2], numbers[0], numbers[1]
	case s.month == 1 || order == "dmy":
		year, month, day = numbers[2], numbers[1], numbers[0]
	case order == "mdy":
		year, month, day = numbers[2], numbers[0], numbers[1]
	}
	return dateOf(year, month, day)
}

// dateOf is a date that is in the calendar; a year of two digits lies in this century.
func dateOf(year, month, day int) (t time.Time, ok bool) {
	if year < 100 {
		year += 2000
	}
	t = time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	return t, year >= scenario.FirstYear && year <= scenario.LastYear && int(t.Month()) == month && t.Day() == day
}

// hours reads the clock [h], 0–24; a text without one is midnight.
func (s stampText) hours() (hours float64, ok bool) {
	if s.clock < 0 {
		return 0, len(s.numbers) <= 3
	}
	parts := append(append([]int{}, s.numbers[s.clock:]...), 0, 0)
	hour, minute, second := parts[0], parts[1], parts[2]
	if s.half != "" {
		if hour < 1 || hour > 12 {
			return 0, false
		}
		hour %= 12
		if s.half == "pm" {
			hour += 12
		}
	}
	hours = float64(hour) + float64(minute)/60 + float64(second)/3600
	return hours, len(parts) <= 5 && minute < 60 && second < 60 && hours <= 24
}
