// Package document reads raw scenario documents: JSON text, checked against the schema of the
// scenario's types, with every fault named at once.
//
// It stands apart from package scenario so that a program which only decodes documents that were
// checked before does not carry the schema library.
package document

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"unicode/utf8"

	"rowlight/sim/scenario"
)

// MaxBytes is the longest document read. 24 measured hours and four options take some 10 kB; the
// rest leaves room for fields of other programs.
const MaxBytes = 4 << 20

// Parse reads a document: it checks the raw JSON against the schema and the rules between fields, and
// decodes it over the defaults. With any fault the scenario must not be used. Fields that the
// schema does not know are no fault: see Notices.
func Parse(raw []byte) (scenario.Scenario, []scenario.Fault) {
	tree, fault := readTree(raw)
	if fault != nil {
		return scenario.Scenario{}, []scenario.Fault{*fault}
	}
	if fault := checkVersion(tree); fault != nil {
		return scenario.Scenario{}, []scenario.Fault{*fault}
	}
	faults := append(schemaFaults(tree), misspeltFaults(tree)...)
	decoded, err := decodeTree(tree)
	if err != nil && len(faults) == 0 {
		// A value that the schema lets through and the types do not is a fault of the schema.
		faults = append(faults, scenario.Fault{Code: "fault.unreadable", Values: map[string]any{"detail": err.Error()}})
	}
	if err == nil {
		faults = appendNew(faults, decoded.Validate())
	}
	return decoded, faults
}

// readTree reads JSON text into maps, slices and float64 numbers. What it holds must be an object.
func readTree(raw []byte) (map[string]any, *scenario.Fault) {
	if len(raw) > MaxBytes {
		return nil, &scenario.Fault{Code: "fault.too-long", Values: map[string]any{
			"bytes": len(raw), "max": MaxBytes}}
	}
	raw = bytes.TrimPrefix(raw, []byte("\ufeff"))
	if !utf8.Valid(raw) {
		return nil, &scenario.Fault{Code: "fault.encoding"}
	}
	if len(bytes.TrimSpace(raw)) == 0 {
		return nil, &scenario.Fault{Code: "fault.empty"}
	}
	var tree any
	if err := json.Unmarshal(raw, &tree); err != nil {
		return nil, syntaxFault(raw, err)
	}
	object, ok := tree.(map[string]any)
	if !ok {
		return nil, &scenario.Fault{Code: "fault.type", Values: map[string]any{
			"got": kindOf(tree), "want": []string{"object"}}}
	}
	return object, nil
}

// syntaxFault says in which line and column, both from 1, the text stops being JSON.
func syntaxFault(raw []byte, err error) *scenario.Fault {
	var syntax *json.SyntaxError
	var wrong *json.UnmarshalTypeError
	offset := int64(len(raw))
	switch {
	case errors.As(err, &syntax):
		offset = syntax.Offset
	case errors.As(err, &wrong): // a number beyond float64; the offset lies behind it
		number := strings.TrimPrefix(wrong.Value, "number ")
		offset = int64(bytes.LastIndex(raw[:min(wrong.Offset, offset)], []byte(number))) + 1
	}
	before := raw[:min(max(offset-1, 0), int64(len(raw)))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
	return &scenario.Fault{Code: "fault.syntax", Values: map[string]any{
		"line": line, "column": column, "detail": err.Error()}}
}

// checkVersion refuses documents of a newer program and versions that never were. Anything but a
// number is left to the schema.
func checkVersion(tree map[string]any) *scenario.Fault {
	version, ok := tree["schemaVersion"].(float64)
	values := map[string]any{"value": version, "supported": scenario.SchemaVersion}
	switch {
	case !ok:
		return nil
	case version > scenario.SchemaVersion:
		return &scenario.Fault{Code: "fault.newer", Path: "/schemaVersion", Values: values}
	case version < 1 || version != math.Trunc(version):
		return &scenario.Fault{Code: "fault.version", Path: "/schemaVersion", Values: values}
	}
	return nil
}

// decodeTree decodes what was checked, so that neither keys given twice nor numbers written as 1.0
// read differently here and there.
func decodeTree(tree map[string]any) (scenario.Scenario, error) {
	text, err := json.Marshal(tree)
	if err != nil {
		return scenario.Scenario{}, err
	}
	return scenario.Decode(text)
}

// appendNew adds the faults of fields that have none yet.
func appendNew(faults, more []scenario.Fault) []scenario.Fault {
	known := map[string]bool{}
	for _, fault := range faults {
		known[fault.Path] = true
	}
	for _, fault := range more {
		if !known[fault.Path] {
			faults = append(faults, fault)
		}
	}
	return faults
}
