package scenario

import "time"

// freshDays is how long fruit counts as newly uncovered after leaves were pulled [days], as Hardening says.
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
	const year = 365
	days = (inCommonYear(day) - inCommonYear(pulled) + year) % year
	if days > year/2 {
		days -= year
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
	pulled := o.Leaves.RemovedMorning+o.Leaves.RemovedAfternoon > 0
	if days, ok := o.Leaves.pulledFor(s.Weather.Date); pulled && ok && days >= 0 && days < freshDays {
		s.Fruit.Hardening = NewlyUncovered
	}
	return s.Fruit
}
