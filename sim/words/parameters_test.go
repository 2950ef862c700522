package words_test

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// always are the parameters that every fault may use: its field, and the place that reading a weather
// file adds to it.
var always = []string{"field", "line", "column", "latitude_deg", "date"}

// TestTextsUseOnlyParametersThatTheirCodeGives reads the sources: a function that names a code must also
// name, as keys of its parameters, what the text of the code wants.
func TestTextsUseOnlyParametersThatTheirCodeGives(t *testing.T) {
	texts := catalogue(t)
	given := parametersByCode(t, "../..")
	wanted := regexp.MustCompile(`\{(\w+)`)
	checked := 0
	for code, keys := range given {
		for _, match := range wanted.FindAllStringSubmatch(texts[code], -1) {
			checked++
			if !keys[match[1]] {
				t.Errorf("%s wants {%s}, which the code that names it does not give", code, match[1])
			}
		}
	}
	if checked < 50 {
		t.Errorf("only %d parameters were found", checked)
	}
}

// parametersByCode finds, for every fault and notice, the texts that stand in the same function: the
// keys of its parameters are among them.
func parametersByCode(t *testing.T, root string) map[string]map[string]bool {
	t.Helper()
	given := map[string]map[string]bool{}
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, declaration := range file.Decls {
			if function, ok := declaration.(*ast.FuncDecl); ok {
				addCodes(given, function)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return given
}

// addCodes adds the codes of one function with all its texts.
func addCodes(given map[string]map[string]bool, function *ast.FuncDecl) {
	texts := map[string]bool{}
	for _, name := range always {
		texts[name] = true
	}
	ast.Inspect(function, func(node ast.Node) bool {
		if literal, ok := node.(*ast.BasicLit); ok && literal.Kind == token.STRING {
			texts[strings.Trim(literal.Value, "\"`")] = true
		}
		return true
	})
	for text := range texts {
		if !strings.HasPrefix(text, "fault.") && !strings.HasPrefix(text, "notice.") {
			continue
		}
		if given[text] == nil {
			given[text] = map[string]bool{}
		}
		for other := range texts {
			given[text][other] = true
		}
	}
}

// TestQuantitiesOfWeatherFilesHaveWords reads the sources: what a fault of a weather file can be about
// has a word.
func TestQuantitiesOfWeatherFilesHaveWords(t *testing.T) {
	texts := catalogue(t)
	files, err := filepath.Glob("../weather/*.go")
	if err != nil {
		t.Fatal(err)
	}
	what := regexp.MustCompile(`(?:quantity\{|whole\([^,"]+, |place\([^,"]+, \d+, |"what": |\.value\(index, )"(\w+)"`)
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, match := range what.FindAllSubmatch(source, -1) {
			if texts["word."+string(match[1])] == "" {
				t.Errorf("%s: no word for %s", filepath.Base(file), match[1])
			}
		}
	}
}

// catalogue reads the English catalogue.
func catalogue(t *testing.T) map[string]string {
	t.Helper()
	raw, err := os.ReadFile("en.json")
	if err != nil {
		t.Fatal(err)
	}
	var texts map[string]string
	if err := json.Unmarshal(raw, &texts); err != nil {
		t.Fatal(err)
	}
	return texts
}
