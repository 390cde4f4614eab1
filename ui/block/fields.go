package block

import (
	"slices"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/part"
)

// fields are what stumps are told apart by, in the order in which they are offered.
var fields = []*field{&stages, &works, &lots, &varieties, &hands, &bleedings, &results, &causes, &notSeen}

// named prefixes a value in words.
func named(word string) func(*Screen, string) string {
	return func(_ *Screen, v string) string { return strings.TrimSpace(word + " " + v) }
}

// inOrder orders values as they stand in a list.
func inOrder(all []string) func(*Screen, string, string) int {
	return func(_ *Screen, x, y string) int { return slices.Index(all, x) - slices.Index(all, y) }
}

func wordsOf[T interface{ String() string }](all []T) (out []string) {
	for _, one := range all {
		out = append(out, one.String())
	}
	return out
}

var stages = field{
	name: "stage", asks: "how far they have come", words: named(""),
	stump: func(_ *Screen, s *due.Summary) []string { return stageValue[s.Stage] },
	order: inOrder(wordsOf(record.Stages())),
}

// stageValue is each stage as the one value of a stump.
var stageValue = func() (out [][]string) {
	for _, s := range record.Stages() {
		out = append(out, []string{s.String()})
	}
	return out
}()

var works = field{
	name: "work", asks: "what can be done on them now",
	words: func(_ *Screen, v string) string { return due.VerbOf(v) + " due" },
	stump: func(b *Screen, s *due.Summary) (out []string) {
		now := b.x.Time()
		for _, d := range s.Dues {
			if d.On(now).Open(now) && !slices.Contains(out, d.Kind.String()) {
				out = append(out, d.Kind.String())
			}
		}
		return out
	},
	order: inOrder(wordsOf(due.Kinds())),
}

var lots = field{
	name: "lot", asks: "wood of one lot",
	words: func(b *Screen, v string) string { return "lot " + b.lotName(v) },
	graft: func(b *Screen, g part.GraftTold) []string { return []string{b.lotGoes(g.Lot)} },
	hint: func(b *Screen, s *due.Summary, v string) (may, is bool) {
		if v == record.None.String() {
			return true, false
		}
		for _, u := range s.Used {
			if b.lotGoes(u.Lot) == v {
				return true, false
			}
		}
		return false, false
	},
	order: func(b *Screen, x, y string) int {
		switch hx, hy := b.lotHeld(x), b.lotHeld(y); {
		case hx && !hy:
			return -1
		case hy && !hx:
			return 1
		}
		return strings.Compare(b.lotName(x), b.lotName(y))
	},
}

// lotGoes is the id of the lot that a lot goes on as.
func (b *Screen) lotGoes(id record.ID) string {
	if lot := b.x.Book.Folded().LotOf(id); lot != nil {
		return lot.ID.String()
	}
	return record.None.String()
}

// lotHeld says whether a lot is held with the scions that were set of it, so that its stumps are to be seen.
func (b *Screen) lotHeld(id string) bool {
	parsed, err := record.ParseID(id)
	if err != nil {
		return false
	}
	lot := b.x.Book.Folded().LotOf(parsed)
	return lot != nil && lot.Follows()
}

var varieties = field{
	name: "variety", asks: "grafted, or planned where nothing is", words: named("variety"),
	graft: func(_ *Screen, g part.GraftTold) []string { return orUnknown(g.Variety) },
	bare:  func(t part.StumpTold) []string { return orUnknown(t.Planned) },
}

// unknown is the value of what nobody told.
const unknown = "not told"

func orUnknown(v string) []string {
	if v == "" {
		v = unknown
	}
	return []string{v}
}

var hands = field{
	name: "hand", asks: "who set the scions", words: named("hand"),
	graft: func(_ *Screen, g part.GraftTold) []string { return orUnknown(g.Hand) },
}

var bleedings = field{
	name: "bleeding", asks: "as last seen before the first scion", words: named("bleeding"),
	graft: func(_ *Screen, g part.GraftTold) []string { return orUnknown(string(g.Bleeding)) },
	order: inOrder([]string{string(record.Dry), string(record.Damp), string(record.Weeping), string(record.Running), unknown}),
}

// The results of a graft.
const (
	took       = "took"
	lostLater  = "took, lost later"
	didNotTake = "dead, did not take"
	notKnown   = "not known yet"
)

var results = field{
	name: "result", asks: "took, dead, or not known", words: named(""),
	graft: func(_ *Screen, g part.GraftTold) []string {
		switch {
		case !g.Known:
			return []string{notKnown}
		case !g.Took:
			return []string{didNotTake}
		case g.Dead:
			return []string{took, lostLater}
		}
		return []string{took}
	},
	hint: func(_ *Screen, s *due.Summary, v string) (may, is bool) {
		switch v {
		case took:
			return s.Taken > 0, s.Taken > 0
		case didNotTake:
			return s.Known > s.Taken, s.Known > s.Taken
		case lostLater:
			return s.Taken > 0, false
		}
		return true, false
	},
	order: inOrder([]string{took, lostLater, didNotTake, notKnown}),
}

var causes = field{
	name: "cause", asks: "what killed grafts", words: named("lost:"),
	graft: func(_ *Screen, g part.GraftTold) []string {
		if !g.Dead {
			return nil
		}
		return orUnknown(g.Cause)
	},
}

// The states of a stump, several of which may hold at once.
const (
	isOpen    = "work due"
	isLate    = "late"
	differs   = "disagree"
	hasNotes  = "with notes"
	isAgainst = "against advice"
)

var states = field{
	name: "state", words: named(""),
	stump: func(b *Screen, s *due.Summary) (out []string) {
		now := b.x.Time()
		for _, is := range []struct {
			so   bool
			word string
		}{{s.Open(now), isOpen}, {s.Late(now), isLate}, {s.Clash, differs}, {s.Noted, hasNotes}, {s.Against, isAgainst}} {
			if is.so {
				out = append(out, is.word)
			}
		}
		return out
	},
}

// stateWords are the states as they are offered.
var stateWords = []struct{ value, meaning string }{
	{isOpen, "something can be done now"}, {isLate, "something should have been done before now"},
	{differs, "answers that cannot both hold stand"}, {hasNotes, "a note stands on them"}, {isAgainst, "grafted against advice"},
}
