package record

import (
	"cmp"
	"math"
	"slices"
	"time"
)

// Clash is two or more answers that disagree: standing answers to one question,
// none of which replaces the others, or dated ones that cannot both be true. It
// stands, and the careful answer holds, until somebody settles it.
type Clash struct {
	Question string
	Events   []Event
	Holds    ID // the one that holds meanwhile; None where none does, so that somebody must look again
	matter   *matter
	slot     int
	says     []string // on the matter, by event
}

// careful is a standing answer of which some leave more to do than others: of
// those that disagree, the one with the most care holds until it is settled.
type careful interface{ care() int }

// care: bare sealer is sealed again within days.
func (b *Sealed) care() int { return told(b.Cover == Bare) }

// care: what was given up for a season comes again.
func (b *GivenUp) care() int { return told(b.Season) }

// care: a scion that was set is looked after.
func (*ScionSet) care() int { return 1 }

func (*SlotEmpty) care() int { return 0 }

// care: the nearer the limb, the sooner it comes off.
func (b *NurseJudged) care() int { return shorter(b.Nearest) }

// care: the tighter the loop, the sooner it girdles.
func (b *Twined) care() int { return shorter(b.Loop) }

// shorter is the more the shorter a length is, least where none was given.
func shorter(m Measure) int {
	if !m.Given() {
		return math.MinInt
	}
	return -int(m.Length)
}

func told(is bool) int {
	if is {
		return 1
	}
	return 0
}

// mostCareful is the answer that holds of standing ones that disagree and are in
// order: the latest of those with the most care.
func mostCareful(es []Event) Event {
	care := func(e Event) int {
		if c, ok := e.Body.(careful); ok {
			return c.care()
		}
		return 0
	}
	out := es[0]
	for _, e := range es[1:] {
		if care(e) >= care(out) {
			out = e
		}
	}
	return out
}

// sortClashes puts the disagreements in order of the first answer of each.
func (s *Stump) sortClashes() {
	slices.SortFunc(s.Clashes, func(a, b Clash) int {
		return cmp.Or(a.Events[0].Compare(b.Events[0]), cmp.Compare(a.Question, b.Question))
	})
}

// Settle is the answers that end a clash: the one that holds said anew, for the
// time it was given for, in place of all that say otherwise and of what was given
// with those as their outcome. What else those said stands.
func (s *Stump) Settle(c Clash, holds Event) []Event {
	out := []Event{{At: holds.At, Stump: s.ID, Body: holds.Body}}
	if !s.inPart(holds) {
		out[0].Replaces = []ID{holds.ID}
	}
	held := ""
	for i, e := range c.Events {
		if e.ID == holds.ID && c.matter != nil {
			held = c.says[i]
		}
	}
	for i, e := range c.Events {
		if e.ID == holds.ID || c.matter != nil && c.says[i] == held {
			continue
		}
		out[0].Replaces = append(out[0].Replaces, e.ID)
		for _, with := range s.GivenWith(e) {
			if pair(e.Body, with.Body) && c.matter != nil {
				out[0].Replaces = append(out[0].Replaces, with.ID)
			}
		}
		if c.matter == nil {
			continue
		}
		whole, _ := find(s.All, e.ID) // of another limb of the tree it may say more than holds here
		if rest := c.matter.without(whole.Body, c.slot); rest != nil {
			out = append(out, Event{At: e.At, Stump: e.Stump, Body: rest, Replaces: []ID{e.ID}})
		}
	}
	return out
}

// Disputed is when answers about a graft were last given that disagree and of
// which none holds; zero where none was.
func (s *Stump) Disputed(slot int) (at time.Time) {
	for _, c := range s.Clashes {
		if c.Holds != None || c.slot != slot {
			continue
		}
		for _, e := range c.Events {
			if e.At.After(at) {
				at = e.At
			}
		}
	}
	return at
}
