package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"strings"
	"testing"

	"rowlight/cmd/site/build"
	"rowlight/cmd/site/serve"
)

func TestArgumentsThatAreNotUnderstood(t *testing.T) {
	var out, log bytes.Buffer
	err := run(context.Background(), []string{"8081"}, &out, &log)
	var fault *build.Fault
	if !errors.As(err, &fault) || !strings.Contains(fault.Error(), "-addr host:port") {
		t.Errorf("a stray argument gives %v", err)
	}
	if err := run(context.Background(), []string{"-port", "8081"}, &out, &log); !errors.Is(err, flag.ErrHelp) || !strings.Contains(log.String(), "-addr") {
		t.Errorf("an unknown flag gives %v and %q", err, log.String())
	}
}

func TestTakenPortIsKnownBeforeTheBuild(t *testing.T) {
	taken, err := serve.Listen("localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	var out, log bytes.Buffer
	err = run(context.Background(), []string{"-addr", shownAddress("localhost:0", taken)}, &out, &log)
	if err == nil || !strings.Contains(err.Error(), "is taken: run with -addr localhost:") {
		t.Errorf("a taken port gives %v", err)
	}
	if log.Len() > 0 {
		t.Errorf("the build began: %s", log.String())
	}
	log.Reset()
	complain(&log, &build.Fault{What: "npm is missing", Remedy: "install Node.js", Detail: "npm: not found"})
	if log.String() != "npm: not found\nsite: npm is missing: install Node.js\n" {
		t.Errorf("complaint is %q", log.String())
	}
}
