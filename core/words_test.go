package core_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// stale are the second names of things that have one: an answer is recorded, a
// figure is worked out, white is painted, a seal is whole, and a formula is its
// author's.
var stale = regexp.MustCompile(`(?i)\bnot so\b|\bput down\b|\breckon|\banew\b|\bseal sound\b|^ ?white (when|by)|\bso it is\b|` +
	`sealed again|of best callus|want care|likelier than the rest|\bof today\b|scipy|fisher\.test|numpy`)

// Each thing has one word in all that core says.
func TestOneWordForAThing(t *testing.T) {
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			says, err := strconv.Unquote(lit.Value)
			if err != nil || !strings.Contains(says, " ") {
				return true
			}
			if word := stale.FindString(says); word != "" {
				t.Errorf("%s: %q in %q", set.Position(lit.Pos()), word, says)
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
