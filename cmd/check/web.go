package main

import (
	"context"
	"fmt"
	"path/filepath"

	"rowlight/cmd/site/build"
)

// ensurePackages finds Node.js and npm and installs the packages of the lock file.
func ensurePackages(ctx context.Context, j job) error {
	for _, tool := range []string{"node", "npm"} {
		version, err := j.capture(ctx, command{args: []string{tool, "--version"}})
		if err != nil {
			return err
		}
		fmt.Fprintf(j.out, "%s %s", tool, version)
	}
	return build.EnsurePackages(ctx, j.root)
}

// checkTypes runs the TypeScript compiler over the page without writing anything.
func checkTypes(ctx context.Context, j job) error {
	return j.stream(ctx, command{dir: "web", args: []string{"npx", "--no-install", "tsc", "--noEmit"}})
}

// testPage runs the tests of the parts of the page that need no browser.
func testPage(ctx context.Context, j job) error {
	return j.stream(ctx, command{dir: "web", args: []string{"npm", "test", "--silent"}})
}

// testBrowser runs the tests of the page. They are never taken from the test cache, which does not
// see the page's files.
func testBrowser(ctx context.Context, j job) error {
	args := []string{"go", "test", "-v", "-tags", "browser", "-count=1", "-timeout", "30m", "./cmd/check/browser"}
	return j.stream(ctx, command{env: nativeEnv, args: args})
}

// pictureFile is where the README finds its picture.
const pictureFile = "web/docs/first-light.png"

// makePicture takes the README's picture from the real page.
func makePicture(ctx context.Context, j job) error {
	file := filepath.Join(j.root, filepath.FromSlash(pictureFile))
	args := []string{"go", "test", "-tags", "browser", "-count=1", "-run", "^TestPicture$", "./cmd/check/browser", "-picture", file}
	if err := j.stream(ctx, command{env: nativeEnv, args: args}); err != nil {
		return err
	}
	fmt.Fprintln(j.out, pictureFile)
	return nil
}
