package list

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"barkslip/core/bounded"
	"barkslip/core/unit"
)

// Read reads a list: a heading with row and tree, and any of limb, across,
// stock, variety and note, in any order; then a line a stump. A bare number in
// across is taken in units of bare. Text in quotes, blank lines, line ends of
// any system, a byte-order mark, and semicolons between the cells where the
// heading has them are all fine. With any problem the list is not to be used.
func Read(r io.Reader, bare unit.Length) (List, []Problem) {
	in, separator, problem := start(bounded.Text(r))
	if problem != nil {
		return List{}, []Problem{*problem}
	}
	lines := csv.NewReader(in)
	lines.Comma = separator
	lines.FieldsPerRecord = -1
	lines.TrimLeadingSpace = separator != '\t' // else empty cells between tabs would vanish
	lines.ReuseRecord = true
	reader := reader{bare: bare, commas: separator == ';', seen: map[place]int{}}
	for !reader.full {
		cells, err := lines.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil && !reader.badLine(err) {
			break
		}
		if err == nil && !blank(cells) {
			line, _ := lines.FieldPos(0)
			reader.line(line, cells)
		}
	}
	return reader.finish()
}

// start takes off the byte-order mark and finds what parts the cells.
func start(r io.Reader) (in *bufio.Reader, separator rune, problem *Problem) {
	in = bufio.NewReaderSize(r, 1<<16)
	head, _ := in.Peek(1 << 15)
	if bytes.HasPrefix(head, []byte{0xff, 0xfe}) || bytes.HasPrefix(head, []byte{0xfe, 0xff}) || bytes.IndexByte(head, 0) >= 0 {
		return nil, 0, &Problem{Line: 1, Says: "this is not plain text; save the list as CSV in UTF-8"}
	}
	if mark := []byte("\ufeff"); bytes.HasPrefix(head, mark) {
		_, _ = in.Discard(len(mark))
		head = head[len(mark):]
	}
	if bytes.IndexByte(head, '\n') < 0 {
		in = bufio.NewReader(returns{in})
	}
	heading, _, _ := bytes.Cut(bytes.TrimLeft(head, "\r\n \t"), []byte("\n"))
	for _, c := range ",;\t" {
		if bytes.ContainsRune(heading, c) {
			return in, c, nil
		}
	}
	return in, ',', nil
}

// returns reads text whose lines end in carriage returns alone.
type returns struct{ from io.Reader }

func (r returns) Read(p []byte) (int, error) {
	n, err := r.from.Read(p)
	for i, c := range p[:n] {
		if c == '\r' {
			p[i] = '\n'
		}
	}
	return n, err
}

// blank says whether a line holds nothing: spreadsheets leave such lines.
func blank(cells []string) bool {
	for _, c := range cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return true
}

type place struct{ row, tree, limb int }

// reader gathers the stumps and problems of a list.
type reader struct {
	bare     unit.Length
	commas   bool           // a comma in a number stands for the point
	at       map[string]int // cell of each column; nil before the heading
	width    int            // cells of the heading
	list     List
	seen     map[place]int // the line each stump first stood on
	problems []Problem
	full     bool // nothing further is read
}

func (r *reader) problem(line int, column, format string, args ...any) {
	r.problems = append(r.problems, Problem{line, column, fmt.Sprintf(format, args...)})
	if len(r.problems) == MostProblems {
		r.problems = append(r.problems, Problem{line, "", "there is more wrong than is told one by one; nothing behind this was read"})
		r.full = true
	}
}

// badLine tells of a line whose quotes went wrong, and whether to read on.
func (r *reader) badLine(err error) bool {
	var parse *csv.ParseError
	var over *bounded.Error
	if errors.As(err, &over) {
		r.problem(over.Line, "", "%s", over.Says)
		return false
	}
	if !errors.As(err, &parse) {
		r.problem(max(1, len(r.list.Rows)+1), "", "the list cannot be read further: %v", err)
		return false
	}
	r.problem(parse.StartLine, "", "the quotes do not pair; a quote inside a cell is written twice, and the cell in quotes")
	return true
}

func (r *reader) line(line int, cells []string) {
	switch {
	case r.at == nil:
		r.heading(line, cells)
	case len(r.list.Rows) == MostRows:
		r.problem(line, "", "more than %d stumps; split the list", MostRows)
		r.full = true
	default:
		r.stump(line, cells)
	}
}

func (r *reader) finish() (List, []Problem) {
	if r.at == nil && len(r.problems) == 0 {
		r.problem(1, "", "the list is empty; its first line names the columns: %s", strings.Join(columns, ","))
	}
	if len(r.problems) > 0 {
		return List{}, r.problems
	}
	return r.list, nil
}
