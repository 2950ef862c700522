package document

import (
	"math"
	"slices"
	"strconv"
	"time"
	"unicode/utf8"

	"rowlight/sim/scenario"
)

// Checked are the words of JSON Schema (draft 2020-12) that check understands besides $ref; the schema uses no
// others that could fail a document. With a validator that knows them all the page would load 0.4 MB more. The tests
// hold check against such a validator.
func Checked() []string {
	return []string{"type", "enum", "minimum", "maximum", "maxLength", "minItems", "maxItems", "required", "format", "properties", "items"}
}

// check visits every fault of a value and of all within it.
func (r rules) check(value any, schema map[string]any, path []string, visit func(scenario.Fault)) {
	schema = r.resolve(schema)
	at := checked{schema: schema, path: pointer(path), visit: visit}
	if want, ok := schema["type"].(string); ok && !fits(value, want) {
		at.fault("fault.type", map[string]any{"value": short(value), "got": kindOf(value), "want": []string{want}})
		return
	}
	if allowed, ok := schema["enum"].([]any); ok && !slices.Contains(allowed, value) {
		at.fault("fault.choice", map[string]any{"value": short(value), "allowed": texts(allowed)})
	}
	switch value := value.(type) {
	case float64:
		at.number(value)
	case string:
		at.text(value)
	case []any:
		at.count(len(value))
		items, _ := schema["items"].(map[string]any)
		for i, item := range value {
			r.check(item, items, append(slices.Clone(path), strconv.Itoa(i)), visit)
		}
	case map[string]any:
		at.required(value)
		properties, _ := schema["properties"].(map[string]any)
		for _, name := range sortedKeys(value) {
			if property, ok := properties[name].(map[string]any); ok {
				r.check(value[name], property, append(slices.Clone(path), name), visit)
			}
		}
	}
}

// checked is one value with its schema.
type checked struct {
	schema map[string]any
	path   string // JSON Pointer
	visit  func(scenario.Fault)
}

// fault visits a fault; one of a list or an object does not repeat it.
func (c checked) fault(code string, values map[string]any) {
	if values["value"] == nil {
		delete(values, "value")
	}
	c.visit(scenario.Fault{Code: code, Path: c.path, Values: values})
}

func (c checked) number(value float64) {
	lowest, low := c.schema["minimum"].(float64)
	highest, high := c.schema["maximum"].(float64)
	if (!low || value >= lowest) && (!high || value <= highest) {
		return
	}
	values := map[string]any{"value": value, "min": c.schema["minimum"], "max": c.schema["maximum"]}
	if unit := unitOf(c.schema); unit != "" {
		values["unit"] = unit
	}
	c.fault("fault.range", values)
}

func (c checked) text(value string) {
	if most, ok := c.schema["maxLength"].(float64); ok && utf8.RuneCountInString(value) > int(most) {
		c.visit(scenario.Fault{Code: "fault.length", Path: c.path, Values: map[string]any{"count": utf8.RuneCountInString(value), "max": most}})
	}
	if c.schema["format"] == "date" {
		if _, err := time.Parse(time.DateOnly, value); err != nil {
			c.fault("fault.date", map[string]any{"value": short(value)})
		}
	}
}

func (c checked) count(n int) {
	most, bounded := c.schema["maxItems"].(float64)
	if fewest, _ := least(c.schema).(float64); n < int(fewest) || bounded && n > int(most) {
		c.visit(scenario.Fault{Code: "fault.count", Path: c.path, Values: map[string]any{"count": n, "min": fewest, "max": c.schema["maxItems"]}})
	}
}

// required visits one fault for each field that has no default and is not there.
func (c checked) required(object map[string]any) {
	names, _ := c.schema["required"].([]any)
	for _, name := range texts(names) {
		if _, ok := object[name]; !ok {
			c.visit(scenario.Fault{Code: "fault.missing", Path: c.path + pointer([]string{name})})
		}
	}
}

// fits reports whether a value is of a JSON type; whole numbers are integers however they are written.
func fits(value any, want string) bool {
	if number, ok := value.(float64); ok && want == "integer" {
		return number == math.Trunc(number)
	}
	return kindOf(value) == want
}
