package sheet

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Day is what the day's sheets of a block say.
type Day struct {
	Block string
	Units unit.System
	On    unit.Date
	Rows  []int    // of these alone; none for all
	Heat  []string // sentences on the day's heat, and by when white must be on
	Parts []Part   // a sheet each
}

// Part is the sheet of one hand, or of nobody's where Hand is empty.
type Part struct {
	Hand  string
	Open  bool // nothing was given out: the hand is written in by hand
	Stops []Stop
	Late  int    // stumps with work that should have been done before
	Walk  string // how far it is, "" where the spacings are not known
	Load  []string
}

// Stop is one stump in walking order and what it needs.
type Stop struct {
	Row   int
	Place string
	Tasks []Task
	Note  string
}

// Task is one thing that a stump needs.
type Task struct {
	Name string // cut back
	When string // by 14:30, late
	Late bool
	Why  string
}

// DayOf is the day's sheets: one for a hand that is named, else one for each that
// was given stumps and one for the stumps that nobody has.
func DayOf(a Ask) (Day, error) {
	on := a.day()
	d := Day{Block: clean(a.Block.Name), Units: a.Block.Units, On: on, Rows: a.Rows, Heat: heatOf(a.Block, on)}
	from, until := a.span(on)
	calls := due.Round(a.Sums, due.Asked{From: from, Until: until, CutBack: plan.CutBackOn(a.Block, a.Sums, from),
		Keep: func(d due.Due) bool { return a.wants(d.Stump) }})
	slices.SortFunc(calls, func(x, y due.Call) int { return x.Stump.WalkCompare(y.Stump) })
	if a.Given == nil && len(a.Block.GivenOn(on)) > 0 {
		a.Given = givenTo(plan.SharesOf(a.Block, on, calls))
	}
	for _, hand := range a.hands(calls) {
		own := calls
		if a.Given != nil {
			own = slices.DeleteFunc(slices.Clone(calls), func(c due.Call) bool { return !a.sameHand(a.Given(c.Stump), hand) })
		}
		part, err := a.part(hand, own, from)
		if err != nil {
			return d, err
		}
		d.Parts = append(d.Parts, part)
	}
	return d, nil
}

// givenTo is whose each stump of a day is; what two hands have goes with the first.
func givenTo(shares plan.Shares) func(record.StumpID) string {
	whose := map[record.StumpID]string{}
	for _, h := range shares.Hands {
		for _, c := range h.Calls {
			if whose[c.Stump] == "" {
				whose[c.Stump] = h.Given.To
			}
		}
	}
	return func(id record.StumpID) string { return whose[id] }
}

// span is what a day's sheet takes: from now, or from the morning of a day to
// come, to the end of the day; a day gone by is judged at its end.
func (a Ask) span(on unit.Date) (from, until time.Time) {
	from, until = on.In(a.Block.Zone), due.EndOf(on, a.Block.Zone)
	if a.Now.After(from) {
		from = a.Now
	}
	if from.After(until) {
		from = until
	}
	return from.In(a.Block.Zone), until
}

// hands are those whose sheets are made, "" for the one of nobody.
func (a Ask) hands(calls []due.Call) (out []string) {
	if a.Hand != "" {
		return []string{a.Hand}
	}
	if a.Given == nil {
		return []string{""}
	}
	for _, c := range calls {
		if h := a.Given(c.Stump); !slices.Contains(out, h) {
			out = append(out, h)
		}
	}
	slices.Sort(out)
	if len(out) > 0 && out[0] == "" { // what nobody has comes last
		out = append(out[1:], "")
	}
	if len(out) == 0 {
		return []string{""}
	}
	return out
}

// part is the sheet of a hand with the stumps it goes to.
func (a Ask) part(hand string, calls []due.Call, now time.Time) (p Part, err error) {
	p.Hand, p.Open = clean(strings.ToUpper(hand)), a.Given == nil
	if far, ok := due.Walked(calls, a.Block); ok && len(calls) > 1 {
		p.Walk = a.Block.Units.Distance(far)
	}
	for _, c := range calls {
		stop := Stop{Row: int(c.Stump.Row), Place: c.Stump.Place()}
		for _, d := range c.Dues {
			stop.Tasks = append(stop.Tasks, taskOf(d, a.Block, now))
		}
		if c.Late(now) {
			p.Late++
		}
		if at, found := due.Find(a.Sums, c.Stump); found && a.Sums[at].Noted {
			s, err := a.Stump(c.Stump)
			if err != nil {
				return p, err
			}
			stop.Note = clean(s.Notes[len(s.Notes)-1].What.Text)
		}
		p.Stops = append(p.Stops, stop)
	}
	p.Load, err = a.load(calls, a.day())
	return p, err
}

func taskOf(d due.Due, b *record.Block, now time.Time) Task {
	t := Task{Name: d.Kind.Verb(), Why: d.Why(b), Late: d.Late(now)}
	switch by := d.By.In(b.Zone); {
	case t.Late:
		t.When = d.LateBy(b, now) + " late"
	case d.Kind.Timed() && b.Day(d.Opens) == b.Day(now) && d.Opens.After(now):
		t.When = d.Opens.In(b.Zone).Format("15:04") + " to " + by.Format("15:04")
	case b.Day(d.By) == b.Day(now) && !d.Kind.Timed():
		t.When = "today"
	default:
		t.When = "by " + d.ByWords(now, b.Zone)
	}
	return t
}

// The hours of sealing for which the sheet says by when white must be on.
var sealedAt = []int{8, 10, 12, 14}

// heatOf says how hot the day gets and by when a graft sealed in the course of it
// must be white.
func heatOf(b *record.Block, on unit.Date) []string {
	w, known := b.Weather[on]
	if !known {
		return []string{"No weather is recorded for the day.",
			fmt.Sprintf("Paint white once the sealer is dry, %d to %d hours after sealing; sooner on a hot day.", trade.WhiteOpensHours, trade.WhiteByHours)}
	}
	sys := b.Units
	says := []string{fmt.Sprintf("%s to %s.", sys.Temperature(w.What.Low.Temperature), sys.Temperature(w.What.High.Temperature))}
	if rain := w.What.RainWords(sys); rain != "" {
		says[0] += " " + strings.ToUpper(rain[:1]) + rain[1:] + "."
	}
	switch high := w.What.High.Temperature; {
	case high >= trade.HeatPostpone-0.01:
		says = append(says, "Too hot to graft: postpone, or shade each graft and paint it white.")
	case high >= trade.HeatCaution-0.01:
		says = append(says, "Hot: shade each graft and paint it white in time.")
	case w.What.Low.Temperature <= 0:
		says = append(says, "Frost: soft shoots are in danger.")
	}
	var by []string
	bare := record.Fold(record.NoStump, nil)
	for _, hour := range sealedAt {
		sealed := on.At(hour, 0, b.Zone)
		by = append(by, fmt.Sprintf("%s by %s", sealed.Format("15:04"), unit.When(due.WhiteBy(bare, b, sealed), sealed, b.Zone)))
	}
	return append(says, "Paint white, if sealed at "+strings.Join(by, ", ")+".")
}
