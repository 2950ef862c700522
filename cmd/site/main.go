// Command site builds the Rowlight page and serves it.
//
//	go run ./cmd/site                        build into dist/ and serve on localhost:8080
//	go run ./cmd/site -addr localhost:8081   serve on another port
//	go run ./cmd/site -out DIR               only build, for any static host, with .br and .gz copies
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"

	"rowlight/cmd/site/build"
	"rowlight/cmd/site/serve"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	err := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	if errors.Is(err, flag.ErrHelp) {
		os.Exit(2)
	}
	if err != nil && ctx.Err() == nil {
		complain(os.Stderr, err)
		os.Exit(1)
	}
}

// run does what the flags ask for. Progress goes to log, the one line that matters to out.
func run(ctx context.Context, args []string, out, log io.Writer) error {
	flags := flag.NewFlagSet("site", flag.ContinueOnError)
	flags.SetOutput(log)
	addr := flags.String("addr", "localhost:8080", "serve on this `host:port`")
	outDir := flags.String("out", "", "only build the site into `DIR`, with compressed copies, and serve nothing")
	if err := flags.Parse(args); err != nil {
		return flag.ErrHelp
	}
	if flags.NArg() > 0 {
		return &build.Fault{What: fmt.Sprintf("%q is not understood", flags.Arg(0)), Remedy: "give flags only: -addr host:port or -out DIR"}
	}
	root, err := build.FindRoot(".")
	if err != nil {
		return err
	}
	if *outDir != "" {
		return buildOnly(ctx, root, *outDir, out, log)
	}
	return buildAndServe(ctx, root, *addr, out, log)
}

// buildOnly writes a site to put on a host.
func buildOnly(ctx context.Context, root, dir string, out, log io.Writer) error {
	fmt.Fprintln(log, "Building the site and compressing it; this takes a minute or two …")
	if _, err := build.Site(ctx, build.Options{Root: root, Out: dir, Compress: true, Log: log}); err != nil {
		return err
	}
	fmt.Fprintf(out, "The site is in %s\n", dir)
	return nil
}

// buildAndServe takes the port first, so that a taken one is known before the long work.
func buildAndServe(ctx context.Context, root, addr string, out, log io.Writer) error {
	listener, err := serve.Listen(addr)
	if err != nil {
		return err
	}
	defer listener.Close()
	dist := filepath.Join(root, "dist")
	fmt.Fprintln(log, "Building the site; the first time takes a minute or two …")
	if _, err := build.Site(ctx, build.Options{Root: root, Out: dist, Log: log}); err != nil {
		return err
	}
	fmt.Fprintf(out, "Rowlight is at http://%s/\n", shownAddress(addr, listener))
	return serve.Until(ctx, listener, serve.Handler(dist))
}

// shownAddress is the address as the user gave it, with the port that was really taken.
func shownAddress(addr string, listener net.Listener) string {
	host, _, _ := net.SplitHostPort(addr) // it was split before
	_, port, _ := net.SplitHostPort(listener.Addr().String())
	if host == "" {
		host = "localhost"
	}
	return net.JoinHostPort(host, port)
}

// complain prints what a tool said, then the fault in one line.
func complain(log io.Writer, err error) {
	var fault *build.Fault
	if errors.As(err, &fault) && fault.Detail != "" {
		fmt.Fprintln(log, fault.Detail)
	}
	fmt.Fprintln(log, "site:", err)
}
