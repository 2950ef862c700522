package build

import "strings"

// Fault is something that stops the build, said in one line: what is wrong and what to do about it.
type Fault struct {
	What   string // what is wrong
	Remedy string // what to do about it
	Detail string // what the failing tool printed; may be empty
}

// Error is the fault in one line.
func (f *Fault) Error() string { return f.What + ": " + f.Remedy }

// lastLines keeps the end of what a tool printed, where the cause usually stands.
func lastLines(text string, n int) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	if len(lines) > n {
		lines = lines[len(lines)-n:]
	}
	return strings.Join(lines, "\n")
}
