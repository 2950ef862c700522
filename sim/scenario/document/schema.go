package document

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/santhosh-tekuri/jsonschema/v6/kind"

	"rowlight/sim/scenario"
)

// address names the embedded schema inside the validator; nothing is ever fetched.
const address = "scenario.json"

// rules is the schema twice: compiled for validation, and as a tree to look up ranges and units.
type rules struct {
	compiled *jsonschema.Schema
	tree     map[string]any
}

// loadRules compiles the embedded schema once; a fault in it is a fault of the program.
var loadRules = sync.OnceValue(func() rules {
	var tree map[string]any
	if err := json.Unmarshal(scenario.Schema(), &tree); err != nil {
		panic("document: schema: " + err.Error())
	}
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	if err := compiler.AddResource(address, tree); err != nil {
		panic("document: schema: " + err.Error())
	}
	return rules{compiler.MustCompile(address), tree}
})

// schemaFaults lists every place where a tree does not fit the schema, in the order of their paths.
func schemaFaults(tree map[string]any) []scenario.Fault {
	rules := loadRules()
	err := rules.compiled.Validate(tree)
	if err == nil {
		return nil
	}
	var failed *jsonschema.ValidationError
	if !errors.As(err, &failed) {
		return []scenario.Fault{{Code: "fault.unreadable", Values: map[string]any{"detail": err.Error()}}}
	}
	var faults []scenario.Fault
	collect(failed, func(leaf *jsonschema.ValidationError) {
		faults = append(faults, rules.faultsOf(leaf, tree)...)
	})
	slices.SortStableFunc(faults, func(a, b scenario.Fault) int { return cmp.Compare(a.Path, b.Path) })
	return faults
}

// collect visits the innermost errors: the outer ones only say that something inside failed.
func collect(failed *jsonschema.ValidationError, visit func(*jsonschema.ValidationError)) {
	if len(failed.Causes) == 0 {
		visit(failed)
	}
	for _, cause := range failed.Causes {
		collect(cause, visit)
	}
}

// faultsOf says one error of the validator in the codes of the catalogue.
func (r rules) faultsOf(leaf *jsonschema.ValidationError, tree map[string]any) []scenario.Fault {
	value := lookUp(tree, leaf.InstanceLocation)
	field := r.field(leaf.SchemaURL)
	fault := scenario.Fault{Path: pointer(leaf.InstanceLocation), Values: map[string]any{}}
	if said := short(value); said != nil {
		fault.Values["value"] = said
	}
	switch what := leaf.ErrorKind.(type) {
	case *kind.Type:
		fault.Code = "fault.type"
		fault.Values["got"], fault.Values["want"] = kindOf(value), what.Want
	case *kind.Minimum, *kind.Maximum:
		fault.Code = "fault.range"
		fault.Values["min"], fault.Values["max"] = field["minimum"], field["maximum"]
		if unit := unitOf(field); unit != "" {
			fault.Values["unit"] = unit
		}
	case *kind.Enum:
		fault.Code = "fault.choice"
		fault.Values["allowed"] = texts(what.Want)
	case *kind.Format:
		fault.Code = "fault.date"
	case *kind.MaxLength:
		fault.Code, fault.Values = "fault.length", map[string]any{"count": what.Got, "max": what.Want}
	case *kind.MinItems:
		fault.Code, fault.Values = "fault.count", map[string]any{"count": what.Got, "min": what.Want, "max": field["maxItems"]}
	case *kind.MaxItems:
		fault.Code, fault.Values = "fault.count", map[string]any{"count": what.Got, "min": least(field), "max": what.Want}
	case *kind.Required:
		return missing(fault.Path, what.Missing)
	default:
		fault.Code, fault.Values = "fault.unreadable", map[string]any{"detail": fmt.Sprint(leaf)}
	}
	return []scenario.Fault{fault}
}

// missing makes one fault for each field that has no default and is not there.
func missing(path string, names []string) []scenario.Fault {
	var faults []scenario.Fault
	for _, name := range names {
		faults = append(faults, scenario.Fault{Code: "fault.missing", Path: path + pointer([]string{name})})
	}
	return faults
}

// field is the schema of one field, by the address that the validator gives for it.
func (r rules) field(url string) map[string]any {
	_, fragment, _ := strings.Cut(url, "#/")
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

// pointer writes a path as a JSON Pointer (RFC 6901).
func pointer(path []string) string {
	var text strings.Builder
	for _, key := range path {
		text.WriteByte('/')
		text.WriteString(strings.NewReplacer("~", "~0", "/", "~1").Replace(key))
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
