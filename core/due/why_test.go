package due

import (
	"testing"
	"time"

	"barkslip/core/record/recordtest"
)

// A day carries its year where the sentence names days of different years, once
// where two days stand side by side.
func TestWhyNamesTheYear(t *testing.T) {
	b := recordtest.Northern()
	day := func(d string) time.Time { return recordtest.DayOf(d).At(9, 0, b.Zone) }
	for _, c := range []struct {
		due  Due
		says string
	}{
		{Due{Kind: Regraft, Since: day("2027-06-03"), Opens: day("2028-03-15"), By: day("2028-05-15")},
			"Lost 3 Jun 2027: cut it back again from 15 Mar to 15 May 2028."},
		{Due{Kind: CutBack, Opens: day("2027-04-30"), By: day("2027-05-31")},
			"Bark slips soon: cut it back from 30 Apr to 31 May, as many as can be grafted a week later."},
		{Due{Kind: Twine, Since: day("2026-08-02"), Opens: day("2027-06-01"), By: day("2027-06-15")},
			"The leader, chosen 2 Aug 2026, measures 36 in by 1 Jun 2027: time for twine."},
		{Due{Kind: Sprouts, Since: day("2025-05-03"), Opens: day("2027-05-01"), By: day("2027-05-08"), Hint: uint8(len(sprouts.Says) - 1)},
			"Sprouts start with the leaf, 1 May, and are rubbed every 21 days from then."},
		{Due{Kind: AfterLook, Since: day("2027-05-20"), Opens: day("2027-05-21"), By: day("2027-05-22"), Hint: afterLookRain},
			"It rained hard 20 May: check by 22 May that the seal is whole."},
	} {
		if got := c.due.Why(b); got != c.says {
			t.Errorf("%q, want %q", got, c.says)
		}
	}
}
