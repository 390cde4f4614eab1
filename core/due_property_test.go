package core

import (
	"slices"
	"testing"
	"time"

	"barkslip/core/trade"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// afterKinds are the answers of a random history after the graft.
var afterKinds = []func(p dpicker) Body{
	func(p dpicker) Body { return &SealChecked{Cracked: p(3) == 0} },
	func(dpicker) Body { return &Resealed{} },
	func(dpicker) Body { return &RingSet{} },
	func(dpicker) Body { return &Staked{Height: Inches(60)} },
	func(p dpicker) Body { return p.visit() },
	func(p dpicker) Body { return p.visit() },
	func(p dpicker) Body { return p.visit() },
	func(p dpicker) Body { return &SproutsRubbed{Near: p(4)} },
	func(p dpicker) Body { return &SproutsKept{Number: p(4)} },
	func(p dpicker) Body { return &LeaderChosen{Slot: 1 + p(2)} },
	func(dpicker) Body { return &Pinched{} },
	func(p dpicker) Body {
		return &Tied{Shoot: []Measure{{}, Inches(float64(6 + p(60)))}[p(2)], Broken: p(6) == 0}
	},
	func(p dpicker) Body { return &LeaderBroken{Cause: "wind", Promoted: p(3)} },
	func(p dpicker) Body {
		return &Twined{Loop: Inches(float64(8 + p(12))), Stem: Inches(float64(3 + p(3)))}
	},
	func(p dpicker) Body { return &TwineChecked{Stem: Inches(float64(3 + p(10))), Tight: p(8) == 0} },
	func(p dpicker) Body {
		return &TwineMoved{Loop: Inches(float64(16 + p(12))), Stem: Inches(float64(3 + p(10)))}
	},
	func(dpicker) Body { return &TwineCut{} },
	func(dpicker) Body { return &TapesLoosened{} },
	func(p dpicker) Body { return &HeadedBack{Short: p(2) == 0, Height: Inches(60)} },
	func(dpicker) Body { return &SecondShootOff{} },
	func(p dpicker) Body { return &NurseLimbOff{Left: p(3)} },
	func(p dpicker) Body { return &SeasonsEnd{Word: "fair"} },
	func(p dpicker) Body { return &Noted{"note"} },
}

// endKinds end a history, or begin another attempt; they are drawn seldom.
var endKinds = []Body{&Failed{Cause: "wind"}, &GivenUp{Why: "x", Season: true}, &GivenUp{Why: "x"}, &Untied{}, &CutBack{Height: Inches(30)}, &NurseJudged{Limbs: 1}}

func (p dpicker) visit() *Visited {
	states := make([]GraftState, 2)
	for i := range states {
		states[i] = []GraftState{NoChange, NoChange, Swelling, Pushing, Pushing, Growing, Growing, Dead}[p(8)]
	}
	v := Visit(states...)
	if p(4) == 0 {
		v.Found[0].Scratch = []Scratch{Green, Brown}[p(2)]
	}
	return v
}

// history is a stump with a random past: some only cut back, most grafted.
func history(p dpicker, b *Block) *Diary {
	d := DiaryOn(b)
	day := DayOf("2027-01-01").Add(p(365))
	say := func(later int, bodies ...Body) {
		day = day.Add(p(later))
		d.On(day.String(), p(24), p(60), bodies...)
	}
	say(1, &NurseJudged{Limbs: p(3), Leaf: "some"}, &CutBack{Height: Inches(36)})
	for range p(4) {
		say(5, []Body{&Looked{Bleeding: Bleedings[p(4)], Slip: Slips[p(3)]}, &Gashed{Number: 2}, &FreshCut{}, &Drilled{Number: 1}, &Looked{Bleeding: Dry, Slip: SlipsClean}}[p(5)])
	}
	if p(6) == 0 {
		day = day.Add(8)
		d.On(day.String(), 9, 0, &Looked{Bleeding: Dry, Slip: SlipsClean}, &Gashed{Number: 2}, &FreshCut{}).On(day.String(), 9, 30, &Looked{Bleeding: Dry})
		return d
	}
	if p(5) > 0 {
		say(12, &ScionSet{Slot: 1}, &ScionSet{Slot: 2})
		say(1, &Sealed{Covers[p(2)]})
		for range p(25) {
			body := afterKinds[p(len(afterKinds))](p)
			if p(30) == 0 {
				body = endKinds[p(len(endKinds))]
			}
			say(40, body)
			if p(12) == 0 {
				d.Say(day.At(23, 0, b.Zone), &Withdrawn{Of: d.Events[p(len(d.Events))].ID})
			}
		}
	}
	return d
}

// causes names, for each kind of due, what must stand in the record before it
// can open, read from the events alone.
var causes = [dueKinds][]func(Body) bool{
	DueWhite: {is[*Sealed]}, DueLookAgain: {is[*Looked], is[*FreshCut]}, DueLook: {is[*CutBack]}, DueGraft: {is[*FreshCut]},
	DueAfterLook: {is[*Sealed]}, DueReseal: {is[*Sealed]}, DueEarwigs: {is[*ScionSet]}, DueStake: {is[*ScionSet]},
	DueBuds: {is[*ScionSet]}, DueConfirmTake: {pushing}, DueSprouts: {is[*CutBack], is[*ScionSet]}, DueKeepSprouts: {is[*Failed], deaths},
	DueLeader: {pushing, is[*LeaderChosen]}, DueTie: {pushing, is[*Tied]}, DuePinch: {is[*LeaderChosen]}, DueTwine: {is[*LeaderChosen]}, DueSeasonsEnd: {is[*ScionSet]},
	DueTiesOff: {is[*Tied]}, DueHeadBack: {is[*ScionSet]}, DueSecondShootOff: {is[*ScionSet]}, DueNurseLimbsOff: {is[*ScionSet]},
	DueTwineCheck: {is[*Twined]}, DueCutTwine: {is[*Twined]}, DueRegraft: {is[*Failed], is[*GivenUp], deaths},
}

func is[T Body](b Body) bool { _, ok := b.(T); return ok }

func pushing(b Body) bool {
	v, ok := b.(*Visited)
	return ok && slices.ContainsFunc(v.Found, func(f Finding) bool { return f.State == Pushing || f.State == Growing })
}

func deaths(b Body) bool {
	v, ok := b.(*Visited)
	return ok && slices.ContainsFunc(v.Found, func(f Finding) bool { return f.State == Dead })
}

// earliest is the block's day of the first standing event of a kind's causes.
func earliest(s *Stump, b *Block, kind DueKind) (day string, ok bool) {
	for _, e := range s.Live {
		for _, cause := range causes[kind] {
			if at := b.Day(e.At).String(); cause(e.Body) && (!ok || at < day) {
				day, ok = at, true
			}
		}
	}
	return day, ok
}

// closers is what closes each kind of due.
func closers(s *Stump, kind DueKind) []Body {
	settled := &Visited{}
	for _, g := range s.Now().Grafts {
		settled.Found = append(settled.Found, Finding{Slot: g.Slot, State: Growing})
	}
	switch kind {
	case DueWhite:
		return []Body{&PaintedWhite{}}
	case DueLook, DueGraft:
		return []Body{&ScionSet{Slot: 1}, &ScionSet{Slot: 2}}
	case DueLookAgain:
		return []Body{&Looked{Bleeding: Weeping, Slip: Drags}}
	case DueAfterLook:
		return []Body{&SealChecked{}}
	case DueReseal:
		return []Body{&Resealed{}}
	case DueEarwigs:
		return []Body{&RingSet{}}
	case DueStake:
		return []Body{&Staked{}}
	case DueBuds, DueConfirmTake:
		return []Body{settled}
	case DueSprouts:
		return []Body{&SproutsRubbed{}}
	case DueKeepSprouts:
		return []Body{&SproutsKept{}}
	case DueLeader:
		return []Body{&LeaderChosen{Slot: s.Now().Living()[0].Slot}}
	case DueTie:
		return []Body{&Tied{}}
	case DuePinch:
		return []Body{&Pinched{}}
	case DueTwine:
		return []Body{&Twined{}}
	case DueSeasonsEnd:
		return []Body{&SeasonsEnd{}}
	case DueTiesOff:
		return []Body{&TapesLoosened{}}
	case DueHeadBack:
		return []Body{&HeadedBack{Short: true}}
	case DueSecondShootOff:
		return []Body{&SecondShootOff{}}
	case DueNurseLimbsOff:
		return []Body{&NurseLimbOff{}}
	case DueTwineCheck:
		return []Body{&TwineMoved{}}
	case DueCutTwine:
		return []Body{&TwineCut{}}
	}
	return []Body{&CutBack{}}
}

func openAt(dues []Due, kind DueKind, at time.Time) bool {
	return slices.ContainsFunc(dues, func(d Due) bool { return d.Kind == kind && d.Open(at) })
}

// Over a thousand random histories: no due opens before its cause, none outlives
// what closes it, the order of the journal makes no difference, and taking back
// the last answer gives back what was due.
func TestDuesOfRandomHistories(t *testing.T) {
	seen := map[DueKind]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := ddrawn(t)
		for range 10 {
			b := []*Block{Northern(), Southern(), Frosty(WithEarwigs(Northern())), WithEarwigs(Southern())}[p(4)]
			d := history(p, b)
			s := d.Fold()
			dues := Dues(s, b)
			for i, due := range dues {
				seen[due.Kind]++
				checkDue(t, d, s, due)
				if i > 0 && dues[i-1].Opens.After(due.Opens) {
					t.Fatalf("%s after %s", dues[i-1].Kind, due.Kind)
				}
			}
			shuffled := rapid.Permutation(d.Events).Draw(t, "order")
			if diff := cmp.Diff(dues, Dues(Fold(Stump417, shuffled), b)); diff != "" {
				t.Fatalf("in another order:\n%s", diff)
			}
			next := d.Say(s.Newest.Add(time.Hour*time.Duration(p(3000))), afterKinds[p(len(afterKinds))](p))
			d.Say(next.At, &Withdrawn{Of: next.ID})
			if diff := cmp.Diff(dues, Dues(d.Fold(), b)); diff != "" {
				t.Fatalf("%s was taken back:\n%s", next.Body.Kind(), diff)
			}
		}
	})
	for _, kind := range DueKinds() {
		if seen[kind] == 0 {
			t.Errorf("no history has %s", kind)
		}
	}
}

func checkDue(t *rapid.T, d *Diary, s *Stump, due Due) {
	b := d.B
	cause, ok := earliest(s, b, due.Kind)
	opens := b.Day(due.Opens).String()
	if !ok || opens < cause || opens < b.Day(due.Since).String() || due.By.Before(due.Opens) {
		t.Fatalf("%s opens %s by %s; counted from %s, first cause %s", due.Kind, due.Opens, due.By, due.Since, cause)
	}
	if slices.ContainsFunc(due.Facts(), func(f trade.Fact) bool { return f.Says == "" }) || due.Why(b) == "" {
		t.Fatalf("%s has no reason", due.Kind)
	}
	met := due.Opens.Add(time.Hour)
	if s.Newest.After(met) {
		met = s.Newest.Add(time.Hour)
	}
	closed := &Diary{d.Apart("CD"), b}
	for i, body := range closers(s, due.Kind) {
		closed.Say(met.Add(time.Duration(i)*time.Second), body, replacing(s, body)...)
	}
	if openAt(duesOf(closed), due.Kind, met.Add(2*time.Second)) {
		after, _ := dueOf(closed, due.Kind)
		t.Fatalf("%s, open since %s, was met %s and is still due from %s", due.Kind, due.Opens, met, after.Opens)
	}
}

func replacing(s *Stump, b Body) []ID {
	if q := (Event{Body: b}).Question(); q != "" {
		return s.Answers(q)
	}
	return nil
}

func BenchmarkDues(b *testing.B) {
	grown := DiaryOn(WithEarwigs(Northern())).Grafted("2027-05-03", "2027-05-12", Wrapped)
	grown.On("2027-05-14", 9, 0, &SealChecked{}).On("2027-05-26", 9, 0, &Staked{Height: Inches(60)}, &SproutsRubbed{}, Visit(NoChange, Pushing), &RingSet{})
	grown.On("2027-06-12", 9, 0, Visit(Pushing, Growing), &LeaderChosen{Slot: 2}, &Pinched{}, &SproutsRubbed{}, &Tied{Shoot: Inches(10)})
	grown.On("2027-06-22", 9, 0, &Tied{Shoot: Inches(20)}, &SproutsRubbed{}, Visit(Growing, Growing))
	twined := &Diary{grown.Apart("AB"), grown.B}
	twined.On("2027-08-05", 9, 0, &Twined{Loop: Inches(14), Stem: Inches(4)}).On("2027-10-03", 9, 0, &TwineChecked{Stem: Inches(5)})
	girths := &Diary{twined.Apart("AB"), grown.B}
	girths.On("2028-04-03", 9, 0, &TwineChecked{Stem: Inches(5)}).On("2028-10-03", 9, 0, &TwineChecked{Stem: Inches(7.5)})
	draining := DiaryOn(Northern()).On("2027-05-03", 9, 0, &NurseJudged{Limbs: 1}, &CutBack{Height: Inches(36)}, &Gashed{Number: 2}).On("2027-05-11", 10, 0, &Looked{Bleeding: Running, Slip: Drags})
	for _, c := range []struct {
		name string
		d    *Diary
	}{{"draining", draining}, {"growing", grown}, {"twined", twined}, {"girths", girths}} {
		b.Run(c.name, func(b *testing.B) {
			s := c.d.Fold()
			for b.Loop() {
				Dues(s, c.d.B)
			}
		})
	}
}
