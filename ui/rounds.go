package ui

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// roundsScreen is what is due on the block, in walking order.
type roundsScreen struct {
	r     *root
	x     *shared
	calls []due.Call
	at    int
	top   int
	span  int            // 0 now, 1 today, 2 this week, 3 a day named
	named unit.Date      // the day, for span 3
	kind  int            // 0 all, else kind+1
	row   int            // 0 all
	late  bool           // late ones only
	asOf  time.Time      // the minute the list was made in
	done  []record.Event // answers given on this round, the newest last
}

var spanWords = []string{"now", "today", "this week", "on a day"}

func newRounds(r *root) *roundsScreen {
	s := &roundsScreen{r: r, x: r.x, span: 1}
	s.load()
	return s
}

// until is the instant the round is judged at.
func (s *roundsScreen) until() time.Time {
	b := s.x.site()
	today := b.Day(s.x.now())
	switch s.span {
	case 1:
		return due.EndOf(today, b.Zone)
	case 2:
		return due.EndOf(today.Add(6), b.Zone)
	case 3:
		return due.EndOf(s.named, b.Zone)
	}
	return s.x.now()
}

// judged is the time lateness is judged at: now, or the end of a day named.
func (s *roundsScreen) judged() time.Time {
	if s.span == 3 {
		return s.until()
	}
	return s.x.now()
}

func (s *roundsScreen) load() {
	s.asOf = s.x.now().Truncate(time.Minute)
	s.calls = due.Round(s.x.summaries(s.x.block), due.Asked{From: s.judged(), Until: s.until(), Keep: s.keep, CutBack: -1})
	s.at = max(0, min(s.at, len(s.calls)-1))
}

// fresh makes the list anew once a minute, with the cursor on the same stump:
// what was not due may be.
func (s *roundsScreen) fresh() {
	if s.asOf.Equal(s.x.now().Truncate(time.Minute)) || s.at >= len(s.calls) {
		return
	}
	here := s.calls[s.at].Stump
	s.load()
	if i := slices.IndexFunc(s.calls, func(c due.Call) bool { return c.Stump == here }); i >= 0 {
		s.at = i
	}
}

func (s *roundsScreen) keep(d due.Due) bool {
	return (s.kind == 0 || int(d.Kind) == s.kind-1) && (s.row == 0 || int(d.Stump.Row) == s.row) && (!s.late || d.Late(s.judged()))
}

func (s *roundsScreen) key(key string) {
	if !press(s.table(), key) && !press(s.r.common(s.help), key) {
		s.x.say(noSuchKey)
	}
}

func (s *roundsScreen) table() []binding {
	return []binding{
		{keys: []string{"enter", "n"}, show: "Enter", word: "do it", help: "Go to the stump under the cursor and do what is due; Esc comes back to the round.", do: s.open},
		{keys: []string{"1"}, word: "now", help: "What can be done now.", do: func() { s.over(0) }},
		{keys: []string{"2"}, word: "today", help: "What falls due today.", do: func() { s.over(1) }},
		{keys: []string{"3"}, word: "week", help: "What falls due within seven days.", do: func() { s.over(2) }},
		{keys: []string{"4"}, word: "a day", help: "What is due at the end of a day you name.", do: s.askDay},
		{keys: []string{"!"}, word: "late", help: "Only what is late, or all again.", do: func() { s.late = !s.late; s.load() }},
		{keys: []string{"f"}, word: "kind", help: "Only one kind of work.", do: s.pickKind},
		{keys: []string{"r"}, word: "row", help: "Only one row; nothing typed shows all.", do: s.askRow},
		{keys: []string{"w"}, word: "why", help: "Why it is due, and by whose word.", do: s.why},
		{keys: []string{"u"}, help: "Take back the last answer given in this round.", do: s.takeBack},
		{keys: []string{"p"}, help: "The round as plain text, in a file.", do: s.save},
		{keys: []string{"up", "k"}, show: "up down", help: "Along the round.", do: func() { s.step(-1) }},
		{keys: []string{"down", "j"}, do: func() { s.step(1) }},
		{keys: []string{"pgup"}, do: func() { s.step(-10) }},
		{keys: []string{"pgdown", " "}, do: func() { s.step(10) }},
		{keys: []string{"esc"}, show: "Esc", help: "Back to the block.", do: func() { s.r.rounds = nil; s.r.openBlock() }},
	}
}

func (s *roundsScreen) help() { s.r.help("rounds", s.table(), s.r.common(nil)) }

func (s *roundsScreen) over(span int) { s.span = span; s.at = 0; s.load() }

func (s *roundsScreen) step(by int) { s.at = max(0, min(s.at+by, len(s.calls)-1)) }

// open goes to the stump, and to the step that meets the first thing due.
func (s *roundsScreen) open() {
	if s.at >= len(s.calls) {
		s.x.say("Nothing to do here.")
		return
	}
	c := s.calls[s.at]
	s.r.openStump(c.Stump)
	if s.r.stump != nil {
		s.r.stump.meet(c.Dues)
	}
}

// takeBack takes back the last answer given on this round that still stands,
// and stays on the round.
func (s *roundsScreen) takeBack() {
	for len(s.done) > 0 {
		e := s.done[len(s.done)-1]
		s.done = s.done[:len(s.done)-1]
		stump, err := newStump(s.r, e.Stump)
		if err != nil {
			s.x.fail(err)
			return
		}
		if !stump.s.Stands(e.ID) {
			continue
		}
		stump.takeBack("Took back on "+e.Stump.Place(), e)
		s.load()
		return
	}
	s.x.say("Nothing more was answered on this round.")
}

func (s *roundsScreen) askDay() {
	s.r.ask("Which day (2027-06-01, 06-01, or tomorrow):", "tomorrow", true, func(text string) error {
		d, err := readDay(strings.TrimSpace(text), s.x.site().Day(s.x.now()))
		if err != nil {
			return err
		}
		s.named = d
		s.over(3)
		return nil
	})
}

// readDay reads a day: 2027-06-01, 06-01 or 1 Jun of this year, or tomorrow.
func readDay(text string, today unit.Date) (unit.Date, error) {
	if strings.EqualFold(text, "tomorrow") {
		return today.Add(1), nil
	}
	if d, err := unit.ParseDate(text); err == nil {
		return d, nil
	}
	for _, layout := range []string{"01-02", "2 Jan", "2 January", "Jan 2"} {
		if t, err := time.Parse(layout, text); err == nil {
			return unit.MakeDate(today.Year(), t.Month(), t.Day()), nil
		}
	}
	return 0, &unit.Error{Given: text, Accepted: "a day such as 2027-06-01, 06-01, 1 Jun, or tomorrow"}
}

func (s *roundsScreen) askRow() {
	s.r.ask("Only row:", "all", false, func(text string) error {
		s.row = 0
		if text != "all" {
			n, err := strconv.Atoi(text)
			if err != nil || n < 1 || n > record.MaxRow {
				return errors.New("give the number of a row, or nothing for all")
			}
			if !slices.ContainsFunc(s.x.summaries(s.x.block), func(sum due.Summary) bool { return int(sum.ID.Row) == n }) {
				return fmt.Errorf("there is no row %d in this block", n)
			}
			s.row = n
		}
		s.load()
		return nil
	})
}

func (s *roundsScreen) pickKind() {
	kind := s.kind
	s.kind = 0
	s.load()
	s.kind = kind
	count := map[due.Kind]int{}
	for _, c := range s.calls {
		for _, d := range c.Dues {
			count[d.Kind]++
		}
	}
	take := func(k int) func() error { return func() error { s.kind = k; s.load(); return nil } }
	items := []listItem{{"all", "every kind of work", take(0)}}
	for _, k := range due.Kinds() {
		if count[k] > 0 {
			items = append(items, listItem{plainWords(k.String()), fmt.Sprintf("%d", count[k]), take(int(k) + 1)})
		}
	}
	s.load()
	s.r.pick("Only which work?", "", items)
}

func plainWords(s string) string { return strings.ReplaceAll(s, "-", " ") }

func (s *roundsScreen) why() {
	if s.at >= len(s.calls) {
		return
	}
	c := s.calls[s.at]
	s.r.page = &page{r: s.r, title: "Why", where: c.Stump.Long(), make: func(width int) []paper.Line { return s.whyLines(c, width-8) }}
}

func (s *roundsScreen) whyLines(c due.Call, width int) []paper.Line {
	b, now := s.x.site(), s.x.now()
	lines := []paper.Line{nil}
	for _, d := range c.Dues {
		lines = append(lines, paper.Text(paper.Strong, "  "+plainWords(d.Kind.String())+": from "+unit.When(d.Opens, now, b.Zone)+", by "+d.ByWords(now, b.Zone)))
		lines = append(lines, indent(4, wrapped(paper.Plain, d.Why(b), width))...)
		for _, f := range d.Facts() {
			lines = append(lines, indent(4, under("Because", paper.Faint, paper.Plain, f.Says+" ("+f.Cite()+")", width))...)
		}
		lines = append(lines, nil)
	}
	return lines
}

// save writes the round as plain text.
func (s *roundsScreen) save() {
	if s.x.SaveText == nil {
		s.x.say("barkslip due prints the round as text.")
		return
	}
	path, err := s.x.SaveText("round-"+s.x.site().Day(s.judged()).String()+".txt", s.text())
	if err != nil {
		s.x.fail(err)
		return
	}
	s.x.say("Written: " + path)
}

func (s *roundsScreen) text() string {
	b := s.x.site()
	var out strings.Builder
	fmt.Fprintf(&out, "%s, %s, %d stumps\n", b.Name, s.title(), len(s.calls))
	for _, c := range s.calls {
		for _, d := range c.Dues {
			late := ""
			if d.Late(s.judged()) {
				late = "LATE  "
			}
			fmt.Fprintf(&out, "%-8s %-17s by %-14s %s%s\n", c.Stump.Place(), plainWords(d.Kind.String()), d.ByWords(s.x.now(), b.Zone), late, d.Why(b))
		}
	}
	return out.String()
}

func (s *roundsScreen) title() string {
	words := spanWords[s.span]
	if s.span == 3 {
		words = "on " + s.named.Long()
	}
	return words
}

func (s *roundsScreen) frame() frame {
	x := s.x
	b := x.site()
	f := frame{title: b.Name, where: "rounds"}
	f.keys = s.r.keysOf(s.table())
	late := 0
	for _, c := range s.calls {
		if c.Late(s.judged()) {
			late++
		}
	}
	what := "due " + s.title()
	if s.late {
		what = "late"
	}
	question := fmt.Sprintf("%d stumps are %s", len(s.calls), what)
	switch {
	case len(s.calls) == 0:
		question = "Nothing is " + what + "."
	case len(s.calls) == 1:
		question = "1 stump is " + what
	}
	if late > 0 && !s.late {
		question += fmt.Sprintf(", %d of them late", late)
	}
	f.body = []paper.Line{nil, paper.Text(paper.Strong, "  "+question), paper.Text(paper.Plain, "  "+s.because()), nil}
	foot := s.foot()
	room := max(x.bodyHeight()-len(f.body)-len(foot), 1)
	s.top = max(min(s.top, s.at), s.at-room+2, 0)
	for i := s.top; i < min(len(s.calls), s.top+room); i++ {
		f.body = append(f.body, s.line(i))
	}
	if below := len(s.calls) - s.top - room; below > 0 {
		f.body[len(f.body)-1] = paper.Text(paper.Faint, fmt.Sprintf("   and %d more below", below+1))
	}
	for len(f.body) < x.bodyHeight()-len(foot) {
		f.body = append(f.body, nil)
	}
	f.body = append(f.body, foot...)
	return f
}

// foot says why the first thing of the call under the cursor is due.
func (s *roundsScreen) foot() []paper.Line {
	if s.at >= len(s.calls) {
		return nil
	}
	c := s.calls[s.at]
	d := soonest(c)
	words := fmt.Sprintf("%s, %s: %s", c.Stump.Long(), plainWords(d.Kind.String()), d.Sentence(s.x.site(), s.judged()))
	return append([]paper.Line{nil}, indent(2, wrapped(paper.Plain, words, s.x.width-4))...)
}

func soonest(c due.Call) due.Due {
	first := c.Dues[0]
	for _, d := range c.Dues {
		if d.By.Before(first.By) {
			first = d
		}
	}
	return first
}

func (s *roundsScreen) because() string {
	words := "In walking order, up one row and down the next; white first."
	if far, ok := due.Walked(s.calls, s.x.site()); ok && len(s.calls) > 1 {
		words += " " + s.x.site().Units.Distance(far) + " to walk."
	}
	var only []string
	if s.kind > 0 {
		only = append(only, plainWords(due.Kind(s.kind-1).String()))
	}
	if s.row > 0 {
		only = append(only, fmt.Sprintf("row %d", s.row))
	}
	if len(only) > 0 {
		words = "Only " + strings.Join(only, ", ") + ". " + words
	}
	return words
}

// line is one call: place, what is due, by when.
func (s *roundsScreen) line(i int) paper.Line {
	b := s.x.site()
	c := s.calls[i]
	mark, ink := "   ", paper.Plain
	if i == s.at {
		mark, ink = " > ", paper.Accent
	}
	var kinds []string
	for _, d := range c.Dues {
		word := plainWords(d.Kind.String())
		if d.Late(s.judged()) {
			word += "!"
		}
		kinds = append(kinds, word)
	}
	l := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: fmt.Sprintf("%-8s", c.Stump.Place()), Ink: ink}}
	late, lateInk := "     ", paper.Plain
	if c.Late(s.judged()) {
		late, lateInk = "LATE ", paper.Warn
	}
	by := " by " + soonest(c).ByWords(s.x.now(), b.Zone)
	wide := s.x.width - 22
	return l.Add(lateInk, late).Add(paper.Strong, strings.Join(kinds, ", ")).Beside(wide, paper.Text(paper.Plain, by))
}
