package document_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/santhosh-tekuri/jsonschema/v6/kind"
	"pgregory.net/rapid"

	"rowlight/sim/scenario"
	"rowlight/sim/scenario/document"
)

// judge is a whole validator of JSON Schema with the schema of scenarios.
func judge(t *testing.T) *jsonschema.Schema {
	t.Helper()
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	if err := compiler.AddResource("scenario.json", schemaTree(t)); err != nil {
		t.Fatal(err)
	}
	return compiler.MustCompile("scenario.json")
}

func schemaTree(t *testing.T) (tree map[string]any) {
	t.Helper()
	if err := json.Unmarshal(scenario.Schema(), &tree); err != nil {
		t.Fatal(err)
	}
	return tree
}

// TestFaultsAreThoseOfAWholeValidator spoils documents at random: Parse finds faults of the schema at the paths of the
// validator, of the same kinds.
func TestFaultsAreThoseOfAWholeValidator(t *testing.T) {
	schema := judge(t)
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		raw, err := json.Marshal(scenario.Default())
		if err != nil {
			t.Fatal(err)
		}
		var tree map[string]any
		if err := json.Unmarshal(raw, &tree); err != nil {
			t.Fatal(err)
		}
		// Of all texts only these two have rules.
		tree["name"] = rapid.SampledFrom(others["text"]).Draw(t, "name")
		tree["weather"].(map[string]any)["date"] = rapid.SampledFrom(others["text"]).Draw(t, "date")
		for range rapid.IntRange(0, 4).Draw(t, "faults") {
			spoil(t, tree)
		}
		tree["schemaVersion"] = 1.0
		raw, _ = json.Marshal(tree)
		agree(t, schema, raw, seen)
	})
	for _, raw := range oneOfEach { // draws may lack one
		agree(t, schema, []byte(raw), seen)
	}
	for _, code := range ofSchema {
		if seen[code] == 0 {
			t.Errorf("no document had %s: %v", code, seen)
		}
	}
}

// oneOfEach are documents that together have a fault of every code that a schema can forbid.
var oneOfEach = []string{
	`{}`, `{"options":[]}`, `{"options":[{}],"site":7}`, `{"options":[{}],"site":{"latitude_deg":91,"floor":"lava"}}`,
	`{"options":[{}],"weather":{"date":"soon"}}`, `{"options":[{}],"name":"` + strings.Repeat("n", 81) + `"}`,
}

// agree fails unless Parse finds the faults of the schema that the validator finds, and counts them.
func agree(t rapid.TB, schema *jsonschema.Schema, raw []byte, seen map[string]int) {
	t.Helper()
	var tree any
	if err := json.Unmarshal(raw, &tree); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{}
	if failed, ok := schema.Validate(tree).(*jsonschema.ValidationError); ok {
		leaves(failed, want)
	}
	got := map[string]string{}
	_, faults := document.Parse(raw)
	for _, fault := range faults {
		// All dates but that of the day may be empty, which is a rule beside the schema.
		if slices.Contains(ofSchema, fault.Code) && !(fault.Code == "fault.date" && fault.Path != "/weather/date") {
			got[fault.Path] = fault.Code
			seen[fault.Code]++
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Fatalf("%s\nvalidator (-), Parse (+):\n%s", raw, diff)
	}
}

// ofSchema are the codes of what a schema can forbid.
var ofSchema = []string{"fault.type", "fault.range", "fault.choice", "fault.date", "fault.length", "fault.count", "fault.missing"}

// leaves collects the paths of the innermost errors with the codes that Parse gives them.
func leaves(failed *jsonschema.ValidationError, codes map[string]string) {
	for _, cause := range failed.Causes {
		leaves(cause, codes)
	}
	if len(failed.Causes) > 0 {
		return
	}
	at := failed.InstanceLocation
	if missing, ok := failed.ErrorKind.(*kind.Required); ok {
		for _, name := range missing.Missing {
			codes["/"+strings.Join(append(slices.Clone(at), name), "/")] = "fault.missing"
		}
		return
	}
	codes["/"+strings.Join(at, "/")] = codeOf(failed.ErrorKind)
}

// codeOf is the code of a fault that a validator found.
func codeOf(found jsonschema.ErrorKind) string {
	switch found.(type) {
	case *kind.Type:
		return "fault.type"
	case *kind.Minimum, *kind.Maximum, *kind.ExclusiveMinimum, *kind.ExclusiveMaximum:
		return "fault.range"
	case *kind.Enum:
		return "fault.choice"
	case *kind.Format:
		return "fault.date"
	case *kind.MinLength, *kind.MaxLength:
		return "fault.length"
	case *kind.MinItems, *kind.MaxItems:
		return "fault.count"
	}
	return fmt.Sprintf("%T", found)
}

// place is where a value stands in a tree.
type place struct {
	set  func(any)
	gone func() // nil in lists
	sort string
}

// spoil puts something else in one place of a tree, or takes it away: first the kind of the place is drawn, since
// numbers are the most.
func spoil(t *rapid.T, tree map[string]any) {
	byKind := map[string][]place{}
	places(tree, func(p place) { byKind[p.sort] = append(byKind[p.sort], p) })
	kind := rapid.SampledFrom(slices.Sorted(maps.Keys(byKind))).Draw(t, "kind")
	at := rapid.SampledFrom(byKind[kind]).Draw(t, "place")
	if at.gone != nil && rapid.IntRange(0, 9).Draw(t, "gone") == 0 {
		at.gone()
		return
	}
	if rapid.Bool().Draw(t, "of another kind") {
		kind = rapid.SampledFrom(slices.Sorted(maps.Keys(others))).Draw(t, "other kind")
	}
	// A copy, or a second fault within it would spoil the others.
	raw, err := json.Marshal(rapid.SampledFrom(others[kind]).Draw(t, "value"))
	if err != nil {
		t.Fatal(err)
	}
	var value any
	if err := json.Unmarshal(raw, &value); err != nil {
		t.Fatal(err)
	}
	at.set(value)
}

// others are values that some field forbids, by kind.
var others = map[string][]any{
	"null": {nil}, "truth": {true, false}, "number": {-1e9, 1e9, 0.5, 3.0, 1e300},
	"text":   {"", "2026-02-30", "2026-07-01", "vsp", strings.Repeat("é", 3000), "7"},
	"list":   {[]any{}, slices.Repeat([]any{map[string]any{}}, 40), []any{nil}},
	"object": {map[string]any{}},
}

// places visits every place below a value, in an order of its own that stays.
func places(value any, visit func(place)) {
	switch node := value.(type) {
	case map[string]any:
		for _, key := range slices.Sorted(maps.Keys(node)) {
			visit(place{func(v any) { node[key] = v }, func() { delete(node, key) }, kindOf(node[key])})
			places(node[key], visit)
		}
	case []any:
		for i := range node {
			visit(place{func(v any) { node[i] = v }, nil, kindOf(node[i])})
			places(node[i], visit)
		}
	}
}

func kindOf(value any) string {
	switch value.(type) {
	case nil:
		return "null"
	case bool:
		return "truth"
	case float64:
		return "number"
	case string:
		return "text"
	case []any:
		return "list"
	}
	return "object"
}

// TestSchemaSaysNothingUnchecked looks for words of the schema that Parse would pass over.
func TestSchemaSaysNothingUnchecked(t *testing.T) {
	silent := []string{"$ref", "$defs", "$schema", "description", "default", "x-unit", "x-step", "title"}
	var walk func(node map[string]any)
	walk = func(node map[string]any) {
		for word, value := range node {
			if !slices.Contains(silent, word) && !slices.Contains(document.Checked(), word) {
				t.Errorf("the schema says %q, which Parse passes over", word)
			}
			below, ok := value.(map[string]any)
			switch {
			case !ok:
			case word == "properties" || word == "$defs":
				for _, schema := range below {
					walk(schema.(map[string]any))
				}
			case word == "items":
				walk(below)
			}
		}
	}
	walk(schemaTree(t))
}
