package core_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"strconv"
	"strings"
	"testing"
)

// Packages that reach outside the program, and calls that read a clock, a
// zone or chance. Time zones, the clock and chance are handed in as values.
var (
	outside = []string{"os", "net", "syscall", "log", "io/ioutil", "runtime", "plugin", "testing", "unsafe", "math/rand", "crypto/rand", "database"}
	unasked = map[string]bool{
		"time.Now": true, "time.Since": true, "time.Until": true, "time.LoadLocation": true, "time.Local": true, "time.Sleep": true,
		"time.After": true, "time.Tick": true, "time.NewTimer": true, "time.NewTicker": true, "fmt.Print": true, "fmt.Println": true, "fmt.Printf": true,
	}
)

func TestCoreIsPure(t *testing.T) {
	files := 0
	err := fs.WalkDir(os.DirFS("."), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		files++
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			if !pure(name) {
				t.Errorf("%s imports %s", path, name)
			}
			if !strings.Contains(path, "/") && strings.HasPrefix(name, "barkslip/") && !strings.HasPrefix(name, "barkslip/core/") {
				t.Errorf("%s imports %s", path, name)
			}
			if strings.Contains(path, "/") && name == "barkslip/core" && !strings.HasPrefix(path, "sample/") {
				t.Errorf("%s imports the root of core, which imports it", path)
			}
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if sel, ok := n.(*ast.SelectorExpr); ok {
				if pkg, ok := sel.X.(*ast.Ident); ok && unasked[pkg.Name+"."+sel.Sel.Name] {
					t.Errorf("%s uses %s.%s", set.Position(sel.Pos()), pkg.Name, sel.Sel.Name)
				}
			}
			return true
		})
		return nil
	})
	if err != nil || files < 50 {
		t.Errorf("%d files looked at, %v", files, err)
	}
}

// pure says whether a package may be used in core: of ours, core's own; of
// others, gonum; of the standard ones, those that stay inside the program.
func pure(name string) bool {
	for _, o := range outside {
		if name == o || strings.HasPrefix(name, o+"/") {
			return false
		}
	}
	first, _, _ := strings.Cut(name, "/")
	return strings.HasPrefix(name, "barkslip/core/") || name == "barkslip/core" || strings.HasPrefix(name, "gonum.org/v1/gonum/") || !strings.Contains(first, ".") && first != "barkslip"
}

func TestPureKnowsWhatIsOutside(t *testing.T) {
	for name, want := range map[string]bool{
		"time": true, "math/big": true, "embed": true, "barkslip/core/unit": true, "gonum.org/v1/gonum/stat": true,
		"os": false, "os/exec": false, "net/http": false, "go.etcd.io/bbolt": false, "github.com/charmbracelet/bubbletea": false,
		"barkslip/store": false, "barkslip/ui/figure": false, "log/slog": false,
	} {
		if pure(name) != want {
			t.Errorf("pure(%s) = %v", name, !want)
		}
	}
}
