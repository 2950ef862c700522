package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// command is one tool to run.
type command struct {
	dir  string   // below the root
	env  []string // added to the environment
	args []string
}

// browserEnv makes the go command build for the browser.
var browserEnv = []string{"GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0"}

// nativeEnv shuts out C, so that no C headers are needed.
var nativeEnv = []string{"CGO_ENABLED=0"}

// stream runs a tool and shows what it prints as it comes.
func (j job) stream(ctx context.Context, c command) error {
	cmd := j.prepare(ctx, c)
	cmd.Stdout, cmd.Stderr = j.out, j.out
	return toolFault(c, cmd.Run())
}

// capture runs a tool and returns what it prints on standard output.
func (j job) capture(ctx context.Context, c command) (string, error) {
	cmd := j.prepare(ctx, c)
	cmd.Stderr = j.out
	text, err := cmd.Output()
	return string(text), toolFault(c, err)
}

func (j job) prepare(ctx context.Context, c command) *exec.Cmd {
	cmd := exec.CommandContext(ctx, c.args[0], c.args[1:]...)
	cmd.Dir = filepath.Join(j.root, c.dir)
	cmd.Env = append(os.Environ(), c.env...)
	return cmd
}

// toolFault says in one line what failed.
func toolFault(c command, err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, exec.ErrNotFound):
		return fmt.Errorf("%s is not on the PATH: install it", c.args[0])
	default:
		return fmt.Errorf("`%s`: %w", strings.Join(c.args, " "), err)
	}
}

// smallEnv is the part of the environment that the go command and Node.js need. The loader of Go
// programs in Node.js refuses to start when the environment is longer than 8192 bytes.
func smallEnv(environ []string) []string {
	kept := []string{"PATH", "HOME", "TMPDIR", "USERPROFILE", "SYSTEMROOT"}
	var small []string
	for _, entry := range environ {
		name, _, _ := strings.Cut(entry, "=")
		if strings.HasPrefix(name, "GO") || slices.Contains(kept, strings.ToUpper(name)) {
			small = append(small, entry)
		}
	}
	return small
}
