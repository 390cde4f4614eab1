package practice

import (
	"encoding/binary"
	"fmt"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// Life is a whole life in ten minutes: one made-up stump from standing to untied, walked
// as a real one. Its book is kept in memory alone, and its clock stands still but for
// the minute an answer takes, until GoOn moves it to the next moment at which something
// is due.
type Life struct {
	Begun  record.StumpID // the stump it began with
	now    time.Time
	ids    dice
	events []record.Event
	book   *record.Book
	zones  record.Zones
	let    due.Due // what was said to be open, when the clock was to go on
}

// lifeZone is where the made-up stump stands.
const lifeZone = "America/New_York"

// NewLife begins a life in the spring of a year; zones finds a zone by name. The seed
// makes the ids alone.
func NewLife(seed uint64, year int, zones record.Zones) (*Life, error) {
	zone, err := zones(lifeZone)
	if err != nil {
		return nil, err
	}
	l := &Life{ids: dice(seed), zones: zones, now: unit.MakeDate(year, time.May, 1).At(8, 0, zone)}
	block, lot := l.id(), l.id()
	l.Begun = record.StumpID{Block: block, Row: 1, Tree: 1}
	bodies := []record.Body{&record.BlockMade{Block: block, Name: "A whole life"}}
	for _, s := range [][2]string{
		{"units", "us"}, {"zone", lifeZone}, {"latitude", "42.7"}, {"longitude", "-77.2"}, {"species", "seedling black walnut"},
		{"variety", "Lantern"}, {"graft-height", "36in"}, {"slip-from", "05-06"}, {"slip-to", "06-15"}, {"made-up", "yes"},
	} {
		bodies = append(bodies, &record.BlockSet{Block: block, Setting: s[0], Value: s[1]})
	}
	half := record.Measure{Length: unit.Inch / 2, Typed: "1/2in"}
	bodies = append(bodies, &record.LotReceived{
		Lot: lot, Name: "Lantern, made up", Variety: "Lantern", Cut: unit.MakeDate(year, time.February, 20), Sticks: 20, Thickness: half, Buds: record.Paired,
	})
	for _, b := range bodies {
		l.put(record.Event{At: l.now, Body: b})
	}
	l.put(record.Event{At: l.now, Stump: l.Begun, Body: &record.StumpAdded{}})
	l.fold()
	return l, nil
}

// NoBook is a book in memory with nothing in it, for practice by itself.
func NoBook() *Life {
	l := &Life{}
	l.fold()
	return l
}

func (l *Life) id() (id record.ID) {
	binary.BigEndian.PutUint64(id[:8], l.ids.next())
	binary.BigEndian.PutUint64(id[8:], l.ids.next()|1)
	return id
}

func (l *Life) put(e record.Event) record.Event {
	if e.ID == record.None {
		e.ID = l.id()
	}
	e.Clock = uint64(len(l.events) + 1)
	l.events = append(l.events, e)
	return e
}

// fold makes the book anew; nothing in it is of a stump.
func (l *Life) fold() {
	l.book = record.FoldBook(l.of(func(s record.StumpID) bool { return s == record.NoStump }), l.zones)
}

// Now is the life's clock.
func (l *Life) Now() time.Time { return l.now }

// Newest is the time of the newest answer.
func (l *Life) Newest() (newest time.Time) {
	for _, e := range l.events {
		if e.At.After(newest) {
			newest = e.At
		}
	}
	return newest
}

// Folded is the book.
func (l *Life) Folded() *record.Book { return l.book }

// of are the events of which something is true.
func (l *Life) of(is func(record.StumpID) bool) (out []record.Event) {
	for _, e := range l.events {
		if is(e.Stump) {
			out = append(out, e)
		}
	}
	return out
}

// Events are those of a stump.
func (l *Life) Events(id record.StumpID) ([]record.Event, error) {
	return l.of(func(s record.StumpID) bool { return s == id }), nil
}

// Stump is a stump's record: the tree's, or that of a limb that was made a stump.
func (l *Life) Stump(id record.StumpID) (*record.Stump, error) {
	return record.Fold(id, l.of(func(s record.StumpID) bool { return s.Trunk() == id.Trunk() && s != record.NoStump })), nil
}

// standing are the stumps there are: the one, or its limbs.
func (l *Life) standing() []*record.Stump {
	one, _ := l.Stump(l.Begun)
	if !one.Divided() {
		return []*record.Stump{one}
	}
	var out []*record.Stump
	for _, n := range one.Limbs {
		id := l.Begun
		id.Limb = n
		limb, _ := l.Stump(id)
		out = append(out, limb)
	}
	return out
}

// Summaries are those of the stumps there are.
func (l *Life) Summaries(block record.ID) (out []due.Summary, err error) {
	for _, s := range l.standing() {
		out = append(out, l.summary(s))
	}
	return out, nil
}

func (l *Life) summary(s *record.Stump) due.Summary {
	return due.Summarize(s, l.site(), len(s.All))
}

func (l *Life) site() *record.Block { return l.book.Blocks[l.Begun.Block] }

// Append takes in answers as one act, and lets a minute pass.
func (l *Life) Append(events ...record.Event) (due.Appended, error) {
	for _, e := range events {
		if err := record.Check(e); err != nil {
			return due.Appended{}, err
		}
	}
	var out due.Appended
	act, touched := l.id(), false
	for _, e := range events {
		if e.Act == record.None {
			e.Act = act
		}
		out.Events = append(out.Events, l.put(e))
		touched = touched || e.Stump != record.NoStump
	}
	l.fold()
	if touched {
		for _, s := range l.standing() {
			out.Changed = append(out.Changed, due.Changed{Stump: s, Summary: l.summary(s)})
		}
	}
	l.now = l.now.Add(time.Minute)
	return out, nil
}

// GoOn moves the clock to the next moment at which something is due, and says how much
// time passed and what comes. While something can be done now it says that first, and
// moves when it is asked a second time for the same.
func (l *Life) GoOn() string {
	next, what := time.Time{}, ""
	soonest := func(at time.Time, says string) {
		if at.After(l.now) && (next.IsZero() || at.Before(next)) {
			next, what = at, says
		}
	}
	for _, s := range l.standing() {
		c := walk.NewCase(s, l.site(), l.book, l.now, walk.Habit{})
		ask := c.Ask(c.Present(), false)
		waits := ask.Until != nil && ask.Until.After(l.now)
		if waits {
			soonest(*ask.Until, strings.TrimSuffix(strings.ToLower(ask.Step.Name), "."))
		}
		if d, open := due.First(c.Dues(), l.now); open && !waits && !l.letBy(d) {
			l.let = d
			return fmt.Sprintf("To be done now: %s, by %s. The same key again lets it go by.", d.Kind.Verb(), d.ByWords(l.now, l.site().Zone))
		}
		for _, d := range c.Dues() {
			opens := d.Opens
			if !d.Kind.Timed() { // it runs by days: somebody comes in the morning
				opens = unit.DateOf(opens).At(9, 0, opens.Location())
			}
			soonest(opens, d.Kind.Verb())
		}
	}
	if next.IsZero() {
		return "Nothing comes any more: this life is at its end."
	}
	from := l.now
	l.now = next
	return fmt.Sprintf("%s passed; it is %s. Now: %s.", passed(from, next), next.Format("Mon 2 Jan 2006 15:04"), what)
}

// letBy says whether a due is the one that was said to be open.
func (l *Life) letBy(d due.Due) bool { return d.Kind == l.let.Kind && d.Opens.Equal(l.let.Opens) }

// Over says whether the stump was untied, or is lost for good, and nothing comes.
func (l *Life) Over() bool {
	for _, s := range l.standing() {
		if _, more := due.Next(due.Of(s, l.site()), l.now); more {
			return false
		}
	}
	return true
}

// passed is the time between two moments in words.
func passed(from, to time.Time) string {
	d := to.Sub(from)
	counted := func(n int, noun string) string {
		if n == 1 {
			return "1 " + noun
		}
		return fmt.Sprintf("%d %ss", n, noun)
	}
	switch days := int(unit.DateOf(to) - unit.DateOf(from)); {
	case d < time.Hour:
		return counted(int(d.Round(time.Minute)/time.Minute), "minute")
	case days < 1:
		return counted(int(d.Round(time.Hour)/time.Hour), "hour")
	case days < 61:
		return counted(days, "day")
	default:
		return counted((days+15)/30, "month")
	}
}
