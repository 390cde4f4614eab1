// Package wood is the screen of the lots of scion wood. It may import core and
// ui/part with its leaves, and no other screen.
package wood

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen lists the lots; picking one says what can be put down about it.
type Screen struct {
	*part.List
	x *part.Session
}

// New is the screen of the book's lots.
func New(x *part.Session) *Screen { return &Screen{x: x} }

// Load lists the lots anew, those held behind the others.
func (s *Screen) Load() error {
	lots := s.x.Book.Folded().LotList()
	slices.SortStableFunc(lots, func(a, b *record.Lot) int { return heldRank(a) - heldRank(b) })
	var items []part.Item
	for _, l := range lots {
		items = append(items, part.Item{Word: l.Received.What.Name, Meaning: s.words(l), Take: func() part.Msgs { return s.about(l) }})
	}
	items = append(items, part.Item{Word: "receive a lot", Meaning: "name, variety, day cut, sticks, thickness", Take: s.receive})
	s.List = part.NewList(s.x, "Lots of scion wood", trade.MovingWood.Says, items).AsScreen()
	return nil
}

// Key takes a key of the table; else it picks a lot, and the lots stay beneath
// what is asked about it.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs { return part.Press(s.Table(), k, s.List.Key) }

// Table is the keys of the screen beside those of a list.
func (s *Screen) Table() []part.Row {
	return append([]part.Row{
		{Binding: part.On("n", "next"), Says: "Open the next stump that needs work.", Do: part.Does(part.Next{})},
		{Binding: part.On("/", ""), Says: "Go to a stump: row/tree.", Do: func() part.Msgs { return s.x.AskPlace(0, "") }},
	}, s.x.Common(s.help)...)
}

func (s *Screen) help() part.Msgs { return s.x.Help("lots of scion wood", s.Table()) }

// Frame shows the lots.
func (s *Screen) Frame() part.Frame {
	f := s.List.Frame()
	f.Keys = s.x.KeyLine(paper.Text(paper.Faint, " a digit or Enter picks   Esc back  "), s.Table())
	return f
}

func heldRank(l *record.Lot) int {
	if l.Held != nil && l.Held.What.Held {
		return 1
	}
	return 0
}

// lotWords is a lot in a line: what speaks against it first.
func (s *Screen) words(l *record.Lot) string {
	w, b := l.Received.What, s.x.Site()
	words := append([]string{w.Variety}, l.Doubts(b, b.Day(s.x.Time()))...)
	if w.Thickness.Given() {
		words = append(words, b.Units.Length(w.Thickness.Length))
	}
	if w.Sticks > 0 {
		left, _ := s.x.Book.Folded().LeftOf(l.ID, s.x.Used())
		words = append(words, left.Words())
	}
	if w.Cut != 0 {
		words = append(words, "cut "+w.Cut.Long())
	}
	if n := len(l.Readings); n > 0 {
		words = append(words, fmt.Sprintf("store %s on %s", b.Units.Temperature(l.Readings[n-1].What.Temp.Temperature), b.Day(l.Readings[n-1].At).Short()))
	}
	return strings.Join(words, ", ")
}

// about is what can be put down about one lot.
func (s *Screen) about(l *record.Lot) part.Msgs {
	hold := part.Item{Word: "hold it", Meaning: "not to be used; say why", Take: func() part.Msgs { return s.hold(l) }}
	if heldRank(l) > 0 {
		hold = part.Item{Word: "let it go", Meaning: "it may be used again", Take: func() part.Msgs {
			msgs, err := s.keep(&record.LotHeld{Lot: l.ID}, "lot "+l.Received.What.Name+" may be used again")
			return msgs.And(part.Fails(err)...)
		}}
	}
	return s.x.Picks("Lot "+l.Received.What.Name, s.words(l), []part.Item{
		{Word: "read the store", Meaning: "how warm it is where the wood is kept", Take: func() part.Msgs { return s.readStore(l) }}, hold,
		{Word: "all lots", Meaning: "back to the list", Take: part.Does()},
	})
}

func (s *Screen) readStore(l *record.Lot) part.Msgs {
	b := s.x.Site()
	return s.x.Asks("How warm is the store (such as "+b.Units.Temperature(unit.Fahrenheit(35))+")?", "", true, func(text string) (part.Msgs, error) {
		text = part.Typed(text)
		t, err := unit.ParseTemperature(text, b.Units.BareTemperature())
		if err != nil {
			return nil, err
		}
		read := &record.StoreRead{Lot: l.ID, Temp: record.Degrees{Temperature: t, Typed: text}}
		return s.keep(read, "the store of "+l.Received.What.Name+" stands at "+b.Units.Temperature(t))
	})
}

func (s *Screen) hold(l *record.Lot) part.Msgs {
	return s.x.Asks("Why is it held?", "", true, func(text string) (part.Msgs, error) {
		why := part.Typed(text)
		if why == "" {
			return nil, &unit.Error{Given: text, Accepted: "a reason, such as mouldy"}
		}
		return s.keep(&record.LotHeld{Lot: l.ID, Held: true, Why: why}, "lot "+l.Received.What.Name+" is held")
	})
}

// keep puts down something about a lot, in place of the answer that stood.
func (s *Screen) keep(body record.Body, words string) (part.Msgs, error) {
	if err := s.x.Answer(body, s.x.Time()); err != nil {
		return nil, err
	}
	return part.Msgs{part.Reload{}, part.Say{Text: "Recorded: " + words + "."}}, nil
}
