package wood

import (
	"errors"
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Following goes through the stumps on which scions of a held lot live, one
// question a stump: what is to be done there?
type Following struct {
	part.Still
	x     *part.Session
	id    record.ID
	lot   *record.Lot
	trail plan.Trail
	alive []plan.Place // where scions of it live, or lived until they were cut out
	at    record.StumpID
}

// Follow begins at a stump, or at the first of which nothing was said.
func Follow(x *part.Session, lot record.ID, from record.StumpID) *Following {
	return &Following{x: x, id: lot, at: from}
}

// Load follows the lot anew; the stump asked about stays.
func (s *Following) Load() error {
	if s.lot = s.x.Book.Folded().LotOf(s.id); s.lot == nil {
		return errors.New("that lot was never received in this book")
	}
	s.id = s.lot.ID // the one that it goes on as
	s.trail, s.alive = trail(s.x, s.lot), nil
	for _, p := range s.trail.Places {
		if p.Use.Living() > 0 || p.Do != "" {
			s.alive = append(s.alive, p)
		}
	}
	if s.place() < 0 {
		s.next(-1)
	}
	return s.x.Trouble()
}

// place is where the stump asked about stands among those followed, -1 if not.
func (s *Following) place() int {
	for i, p := range s.alive {
		if p.Stump == s.at {
			return i
		}
	}
	return -1
}

// next goes to the next stump of which nothing was said, round to the beginning;
// there stays where there is none.
func (s *Following) next(from int) {
	for i := range s.alive {
		if p := s.alive[(from+1+i)%len(s.alive)]; p.Do == "" {
			s.at = p.Stump
			return
		}
	}
	if from < 0 && len(s.alive) > 0 {
		s.at = s.alive[0].Stump
	}
}

// Key takes a digit as the answer, or a key of the table.
func (s *Following) Key(k tea.KeyMsg) part.Msgs {
	at := s.place()
	switch key := k.String(); {
	case at < 0:
	case key == "1":
		return s.answer(&record.LotFollowed{Lot: s.id, Do: record.Watch})
	case key == "2":
		return s.answer(&record.LotFollowed{Lot: s.id, Do: record.CutOut})
	case key == "3":
		return s.cutOut()
	case key == "4":
		return opens(s.x, s.at)
	case key == "5":
		s.next(at)
		return part.Says("")
	case key == "enter":
		return part.Says("Look at the stump, then press 1 to 5.")
	}
	return part.Press(s.Table(), k, part.Useless)
}

// cutOut records that the scions were cut out: they are dead of poor wood.
func (s *Following) cutOut() part.Msgs {
	stump, err := s.x.Book.Stump(s.at)
	if err != nil {
		return part.Fails(err)
	}
	return s.answer(stump.Now().CutOutNow(s.x.Book.Folded(), s.id)...)
}

// answer puts an answer about the stump on disk as one act, and goes on to the next
// of which nothing was said.
func (s *Following) answer(bodies ...record.Body) part.Msgs {
	stump, err := s.x.Book.Stump(s.at)
	if err != nil {
		return part.Fails(err)
	}
	events, err := stump.Answer(s.x.Given(bodies...))
	if err != nil {
		return part.Fails(err)
	}
	if _, err := s.x.Write(events...); err != nil {
		return part.Fails(err)
	}
	said := fmt.Sprintf("Recorded: %s, %s. u takes it back.", placeName(s.x, s.at), s.x.Words(events))
	if err := s.Load(); err != nil {
		return part.Fails(err)
	}
	s.next(s.place())
	if s.trail.Untold == 0 {
		said += " Every stump has its answer."
	}
	return part.Says(said)
}

// Table is the keys of the screen beside the digits.
func (s *Following) Table() []part.Row { return append(s.own(), s.x.Common(s.help)...) }

// own are the keys of this screen alone.
func (s *Following) own() []part.Row {
	return append([]part.Row{
		part.ToBack.Row(part.Does(part.Say{}, part.Back{})).Told("Back. Stumps without an answer stay flagged."),
		part.ToTakeBack.Row(s.takeBack),
		part.ToWhy.Row(s.why).Told("Why the lot is held, and what is known of keeping wood."),
		part.ToNext.Row(part.Does(part.Next{})),
		part.ToFind.Row(func() part.Msgs { return s.x.AskPlace(0, "") }),
		part.ToPutBack.Row(s.x.PutBack).Named(""),
	}, part.Moves("To the stump before, or behind.", s.step)...)
}

// takeBack takes back the last answer and goes to its stump, where it is followed.
func (s *Following) takeBack() part.Msgs {
	id := s.x.LastStump()
	msgs := s.x.TakeBack()
	if err := s.Load(); err != nil {
		return part.Fails(err)
	}
	for _, p := range s.alive {
		if p.Stump == id {
			s.at = id
		}
	}
	return msgs
}

func (s *Following) help() part.Msgs {
	digits := []part.Row{{Binding: part.On("1-5", ""), Says: "Answer for this stump, open it, or leave it as it is."}}
	return s.x.Help("stumps of a held lot", digits, s.Table())
}

func (s *Following) step(by int) part.Msgs {
	if len(s.alive) > 0 {
		s.at = s.alive[max(0, min(s.place()+by, len(s.alive)-1))].Stump
	}
	return part.Says("")
}

func (s *Following) why() part.Msgs {
	return (&Lot{x: s.x, id: s.id, lot: s.lot, trail: s.trail}).why()
}

// ways are the answers, as number, word and meaning.
var ways = [][2]string{
	{"keep and watch", "they stay; the stump is flagged no more"},
	{"cut out and graft again", "to be done: it stays flagged until it is"},
	{"cut out now", "recorded as dead of poor wood"},
	{"open the stump", "its walk and story"},
	{"leave it for now", "on to the next"},
}

// Frame shows the question, why it is asked, and the answers.
func (s *Following) Frame() part.Frame {
	x := s.x
	f := part.Frame{Title: x.Site().Name, Where: "lot " + s.lot.Name() + ", held"}
	f.Keys = x.KeyLine(paper.Text(paper.Faint, " 1-5 answer "), s.own())
	width := x.Width - 4
	at := s.place()
	if at < 0 {
		f.Body = part.Indent(2, append([]paper.Line{nil}, part.Wrapped(paper.Strong, "No scion of this lot lives; nothing is to be done.", width)...))
		return f
	}
	p := s.alive[at]
	air := []paper.Line{nil}
	if x.Height < part.FullHeight-2 {
		air = nil
	}
	lines := append([]paper.Line(nil), air...)
	lines = append(lines, part.Wrapped(paper.Strong, fmt.Sprintf("What is done at %s about its wood of lot %s?", placeName(x, p.Stump), s.lot.Name()), width)...)
	lines = append(lines, air...)
	lines = append(lines, part.Wrapped(paper.Plain, s.because(p), width)...)
	lines = append(lines, nil)
	for i, w := range ways {
		l := paper.Line{{Text: fmt.Sprintf("  %d  ", i+1), Ink: paper.Accent}, {Text: w[0], Ink: paper.Plain}}
		lines = append(lines, l.Pad(32).Add(paper.Faint, w[1]).Cut(width))
	}
	if x.BodyHeight() >= len(lines)+4 {
		lines = append(lines, nil)
		lines = append(lines, part.Under("Caution ", paper.Warn, paper.Plain, trade.CleanBlades.Says, width)...)
		lines = append(lines, nil, paper.Text(paper.Faint, fmt.Sprintf("Stump %d of %d; %d without an answer, %d to be cut out.", at+1, len(s.alive),
			s.trail.Untold, s.trail.ToCut)))
	}
	f.Body = part.Indent(2, lines)
	return f
}

// because is why the question is put: why the lot is held, how its scions fare
// here, and what was said.
func (s *Following) because(p plan.Place) string {
	held := s.lot.Held
	words := fmt.Sprintf("Held %s: %s. ", unit.When(held.At, s.x.Time(), s.x.Site().Zone), held.What.Why)
	if !s.lot.IsHeld() {
		words = "The lot may be used again. "
	}
	words += fmt.Sprintf("Of it here: %s. The stump is %s.", useWords(p), p.Stage)
	if p.Do != "" {
		words += " So far: " + p.Do.Words() + "."
	}
	return words
}
