package due

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

func placedBlock() *record.Block {
	return &record.Block{ID: recordtest.TheBlock, Placed: true, Lat: 42.7, Lon: -77.2, Zone: recordtest.EDT}
}

func sealedAt(at time.Time) *recordtest.Laptop {
	l := recordtest.NewLaptop("AB")
	l.Say(at.Add(-10*time.Minute), &record.ScionSet{Slot: 1})
	l.Say(at, &record.Sealed{Cover: record.Wrapped})
	return l
}

func whiteOf(l *recordtest.Laptop, b *record.Block) (Due, bool) {
	for _, d := range Of(l.Fold(), b) {
		if d.Kind == White {
			return d, true
		}
	}
	return Due{}, false
}

func TestWhiteClock(t *testing.T) {
	for _, c := range []struct {
		name      string
		sealed    time.Time
		more      func(l *recordtest.Laptop)
		opens, by time.Time
	}{
		{"two and three hours", recordtest.May(20, 9, 0), nil, recordtest.May(20, 11, 0), recordtest.May(20, 12, 0)},
		{"wet, within the two hours", recordtest.May(20, 9, 0), func(l *recordtest.Laptop) { l.Say(recordtest.May(20, 10, 15), &record.StillWet{}) }, recordtest.May(20, 11, 0), recordtest.May(20, 12, 0)},
		{"wet at two hours", recordtest.May(20, 9, 0), func(l *recordtest.Laptop) { l.Say(recordtest.May(20, 11, 5), &record.StillWet{}) }, recordtest.May(20, 11, 35), recordtest.May(20, 12, 0)},
		{"wet near three hours", recordtest.May(20, 9, 0), func(l *recordtest.Laptop) { l.Say(recordtest.May(20, 11, 50), &record.StillWet{Rain: true}) }, recordtest.May(20, 12, 20), recordtest.May(20, 12, 20)},
		{"wet again and again", recordtest.May(20, 9, 0), func(l *recordtest.Laptop) {
			l.Say(recordtest.May(20, 13, 0), &record.StillWet{})
			l.Say(recordtest.May(20, 11, 50), &record.StillWet{})
		}, recordtest.May(20, 13, 30), recordtest.May(20, 13, 30)},
		{"wet before this sealing", recordtest.May(20, 9, 0), func(l *recordtest.Laptop) { l.Say(recordtest.May(20, 8, 50), &record.StillWet{}) }, recordtest.May(20, 11, 0), recordtest.May(20, 12, 0)},
	} {
		l := sealedAt(c.sealed)
		if c.more != nil {
			c.more(l)
		}
		d, ok := whiteOf(l, recordtest.BlockEDT())
		if !ok || !d.Opens.Equal(c.opens) || !d.By.Equal(c.by) {
			t.Errorf("%s: %v, opens %v by %v, want %v and %v", c.name, ok, d.Opens, d.By, c.opens, c.by)
		}
	}
}

func TestWhiteEnds(t *testing.T) {
	for name, body := range map[string]record.Body{
		"painted": &record.PaintedWhite{}, "failed": &record.Failed{Cause: "wind"}, "given up": &record.GivenUp{Why: "dead"}, "untied": &record.Untied{},
	} {
		l := sealedAt(recordtest.May(20, 9, 0))
		l.Say(recordtest.May(20, 11, 30), body)
		if d, ok := whiteOf(l, recordtest.BlockEDT()); ok {
			t.Errorf("%s, and still white by %v", name, d.By)
		}
	}
}

// What falls due in the dark waits for an hour after sunrise. Sunrise at 42.7 N
// 77.2 W on 21 May 2027 is about 5:38 and sunset on the 20th about 20:28 on the
// clock there, within two minutes.
func TestWhiteWaitsForTheMorning(t *testing.T) {
	near := func(a, b time.Time) bool { return a.Sub(b).Abs() < 3*time.Minute }
	for _, c := range []struct{ sealed, by time.Time }{
		{recordtest.May(20, 17, 0), recordtest.May(20, 20, 0)},
		{recordtest.May(20, 18, 0), recordtest.May(21, 6, 38)},
		{recordtest.May(20, 22, 30), recordtest.May(21, 6, 38)},
		{recordtest.May(21, 1, 0), recordtest.May(21, 6, 38)},
		{recordtest.May(21, 3, 30), recordtest.May(21, 6, 30)},
	} {
		d, _ := whiteOf(sealedAt(c.sealed), placedBlock())
		if !near(d.By, c.by) {
			t.Errorf("sealed %s: by %s, want about %s", c.sealed.Format("2 15:04"), d.By.Format("2 15:04"), c.by.Format("2 15:04"))
		}
		if d, _ := whiteOf(sealedAt(c.sealed), recordtest.BlockEDT()); !d.By.Equal(c.sealed.Add(3 * time.Hour)) {
			t.Errorf("a block with no place has no dark, yet sealed %v is by %v", c.sealed, d.By)
		}
	}
}

// The sun of high summer in the far north does not set.
func TestWhiteUnderTheMidnightSun(t *testing.T) {
	b := placedBlock()
	b.Lat = 70
	sealed := time.Date(2027, 6, 21, 22, 0, 0, 0, recordtest.EDT)
	if d, _ := whiteOf(sealedAt(sealed), b); !d.By.Equal(sealed.Add(3 * time.Hour)) {
		t.Errorf("by %v", d.By)
	}
}

func TestWhiteIsNeverDueBeforeItOpens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sealed := recordtest.May(1, 0, 0).Add(time.Duration(rapid.IntRange(0, 30*24*60).Draw(t, "sealed")) * time.Minute)
		l := sealedAt(sealed)
		for range rapid.IntRange(0, 4).Draw(t, "wet") {
			l.Say(sealed.Add(time.Duration(rapid.IntRange(-60, 900).Draw(t, "after"))*time.Minute), &record.StillWet{})
		}
		for _, b := range []*record.Block{placedBlock(), recordtest.BlockEDT()} {
			d, ok := whiteOf(l, b)
			if !ok || d.By.Before(d.Opens) || d.Opens.Before(sealed.Add(2*time.Hour)) {
				t.Fatalf("sealed %v: opens %v by %v", sealed, d.Opens, d.By)
			}
		}
	})
}
