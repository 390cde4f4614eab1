package due

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// dueEnd is the last day on which work of a kind can be done that nobody did,
// and the day on which it comes again.
type dueEnd struct {
	name  string
	kind  Kind
	block *record.Block
	work  func(d *recordtest.Diary)
	last  string // "" where it stays until it is done
	again string // "" where it does not come again
}

func standing(d *recordtest.Diary) { d.On("2027-03-01", 9, 0, &record.StumpAdded{}) }

func cutBackOnly(d *recordtest.Diary) {
	d.On("2027-05-03", 9, 0, &record.NurseJudged{Limbs: 1}, &record.CutBack{Height: recordtest.Inches(36)}, &record.Gashed{Number: 2})
}

// readyToGraft is the same found ready on 12 May.
func readyToGraft(d *recordtest.Diary) {
	cutBackOnly(d)
	d.On("2027-05-12", 9, 0, &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean}, &record.Gashed{Number: 2}, &record.FreshCut{})
	d.On("2027-05-12", 9, 20, &record.Looked{Bleeding: record.Dry})
}

// led2027 is a stump of two grafts under bare sealer, the second pushing and
// leading.
func led2027(d *recordtest.Diary) {
	d.Grafted("2027-05-03", "2027-05-12", record.Bare)
	led(d)
}

// ledSouth is the same half a year later.
func ledSouth(d *recordtest.Diary) {
	d.Grafted("2027-11-03", "2027-11-12", record.Bare).On("2027-11-29", 9, 0, recordtest.Visit(record.NoChange, record.Pushing), &record.LeaderChosen{Slot: 2, Shoot: "only"})
}

// and is work with more behind it.
func and(work func(d *recordtest.Diary), day string, bodies ...record.Body) func(d *recordtest.Diary) {
	return func(d *recordtest.Diary) {
		work(d)
		d.On(day, 9, 0, bodies...)
	}
}

var dueEnds = []dueEnd{
	{"cut-back: slip end - 7 d, and again next year", CutBack, nil, standing, "2027-06-08", "2028-04-05"},
	{"cut-back: cut back in an earlier year", CutBack, nil, cutBackOnly, "2028-06-08", "2029-04-05"},
	{"cut-back: the block's own days", CutBack, slipping("05-01", "05-31"), standing, "2027-05-24", "2028-04-21"},
	{"cut-back: in the south", CutBack, recordtest.Southern(), standing, "2027-11-23", "2028-09-21"},
	{"look: slip end", Look, nil, cutBackOnly, "2027-06-15", ""},
	{"look-again: slip end", LookAgain, nil, and(cutBackOnly, "2027-05-11", &record.Looked{Bleeding: record.Dry, Slip: record.Drags}), "2027-06-15", ""},
	{"graft: slip end", Graft, nil, readyToGraft, "2027-06-15", ""},
	{"finish", Finish, nil, and(cutBackOnly, "2027-05-12", &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}, {Bearing: 180}}}, &record.ScionSet{Slot: 1}), "", ""},
	{"seal", Seal, nil, and(cutBackOnly, "2027-05-12", &record.ScionSet{Slot: 1}), "", ""},
	{"white", White, nil, and(cutBackOnly, "2027-05-12", &record.ScionSet{Slot: 1}, &record.Sealed{Cover: record.Bare}), "", ""},
	{"after-look: set + 60 d", AfterLook, nil, led2027, "2027-07-11", ""},
	{"reseal: set + 60 d", Reseal, nil, led2027, "2027-07-11", ""},
	{"earwigs: push + 45 d", Earwigs, recordtest.WithEarwigs(recordtest.Northern()), led2027, "2027-07-13", ""},
	{"stake", Stake, nil, led2027, "", ""},
	{"buds", Buds, nil, led2027, "", ""},
	{"confirm-take", ConfirmTake, nil, led2027, "", ""},
	{"sprouts: the season, and again at leaf-out", Sprouts, nil, led2027, "2027-09-30", "2028-05-01"},
	{"sprouts: in later years", Sprouts, nil, and(led2027, "2029-06-01", &record.Noted{Text: "hot"}), "2029-09-30", "2030-05-01"},
	{"sprouts: in the south", Sprouts, recordtest.Southern(), ledSouth, "2028-03-31", "2028-11-01"},
	{"keep-sprouts: the season", KeepSprouts, nil, and(led2027, "2027-06-20", recordtest.Visit(record.Dead, record.Dead)), "2027-09-30", ""},
	{"leader", Leader, nil, and(led2027, "2027-07-01", &record.LeaderBroken{Cause: "wind"}), "", ""},
	{"tie: the season, and again from 1 June", Tie, nil, led2027, "2027-09-30", "2028-06-01"},
	{"tie: the second season", Tie, nil, and(led2027, "2028-06-02", &record.Tied{}), "2028-09-30", ""},
	{"tie: in the south", Tie, recordtest.Southern(), ledSouth, "2028-03-31", "2028-12-01"},
	{"pinch: 15 August", Pinch, nil, led2027, "2027-08-15", ""},
	{"pinch: in the south", Pinch, recordtest.Southern(), ledSouth, "2028-02-15", ""},
	{"twine: the season, and again from 1 June", Twine, nil, led2027, "2027-09-30", "2028-06-01"},
	{"twine: the second season", Twine, nil, and(led2027, "2028-06-02", &record.Noted{Text: "hot"}), "2028-09-30", ""},
	{"seasons-end: 31 December, and again", SeasonsEnd, nil, led2027, "2027-12-31", "2028-10-01"},
	{"seasons-end: in the south", SeasonsEnd, recordtest.Southern(), ledSouth, "2028-06-30", "2029-04-01"},
	{"ties-off: leaf-out, and again in the second year", TiesOff, nil, and(led2027, "2027-06-14", &record.Tied{}), "2028-04-30", "2028-11-01"},
	{"ties-off: the second year", TiesOff, nil, and(led2027, "2028-07-14", &record.Tied{}), "2029-04-30", ""},
	{"ties-off: in the south", TiesOff, recordtest.Southern(), and(ledSouth, "2027-12-14", &record.Tied{}), "2028-10-31", "2029-05-01"},
	{"head-back: leaf-out, and the next winter", HeadBack, nil, led2027, "2028-04-30", "2029-01-15"},
	{"head-back: frosty", HeadBack, recordtest.Frosty(recordtest.Northern()), led2027, "2028-04-30", "2029-03-01"},
	{"head-back: in the south", HeadBack, recordtest.Southern(), ledSouth, "2028-10-31", "2029-07-15"},
	{"second-shoot-off: leaf-out, and the next winter", SecondShootOff, nil, led2027, "2029-04-30", "2030-01-15"},
	{"nurse-limbs-off: leaf-out, and the next winter", NurseLimbsOff, nil, led2027, "2028-04-30", "2029-01-15"},
	{"twine-check", TwineCheck, nil, and(led2027, "2027-08-05", &record.Twined{}), "", ""},
	{"cut-twine", CutTwine, nil, and(led2027, "2027-08-05", &record.Twined{}), "", ""},
	{"untie", Untie, nil, led2027, "", ""},
	{"regraft: slip end, then next 15 March", Regraft, nil, and(led2027, "2027-06-20", &record.Failed{Cause: "bled"}), "2028-06-15", "2029-03-15"},
	{"regraft: in the south", Regraft, recordtest.Southern(), and(ledSouth, "2027-12-20", &record.Failed{Cause: "bled"}), "2028-11-30", "2029-09-15"},
}

// slipping is the northern block with its own season of slip.
func slipping(from, to string) *record.Block {
	b := recordtest.Northern()
	_, m, day := recordtest.DayOf("2028-" + from).Parts()
	b.SlipFrom = record.MonthDay{Month: m, Day: day}
	_, m, day = recordtest.DayOf("2028-" + to).Parts()
	b.SlipTo = record.MonthDay{Month: m, Day: day}
	return b
}

// TestDueEnds: work that nobody did can be done to the last day, not on the day
// after, and comes again when the table says.
func TestDueEnds(t *testing.T) {
	for _, c := range dueEnds {
		if c.block == nil {
			c.block = recordtest.Northern()
		}
		d := recordtest.DiaryOn(c.block)
		c.work(d)
		if c.last == "" {
			wantOpen(t, c.name, d, c.kind, "2040-07-01", true)
			continue
		}
		after := recordtest.DayOf(c.last).Add(1).String()
		wantOpen(t, c.name, d, c.kind, c.last, true)
		wantOpen(t, c.name, d, c.kind, after, false)
		if again := nextOpens(d, c.kind, after); again != c.again {
			t.Errorf("%s: again on %q, want %q", c.name, again, c.again)
		}
	}
	seen := map[Kind]bool{}
	for _, c := range dueEnds {
		seen[c.kind] = true
	}
	for _, kind := range Kinds() {
		if !seen[kind] {
			t.Errorf("nothing says when %s ends", kind)
		}
	}
}

func wantOpen(t *testing.T, name string, d *recordtest.Diary, kind Kind, day string, want bool) {
	t.Helper()
	if due, open := openOn(d, kind, day); open != want {
		t.Errorf("%s: open on %s is %v, want %v; %s to %s", name, day, open, want, due.Opens, due.Ends)
	}
}

// nextOpens is the day on which a kind of work opens next as seen on a day, ""
// where it does not come again.
func nextOpens(d *recordtest.Diary, kind Kind, day string) string {
	for _, due := range At(Of(d.Fold(), d.B), recordtest.DayOf(day).At(12, 0, d.B.Zone)) {
		if due.Kind == kind {
			return d.B.Day(due.Opens).String()
		}
	}
	return ""
}

// TestYearlyDuesAreAtHandInEachYear, a decade on as in the first year.
func TestYearlyDuesAreAtHandInEachYear(t *testing.T) {
	for _, b := range []*record.Block{recordtest.Northern(), recordtest.Southern()} {
		d := recordtest.DiaryOn(b)
		standing(d)
		dues := Of(d.Fold(), b)
		for at := recordtest.DayOf("2027-03-01"); at < recordtest.DayOf("2037-03-01"); at = at.Add(5) {
			now := at.At(12, 0, b.Zone)
			got := At(dues, now)
			if len(got) != 1 || got[0].Ended(now) || got[0].Opens.Sub(now) > 366*24*time.Hour || got[0].By.Before(got[0].Opens) {
				t.Fatalf("on %s: %v", at, got)
			}
		}
	}
}
