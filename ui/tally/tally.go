// Package tally is the screen of results: what took, what stands and what was lost
// to what, grouped by what may have made the difference. It may import core and
// ui/part with its leaves, and no other screen.
package tally

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/core/results"
	"barkslip/core/trade"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen shows the groups of one key under one another, all of them together first.
type Screen struct {
	x      *part.Session
	cols   *results.Columns
	key    results.Key
	season int // 0 for all
	tally  results.Tally
	losses []results.Loss // of what is under the cursor
	at     int            // the cursor: 0 all together, else the group before
	top    int            // first group shown
	picked []string       // the groups that are compared, two at the most
	inside *inside        // the stumps of a group, nil while the groups are shown
}

// New is the tally of the session's block.
func New(x *part.Session) *Screen { return &Screen{x: x} }

// Load counts anew.
func (s *Screen) Load() error {
	s.cols = s.x.Results()
	if s.season != 0 && !slices.Contains(s.cols.Seasons(), s.season) {
		s.season = 0
	}
	s.count()
	if s.inside != nil {
		s.lookInside()
	}
	return s.x.Trouble()
}

// Tick does nothing: results change with answers alone.
func (s *Screen) Tick() part.Msgs { return nil }

// Field is none.
func (s *Screen) Field() *part.Field { return nil }

// count counts the groups of the key and season at hand.
func (s *Screen) count() {
	s.tally = s.cols.By(s.key, s.season)
	s.picked = slices.DeleteFunc(s.picked, func(key string) bool { return s.named(key) == nil })
	s.moveTo(s.at)
}

func (s *Screen) moveTo(at int) {
	s.at = max(0, min(at, len(s.tally.Groups)))
	s.losses = results.Worst(s.cols.Losses(&s.tally, s.group()))
}

// group is the one under the cursor, nil for all together.
func (s *Screen) group() *results.Group {
	if s.at == 0 {
		return nil
	}
	return &s.tally.Groups[s.at-1]
}

// here is the group under the cursor, or all together.
func (s *Screen) here() *results.Group {
	if g := s.group(); g != nil {
		return g
	}
	return &s.tally.Total
}

func (s *Screen) named(key string) *results.Group {
	for i := range s.tally.Groups {
		if s.tally.Groups[i].Key == key {
			return &s.tally.Groups[i]
		}
	}
	return nil
}

// name is a group's as people read it.
func (s *Screen) name(g *results.Group) string {
	if g == &s.tally.Total {
		return "all"
	}
	return s.key.Shown(g.Key, s.x.Site().Units)
}

// pair is the two groups that are compared; ok is false for fewer.
func (s *Screen) pair() (a, b *results.Group, ok bool) {
	if len(s.picked) < 2 {
		return nil, nil, false
	}
	return s.named(s.picked[0]), s.named(s.picked[1]), true
}

// Key takes a key of the table.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs {
	if s.inside != nil {
		return part.Press(append(s.insideTable(), s.x.Common(s.help)...), k, part.Useless)
	}
	return part.Press(s.Table(), k, part.Useless)
}

// Table is the keys of the screen.
func (s *Screen) Table() []part.Row { return append(s.own(), s.x.Common(s.help)...) }

// own is the keys of the groups, beside those of every screen.
func (s *Screen) own() []part.Row {
	rows := append([]part.Row{
		part.ToOpen.Row(s.enter).Named("stumps").Told("The stumps of what is under the cursor, and its lots."),
		part.ToPick.Row(s.pick).Named("compare").Told("Pick a group, or leave it out again; two that are picked are compared."),
		{Binding: part.On("<- ->", "by", "right"), Says: "Group by the next thing, or with the left arrow by the one before.", Do: func() part.Msgs { return s.step(1) }},
		{Binding: part.On("", "", "left"), Do: func() part.Msgs { return s.step(-1) }},
		part.ToAlong.Row(func() part.Msgs { return s.step(1) }).Named("").Told("Group by the next thing; Shift-Tab by the one before."),
		{Binding: part.On("", "", "shift+tab"), Do: func() part.Msgs { return s.step(-1) }},
		part.ToShowOnly.Row(s.otherSeason).Named("season").Told("Show only one season, an older one, or all of them."),
		part.ToEnlarge.Row(s.curve).Named("curve").Told("From graft to push: how long it took, as a figure."),
		part.ToMap.Row(s.mark).Told("The stumps of what is under the cursor on the block, from above."),
		part.ToWhy.Row(s.why).Told("Why: how the figures come about, and by whose word."),
		part.ToNext.Row(part.Does(part.Next{})),
		part.ToFind.Row(func() part.Msgs { return s.x.AskPlace(0, "") }),
		part.ToBack.Row(part.Does(part.Back{})).Named("").Told("Back to the block."),
	}, part.Moves("Move the cursor.", s.move)...)
	for i, k := range results.Keys() {
		digit := fmt.Sprint((i + 1) % 10)
		rows = append(rows, part.Row{Binding: part.On(digit, ""), Says: "Group " + k.Words() + ".", Do: func() part.Msgs { return s.by(k) }})
	}
	return rows
}

func (s *Screen) help() part.Msgs {
	if s.inside != nil {
		return s.x.Help("stumps of a group", s.insideTable(), s.x.Common(nil))
	}
	return s.x.Help("tally", s.Table())
}

func (s *Screen) move(n int) part.Msgs {
	s.moveTo(s.at + n)
	return nil
}

func (s *Screen) by(k results.Key) part.Msgs {
	s.key, s.at, s.top, s.picked = k, 0, 0, nil
	s.count()
	return part.Says("")
}

func (s *Screen) step(n int) part.Msgs {
	keys := len(results.Keys())
	return s.by(results.Key((int(s.key) + n + keys) % keys))
}

// otherSeason goes from all seasons to the newest, and on to the older ones.
func (s *Screen) otherSeason() part.Msgs {
	seasons := append([]int{0}, s.cols.Seasons()...)
	s.season = seasons[(slices.Index(seasons, s.season)+1)%len(seasons)]
	s.count()
	return part.Says("")
}

func (s *Screen) pick() part.Msgs {
	g := s.group()
	if g == nil {
		return part.Says("Move to a group to pick it; all together is none.")
	}
	if i := slices.Index(s.picked, g.Key); i >= 0 {
		s.picked = slices.Delete(s.picked, i, i+1)
		return part.Says("")
	}
	if len(s.picked) == 2 {
		s.picked = s.picked[1:]
	}
	s.picked = append(s.picked, g.Key)
	if len(s.picked) == 1 {
		return part.Says("Pick another with Space: the two are compared.")
	}
	return part.Says("")
}

// mark shows the stumps under the cursor on the block.
func (s *Screen) mark() part.Msgs {
	stumps := map[record.StumpID]bool{}
	for _, on := range s.cols.Stumps(&s.tally, s.group()) {
		stumps[on.ID] = true
	}
	if len(stumps) == 0 {
		return part.Says("There is no graft to show.")
	}
	what := "with grafts"
	if g := s.group(); g != nil {
		what = s.key.String() + " " + s.name(g)
	}
	return part.Msgs{part.Mark{What: what, Stumps: stumps}}
}

// why says how the figures under the cursor come about, and of a comparison too.
func (s *Screen) why() part.Msgs {
	works := []trade.Worked{s.here().Work()}
	if a, b, ok := s.pair(); ok {
		works = append([]trade.Worked{results.PairWork(a, b)}, works...)
	}
	if s.tally.Differ != nil {
		works = append(works, s.tally.DifferWork())
	}
	return s.read("Why", s.name(s.here()), works)
}

func (s *Screen) read(title, where string, works []trade.Worked) part.Msgs {
	lines := func(width int) (out []paper.Line) {
		for _, w := range works {
			out = append(append(out, nil), part.WorkLines(w, s.x.Site().Units, s.x.Measure(width-4))...)
		}
		return out
	}
	return part.Msgs{part.Read{Page: part.NewPage(s.x, title, where, lines)}}
}
