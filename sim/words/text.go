// Package words turns results and faults into sentences: a code with parameters, whose text stands in
// a catalogue (JSON) that the page and the command line share.
//
// A template holds parameters in braces, with a tag that says how to write them:
//
//	{name}                        as it is
//	{name:word}                   looked up in the catalogue as word.…
//	{name:temperature}            [°C]
//	{name:temperatureDifference}  [K]; in °F times 1.8 and no more
//	{name:degreeHours}            [K h]
//	{name:clock}                  clock hour [h] as 15:30
//	{name:hours}                  [h]
//	{name:percent}                share [0–1]
//	{name:height}                 [m]
//	{name:prunings}               [kg/m]
//	{name:leafToFruit}            [m²/kg]
//	{name:count}                  whole number
//	{name:number}                 number without unit
//	{name:measure}                number in the unit of the parameter named unit
//	{name:list}                   texts with commas between
//
// A parameter that is not given stays in its braces.
package words

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"strings"
	"sync"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

//go:embed en.json
var english []byte

//go:embed es.json
var spanish []byte

// Style is how texts are written: the language of a catalogue, by its BCP 47 tag, and the units.
// A language without a catalogue is written in English.
type Style struct {
	Language string
	Units    Units
}

// read holds the catalogues once they have been read. It is not made beforehand: a program that writes no text, such as
// the one of the page, is then built without the catalogues.
var read struct {
	once       sync.Once
	catalogues map[string]map[string]string
}

// catalogues reads the embedded catalogues once; a fault in one is a fault of the program.
func catalogues() map[string]map[string]string {
	read.once.Do(func() {
		read.catalogues = map[string]map[string]string{}
		for language, raw := range map[string][]byte{"en": english, "es": spanish} {
			var catalogue map[string]string
			if err := json.Unmarshal(raw, &catalogue); err != nil {
				panic("words: catalogue " + language + ": " + err.Error())
			}
			read.catalogues[language] = catalogue
		}
	})
	return read.catalogues
}

// Text writes the text of a code in a language and metric units.
func Text(language, code string, words map[string]string, values map[string]any) string {
	return Style{Language: language}.Text(code, words, values)
}

// Text writes the text of a code with its words and values. A code that the catalogue lacks is written
// as it is.
func (s Style) Text(code string, words map[string]string, values map[string]any) string {
	template, ok := s.catalogue()[code]
	if !ok {
		return code
	}
	return fill(template, func(name, tag string) (string, bool) {
		if word, ok := words[name]; ok {
			return s.word(word, tag), true
		}
		value, ok := values[name]
		if !ok {
			return "", false
		}
		return s.value(value, tag, values), true
	})
}

// fill puts what is known of each parameter of a template in its place.
func fill(template string, known func(name, tag string) (text string, ok bool)) string {
	var filled strings.Builder
	for {
		plain, rest, opened := strings.Cut(template, "{")
		parameter, after, closed := strings.Cut(rest, "}")
		filled.WriteString(plain)
		if !opened || !closed {
			filled.WriteString(template[len(plain):])
			return filled.String()
		}
		name, tag, _ := strings.Cut(parameter, ":")
		if text, ok := known(name, tag); ok {
			filled.WriteString(text)
		} else {
			filled.WriteString("{" + parameter + "}")
		}
		template = after
	}
}

// Sentence writes a verdict or a comparison.
func (s Style) Sentence(sentence result.Sentence) string {
	values := map[string]any{}
	for name, value := range sentence.Values {
		values[name] = value
	}
	return s.Text(sentence.Code, sentence.Words, values)
}

// Fault writes a fault or notice: field, value, allowed range and what to do.
func (s Style) Fault(fault scenario.Fault) string {
	return s.Text(fault.Code, map[string]string{"field": s.field(fault.Path)}, fault.Values)
}

// field names a field by its path, as options[1].rows.azimuth_deg.
func (s Style) field(pointer string) string {
	if pointer == "" {
		return s.word("document", "word")
	}
	var name strings.Builder
	for step := range strings.SplitSeq(pointer[1:], "/") {
		step = strings.NewReplacer("~1", "/", "~0", "~").Replace(step)
		switch {
		case strings.Trim(step, "0123456789") == "":
			fmt.Fprintf(&name, "[%s]", step)
		case name.Len() == 0:
			name.WriteString(step)
		default:
			name.WriteString("." + step)
		}
	}
	return name.String()
}

// catalogue is the texts of the style's language.
func (s Style) catalogue() map[string]string {
	if catalogue, ok := catalogues()[s.Language]; ok {
		return catalogue
	}
	return catalogues()["en"]
}

// word looks a word up, or leaves it as it is.
func (s Style) word(word, tag string) string {
	if text, ok := s.catalogue()["word."+word]; ok && tag == "word" {
		return text
	}
	return word
}

// value writes one value as its tag says.
func (s Style) value(value any, tag string, values map[string]any) string {
	if texts, ok := value.([]string); ok {
		return strings.Join(texts, ", ")
	}
	number, ok := asNumber(value)
	if !ok {
		return fmt.Sprint(value)
	}
	switch tag {
	case "temperature":
		return Quantity(number, "degC", 1, s.Units)
	case "temperatureDifference":
		return Quantity(number, "K", 1, s.Units)
	case "degreeHours":
		return Quantity(number, "K h", 1, s.Units)
	case "clock":
		return Clock(number)
	case "hours":
		return Quantity(number, "h", 1, s.Units)
	case "count":
		return Quantity(number, "", 0, s.Units)
	case "percent":
		return Quantity(number, "share", 0, s.Units)
	case "height":
		return Quantity(number, "m", 2, s.Units)
	case "prunings":
		return Quantity(number, "kg/m", 2, s.Units)
	case "leafToFruit":
		return Quantity(number, "m2/kg", 1, s.Units)
	case "measure":
		unit, _ := values["unit"].(string)
		return Quantity(number, unit, -1, s.Units)
	default:
		return Quantity(number, "", -1, s.Units)
	}
}

// asNumber reads a value as a number.
func asNumber(value any) (float64, bool) {
	switch value := value.(type) {
	case float64:
		return value, true
	case int:
		return float64(value), true
	default:
		return 0, false
	}
}
