package document

import (
	"slices"
	"strconv"
	"strings"

	"rowlight/sim/scenario"
)

// Notices names the fields of a document that this program does not know. They are kept and not
// read: no fault, but a reader should know that they change nothing. Text that is not JSON has none.
func Notices(raw []byte) []scenario.Fault {
	tree, fault := readTree(raw)
	if fault != nil {
		return nil
	}
	var notices []scenario.Fault
	unknownNames(tree, func(path []string, known string) {
		if known == "" {
			notices = append(notices, scenario.Fault{Code: "notice.unknown", Path: pointer(path)})
		}
	})
	return notices
}

// misspeltFaults names the fields that differ from a known one by capitals only. They would be read
// by a decoder that is lax about capitals and passed over by the schema, so they are refused.
func misspeltFaults(tree map[string]any) []scenario.Fault {
	var faults []scenario.Fault
	unknownNames(tree, func(path []string, known string) {
		if known != "" {
			faults = append(faults, scenario.Fault{Code: "fault.capitals", Path: pointer(path), Values: map[string]any{
				"value": path[len(path)-1], "want": known}})
		}
	})
	return faults
}

// unknownNames visits every name that the schema does not hold, in the order of their paths; known is
// the name of the schema that differs from it by capitals only, or empty.
func unknownNames(tree map[string]any, visit func(path []string, known string)) {
	rules := loadRules()
	rules.walkNames(tree, rules.tree, nil, visit)
}

// walkNames compares one value with its schema and goes on into what both hold.
func (r rules) walkNames(value any, schema map[string]any, path []string, visit func([]string, string)) {
	schema = r.resolve(schema)
	switch value := value.(type) {
	case map[string]any:
		properties, _ := schema["properties"].(map[string]any)
		for _, name := range sortedKeys(value) {
			below := append(slices.Clone(path), name)
			if property, ok := properties[name].(map[string]any); ok {
				r.walkNames(value[name], property, below, visit)
			} else if properties != nil {
				visit(below, sameButCapitals(name, properties))
			}
		}
	case []any:
		items, _ := schema["items"].(map[string]any)
		for i, item := range value {
			r.walkNames(item, items, append(slices.Clone(path), strconv.Itoa(i)), visit)
		}
	}
}

// resolve follows a reference to a definition of the schema.
func (r rules) resolve(schema map[string]any) map[string]any {
	reference, ok := schema["$ref"].(string)
	if !ok {
		return schema
	}
	return r.field(reference)
}

// sameButCapitals finds the property whose name differs by capitals only.
func sameButCapitals(name string, properties map[string]any) string {
	for _, known := range sortedKeys(properties) {
		if strings.EqualFold(known, name) {
			return known
		}
	}
	return ""
}

// sortedKeys lists the names of an object in a fixed order.
func sortedKeys(object map[string]any) []string {
	var names []string
	for name := range object {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}
