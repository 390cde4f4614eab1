package walk

import (
	"fmt"
	"strconv"

	"barkslip/core/due"
	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func twineSteps() []*Step {
	twined := func(c *Case) bool { return c.lives() && c.A.TwineOn() }
	return []*Step{
		{ID: StepTwine, Part: PartAfter, Name: "twine",
			LookFor:  "Two loops that hold each by itself, round stem and stake, loose.",
			Why:      "Inside a loose loop the stem moves in the wind and stiffens; a second loop holds if one fails.",
			NotRight: "A loop under twice the stem's girth: let it out before it is knotted.",
			Facts:    []trade.Fact{trade.Twine, trade.TwineLoop, trade.TwineTime, trade.TwineGirdles},
			applies:  led, done: doneTwine, ask: askTwine},
		{ID: StepTwineKind, Part: PartAfter, Name: "material",
			LookFor: "Whether it is natural fibre or synthetic, and how many loops hold.",
			Why:     "Natural twine rots off in time; synthetic twine does not, and girdles if it is forgotten.",
			Facts:   []trade.Fact{trade.Twine}, applies: twined, done: doneTwineKind, ask: askTwineKind},
		{ID: StepTwineCheck, Part: PartAfter, Name: "check twine",
			LookFor:  "Room for a finger all round; bark that bulges over or under the loop.",
			Why:      "Twine girdles a stem within three to four years; each measure sharpens the date.",
			NotRight: "Tight anywhere: cut it now, or let it out.",
			Facts:    []trade.Fact{trade.TwineGirdles, trade.TwineChecks, trade.GirthGain},
			applies:  twined, done: doneTwineCheck, last: lastTwineCheck, ask: askTwineCheck},
		{ID: StepTwineMove, Part: PartAfter, Name: "let out",
			LookFor: "The new loop at twice the stem's girth or more, off the bark it marked.",
			Why:     "The stem goes on growing; the date by which it is cut moves with the loop.",
			Facts:   []trade.Fact{trade.TwineLoop, trade.TwineGirdles},
			applies: twined, done: doneTwineMove, last: lastTwineMove, ask: askTwineMove},
		{ID: StepTwineCut, Part: PartAfter, Name: "cut twine",
			LookFor:  "Every loop off, none grown in; the stem stands by itself.",
			Why:      "What is left on grows into the bark and cuts the tree off from its root.",
			NotRight: "Grown in already: cut it in two places and draw it out, rather than leave a piece.",
			Cautions: []trade.Caution{trade.SawKnifeDrill}, Facts: []trade.Fact{trade.TwineGirdles, trade.TwineOff},
			applies: func(c *Case) bool { return c.lives() && c.A.Twine != nil }, done: doneTwineCut, ask: askTwineCut},
	}
}

// loopFor is the least girth of a loop round a stem.
func loopFor(stem unit.Length) unit.Length { return stem * trade.LoopTimesGirth }

func askTwine(c *Case, a *Ask) {
	a.Question = "Two loops on. How far round is the tighter one, and the stem?"
	a.Because = c.because(due.Twine, "A loop is at least twice the stem's girth.")
	a.Entry = &Entry{Asks: "girth of the loop, then of the stem, such as 12in 4in", Read: func(text string) ([]record.Body, error) {
		loop, stem, err := c.readLoop(text)
		if err != nil {
			return nil, err
		}
		return c.doubtLoop(loop, stem, &record.Twined{Loops: trade.LoopsOfTwine, Loop: loop, Stem: stem})
	}}
}

// readLoop reads the girth of a loop and of the stem in it.
func (c *Case) readLoop(text string) (loop, stem record.Measure, err error) {
	both, err := c.readLengths(text, 2, 3*unit.Metre)
	if err == nil && len(both) < 2 {
		err = &unit.Error{Given: text, Accepted: "the loop's girth, then the stem's, such as 12in 4in"}
	}
	if err != nil {
		return loop, stem, err
	}
	if both[0].Length <= both[1].Length {
		return loop, stem, &unit.Error{Given: text, Accepted: "a loop longer round than the stem in it: the loop first"}
	}
	return both[0], both[1], nil
}

// doubtLoop is the answer, or a doubt where the loop is too tight or the stem
// has shrunk.
func (c *Case) doubtLoop(loop, stem record.Measure, answer record.Body) ([]record.Body, error) {
	keep := Choice{Key: "1", Word: "keep it so", Meaning: "as typed", Bodies: []record.Body{answer}}
	if least := loopFor(stem.Length); loop.Length < least {
		return nil, &Doubt{fmt.Sprintf("A loop of %s is tight on a stem %s round: let it out to %s or more.", c.length(loop.Length), c.length(stem.Length), c.length(least)), []Choice{keep}}
	}
	if err := c.shrunk(stem, keep); err != nil {
		return nil, err
	}
	return []record.Body{answer}, nil
}

// shrunk is a doubt where the stem's girth is under that of the last measure.
func (c *Case) shrunk(stem record.Measure, keep Choice) error {
	was := c.stemBefore()
	if stem.Length >= was-tapeSlack {
		return nil
	}
	keep.Word, keep.Meaning = "as typed", "the last one was wrong"
	return &Doubt{fmt.Sprintf("The stem was %s round and is now %s: a girth does not shrink.", c.length(was), c.length(stem.Length)), []Choice{keep}}
}

// stemBefore is the stem's girth as last measured before today, 0 if it was not.
func (c *Case) stemBefore() (was unit.Length) {
	if c.A.Twine == nil {
		return 0
	}
	for _, r := range due.TwinePlan(c.A, c.B).Readings {
		if r.On != c.B.Day(c.Now) {
			was = r.Girth
		}
	}
	return was
}

func doneTwine(c *Case) answer {
	t := c.A.Twine
	if t == nil {
		return open
	}
	loop, stem := t.What.Loop, t.What.Stem
	if m := record.LastOf(c.A.TwineMoves); m != nil && !m.At.Before(t.At) {
		if m.What.Loop.Given() {
			loop = m.What.Loop
		}
		if m.What.Stem.Given() {
			stem = m.What.Stem
		}
	}
	return told(fmt.Sprintf("%s round %s", c.length(loop.Length), c.length(stem.Length)))
}

// twineUntold says whether twine was put on today and it is not yet said of what.
func (c *Case) twineUntold() bool {
	return c.A.Twine != nil && c.today(c.A.Twine.At) && c.A.Twine.What.Material == ""
}

func askTwineKind(c *Case, a *Ask) {
	if c.A.Twine == nil {
		a.Question, a.Because = "Put the twine on first.", "Its material is asked once it is on."
		a.choice(Choice{Key: "1", Word: "twine", Go: StepTwine})
		return
	}
	a.Question = "Which twine, and how many loops?"
	a.Because = "Two loops hold independently; synthetic twine does not rot."
	for i, k := range []struct {
		word, material string
		loops          int
	}{{"natural, two", "natural", 2}, {"synthetic, two", "synthetic", 2}, {"natural, one", "natural", 1}, {"synthetic, one", "synthetic", 1}} {
		t := c.A.Twine.What
		t.Material, t.Loops = k.material, k.loops
		meaning := ""
		if k.loops < trade.LoopsOfTwine {
			meaning = "nothing holds if it fails"
		}
		a.choose(strconv.Itoa(i+1), k.word, meaning, &t)
	}
}

func doneTwineKind(c *Case) answer {
	if c.A.Twine == nil || c.A.Twine.What.Material == "" {
		return open
	}
	return told(fmt.Sprintf("%s, %s", c.A.Twine.What.Material, unit.Count(c.A.Twine.What.Loops, "loop")))
}

// twineWork is the reckoning of when the twine grows tight, if it can be made.
func (c *Case) twineWork(a *Ask) {
	if c.A.Twine == nil {
		return
	}
	if t, err := girth.Twine(due.TwinePlan(c.A, c.B)); err == nil {
		a.Work = []trade.Worked{t.Work}
	}
}

func askTwineCheck(c *Case, a *Ask) {
	a.Question = "Is the twine loose?"
	a.Because = c.because(due.TwineCheck, "Look at it each season.")
	c.twineWork(a)
	a.choose("1", "loose", "room all round, not measured", &record.TwineChecked{})
	a.choose("2", "tight", "cut it or let it out", &record.TwineChecked{Tight: true})
	a.choice(Choice{Key: "3", Word: "measured", Meaning: "type the stem's girth", Entry: &Entry{Asks: "girth of the stem inside the loop", Read: c.readTwineCheck}})
	a.choice(Choice{Key: "4", Word: "let out", Meaning: "to a bigger loop", Go: StepTwineMove})
	a.choose("5", "cut", "every loop off", &record.TwineCut{})
	a.choice(leaveIt("6"))
}

func (c *Case) readTwineCheck(text string) ([]record.Body, error) {
	stem, err := c.readLength(text, 0, 3*unit.Metre)
	if err != nil {
		return nil, err
	}
	b := &record.TwineChecked{Stem: stem}
	if t := c.A.Twine; t != nil {
		loop := due.TwinePlan(c.A, c.B).Loop
		b.Tight = loop > 0 && stem.Length >= loop
	}
	keep := Choice{Key: "1", Bodies: []record.Body{b}}
	if err := c.shrunk(stem, keep); err != nil {
		return nil, err
	}
	return []record.Body{b}, nil
}

func (c *Case) twineCheckWord(b record.TwineChecked) string {
	switch {
	case b.Tight:
		return "tight"
	case b.Stem.Given():
		return "stem " + c.length(b.Stem.Length)
	}
	return "loose"
}

func doneTwineCheck(c *Case) answer { return saidToday(c, c.A.TwineChecks, c.twineCheckWord) }
func lastTwineCheck(c *Case) string { return saidBefore(c, c.A.TwineChecks, c.twineCheckWord) }

func askTwineMove(c *Case, a *Ask) {
	a.Question = "Let the twine out. How far round is the loop now, and the stem?"
	a.Because = "Make the loop at least twice the stem's girth."
	c.twineWork(a)
	a.Entry = &Entry{Asks: "girth of the loop, then of the stem, such as 20in 7in", Read: func(text string) ([]record.Body, error) {
		loop, stem, err := c.readLoop(text)
		if err != nil {
			return nil, err
		}
		return c.doubtLoop(loop, stem, &record.TwineMoved{Loop: loop, Stem: stem})
	}}
}

func (c *Case) twineMoveWord(b record.TwineMoved) string { return "loop " + c.length(b.Loop.Length) }

func doneTwineMove(c *Case) answer { return saidToday(c, c.A.TwineMoves, c.twineMoveWord) }
func lastTwineMove(c *Case) string { return saidBefore(c, c.A.TwineMoves, c.twineMoveWord) }

func askTwineCut(c *Case, a *Ask) {
	if !c.A.TwineOn() {
		a.Question, a.Because = "No twine is on.", "None was recorded, or it is cut already."
		a.choice(leaveIt("1"))
		return
	}
	a.Question = "Cut the twine. Is every loop off?"
	a.Because = c.because(due.CutTwine, "Cut it before it girdles the stem.")
	c.twineWork(a)
	a.choose("1", "cut", "every loop is off", &record.TwineCut{})
	a.choice(Choice{Key: "2", Word: "let out", Meaning: "to a bigger loop", Go: StepTwineMove})
	a.choice(Choice{Key: "3", Word: "measure", Meaning: "it may have room yet", Go: StepTwineCheck})
	a.choice(leaveIt("4"))
	a.Likely = "1"
}

func doneTwineCut(c *Case) answer {
	if c.A.TwineCut == nil || c.A.TwineOn() {
		return open
	}
	return told(c.when(c.A.TwineCut.At))
}
