package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// machine is a PATH with nothing on it but an apt-get that notes how it is called and installs a
// Chromium that does nothing.
func machine(t *testing.T, withApt bool) (folder string) {
	t.Helper()
	folder = t.TempDir()
	t.Setenv("PATH", folder)
	if !withApt {
		return folder
	}
	script := "#!/bin/sh\necho \"$@\" >> " + folder + "/calls\nif [ \"$1\" = install ]; then /bin/cp /bin/true " + folder + "/chromium; fi\n"
	if err := os.WriteFile(filepath.Join(folder, "apt-get"), []byte(script), 0o755); err != nil {
		t.Fatal(err)
	}
	return folder
}

func TestChromiumIsInstalledWhereItMayBe(t *testing.T) {
	folder := machine(t, true)
	var out bytes.Buffer
	for range 2 { // the second time it is there
		if err := chromiumFor(context.Background(), job{root: folder, out: &out}, 0); err != nil {
			t.Fatal(err)
		}
	}
	calls, err := os.ReadFile(filepath.Join(folder, "calls"))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(calls)), "\n")
	if len(lines) != 2 || !strings.HasPrefix(lines[0], "update") || !strings.HasSuffix(lines[1], "chromium") {
		t.Errorf("apt-get was called with %q", lines)
	}
	if !strings.Contains(out.String(), filepath.Join(folder, "chromium")) {
		t.Errorf("it does not say where Chromium is: %q", out.String())
	}
}

func TestChromiumThatMayNotBeInstalledIsNamed(t *testing.T) {
	for name, c := range map[string]struct {
		apt  bool
		user int
	}{"not root": {true, 1000}, "no apt": {false, 0}} {
		t.Run(name, func(t *testing.T) {
			folder := machine(t, c.apt)
			err := chromiumFor(context.Background(), job{root: folder, out: &bytes.Buffer{}}, c.user)
			if err == nil || !strings.Contains(err.Error(), installCommand) {
				t.Errorf("got %v", err)
			}
			if _, err := os.Stat(filepath.Join(folder, "calls")); err == nil {
				t.Error("apt-get was called")
			}
		})
	}
}
