package rules

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"path/filepath"
)

// clockCalls are the functions of package time that read the machine's clock or wait for it.
var clockCalls = map[string]bool{
	"Now": true, "Since": true, "Until": true, "Sleep": true, "After": true, "AfterFunc": true,
	"Tick": true, "NewTimer": true, "NewTicker": true,
}

// Sources checks the syntax of the files of each package: the simulation reads no clock, nothing
// runs before main, and the files of render/screen are for js alone.
func Sources(root string, packages []Package) ([]Breach, error) {
	var breaches []Breach
	for _, p := range packages {
		for _, name := range p.Files {
			file := path.Join(p.Folder, name)
			fset := token.NewFileSet()
			syntax, err := parser.ParseFile(fset, filepath.Join(root, filepath.FromSlash(file)), nil, parser.SkipObjectResolution)
			if err != nil {
				return nil, err
			}
			breaches = append(breaches, startup(file, fset, syntax)...)
			if under(p.Folder, "sim") {
				breaches = append(breaches, clock(file, fset, syntax)...)
			}
		}
	}
	return breaches, nil
}

// startup finds init functions.
func startup(file string, fset *token.FileSet, syntax *ast.File) []Breach {
	var breaches []Breach
	for _, declared := range syntax.Decls {
		if f, is := declared.(*ast.FuncDecl); is && f.Recv == nil && f.Name.Name == "init" {
			breaches = append(breaches, Breach{
				Where: place(file, fset, f.Pos()), What: "has an init function",
				Why: "nothing runs before main: a reader should find every step by following calls",
			})
		}
	}
	return breaches
}

// clock finds calls that read the clock.
func clock(file string, fset *token.FileSet, syntax *ast.File) []Breach {
	local := localName(syntax, "time")
	if local == "" {
		return nil
	}
	var breaches []Breach
	ast.Inspect(syntax, func(n ast.Node) bool {
		selector, is := n.(*ast.SelectorExpr)
		if !is {
			return true
		}
		if from, is := selector.X.(*ast.Ident); is && from.Name == local && clockCalls[selector.Sel.Name] {
			breaches = append(breaches, Breach{
				Where: place(file, fset, n.Pos()), What: "uses time." + selector.Sel.Name,
				Why: "the same scenario gives the same result at any moment: callers that need the clock pass a function",
			})
		}
		return true
	})
	return breaches
}

// localName is the name by which a file calls an imported package, or "" when it does not import it.
func localName(syntax *ast.File, importPath string) string {
	for _, spec := range syntax.Imports {
		if spec.Path.Value != `"`+importPath+`"` {
			continue
		}
		if spec.Name != nil {
			return spec.Name.Name
		}
		return path.Base(importPath)
	}
	return ""
}

func place(file string, fset *token.FileSet, pos token.Pos) string {
	return fmt.Sprintf("%s:%d", file, fset.Position(pos).Line)
}
