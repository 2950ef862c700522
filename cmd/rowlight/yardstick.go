package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"runtime"
	"strings"
	"sync"

	"github.com/spf13/cobra"

	"rowlight/sim/scenario"
	"rowlight/sim/verify/leaves"
)

// yardstickCommand is the flags of rowlight yardstick.
type yardstickCommand struct {
	output output
	seeds  int
	form   string
	page   bool
}

// yardstickRays is the number of rays at leaves from each face in each direction.
const yardstickRays = 4

// newYardstick makes rowlight yardstick.
func newYardstick() *cobra.Command {
	var flags yardstickCommand
	command := &cobra.Command{
		Use:   "yardstick [--seeds N] [--form KEY]",
		Short: "The leaf-area grid against the leaves one by one",
		Long: "Builds stands of each training form and compares what reaches the bunch faces through the leaf-area grid, as\n" +
			"the simulation finds it, with what passes between the very leaves: the gap in many directions, the clumping Ω\n" +
			"that fits, bias and rms of the mean over the faces of one side, and how long and when the sun is on a face. The\n" +
			"table has a line for each form, csv and json every direction; --page writes a page of Markdown. Twenty stands of\n" +
			"every form take some minutes. A form outside what is allowed makes the exit code 1.",
		Args: cobra.NoArgs,
	}
	flags.output.addFlags(command)
	command.Flags().IntVar(&flags.seeds, "seeds", 20, "stands of each form, at least 1")
	command.Flags().StringVar(&flags.form, "form", "", "key of one form, such as vsp-spurs; all if not given")
	command.Flags().BoolVar(&flags.page, "page", false, "write a page of Markdown with every form and direction")
	command.MarkFlagsMutuallyExclusive("page", "format")
	command.RunE = func(command *cobra.Command, _ []string) error { return flags.run(command) }
	return command
}

// measured is what was found for one form.
type measured struct {
	form   scenario.Form
	Report leaves.Report `json:"report"`
	Timing leaves.Timing `json:"timing"`
}

// run measures, writes what was found, and fails when something is outside.
func (c yardstickCommand) run(command *cobra.Command) error {
	forms, err := c.forms()
	if err != nil {
		return err
	}
	all, err := c.measure(command.Context(), forms)
	if err != nil {
		return err
	}
	if err := c.output.write(command.OutOrStdout(), func(w io.Writer) error { return c.write(w, all) }); err != nil {
		return err
	}
	var outside []string
	for _, m := range all {
		if len(m.Report.Outside()) > 0 || m.Timing.Moment_min > leaves.MomentAllowed {
			outside = append(outside, m.form.Key)
		}
	}
	if len(outside) > 0 {
		return fmt.Errorf("yardstick: outside what is allowed: %s", strings.Join(outside, ", "))
	}
	return nil
}

// forms are those to be measured.
func (c yardstickCommand) forms() ([]scenario.Form, error) {
	if c.seeds < 1 {
		return nil, fmt.Errorf("yardstick: --seeds is %d: write 1 or more", c.seeds)
	}
	if c.form == "" {
		return scenario.Forms(), nil
	}
	form, ok := scenario.FormByKey(c.form)
	if !ok {
		return nil, fmt.Errorf("yardstick: no form %q: rowlight forms lists their keys", c.form)
	}
	return []scenario.Form{form}, nil
}

// measure measures the forms, as many at once as there are processors.
func (c yardstickCommand) measure(ctx context.Context, forms []scenario.Form) ([]measured, error) {
	all, faults := make([]measured, len(forms)), make([]error, len(forms))
	free := make(chan struct{}, runtime.NumCPU())
	var running sync.WaitGroup
	for i, form := range forms {
		running.Go(func() {
			free <- struct{}{}
			defer func() { <-free }()
			all[i], faults[i] = c.measureForm(ctx, form)
		})
	}
	running.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// timedSeeds: of so many stands one has the sun followed minute by minute.
const timedSeeds = 10

// measureForm measures one form.
func (c yardstickCommand) measureForm(ctx context.Context, form scenario.Form) (m measured, err error) {
	m.form = form
	if m.Report, err = leaves.Measure(form, leaves.Settings{Seeds: c.seeds, Rays: yardstickRays}, ctx.Err); err != nil {
		return m, err
	}
	m.Timing, err = leaves.MeasureTiming(form, max(1, c.seeds/timedSeeds), ctx.Err)
	return m, err
}

// write writes what was found in the chosen format.
func (c yardstickCommand) write(w io.Writer, all []measured) error {
	switch {
	case c.page:
		return writeYardstickPage(w, all, c.seeds)
	case c.output.format.value == "json":
		return json.NewEncoder(w).Encode(all)
	case c.output.format.value == "csv":
		return directionSheet(all).writeCSV(w)
	}
	if err := yardstickSheet(all).writeTable(w, c.output.system()); err != nil {
		return err
	}
	_, err := fmt.Fprintf(w, "\nallowed in any direction: bias %.2f, rms %.2f; moment %.0f min\n", leaves.BiasAllowed, leaves.RMSAllowed, leaves.MomentAllowed)
	return err
}
