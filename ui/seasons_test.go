package ui

import (
	"fmt"
	"slices"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// replies is what a careful hand answers at each step of the after-care, by
// keys; steps that are not named take Enter.
var replies = map[walk.StepID][]string{
	walk.StepHeadBack: {"1"},
	walk.StepLimbs:    {"1"}, walk.StepBleeding: {"1"}, walk.StepSlip: {"1"}, walk.StepNewFace: {"1", "5"}, walk.StepMeasure: {"3.4", "enter"},
	walk.StepWood: {"9", "enter"}, walk.StepWhite: {"1"}, walk.StepSealCheck: {"1"}, walk.StepStake: {"6ft w", "enter"},
	walk.StepSprouts: {"0"}, walk.StepSproutLeaf: {"2"}, walk.StepLeader: {"1"}, walk.StepLeaderShoot: {"1"},
	walk.StepTwine: {"12in 4in", "enter"}, walk.StepTwineKind: {"1"}, walk.StepTwineCheck: {"1"}, walk.StepSeason: {"1"},
	walk.StepUntie: {"1"}, walk.StepRival: {"1"}, walk.StepSeal: {"2"}, walk.StepDeath: {"1"}, walk.StepFailed: {"1"}, walk.StepKeep: {"2"},
}

func cmpOr(a, b string) string {
	if a == "" {
		return b
	}
	return a
}

// season drives one stump through the interface, going on to the time at which
// the next thing falls due, until it is untied or the years are over.
type season struct {
	*driver
	seen  map[due.Kind]bool
	shoot int    // length of the leader in inches
	visit string // what a visit finds; "" for all growing
}

func (s *season) dues() []due.Due {
	return due.Of(s.stump(), s.root.x.Site())
}

// open is what is due now, in order of kind.
func (s *season) open() []due.Due {
	var out []due.Due
	for _, d := range s.dues() {
		if d.Open(s.now) {
			out = append(out, d)
		}
	}
	slices.SortFunc(out, func(a, b due.Due) int { return int(a.Kind) - int(b.Kind) })
	return out
}

// meet answers the present step once.
func (s *season) meet() {
	step := s.walk().Asked().Step.ID
	before, id := len(s.stump().All), s.walk().ID()
	defer func() {
		if !is[*stump.Screen](s.driver) { // Enter led on to another stump or to the block
			s.root.do(part.Open{Stump: id})
		}
	}()
	switch step {
	case walk.StepVisit:
		s.press(cmpOr(s.visit, "8"))
	case walk.StepTie:
		s.shoot = min(s.shoot+9, 110)
		s.press(fmt.Sprintf("%din", s.shoot), "enter")
	case walk.StepMeasure:
		s.press("3.4", "enter")
	default:
		keys := replies[step]
		if keys == nil {
			keys = []string{"enter"}
		}
		s.press(keys...)
	}
	if is[*stump.Screen](s.driver) && len(s.stump().All) == before {
		s.t.Fatalf("%s: nothing was taken at step %s, due %v:\n%s", s.now, step, s.open(), s.screen())
	}
}

func (s *season) run(until time.Time) {
	id := s.walk().ID()
	for turns := 0; s.now.Before(until) && turns < 900; turns++ {
		if !is[*stump.Screen](s.driver) {
			s.root.do(part.Open{Stump: id})
		}
		if s.stump().Stage() == record.StageUntied {
			return
		}
		if s.stump().Now().Failed != nil && len(s.dues()) > 0 && s.dues()[0].Kind == due.Regraft && s.dues()[0].Open(s.now) {
			s.seen[due.Regraft] = true
			return // grafting again is asked by the test
		}
		open := s.open()
		if s.stump().Now().TwineCut != nil && len(open) == 0 {
			s.untie()
			continue
		}
		if len(open) == 0 && !s.grafting() {
			s.wait()
			continue
		}
		for _, d := range open {
			s.seen[d.Kind] = true
			if d.Late(s.now) {
				s.t.Fatalf("%s: %s is late although every due was met when it opened", s.now, d.Kind)
			}
		}
		s.meet()
	}
}

// untie goes up the stake to that step: nothing is due by then.
func (s *season) untie() {
	for range 40 {
		if s.walk().Asked().Step.ID == walk.StepUntie {
			s.meet()
			return
		}
		s.send(tea.KeyMsg{Type: tea.KeyShiftTab})
	}
	s.t.Fatalf("the stake has no step to untie:\n%s", s.screen())
}

// wait goes on to the next time something falls due.
func (s *season) wait() {
	var next time.Time
	for _, d := range s.dues() {
		if d.Opens.After(s.now) && (next.IsZero() || d.Opens.Before(next)) {
			next = d.Opens
		}
	}
	if next.IsZero() {
		s.t.Fatalf("%s: nothing is due any more at stage %s:\n%s", s.now, s.stump().Stage(), s.screen())
	}
	s.now = next.Add(9 * time.Hour)
	if next.Hour() != 0 {
		s.now = next.Add(time.Minute)
	}
	s.root.Update(tick(s.now))
}

// grafting says whether the walk stands between the first look and the seal,
// where it leads on although nothing is due.
func (s *season) grafting() bool {
	step := s.walk().Asked().Step
	return s.stump().Stage() == record.StageGrafted || step.Part == walk.PartGraft
}

func newSeason(t *testing.T, begin, place, zone string) *season {
	d := newDriver(t, begin)
	d.press("1", "Home block", "enter", "2", "enter", "3", "enter", "enter", zone, "enter", place, "enter", "Lantern", "enter", "enter")
	d.sees("6 stumps")
	d.press("o")
	d.pickWord("earwigs")
	d.press("yes", "enter", "esc", "enter")
	d.cutBack()
	return &season{driver: d, seen: map[due.Kind]bool{}}
}

// A stump is walked through the interface from standing to untied. Every kind of
// due that a stump which takes can have comes up, none is late when each is met
// on the day it opens, and in the end nothing is due.
func TestFourSeasons(t *testing.T) {
	lost := []due.Kind{due.KeepSprouts, due.Regraft, due.CutBack} // a stump that lives, and is cut back before the season
	for _, c := range []struct{ name, begin, place, zone, until string }{
		{"north", "2027-04-26 09:00", "42.7 -77.2", "America/New_York", "2031-12-31 00:00"},
		{"south", "2027-10-26 09:00", "-41.3 173.2", "Pacific/Auckland", "2032-06-30 00:00"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newSeason(t, c.begin, c.place, c.zone)
			s.run(at(c.until))
			if stage := s.stump().Stage(); stage != record.StageUntied {
				t.Errorf("it ends %s at %s:\n%s", stage, s.now, s.screen())
			}
			if left := s.dues(); len(left) > 0 {
				t.Errorf("still due: %v", left)
			}
			for _, k := range due.Kinds() {
				if !s.seen[k] && !slices.Contains(lost, k) {
					t.Errorf("%s never fell due", k)
				}
			}
		})
	}
}

// A stump whose grafts all die keeps its sprouts, is cut back again in spring and
// stands at the beginning of a second attempt, the first one kept.
func TestFailedAndGraftedAgain(t *testing.T) {
	s := newSeason(t, "2027-04-26 09:00", "42.7 -77.2", "America/New_York")
	s.visit = "95" // all dead, and sure of it
	s.run(at("2028-03-20 00:00"))
	s.clock("2028-03-20 09:00")
	for _, k := range []due.Kind{due.KeepSprouts, due.Regraft} {
		if !s.seen[k] {
			t.Errorf("%s never fell due", k)
		}
	}
	if !is[*stump.Screen](s.driver) {
		s.root.do(part.Open{Stump: record.StumpID{Block: s.root.x.Block, Row: 1, Tree: 1}})
	}
	if s.stump().Now().Failed == nil {
		s.press("3")
	}
	s.sees("Failed")
	s.press("2")
	s.cutBack()
	if n := len(s.stump().Attempts); n != 2 || s.stump().Stage() != record.StageDraining || s.stump().Attempts[0].Failed == nil {
		t.Errorf("%d attempts, stage %s:\n%s", n, s.stump().Stage(), s.screen())
	}
	for _, d := range s.dues() {
		if d.Kind == due.Regraft || d.Kind == due.KeepSprouts {
			t.Errorf("%s is due still", d.Kind)
		}
	}
}
