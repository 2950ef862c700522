// Package lesson reads the lessons of the page and runs them: the same documents, runs and readings as the page has,
// so that what a lesson says can be held against published values.
package lesson

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"rowlight/sim"
	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
	"rowlight/testdata"
)

// File is where the catalogue stands in the test data.
const File = "lessons/catalogue.json"

// Lesson is one lesson of the catalogue, as far as numbers go.
type Lesson struct {
	Key      string                    `json:"key"`
	Scenario map[string]any            `json:"scenario"` // laid over what all lessons share
	Runs     map[string]map[string]any `json:"runs"`     // further runs, by what they set at paths of the document
	Values   map[string]Reading        `json:"values"`
	Guesses  []string                  `json:"guesses"`
	Answer   Answer                    `json:"answer"`
	Stages   []Stage                   `json:"stages"`
	Tries    []Try                     `json:"tries"`
}

// Stage is one step of a lesson.
type Stage struct {
	Key  string     `json:"key"`
	Rows [][]string `json:"rows"` // a label, then names of values
}

// Try is something to change at the end of a lesson.
type Try struct {
	Key string         `json:"key"`
	Set map[string]any `json:"set"`
}

// Reading is a number that a lesson reads: at a path of the result of a run, where "*" takes the greatest of a list; in
// the chain of the hottest berry of a side at an hour; or the difference Of - Less of two others. Given is a number of
// the literature.
type Reading struct {
	Path  string   `json:"path"`
	Hour  *float64 `json:"hour"` // of a course
	Run   string   `json:"run"`  // empty for the first
	Chain *Chain   `json:"chain"`
	Of    string   `json:"of"`
	Less  string   `json:"less"`
	Given *float64 `json:"given"`
	Unit  string   `json:"unit"`
}

// Chain names a number in the chain of a berry.
type Chain struct {
	Option int           `json:"option"`
	Side   scenario.Side `json:"side"`
	Hour_h float64       `json:"hour"`
	Symbol string        `json:"symbol"`
}

// Answer is the guess that numbers bear out: that of the most or the least, or the one that says that all are alike.
type Answer struct {
	Pick  string            `json:"pick"`
	Of    map[string]string `json:"of"` // value of a guess
	Alike *struct {
		Guess  string  `json:"guess"`
		Within float64 `json:"within"`
	} `json:"alike"`
}

// Load reads the catalogue.
func Load() ([]Lesson, error) {
	text, err := testdata.FS.ReadFile(File)
	if err != nil {
		return nil, err
	}
	var catalogue struct {
		Shared  map[string]any `json:"shared"`
		Lessons []Lesson       `json:"lessons"`
	}
	if err := json.Unmarshal(text, &catalogue); err != nil {
		return nil, fmt.Errorf("%s: %w", File, err)
	}
	for i := range catalogue.Lessons {
		l := &catalogue.Lessons[i]
		l.Scenario = laid(catalogue.Shared, l.Scenario)
	}
	return catalogue.Lessons, nil
}

// laid is one object over another: objects merge name by name, everything else replaces.
func laid(under, over map[string]any) map[string]any {
	merged := maps.Clone(under)
	for key, value := range over {
		inner, isObject := value.(map[string]any)
		if below, was := merged[key].(map[string]any); isObject && was {
			value = laid(below, inner)
		}
		merged[key] = value
	}
	return merged
}

// Document is the scenario of the lesson with values set at paths such as "weather/wind_ms". What it holds must be
// valid, and every path must lead through objects and lists that are there or can be made.
func (l Lesson) Document(set map[string]any) (scenario.Scenario, error) {
	text, err := json.Marshal(l.Scenario)
	if err != nil {
		return scenario.Scenario{}, err
	}
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		return scenario.Scenario{}, err
	}
	for path, value := range set {
		if tree, err = with(tree, strings.Split(path, "/"), value); err != nil {
			return scenario.Scenario{}, fmt.Errorf("%s: %w", path, err)
		}
	}
	if text, err = json.Marshal(tree); err != nil {
		return scenario.Scenario{}, err
	}
	s, faults := document.Parse(text)
	if len(faults) > 0 {
		return s, fmt.Errorf("lesson %s: %+v", l.Key, faults)
	}
	return s, nil
}

// with is a tree with the value at a path set.
func with(tree any, path []string, value any) (any, error) {
	if len(path) == 0 {
		return value, nil
	}
	if list, isList := tree.([]any); isList {
		i, err := strconv.Atoi(path[0])
		if err != nil || i < 0 || i >= len(list) {
			return nil, fmt.Errorf("a list has no %q", path[0])
		}
		list[i], err = with(list[i], path[1:], value)
		return list, err
	}
	object, isObject := tree.(map[string]any)
	if !isObject {
		object = map[string]any{}
	}
	inner, err := with(object[path[0]], path[1:], value)
	object[path[0]] = inner
	return object, err
}

// Run runs the lesson, with values set on top of each of its runs, and reads its numbers. A number that a result does
// not have is left out.
func (l Lesson) Run(set map[string]any) (map[string]float64, error) {
	read := map[string]float64{}
	engine := sim.NewEngine()
	for _, run := range append(slices.Sorted(maps.Keys(l.Runs)), "") {
		all := maps.Clone(l.Runs[run])
		if all == nil {
			all = map[string]any{}
		}
		maps.Copy(all, set)
		if err := l.read(engine, run, all, read); err != nil {
			return nil, err
		}
	}
	for name, reading := range l.Values {
		if whole, there := read[reading.Of]; there {
			read[name] = whole - read[reading.Less]
		}
	}
	return read, nil
}

// free never ends a run.
func free() error { return nil }

// read adds the numbers of one run.
func (l Lesson) read(engine *sim.Engine, run string, set map[string]any, read map[string]float64) error {
	s, err := l.Document(set)
	if err != nil {
		return err
	}
	result, err := engine.Day(s, free, nil)
	if err != nil {
		return err
	}
	text, err := json.Marshal(result.Result)
	if err != nil {
		return err
	}
	var day any
	if err := json.Unmarshal(text, &day); err != nil {
		return err
	}
	for name, reading := range l.Values {
		switch {
		case reading.Run != run:
		case reading.Chain != nil:
			if err := chained(engine, s, *reading.Chain, name, read); err != nil {
				return err
			}
		case reading.Path != "":
			if value, there := reading.At(day); there {
				read[name] = value
			}
		}
	}
	return nil
}

// chained adds a number of the chain of a berry.
func chained(engine *sim.Engine, s scenario.Scenario, at Chain, name string, read map[string]float64) error {
	chain, err := engine.Explain(s, sim.Where{Option: at.Option, Side: at.Side, Bunch: -1, Hour_h: at.Hour_h}, free)
	if err != nil {
		return err
	}
	value, known := chain.Value(at.Symbol)
	if !known {
		return fmt.Errorf("%s: the chain has no %s", name, at.Symbol)
	}
	read[name] = value
	return nil
}

// At is the number at the path of a result that was read as JSON; false where there is none.
func (r Reading) At(day any) (value float64, there bool) {
	return r.at(day, strings.Split(r.Path, "/"))
}

func (r Reading) at(tree any, path []string) (value float64, there bool) {
	if len(path) == 0 {
		if course, isList := tree.([]any); isList && r.Hour != nil {
			tree = course[int(*r.Hour*12+0.5)]
		}
		value, there = tree.(float64)
		return value, there
	}
	list, isList := tree.([]any)
	switch {
	case isList && path[0] == "*":
		for _, entry := range list {
			if v, found := r.at(entry, path[1:]); found && (!there || v > value) {
				value, there = v, true
			}
		}
		return value, there
	case isList:
		i, err := strconv.Atoi(path[0])
		if err != nil || i >= len(list) {
			return 0, false
		}
		return r.at(list[i], path[1:])
	}
	object, _ := tree.(map[string]any)
	return r.at(object[path[0]], path[1:])
}

// BorneOut is the guess that numbers bear out.
func (l Lesson) BorneOut(read map[string]float64) string {
	sign := 1.0
	if l.Answer.Pick == "least" {
		sign = -1
	}
	guesses := slices.SortedFunc(maps.Keys(l.Answer.Of), func(a, b string) int {
		if sign*read[l.Answer.Of[a]] > sign*read[l.Answer.Of[b]] {
			return -1
		}
		return 1
	})
	lead := sign * (read[l.Answer.Of[guesses[0]]] - read[l.Answer.Of[guesses[1]]])
	if l.Answer.Alike != nil && lead < l.Answer.Alike.Within {
		return l.Answer.Alike.Guess
	}
	return guesses[0]
}
