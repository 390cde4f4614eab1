package list

import (
	"errors"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"barkslip/core/unit"
)

// stump reads one line of the list.
func (r *reader) stump(line int, cells []string) {
	before := len(r.problems)
	for i, cell := range cells {
		if strings.TrimSpace(cell) != "" && (i >= r.width || !r.named(i)) {
			r.problem(line, "", "%q stands in a cell that has no column", short(clean(cell)))
			break
		}
	}
	s := Row{
		Line: line, Row: r.number(line, cells, "row", MostNumber, true), Tree: r.number(line, cells, "tree", MostNumber, true),
		Limb:  r.number(line, cells, "limb", MostLimb, false),
		Stock: r.text(line, cells, "stock"), Variety: r.text(line, cells, "variety"), Note: r.text(line, cells, "note"),
	}
	s.Across, s.Typed = r.across(line, cells)
	if len(r.problems) > before {
		return
	}
	at := place{s.Row, s.Tree, s.Limb}
	if first, again := r.seen[at]; again {
		r.problem(line, "", "%s stands on line %d already", s.Place(), first)
		return
	}
	r.seen[at] = line
	r.list.Rows = append(r.list.Rows, s)
}

// named says whether a cell belongs to a column.
func (r *reader) named(i int) bool {
	for _, at := range r.at {
		if at == i {
			return true
		}
	}
	return false
}

// cell is what a column holds on a line, "" where it holds nothing.
func (r *reader) cell(line int, cells []string, column string) string {
	i, ok := r.at[column]
	if !ok || i >= len(cells) {
		return ""
	}
	if !utf8.ValidString(cells[i]) {
		r.problem(line, column, "the text is not in UTF-8; save the list as CSV in UTF-8")
		return ""
	}
	return clean(cells[i])
}

func (r *reader) number(line int, cells []string, column string, most int, need bool) int {
	before := len(r.problems)
	text := r.cell(line, cells, column)
	if text == "" && (!need || len(r.problems) > before) {
		return 0
	}
	n, err := strconv.Atoi(text)
	switch {
	case text == "":
		r.problem(line, column, "nothing is given; give a whole number from 1 to %d", most)
	case err != nil || n < 1 || n > most:
		r.problem(line, column, "%q; give a whole number from 1 to %d", short(text), most)
		return 0
	}
	return n
}

var commaNumber = regexp.MustCompile(`^[0-9]+,[0-9]+`)

// across reads the diameter; a list with semicolons may write 8,5 for 8.5.
func (r *reader) across(line int, cells []string) (unit.Length, string) {
	text := r.cell(line, cells, "across")
	if text == "" {
		return 0, ""
	}
	number := text
	if r.commas && commaNumber.MatchString(text) {
		number = strings.Replace(text, ",", ".", 1)
	}
	l, err := unit.ParseLength(number, r.bare)
	switch {
	case err != nil:
		r.problem(line, "across", "%q is not a size; give %s", short(text), accepted(err))
	case l <= 0 || l > MostAcross:
		r.problem(line, "across", "%q is not a size of a stump; give one above 0 and up to 40in (1016mm)", short(text))
	}
	return l, number
}

func accepted(err error) string {
	var fault *unit.Error
	if errors.As(err, &fault) {
		return fault.Accepted
	}
	return "a size with its unit"
}

func (r *reader) text(line int, cells []string, column string) string {
	text := r.cell(line, cells, column)
	if utf8.RuneCountInString(text) > mostText {
		r.problem(line, column, "the text is longer than %d characters", mostText)
	}
	return text
}

// clean makes a cell one line of printable text: line ends and tabs become
// spaces, other control characters and marks that turn the direction of text
// are left out.
func clean(s string) string {
	s = strings.Map(func(c rune) rune {
		switch {
		case unicode.IsSpace(c):
			return ' '
		case !unicode.IsPrint(c), c == utf8.RuneError:
			return -1
		}
		return c
	}, s)
	return strings.TrimSpace(s)
}

// short keeps what is shown of a mistaken cell short.
func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
