// Package wood is the screens of the lots of scion wood: all of them, one and where
// it went, and the stumps to which wood of a held lot went. It may import core and
// ui/part with its leaves, and no other screen.
package wood

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen lists the lots; picking one opens it. Lots held and those of past years
// are folded away while there are others.
type Screen struct {
	*part.List
	x        *part.Session
	lots     []*record.Lot // those listed, in order of the items
	trails   map[record.ID]plan.Trail
	fits     map[string]plan.ThicknessFit // by variety
	unfolded bool
}

// New is the screen of the book's lots.
func New(x *part.Session) *Screen { return &Screen{x: x} }

// Load lists the lots anew, those put away behind the others.
func (s *Screen) Load() error {
	now, away := s.parted()
	if len(now) == 0 || s.unfolded {
		now, away = append(now, away...), nil
	}
	at := 0
	if s.List != nil {
		at = s.List.At()
	}
	s.lots, s.trails, s.fits = now, map[record.ID]plan.Trail{}, map[string]plan.ThicknessFit{}
	var items []part.Item
	for _, l := range now {
		s.trails[l.ID] = trail(s.x, l)
		items = append(items, part.Item{Word: l.Name(), Take: part.Does(part.Lot{Lot: l.ID})})
	}
	items = append(items, part.Item{Word: "receive a lot", Meaning: "name, variety, where from, day cut, sticks, thickness, permit", Take: s.receive})
	if len(away) > 0 {
		items = append(items, part.Item{Word: "put away", Meaning: s.awayWords(away), Take: s.unfold})
	}
	s.List = part.NewList(s.x, "Lots of scion wood", "", items).AsScreen().On(at)
	return s.x.Trouble()
}

// parted is the lots in use, newest first, and those held or of past years.
func (s *Screen) parted() (now, away []*record.Lot) {
	for _, l := range s.x.Book.Folded().LotList() {
		if l.InUse(s.x.Site(), s.x.Time()) {
			now = append(now, l)
		} else {
			away = append(away, l)
		}
	}
	return now, away
}

// awayWords is what is folded away, and what of it is still to be told.
func (s *Screen) awayWords(away []*record.Lot) string {
	held, open := 0, 0
	for _, l := range away {
		if l.IsHeld() {
			held++
		}
		if l.Follows() {
			t := trail(s.x, l)
			open += t.Untold + t.ToCut
		}
	}
	words := part.Counted(len(away), "lot") + " of past years"
	switch past := len(away) - held; {
	case past == 0:
		words = part.Counted(held, "lot") + " held"
	case held > 0:
		words = fmt.Sprintf("%s held, %d of past years", part.Counted(held, "lot"), past)
	}
	if open > 0 {
		words += "; not done at " + part.Counted(open, "stump")
	}
	return words
}

func (s *Screen) unfold() part.Msgs {
	s.unfolded = true
	return part.Msgs{part.Reload{}, part.Say{Text: "Every lot is shown; f folds those held and of past years away."}}
}

// fold folds the lots put away, or shows them.
func (s *Screen) fold() part.Msgs {
	if !s.unfolded {
		return s.unfold()
	}
	s.unfolded = false
	return part.Msgs{part.Reload{}, part.Say{}}
}

// trail is where a lot went, over all blocks that are worked.
func trail(x *part.Session, l *record.Lot) plan.Trail {
	var sums [][]due.Summary
	for _, b := range x.Book.Folded().List() {
		sums = append(sums, x.Summaries(b.ID))
	}
	return plan.TrailOf(x.Book.Folded(), l, sums...)
}

// Key takes a key of the table; else it picks a lot, and the lots stay beneath
// what is asked about it.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs { return part.Press(s.Table(), k, s.List.Key) }

// Table is the keys of the screen beside those of a list.
func (s *Screen) Table() []part.Row { return append(s.own(), s.x.Common(s.help)...) }

// own are the keys of this screen alone.
func (s *Screen) own() []part.Row {
	return []part.Row{
		part.ToWhy.Row(s.why).Told("Why: what is left, which thickness is wanted, and by whose word."),
		part.ToShowOnly.Row(s.fold).Named("in use").Told("Show only the lots in use, or those held and of past years too."),
		part.ToNext.Row(part.Does(part.Next{})),
		part.ToFind.Row(func() part.Msgs { return s.x.AskPlace(0, "") }),
	}
}

func (s *Screen) help() part.Msgs { return s.x.Help("lots of scion wood", s.Table()) }

// variety is that of the lot under the cursor, else the block's.
func (s *Screen) variety() string {
	if at := s.List.At(); at >= 0 && at < len(s.lots) {
		return s.lots[at].Received.What.Variety
	}
	return s.x.Site().Variety
}

// fit holds the wood of the variety at the cursor against the stumps of the block. It
// is reckoned once a variety until the book changes.
func (s *Screen) fit() plan.ThicknessFit {
	variety := s.variety()
	if f, done := s.fits[variety]; done {
		return f
	}
	of, assumed := s.varietyOf()
	f := plan.FitOf(plan.WoodOf(s.x.Book.Folded(), s.x.Used()), s.x.Summaries(s.x.Block), variety, of)
	f.Work.Assumed = append(f.Work.Assumed, assumed...)
	s.fits[variety] = f
	return f
}

// mostRead is how many stumps to graft are looked up for a variety of their own.
const mostRead = 3000

// varietyOf is the variety of a stump: its own, or where there are very many to
// graft the block's, which is then said.
func (s *Screen) varietyOf() (of func(record.StumpID) string, assumed []string) {
	site, toGraft := s.x.Site(), 0
	for _, sum := range s.x.Summaries(s.x.Block) {
		if sum.Stage == record.StageStanding || sum.Stage == record.StageDraining {
			toGraft++
		}
	}
	if toGraft > mostRead {
		return func(record.StumpID) string { return site.Variety }, []string{"every stump is for the block's variety: there are too many to look each up"}
	}
	return func(id record.StumpID) string {
		stump, err := s.x.Book.Stump(id)
		if err != nil {
			return site.Variety
		}
		return plan.VarietyOf(stump, site)
	}, nil
}

// why says how what is left and what is wanted was reckoned, and the facts of
// keeping wood.
func (s *Screen) why() part.Msgs {
	fit, variety := s.fit(), s.variety()
	lines := func(width int) []paper.Line {
		wide := s.x.Measure(width - 4)
		lines := append([]paper.Line{nil}, part.Indent(2, s.thicknessLines(fit, variety, wide))...)
		lines = append(append(lines, nil), part.WorkLines(fit.Work, s.x.Site().Units, wide)...)
		return append(append(lines, nil), keeping(wide)...)
	}
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Why", "lots of scion wood", lines)}}
}

// keeping is the facts by which wood is said to be warm or old, and the caution at
// moving it.
func keeping(wide int) []paper.Line {
	lines := []paper.Line{paper.Text(paper.Strong, "  Wood in store, and wood that is moved")}
	for _, f := range []trade.Fact{trade.StoreCold, trade.StoreLimits, trade.StickEnds} {
		lines = append(lines, part.Indent(2, part.Under("Fact    ", paper.Faint, paper.Plain, f.Says+" ("+f.Cite()+")", wide))...)
	}
	for _, c := range []trade.Caution{trade.MovingWood, trade.CleanBlades} {
		lines = append(lines, part.Indent(2, part.Under("Caution ", paper.Faint, paper.Warn, c.Says, wide))...)
	}
	return lines
}
