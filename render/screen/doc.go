// Package screen draws what render lists with Ebiten, in a browser. It decides nothing about the
// picture: lists, colours and formulas come from render. All other files are compiled for js alone.
package screen
