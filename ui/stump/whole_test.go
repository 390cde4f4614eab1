package stump

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"barkslip/core/sample"
	"barkslip/core/walk"
	"barkslip/store"
	"barkslip/ui/part"
)

// onSample is a session on a made-up block of so many stumps.
func onSample(t *testing.T, stumps int) *part.Session {
	t.Helper()
	zone, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Fatal(err)
	}
	plan := sample.Plan{Stumps: stumps, Seasons: 3, Seed: 1, Zone: zone, Now: time.Date(2027, 5, 20, 10, 12, 0, 0, zone)}
	book, err := store.Create(filepath.Join(t.TempDir(), "test.bark"), store.Options{})
	if err == nil {
		err = book.Bulk(sample.Events(plan))
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { book.Close() })
	x := part.NewSession(part.Options{Book: book, Now: func() time.Time { return plan.Now }, Prefs: part.Prefs{Hand: "RK"}})
	for id := range book.Folded().Blocks {
		x.Block = id
	}
	return x
}

var inkSigns = regexp.MustCompile("\x1b\\[[0-9;]*m")

// mostOfAStep is on how many stumps each step is seen: enough for all that its
// answers say, and quick.
const mostOfAStep = 4

// TestNoAnswerIsCut asks every step of the walk, on many stumps of the sample, with
// what each answer asks further, and sees in the two least windows, with the coach
// and without, that every word of every answer stands there.
func TestNoAnswerIsCut(t *testing.T) {
	x := onSample(t, 60)
	sums, err := x.Book.Summaries(x.Block)
	if err != nil {
		t.Fatal(err)
	}
	asked, seen := map[walk.StepID]int{}, map[string]bool{}
	ask := func(s *Screen, step walk.StepID) {
		asked[step]++
		for _, again := range []bool{false, true} {
			s.goTo(step, again)
			s.seeWhole(t, seen)
			for _, ch := range s.asked.Choices {
				s.sub, s.doubt = nil, ch.Doubt
				if ch.Entry != nil {
					s.sub = &ch
				}
				if s.sub != nil || s.doubt != nil {
					s.seeWhole(t, seen)
				}
			}
			s.clear()
		}
	}
	var grafted *Screen
	for _, sum := range sums {
		s := New(x, sum.ID, false)
		if err := s.Load(); err != nil {
			t.Fatal(err)
		}
		for _, knot := range s.walk.Knots() {
			if asked[knot.Step.ID] < mostOfAStep {
				ask(s, knot.Step.ID)
			}
		}
		if len(s.walk.A.Grafts) > 0 {
			grafted = s
		}
	}
	for _, step := range walk.Steps() { // those that no stump of the sample has come to
		if asked[step.ID] == 0 {
			ask(grafted, step.ID)
		}
	}
	if len(seen) < 200 {
		t.Errorf("only %d screens were seen", len(seen))
	}
}

// words are all that is asked and told now, but for the figure.
func (s *Screen) words() string {
	var b strings.Builder
	fmt.Fprint(&b, s.asked.Question, s.because(), s.doubt, s.sub != nil, s.warnings(part.FullWidth), s.answers(part.FullWidth))
	return b.String()
}

// seeWhole sees every answer of what is asked now, once where the same is asked and
// told again.
func (s *Screen) seeWhole(t *testing.T, seen map[string]bool) {
	t.Helper()
	words := s.words()
	if seen[words] {
		return
	}
	seen[words] = true
	for _, size := range [][2]int{{part.FullWidth, part.FullHeight}, {part.LeastWidth, part.LeastHeight}} {
		for _, coach := range []bool{false, true} {
			s.x.Width, s.x.Height, s.x.Prefs.Coach = size[0], size[1], coach
			screen := inkSigns.ReplaceAllString(s.x.Draw(s.Frame(), part.Status{}), "")
			if cut := s.cut(strings.Split(screen, "\n")); cut != "" {
				t.Errorf("%s, %s, %v, coach %v: %q is not whole:\n%s", s.id.Place(), s.asked.Step.ID, size, coach, cut, screen)
			}
		}
	}
	s.x.Prefs.Coach = false
}

// cut is the first answer that is not whole, "" if all are. A meaning may be told by
// its first clauses, or in the least window not at all; never in part of a clause.
func (s *Screen) cut(screen []string) string {
	switch {
	case s.doubt == nil && s.entry() != nil:
		if !follows(screen, "", s.entry().Asks) {
			return s.entry().Asks
		}
		return ""
	case s.doubt == nil && s.asked.Checks != nil:
		for i, item := range s.asked.Checks.Items {
			word := "good"
			if !s.good[i] {
				word = "NOT "
			}
			if !follows(screen, fmt.Sprintf("%d  %s", i+1, word), item.Word) {
				return item.Word
			}
		}
	}
	for _, ch := range s.choices() {
		begins, whole := ch.Key+"  "+ch.Word, false
		clauses := strings.Split(ch.Meaning, ", ")
		for n := len(clauses); n > 0 && !whole; n-- {
			whole = follows(screen, begins, strings.Join(clauses[:n], ", "))
		}
		if !whole && (s.x.Height >= part.FullHeight || !alone(screen, begins)) {
			return ch.Word + ": " + ch.Meaning
		}
	}
	return ""
}

// alone says whether a beginning stands on a line with nothing behind it but the
// next answer.
func alone(screen []string, begins string) bool {
	next := regexp.MustCompile(regexp.QuoteMeta(begins) + ` *( {2}[0-9]  \S.*)?$`)
	for _, l := range screen {
		if next.MatchString(l) {
			return true
		}
	}
	return false
}

// follows says whether words stand whole behind a beginning, on its line and on as
// many below, in the same column, as they need; without a beginning they stand where
// their first word does. To the right of them there may be a figure.
func follows(screen []string, begins, words string) bool {
	rest := strings.Fields(words)
	for y, line := range screen {
		before, after, found := strings.Cut(line, begins)
		if begins == "" {
			if before, after, found = strings.Cut(line, rest[0]); found {
				after = rest[0] + after
			}
		}
		if !found || begins != "" && after != "" && after[0] != ' ' {
			continue
		}
		column := len([]rune(before+begins)) + len(after) - len(strings.TrimLeft(after, " "))
		if standIn(screen[y:], column, rest) {
			return true
		}
	}
	return false
}

// standIn says whether words stand in a column, on the first line and those below.
func standIn(lines []string, column int, words []string) bool {
	for _, l := range lines {
		if len(words) == 0 {
			break
		}
		runes, n := []rune(l), 0
		if len(runes) < column {
			return false
		}
		for _, w := range strings.Fields(string(runes[column:])) {
			if n == len(words) || w != words[n] {
				break
			}
			n++
		}
		if n == 0 {
			return false
		}
		words = words[n:]
	}
	return len(words) == 0
}
