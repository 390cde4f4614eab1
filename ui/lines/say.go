package lines

import (
	"fmt"
	"strings"

	"barkslip/ui/part"
)

// write writes lines, each on one line of its own and without a sign that is no
// text.
func (t *talk) write(lines ...string) {
	for _, l := range lines {
		if l = plain(l); l != "" {
			fmt.Fprintln(t.out, l)
		}
	}
}

// plain is a text without what is drawn: bars, dots, rules and marks, and what
// would steer a terminal. Columns stand two spaces apart.
func plain(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || r >= 0x7f && r < 0xa0:
			return ' '
		case r >= 0x2500 && r <= 0x25ff || r >= 0x2800 && r <= 0x28ff:
			return ' '
		}
		return r
	}, s)
	var columns []string
	for _, c := range strings.Split(strings.TrimSpace(s), "  ") {
		if c = strings.TrimSpace(c); c != "" {
			columns = append(columns, c)
		}
	}
	return strings.Join(columns, "  ")
}

// telling is what the screen on top says; of one that does not tell itself it is
// its text.
func (t *talk) telling() part.Telling {
	top := t.p.Top()
	if teller, ok := top.(part.Teller); ok {
		return teller.Tell()
	}
	f := top.Frame()
	out := part.Telling{Head: f.Title + ", " + f.Where}
	for _, l := range f.Body {
		if words := plain(l.Words()); words != "" {
			out.Says = append(out.Says, words)
		}
	}
	if f := top.Field(); f != nil {
		out.Asks = "text"
	}
	for _, row := range t.table() {
		if key := row.Help().Key; row.Help().Desc != "" && number.MatchString(key) {
			out.Answers = append(out.Answers, part.Told{Key: key, Word: row.Help().Desc})
		}
	}
	return out
}

// table is the keys of the screen on top.
func (t *talk) table() []part.Row {
	if keyed, ok := t.p.Top().(interface{ Table() []part.Row }); ok {
		return keyed.Table()
	}
	return nil
}

// tell tells the screen on top: whole where anything of it is new, else only what
// is asked.
func (t *talk) tell() {
	now := t.telling()
	var all []string
	if now.Question != "" {
		all = append(all, now.Question)
	}
	all = append(all, now.Says...)
	for _, a := range now.Answers {
		all = append(all, a.Words())
	}
	head := plain(now.Head)
	if standing := t.p.Session().StandingWords(); standing != "" {
		head += " (" + standing + ")"
	}
	if clocks := t.p.Session().ClockWords(); clocks != t.clocks {
		t.clocks = clocks
		t.write(clocks)
	}
	if head != t.head {
		t.head, t.told = head, ""
		t.write(head)
	}
	if told := strings.Join(all, "\n"); told != t.told {
		t.told = told
		t.write(all...)
	} else {
		t.write(now.Question)
	}
	t.write(hint(now))
	fmt.Fprint(t.out, "> ")
	t.flush()
}

// hint says how to answer.
func hint(now part.Telling) string {
	var words []string
	if a := answersOf(now); a != "" {
		words = append(words, "Answer "+a)
	}
	if now.Asks != "" {
		words = append(words, "Type "+now.Asks)
	}
	if now.Likely != "" {
		words = append(words, "an empty line takes "+now.Likely)
	}
	if len(words) == 0 {
		return ""
	}
	return capital(strings.Join(words, "; ")) + "."
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// answersOf are the numbers that answer, "" where none does.
func answersOf(now part.Telling) string {
	var keys []string
	for _, a := range now.Answers {
		keys = append(keys, a.Key)
	}
	n := len(keys)
	switch {
	case n == 0:
		return ""
	case n == 1:
		return keys[0]
	case n > 2 && inRow(keys):
		return keys[0] + " to " + keys[n-1]
	case n > 3 && inRow(keys[:n-1]):
		return keys[0] + " to " + keys[n-2] + " or " + keys[n-1]
	}
	return strings.Join(keys[:n-1], ", ") + " or " + keys[n-1]
}

// inRow says whether keys are numbers that follow one another.
func inRow(keys []string) bool {
	var first int
	if _, err := fmt.Sscan(keys[0], &first); err != nil {
		return false
	}
	for i, k := range keys {
		if k != fmt.Sprint(first+i) {
			return false
		}
	}
	return true
}
