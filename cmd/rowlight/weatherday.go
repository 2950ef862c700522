package main

import (
	"encoding/json"
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/sim/weather"
)

// measuredDay is the flags of a day taken from a weather file.
type measuredDay struct {
	weatherFile
	date string
}

// addFlags gives a command the flags of a weather file.
func (m *measuredDay) addFlags(command *cobra.Command) {
	m.weatherFile.addFlags(command.Flags(), "whose hours and place replace those of the scenario")
	command.Flags().StringVar(&m.date, "date", "", "day of the weather file, as month-day; its hottest day unless given")
}

// check refuses a date without a file.
func (m *measuredDay) check() error {
	if m.date != "" && m.file == "" {
		return fmt.Errorf("--date names a day of a weather file: give the file with --weather")
	}
	return nil
}

// into puts the day of the weather file into a scenario. What was filled or looks odd is told to stderr.
func (m *measuredDay) into(s *scenario.Scenario, stderr io.Writer) error {
	file, err := m.read(*s, stderr)
	if err != nil {
		return err
	}
	month, day, err := m.dayOf(file)
	if err != nil {
		return err
	}
	if err := m.tell(file.Put(month, day, s), stderr); err != nil {
		return err
	}
	return m.recheck(*s)
}

// recheck wants the scenario with its measured day to be a document that can be read again.
func (m *measuredDay) recheck(s scenario.Scenario) error {
	raw, err := json.Marshal(s)
	if err != nil {
		return err
	}
	_, faults := document.Parse(raw)
	return faultsOf(m.file, faults)
}

// dayOf reads the date asked for, or finds the hottest day.
func (m *measuredDay) dayOf(file *weather.File) (month, day int, err error) {
	if m.date == "" {
		hottest, ok := file.Hottest()
		if !ok {
			return 0, 0, &faultsError{m.file, []scenario.Fault{{Code: "fault.file-no-day"}}}
		}
		return hottest.Month, hottest.Day, nil
	}
	date, err := time.Parse("2006-01-02", "2004-"+m.date) // a leap year, for 02-29
	if err != nil {
		return 0, 0, &faultsError{"day", []scenario.Fault{{Code: "fault.month-day", Path: "/--date", Values: map[string]any{"value": m.date}}}}
	}
	return int(date.Month()), date.Day(), nil
}
