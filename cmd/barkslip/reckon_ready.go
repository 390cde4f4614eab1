package main

import (
	"strings"
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

var readySum = sum{
	name: "ready", short: "Whether a stump is ready to be grafted",
	long: "Judges a stump from what was seen and done. Days are calendar days at the offset\n" +
		"of --now.",
	example: "barkslip reckon ready --across 3in --now 2027-05-04T14:30:00-07:00 --bleeding dry --slip clean \\\n" +
		"    --cut-back 2027-04-26 --gashed 2027-05-04T13:00:00-07:00 --fresh-cut 2027-05-04T14:00:00-07:00",
	options: []option{
		{name: "across", value: "LENGTH", says: "diameter of the stump", need: true},
		{name: "now", value: "INSTANT", says: "the time of judging", need: true},
		{name: "bleeding", value: "WORD", says: "the face after a wipe: dry, damp, weeping, running", need: true},
		{name: "slip", value: "WORD", says: "the bark: clean, drags, stuck", need: true},
		{name: "cut-back", value: "DATE", says: "when it was cut back"},
		{name: "looked", value: "INSTANT", says: "when bleeding and slip were seen; without it now"},
		{name: "gashed", value: "INSTANT", says: "the newest gash"},
		{name: "gashes", value: "N", says: "gashes in all; without it 2 where gashed"},
		{name: "holes", value: "N", says: "drain holes in all; without it 1 where drilled"},
		{name: "drilled", value: "INSTANT", says: "the newest drain hole"},
		{name: "fresh-cut", value: "INSTANT", says: "when the face was cut fresh"},
		{name: "wipes", value: "N", says: "times this face was wiped today", usual: 0},
		{name: "waits", value: "N", says: "times the stump was told to wait while running", usual: 0},
		{name: "limb", value: "LENGTH", says: "clear stem from the planned graft height down to the nearest limb"},
		{name: "limbs", value: "N", says: "nurse limbs left; without it 1 where --limb is given, else none"},
	},
	work: func(g *given, sys unit.System) (any, trade.Worked, error) {
		now := g.instant("now")
		found := readFound(g, now)
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		_, offset := now.Zone()
		advice := ready.Judge(found, now, time.FixedZone("", offset), sys)
		return advice, adviceWork(advice), nil
	},
}

// readFound reads what was seen and done on the stump up to now.
func readFound(g *given, now time.Time) ready.Found {
	f := ready.Found{
		Across: g.size("across"), Bleeding: word(g, "bleeding", record.Bleedings...), Slip: word(g, "slip", record.Slips...),
		CutBack: g.date("cut-back"), Looked: now,
		Gashed: past(g, "gashed", now), Drilled: past(g, "drilled", now), FreshCut: past(g, "fresh-cut", now),
		Wipes: g.whole("wipes", 0, 1000), Waits: g.whole("waits", 0, 1000),
		Limb: g.length("limb"), HasLimb: g.has("limb"),
	}
	if g.has("looked") {
		f.Looked = past(g, "looked", now)
	}
	f.Slipped = f.Looked
	if f.CutBack > unit.DateOf(now) {
		g.refuse("cut-back", "a date no later than --now")
	}
	f.Gashes = counted(g, "gashes", "gashed", trade.GashesAtATime)
	f.Holes = counted(g, "holes", "drilled", trade.HolesAtATime)
	if !g.has("gashed") && f.Gashes > 0 {
		g.fail(missing("--gashed", "with --gashes, the instant of the newest gash"))
	}
	if f.Limbs = g.whole("limbs", 0, 1000); f.HasLimb {
		f.Limbs = max(f.Limbs, 1)
	}
	f.NoLimbs = f.Limbs == 0
	return f
}

// past is an instant no later than now.
func past(g *given, name string, now time.Time) time.Time {
	t := g.instant(name)
	if t.After(now) {
		g.refuse(name, "an instant no later than --now")
	}
	return t
}

// counted is how many there are in all of what was made at an instant: as told,
// or the usual number where only the instant is known.
func counted(g *given, number, made string, usual int) int {
	if !g.has(number) && g.has(made) {
		return usual
	}
	n := g.whole(number, 0, 1000)
	if n == 0 && g.has(made) {
		g.refuse(number, "1 or more, with --"+made)
	}
	return n
}

// adviceWork adds to the working what an advice says in words.
func adviceWork(a ready.Advice) trade.Worked {
	w := a.Work
	w.Answer[0].Value = strings.ReplaceAll(string(a.Verdict), "-", " ")
	for _, part := range []struct {
		name string
		says []string
	}{{"why", a.Reasons}, {"meanwhile", a.Meanwhile}, {"caution", a.Cautions}} {
		for _, s := range part.says {
			w.Answer = append(w.Answer, trade.Input{Name: part.name, Value: s})
		}
	}
	return w
}
