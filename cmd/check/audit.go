package main

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"time"
)

// auditor asks a public list of known weaknesses about what the repository is built from.
type auditor struct {
	list  string // of what
	probe request
	run   command
}

// request is what tells whether the list answers from here.
type request struct{ method, url string }

var auditors = []auditor{
	{"Go modules", request{http.MethodGet, "https://vuln.go.dev/index/db.json"},
		command{env: nativeEnv, args: []string{"go", "run", "golang.org/x/vuln/cmd/govulncheck@v1.9.0", "./..."}}},
	{"npm packages", request{http.MethodPost, "https://registry.npmjs.org/-/npm/v1/security/advisories/bulk"},
		command{dir: "web", args: []string{"npm", "audit", "--omit=dev"}}},
}

// probePatience is how long a list has to answer; without a network it never does.
const probePatience = 10 * time.Second

// audit looks for known weaknesses where the lists of them can be reached, and says where they cannot: without a
// network everything else is still checked.
func audit(ctx context.Context, j job) error { return auditBy(ctx, j, auditors) }

func auditBy(ctx context.Context, j job, auditors []auditor) error {
	var faults []error
	for _, a := range auditors {
		if err := a.probe.answers(ctx); err != nil {
			fmt.Fprintf(j.out, "%s: not asked, the list of known weaknesses does not answer (%v)\n", a.list, err)
			continue
		}
		if err := j.stream(ctx, a.run); err != nil {
			faults = append(faults, fmt.Errorf("%s: %w; update what is named above", a.list, err))
		}
	}
	return errors.Join(faults...)
}

// answers asks for the list, and wants any answer that does not refuse it.
func (r request) answers(ctx context.Context) error {
	ctx, stop := context.WithTimeout(ctx, probePatience)
	defer stop()
	asked, err := http.NewRequestWithContext(ctx, r.method, r.url, nil)
	if err != nil {
		return err
	}
	answer, err := http.DefaultClient.Do(asked)
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	// A list that takes a question without packages as a bad one is there all the same.
	if answer.StatusCode != http.StatusOK && answer.StatusCode != http.StatusBadRequest {
		return errors.New(answer.Status)
	}
	return nil
}
