package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"rowlight/sim/verify"
	"rowlight/testdata"
)

// verifyCommand is the flags of rowlight verify.
type verifyCommand struct {
	output output
	tables string
}

// newVerify makes rowlight verify.
func newVerify() *cobra.Command {
	var flags verifyCommand
	command := &cobra.Command{
		Use:   "verify",
		Short: "Reference tables against the functions that the simulation uses",
		Long: "Compares tables of independent origin with the very functions that the simulation uses: a line for each with\n" +
			"the worst difference, what is allowed, where it is and who says so. The tables come with the program;\n" +
			"--tables takes any folder of tables with the same names and headers instead. One difference too large makes\n" +
			"the exit code 1, a table that cannot be read 2.",
		Args: cobra.NoArgs,
	}
	flags.output.addFlags(command)
	command.Flags().StringVar(&flags.tables, "tables", "", "folder of tables, such as airmass.csv, to compare instead of those that come with the program")
	command.RunE = func(command *cobra.Command, _ []string) error { return flags.run(command) }
	return command
}

// run compares, writes what was found, and fails when something is outside.
func (c verifyCommand) run(command *cobra.Command) error {
	folder, err := c.folder()
	if err != nil {
		return err
	}
	report, err := verify.Tables(folder, command.Context().Err)
	if err != nil {
		return c.refused(err)
	}
	if err := c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.writeReport(w, report) }); err != nil {
		return err
	}
	if outside := len(report.Outside()); outside > 0 {
		return fmt.Errorf("verify: %d of %d comparisons are outside what is allowed", outside, len(report.Comparisons))
	}
	return nil
}

// folder is where the tables are.
func (c verifyCommand) folder() (fs.FS, error) {
	if c.tables == "" {
		return fs.Sub(testdata.FS, "reference")
	}
	info, err := os.Stat(c.tables)
	switch {
	case err != nil:
		return nil, &tablesError{c.tables, err}
	case !info.IsDir():
		return nil, &tablesError{c.tables, fmt.Errorf("not a folder")}
	}
	return os.DirFS(c.tables), nil
}

// refused tells where the tables are that cannot be read.
func (c verifyCommand) refused(err error) error {
	if _, ok := errors.AsType[*verify.Unreadable](err); ok {
		return &tablesError{c.tables, err}
	}
	return err
}

// tablesError is tables that cannot be read.
type tablesError struct {
	folder string // empty for those that come with the program
	err    error  // a line for each fault
}

// Error writes one line for each fault.
func (e *tablesError) Error() string {
	place := "rowlight: "
	if e.folder != "" {
		place += e.folder + ": "
	}
	var lines strings.Builder
	for line := range strings.Lines(e.err.Error()) {
		fmt.Fprintln(&lines, place+strings.TrimSuffix(line, "\n"))
	}
	return lines.String()
}

func (e *tablesError) badInput() {}

// writeReport writes a report in the chosen format.
func (c verifyCommand) writeReport(w io.Writer, report verify.Report) error {
	switch c.output.format.value {
	case "json":
		return json.NewEncoder(w).Encode(reportDocument(report))
	case "csv":
		return reportSheet(report).writeCSV(w)
	}
	if err := reportSheet(report).writeTable(w, c.output.system()); err != nil {
		return err
	}
	if len(report.Missing) > 0 {
		fmt.Fprintf(w, "\nnot there: %s\n", strings.Join(report.Missing, ", "))
	}
	held := len(report.Comparisons) - len(report.Outside())
	_, err := fmt.Fprintf(w, "\n%d of %d comparisons hold\n", held, len(report.Comparisons))
	return err
}

// reportSheet is a report with a line for each comparison.
func reportSheet(report verify.Report) sheet {
	s := sheet{columns: []column{
		{key: "table", title: "table"}, {key: "compares", title: "compares"}, {key: "rows", title: "rows"},
		{key: "worst"}, {title: "worst"}, {key: "allowed"}, {title: "allowed"}, {key: "unit"}, {key: "holds"}, {title: "holds"},
		{key: "line", title: "line"}, {key: "column", title: "column"}, {key: "got", title: "got"}, {key: "want", title: "want"},
		{key: "source", title: "source"},
	}}
	for _, c := range report.Comparisons {
		s.rows = append(s.rows, []any{
			c.Table, c.Compares, float64(c.Rows),
			c.Worst, shortNumber(c.Worst, c.Unit), c.Allowed, shortNumber(c.Allowed, c.Unit), c.Unit, c.Holds(), yesNo(c.Holds()),
			float64(c.At.Line), c.At.Column, c.At.Got, c.At.Want, c.Source,
		})
	}
	return s
}

// shortNumber is a difference with its unit for reading.
func shortNumber(value float64, unit string) string {
	text := fmt.Sprintf("%.2g", value)
	if unit != "1" {
		text += " " + unit
	}
	return text
}

// yesNo tells whether a comparison holds so that the eye finds the ones that do not.
func yesNo(holds bool) string {
	if holds {
		return "yes"
	}
	return "NO"
}

// comparisonDocument is one comparison in json.
type comparisonDocument struct {
	Table    string   `json:"table"`
	Compares string   `json:"compares"`
	Rows     int      `json:"rows"`
	Worst    *float64 `json:"worst"` // null where the simulation gives no number
	Allowed  float64  `json:"allowed"`
	Unit     string   `json:"unit"`
	Holds    bool     `json:"holds"`
	Line     int      `json:"line"`
	Column   string   `json:"column"`
	Got      string   `json:"got"`
	Want     string   `json:"want"`
	Source   string   `json:"source"`
	Notes    []string `json:"notes"`
}

// reportDocument is a report for json.
func reportDocument(report verify.Report) any {
	document := struct {
		Comparisons []comparisonDocument `json:"comparisons"`
		Missing     []string             `json:"missing"`
	}{Missing: append([]string{}, report.Missing...)}
	for _, c := range report.Comparisons {
		one := comparisonDocument{
			Table: c.Table, Compares: c.Compares, Rows: c.Rows, Allowed: c.Allowed, Unit: c.Unit, Holds: c.Holds(),
			Line: c.At.Line, Column: c.At.Column, Got: c.At.Got, Want: c.At.Want, Source: c.Source, Notes: c.Notes,
		}
		if !math.IsInf(c.Worst, 0) {
			one.Worst = &c.Worst
		}
		document.Comparisons = append(document.Comparisons, one)
	}
	return document
}
