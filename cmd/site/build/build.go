package build

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"time"

	"golang.org/x/sync/errgroup"
)

// Options say what to build and where to put it.
type Options struct {
	Root     string    // the folder that holds go.mod
	Out      string    // the folder to write the site into; it is made when missing
	Compress bool      // write .br and .gz beside each file, for a host that serves them
	Log      io.Writer // takes a line per stage; nil keeps quiet
}

// parallel is how many of the slow jobs run at once: the two Go programs, or two compressions. More
// than two would each take a core and several hundred megabytes.
const parallel = 2

// Site builds the whole site and returns what it wrote. Files of an earlier build that no longer
// belong to the site are removed; other files in the folder are left alone.
func Site(ctx context.Context, o Options) (Manifest, error) {
	s := &site{Options: o, files: Manifest{}}
	if err := writable(o.Out); err != nil {
		return nil, err
	}
	before, _ := ReadManifest(o.Out) // none yet, or unreadable: then nothing is reused

	// The two programs, and beside them the packages and then the bundle, which needs them.
	jobs, building := errgroup.WithContext(ctx)
	for _, p := range programs {
		jobs.Go(func() error { return s.timed(p.folder, func() error { return s.buildProgram(building, p) }) })
	}
	jobs.Go(func() error {
		if err := s.timed("npm packages", func() error { return EnsurePackages(building, o.Root) }); err != nil {
			return err
		}
		return s.timed("web/src", s.bundle)
	})
	if err := jobs.Wait(); err != nil {
		return nil, err
	}

	if err := s.copyLoader(ctx); err != nil {
		return nil, err
	}
	if err := s.writeLicences(ctx); err != nil {
		return nil, err
	}
	if err := s.copyStatic(); err != nil {
		return nil, err
	}
	if err := s.bundleOffline(); err != nil {
		return nil, err
	}
	after := s.files
	s.removeStale(before, after)
	if err := s.compress(ctx, before, after); err != nil {
		return nil, err
	}
	return after, after.write(o.Out)
}

// site is one build under way.
type site struct {
	Options
	mu    sync.Mutex
	files Manifest // what was written so far, by its path in the site
}

// put writes one file of the site.
func (s *site) put(name string, text []byte) error {
	path := filepath.Join(s.Out, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(path, text, 0o644); err != nil {
		return err
	}
	s.record(name, text)
	return nil
}

// record notes a file that was written.
func (s *site) record(name string, text []byte) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.files[name] = describe(text)
}

// timed runs one stage and logs how long it took.
func (s *site) timed(stage string, run func() error) error {
	start := time.Now()
	err := run()
	if err == nil && s.Log != nil {
		s.mu.Lock()
		defer s.mu.Unlock()
		fmt.Fprintf(s.Log, "  %-14s %5.1f s\n", stage, time.Since(start).Seconds())
	}
	return err
}

// writable makes the folder and tries to write into it, so that a fault shows before the long work.
func writable(dir string) error {
	err := os.MkdirAll(dir, 0o755)
	if err == nil {
		probe := filepath.Join(dir, ".writable")
		if err = os.WriteFile(probe, nil, 0o644); err == nil {
			return os.Remove(probe)
		}
	}
	return &Fault{
		What:   fmt.Sprintf("the folder %s cannot be written (%v)", dir, err),
		Remedy: "give yourself write permission there or choose another folder with -out DIR",
	}
}
