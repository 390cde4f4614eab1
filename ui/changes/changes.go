// Package changes is the screen of what was done or seen on the block since a day,
// by hand and by kind, and of whose work is late. It may import core and ui/part
// with its leaves, and no other screen.
package changes

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/changes"
	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// view is what the lines of the screen stand for.
type view int

const (
	byHand view = iota
	byKind
	byDay
	takenBack
	late
)

// Screen lists groups of changes, or of late work, one under the cursor.
type Screen struct {
	x       *part.Session
	since   unit.Date
	view    view
	done    []changes.Change
	taken   []changes.Change
	late    []changes.Group
	groups  []changes.Group
	at, top int
}

// New is the changes of the session's block since the last Monday.
func New(x *part.Session) *Screen {
	return &Screen{x: x, since: changes.Monday(x.Site().Day(x.Time()))}
}

// Load finds the changes anew. Only stumps for which something was put down since
// are read.
func (s *Screen) Load() error {
	site, sums, now := s.x.Site(), s.x.Summaries(s.x.Block), s.x.Time()
	f := changes.Since(s.x.Book.Folded(), site, s.since, "")
	for _, sum := range sums {
		if !f.Touched(sum) {
			continue
		}
		stump, err := s.x.Book.Stump(sum.ID)
		if err != nil {
			return err
		}
		f.Stump(stump)
	}
	general, err := s.x.Book.Events(record.NoStump)
	if err != nil {
		return err
	}
	f.General(general)
	s.done, s.taken = changes.Parted(f.Changes())
	ask := due.Asked{From: now, Until: now, CutBack: plan.CutBackOn(site, sums, now), Keep: func(d due.Due) bool { return d.Late(now) }}
	s.late = changes.Late(due.Round(sums, ask), sums, now)
	s.show(s.view)
	return s.x.Trouble()
}

// show groups what a view shows.
func (s *Screen) show(v view) part.Msgs {
	s.view = v
	switch v {
	case byHand:
		s.groups = changes.Grouped(s.done, func(c changes.Change) string { return handWord(c.Hand) })
	case byKind:
		s.groups = changes.Grouped(s.done, func(c changes.Change) string { return part.Spaced(c.Kind) })
	case byDay:
		s.groups = changes.Grouped(s.done, func(c changes.Change) string { return c.Day.String() })
		slices.SortFunc(s.groups, func(x, y changes.Group) int { return cmp.Compare(x.Name, y.Name) })
	case takenBack:
		s.groups = changes.Grouped(s.taken, func(c changes.Change) string { return part.Spaced(c.Kind) + ", by " + handWord(c.Hand) })
	case late:
		s.groups = s.late
	}
	s.at, s.top = max(0, min(s.at, len(s.groups)-1)), 0
	return nil
}

func handWord(hand string) string {
	return cmp.Or(record.Clean(hand), "no hand")
}

// Tick does nothing: what was done comes by answers.
func (s *Screen) Tick() part.Msgs { return nil }

// Field is none.
func (s *Screen) Field() *part.Field { return nil }

// Key takes a key of the table.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs {
	return part.Press(s.Table(), k, part.Useless)
}

// Table is the keys of the screen.
func (s *Screen) Table() []part.Row { return append(s.own(), s.x.Common(s.help)...) }

// own are the keys of this screen beside those of every screen.
func (s *Screen) own() []part.Row {
	show := func(v view) func() part.Msgs {
		return func() part.Msgs { s.at = 0; return s.show(v) }
	}
	step := func(by int) part.Msgs { s.at = max(0, min(s.at+by, len(s.groups)-1)); return nil }
	return append([]part.Row{
		part.ToOpen.Row(s.stumps).Named("its stumps").Told("The stumps of the line under the cursor, and what was done on each."),
		{Binding: part.On("1", "hand"), Says: "By hand.", Do: show(byHand)},
		{Binding: part.On("2", "kind"), Says: "By kind of work.", Do: show(byKind)},
		{Binding: part.On("3", "day"), Says: "By day.", Do: show(byDay)},
		{Binding: part.On("4", "taken back"), Says: "What was taken back since.", Do: show(takenBack)},
		{Binding: part.On("5", "late"), Says: "What is late now, by the hand who last worked the stump, or its row.", Do: show(late)},
		part.ToShowOnly.Row(s.askDay).Named("since").Told("Show only what was done since another day."),
		part.ToWhy.Row(s.why).Told("Why: what counts as done, and what as late."),
		part.ToNext.Row(part.Does(part.Next{})),
		part.ToFind.Row(func() part.Msgs { return s.x.AskPlace(0, "") }),
		part.ToBack.Row(part.Does(part.Back{})).Named("").Told("Back to the block."),
	}, part.Moves("Along the lines.", step)...)
}

func (s *Screen) help() part.Msgs { return s.x.Help("changes", s.Table()) }

// askDay asks since when.
func (s *Screen) askDay() part.Msgs {
	return s.x.Asks("Since which day? (Mon, 3 May, -7):", "", true, func(text string) (part.Msgs, error) {
		site := s.x.Site()
		today := site.Day(s.x.Time())
		day, err := unit.ReadDate(part.Typed(text), today, site.Units)
		if err != nil {
			return nil, err
		}
		if day > today {
			return nil, &unit.Error{Given: text, Accepted: "a day up to today"}
		}
		s.since, s.at = day, 0
		return part.Msgs{part.Reload{}}, nil
	})
}

// stumps lists the stumps of the line under the cursor.
func (s *Screen) stumps() part.Msgs {
	if s.at >= len(s.groups) {
		return part.Says("No stump here.")
	}
	g := s.groups[s.at]
	if len(g.Stumps) == 0 {
		return part.Says("That is about the block, its wood or its weather, and about no stump.")
	}
	words := s.words(g)
	items := make([]part.Item, len(g.Stumps))
	for i, id := range g.Stumps {
		items[i] = part.Item{Word: id.Place(), Meaning: strings.Join(words[id], ", "), Take: part.Does(part.Open{Stump: id})}
	}
	return s.x.Picks(fmt.Sprintf("%s: %s", g.Name, part.Counted(len(items), "stump")), s.title(), items)
}

// words says of each stump of a group what was done there, or what is late.
func (s *Screen) words(g changes.Group) map[record.StumpID][]string {
	out := map[record.StumpID][]string{}
	if s.view == late {
		now, sums := s.x.Time(), s.x.Summaries(s.x.Block)
		for _, id := range g.Stumps {
			if at, ok := due.Find(sums, id); ok {
				for _, d := range due.At(sums[at].Dues, now) {
					if d.Late(now) {
						out[id] = append(out[id], d.Kind.Verb())
					}
				}
			}
		}
		return out
	}
	from := s.done
	if s.view == takenBack {
		from = s.taken
	}
	for _, c := range from {
		word := part.Spaced(c.Kind)
		switch s.view {
		case byKind:
			word = handWord(c.Hand) + " " + c.Day.Short()
		case takenBack:
			word += " by " + handWord(c.Hand)
		}
		if s.in(g, c) && !slices.Contains(out[c.Stump], word) {
			out[c.Stump] = append(out[c.Stump], word)
		}
	}
	return out
}

// in says whether a change belongs to the group as it is shown.
func (s *Screen) in(g changes.Group, c changes.Change) bool {
	switch s.view {
	case byHand:
		return handWord(c.Hand) == g.Name
	case byKind:
		return part.Spaced(c.Kind) == g.Name
	case byDay:
		return c.Day.String() == g.Name
	}
	return part.Spaced(c.Kind)+", by "+handWord(c.Hand) == g.Name
}

// why says what counts.
func (s *Screen) why() part.Msgs {
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Why", "changes", func(width int) []paper.Line {
		lines := []paper.Line{nil}
		for _, says := range []string{
			"What was done or seen counts on its own day, whenever it was recorded, from the beginning of the day in the block's time zone.",
			"A correction counts in place of what it corrects. What was taken back since is told by whoever took it back and is not counted as done.",
			"Late is what should have been done by now, as on the rounds. It stands with the hand who last worked the stump, or else its row: " +
				"that hand knows the place best, which does not say that the work was theirs to do.",
		} {
			lines = append(append(lines, part.Indent(2, part.Wrapped(paper.Plain, says, s.x.Measure(width-4)))...), nil)
		}
		return lines
	})}}
}
