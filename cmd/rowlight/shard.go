package main

import (
	"fmt"
	"strconv"
	"strings"

	"rowlight/sim"
)

// shard is the flag that asks for one of several pieces of an answer. The zero value is the whole.
type shard struct{ index, count int }

// String writes the shard as it is given, nothing for the whole.
func (s *shard) String() string {
	if s.count == 0 {
		return ""
	}
	return fmt.Sprintf("%d/%d", s.index, s.count)
}

// Type names the form in the help.
func (s *shard) Type() string { return "i/n" }

// Set reads i/n.
func (s *shard) Set(text string) error {
	index, count, _ := strings.Cut(text, "/")
	i, err := strconv.Atoi(index)
	n, errCount := strconv.Atoi(count)
	if err != nil || errCount != nil || i < 0 || i >= n {
		return fmt.Errorf("write i/n, n pieces and i from 0 to n−1, as 0/8")
	}
	s.index, s.count = i, n
	return nil
}

// check refuses pieces of an answer whose parts do not stand alone.
func (s *shard) check(o *output) error {
	if s.count > 0 && o.format.value != "csv" {
		return fmt.Errorf("--shard needs --format csv: table and json sum up the whole answer")
	}
	return nil
}

// whole tells whether the whole is asked for.
func (s *shard) whole() bool { return s.count == 0 }

// headed tells whether the piece begins with the header, as the first of them does.
func (s *shard) headed() bool { return s.index == 0 }

// pick is the piece of a list.
func pick[T any](s shard, all []T) []T { return sim.Shard(all, s.index, max(s.count, 1)) }
