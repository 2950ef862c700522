package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// pieces runs a command in n shards and puts their outputs together.
func pieces(t *testing.T, n int, args ...string) string {
	t.Helper()
	var all strings.Builder
	for i := range n {
		got := rowlight("", append(args, "--shard", fmt.Sprintf("%d/%d", i, n))...)
		if got.code != 0 {
			t.Fatalf("shard %d of %d: code %d, %s", i, n, got.code, got.stderr)
		}
		all.WriteString(got.stdout)
	}
	return all.String()
}

// inPieces wants a command's shards, one after the other, to be its whole answer, byte for byte, by however many hands.
func inPieces(t *testing.T, n, lines int, args ...string) {
	t.Helper()
	whole := rowlight("", append(args, "--jobs", "1")...)
	if whole.code != 0 || strings.Count(whole.stdout, "\n") != lines {
		t.Fatalf("code %d, %d lines, want %d: %s%s", whole.code, strings.Count(whole.stdout, "\n"), lines, whole.stdout, whole.stderr)
	}
	if together := pieces(t, n, append(args, "--jobs", "2")...); together != whole.stdout {
		t.Errorf("the %d shards are not the whole:\n%s\nbut\n%s", n, together, whole.stdout)
	}
}

func TestShardsOfRowsAreTheWhole(t *testing.T) {
	inPieces(t, 3, 1+2*4*2, "rows", demo, "--step", "45", "--format", "csv")
}

func TestShardsOfASeasonAreTheWhole(t *testing.T) {
	inPieces(t, 2, 1+2*7*2, "season", demo, "--weather", hotWeek, "--format", "csv")
}

func TestSpanFlagsThatCannotBeUsed(t *testing.T) {
	for name, test := range map[string]struct {
		args []string
		code int
		says string
	}{
		"shard of a table":    {[]string{"rows", demo, "--shard", "0/2"}, 1, "--shard needs --format csv"},
		"shard of json":       {[]string{"season", demo, "--shard", "0/2", "--format", "json"}, 1, "--shard needs --format csv"},
		"shard beyond":        {[]string{"rows", demo, "--shard", "2/2", "--format", "csv"}, 1, "i from 0 to n−1"},
		"shard in words":      {[]string{"season", demo, "--shard", "one"}, 1, "write i/n"},
		"step":                {[]string{"rows", demo, "--step", "0"}, 1, "--step 0 is outside 1 to 90"},
		"jobs":                {[]string{"season", demo, "--jobs", "0"}, 1, "whole numbers from 1"},
		"day of the year":     {[]string{"season", demo, "--from", "07-32"}, 2, "07-32"},
		"day not in the file": {[]string{"rows", demo, "--weather", hotWeek, "--from", "07-17", "--to", "07-19"}, 2, "07-19"},
	} {
		t.Run(name, func(t *testing.T) {
			got := rowlight("", test.args...)
			if got.code != test.code || got.stdout != "" || !strings.Contains(got.stderr, test.says) {
				t.Errorf("code %d, stdout %q, stderr %q; want code %d and %q", got.code, got.stdout, got.stderr, test.code, test.says)
			}
		})
	}
}

func TestProgressEndsWithAnEmptyLine(t *testing.T) {
	var shown bytes.Buffer
	progress := progressOn(&shown)
	for _, done := range []float64{0, 0.25, 0.5, 1} {
		progress("days", done)
	}
	text := shown.String()
	if !strings.Contains(text, "25%") || !strings.HasSuffix(text, "\r") {
		t.Errorf("%q", text)
	}
	if onTerminal(&shown) != nil {
		t.Error("there is a bar where there is no terminal")
	}
}
