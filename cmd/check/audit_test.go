package main

import (
	"bytes"
	"context"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// Lists that do not answer are named and pass; a weakness that is found fails.
func TestAuditSaysWhatWasNotAsked(t *testing.T) {
	list := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path != "/there" {
			w.WriteHeader(http.StatusMethodNotAllowed)
		}
	}))
	defer list.Close()
	asks := func(path, program string) (string, error) {
		var out bytes.Buffer
		err := auditBy(context.Background(), job{root: t.TempDir(), out: &out},
			[]auditor{{"parts", request{http.MethodPost, list.URL + path}, command{args: []string{"go", program}}}})
		return out.String(), err
	}
	if printed, err := asks("/gone", "no-such-command"); err != nil || !strings.Contains(printed, "parts: not asked") || !strings.Contains(printed, "405") {
		t.Errorf("a list that refuses gives %q, %v", printed, err)
	}
	if printed, err := asks("/there", "version"); err != nil || !strings.Contains(printed, "go version") {
		t.Errorf("an audit without a find gives %q, %v", printed, err)
	}
	if _, err := asks("/there", "no-such-command"); err == nil || !strings.Contains(err.Error(), "parts") {
		t.Errorf("an audit that finds something gives %v", err)
	}
}
