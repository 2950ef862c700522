package table

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"rowlight/testdata"
)

const small = "# source: invented\n# units: m\nheight_m,name\n1.5,post\n 2 ,\"a, b\"\n"

func files(text string) fs.FS {
	return fstest.MapFS{"t.csv": {Data: []byte(text)}}
}

func TestReadKeepsNotesHeaderAndRows(t *testing.T) {
	got, err := Read(files(small), "t.csv")
	if err != nil {
		t.Fatal(err)
	}
	if strings.Join(got.Notes, "|") != "source: invented|units: m" {
		t.Errorf("notes %q", got.Notes)
	}
	if strings.Join(got.Columns, "|") != "height_m|name" || got.Len() != 2 || got.Name != "t.csv" {
		t.Errorf("columns %q, %d rows, name %q", got.Columns, got.Len(), got.Name)
	}
	heights, err := got.Floats("height_m")
	if err != nil || len(heights) != 2 || heights[0] != 1.5 || heights[1] != 2 {
		t.Errorf("heights %v, %v", heights, err)
	}
	if name := got.String(1, "name"); name != "a, b" {
		t.Errorf("name %q", name)
	}
}

func TestFloatSaysWhereTheCellIsNoNumber(t *testing.T) {
	got, err := Read(files(small), "t.csv")
	if err != nil {
		t.Fatal(err)
	}
	_, err = got.Float(0, "name")
	if err == nil || err.Error() != `t.csv: line 4, column name: "post" is not a number` {
		t.Errorf("error %v", err)
	}
	_, err = got.Float(0, "width_m")
	if err == nil || !strings.Contains(err.Error(), `no column "width_m"`) {
		t.Errorf("error %v", err)
	}
}

// Lines count notes between the rows, cells that run over several lines, and a mark of UTF-8 at the start.
func TestLinesAreThoseOfTheFile(t *testing.T) {
	got, err := Parse(strings.NewReader("\ufeff# note\n# note\na,b\n1,\"x\ny\"\n# between\n2,z\n"))
	if err != nil {
		t.Fatal(err)
	}
	if got.Line(-1) != 3 || got.Line(0) != 4 || got.Line(1) != 7 || len(got.Notes) != 2 {
		t.Errorf("header on line %d, rows on %d and %d, %d notes", got.Line(-1), got.Line(0), got.Line(1), len(got.Notes))
	}
}

func TestReadRefusesBrokenTables(t *testing.T) {
	for name, test := range map[string]struct{ text, want string }{
		"no header":       {"# only a note\n", "no header line"},
		"short row":       {"# note\na,b\n1,2\n3\n", "t.csv: line 4: 1 cells under 2 columns"},
		"repeated column": {"a,b,a\n", `line 1: column "a" is there twice`},
		"open quote":      {"a\n\"x\n", "t.csv: line 2"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Read(files(test.text), "t.csv")
			if err == nil || !strings.Contains(err.Error(), test.want) {
				t.Errorf("error %v, want one with %q", err, test.want)
			}
		})
	}
	if _, err := Read(files(small), "absent.csv"); err == nil {
		t.Error("no error for an absent file")
	}
}

func TestReadStrictWantsExactlyTheColumns(t *testing.T) {
	if _, err := ReadStrict(files(small), "t.csv", "name", "height_m"); err != nil {
		t.Error(err)
	}
	if _, err := ReadStrict(files(small), "t.csv", "height_m"); err == nil || !strings.Contains(err.Error(), `unknown column "name"`) {
		t.Errorf("extra column: %v", err)
	}
	if _, err := ReadStrict(files(small), "t.csv", "height_m", "name", "role"); err == nil || !strings.Contains(err.Error(), `column "role" is missing`) {
		t.Errorf("missing column: %v", err)
	}
}

// Every embedded reference table parses and says where it comes from.
func TestReferenceTablesReadAndNameTheirSource(t *testing.T) {
	names, err := fs.Glob(testdata.FS, "reference/*.csv")
	if err != nil {
		t.Fatal(err)
	}
	if len(names) < 24 {
		t.Errorf("%d reference tables, at least 24 are used by tests", len(names))
	}
	for _, name := range names {
		got, err := Read(testdata.FS, name)
		if err != nil {
			t.Error(err)
			continue
		}
		if len(got.Notes) == 0 || got.Len() == 0 {
			t.Errorf("%s: %d notes, %d rows", name, len(got.Notes), got.Len())
		}
	}
}
