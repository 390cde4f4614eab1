package walk

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func sproutSteps() []*Step {
	return []*Step{
		{ID: StepSprouts, Part: PartAfter, Name: "rub sprouts",
			LookFor:  "Shoots of the stock itself: their leaf differs from the graft's. All near the graft come off.",
			Why:      "A sprout beside the graft takes the sap and overgrows it within weeks.",
			NotRight: "Tough already: cut it at the base instead of rubbing, with a clean blade.",
			Cautions: []trade.Caution{trade.CleanBlades}, Facts: []trade.Fact{trade.StockSprouts, trade.SproutRounds},
			applies: func(c *Case) bool { return c.lives() || !c.A.Grafted() && c.A.Stage() == record.StageDraining },
			done:    doneSprouts, last: lastSprouts, ask: askSprouts},
		{ID: StepSproutLeaf, Part: PartAfter, Name: "leaf below",
			LookFor:  "The leaf lower down, sprouts and nurse limbs together, against what was left at grafting.",
			Why:      "Some leaf feeds the root until the graft can; too much starves the graft.",
			NotRight: "More than two to three times the leaf left at grafting: rub the highest ones.",
			Facts:    []trade.Fact{trade.StockSprouts}, applies: func(c *Case) bool { return c.rubToday() != nil }, done: doneSproutLeaf, ask: askSproutLeaf},
		{ID: StepKeep, Part: PartAfter, Name: "keep sprouts",
			LookFor:  "Strong sprouts low on the stem, well apart, no fork.",
			Why:      "With no leaf left at all the root dies; on one to three sprouts the tree lives and can be budded or grafted again.",
			NotRight: "No sprout at all: look again in two weeks before giving the tree up.",
			Facts:    []trade.Fact{trade.KeepSprouts, trade.SproutsUsed},
			applies:  func(c *Case) bool { return c.A.Stage() == record.StageFailed && len(c.A.Grafts) > 0 }, done: doneKeep, ask: askKeep},
	}
}

func askSprouts(c *Case, a *Ask) {
	a.Question = "Rub the sprouts. How many were near the graft?"
	a.Because = c.because(due.Sprouts, "Leave none near the graft.")
	leaf := c.leafBefore()
	below := ""
	if leaf != "" {
		below = ", leaf still " + leaf
	}
	a.choose("0", "none", "nothing near"+below, &record.SproutsRubbed{Leaf: leaf})
	for i, word := range []string{"one", "two", "three", "four", "five"} {
		a.choose(strconv.Itoa(i+1), word, "off", &record.SproutsRubbed{Near: i + 1, Leaf: leaf})
	}
	a.choice(Choice{Key: "6", Word: "more", Meaning: "type how many came off", Entry: &Entry{Asks: "sprouts rubbed near the graft", Read: func(text string) ([]record.Body, error) {
		n, err := readCount(text, 200)
		return []record.Body{&record.SproutsRubbed{Near: n, Leaf: leaf}}, err
	}}})
	if leaf != "" {
		a.choice(Choice{Key: "8", Word: "other leaf", Meaning: "none near; then how much leaf", Bodies: []record.Body{&record.SproutsRubbed{}}})
	}
	a.choice(leaveIt("7"))
}

// readCount reads a whole number from 0 to most.
func readCount(text string, most int) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || n < 0 || n > most {
		return 0, &unit.Error{Given: text, Accepted: fmt.Sprintf("a whole number from 0 to %d", most)}
	}
	return n, nil
}

func rubWord(b record.SproutsRubbed) string {
	if b.Leaf == "" {
		return fmt.Sprintf("%d near, %d below", b.Near, b.Below)
	}
	return fmt.Sprintf("%d near, %d below, %s leaf", b.Near, b.Below, b.Leaf)
}

func doneSprouts(c *Case) answer { return saidToday(c, c.A.Rubbed, rubWord) }
func lastSprouts(c *Case) string { return saidBefore(c, c.A.Rubbed, rubWord) }

// rubToday is the newest rubbing, if it was today.
func (c *Case) rubToday() *record.Said[record.SproutsRubbed] {
	if r := record.LastOf(c.A.Rubbed); r != nil && c.today(r.At) {
		return r
	}
	return nil
}

// leafUntold says whether sprouts were rubbed today and it is not yet said how
// much leaf stays below.
func (c *Case) leafUntold() bool {
	r := c.rubToday()
	return r != nil && r.What.Leaf == ""
}

// leafBefore is how much leaf stayed below when it was last told, before today's
// rubbing; "" where it never was. It is asked by itself only then, or where it
// has changed.
func (c *Case) leafBefore() string {
	for i := len(c.A.Rubbed) - 1; i >= 0; i-- {
		if r := c.A.Rubbed[i]; r.What.Leaf != "" && !c.today(r.At) {
			return r.What.Leaf
		}
	}
	return ""
}

// leafLeft is how much leaf was left at grafting, "" if it was not put down.
func (c *Case) leafLeft() string {
	if c.A.Nurse == nil {
		return ""
	}
	return c.A.Nurse.What.Leaf
}

func askSproutLeaf(c *Case, a *Ask) {
	r := c.rubToday()
	if r == nil {
		a.Question, a.Because = "Rub the sprouts first.", "The leaf is judged after the rubbing."
		a.choice(Choice{Key: "1", Word: "sprouts", Go: StepSprouts})
		return
	}
	a.Question = "How much leaf stays lower down?"
	left := c.leafLeft()
	a.Because = fmt.Sprintf("At grafting %s leaf was left: leave at most 2 to %g times as much.", left, trade.SproutLeafTimes)
	if left == "" {
		a.Because = "The leaf left at grafting was not recorded: a little more than the nurse limbs had is enough."
	}
	for i, leaf := range record.Leaves {
		b := r.What
		b.Leaf = leaf
		a.choice(Choice{Key: strconv.Itoa(i + 1), Word: leaf, Meaning: leafAgainst(leaf, left), Bodies: []record.Body{&b}, Refines: []record.ID{r.ID}})
	}
	a.choice(Choice{Key: "5", Word: "rubbed some", Meaning: "type how many lower down", Entry: &Entry{Asks: "sprouts rubbed lower down", Refines: []record.ID{r.ID}, Read: func(text string) ([]record.Body, error) {
		n, err := readCount(text, 200)
		b := r.What
		b.Below = n
		return []record.Body{&b}, err
	}}})
}

// leafAgainst judges the leaf below against that left at grafting: one step more
// on the scale is about two to three times as much.
func leafAgainst(leaf, left string) string {
	if left == "" {
		return ""
	}
	switch d := slices.Index(record.Leaves, leaf) - slices.Index(record.Leaves, left); {
	case d <= 0:
		return "no more than was left"
	case d == 1:
		return "as much as it may be"
	}
	return "too much: rub the highest"
}

func doneSproutLeaf(c *Case) answer {
	if r := c.rubToday(); r != nil {
		return spoken(r.What.Leaf)
	}
	return open
}

func askKeep(c *Case, a *Ask) {
	a.Question = "Every graft is dead. How many sprouts do you keep?"
	a.Because = c.because(due.KeepSprouts, "On one to three sprouts the tree lives.")
	a.choose("1", "one", "the best placed", &record.SproutsKept{Number: 1})
	a.choose("2", "two", "", &record.SproutsKept{Number: 2})
	a.choose("3", "three", "", &record.SproutsKept{Number: 3})
	a.choose("0", "none there", "", &record.SproutsKept{})
	a.choice(Choice{Key: "4", Word: "give it up", Meaning: "it will not be grafted again", Go: StepGiveUp})
	a.choice(leaveIt("5"))
}

func doneKeep(c *Case) answer {
	if c.A.Kept == nil {
		return open
	}
	return told(fmt.Sprintf("%d kept, %s", c.A.Kept.What.Number, c.when(c.A.Kept.At)))
}
