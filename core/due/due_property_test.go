package due

import (
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/trade"
)

// afterKinds are the answers of a random history after the graft.
var afterKinds = []func(p dpicker) record.Body{
	func(p dpicker) record.Body { return &record.SealChecked{Cracked: p(3) == 0} },
	func(dpicker) record.Body { return &record.Resealed{} },
	func(dpicker) record.Body { return &record.RingSet{} },
	func(dpicker) record.Body { return &record.Staked{Height: recordtest.Inches(60)} },
	func(p dpicker) record.Body { return p.visit() },
	func(p dpicker) record.Body { return p.visit() },
	func(p dpicker) record.Body { return p.visit() },
	func(p dpicker) record.Body {
		return &record.SproutsRubbed{Near: p(4), Below: p(2), Leaf: []string{"", "some"}[p(2)]}
	},
	func(p dpicker) record.Body { return &record.SproutsKept{Number: p(4)} },
	func(p dpicker) record.Body {
		return &record.LeaderChosen{Slot: 1 + p(2), Shoot: []string{"", "upper"}[p(2)]}
	},
	func(dpicker) record.Body { return &record.Pinched{} },
	func(p dpicker) record.Body {
		return &record.Tied{Shoot: []record.Measure{{}, recordtest.Inches(float64(6 + p(60)))}[p(2)], Broken: p(6) == 0}
	},
	func(p dpicker) record.Body {
		return &record.LeaderBroken{Cause: "wind", Promoted: p(3), Shoot: []string{"", "upper"}[p(2)]}
	},
	func(p dpicker) record.Body {
		return &record.Twined{Loop: recordtest.Inches(float64(8 + p(12))), Stem: recordtest.Inches(float64(3 + p(3)))}
	},
	func(p dpicker) record.Body {
		return &record.TwineChecked{Stem: recordtest.Inches(float64(3 + p(10))), Tight: p(8) == 0}
	},
	func(p dpicker) record.Body {
		return &record.TwineMoved{Loop: recordtest.Inches(float64(16 + p(12))), Stem: recordtest.Inches(float64(3 + p(10)))}
	},
	func(dpicker) record.Body { return &record.TwineCut{} },
	func(dpicker) record.Body { return &record.TapesLoosened{} },
	func(p dpicker) record.Body {
		return &record.HeadedBack{Short: p(2) == 0, Height: recordtest.Inches(60)}
	},
	func(dpicker) record.Body { return &record.SecondShootOff{} },
	func(p dpicker) record.Body { return &record.NurseLimbOff{Left: p(3)} },
	func(p dpicker) record.Body { return &record.SeasonsEnd{Word: "fair"} },
	func(p dpicker) record.Body { return &record.AnotherYear{Work: record.PutOff[p(len(record.PutOff))]} },
	func(dpicker) record.Body { return &record.WashedOff{} },
	func(p dpicker) record.Body { return &record.Noted{Text: "note"} },
}

// endKinds end a history, or begin another attempt; they are drawn seldom.
var endKinds = []record.Body{&record.Failed{Cause: "wind"}, &record.GivenUp{Why: "x", Season: true}, &record.GivenUp{Why: "x"}, &record.Untied{}, &record.ScionSet{Slot: 1}, &record.Sealed{Cover: record.Bare}, &record.CutBack{Height: recordtest.Inches(30)}, &record.NurseJudged{Limbs: 1}}

func (p dpicker) visit() *record.Visited {
	states := make([]record.GraftState, 2)
	for i := range states {
		states[i] = []record.GraftState{record.NoChange, record.NoChange, record.Swelling, record.Pushing, record.Pushing, record.Growing, record.Growing, record.Dead}[p(8)]
	}
	v := recordtest.Visit(states...)
	if p(4) == 0 {
		v.Found[0].Scratch = []record.Scratch{record.Green, record.Brown}[p(2)]
	}
	return v
}

// history is a stump with a random past: some only cut back, most grafted.
func history(p dpicker, b *record.Block) *recordtest.Diary {
	d := recordtest.DiaryOn(b)
	day := recordtest.DayOf("2027-01-01").Add(p(365))
	say := func(later int, bodies ...record.Body) {
		day = day.Add(p(later))
		d.Odd(day.String(), p(24), p(60), bodies...)
	}
	say(1, &record.NurseJudged{Limbs: p(3), Leaf: "some"}, &record.CutBack{Height: recordtest.Inches(36)})
	for range p(4) {
		say(5, []record.Body{&record.Looked{Bleeding: record.Bleedings[p(4)], Slip: record.Slips[p(3)]}, &record.Gashed{Number: 2}, &record.FreshCut{}, &record.Drilled{Number: 1}, &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean}}[p(5)])
	}
	if p(6) == 0 {
		day = day.Add(8)
		d.Odd(day.String(), 9, 0, &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean}, &record.Gashed{Number: 2}, &record.FreshCut{}).Odd(day.String(), 9, 30, &record.Looked{Bleeding: record.Dry})
		return d
	}
	if p(5) > 0 {
		say(12, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}, {Bearing: 180}}}, &record.ScionSet{Slot: 1})
		if p(12) == 0 {
			return d
		}
		say(1, &record.ScionSet{Slot: 2})
		if p(12) == 0 {
			return d
		}
		say(1, &record.Sealed{Cover: record.Covers[p(2)]})
		for range p(25) {
			body := afterKinds[p(len(afterKinds))](p)
			if p(30) == 0 {
				body = endKinds[p(len(endKinds))]
			}
			say(40, body)
			if p(12) == 0 {
				d.Say(day.At(23, 0, b.Zone), &record.Withdrawn{Of: d.Events[p(len(d.Events))].ID})
			}
		}
	}
	return d
}

// causes names, for each kind of due, what must stand in the record before it
// can open, read from the events alone.
var causes = map[Kind][]func(record.Body) bool{
	Finish: {is[*record.ScionSet]}, Seal: {is[*record.ScionSet]}, White: {is[*record.Sealed]}, Reseal: {is[*record.Sealed]}, AfterLook: {is[*record.Sealed]},
	CutBack: {is[*record.NurseJudged], is[*record.CutBack], is[*record.StumpAdded]}, Look: {is[*record.CutBack]},
	LookAgain: {is[*record.Looked], is[*record.FreshCut]}, Graft: {is[*record.FreshCut]}, Earwigs: {is[*record.ScionSet]}, Stake: {pushing},
	Buds: {is[*record.ScionSet]}, ConfirmTake: {pushing}, Sprouts: {is[*record.CutBack], is[*record.ScionSet]}, KeepSprouts: {is[*record.Failed], deaths},
	Leader: {pushing, is[*record.LeaderChosen]}, Tie: {pushing, is[*record.Tied]}, Pinch: {is[*record.LeaderChosen]}, Twine: {is[*record.LeaderChosen]}, SeasonsEnd: {is[*record.ScionSet]},
	TiesOff: {is[*record.Tied]}, HeadBack: {is[*record.LeaderChosen]}, SecondShootOff: {is[*record.LeaderChosen]}, NurseLimbsOff: {is[*record.NurseJudged], is[*record.NurseLimbOff]},
	TwineCheck: {is[*record.Twined]}, CutTwine: {is[*record.Twined]}, Untie: {is[*record.ScionSet]}, Regraft: {is[*record.Failed], is[*record.GivenUp], deaths},
}

func is[T record.Body](b record.Body) bool { _, ok := b.(T); return ok }

func pushing(b record.Body) bool {
	v, ok := b.(*record.Visited)
	return ok && slices.ContainsFunc(v.Found, func(f record.Finding) bool { return f.State == record.Pushing || f.State == record.Growing })
}

func deaths(b record.Body) bool {
	v, ok := b.(*record.Visited)
	return ok && slices.ContainsFunc(v.Found, func(f record.Finding) bool { return f.State == record.Dead })
}

// earliest is the block's day of the first standing event of a kind's causes.
func earliest(s *record.Stump, b *record.Block, kind Kind) (day string, ok bool) {
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
var closers = map[Kind]func(a *record.Attempt) []record.Body{
	Finish: setAll, Seal: gives(&record.Sealed{Cover: record.Wrapped}), White: gives(&record.PaintedWhite{}),
	CutBack: gives(&record.CutBack{}), Regraft: gives(&record.CutBack{}),
	Look: gives(&record.Looked{Bleeding: record.Weeping, Slip: record.Drags}), LookAgain: gives(&record.Looked{Bleeding: record.Weeping, Slip: record.Drags}), Graft: setAll,
	AfterLook: gives(&record.SealChecked{}), Reseal: gives(&record.Resealed{}), Earwigs: gives(&record.RingSet{}), Stake: gives(&record.Staked{}),
	Buds: allGrow, ConfirmTake: allGrow, Sprouts: gives(&record.SproutsRubbed{Leaf: "some"}), KeepSprouts: gives(&record.SproutsKept{}),
	Leader: func(a *record.Attempt) []record.Body {
		return []record.Body{&record.LeaderChosen{Slot: a.Living()[0].Slot, Shoot: "upper"}}
	},
	Tie: gives(&record.Tied{}), Pinch: gives(&record.Pinched{}), Twine: gives(&record.Twined{}), SeasonsEnd: gives(&record.SeasonsEnd{}), TiesOff: gives(&record.TapesLoosened{}),
	HeadBack: gives(&record.HeadedBack{Short: true}), SecondShootOff: gives(&record.SecondShootOff{}), NurseLimbsOff: gives(&record.NurseLimbOff{}),
	TwineCheck: gives(&record.TwineMoved{}), CutTwine: gives(&record.TwineCut{}), Untie: gives(&record.AnotherYear{Work: "untie"}),
}

// gives is an answer that depends on nothing.
func gives(body record.Body) func(*record.Attempt) []record.Body {
	return func(*record.Attempt) []record.Body { return []record.Body{body} }
}

// setAll sets a scion in each slot that is marked, at least two.
func setAll(a *record.Attempt) (out []record.Body) {
	for n := range max(a.Marked(), 2) {
		out = append(out, &record.ScionSet{Slot: n + 1})
	}
	return out
}

// allGrow is a visit that sees each graft growing.
func allGrow(a *record.Attempt) []record.Body {
	v := &record.Visited{}
	for _, g := range a.Grafts {
		v.Found = append(v.Found, record.Finding{Slot: g.Slot, State: record.Growing})
	}
	return []record.Body{v}
}

func openAt(dues []Due, kind Kind, at time.Time) bool {
	return slices.ContainsFunc(dues, func(d Due) bool { return d.Kind == kind && d.Open(at) })
}

// Over a thousand random histories: no due opens before its cause, none outlives
// what closes it, the order of the journal makes no difference, and taking back
// the last answer gives back what was due.
func TestDuesOfRandomHistories(t *testing.T) {
	seen := map[Kind]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := ddrawn(t)
		for range 10 {
			b := []*record.Block{recordtest.Northern(), recordtest.Southern(), recordtest.Frosty(recordtest.WithEarwigs(recordtest.Northern())), recordtest.WithEarwigs(recordtest.Southern())}[p(4)]
			d := history(p, b)
			s := d.Fold()
			dues := Of(s, b)
			for i, due := range dues {
				seen[due.Kind]++
				checkDue(t, d, s, due)
				if i > 0 && dues[i-1].Opens.After(due.Opens) {
					t.Fatalf("%s after %s", dues[i-1].Kind, due.Kind)
				}
			}
			shuffled := rapid.Permutation(d.Events).Draw(t, "order")
			if diff := cmp.Diff(dues, Of(record.Fold(recordtest.Stump417, shuffled), b)); diff != "" {
				t.Fatalf("in another order:\n%s", diff)
			}
			next := d.Say(s.Newest.Add(time.Hour*time.Duration(p(3000))), afterKinds[p(len(afterKinds))](p))
			d.Say(next.At, &record.Withdrawn{Of: next.ID})
			if diff := cmp.Diff(dues, Of(d.Fold(), b)); diff != "" {
				t.Fatalf("%s was taken back:\n%s", next.Body.Kind(), diff)
			}
		}
	})
	for _, kind := range Kinds() {
		if seen[kind] == 0 {
			t.Errorf("no history has %s", kind)
		}
	}
}

func checkDue(t *rapid.T, d *recordtest.Diary, s *record.Stump, due Due) {
	b := d.B
	cause, ok := earliest(s, b, due.Kind)
	if due.Kind == CutBack && !ok { // a stump of which nothing stands is to be cut back
		cause, ok = b.Day(due.Since).String(), true
	}
	opens := b.Day(due.Opens).String()
	early := !due.Yearly && (opens < cause || opens < b.Day(due.Since).String()) // what comes each year opens by the calendar
	if !ok || early || due.By.Before(due.Opens) || !due.Ends.IsZero() && !due.Ends.After(due.Opens) {
		t.Fatalf("%s opens %s by %s; counted from %s, first cause %s", due.Kind, due.Opens, due.By, due.Since, cause)
	}
	if slices.ContainsFunc(due.Facts(), func(f trade.Fact) bool { return f.Says == "" }) || due.Why(b) == "" {
		t.Fatalf("%s has no reason", due.Kind)
	}
	met := due.Opens.Add(time.Hour)
	if s.Newest.After(met) {
		met = s.Newest.Add(time.Hour)
	}
	closed := &recordtest.Diary{Laptop: d.Apart("CD"), B: b}
	for i, body := range closers[due.Kind](s.Now()) {
		closed.Say(met.Add(time.Duration(i)*time.Second), body, replacing(s, body)...)
	}
	if openAt(duesOf(closed), due.Kind, met.Add(2*time.Second)) {
		after, _ := dueOf(closed, due.Kind)
		t.Fatalf("%s, open since %s, was met %s and is still due from %s", due.Kind, due.Opens, met, after.Opens)
	}
}

func replacing(s *record.Stump, b record.Body) []record.ID {
	if q := (record.Event{Body: b}).Question(); q != "" {
		return s.Answers(q)
	}
	return nil
}

func BenchmarkDues(b *testing.B) {
	grown := recordtest.DiaryOn(recordtest.WithEarwigs(recordtest.Northern())).Grafted("2027-05-03", "2027-05-12", record.Wrapped)
	grown.On("2027-05-14", 9, 0, &record.SealChecked{}).On("2027-05-26", 9, 0, &record.Staked{Height: recordtest.Inches(60)}, &record.SproutsRubbed{}, recordtest.Visit(record.NoChange, record.Pushing), &record.RingSet{})
	grown.On("2027-06-12", 9, 0, recordtest.Visit(record.Pushing, record.Growing), &record.LeaderChosen{Slot: 2}, &record.Pinched{}, &record.SproutsRubbed{}, &record.Tied{Shoot: recordtest.Inches(10)})
	grown.On("2027-06-22", 9, 0, &record.Tied{Shoot: recordtest.Inches(20)}, &record.SproutsRubbed{}, recordtest.Visit(record.Growing, record.Growing))
	twined := &recordtest.Diary{Laptop: grown.Apart("AB"), B: grown.B}
	twined.On("2027-08-05", 9, 0, &record.Twined{Loop: recordtest.Inches(14), Stem: recordtest.Inches(4)}).
		On("2027-10-03", 9, 0, &record.TwineChecked{Stem: recordtest.Inches(5)})
	girths := &recordtest.Diary{Laptop: twined.Apart("AB"), B: grown.B}
	girths.On("2028-04-03", 9, 0, &record.TwineChecked{Stem: recordtest.Inches(5)}).On("2028-10-03", 9, 0, &record.TwineChecked{Stem: recordtest.Inches(7.5)})
	draining := recordtest.DiaryOn(recordtest.Northern()).On("2027-05-03", 9, 0, &record.NurseJudged{Limbs: 1}, &record.CutBack{Height: recordtest.Inches(36)}, &record.Gashed{Number: 2}).On("2027-05-11", 10, 0, &record.Looked{Bleeding: record.Running, Slip: record.Drags})
	for _, c := range []struct {
		name string
		d    *recordtest.Diary
	}{{"draining", draining}, {"growing", grown}, {"twined", twined}, {"girths", girths}} {
		b.Run(c.name, func(b *testing.B) {
			s := c.d.Fold()
			for b.Loop() {
				Of(s, c.d.B)
			}
		})
	}
}
