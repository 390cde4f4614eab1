package list

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"barkslip/core/unit"
)

func read(t *testing.T, text string, bare unit.Length) []Row {
	t.Helper()
	list, problems := Read(strings.NewReader(text), bare)
	if len(problems) > 0 {
		t.Fatalf("problems: %v", problems)
	}
	return list.Rows
}

func TestWaysToWriteOneList(t *testing.T) {
	want := []Row{
		{Row: 4, Tree: 17, Across: 3.5 * unit.Inch, Typed: "3.5", Variety: "Lantern", Note: `leans, "a lot"`},
		{Row: 4, Tree: 18, Limb: 2, Across: 90, Typed: "90mm", Stock: "black walnut"},
	}
	comma := "row,tree,limb,across,stock,variety,note\n4,17,,3.5,,Lantern,\"leans, \"\"a lot\"\"\"\n4,18,2,90mm,black walnut,,\n"
	for name, text := range map[string]string{
		"plain":           comma,
		"byte-order mark": "\ufeff" + comma,
		"CRLF":            strings.ReplaceAll(comma, "\n", "\r\n"),
		"CR":              strings.ReplaceAll(comma, "\n", "\r"),
		"no last newline": strings.TrimSuffix(comma, "\n"),
		"blank lines":     "\n" + strings.ReplaceAll(comma, "\n", "\n\n  \n,,,,\n"),
		"other order":     "Note, TREE ,row,Variety,across,Limb,stock\n\"leans, \"\"a lot\"\"\",17,4,Lantern,3.5,,\n,18,4,,90mm,2,black walnut\n",
		"semicolons":      "row;tree;limb;across;stock;variety;note\n4;17;;3,5;;Lantern;\"leans, \"\"a lot\"\"\"\n4;18;2;90mm;black walnut;;\n",
		"tabs":            "row\ttree\tlimb\tacross\tstock\tvariety\tnote\n4\t17\t\t3.5\t\tLantern\t\"leans, \"\"a lot\"\"\"\n4\t18\t2\t90mm\tblack walnut\t\t\n",
		"spaces":          "row, tree, limb, across, stock, variety, note\n 4 , 17,, 3.5 ,, Lantern , \"leans, \"\"a lot\"\"\"\n4,18,2,90mm, black walnut,,\n",
		"spare column":    "row,tree,limb,across,stock,variety,note,\n4,17,,3.5,,Lantern,\"leans, \"\"a lot\"\"\",\n4,18,2,90mm,black walnut\n",
	} {
		got := read(t, text, unit.Inch)
		for i := range got {
			got[i].Line = 0
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %+v", name, got)
		}
	}
}

func TestAcross(t *testing.T) {
	for _, c := range []struct {
		cell string
		bare unit.Length
		mm   float64
	}{
		{"3 1/2", unit.Inch, 88.9}, {"3.5", unit.Inch, 88.9}, {"9cm", unit.Inch, 90}, {"90mm", unit.Inch, 90},
		{"9", unit.Centimetre, 90}, {"3 1/2in", unit.Centimetre, 88.9}, {"", unit.Inch, 0}, {"40", unit.Inch, 1016},
	} {
		got := read(t, "row,tree,across\n1,1,"+c.cell+"\n", c.bare)[0].Across.MM()
		if d := got - c.mm; d > 1e-9 || d < -1e-9 {
			t.Errorf("%q with bare %v: %v mm, want %v", c.cell, c.bare, got, c.mm)
		}
	}
}

func TestProblemsNameLineAndColumn(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "line 1: the list is empty"},
		{"\n\n", "line 1: the list is empty"},
		{"row,variety\n1,Lantern\n", "line 1, column tree: the column is missing"},
		{"row,tree,colour\n1,1,red\n", "line 1, column colour: there is no such column"},
		{"row,tree,row\n1,1,1\n", "line 1, column row: the column stands twice"},
		{"row,tree\n0,1\n", `line 2, column row: "0"; give a whole number from 1 to 9999`},
		{"row,tree\n-1,1\n", `line 2, column row: "-1"`},
		{"row,tree\n1,10000\n", `line 2, column tree: "10000"`},
		{"row,tree\n1,two\n", `line 2, column tree: "two"`},
		{"row,tree\n1,1.5\n", `line 2, column tree: "1.5"`},
		{"row,tree\n1\n", "line 2, column tree: nothing is given"},
		{"row,tree,limb\n1,1,100\n", `line 2, column limb: "100"`},
		{"row,tree,across\n1,1,0\n", `line 2, column across: "0" is not a size of a stump`},
		{"row,tree,across\n1,1,41\n", `line 2, column across: "41" is not a size of a stump`},
		{"row,tree,across\n1,1,-3\n", `line 2, column across: "-3" is not a size`},
		{"row,tree,across\n1,1,thick\n", `line 2, column across: "thick" is not a size`},
		{"row,tree,across\n1,1,NaN\n", `line 2, column across: "NaN" is not a size`},
		{"row,tree\n1,1\n\n2,1\n1,1\n", "line 5: row 1 tree 1 stands on line 2 already"},
		{"row,tree\n1,1,3in\n", `line 2: "3in" stands in a cell that has no column`},
		{"row,tree,\n1,1,3in\n", `line 2: "3in" stands in a cell that has no column`},
		{"row,tree,note\n1,1,a \"b\n", "line 2: the quotes do not pair"},
		{"row,tree,note\n1,1,\"a\n1,2,\n", "line 2: the quotes do not pair"},
		{"row,tree,note\n1,1,caf\xe9\n", "line 2, column note: the text is not in UTF-8"},
		{"row,tree,note\n1,1," + strings.Repeat("a", 1001) + "\n", "line 2, column note: the text is longer than 1000"},
		{"\xff\xfer\x00o\x00w\x00", "line 1: this is not plain text"},
		{"row,tree\n1,1\n1,2\n\x00\x00", "line 1: this is not plain text"},
	} {
		list, problems := Read(strings.NewReader(c.text), unit.Inch)
		if len(problems) == 0 || !strings.HasPrefix(problems[0].String(), c.want) {
			t.Errorf("%q: got %v, want %s", c.text, problems, c.want)
		}
		if len(list.Rows) != 0 {
			t.Errorf("%q: stumps in spite of problems", c.text)
		}
	}
}

func TestEveryProblemIsNamed(t *testing.T) {
	_, problems := Read(strings.NewReader("row,tree,across\n0,1,9in\n1,0,50\n1,1,3\n1,1,3\n"), unit.Inch)
	var got []string
	for _, p := range problems {
		got = append(got, fmt.Sprint(p.Line, p.Column))
	}
	if want := []string{"2row", "3tree", "3across", "5"}; !reflect.DeepEqual(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestControlCharactersAreCleaned(t *testing.T) {
	got := read(t, "row,tree,note\n1,1,\"two\r\nlines\ttab \x1b[31mred\x07 \u202eturned\"\n", unit.Inch)[0].Note
	if want := "two lines tab [31mred turned"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestLongLists(t *testing.T) {
	long := func(n int) string {
		var b strings.Builder
		b.WriteString("row,tree,across\n")
		for i := range n {
			fmt.Fprintf(&b, "%d,%d,3.5\n", i/1000+1, i%1000+1)
		}
		return b.String()
	}
	if got := len(read(t, long(MostRows), unit.Inch)); got != MostRows {
		t.Errorf("%d stumps, want %d", got, MostRows)
	}
	_, problems := Read(strings.NewReader(long(MostRows+500)), unit.Inch)
	if len(problems) != 1 || problems[0].Line != MostRows+2 {
		t.Errorf("a list too long: %v", problems)
	}
}

func FuzzRead(f *testing.F) {
	for _, text := range []string{
		"row,tree\n1,1\n", "\ufeffrow;tree;across\r\n1;1;3,5\r\n", "row,tree,note\n1,1,\"a \"\"b\"\"\"\n", "row,tree\n1,\"1\n", "tree\trow\n1\t2\n",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		list, problems := Read(strings.NewReader(text), unit.Centimetre)
		if len(problems) > 0 {
			if len(list.Rows) > 0 {
				t.Fatal("stumps in spite of problems")
			}
			for _, p := range problems {
				if p.Line < 1 || p.Says == "" {
					t.Fatalf("a problem without place or words: %+v", p)
				}
			}
			return
		}
		seen := map[string]bool{}
		for _, s := range list.Rows {
			if s.Row < 1 || s.Row > MostNumber || s.Tree < 1 || s.Tree > MostNumber || s.Limb < 0 || s.Limb > MostLimb || s.Across < 0 || s.Across > MostAcross || seen[s.Place()] {
				t.Fatalf("not a stump, or twice: %+v", s)
			}
			seen[s.Place()] = true
			if strings.ContainsFunc(s.Note+s.Stock+s.Variety+s.Typed, func(c rune) bool { return c < 0x20 || c == 0x7f }) {
				t.Fatalf("control characters: %+v", s)
			}
		}
	})
}
