package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// floors is the house: a package imports only from a lower floor.
var floors = map[string]int{
	"plan/diag": 0, "plan/diag/outside": 0, "plan/diag/ready": 0, "plan/trade": 0, "plan/hazard/class": 0, "plan/hazard/odds": 0, "shotlist/order": 0, "templates/press": 0, "samples": 0,
	"plan/prose": 1,
	"plan":       2,
	"plan/given": 3, "plan/timing": 3, "plan/hazard": 3, "plan/claim": 3, "plan/diagnose": 3, "plan/kit": 3,
	"shotlist": 4, "chapters": 4, "chapters/captions": 4,
	"chapters/marks": 5, "chapters/align": 5,
	"chapters/pace": 6, "chapters/cut": 6, "templates/blurb": 6, "templates/picture": 6,
	"plan/lint":       7,
	"templates/sheet": 8, "templates/book": 8,
	"cmd/internal/build": 9,
	"cmd/internal/desk":  10,
	"cmd/internal/cli":   11,
	"cmd/fixslate":       12,
}

// owners are the packages that may import a module of others.
var owners = map[string]string{
	"github.com/BurntSushi/toml":            "plan",
	"github.com/pelletier/go-toml":          "plan",
	"github.com/yuin/goldmark":              "plan/prose",
	"github.com/asticode/go-astisub":        "chapters/captions",
	"github.com/rivo/uniseg":                "chapters/captions",
	"golang.org/x/text":                     "chapters/captions",
	"github.com/spf13/cobra":                "cmd/internal/cli",
	"github.com/schollz/progressbar":        "cmd/internal/cli",
	"golang.org/x/term":                     "cmd/internal/cli",
	"golang.org/x/sys":                      "cmd/internal/build",
	"golang.org/x/net":                      "",
	"github.com/google/go-cmp":              "",
	"github.com/rogpeppe/go-internal":       "",
	"github.com/santhosh-tekuri/jsonschema": "",
	"github.com/chromedp/chromedp":          "",
	"github.com/chromedp/cdproto":           "",
}

// The import lines are held to the table: downward only, one owner for each
// module of others; an owner of "" is for tests.
func TestImportsRunDownward(t *testing.T) {
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && strings.HasPrefix(d.Name(), ".") && d.Name() != ".." {
			return fs.SkipDir
		}
		if strings.HasSuffix(name, ".go") {
			checkImports(t, root, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func checkImports(t *testing.T, root, name string) {
	rel, err := filepath.Rel(root, name)
	if err != nil {
		t.Fatal(err)
	}
	from := path.Dir(filepath.ToSlash(rel))
	isTest := strings.HasSuffix(name, "_test.go")
	floor, known := floors[from]
	if !known {
		t.Errorf("%s: package %s has no floor", rel, from)
		return
	}
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	for _, spec := range file.Imports {
		to, _ := strconv.Unquote(spec.Path.Value)
		if inner, ok := strings.CutPrefix(to, "fixslate/"); ok {
			below, known := floors[inner]
			switch {
			case !known:
				t.Errorf("%s imports %s, which has no floor", rel, to)
			case below >= floor && inner != from && !isTest:
				t.Errorf("%s (floor %d) imports %s (floor %d)", rel, floor, inner, below)
			}
			continue
		}
		if !strings.Contains(strings.Split(to, "/")[0], ".") {
			continue // the standard library
		}
		owned := false
		for module, owner := range owners {
			if to == module || strings.HasPrefix(to, module+"/") {
				owned = true
				if owner != from && !isTest {
					t.Errorf("%s imports %s, which %q owns", rel, to, owner)
				}
			}
		}
		if !owned {
			t.Errorf("%s imports %s, which nobody owns", rel, to)
		}
	}
}

// The top level is fixed.
func TestTopLevel(t *testing.T) {
	allowed := map[string]bool{"cmd": true, "plan": true, "shotlist": true, "chapters": true, "templates": true, "samples": true, "testdata": true, "go.mod": true, "go.sum": true, "README.md": true, "DEVELOPERS.md": true}
	entries, err := os.ReadDir(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := e.Name(); !allowed[name] && !strings.HasPrefix(name, ".") {
			t.Errorf("%s does not belong at the top level", name)
		}
	}
}
