package wood

import (
	"errors"
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Lot is the screen of one lot: its label, what is left, and where it went.
type Lot struct {
	part.Still
	x     *part.Session
	id    record.ID
	lot   *record.Lot
	trail plan.Trail
	at    int // the place under the cursor
}

// Of is the screen of a lot.
func Of(x *part.Session, id record.ID) *Lot { return &Lot{x: x, id: id} }

// Load follows the lot anew.
func (s *Lot) Load() error {
	if s.lot = s.x.Book.Folded().LotOf(s.id); s.lot == nil {
		return errors.New("that lot was never received in this book")
	}
	s.id = s.lot.ID // the one that it goes on as
	s.trail = trail(s.x, s.lot)
	s.at = max(0, min(s.at, len(s.trail.Places)-1))
	return s.x.Trouble()
}

// deed is one thing that can be done about a lot, by its digit.
type deed struct {
	word string
	do   func() part.Msgs
}

func (s *Lot) deeds() []deed {
	hold := deed{"hold it", s.hold}
	if s.lot.IsHeld() {
		hold = deed{"let it go", s.release}
	}
	out := []deed{{"read the store", s.readStore}, hold, {"show on the map", s.show}, {"put right", s.correct}}
	if s.lot.Follows() {
		out = append(out, deed{"what to do at each stump", part.Does(part.FollowLot{Lot: s.id})})
	}
	return out
}

// Key takes a digit for what is done about the lot, moves in the list, or takes a
// key of the table.
func (s *Lot) Key(k tea.KeyMsg) part.Msgs {
	key := k.String()
	if deeds := s.deeds(); len(key) == 1 && key[0] >= '1' && int(key[0]-'1') < len(deeds) {
		return deeds[key[0]-'1'].do()
	}
	return part.Press(s.Table(), k, part.Useless)
}

// Table is the keys of the screen beside the digits.
func (s *Lot) Table() []part.Row { return append(s.own(), s.x.Common(s.help)...) }

// own are the keys of this screen alone.
func (s *Lot) own() []part.Row {
	return append([]part.Row{
		part.ToOpen.Row(s.open).Told("Open the stump under the cursor."),
		part.ToWhy.Row(s.why).Told("Why: the whole label, every reading of the store, and by whose word wood is warm or old."),
		part.ToNext.Row(part.Does(part.Next{})),
		part.ToTakeBack.Row(s.x.TakeBack).Told("Take back the last answer given on stumps since the program was opened."),
		part.ToFind.Row(func() part.Msgs { return s.x.AskPlace(0, "") }),
		part.ToPutBack.Row(s.x.PutBack).Named(""),
		part.ToBack.Row(part.Does(part.Say{}, part.Back{})).Told("Back to the lots."),
	}, part.Moves("Through the stumps that the lot went to.", s.step)...)
}

func (s *Lot) help() part.Msgs {
	digits := []part.Row{{Binding: part.On("1-5", ""), Says: "Read the store, hold the lot or let it go, show its stumps on the map, put its label right, " +
		"and of a held lot say what to do at each stump."}}
	return s.x.Help("a lot of scion wood", digits, s.Table())
}

func (s *Lot) step(by int) part.Msgs {
	s.at = max(0, min(s.at+by, len(s.trail.Places)-1))
	return nil
}

func (s *Lot) open() part.Msgs {
	if len(s.trail.Places) == 0 {
		return part.Says("None of this lot was set yet.")
	}
	return opens(s.x, s.trail.Places[s.at].Stump)
}

// opens opens a stump, on its block.
func opens(x *part.Session, id record.StumpID) part.Msgs {
	if id.Block != x.Block {
		return part.Msgs{part.OpenBlock{Block: id.Block}, part.Open{Stump: id}}
	}
	return part.Msgs{part.Open{Stump: id}}
}

// show marks the stumps of the lot on the map.
func (s *Lot) show() part.Msgs {
	if len(s.trail.Places) == 0 {
		return part.Says("None of this lot was set yet: there is no stump to show.")
	}
	stumps := make([]record.StumpID, len(s.trail.Places))
	for i, p := range s.trail.Places {
		stumps[i] = p.Stump
	}
	return part.Msgs{part.ShowStumps{Title: "lot " + s.lot.Name(), Stumps: stumps}}
}

func (s *Lot) readStore() part.Msgs {
	b := s.x.Site()
	return s.x.Asks("How warm is the store (such as "+b.Units.Temperature(unit.Fahrenheit(35))+")?", "", true, func(text string) (part.Msgs, error) {
		text = part.Typed(text)
		t, err := unit.ParseTemperature(text, b.Units.BareTemperature())
		if err != nil {
			return nil, err
		}
		read := &record.StoreRead{Lot: s.id, Temp: record.Degrees{Temperature: t, Typed: text}}
		return keep(s.x, read, "the store of "+s.lot.Name()+" stands at "+b.Units.Temperature(t))
	})
}

// hold takes the lot out of use: why, and whether its scions that live are in doubt
// too.
func (s *Lot) hold() part.Msgs {
	return s.x.Asks("Why is it held?", "", true, func(text string) (part.Msgs, error) {
		why := part.Typed(text)
		if why == "" {
			return nil, &unit.Error{Given: text, Accepted: "a reason, such as mouldy"}
		}
		if s.trail.Living == 0 {
			msgs, err := keep(s.x, &record.LotHeld{Lot: s.id, Held: true, Why: why}, "lot "+s.lot.Name()+" is held")
			return msgs.And(part.Say{Text: "Recorded: lot " + s.lot.Name() + " is held. " + s.noneLives()}), err
		}
		return s.howFar(why), nil
	})
}

// howFar asks whether the scions set of a held lot are in doubt; if so it is asked
// at each stump what is to be done.
func (s *Lot) howFar(why string) part.Msgs {
	take := func(left bool) func() part.Msgs {
		return func() part.Msgs {
			msgs, err := keep(s.x, &record.LotHeld{Lot: s.id, Held: true, Why: why, Left: left}, "lot "+s.lot.Name()+" is held")
			if err != nil {
				return part.Fails(err)
			}
			if !left {
				msgs = msgs.And(part.FollowLot{Lot: s.id})
			}
			return msgs
		}
	}
	lives := "its scions live on " + part.Counted(s.trail.Living, "stump")
	return s.x.Picks("Held: what of it?", "Of this lot "+lives+".", []part.Item{
		{Word: "all of it", Meaning: "asks at each stump what to do", Take: take(false)},
		{Word: "only what is left", Meaning: "the scions set are not in doubt", Take: take(true)},
	})
}

// noneLives says that nothing is to be done at the stumps of the lot.
func (s *Lot) noneLives() string {
	if len(s.trail.Places) == 0 {
		return "None of it was set yet, so no stump has it."
	}
	return fmt.Sprintf("None of its scions lives any more; nothing is to be done at %s.", part.Counted(len(s.trail.Places), "stump"))
}

func (s *Lot) release() part.Msgs {
	msgs, err := keep(s.x, &record.LotHeld{Lot: s.id}, "lot "+s.lot.Name()+" may be used again")
	return msgs.And(part.Fails(err)...)
}

// keep puts down something about a lot, in place of the answer that stood.
func keep(x *part.Session, body record.Body, words string) (part.Msgs, error) {
	if err := x.Answer(body, x.Time()); err != nil {
		return nil, err
	}
	return part.Msgs{part.Reload{}, part.Say{Text: "Recorded: " + words + "."}}, nil
}

// why is the whole label, every reading, and the facts they are held against.
func (s *Lot) why() part.Msgs {
	lines := func(width int) []paper.Line {
		wide := s.x.Measure(width - 4)
		lines := []paper.Line{nil, paper.Text(paper.Strong, "  "+nameOf(s.x, s.lot))}
		lines = append(lines, part.Indent(2, s.label(wide))...)
		for _, r := range s.lot.Readings {
			b := s.x.Site()
			lines = append(lines, paper.Text(paper.Plain, fmt.Sprintf("  Store read %s: %s (%s)", b.Day(r.At).Long(),
				b.Units.Temperature(r.What.Temp.Temperature), r.Hand)))
		}
		return append(append(lines, nil), keeping(wide)...)
	}
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Why", "lot "+s.lot.Name(), lines)}}
}
