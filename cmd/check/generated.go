package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"rowlight/cmd/check/readme"
	"rowlight/cmd/check/schema"
)

// generatedTypes is the folder of the TypeScript types made from the schemas.
const generatedTypes = "web/src/generated"

// checkGenerated makes the schemas, the TypeScript types and the README's output blocks anew and
// compares them with what is committed.
func checkGenerated(ctx context.Context, j job) error {
	stale, err := schema.Stale(j.root)
	if err != nil {
		return err
	}
	if j.fix && len(stale) > 0 {
		if err := schema.Write(j.root); err != nil {
			return err
		}
	}
	staleTypes, err := regenerate(ctx, j, filepath.Join(j.root, filepath.FromSlash(generatedTypes)))
	if err != nil {
		return err
	}
	stale = append(stale, staleTypes...)
	staleReadme, err := renewReadme(ctx, j)
	if err != nil {
		return err
	}
	stale = append(stale, staleReadme...)
	if len(stale) == 0 {
		return nil
	}
	fmt.Fprintln(j.out, strings.Join(stale, "\n"))
	if j.fix {
		fmt.Fprintln(j.out, "written anew")
		return nil
	}
	return errors.New("these files are not what the Go types make now: run with -fix")
}

// regenerate makes the TypeScript types in their place, lists those that changed, and puts the old
// ones back unless they are to be mended.
func regenerate(ctx context.Context, j job, folder string) ([]string, error) {
	before, err := readFolder(folder)
	if err != nil {
		return nil, err
	}
	if err := j.stream(ctx, command{dir: "web", args: []string{"npm", "run", "--silent", "generate"}}); err != nil {
		return nil, err
	}
	after, err := readFolder(folder)
	if err != nil {
		return nil, err
	}
	stale := differing(before, after)
	if j.fix {
		return stale, nil
	}
	return stale, restore(folder, before, after)
}

// renewReadme runs the examples of the README and compares what they print with what it shows.
func renewReadme(ctx context.Context, j job) ([]string, error) {
	work, err := os.MkdirTemp("", "rowlight-readme-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(work)
	bench, err := readme.NewBench(ctx, j.root, work)
	if err != nil {
		return nil, err
	}
	file := filepath.Join(j.root, "README.md")
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	renewed, lines, err := bench.Renew(ctx, string(text))
	if err != nil {
		return nil, err
	}
	var stale []string
	for _, line := range lines {
		stale = append(stale, fmt.Sprintf("README.md:%d", line))
	}
	if j.fix && len(stale) > 0 {
		return stale, os.WriteFile(file, []byte(renewed), 0o644)
	}
	return stale, nil
}

// readFolder reads the files of a folder; a missing folder has none.
func readFolder(folder string) (map[string][]byte, error) {
	files := map[string][]byte{}
	entries, err := os.ReadDir(folder)
	if os.IsNotExist(err) {
		return files, nil
	}
	for _, entry := range entries {
		text, err := os.ReadFile(filepath.Join(folder, entry.Name()))
		if err != nil {
			return nil, err
		}
		files[entry.Name()] = text
	}
	return files, err
}

// differing names the files that are not the same in both.
func differing(before, after map[string][]byte) []string {
	var names []string
	for name, text := range after {
		if old, present := before[name]; !present || !bytes.Equal(old, text) {
			names = append(names, generatedTypes+"/"+name)
		}
	}
	return slices.Sorted(slices.Values(names))
}

// restore puts a folder back as it was.
func restore(folder string, before, after map[string][]byte) error {
	for name := range maps.Keys(after) {
		if _, present := before[name]; !present {
			if err := os.Remove(filepath.Join(folder, name)); err != nil {
				return err
			}
		}
	}
	for name, text := range before {
		if !bytes.Equal(text, after[name]) {
			if err := os.WriteFile(filepath.Join(folder, name), text, 0o644); err != nil {
				return err
			}
		}
	}
	return nil
}
