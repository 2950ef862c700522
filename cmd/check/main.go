// Command check runs every check and test of the repository and says how long each took.
//
//	go run ./cmd/check                  all steps
//	go run ./cmd/check -only test,rules some of them
//	go run ./cmd/check -fix             format the code and write the generated files anew
//	go run ./cmd/check -long            the long runs too
//	go run ./cmd/check -bench           measure how fast everything is, and check nothing else
//	go run ./cmd/check -picture         make the README's picture anew from the real page
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"rowlight/cmd/site/build"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := run(ctx, os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "check:", err)
		os.Exit(1)
	}
}

// run does what the flags ask for.
func run(ctx context.Context, args []string, out io.Writer) error {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	only := flags.String("only", "", "run only these `steps`, with commas between: "+strings.Join(names(steps), ","))
	fix := flags.Bool("fix", false, "format the code and write the generated files anew instead of complaining")
	long := flags.Bool("long", false, "run the long tests too (build tag long)")
	bench := flags.Bool("bench", false, "only run the benchmarks, natively, as WebAssembly and in the page, and judge their ratios")
	picture := flags.Bool("picture", false, "only make the README's picture anew from the real page")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q is not understood: give flags only", flags.Arg(0))
	}
	root, err := build.FindRoot(".")
	if err != nil {
		return err
	}
	j := job{root: root, out: out, fix: *fix, long: *long}
	if *bench {
		return runSteps(ctx, j, benchSteps)
	}
	if *picture {
		return runSteps(ctx, j, pictureSteps)
	}
	chosen, err := choose(steps, *only)
	if err != nil {
		return err
	}
	return runSteps(ctx, j, chosen)
}
