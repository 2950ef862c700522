// Package build turns the repository into the static site: two browser programs, the bundled page
// and the files beside them. Whatever it writes works from any static host and from a sub-path,
// since every address in it is relative.
//
// What the site holds:
//
//	engine.wasm, view.wasm     wasm/engine and wasm/view, built for js/wasm
//	wasm_exec.js               the loader of the Go installation that built them
//	app.js                     web/src/main.tsx, an ES module
//	engine-worker.js           web/src/engine-worker.ts, a classic worker script
//	view-host.js               web/src/view-host.ts, an ES module of the view's iframe
//	index.html, styles.css …   the .html, .css, .svg, .png, .ico and .webmanifest files in web/
//	icons/                     web/icons, when there is one
//	manifest.json              the bytes and SHA-256 of each of these files
package build
