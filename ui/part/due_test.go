package part

import (
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/paper"
)

// oneBlock is a book of one block without stumps.
type oneBlock struct{ Book }

var here = record.ID{1}

func (oneBlock) Folded() *record.Book {
	return record.FoldBook([]record.Event{
		{ID: record.ID{1}, Clock: 1, Body: &record.BlockMade{Block: here, Name: "Hollow Lane"}},
		{ID: record.ID{2}, Clock: 2, Body: &record.BlockSet{Block: here, Setting: "zone", Value: "America/New_York"}},
	}, time.LoadLocation)
}

func (oneBlock) Summaries(record.ID) ([]due.Summary, error) { return nil, nil }

// session is a session on that block at one time.
func session(now time.Time) *Session {
	x := NewSession(Options{Book: oneBlock{}, Now: func() time.Time { return now }, Zones: time.LoadLocation})
	x.Block = here
	return x
}

// TestDueWordsFitTheStake says of each open step when it is to be done.
func TestDueWordsFitTheStake(t *testing.T) {
	zone, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Fatal(err)
	}
	x := session(time.Date(2027, 5, 4, 13, 0, 0, 0, zone))
	at := func(y int, m time.Month, day, hour int) time.Time { return time.Date(y, m, day, hour, 0, 0, 0, zone) }
	const room = 12 // of a line of the stake, behind the step
	for want, due := range map[string]due.Due{
		"LATE":        {Kind: due.Stake, Opens: at(2027, 4, 1, 0), By: at(2027, 4, 9, 0)},
		"today":       {Kind: due.Stake, Opens: at(2027, 5, 1, 0), By: at(2027, 5, 4, 23)},
		"by 12 May":   {Kind: due.Stake, Opens: at(2027, 5, 1, 0), By: at(2027, 5, 12, 0)},
		"by Jan 2028": {Kind: due.TiesOff, Opens: at(2027, 5, 1, 0), By: at(2028, 1, 12, 0)},
		"by 14:00":    {Kind: due.White, Opens: at(2027, 5, 4, 13), By: at(2027, 5, 4, 14)},
		"from 15:00":  {Kind: due.White, Opens: at(2027, 5, 4, 15), By: at(2027, 5, 4, 16)},
		"from 28 Nov": {Kind: due.TiesOff, Opens: at(2027, 11, 28, 0), By: at(2027, 12, 31, 0)},
		"in Jan 2028": {Kind: due.HeadBack, Opens: at(2028, 1, 15, 0), By: at(2028, 3, 1, 0)},
	} {
		if got, _ := x.DueWords(due); got != want || paper.Width(got) > room {
			t.Errorf("%s, want %s, in at most %d characters", got, want, room)
		}
	}
}
