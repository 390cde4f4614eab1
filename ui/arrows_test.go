package ui

import (
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// leaves import none of the screens' packages, but for paper, which needs the
// terminal settled.
var leaves = []string{"paper", "figure", "quiet", "pdf"}

// TestArrows holds who may import whom: the router the screens, a screen only
// part and its leaves, part only the leaves; and of all the rest of the program
// only core.
func TestArrows(t *testing.T) {
	folders, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, f := range folders {
		if !f.IsDir() || f.Name() == "testdata" {
			continue
		}
		seen++
		for _, path := range imports(t, f.Name()) {
			if !allowed(f.Name(), path) {
				t.Errorf("ui/%s imports %s", f.Name(), path)
			}
		}
	}
	if seen < 9 {
		t.Errorf("only %d packages", seen)
	}
	for _, path := range imports(t, ".") {
		if strings.HasPrefix(path, "barkslip/") && !strings.HasPrefix(path, "barkslip/ui/") && !ofCore(path) {
			t.Errorf("ui imports %s", path)
		}
	}
}

// allowed says whether a package of ui may import another.
func allowed(name, path string) bool {
	of, ours := strings.CutPrefix(path, "barkslip/")
	of, inUI := strings.CutPrefix(of, "ui/")
	switch {
	case !ours:
		return true
	case !inUI:
		return ofCore(path)
	case slices.Contains(leaves, name):
		return name == "paper" && of == "quiet"
	case name == "part":
		return slices.Contains(leaves, of)
	}
	return of == "part" || slices.Contains(leaves, of)
}

func ofCore(path string) bool {
	return path == "barkslip/core" || strings.HasPrefix(path, "barkslip/core/")
}

// imports are what the files of a folder import, tests aside.
func imports(t *testing.T, dir string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%s has no files: %v", dir, err)
	}
	var out []string
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range f.Imports {
			path, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, path)
		}
	}
	return out
}
