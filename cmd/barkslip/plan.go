package main

import (
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/store"
)

func (a *app) plan() *cobra.Command {
	c := &cobra.Command{
		Use: "plan", Short: "Will the block be finished while bark slips, and what it takes",
		Long: "Goes through the days to the end of the season of slip: how many stumps to cut back\n" +
			"each day and how many to graft, so that none drains too long, and what to load.",
		Example: "  barkslip plan\n  barkslip plan --on 2027-05-04 --rate 12 --off 2027-05-09", Args: noArguments,
	}
	g := declare(c.Flags(), bookOption,
		option{name: "block", value: "NAME", says: "the block; without it the first one"},
		option{name: "on", value: "DATE", says: "the day to begin with; without it today"},
		option{name: "rate", value: "N", says: "stumps grafted a day; without it the block's setting, else counted", usual: 0},
		option{name: "off", value: "DATE", says: "a day on which nobody works; may be given more than once", many: true})
	asJSON := c.Flags().Bool("json", false, "one JSON object")
	c.RunE = func(*cobra.Command, []string) error {
		ask := plan.SeasonAsked{Rate: g.whole("rate", 1, 1000)}
		g.dayLike("on")
		name := ""
		if g.has("block") {
			name = g.text("block", "the name of a block")
		}
		if g.err != nil {
			return g.err
		}
		book, err := a.openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		now := a.clockOf(book)()
		if g.has("on") {
			ask.On = g.dayOf(book, "on", now)
		}
		if ask.Off = g.daysOf(book, "off", now); g.err != nil {
			return g.err
		}
		p, err := planBlock(book, name, ask, now)
		if err != nil {
			return err
		}
		if *asJSON {
			return a.writeJSON(p)
		}
		a.printPlan(p)
		return nil
	}
	return c
}

// daysOf is every date of an option that may be given more than once, as people
// write them, read as in the book's first block.
func (g *given) daysOf(book *store.Book, name string, now time.Time) (out []unit.Date) {
	sys, today := dated(book, now)
	for _, s := range g.each(name) {
		d, err := unit.ReadDate(s, today, sys)
		if err != nil {
			g.fail(mistaken("--"+name, s, accepts(err)))
		}
		out = append(out, d)
	}
	return out
}

// planRow is the plan of a block in machine-readable form.
type planRow struct {
	On       string      `json:"on"`
	Slip     planSlip    `json:"slip"`
	Standing int         `json:"standing"`
	Draining int         `json:"draining"`
	Ready    int         `json:"ready"`
	Regraft  int         `json:"regraft"`
	Rate     int         `json:"rate"`
	LastDay  *string     `json:"last_day"` // null if never in this season
	Short    int         `json:"short"`
	Days     []planDay   `json:"days"`
	Supplies []planThing `json:"supplies"`
	Wood     []planWood  `json:"wood"`
}

type planSlip struct {
	From string `json:"from"`
	To   string `json:"to"`
}

type planDay struct {
	Date    string `json:"date"`
	CutBack int    `json:"cut_back"`
	Graft   int    `json:"graft"`
}

type planThing struct {
	What   string `json:"what"`
	Amount int    `json:"amount"`
	Unit   string `json:"unit"`
}

type planWood struct {
	Lot     string `json:"lot"`
	Variety string `json:"variety"`
	Left    *int   `json:"left"` // scions at the least; null where the sticks were not counted
	Needed  int    `json:"needed"`
}

// planBlock works out the plan of the block named, or of the first.
func planBlock(book *store.Book, name string, ask plan.SeasonAsked, now time.Time) (planRow, error) {
	blocks := book.Folded().List()
	if len(blocks) == 0 {
		return planRow{}, errors.New("the book has no block yet")
	}
	b := blocks[0]
	if name != "" {
		found, err := findBlock(book, name)
		if err != nil {
			return planRow{}, err
		}
		if b = found; b == nil {
			return planRow{}, mistaken("--block", name, "the name of a block of the book")
		}
	}
	if ask.On == 0 {
		ask.On = b.Day(now)
	}
	sums, err := book.Summaries(b.ID)
	if err != nil {
		return planRow{}, err
	}
	load, wood, err := woodNeeded(book, b, sums, ask.On)
	if err != nil {
		return planRow{}, err
	}
	return rowOf(plan.SeasonOf(b, sums, ask), load, wood, b.Units), nil
}

// woodNeeded is what the stumps of a block that are to be grafted take, and the lots
// of a book against it.
func woodNeeded(book *store.Book, b *record.Block, sums []due.Summary, on unit.Date) (plan.Load, []plan.LotNeed, error) {
	graft := plan.ToGraft(sums, due.EndOf(on, b.Zone))
	variety := map[record.StumpID]string{}
	for _, s := range graft {
		stump, err := book.Stump(s.ID)
		if err != nil {
			return plan.Load{}, nil, err
		}
		variety[s.ID] = plan.VarietyOf(stump, b)
	}
	used := map[record.ID]int{}
	for _, other := range book.Folded().List() {
		all, err := book.Summaries(other.ID)
		if err != nil {
			return plan.Load{}, nil, err
		}
		plan.UsedOf(used, all)
	}
	wood := plan.WoodOf(book.Folded(), used)
	load := plan.SeasonLoad(b, graft, sums, func(id record.StumpID) string { return variety[id] }, wood)
	return load, plan.NeedByLot(wood, load.NeedByVariety()), nil
}

func rowOf(s plan.Season, load plan.Load, wood []plan.LotNeed, sys unit.System) planRow {
	p := planRow{
		On: s.On.String(), Slip: planSlip{s.Slip.From.String(), s.Slip.To.String()}, Standing: s.Standing, Draining: s.Draining,
		Ready: s.Ready, Regraft: s.Regraft, Rate: s.Rate, Short: s.Short, Days: []planDay{}, Wood: []planWood{},
	}
	for _, t := range load.Things(sys) {
		p.Supplies = append(p.Supplies, planThing(t))
	}
	if s.LastDay != 0 {
		last := s.LastDay.String()
		p.LastDay = &last
	}
	for _, d := range s.Days {
		p.Days = append(p.Days, planDay{d.Day.String(), d.CutBack, d.Graft})
	}
	for _, w := range wood {
		p.Wood = append(p.Wood, planWood(w))
	}
	return p
}

func (a *app) printPlan(p planRow) {
	fmt.Fprintf(a.out, "Bark slips %s to %s. %d standing, %d draining (%d ready), %d to graft again, at %d a day.\n",
		p.Slip.From, p.Slip.To, p.Standing, p.Draining, p.Ready, p.Regraft, p.Rate)
	switch {
	case p.Short > 0:
		fmt.Fprintf(a.out, "%s left when bark stops slipping.\n", count(p.Short, "stump"))
	case p.LastDay != nil:
		fmt.Fprintf(a.out, "All are grafted on %s.\n", *p.LastDay)
	default:
		fmt.Fprintln(a.out, "None is left to graft.")
	}
	for _, d := range p.Days {
		fmt.Fprintf(a.out, "  %s  cut back %3d  graft %3d\n", d.Date, d.CutBack, d.Graft)
	}
	for _, s := range p.Supplies {
		fmt.Fprintf(a.out, "  %s: %d%s\n", s.What, s.Amount, measureOf(s.Unit))
	}
	for _, w := range p.Wood {
		left := "not counted"
		if w.Left != nil {
			left = fmt.Sprint(*w.Left)
		}
		fmt.Fprintf(a.out, "  %s %s: scions left %s, needed %d\n", w.Variety, w.Lot, left, w.Needed)
	}
}

// measureOf is a unit behind its number where it is one that is measured.
func measureOf(unit string) string {
	if unit == "ml" || unit == "m" {
		return " " + unit
	}
	return ""
}
