package results

import (
	"slices"

	"barkslip/core/record"
	"barkslip/core/tally"
	"barkslip/core/trade"
)

// Group is the grafts that a key puts together.
type Group struct {
	Key      string
	Stumps   int // that carry one of them
	Grafts   int
	Known    int // of which it is known whether they took
	Took     int
	Standing int // took, and alive now
	tally.Clusters

	code int32
}

// Tally is the grafts of a season by a key.
type Tally struct {
	By     Key
	Season int     // 0 for all of them
	Groups []Group // in order of the key
	Total  Group   // of all groups, its key empty
	Differ *tally.Alike
}

// Rate is the interval of the group's rate of take, on its effective counts.
func (g *Group) Rate() tally.Interval { return g.Effective().Wilson() }

// TooFew says whether the group's known grafts are too few to say how it takes.
func (g *Group) TooFew() bool { return g.Rate().TooFew() }

// counting is a group as it is counted, stump by stump.
type counting struct {
	Group
	at    int32 // the stump at hand, one more than its place
	known int64 // of its grafts
	took  int64
}

// take counts a graft of a stump.
func (g *counting) take(stump int32, flags uint8) {
	if g.at != stump+1 {
		g.close()
		g.at = stump + 1
		g.Stumps++
	}
	g.Grafts++
	if flags&known != 0 {
		g.known++
	}
	if flags&took != 0 {
		g.took++
	}
	if flags&stands != 0 {
		g.Standing++
	}
}

// close takes in the stump at hand.
func (g *counting) close() {
	g.Clusters.Add(g.took, g.known)
	g.known, g.took = 0, 0
}

func (g *counting) done() Group {
	g.close()
	g.Known, g.Took = int(g.M), int(g.Y)
	return g.Group
}

// within says whether a graft is of the season; season 0 is all of them.
func (c *Columns) within(i, season int) bool { return season == 0 || int(c.season[i]) == season }

// By counts the grafts of a season by a key; season 0 is all seasons.
func (c *Columns) By(k Key, season int) Tally {
	col := &c.of[k]
	groups, total := make([]counting, len(col.labels)), counting{}
	for i, stump := range c.stump {
		if c.within(i, season) {
			groups[col.codes[i]].take(stump, c.flags[i])
			total.take(stump, c.flags[i])
		}
	}
	t := Tally{By: k, Season: season, Total: total.done()}
	var shares []tally.Share
	for _, code := range col.order {
		if g := &groups[code]; g.Grafts > 0 {
			g.Key, g.code = col.labels[code].name, code
			t.Groups = append(t.Groups, g.done())
			shares = append(shares, g.Effective())
		}
	}
	t.Differ = tally.AlikeOf(shares)
	return t
}

// Loss is how many grafts died of a cause, on how many stumps.
type Loss struct {
	Cause  string
	Grafts int
	Stumps int
}

// Losses counts the grafts of a tally that were seen dead, by cause, in order of
// the causes; of one of its groups where one is given.
func (c *Columns) Losses(t *Tally, of *Group) (out []Loss) {
	counts := make([]Loss, len(c.cause.labels))
	at := make([]int32, len(c.cause.labels))
	for i, cause := range c.cause.codes {
		if cause < 0 || !c.in(i, t, of) {
			continue
		}
		counts[cause].Grafts++
		if at[cause] != c.stump[i]+1 {
			at[cause] = c.stump[i] + 1
			counts[cause].Stumps++
		}
	}
	for _, code := range c.cause.order {
		if n := counts[code]; n.Grafts > 0 {
			n.Cause = c.cause.labels[code].name
			out = append(out, n)
		}
	}
	return out
}

// in says whether a graft is of a tally, and of one of its groups where one is given.
func (c *Columns) in(i int, t *Tally, of *Group) bool {
	return c.within(i, t.Season) && (of == nil || c.of[t.By].codes[i] == of.code)
}

// Worst is losses with the most first.
func Worst(losses []Loss) []Loss {
	sorted := slices.Clone(losses)
	slices.SortStableFunc(sorted, func(a, b Loss) int { return b.Grafts - a.Grafts })
	return sorted
}

// Curve is how long grafts took from the scion to the first sight of a push: all
// of a tally, or those of a group. Those that died, or have not moved, count until
// they were last seen.
func (c *Columns) Curve(t *Tally, of *Group) tally.Curve {
	var happened, lost []int
	count := func(list *[]int, day int16) {
		for len(*list) <= int(day) {
			*list = append(*list, 0)
		}
		(*list)[day]++
	}
	for i := range c.stump {
		if !c.in(i, t, of) {
			continue
		}
		if c.pushed[i] >= 0 {
			count(&happened, c.pushed[i])
		} else {
			count(&lost, c.seen[i])
		}
	}
	n := max(len(happened), len(lost))
	happened, lost = append(happened, make([]int, n-len(happened))...), append(lost, make([]int, n-len(lost))...)
	curve := tally.SurvivalByDay(happened, lost)
	curve.Work.Question = "How long from graft to push?"
	curve.Work.Assumed = append(curve.Work.Assumed, "a push is dated by the visit that first saw it; it began some days before")
	return curve
}

// OnStump is what a stump has of a group.
type OnStump struct {
	ID     record.StumpID
	Grafts int
	Known  int
	Took   int
	Stands int
	Dead   int
	Cause  string // of the last that died
}

// Stumps lists the stumps that carry grafts of a group, in the order of the list.
func (c *Columns) Stumps(t *Tally, of *Group) (out []OnStump) {
	last := int32(-1)
	for i, stump := range c.stump {
		if !c.in(i, t, of) {
			continue
		}
		if stump != last {
			last = stump
			out = append(out, OnStump{ID: c.stumps[stump]})
		}
		s, f := &out[len(out)-1], int(c.flags[i])
		s.Grafts++
		s.Known, s.Took, s.Stands, s.Dead = s.Known+f&known, s.Took+f&took/took, s.Stands+f&stands/stands, s.Dead+f&dead/dead
		if c.cause.codes[i] >= 0 {
			s.Cause = c.cause.labels[c.cause.codes[i]].name
		}
	}
	return out
}

// Lots counts the grafts of a group by the lot of their wood, the most first.
func (c *Columns) Lots(t *Tally, of *Group) (out []Loss) {
	counts := make([]Loss, len(c.of[Lot].labels))
	for i := range c.stump {
		if c.in(i, t, of) {
			counts[c.of[Lot].codes[i]].Grafts++
		}
	}
	for code, n := range counts {
		if n.Grafts > 0 {
			n.Cause = c.of[Lot].labels[code].name
			out = append(out, n)
		}
	}
	return Worst(out)
}

// Work is how a group's figures come about.
func (g *Group) Work() trade.Worked {
	i, share := g.Rate(), g.Effective()
	w := trade.Worked{
		Question: "How many took, and how sure is that?",
		Answer:   []trade.Input{{Name: "at least", Value: i.Low}, {Name: "at most", Value: i.High}, {Name: "design effect", Value: g.Design()}},
		Formula: "Rate = took / known. The interval is Wilson's, 95 %, on the counts divided by the design effect: grafts of one stump share its luck, " +
			"so they say less than as many on stumps of their own. Took is told apart from standing: a graft took if it was alive and growing when " +
			"that came to be known, and stands if it is alive now and was not cut away.",
		Inputs: []trade.Input{{Name: "grafts", Value: g.Grafts}, {Name: "known", Value: g.Known}, {Name: "took", Value: g.Took}, {Name: "standing", Value: g.Standing},
			{Name: "on stumps", Value: g.Stumps}, {Name: "effective known", Value: share.Of}, {Name: "effective took", Value: share.Alive}},
		Assumed: []string{"stumps of a group fare each for itself"},
		Facts:   []trade.Fact{trade.WilsonInterval, trade.StumpsAlike, trade.MovingNotTaking, trade.WideInterval},
	}
	if g.Known > 0 {
		w.Answer = append([]trade.Input{{Name: "rate", Value: float64(g.Took) / float64(g.Known)}}, w.Answer...)
	}
	return w
}
