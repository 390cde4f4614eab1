package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"

	"barkslip/core/practice"
	"barkslip/core/trade"
	"barkslip/store"
	"barkslip/ui"
	"barkslip/ui/part"
)

func (a *app) practice() *cobra.Command {
	c := &cobra.Command{
		Use: "practice", Short: "Made-up cases to judge, apart from every book",
		Long: "Opens practice: made-up cases, judged by the rules of the walk and explained.\n" +
			"What was right first time is kept by initials, in a file beside the book, and\n" +
			"skills that were missed come again sooner. No book is opened or written.\n\n" +
			"With --json or --print it opens no screens.",
		Example: "  barkslip practice --hand MK\n  barkslip practice --skill slip\n  barkslip practice --hand MK --sign-off\n" +
			"  barkslip practice --print MK\n  barkslip practice --seed 7 --skill wood --json\n" +
			"  barkslip practice --lines", Args: noArguments,
	}
	g := declare(c.Flags(),
		option{name: "hand", value: "INITIALS", says: "whose practice it is, such as MK"},
		option{name: "seed", value: "N", says: "the number that makes the first case; without it, another each time"},
		option{name: "skill", value: "NAME", says: "cases of one skill alone: " + strings.Join(skillCodes(), ", ")},
		option{name: "print", value: "INITIALS", says: "print how one learner stands, or all for everybody"},
		option{name: "book", value: "FILE", says: "the book beside which practice is kept; without it the one in your data folder"},
		option{name: "theme", value: "NAME", says: "dark, or sunlight: black on white"})
	plain := c.Flags().Bool("plain", false, "figures in plain characters, for terminals without braille dots")
	inLines := c.Flags().Bool("lines", false, "question, numbered answers, prompt; for screen readers, serial lines and scripts")
	signOff := c.Flags().Bool("sign-off", false, "40 unseen cases without coach or why")
	asJSON := c.Flags().Bool("json", false, "one JSON object: the case asked, with its answers; or what --print prints")
	c.RunE = func(*cobra.Command, []string) error {
		path, err := bookPath(g)
		if err != nil {
			return err
		}
		ask := practiceAsked{learners: store.Learners{Folder: filepath.Dir(path)}}
		ask.first.Only, ask.first.SignOff = true, *signOff
		if ask.theme, err = chosenTheme(g); err != nil {
			return err
		}
		ask.plain, ask.lines = *plain, *inLines
		ask.hand = read(g, "hand", practice.ReadInitials)
		ask.first.Skill = read(g, "skill", readSkill)
		if g.has("seed") {
			seed := uint64(g.whole("seed", 0, math.MaxInt32))
			ask.first.Seed = &seed
		}
		print := read(g, "print", readPrint)
		switch {
		case g.err != nil:
			return g.err
		case print != "" && *signOff:
			return mistaken("--sign-off", "--sign-off", "without --print: one or the other")
		case print != "":
			return a.printPractice(ask.learners, print, *asJSON)
		case *asJSON:
			return a.practiceCase(ask)
		}
		return a.practiceScreens(c, ask)
	}
	return c
}

// practiceAsked is what a command line asks of practice.
type practiceAsked struct {
	learners store.Learners
	hand     string
	theme    string // "" for the one kept
	plain    bool   // figures in plain characters
	lines    bool   // line by line, nothing drawn
	first    part.PracticeFirst
}

func skillCodes() (codes []string) {
	for _, s := range practice.Skills() {
		codes = append(codes, s.Code())
	}
	return codes
}

func readSkill(text string) (practice.Skill, error) {
	s, ok := practice.SkillCoded(strings.ToLower(text))
	if !ok {
		return 0, errors.New("one of " + strings.Join(skillCodes(), ", "))
	}
	return s, nil
}

// everybody stands for all learners.
const everybody = "all"

func readPrint(text string) (string, error) {
	if text == everybody {
		return everybody, nil
	}
	initials, err := practice.ReadInitials(text)
	if err != nil {
		return "", errors.New("all, or the initials of a learner, such as MK or MK2")
	}
	return initials, nil
}

// practiceScreens opens the screens of practice, on a book in memory that nothing is put
// into.
func (a *app) practiceScreens(c *cobra.Command, ask practiceAsked) error {
	terminal := isatty.IsTerminal(os.Stdin.Fd()) && isatty.IsTerminal(os.Stdout.Fd())
	if !terminal && !ask.lines {
		return errNoTerminal
	}
	prefs := loadPrefs()
	if ask.theme != "" {
		prefs.Theme = ask.theme
	}
	if ask.hand != "" {
		prefs.Hand = ask.hand
	}
	o := ui.Options{
		Book: practice.NoBook(), Now: a.clock, Tick: time.Now, Prefs: prefs, Plain: ask.plain, NoColour: os.Getenv("NO_COLOR") != "", Zones: time.LoadLocation,
		SavePrefs: func(p ui.Prefs) error { p.Hand = loadPrefs().Hand; return savePrefs(p) },
		SaveText: func(name, text string) (string, error) {
			return saveText(filepath.Join(ask.learners.Folder, name), text)
		},
		Learners: ask.learners, Practice: &ask.first,
		Bell: func() { _, _ = os.Stderr.WriteString("\a") },
	}
	if ask.lines || dumb(os.Getenv("TERM")) {
		return a.runLines(o, os.Stdin)
	}
	return a.holding(func() error { return ui.Run(c.Context(), o) })
}

// practiceCase writes the case that would be asked.
func (a *app) practiceCase(ask practiceAsked) error {
	of := &practice.Learner{Initials: ask.hand}
	if ask.hand != "" {
		there, said, err := ask.learners.Learner(ask.hand)
		if err != nil {
			return err
		}
		if said != "" {
			a.complain(said)
		}
		of = there
	}
	skill := ask.first.Skill
	if skill == 0 {
		skill = of.Next(a.clock()).Skill
	}
	if ask.first.Seed != nil {
		return a.writeJSON(caseOf(practice.Make(*ask.first.Seed, skill)))
	}
	return a.writeJSON(caseOf(of.Unseen(skill, uint64(a.clock().UnixNano()))))
}

type caseJSON struct {
	Skill    string         `json:"skill"`
	Seed     uint64         `json:"seed"`
	Kind     string         `json:"kind"`
	Told     []string       `json:"told"`
	Figure   []string       `json:"figure"`
	Question string         `json:"question"`
	Choices  []choiceJSON   `json:"choices"`
	Because  []trade.Worked `json:"because"`
}

type choiceJSON struct {
	Key     int    `json:"key"`
	Words   string `json:"words"`
	Best    bool   `json:"best"`
	Because string `json:"because"`
}

func caseOf(c practice.Case) caseJSON {
	out := caseJSON{Skill: c.Skill.Code(), Seed: c.Seed, Kind: c.Kind, Told: c.Told, Figure: []string{}, Question: c.Question, Because: c.Work}
	if c.Figure != nil {
		out.Figure = c.Figure.Says
	}
	for i, ch := range c.Choices {
		out.Choices = append(out.Choices, choiceJSON{i + 1, ch.Words, ch.Best, ch.Because})
	}
	return out
}

// folded is a line of a report over as many lines as it needs.
func folded(line string) string {
	if len(line) <= textWidth {
		return line
	}
	text := strings.TrimLeft(line, " ")
	indent := len(line) - len(text)
	return wrap(strings.Repeat(" ", indent), text, indent+2)
}

// printPractice prints how one learner stands, or all.
func (a *app) printPractice(learners store.Learners, who string, asJSON bool) error {
	all, said, err := learners.All()
	if err != nil {
		return err
	}
	for _, s := range said {
		a.complain(s)
	}
	if who != everybody {
		var one []*practice.Learner
		for _, l := range all {
			if l.Initials == who {
				one = append(one, l)
			}
		}
		if all = one; len(all) == 0 {
			return fmt.Errorf("there is no practice of %s in %s", who, learners.Folder)
		}
	}
	if asJSON {
		out := []json.RawMessage{}
		for _, l := range all {
			text, err := l.Write()
			if err != nil {
				return err
			}
			out = append(out, text)
		}
		return a.writeJSON(map[string]any{"learners": out})
	}
	if len(all) == 0 {
		fmt.Fprintln(a.out, "Nobody has practised here yet.")
	}
	for i, l := range all {
		if i > 0 {
			fmt.Fprintln(a.out)
		}
		for _, line := range l.Report() {
			fmt.Fprintln(a.out, folded(line))
		}
	}
	return nil
}
