package ready

import (
	"fmt"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// The verdicts.
const (
	OtherGraft  record.Verdict = "other-graft"
	CutBack     record.Verdict = "cut-back"
	TakeLimbOff record.Verdict = "take-limb-off"
	Wait        record.Verdict = "wait"
	Look        record.Verdict = "look"
	Gash        record.Verdict = "gash"
	Drill       record.Verdict = "drill"
	Wipe        record.Verdict = "wipe"
	Leave       record.Verdict = "leave"
	FreshCut    record.Verdict = "fresh-cut"
	Graft       record.Verdict = "graft"
)

// Found is what has been seen and done on a stump, as far as it bears on
// whether it is ready. Zero times stand for never.
type Found struct {
	Across   unit.Length
	Bleeding record.Bleeding // "" if nobody looked
	Slip     record.Slip     // "" if nobody tried
	Looked   time.Time       // when bleeding was seen
	Slipped  time.Time       // when the bark was tried
	CutBack  unit.Date       // 0 if never
	Wait     int             // days from cutting back to grafting; 0: trade.CutBackDays
	Gashed   time.Time       // newest gash
	Gashes   int             // in all
	Drilled  time.Time       // newest hole
	Holes    int             // in all
	FreshCut time.Time
	Wipes    int // of this face today
	Waits    int // times it was told to wait while running
	Limb     unit.Length
	HasLimb  bool // Limb is known
	Limbs    int
	Low      bool // the cut is below browse height
	NoLimbs  bool // it is known that no limb was left
}

// Advice is the verdict with its reasons.
type Advice struct {
	Verdict   record.Verdict `json:"verdict"`
	Until     *time.Time     `json:"until"`
	Reasons   []string       `json:"reasons"`
	Meanwhile []string       `json:"meanwhile"`
	Cautions  []string       `json:"cautions"`
	Work      trade.Worked   `json:"because"`
}

// wait is the least days from cutting back to grafting.
func (f Found) wait() int {
	if f.Wait > 0 {
		return f.Wait
	}
	return trade.CutBackDays
}

// judge gathers an advice; days are those of zone.
type judge struct {
	Found
	now  time.Time
	zone *time.Location
	sys  unit.System
	out  Advice
}

// Judge says whether a stump is ready at now, by the first rule that applies.
// Days are calendar days in zone; lengths in the reasons are printed in sys.
func Judge(f Found, now time.Time, zone *time.Location, sys unit.System) Advice {
	j := &judge{Found: f, now: now.In(zone), zone: zone, sys: sys}
	j.out.Reasons, j.out.Meanwhile, j.out.Cautions = []string{}, []string{}, []string{}
	for _, rule := range rules {
		if rule(j) {
			break
		}
	}
	j.caution()
	j.working()
	return j.out
}

// rules in the order in which they lead.
var rules = []func(*judge) bool{
	(*judge).tooSmall, (*judge).neverCutBack, (*judge).limbTooNear, (*judge).barkOrDays, (*judge).lookAgain,
	(*judge).notLooked, (*judge).neverGashed, (*judge).running, (*judge).damp, (*judge).weeping,
	(*judge).dryOldGashes, (*judge).dryOldFace, (*judge).ready,
}

// say settles the verdict.
func (j *judge) say(v record.Verdict, reason string, facts ...trade.Fact) bool {
	j.out.Verdict = v
	j.out.Reasons = append(j.out.Reasons, reason)
	j.out.Work.Facts = append(j.out.Work.Facts, facts...)
	return true
}

func (j *judge) until(t time.Time) {
	t = t.In(j.zone)
	j.out.Until = &t
}

// today says whether an instant falls on the day of now.
func (j *judge) today(t time.Time) bool {
	return !t.IsZero() && unit.DateOf(t.In(j.zone)) == unit.DateOf(j.now)
}

func (j *judge) bleeds() bool { return j.Bleeding != record.Dry && j.Bleeding != "" }

func (j *judge) tooSmall() bool {
	if j.Across <= 0 || j.Across >= trade.LeastAcross {
		return false
	}
	size, limit := j.beside(j.Across, trade.LeastAcross)
	if limit != "" {
		limit = ", under " + limit
	}
	return j.say(OtherGraft, fmt.Sprintf("It is %s across%s.", size, limit), trade.SmallStump)
}

// beside prints a length beside a limit it is not on: "7/8 in" and "1 in", or
// where both would be printed alike "just under 1 in" and nothing.
func (j *judge) beside(l, limit unit.Length) (length, bound string) {
	length, bound = j.sys.Length(l), j.sys.Figure(limit)
	switch {
	case length != bound && !unit.Crosses(length, l, limit):
		return length, bound
	case l < limit:
		return "just under " + bound, ""
	}
	return "just over " + bound, ""
}

func (j *judge) neverCutBack() bool {
	if j.CutBack != 0 {
		return false
	}
	return j.say(CutBack, "It has never been cut back.", trade.DaysToGraft, trade.GashesLow)
}

// LimbTooNear says whether a limb stands nearer below the planned graft height
// than must be clear, by the figure as people of the system are told it.
func LimbTooNear(clear unit.Length, sys unit.System) bool { return clear < sys.Round(trade.LimbClear) }

func (j *judge) limbTooNear() bool {
	if !j.HasLimb || !LimbTooNear(j.Limb, j.sys) {
		return false
	}
	below, _ := j.beside(j.Limb, j.sys.Round(trade.LimbClear))
	return j.say(TakeLimbOff, fmt.Sprintf("A limb stands %s below the planned graft height; %s must be clear.",
		below, j.sys.Figure(trade.LimbClear)), trade.LimbClearance)
}

// barkOrDays waits for bark that does not slip and for the week after cutting
// back; the latest of the waits holds.
func (j *judge) barkOrDays() bool {
	days := int(unit.DateOf(j.now) - j.CutBack)
	early := days < j.wait()
	if j.Slip != record.Stuck && j.Slip != record.Drags && !early {
		return false
	}
	j.out.Verdict = Wait
	var until time.Time
	if wait := map[record.Slip]int{record.Stuck: trade.StuckWaitDays, record.Drags: trade.DragsWaitDays}[j.Slip]; wait > 0 {
		until = j.Slipped.In(j.zone).AddDate(0, 0, wait)
		word := map[record.Slip]string{record.Stuck: "is stuck", record.Drags: "drags"}[j.Slip]
		j.say(Wait, fmt.Sprintf("The bark %s: try it again %d days after the look.", word, wait), trade.BarkSticks, trade.WaitDays)
	}
	if over := j.CutBack.Add(j.wait()).In(j.zone); over.After(until) {
		until = over
	}
	if early {
		j.say(Wait, fmt.Sprintf("It was cut back %s, and is grafted after %d days.", daysAgo(days), j.wait()), trade.DaysToGraft)
	}
	j.until(until)
	if j.bleeds() {
		j.out.Meanwhile = append(j.out.Meanwhile, j.drain())
	}
	return true
}

// drain says how to drain a stump that bleeds while it waits.
func (j *judge) drain() string {
	switch {
	case j.Gashes == 0 || !j.today(j.Gashed):
		return fmt.Sprintf("It is %s: gash it, %d low on the stem, so that it drains while it waits.", j.Bleeding, trade.GashesAtATime)
	case j.Holes < 2:
		return fmt.Sprintf("It is %s with gashes made today: drill a drain hole low on the stem.", j.Bleeding)
	}
	return fmt.Sprintf("It is %s with gashes made today and %d holes: no water on this ground while it drains.", j.Bleeding, j.Holes)
}

func daysAgo(n int) string {
	switch {
	case n == 0:
		return "today"
	case n == 1:
		return "yesterday"
	case n < 0:
		return fmt.Sprintf("%d days after this day", -n)
	}
	return fmt.Sprintf("%d days ago", n)
}

// notLooked asks for the first look; a record may lack one, a command line
// does not.
func (j *judge) notLooked() bool {
	if j.Bleeding != "" && j.Slip != "" {
		return false
	}
	j.until(j.now)
	what := "Nobody has looked at the face yet."
	if j.Bleeding != "" {
		what = "Nobody has tried the bark yet."
	}
	return j.say(Look, what, trade.DryFace, trade.BarkSticks)
}

// lookAgain waits for sap to show on a new face, or to be drawn off by a new
// gash or hole.
func (j *judge) lookAgain() bool {
	var until time.Time
	if j.FreshCut.After(j.Looked) {
		until = j.FreshCut.Add(trade.FaceMinutes * time.Minute)
		j.say(Look, fmt.Sprintf("The face was cut at %s: sap shows 10 to 15 minutes after a cut.", j.clock(j.FreshCut)), trade.FaceMoist)
	}
	for _, made := range []struct {
		what string
		at   time.Time
	}{{"gashed", j.Gashed}, {"drilled", j.Drilled}} {
		if !j.bleeds() || !made.at.After(j.Looked) {
			continue
		}
		if t := made.at.Add(trade.GashMinutes * time.Minute); t.After(until) {
			until = t
		}
		j.say(Look, fmt.Sprintf("It was %s and then %s at %s: give it %d minutes to drain.", j.Bleeding, made.what, j.clock(made.at), trade.GashMinutes), trade.GashDrains)
	}
	if until.IsZero() {
		return false
	}
	j.until(until)
	return true
}

func (j *judge) clock(t time.Time) string { return t.In(j.zone).Format("15:04") }

func (j *judge) neverGashed() bool {
	if j.Gashes > 0 {
		return false
	}
	return j.say(Gash, "It has never been gashed.", trade.GashesLow, trade.GashLimits)
}

func (j *judge) running() bool {
	if j.Bleeding != record.Running {
		return false
	}
	switch {
	case j.Holes == 0:
		return j.say(Drill, "It runs, and has no drain hole.", trade.DrainHoles, trade.DrainHoleSize, trade.Bleeding)
	case !j.today(j.Gashed):
		return j.say(Gash, "It runs, and its gashes are not from today.", trade.GashesLow, trade.Bleeding)
	case j.Waits < trade.WaitsMost:
		j.until(j.Looked.In(j.zone).AddDate(0, 0, trade.RunningWaitDays))
		return j.say(Wait, fmt.Sprintf("It runs with gashes made today and a drain hole: leave it %d days.", trade.RunningWaitDays), trade.WaitDays, trade.Bleeding)
	}
	j.out.Meanwhile = append(j.out.Meanwhile, "The last tries were a second hole, no irrigation, and a warm dry day.")
	return j.say(Leave, fmt.Sprintf("It still runs after %d waits: leave it this season.", j.Waits), trade.LastTries, trade.Bleeding)
}

func (j *judge) damp() bool {
	if j.Bleeding != record.Damp || j.Wipes >= trade.WipesMost {
		return false
	}
	j.until(j.Looked.Add(trade.FaceMinutes * time.Minute))
	return j.say(Wipe, fmt.Sprintf("It is damp: wipe it and see whether it wets again in %d minutes.", trade.FaceMinutes), trade.DryFace, trade.FaceMoist)
}

// weeping also takes what is still damp after two wipes.
func (j *judge) weeping() bool {
	if j.Bleeding != record.Weeping && j.Bleeding != record.Damp {
		return false
	}
	seen := "It weeps"
	if j.Bleeding == record.Damp {
		seen = fmt.Sprintf("It is damp after %d wipes", j.Wipes)
	}
	switch {
	case !j.today(j.Gashed):
		return j.say(Gash, seen+", and its gashes are not from today.", trade.GashesLow, trade.DryFace)
	case j.Holes == 0:
		return j.say(Drill, seen+" with gashes made today, and has no drain hole.", trade.DrainHoles, trade.DrainHoleSize)
	}
	j.until(j.Looked.In(j.zone).AddDate(0, 0, trade.WeepingWaitDays))
	return j.say(Wait, fmt.Sprintf("%s with gashes made today and a drain hole: leave it %d days.", seen, trade.WeepingWaitDays), trade.WaitDays)
}

func (j *judge) dryOldGashes() bool {
	if j.today(j.Gashed) {
		return false
	}
	return j.say(Gash, "It is dry, and its gashes are not from today: renew them before the top is cut.", trade.GashesLow)
}

func (j *judge) dryOldFace() bool {
	if j.today(j.FreshCut) {
		return false
	}
	return j.say(FreshCut, "It is dry and freshly gashed, but its face was not cut today.", trade.FreshCut, trade.Recut)
}

func (j *judge) ready() bool {
	days := int(unit.DateOf(j.now) - j.CutBack)
	j.say(Graft, fmt.Sprintf("It was cut back %s.", daysAgo(days)), trade.DaysToGraft)
	j.say(Graft, fmt.Sprintf("It was gashed today at %s.", j.clock(j.Gashed)), trade.GashesLow)
	j.say(Graft, fmt.Sprintf("Its face was cut today at %s.", j.clock(j.FreshCut)), trade.FreshCut)
	j.say(Graft, fmt.Sprintf("The face was dry at %s.", j.clock(j.Looked)), trade.DryFace, trade.Bleeding)
	return j.say(Graft, "The bark slips.", trade.BarkSticks)
}

// caution adds what is worth knowing but blocks nothing.
func (j *judge) caution() {
	add := func(says string, fact trade.Fact) {
		j.out.Cautions = append(j.out.Cautions, says)
		j.out.Work.Facts = append(j.out.Work.Facts, fact)
	}
	long := max(trade.CutBackLongDays, j.wait()+trade.GraftWithin)
	if days := int(unit.DateOf(j.now) - j.CutBack); j.CutBack != 0 && days > long {
		add(fmt.Sprintf("It was cut back %d days ago, more than %d.", days, long), trade.DaysToGraft)
	}
	if j.NoLimbs {
		add("No nurse limb is left: the tree loses vigour and its bark may scald.", trade.NurseLimbs)
	}
	if j.Across > trade.LargeAcross {
		size, limit := j.beside(j.Across, trade.LargeAcross)
		if limit != "" {
			limit = ", over " + limit
		}
		add(fmt.Sprintf("It is %s across%s: wounds this wide close slowly; seal well against decay.", size, limit), trade.StumpSizes)
	}
	if j.Gashes > trade.GashesMost {
		add(fmt.Sprintf("It has %d gashes; think again after the %dth.", j.Gashes, trade.GashesMost), trade.GashLimits)
	}
	if j.Low {
		add("The cut is below browse height.", trade.LowBleedsMore)
	}
}
