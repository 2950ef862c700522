// Package testdata embeds the data that tests, checks and demonstrations read: reference tables
// computed independently of this project (reference/), invented scenarios and weather files, and
// golden results. Each file says in its own header where it comes from.
package testdata

import "embed"

// FS holds every file of this folder under its path, such as "reference/solarpos_1.csv". Files
// whose name begins with "." or "_" are left out.
//
//go:embed *
var FS embed.FS
