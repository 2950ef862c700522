package build

import (
	"bytes"
	"compress/gzip"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/andybalholm/brotli"
	"golang.org/x/sync/errgroup"
)

// copyKind is one kind of compressed copy.
type copyKind struct {
	suffix string
	open   func(io.Writer) (io.WriteCloser, error)
}

// copyKinds are made at the best level: a host sends each of them thousands of times.
var copyKinds = [...]copyKind{
	{suffix: ".br", open: func(w io.Writer) (io.WriteCloser, error) {
		return brotli.NewWriterLevel(w, brotli.BestCompression), nil
	}},
	{suffix: ".gz", open: func(w io.Writer) (io.WriteCloser, error) {
		return gzip.NewWriterLevel(w, gzip.BestCompression)
	}},
}

// compress writes the compressed copies, or removes them where they are not wanted: a copy that is
// older than its file would be served in its stead. An unchanged file keeps its copies.
func (s *site) compress(ctx context.Context, before, after Manifest) error {
	return s.timed("compression", func() error {
		jobs, ctx := errgroup.WithContext(ctx)
		jobs.SetLimit(parallel)
		for name, file := range after {
			for _, kind := range copyKinds {
				path := filepath.Join(s.Out, filepath.FromSlash(name))
				if before[name] != file || !s.Compress {
					os.Remove(path + kind.suffix)
				}
				if s.Compress && !exists(path+kind.suffix) {
					jobs.Go(func() error { return writeCopy(ctx, path, kind) })
				}
			}
		}
		return jobs.Wait()
	})
}

// writeCopy compresses one file. The copy appears under its name only when it is complete.
func writeCopy(ctx context.Context, path string, kind copyKind) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	var packed bytes.Buffer
	w, err := kind.open(&packed)
	if err != nil {
		return err
	}
	if _, err := w.Write(text); err != nil {
		return fmt.Errorf("compressing %s: %w", path, err)
	}
	if err := w.Close(); err != nil {
		return fmt.Errorf("compressing %s: %w", path, err)
	}
	unfinished := path + kind.suffix + ".part"
	if err := os.WriteFile(unfinished, packed.Bytes(), 0o644); err != nil {
		return err
	}
	return os.Rename(unfinished, path+kind.suffix)
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
