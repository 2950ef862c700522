package schema_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rowlight/cmd/check/schema"
	"rowlight/sim/scenario"
)

// root is the module's folder, seen from this package.
const root = "../../.."

func TestCommittedSchemasAreFresh(t *testing.T) {
	stale, err := schema.Stale(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range stale {
		t.Errorf("%s does not match the Go types; go run ./cmd/check -fix writes it anew", path)
	}
}

func TestWriteThenNothingIsStale(t *testing.T) {
	copied := t.TempDir()
	for _, folder := range []string{"sim/scenario", "sim/result"} {
		if err := os.CopyFS(filepath.Join(copied, folder), os.DirFS(filepath.Join(root, folder))); err != nil {
			t.Fatal(err)
		}
	}
	target := filepath.Join(copied, "sim/result/schema.json")
	if err := os.WriteFile(target, []byte("{}"), 0o644); err != nil {
		t.Fatal(err)
	}
	want := []string{"sim/result/schema.json"}
	if stale, err := schema.Stale(copied); err != nil || !cmp.Equal(want, stale) {
		t.Fatalf("spoiled result schema: stale %v, error %v", stale, err)
	}
	if err := schema.Write(copied); err != nil {
		t.Fatal(err)
	}
	if stale, err := schema.Stale(copied); err != nil || len(stale) != 0 {
		t.Errorf("after writing: stale %v, error %v", stale, err)
	}
}

// property is what the page reads of one field.
type property struct {
	Description string   `json:"description"`
	Type        string   `json:"type"`
	Ref         string   `json:"$ref"`
	Minimum     *float64 `json:"minimum"`
	Maximum     *float64 `json:"maximum"`
	Default     any      `json:"default"`
	Unit        string   `json:"x-unit"`
	Step        float64  `json:"x-step"`
}

type definitions struct {
	Defs map[string]struct {
		Properties map[string]property `json:"properties"`
		Additional any                 `json:"additionalProperties"`
	} `json:"$defs"`
}

func TestScenarioFieldsAreDescribed(t *testing.T) {
	var read definitions
	if err := json.Unmarshal(scenario.Schema(), &read); err != nil {
		t.Fatal(err)
	}
	for name, definition := range read.Defs {
		if definition.Additional != nil {
			t.Errorf("%s refuses unknown fields", name)
		}
		for key, field := range definition.Properties {
			if field.Description == "" && field.Ref == "" {
				t.Errorf("%s.%s has no description", name, key)
			}
			if field.Type == "number" && (field.Minimum == nil || field.Maximum == nil || field.Unit == "") {
				t.Errorf("%s.%s lacks a range or a unit: %+v", name, key, field)
			}
			if field.Type == "number" && name != "Hour" && (field.Default == nil || field.Step <= 0) {
				t.Errorf("%s.%s lacks a default or a slider step: %+v", name, key, field)
			}
		}
	}
	if len(read.Defs) < 10 {
		t.Errorf("only %d definitions", len(read.Defs))
	}
}

func TestDefaultsOfSchemaAreThoseOfTheTypes(t *testing.T) {
	var read definitions
	if err := json.Unmarshal(scenario.Schema(), &read); err != nil {
		t.Fatal(err)
	}
	decoded, err := scenario.Decode([]byte(`{}`))
	if err != nil {
		t.Fatal(err)
	}
	for name, value := range map[string]any{"Site": decoded.Site, "Weather": decoded.Weather, "Fruit": decoded.Fruit, "Limits": decoded.Limits} {
		written, err := json.Marshal(value)
		if err != nil {
			t.Fatal(err)
		}
		var fields map[string]any
		if err := json.Unmarshal(written, &fields); err != nil {
			t.Fatal(err)
		}
		for key, field := range read.Defs[name].Properties {
			if field.Default != nil && !cmp.Equal(field.Default, fields[key]) {
				t.Errorf("%s.%s: schema %v, Go %v", name, key, field.Default, fields[key])
			}
		}
	}
}
