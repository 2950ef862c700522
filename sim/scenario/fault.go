package scenario

import _ "embed"

// Fault is one thing wrong with a document, as a code of the text catalogue of sim/words and its
// parameters, so that page and command line say it in the same words.
type Fault struct {
	// Code names the kind of fault, such as "fault.range".
	Code string `json:"code"`
	// Path is the JSON Pointer (RFC 6901) of the field; empty for the whole document.
	Path string `json:"path"`
	// Values are the parameters of the text: value, min, max, unit, allowed …
	Values map[string]any `json:"values,omitempty"`
}

// schemaJSON is made from the Go types of this package by cmd/check/schema.
//
//go:embed schema.json
var schemaJSON []byte

// Schema is the JSON Schema (2020-12) of the document. The caller must not change it.
func Schema() []byte { return schemaJSON }
