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
	outside = []string{"os", "net", "syscall", "log", "io/ioutil", "runtime", "plugin", "testing", "unsafe", "math/rand", "crypto/rand", "database", "sync"}
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
		if strings.HasPrefix(path, "record/recordtest/") {
			return nil // helpers of tests alone
		}
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
			if why := misplaced(path, name); why != "" {
				t.Errorf("%s imports %s: %s", path, name, why)
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

// floors are the rooms of core: an arrow goes from a room to one on a lower
// floor. The leaves, on floor 0, may use one another.
var floors = map[string]int{
	"bounded": 0, "unit": 0, "trade": 0, "girth": 0, "scion": 0, "weather": 0, "tally": 0, "list": 0, "zone": 0, "ground": 0,
	"record": 1, "ready": 2, "due": 3, "walk": 4, "out": 4, "changes": 4, "plan": 5, "results": 5, "practice": 5, "sample": 5, "sheet": 6,
}

// misplaced says why a file of core may not import a package of ours, "" where
// it may.
func misplaced(file, name string) string {
	to, ours := strings.CutPrefix(name, "barkslip/")
	if !ours || strings.HasPrefix(file, "record/recordtest/") {
		return ""
	}
	to, inCore := strings.CutPrefix(to, "core/")
	from, _, inRoom := strings.Cut(file, "/")
	high, known := floors[from]
	low, there := floors[to]
	switch {
	case !inRoom:
		return "nothing lives in the root of core"
	case !known:
		return from + " is no room of core"
	case !inCore || !there:
		return "it is no room of core"
	case low >= high && (low > 0 || high > 0):
		return "the arrow goes up"
	}
	return ""
}

// The arrows are held: each of these would be seen.
func TestArrowsThatGoUpAreSeen(t *testing.T) {
	for _, c := range []struct {
		file, name string
		may        bool
	}{
		{"due/tie.go", "barkslip/core/record", true}, {"walk/walk.go", "barkslip/core/due", true}, {"girth/twine.go", "barkslip/core/unit", true},
		{"record/stump.go", "barkslip/core/due", false}, {"due/tie.go", "barkslip/core/walk", false}, {"plan/pace.go", "barkslip/core/sample", false},
		{"walk/walk.go", "barkslip/store", false}, {"unit/unit.go", "barkslip/core/record", false}, {"doc.go", "barkslip/core/record", false},
	} {
		if got := misplaced(c.file, c.name) == ""; got != c.may {
			t.Errorf("%s -> %s: %v", c.file, c.name, got)
		}
	}
}

// pure says whether a package may be used in core: of ours, core's own; of
// others, gonum and the reader of JSON; of the standard ones, those that stay inside the program.
func pure(name string) bool {
	for _, o := range outside {
		if name == o || strings.HasPrefix(name, o+"/") {
			return false
		}
	}
	first, _, _ := strings.Cut(name, "/")
	return strings.HasPrefix(name, "barkslip/core/") || name == "barkslip/core" || strings.HasPrefix(name, "gonum.org/v1/gonum/") ||
		name == "github.com/go-faster/jx" || !strings.Contains(first, ".") && first != "barkslip"
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
