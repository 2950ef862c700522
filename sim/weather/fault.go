package weather

import (
	"errors"
	"fmt"

	"rowlight/sim/scenario"
)

// Fault is something wrong with a scenario's day or with a weather file, as a code of the text
// catalogue and its parameters. Codes that begin with "notice." tell of what was filled, moved or
// looks odd.
type Fault struct {
	// Fault is the code and its parameters; of a weather file these hold "line" and "column" too.
	scenario.Fault
	// Line and Column are the place in a weather file, counted from 1; 0 where the fault is of the
	// whole line or the whole file. Column counts fields, not characters.
	Line, Column int
	// Blocks tells that nothing could be made of what was asked for. Other faults leave a file or
	// a day that can be used, with this to be said beside it.
	Blocks bool
}

// Error says the code and its parameters; the text for users is in the catalogue.
func (f Fault) Error() string { return fmt.Sprintf("%s at %s %v", f.Code, f.Path, f.Values) }

// FaultIn finds the fault in an error of this package, however wrapped.
func FaultIn(err error) (scenario.Fault, bool) {
	var fault Fault
	ok := errors.As(err, &fault)
	return fault.Fault, ok
}

// Blocked tells whether a fault of the list blocks.
func Blocked(faults []Fault) bool {
	for _, fault := range faults {
		if fault.Blocks {
			return true
		}
	}
	return false
}

// scenarioFault is a fault of a scenario that has no day.
func scenarioFault(code, path string, values map[string]any) Fault {
	return Fault{Fault: scenario.Fault{Code: code, Path: path, Values: values}, Blocks: true}
}

// faultsKept is how many faults of lines are kept of one file; of the others the number is.
const faultsKept = 40

// report collects the faults of one weather file or day.
type report struct {
	faults []Fault
	more   int // faults of lines beyond faultsKept
}

// at notes a fault of a place in the file that leaves the rest of it usable.
func (r *report) at(line, column int, code string, values map[string]any) {
	if len(r.faults) >= faultsKept {
		r.more++
		return
	}
	r.faults = append(r.faults, fileFault(line, column, code, values))
}

// notice notes something about the whole file or day.
func (r *report) notice(code string, values map[string]any) {
	r.faults = append(r.faults, fileFault(0, 0, code, values))
}

// block notes a fault that leaves nothing usable.
func (r *report) block(line, column int, code string, values map[string]any) {
	fault := fileFault(line, column, code, values)
	fault.Blocks = true
	r.faults = append(r.faults, fault)
}

// list gives all that was noted, and how many faults of lines were not kept.
func (r *report) list() []Fault {
	if r.more > 0 {
		r.notice("notice.file-more", map[string]any{"count": r.more})
		r.more = 0
	}
	return r.faults
}

func fileFault(line, column int, code string, values map[string]any) Fault {
	all := map[string]any{}
	for name, value := range values {
		all[name] = value
	}
	if line > 0 {
		all["line"] = line
	}
	if column > 0 {
		all["column"] = column
	}
	return Fault{Fault: scenario.Fault{Code: code, Values: all}, Line: line, Column: column}
}
