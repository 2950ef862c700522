// Package browser tests the built page in Chromium. Its tests carry the build tag browser, since
// they need Chromium, Node.js and some minutes: `go run ./cmd/check -only browser` runs them.
package browser
