// Package schema makes the JSON Schemas of the scenario and of the results from their Go types:
// ranges, defaults, units and slider steps from the tags, descriptions from the comments.
package schema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"

	"github.com/invopop/jsonschema"

	"rowlight/sim/result"
	"rowlight/sim/scenario"
)

// module is the import path of the folder that holds the sources.
const module = "rowlight"

// file is one generated schema and what makes it.
type file struct {
	path string // below the module's folder
	make func(root string) ([]byte, error)
}

// files lists every generated schema.
func files() []file {
	return []file{
		{"sim/scenario/schema.json", Scenario},
		{"sim/result/schema.json", Result},
	}
}

// Scenario makes the schema of the input document from the sources below root, the module's folder.
// Nothing unknown is an error and only what has no default is required.
func Scenario(root string) ([]byte, error) {
	return reflected(root, scenario.Scenario{}, &jsonschema.Reflector{RequiredFromJSONSchemaTags: true})
}

// Result makes the schema of a day's result from the sources below root.
func Result(root string) ([]byte, error) {
	return reflected(root, result.Day{}, &jsonschema.Reflector{})
}

// Write makes every schema and writes it into the sources below root.
func Write(root string) error {
	for _, f := range files() {
		made, err := f.make(root)
		if err != nil {
			return fmt.Errorf("%s: %w", f.path, err)
		}
		if err := os.WriteFile(filepath.Join(root, f.path), made, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// Stale lists the committed schemas that differ from the ones that the types make now.
func Stale(root string) ([]string, error) {
	var stale []string
	for _, f := range files() {
		made, err := f.make(root)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.path, err)
		}
		committed, err := os.ReadFile(filepath.Join(root, f.path))
		if err != nil && !os.IsNotExist(err) {
			return nil, err
		}
		if !bytes.Equal(made, committed) {
			stale = append(stale, f.path)
		}
	}
	return stale, nil
}

// reflected makes the schema of one value.
func reflected(root string, value any, reflector *jsonschema.Reflector) ([]byte, error) {
	comments, err := comments(root, "sim/scenario", "sim/result")
	if err != nil {
		return nil, err
	}
	reflector.Anonymous = true
	reflector.AllowAdditionalProperties = true
	reflector.CommentMap = comments
	reflector.Namer = name
	made := reflector.Reflect(value)
	tidy(made)
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	err = encoder.Encode(made)
	return text.Bytes(), err
}

// comments reads the Go comments of folders below root, keyed by import path, type and field.
func comments(root string, folders ...string) (map[string]string, error) {
	absolute, err := filepath.Abs(root)
	if err != nil {
		return nil, err
	}
	var reader jsonschema.Reflector
	for _, folder := range folders {
		path := filepath.Join(absolute, folder)
		if err := reader.AddGoComments("", path, jsonschema.WithFullComment()); err != nil {
			return nil, err
		}
	}
	byImport := map[string]string{}
	for key, text := range reader.CommentMap {
		if below, ok := strings.CutPrefix(filepath.ToSlash(key), filepath.ToSlash(absolute)); ok {
			byImport[module+below] = strings.Join(strings.Fields(text), " ")
		}
	}
	return byImport, nil
}

// name keeps the two types called Option apart.
func name(t reflect.Type) string {
	if t == reflect.TypeFor[result.Option]() {
		return "OptionResult"
	}
	return t.Name()
}

// tidy writes slider steps as numbers, in a schema and in all below it.
func tidy(s *jsonschema.Schema) {
	if step, ok := s.Extras["x-step"].(string); ok {
		s.Extras["x-step"] = json.Number(step)
	}
	for _, definition := range s.Definitions {
		tidy(definition)
	}
	if s.Items != nil {
		tidy(s.Items)
	}
	for pair := s.Properties.Oldest(); pair != nil; pair = pair.Next() {
		tidy(pair.Value)
	}
}
