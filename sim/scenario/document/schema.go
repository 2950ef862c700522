package document

import (
	"cmp"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"rowlight/sim/scenario"
)

// rules is the schema as a tree.
type rules struct{ tree map[string]any }

// loadRules reads the embedded schema once; a fault in it is a fault of the program.
var loadRules = sync.OnceValue(func() rules {
	var tree map[string]any
	if err := json.Unmarshal(scenario.Schema(), &tree); err != nil {
		panic("document: schema: " + err.Error())
	}
	return rules{tree}
})

// schemaFaults lists every place where a tree does not fit the schema, in the order of their paths.
func schemaFaults(tree map[string]any) []scenario.Fault {
	rules := loadRules()
	var faults []scenario.Fault
	rules.check(tree, rules.tree, nil, func(f scenario.Fault) { faults = append(faults, f) })
	slices.SortStableFunc(faults, func(a, b scenario.Fault) int { return cmp.Compare(a.Path, b.Path) })
	return faults
}

// field is the schema that a reference names.
func (r rules) field(reference string) map[string]any {
	_, fragment, _ := strings.Cut(reference, "#/")
	node, _ := lookUp(r.tree, strings.Split(fragment, "/")).(map[string]any)
	return node
}

// unitOf is the unit of a field; empty for plain numbers and shares.
func unitOf(field map[string]any) string {
	unit, _ := field["x-unit"].(string)
	if unit == "1" {
		return ""
	}
	return unit
}

// least is the smallest number of items of a list.
func least(field map[string]any) any {
	if count, ok := field["minItems"]; ok {
		return count
	}
	return 0.0
}

// lookUp follows keys and indices into a tree; nil where there is nothing.
func lookUp(tree any, path []string) any {
	for _, key := range path {
		switch node := tree.(type) {
		case map[string]any:
			tree = node[key]
		case []any:
			i, err := strconv.Atoi(key)
			if err != nil || i < 0 || i >= len(node) {
				return nil
			}
			tree = node[i]
		default:
			return nil
		}
	}
	return tree
}

// escaped writes a name as JSON Pointers have it. It is made once: making it takes longer than all else that a document costs.
var escaped = strings.NewReplacer("~", "~0", "/", "~1")

// pointer writes a path as a JSON Pointer (RFC 6901).
func pointer(path []string) string {
	var text strings.Builder
	for _, key := range path {
		text.WriteByte('/')
		text.WriteString(escaped.Replace(key))
	}
	return text.String()
}

// kindOf names the JSON type of a value.
func kindOf(value any) string {
	switch value.(type) {
	case nil:
		return "null"
	case bool:
		return "boolean"
	case float64:
		return "number"
	case string:
		return "string"
	case []any:
		return "array"
	default:
		return "object"
	}
}

// short is a value as a fault repeats it: numbers, truth values and texts as they are, long texts cut, lists and
// objects left out.
func short(value any) any {
	const longest = 60
	switch value := value.(type) {
	case string:
		if utf8.RuneCountInString(value) > longest {
			return string([]rune(value)[:longest]) + "…"
		}
		return value
	case float64, bool:
		return value
	default:
		return nil
	}
}

// texts writes values as texts.
func texts(values []any) []string {
	var out []string
	for _, value := range values {
		out = append(out, fmt.Sprint(value))
	}
	return out
}
