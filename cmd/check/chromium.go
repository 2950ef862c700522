package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
)

// installCommand is what a person types on Debian and its kin.
const installCommand = "sudo apt-get update && sudo apt-get install chromium"

// chromiumNames are the names under which systems keep it.
var chromiumNames = []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable"}

// ensureChromium finds Chromium, or installs it by apt where it may.
func ensureChromium(ctx context.Context, j job) error {
	return chromiumFor(ctx, j, os.Geteuid())
}

// chromiumFor does so for a user: only number 0 may install.
func chromiumFor(ctx context.Context, j job, user int) error {
	if path := findChromium(); path != "" {
		fmt.Fprintln(j.out, path)
		return nil
	}
	if _, err := exec.LookPath("apt-get"); err != nil || user != 0 {
		return errors.New("Chromium is missing and cannot be installed from here: run " + installCommand)
	}
	quiet := []string{"DEBIAN_FRONTEND=noninteractive"}
	err := errors.Join(
		j.stream(ctx, command{env: quiet, args: []string{"apt-get", "update", "-qq"}}),
		j.stream(ctx, command{env: quiet, args: []string{"apt-get", "install", "-qq", "-y", "--no-install-recommends", "chromium"}}),
	)
	if findChromium() == "" {
		return errors.Join(errors.New("Chromium could not be installed: run "+installCommand), err)
	}
	return nil
}

// findChromium is the path of Chromium, or "" where there is none.
func findChromium() string {
	for _, name := range chromiumNames {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}
