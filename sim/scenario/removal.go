package scenario

import "time"

// freshDays is how long fruit counts as newly uncovered after leaves were pulled [days]: the week of NewlyUncovered, an
// assumption.
const freshDays = 7

// pulledFor is how many days before a date the leaves were pulled [days]; negative while they still hang. Years do not
// count: a removal lies up to half a year back or ahead. Without two dates ok is false.
func (l Leaves) pulledFor(date string) (days int, ok bool) {
	pulled, err := time.Parse(time.DateOnly, l.RemovedOn)
	if err != nil {
		return 0, false
	}
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return 0, false
	}
	days = daysAfter(pulled, day)
	if days > commonYear/2 {
		days -= commonYear
	}
	return days, true
}

// inCommonYear is the day of a year without 29 February, which counts as 1 March.
func inCommonYear(day time.Time) int {
	return time.Date(2001, day.Month(), day.Day(), 0, 0, 0, 0, time.UTC).YearDay()
}

// On is the option as it stands on a date [year-month-day]: before the date of leaf removal all leaves hang.
func (o Option) On(date string) Option {
	if days, ok := o.Leaves.pulledFor(date); ok && days < 0 {
		o.Leaves.RemovedMorning, o.Leaves.RemovedAfternoon = 0, 0
	}
	o.Leaves.RemovedOn = ""
	return o
}

// FruitOf is the fruit of an option on the date of the scenario: newly uncovered in the week after leaf removal.
func (s Scenario) FruitOf(o Option) Fruit {
	if days, ok := o.Leaves.pulledFor(s.Weather.Date); o.Leaves.pulls() && ok && days >= 0 && days < freshDays {
		s.Fruit.Hardening = NewlyUncovered
	}
	return s.Fruit
}

// pulls reports whether any leaves are pulled.
func (l Leaves) pulls() bool { return l.RemovedMorning > 0 || l.RemovedAfternoon > 0 }

// RemovalNotices says what the date of leaf removal means on a date [year-month-day]: that the leaves still hang, or that
// the fruit is newly uncovered. The path is the JSON pointer of the option.
func (o Option) RemovalNotices(date, path string) []Fault {
	days, ok := o.Leaves.pulledFor(date)
	path += "/leaves/removedOn"
	switch {
	case !ok || !o.Leaves.pulls() || days >= freshDays:
		return nil
	case days < 0:
		return []Fault{{"notice.leaves-hang", path, map[string]any{"days": -days}}}
	}
	return []Fault{{"notice.leaves-fresh", path, map[string]any{"days": days}}}
}
