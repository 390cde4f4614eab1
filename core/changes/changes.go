// Package changes tells what was done or seen on a block since a day: by day, by
// hand, by kind, and on which stumps.
//
// It may import the record, the dues and the leaves.
package changes

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Change is what one hand did or saw of one kind on one stump in one day.
type Change struct {
	Day   unit.Date
	Hand  string
	Kind  string         // of the event, in kebab case
	Stump record.StumpID // NoStump where it is about the block, its wood or its weather
	Taken bool           // it was taken back, that day and by that hand
	Count int
}

// Finder gathers the changes of a block. Each thing put down is counted once: a
// correction in place of what it corrects, what was taken back as taken back and
// not as done.
type Finder struct {
	book  *record.Book
	block *record.Block
	from  time.Time
	hand  string // "" for every hand
	count map[Change]int
	seen  map[record.ID]bool
}

// Since begins a search from the beginning of a day in the block's zone; hand ""
// takes every hand.
func Since(book *record.Book, block *record.Block, day unit.Date, hand string) *Finder {
	if hand != "" {
		hand = book.Canonical("hand", hand)
	}
	return &Finder{book, block, day.In(block.Zone), hand, map[Change]int{}, map[record.ID]bool{}}
}

// Touched says whether anything was put down for the stump since.
func (f *Finder) Touched(s due.Summary) bool { return !s.Touched.Before(f.from) }

// Stump takes in what was put down for a stump, and for its trunk.
func (f *Finder) Stump(s *record.Stump) {
	f.take(s.Live, s.All)
	if s.Trunk != nil {
		f.take(s.Trunk.Live, s.Trunk.All)
	}
}

// General takes in what was put down for no stump, as far as it is about the block,
// or about wood.
func (f *Finder) General(events []record.Event) {
	mine := slices.DeleteFunc(slices.Clone(events), func(e record.Event) bool {
		of := record.BlockOf(e.Body)
		return of != record.None && f.book.CanonicalBlock(of) != f.block.ID
	})
	f.take(record.Live(mine), mine)
}

func (f *Finder) take(live, all []record.Event) {
	for _, e := range live {
		f.add(e, e, false)
	}
	for _, t := range record.TakenBack(all) {
		f.add(t.What, t.By, true)
	}
}

// add counts one event under the day and the hand of what did it.
func (f *Finder) add(what, by record.Event, taken bool) {
	hand := f.book.Canonical("hand", by.Hand)
	if _, aware := what.Body.(*record.Aware); aware || by.At.Before(f.from) || f.hand != "" && hand != f.hand || f.seen[what.ID] {
		return
	}
	f.seen[what.ID] = true
	stump := what.Stump
	if stump != record.NoStump {
		stump.Block = f.block.ID
	}
	f.count[Change{Day: f.block.Day(by.At), Hand: hand, Kind: what.Body.Kind(), Stump: stump, Taken: taken}]++
}

// Changes is what was found, by day, hand, kind and stump.
func (f *Finder) Changes() []Change {
	out := make([]Change, 0, len(f.count))
	for c, n := range f.count {
		c.Count = n
		out = append(out, c)
	}
	slices.SortFunc(out, func(x, y Change) int {
		return cmp.Or(cmp.Compare(x.Day, y.Day), cmp.Compare(x.Hand, y.Hand), cmp.Compare(x.Kind, y.Kind), x.Stump.Compare(y.Stump))
	})
	return out
}

// Group is changes that have something in common.
type Group struct {
	Name   string
	Count  int
	Stumps []record.StumpID // each once, in order
}

// Grouped groups changes by a name each has; those with the most come first.
func Grouped(all []Change, name func(Change) string) (out []Group) {
	at := map[string]int{}
	for _, c := range all {
		n := name(c)
		i, known := at[n]
		if !known {
			i = len(out)
			at[n], out = i, append(out, Group{Name: n})
		}
		out[i].Count += c.Count
		if c.Stump != record.NoStump {
			out[i].Stumps = append(out[i].Stumps, c.Stump)
		}
	}
	for i := range out {
		slices.SortFunc(out[i].Stumps, record.StumpID.Compare)
		out[i].Stumps = slices.Compact(out[i].Stumps)
	}
	slices.SortStableFunc(out, func(x, y Group) int { return cmp.Or(cmp.Compare(y.Count, x.Count), cmp.Compare(x.Name, y.Name)) })
	return out
}

// Parted is the changes that were done, and those that were taken back.
func Parted(all []Change) (done, taken []Change) {
	for _, c := range all {
		if c.Taken {
			taken = append(taken, c)
		} else {
			done = append(done, c)
		}
	}
	return done, taken
}

// Monday is the last Monday up to a day, that day included.
func Monday(day unit.Date) unit.Date { return day.Add(-(int(day.Weekday()) + 6) % 7) }
