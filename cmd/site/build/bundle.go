package build

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// entry is one script of the page; the charts are fetched only when somebody opens them. A worker that loads wasm_exec.js by importScripts is a classic
// script and so must be wrapped; the others are modules.
type entry struct {
	source, out string
	format      api.Format
}

var entries = [...]entry{
	{source: "main.tsx", out: "app", format: api.FormatESModule},
	{source: "engine-worker.ts", out: "engine-worker", format: api.FormatIIFE},
	{source: "view-host.ts", out: "view-host", format: api.FormatESModule},
	{source: "charts/charts.ts", out: "charts", format: api.FormatESModule},
	{source: "qr.ts", out: "qr", format: api.FormatESModule},
}

// bundle writes the scripts of the page.
func (s *site) bundle() error {
	for _, e := range entries {
		if err := s.bundleEntry(e, ""); err != nil {
			return err
		}
	}
	return nil
}

// bundleEntry writes one script, with a text before it. A source map helps whoever works on the page, and
// is left out of a site that is built to be put on a host.
func (s *site) bundleEntry(e entry, before string) error {
	sourcemap := api.SourceMapLinked
	if s.Compress {
		sourcemap = api.SourceMapNone
	}
	result := api.Build(api.BuildOptions{
		EntryPointsAdvanced: []api.EntryPoint{{
			InputPath:  filepath.Join(s.Root, "web", "src", e.source),
			OutputPath: e.out,
		}},
		AbsWorkingDir:     filepath.Join(s.Root, "web"),
		Outdir:            s.Out,
		Banner:            map[string]string{"js": before},
		Bundle:            true,
		Format:            e.format,
		Platform:          api.PlatformBrowser,
		Target:            api.ES2022,
		JSX:               api.JSXAutomatic,
		JSXImportSource:   "preact",
		Loader:            map[string]api.Loader{".json": api.LoaderJSON, ".css": api.LoaderCSS},
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
		LegalComments:     api.LegalCommentsInline,
		Charset:           api.CharsetUTF8,
		Sourcemap:         sourcemap,
		LogLevel:          api.LogLevelSilent,
	})
	if err := bundleFault(e.source, result.Errors); err != nil {
		return err
	}
	for _, file := range result.OutputFiles {
		if err := s.put(filepath.Base(file.Path), file.Contents); err != nil {
			return err
		}
	}
	return nil
}

// bundleFault turns the bundler's messages into one fault.
func bundleFault(source string, messages []api.Message) error {
	if len(messages) == 0 {
		return nil
	}
	texts := api.FormatMessages(messages, api.FormatMessagesOptions{Kind: api.ErrorMessage})
	return &Fault{
		What:   fmt.Sprintf("web/src/%s does not bundle", source),
		Remedy: "mend what the bundler says above",
		Detail: strings.TrimSpace(strings.Join(texts, "")),
	}
}
