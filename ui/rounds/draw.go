package rounds

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"barkslip/core/due"
	"barkslip/core/unit"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Columns of the list, from the left, and what there is room for.
const (
	markWide  = 3
	placeWide = 9
	whenWide  = 15 // 29 days late
	dateWide  = 15 // due 21 Apr 2026
	headWide  = markWide + placeWide + whenWide + dateWide
	barWide   = 40
	footLines = 2 // from which on what else is due there is left out
)

// roomy says whether air stands over and between what is written.
func (s *Screen) roomy() bool { return s.x.BodyHeight() >= 14 }

// isWide says whether the reason stands on the line.
func (s *Screen) isWide() bool { return s.x.Width >= 120 }

// title is the span in words.
func (s *Screen) title() string {
	switch s.span {
	case today:
		return "today"
	case thisWeek:
		return "this week"
	case aDay:
		return "on " + s.named.Long()
	}
	return "now"
}

// Frame shows the round, and why the work under the cursor is due.
func (s *Screen) Frame() part.Frame {
	x := s.x
	f := part.Frame{Title: x.Site().Name, Where: "rounds", Only: x.OnlyWords()}
	f.Keys = s.x.KeyLine(nil, s.Table())
	f.Body = s.head()
	foot := s.foot()
	room := max(x.BodyHeight()-len(f.Body)-len(foot), 1)
	f.Body = append(f.Body, s.list(room)...)
	for len(f.Body) < x.BodyHeight()-len(foot) {
		f.Body = append(f.Body, nil)
	}
	f.Body = append(f.Body, foot...)
	return f
}

// head is how many stumps need work, and what of it is shown.
func (s *Screen) head() []paper.Line {
	width := s.x.Width - 4
	lines := part.Indent(2, part.Wrapped(paper.Strong, s.question(), width))
	if !s.roomy() {
		if only := s.onlyWords(); only != "" {
			lines = append(lines, part.Indent(2, part.Wrapped(paper.Plain, only, width))...)
		}
		return lines
	}
	lines = append([]paper.Line{nil}, lines...)
	lines = append(lines, part.Indent(2, part.Wrapped(paper.Faint, strings.TrimSpace(s.onlyWords()+" "+s.because()), width))...)
	return append(lines, nil)
}

func (s *Screen) question() string {
	n, late := len(s.calls), 0
	for _, c := range s.calls {
		if c.Late(s.judged()) {
			late++
		}
	}
	switch {
	case n == 0 && s.late:
		return "Nothing is late."
	case n == 0:
		return "No work is due " + s.title() + "."
	case s.late:
		return fmt.Sprintf("Work is late on %s.", part.Counted(n, "stump"))
	case late > 0:
		return fmt.Sprintf("Work is due %s on %s; it is late on %d.", s.title(), part.Counted(n, "stump"), late)
	}
	return fmt.Sprintf("Work is due %s on %s.", s.title(), part.Counted(n, "stump"))
}

// because is the order of the list.
func (s *Screen) because() string {
	if len(s.calls) == 0 {
		return ""
	}
	order, walk := "Each kind of work up one row and down the next", "; all in one walk: "
	if s.inWalk {
		order, walk = "What runs out first, then up one row and down the next", ": "
	}
	if far, ok := due.Walked(s.calls, s.x.Site()); ok && len(s.calls) > 1 {
		return order + walk + s.x.Site().Units.Distance(far) + "."
	}
	return order + "."
}

// onlyWords is what the list is kept to, "" for all.
func (s *Screen) onlyWords() string {
	var only []string
	for _, k := range s.only {
		only = append(only, k.Verb())
	}
	if s.row > 0 {
		only = append(only, fmt.Sprintf("row %d", s.row))
	}
	if s.mine {
		only = append(only, "what "+s.x.Hand+" is given for "+s.givenDay().Short())
	}
	if len(only) == 0 {
		return ""
	}
	return "Only " + strings.Join(only, ", ") + "."
}

// list is as much of the list as there is room for. The heading of the group at its
// top stays in sight, and its last line says what is further down.
func (s *Screen) list(room int) []paper.Line {
	if len(s.jobs) == 0 {
		return nil
	}
	if s.aired != s.roomy() {
		s.lay()
	}
	at := s.lineAt(s.at)
	from := at
	if l := s.lines[at]; l.job >= 0 && at > 0 && s.lines[at-1].job == heading {
		from-- // the heading comes into sight with the first of its stumps
	}
	s.top = max(min(s.top, from), at-room+2, 0)
	if s.top >= len(s.lines)-room {
		s.top = max(len(s.lines)-room, 0)
	}
	var out []paper.Line
	for i := s.top; i < min(len(s.lines), s.top+room); i++ {
		out = append(out, s.line(i))
	}
	if l := s.lines[s.top]; l.job >= 0 && !s.inWalk && at > s.top {
		out[0] = s.heading(l.group, false)
	}
	if last := s.top + room; last < len(s.lines) {
		out[len(out)-1] = s.below(last - 1)
	}
	return out
}

// below says how much of the list is further down, by kinds of work.
func (s *Screen) below(from int) paper.Line {
	count := map[int]int{}
	n, first := 0, s.lines[from].group
	for _, l := range s.lines[from:] {
		switch {
		case l.job >= 0:
			count[l.group]++
			n++
		case l.job == heading && s.isFolded(l.group):
			count[l.group] += len(s.groups[l.group].Jobs)
			n += len(s.groups[l.group].Jobs)
		}
	}
	words := fmt.Sprintf("   %d more below", n)
	if s.inWalk {
		return paper.Text(paper.Faint, words)
	}
	var kinds []string
	for g := first; g < len(s.groups); g++ {
		if count[g] > 0 {
			kinds = append(kinds, fmt.Sprintf("%s %d", s.groups[g].Kind.Verb(), count[g]))
		}
	}
	words += ":"
	for i, k := range kinds {
		if i > 0 {
			k = ", " + k
		} else {
			k = " " + k
		}
		if left := paper.Width(words) + paper.Width(k); left > s.x.Width-6 {
			words += " …"
			break
		}
		words += k
	}
	return paper.Text(paper.Faint, words)
}

func (s *Screen) line(i int) paper.Line {
	l := s.lines[i]
	here := i == s.lineAt(s.at)
	switch {
	case l.job == air:
		return nil
	case l.job == heading:
		return s.heading(l.group, here)
	}
	return s.jobLine(s.jobs[l.job], here)
}

// heading is a kind of work: on how many stumps it is due and late, and as a bar.
func (s *Screen) heading(group int, here bool) paper.Line {
	g := s.groups[group]
	mark := " "
	if s.isFolded(group) {
		mark = "+"
	}
	if here {
		mark = ">"
	}
	l := paper.Line{{Text: mark + " ", Ink: paper.Accent}, {Text: capital(g.Kind.Verb()), Ink: paper.Strong}}
	l = l.Pad(markWide+placeWide+whenWide-1).Add(paper.Strong, fmt.Sprintf("%4d", len(g.Jobs)))
	if g.Late > 0 {
		l = l.Add(paper.Plain, "  ").Add(paper.Warn, fmt.Sprintf("%d late", g.Late))
	}
	l = l.Pad(headWide)
	most := 0
	for _, other := range s.groups {
		most = max(most, len(other.Jobs))
	}
	columns := min(s.x.Width-headWide-2, barWide)
	bar := part.Bar(columns, float64(most), s.x.Shaded(g.Late, figure.Full, figure.Warn), s.x.Shaded(len(g.Jobs)-g.Late, figure.Half, figure.Plain))
	return append(l, bar...)
}

// capital is a text with its first letter large.
func capital(s string) string {
	for i, r := range s {
		return string(unicode.ToUpper(r)) + s[i+len(string(r)):]
	}
	return s
}

// jobLine is one stump: how late its work is or by when it is to be done, then the
// day, then why, or what else is due there.
func (s *Screen) jobLine(j due.Job, here bool) paper.Line {
	mark, ink := "   ", paper.Plain
	if here {
		mark, ink = " > ", paper.Accent
	}
	l := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: fmt.Sprintf("%-*s", placeWide, j.Call.Stump.Place()), Ink: ink}}
	when, date, whenInk := s.when(*j.Due)
	l = l.Add(whenInk, fmt.Sprintf("%-*s", whenWide-1, when)).Add(paper.Plain, " ")
	if s.inWalk && !s.isWide() {
		return append(l, s.kinds(j.Call)...).Cut(s.x.Width - 1)
	}
	l = l.Add(paper.Faint, fmt.Sprintf("%-*s", dateWide-1, date)).Add(paper.Plain, " ")
	if s.inWalk {
		return append(l, s.kinds(j.Call)...).Cut(s.x.Width - 1)
	}
	also, room := alsoWords(j), s.x.Width-headWide-1
	if !s.isWide() {
		if n := len(j.Call.Dues) - 1; paper.Width(also) > room {
			also = fmt.Sprintf("and %d more", n)
		}
		return l.Add(paper.Faint, also)
	}
	why := j.Due.Why(s.x.Site())
	if also != "" && paper.Width(why)+3+paper.Width(also) <= room {
		return l.Add(paper.Plain, why).Add(paper.Faint, "   "+also)
	}
	return l.Add(paper.Plain, clauses(why, room))
}

// clauses is a sentence or, where it has no room, as many of its first clauses as
// have. The foot says all of it.
func clauses(why string, room int) string {
	if paper.Width(why) <= room {
		return why
	}
	for at := len(why); at > 0; {
		at = strings.LastIndexAny(why[:at], ":,")
		if at > 0 && at+1 < len(why) && why[at+1] == ' ' && paper.Width(why[:at]) <= room {
			return why[:at]
		}
	}
	return paper.Shorten(why, room)
}

// alsoWords is what else is due on the stump of a job.
func alsoWords(j due.Job) string {
	var also []string
	for _, d := range j.Call.Dues {
		if d.Kind != j.Due.Kind {
			also = append(also, d.Kind.Verb())
		}
	}
	if len(also) == 0 {
		return ""
	}
	return "also " + strings.Join(also, ", ")
}

// kinds are all kinds of work of a call; which of them are late is said where not
// all are.
func (s *Screen) kinds(c *due.Call) (l paper.Line) {
	allLate := !slices.ContainsFunc(c.Dues, func(d due.Due) bool { return !d.Late(s.judged()) })
	for i, d := range c.Dues {
		if i > 0 {
			l = l.Add(paper.Plain, ", ")
		}
		word, ink := d.Kind.Verb(), paper.Strong
		if d.Late(s.judged()) && !allLate {
			word, ink = word+" (late)", paper.Warn
		}
		l = l.Add(ink, word)
	}
	return l
}

// when is how late work is and when it should have been done; or by when it is to
// be done and how far off that is.
func (s *Screen) when(d due.Due) (when, date string, ink paper.Ink) {
	b, now := s.x.Site(), s.judged()
	by := d.ByWords(s.x.Time(), b.Zone)
	switch {
	case d.Late(now):
		return d.LateBy(b, now) + " late", "due " + by, paper.Warn
	case !d.Open(now) && d.Kind.Timed():
		return "from " + unit.When(d.Opens, s.x.Time(), b.Zone), "by " + by, paper.Plain
	case d.Kind.Timed():
		return "by " + by, part.Span(d.By.Sub(s.x.Time())), paper.Warn
	case b.Day(d.Opens) > b.Day(now):
		return "from " + unit.DateOf(d.Opens.In(b.Zone)).Short(), "by " + by, paper.Plain
	case b.Day(d.By) == b.Day(now):
		return "today", "", paper.Plain
	}
	return "by " + by, "in " + part.Counted(int(b.Day(d.By)-b.Day(now)), "day"), paper.Plain
}

// foot is why the work under the cursor is due, and what else is due there.
func (s *Screen) foot() []paper.Line {
	j, ok := s.job()
	if !ok {
		return nil
	}
	words := s.Reason()
	lines := part.Wrapped(paper.Plain, words, s.x.Width-4)
	if also := alsoWords(j); also != "" {
		if all := part.Wrapped(paper.Plain, words+" "+capital(also)+".", s.x.Width-4); len(all) <= max(footLines, len(lines)) {
			lines = all
		}
	}
	lines = part.Indent(2, lines)
	if !s.roomy() {
		return lines
	}
	return append([]paper.Line{nil}, lines...)
}

// Reason is why the work under the cursor is due, "" where nothing is.
func (s *Screen) Reason() string {
	j, ok := s.job()
	if !ok {
		return ""
	}
	return fmt.Sprintf("%s, %s: %s", j.Call.Stump.Long(), j.Due.Kind.Verb(), j.Due.Sentence(s.x.Site(), s.judged()))
}

// soonest is which of the dues of a call runs out first.
func soonest(c *due.Call) (first int) {
	for i, d := range c.Dues {
		if d.By.Before(c.Dues[first].By) {
			first = i
		}
	}
	return first
}
