package due

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// On the day of the graft work runs by the clock: scions to finish, sealing, and
// white on each coat of sealer. Two slots were marked on 12 May.
func TestDuesOnTheGraftDay(t *testing.T) {
	at := func(hour, minute int) time.Time {
		return recordtest.DayOf("2027-05-12").At(hour, minute, recordtest.NewYork)
	}
	set := func(slot int) *record.ScionSet { return &record.ScionSet{Slot: slot} }
	type said struct {
		hour, minute int
		body         record.Body
	}
	one, both := []said{{10, 0, set(1)}}, []said{{10, 0, set(1)}, {10, 10, set(2)}}
	sealed := append(append([]said{}, both...), said{10, 40, &record.Sealed{Cover: record.Bare}})
	painted := append(append([]said{}, sealed...), said{13, 0, &record.PaintedWhite{}})
	then := func(before []said, more ...said) []said { return append(append([]said{}, before...), more...) }
	never := time.Time{}
	for _, c := range []struct {
		name      string
		kind      Kind
		work      []said
		opens, by time.Time
	}{
		{"finish: no scion set", Finish, nil, never, never},
		{"finish: a slot open, last scion + 1 h", Finish, one, at(10, 0), at(11, 0)},
		{"finish: all set", Finish, both, never, never},
		{"finish: said to stay empty", Finish, then(one, said{10, 20, &record.SlotEmpty{Slot: 2}}), never, never},
		{"seal: a slot open", Seal, one, never, never},
		{"seal: all set, last scion + 30 min", Seal, both, at(10, 10), at(10, 40)},
		{"seal: one set and one empty", Seal, then(one, said{10, 20, &record.SlotEmpty{Slot: 2}}), at(10, 0), at(10, 30)},
		{"seal: sealed", Seal, sealed, never, never},
		{"seal: a scion moved after it", Seal, then(painted, said{14, 0, set(2)}), at(14, 0), at(14, 30)},
		{"white: not sealed", White, both, never, never},
		{"white: sealed + 2 h, + 3 h", White, sealed, at(12, 40), at(13, 40)},
		{"white: painted", White, painted, never, never},
		{"white: sealed again", White, then(painted, said{14, 0, &record.Resealed{}}), at(16, 0), at(17, 0)},
		{"white: washed off", White, then(painted, said{15, 0, &record.WashedOff{}}), at(17, 0), at(18, 0)},
		{"white: sealed again and painted", White, then(painted, said{14, 0, &record.Resealed{}}, said{16, 30, &record.PaintedWhite{}}), never, never},
		{"white: a scion moved and not sealed", White, then(painted, said{14, 0, set(2)}), never, never},
		{"white: still wet", White, then(sealed, said{12, 50, &record.StillWet{}}), at(13, 20), at(13, 40)},
	} {
		d := recordtest.DiaryOn(recordtest.Northern()).On("2027-05-03", 9, 0, &record.CutBack{Height: recordtest.Inches(36)})
		d.On("2027-05-12", 9, 0, &record.SlotsMarked{Slots: []record.Slot{{Bearing: 0}, {Bearing: 180}}})
		for _, s := range c.work {
			replaced := replacing(d.Fold(), s.body)
			d.Say(at(s.hour, s.minute), s.body, replaced...)
		}
		got, ok := dueOf(d, c.kind)
		if ok != !c.opens.IsZero() || ok && (!got.Opens.Equal(c.opens) || !got.By.Equal(c.by)) {
			t.Errorf("%s: %v, %s by %s, want %s by %s", c.name, ok, got.Opens, got.By, c.opens, c.by)
		}
		if ok && !got.Kind.Urgent() {
			t.Errorf("%s: late without a word", c.name)
		}
	}
}
