package walk

import (
	"time"

	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/tally"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

// StepID names a step of the walk.
type StepID = due.Step

// Part is one of the parts of the walk.
type Part int

// The parts.
const (
	PartCutBack Part = iota + 1
	PartLook
	PartGraft
	PartSeal
	PartAfter
)

var partNames = [...]string{"", "Cut back", "Look", "Graft", "Seal and paint", "After"}

func (p Part) String() string { return partNames[p] }

// Step is one step of the walk: its question and answers, what to look for,
// why, and what to do when it is not right.
type Step struct {
	ID       StepID
	Part     Part
	Name     string // on the stake, two words at most
	LookFor  string
	Why      string
	NotRight string
	Cautions []trade.Caution
	Facts    []trade.Fact

	applies func(c *Case) bool   // nil: always
	done    func(c *Case) answer // nil where it has no answer of its own
	last    func(c *Case) string // of a step that comes round: what was answered the last time
	ask     func(c *Case, a *Ask)
}

// answer is what was answered at a step; an open step has none.
type answer struct {
	done  bool
	words string
}

// open is a step without an answer.
var open answer

func told(words string) answer { return answer{true, words} }

// spoken is an answer that is its own words, open where there are none.
func spoken(words string) answer { return answer{words != "", words} }

// Case is one stump at one moment, as the walk sees it.
type Case struct {
	S      *record.Stump
	A      *record.Attempt
	B      *record.Block
	Book   *record.Book
	Now    time.Time
	Found  ready.Found
	Advice ready.Advice
	Before Habit             // wood and method of the stump before
	Odds   tally.Odds        // of the block; nought where they were not reckoned
	Used   map[record.ID]int // scions set by lot, in the whole book; nil where they were not counted
	Coach  bool              // the coach is on: each thing seen on a scion is asked by itself
	again  bool              // the step was chosen again after it was answered
	dues   []due.Due         // once asked for
	asked  bool
	heats  map[time.Time]hot // reckoned so far
}

// hot is the heat of a sealed graft, where it could be reckoned.
type hot struct {
	heat weather.HeatAnswer
	ok   bool
}

// Heat is how hot the graft gets on the day it was sealed at a time, see
// due.Heat; each is reckoned once.
func (c *Case) Heat(sealed time.Time) (weather.HeatAnswer, bool) {
	h, known := c.heats[sealed]
	if !known {
		h.heat, h.ok = due.Heat(c.S, c.B, sealed)
		if c.heats == nil {
			c.heats = map[time.Time]hot{}
		}
		c.heats[sealed] = h
	}
	return h.heat, h.ok
}

// Dues is all that the stump needs, open now or to come.
func (c *Case) Dues() []due.Due {
	if !c.asked {
		c.dues, c.asked = due.At(due.Of(c.S, c.B), c.Now), true
	}
	return c.dues
}

// Due is the due of a kind, if the stump has it.
func (c *Case) Due(kind due.Kind) (due.Due, bool) {
	for _, d := range c.Dues() {
		if d.Kind == kind {
			return d, true
		}
	}
	return due.Due{}, false
}

// Habit is the wood and method of the stump worked before this one.
type Habit struct {
	Wood  *record.WoodChosen
	Cover record.Cover
	Stake *record.Staked
	Stump record.StumpID
}

// HabitOf is the wood and method used on a stump.
func HabitOf(s *record.Stump) Habit {
	a := s.Now()
	h := Habit{Stump: s.ID}
	if a.Wood != nil {
		wood := a.Wood.What
		wood.Pieces = nil // a stick is cut once
		h.Wood = &wood
	}
	if a.Sealed != nil {
		h.Cover = a.Sealed.What.Cover
	}
	if a.Stake != nil {
		stake := a.Stake.What
		h.Stake = &stake
	}
	return h
}

// NewCase sees a stump at now.
func NewCase(s *record.Stump, b *record.Block, book *record.Book, now time.Time, before Habit) *Case {
	c := &Case{S: s, A: s.Now(), B: b, Book: book, Now: now.In(b.Zone), Before: before}
	c.Found = ready.FoundOn(s, b, c.Now)
	c.Advice = ready.Judge(c.Found, c.Now, b.Zone, b.Units)
	return c
}

func (c *Case) today(t time.Time) bool { return !t.IsZero() && c.B.Day(t) == c.B.Day(c.Now) }

func (c *Case) length(l unit.Length) string { return c.B.Units.Length(l) }

// round is a figure of the trade as people of the block's units are told it.
func (c *Case) round(figure unit.Length) unit.Length { return c.B.Units.Round(figure) }

// across prints the width of a stump on its own side of the sizes that decide.
func (c *Case) across(l unit.Length) string { return c.B.Units.Beside(l, trade.StumpLimits...) }

// when prints an instant as a clock time today, and with its day otherwise.
func (c *Case) when(t time.Time) string { return unit.When(t, c.Now, c.B.Zone) }

// Variety is the variety planned for the stump.
func (c *Case) Variety() string {
	if c.S.Added != nil && c.S.Added.What.Variety != "" {
		return c.S.Added.What.Variety
	}
	return c.B.Variety
}

// Steps are all steps of the walk in order.
var steps []*Step

// stepByID finds a step.
func stepByID(id StepID) *Step {
	for _, s := range steps {
		if s.ID == id {
			return s
		}
	}
	return nil
}

// Steps lists the walk.
func Steps() []*Step { return steps }

// Knot is a step as it stands on one stump.
type Knot struct {
	Step    *Step
	Done    bool
	Answer  string // what was answered, in a few words
	Last    string // of a step that comes round: the answer of the last time
	Present bool
	Due     *due.Due // that the step meets, the one that opens first; nil if there is none
}

// Knots is the walk as it stands: the steps that belong to this stump, with
// what was answered and which is asked now.
func (c *Case) Knots() []Knot {
	present := c.Present()
	var out []Knot
	for _, s := range steps {
		if s.applies != nil && !s.applies(c) && s.ID != present {
			continue
		}
		k := Knot{Step: s, Present: s.ID == present}
		if s.done != nil {
			a := s.done(c)
			k.Done, k.Answer = a.done, a.words
		}
		if s.last != nil {
			k.Last = s.last(c)
		}
		k.Due = c.dueAt(s.ID)
		out = append(out, k)
	}
	return out
}

// dueAt is the due met at a step, the one that opens first.
func (c *Case) dueAt(id StepID) (first *due.Due) {
	for _, d := range c.Dues() {
		if d.Kind.Step() == id && (first == nil || d.Opens.Before(first.Opens)) {
			first = &d
		}
	}
	return first
}
