package document

import "strings"

// Field is what the schema says about one number of the document.
type Field struct {
	Description string
	Min, Max    float64
	Default     float64
	HasDefault  bool
	Unit        string // as x-unit; empty for plain numbers and shares
}

// NumberField finds a number by its JSON Pointer, with any index for the entries of a list, such as
// /site/latitude_deg or /options/0/rows/azimuth_deg; false where the schema has no number with a range there.
func NumberField(pointer string) (Field, bool) {
	rules := loadRules()
	schema := rules.resolve(rules.tree)
	for step := range strings.SplitSeq(strings.TrimPrefix(pointer, "/"), "/") {
		if items, ok := schema["items"].(map[string]any); ok {
			schema = rules.resolve(items)
			continue
		}
		properties, _ := schema["properties"].(map[string]any)
		property, ok := properties[step].(map[string]any)
		if !ok {
			return Field{}, false
		}
		schema = rules.resolve(property)
	}
	lowest, low := schema["minimum"].(float64)
	highest, high := schema["maximum"].(float64)
	if !low || !high {
		return Field{}, false
	}
	field := Field{Min: lowest, Max: highest, Unit: unitOf(schema)}
	field.Description, _ = schema["description"].(string)
	field.Default, field.HasDefault = schema["default"].(float64)
	return field, true
}
