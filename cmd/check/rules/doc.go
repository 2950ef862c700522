// Package rules holds the rules of the repository that a program can check: which folder may import
// what and why, and what its files must look like.
package rules

import "fmt"

// Breach is one broken rule.
type Breach struct {
	Where string // a folder or a file of the repository
	What  string // what is there
	Why   string // the reason of the rule
}

// String is the breach in one line.
func (b Breach) String() string { return fmt.Sprintf("%s %s: %s", b.Where, b.What, b.Why) }
