package scenario

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// Default is the scenario that a newcomer sees: one invented site on a hot July day, with VSP and
// sprawl side by side in north-south rows.
func Default() Scenario {
	s := bare()
	s.Name = "Stony Bend"
	s.Note = "Invented site and weather, for demonstration only."
	for _, key := range []string{"vsp-spurs", "sprawl"} {
		form, _ := FormByKey(key)
		s.Options = append(s.Options, form.Option)
	}
	return s
}

// bare is a scenario with every field at the default of its tag and without options.
func bare() Scenario {
	var s Scenario
	fillDefaults(reflect.ValueOf(&s).Elem())
	return s
}

// fillDefaults sets every field of a struct, and of the structs in it, to the default of its tag.
// Fields without a default keep their value.
func fillDefaults(target reflect.Value) {
	for i := range target.NumField() {
		field, tag := target.Field(i), target.Type().Field(i).Tag.Get("jsonschema")
		if field.Kind() == reflect.Struct {
			fillDefaults(field)
			continue
		}
		if text, ok := tagDefault(tag); ok {
			setFromText(field, text)
		}
	}
}

// tagDefault reads default=… from a `jsonschema` tag.
func tagDefault(tag string) (text string, ok bool) {
	for part := range strings.SplitSeq(tag, ",") {
		if value, found := strings.CutPrefix(part, "default="); found {
			return value, true
		}
	}
	return "", false
}

// setFromText writes a tag's text into a field; a tag that does not fit its field is a fault of the program.
func setFromText(field reflect.Value, text string) {
	var err error
	switch field.Kind() {
	case reflect.String:
		field.SetString(text)
	case reflect.Float64:
		var number float64
		number, err = strconv.ParseFloat(text, 64)
		field.SetFloat(number)
	case reflect.Int:
		var number int64
		number, err = strconv.ParseInt(text, 10, 64)
		field.SetInt(number)
	default:
		err = fmt.Errorf("no default for a field of kind %s", field.Kind())
	}
	if err != nil {
		panic("scenario: default " + strconv.Quote(text) + ": " + err.Error())
	}
}

// plainScenario, plainOption and plainWire decode without filling in defaults.
type (
	plainScenario Scenario
	plainOption   Option
	plainWire     Wire
)

// UnmarshalJSON decodes a document over the defaults: what it does not say takes the default of its tag.
func (s *Scenario) UnmarshalJSON(raw []byte) error {
	*s = bare()
	return json.Unmarshal(raw, (*plainScenario)(s))
}

// UnmarshalJSON decodes an option over the sizes of its form. An unknown form leaves the defaults of
// the tags. A row azimuth of 180° is read as the same row at 0°.
func (o *Option) UnmarshalJSON(raw []byte) error {
	fillDefaults(reflect.ValueOf(o).Elem())
	named := struct {
		Form string `json:"form"`
	}{Form: o.Form}
	if err := json.Unmarshal(raw, &named); err != nil {
		return err
	}
	if form, ok := FormByKey(named.Form); ok {
		*o = form.Option
	}
	err := json.Unmarshal(raw, (*plainOption)(o))
	o.turnToZero()
	return err
}

// turnToZero describes a row at 180° as the row at 0° that it is: what lay to its right lies to the left.
func (o *Option) turnToZero() {
	if o.Rows.Azimuth_deg != 180 {
		return
	}
	o.Rows.Azimuth_deg = 0
	for i := range o.Trellis.Wires {
		if offset := &o.Trellis.Wires[i].Offset_m; *offset != 0 {
			*offset = -*offset
		}
	}
}

// UnmarshalJSON decodes a wire over the defaults of its tags.
func (w *Wire) UnmarshalJSON(raw []byte) error {
	*w = Wire{}
	fillDefaults(reflect.ValueOf(w).Elem())
	return json.Unmarshal(raw, (*plainWire)(w))
}

// Decode reads a document over the defaults without checking any range; Parse checks. It is for
// programs that receive a document which has passed Parse.
func Decode(raw []byte) (Scenario, error) {
	var s Scenario
	err := json.Unmarshal(raw, &s)
	return s, err
}
