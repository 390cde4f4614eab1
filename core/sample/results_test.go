package sample

import (
	"testing"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Each scion was set on the advice to graft, or with the advice gone against
// said first.
func TestGraftsFollowTheAdvice(t *testing.T) {
	grafted, against, learner, byLearner := 0, 0, 0, 0
	for _, h := range made() {
		for _, id := range h.order {
			for i, e := range h.events[id] {
				if set, ok := e.Body.(*record.ScionSet); !ok || set.Slot != 1 {
					continue
				}
				s := record.Fold(id, h.events[id][:i])
				grafted++
				if e.Hand == crew[len(crew)-1].initials {
					byLearner++
				}
				if len(s.Now().Against) > 0 {
					against++
					if e.Hand == crew[len(crew)-1].initials {
						learner++
					}
					continue
				}
				h.followed(t, s, e)
			}
		}
	}
	t.Logf("%d grafted, %d of them against advice; by the learner %d, %d", grafted, against, byLearner, learner)
	if share := float64(against) / float64(grafted); share < 0.015 || share > 0.035 {
		t.Errorf("%d grafted, %d of them against advice", grafted, against)
	}
	if learner*(grafted-byLearner) < (against-learner)*byLearner {
		t.Errorf("the learner went against advice %d times in %d, the others %d in %d", learner, byLearner, against-learner, grafted-byLearner)
	}
}

// followed checks that a stump was grafted as it was advised.
func (h *history) followed(t *testing.T, s *record.Stump, e record.Event) {
	t.Helper()
	if days := unit.DateOf(e.At) - unit.DateOf(s.Now().CutBack.At); days < 7 {
		t.Errorf("%s was grafted %d days after it was cut back", s.ID.Place(), days)
	}
	if v := ready.AdviceOn(s, h.block, e.At).Verdict; v != ready.Graft {
		t.Errorf("%s was grafted at %s on the advice to %s", s.ID.Place(), e.At, v)
	}
}

// score is how many grafts of a kind grew and died.
type score struct{ grew, died int }

func (s score) rate() float64 { return float64(s.grew) / float64(max(1, s.grew+s.died)) }

// results gives the score of all grafts that are settled, of each hand's, of
// those against advice, of each lot's by its name, and the causes for which
// stumps failed.
func results(all []*history) (by map[string]score, causes map[string]int) {
	by, causes = map[string]score{}, map[string]int{}
	for _, h := range all {
		for _, s := range h.stumps {
			for _, a := range s.Attempts {
				if a.Failed != nil {
					causes[a.Failed.What.Cause]++
				}
				h.count(by, a)
			}
		}
	}
	return by, causes
}

func (h *history) count(by map[string]score, a *record.Attempt) {
	for _, g := range a.Grafts {
		if g.State != record.Dead && g.State != record.Growing {
			continue
		}
		keys := []string{"all", g.Set.Hand, h.book.LotOf(a.Wood.What.Lot).Received.What.Name}
		if len(a.Against) > 0 {
			keys = append(keys, "against")
		}
		for _, key := range keys {
			s := by[key]
			if g.State == record.Growing {
				s.grew++
			} else {
				s.died++
			}
			by[key] = s
		}
	}
}

// What goes wrong leaves a trace in the results.
func TestLossesHaveTheirCauses(t *testing.T) {
	by, causes := results(made())
	all := by["all"].rate()
	if all < 0.5 || all > 0.8 {
		t.Errorf("of all grafts %.2f took", all)
	}
	if against := by["against"].rate(); against > all-0.1 {
		t.Errorf("of all grafts %.2f took, of those against advice %.2f", all, against)
	}
	if learner, best := by["AS"].rate(), by["MK"].rate(); learner > best-0.1 {
		t.Errorf("of the learner's %.2f took, of the best hand's %.2f", learner, best)
	}
	for _, cause := range []string{"bled", "overheated", "poor wood", "bark lifted", "frost"} {
		if causes[cause] == 0 {
			t.Errorf("no stump failed because of %q: %v", cause, causes)
		}
	}
}

// In each season one lot took about half as well as the others.
func TestOneLotOfASeasonDidWorse(t *testing.T) {
	by, _ := results(made())
	g := made()[0].ground
	for season := 0; season < g.ages; season++ { // this season's are not settled
		var warm, others score
		for _, l := range g.lots[season*len(sources):][:len(sources)] {
			s := by[l.Name]
			if l.warm {
				warm = s
			} else {
				others.grew, others.died = others.grew+s.grew, others.died+s.died
			}
		}
		t.Logf("season %d: warm %.2f %v, others %.2f %v", season, warm.rate(), warm, others.rate(), others)
		if share := warm.rate() / others.rate(); share < 0.3 || share > 0.7 {
			t.Errorf("season %d: of the warm lot %.2f took, of the others %.2f", season, warm.rate(), others.rate())
		}
	}
}

// The sticks of a lot are enough for its scions, and not many more.
func TestWoodCountsDown(t *testing.T) {
	for seed, h := range made() {
		set := map[record.ID]int{}
		for _, s := range h.stumps {
			for _, a := range s.Attempts {
				if len(a.Grafts) > 0 {
					set[a.Wood.What.Lot] += len(a.Grafts)
				}
			}
		}
		for _, l := range h.book.LotList() {
			got := l.Received.What
			sticks := (set[got.Lot] + perStick - 1) / perStick
			if left := got.Sticks - sticks; left < 0 || got.Cut.Year() < h.ground.today.Year() && left > got.Sticks*3/4 {
				t.Errorf("seed %d: %s had %d sticks, %d are used", seed, got.Name, got.Sticks, sticks)
			}
		}
	}
}
