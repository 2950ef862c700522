package rules

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// Folder is the rule of one folder and of what lies below it: the folders of the repository that it
// may import, and why no others. A path that ends in "/…" stands for the folder and all below it.
type Folder struct {
	Path string
	May  []string
	Why  string
}

// Ban forbids imports from outside the repository in one folder and below it.
type Ban struct {
	In     string   // "" is the whole repository
	Except []string // folders below it that are free
	What   []string // import paths, each with all below it
	Why    string
}

// Imports checks a graph against the rules of the folders and the bans.
func Imports(packages []Package, folders []Folder, bans []Ban) []Breach {
	var breaches []Breach
	for _, p := range packages {
		rule, found := ruleOf(p.Folder, folders)
		if !found {
			breaches = append(breaches, Breach{p.Folder, "has no import rule", "every folder has its place in the picture: add it to the table of cmd/check/rules"})
		}
		for _, path := range p.Imports {
			target, ours := strings.CutPrefix(path, "./")
			switch {
			case ours && found && !rule.allows(target):
				breaches = append(breaches, Breach{p.Folder, "imports " + target, rule.Why})
			case !ours:
				breaches = append(breaches, banned(p.Folder, path, bans)...)
			}
		}
	}
	return breaches
}

// ruleOf is the rule with the longest path that the folder lies under.
func ruleOf(folder string, folders []Folder) (rule Folder, found bool) {
	for _, f := range folders {
		if under(folder, f.Path) && (!found || len(f.Path) > len(rule.Path)) {
			rule, found = f, true
		}
	}
	return rule, found
}

// allows tells whether a package of the folder may import another package of the repository. What
// lies below the folder is its own.
func (f Folder) allows(target string) bool {
	if under(target, f.Path) && f.Path != "sim" {
		return true
	}
	for _, may := range f.May {
		tree, all := strings.CutSuffix(may, "/…")
		if target == tree || (all && under(target, tree)) {
			return true
		}
	}
	return false
}

func banned(folder, path string, bans []Ban) []Breach {
	var breaches []Breach
	for _, ban := range bans {
		if ban.In != "" && !under(folder, ban.In) || anyUnder(folder, ban.Except) || !anyTree(path, ban.What) {
			continue
		}
		breaches = append(breaches, Breach{folder, "imports " + path, ban.Why})
	}
	return breaches
}

func anyUnder(folder string, trees []string) bool {
	for _, tree := range trees {
		if under(folder, tree) {
			return true
		}
	}
	return false
}

func anyTree(path string, trees []string) bool {
	for _, tree := range trees {
		if under(path, tree) {
			return true
		}
	}
	return false
}

// Never says that one folder must not reach another, directly or through others.
type Never struct {
	From   string
	Except []string // folders below From that are free
	To     string
	Why    string
}

// Reach checks what each package reaches through any number of imports.
func Reach(packages []Package, nevers []Never) []Breach {
	imports := map[string][]string{}
	for _, p := range packages {
		for _, path := range p.Imports {
			if target, ours := strings.CutPrefix(path, "./"); ours {
				imports[p.Folder] = append(imports[p.Folder], target)
			}
		}
	}
	var breaches []Breach
	for _, p := range packages {
		through := reached(p.Folder, imports)
		for _, target := range slices.Sorted(maps.Keys(through)) {
			for _, n := range nevers {
				if under(p.Folder, n.From) && !anyUnder(p.Folder, n.Except) && under(target, n.To) {
					breaches = append(breaches, Breach{p.Folder, fmt.Sprintf("reaches %s (through %s)", target, through[target]), n.Why})
				}
			}
		}
	}
	return breaches
}

// reached lists every folder that start reaches, each with the folder that imports it.
func reached(start string, imports map[string][]string) map[string]string {
	through := map[string]string{}
	queue := []string{start}
	for len(queue) > 0 {
		from := queue[0]
		queue = queue[1:]
		for _, target := range imports[from] {
			if _, seen := through[target]; !seen && target != start {
				through[target] = from
				queue = append(queue, target)
			}
		}
	}
	return through
}
