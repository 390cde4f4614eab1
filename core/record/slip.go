package record

import (
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// SlipSeason is the season in which the bark of a block is taken to slip: from its
// first day to its last.
type SlipSeason struct {
	From, To unit.Date
	Own      bool // the block's own days, not the usual ones of its latitude
}

// usualSlip is the season of slip where a block sets none, by latitude: see
// trade.SlipDates.
var usualSlip = []struct {
	least, below float64 // degrees north
	from, to     MonthDay
}{
	{36, 40, MonthDay{time.April, 15}, MonthDay{time.May, 15}},
	{40, 47, MonthDay{time.May, 10}, MonthDay{time.June, 10}},
	{-47, -30, MonthDay{time.October, 1}, MonthDay{time.November, 30}},
}

// SlipOn is the season of slip that a day lies in, or else the next one; ok is
// false where the block sets no days and its latitude has no usual ones.
func (b *Block) SlipOn(day unit.Date) (s SlipSeason, ok bool) {
	from, to, own := b.SlipFrom, b.SlipTo, true
	if from.Day == 0 || to.Day == 0 {
		if from, to, ok = b.usualSlip(); !ok {
			return SlipSeason{}, false
		}
		own = false
	}
	for year := day.Year() - 1; ; year++ {
		s = SlipSeason{From: from.In(year), To: to.In(year), Own: own}
		if s.To < s.From { // over the turn of the year
			s.To = to.In(year + 1)
		}
		if s.To >= day {
			return s, true
		}
	}
}

// Slip is SlipOn, or where neither block nor latitude says when bark slips a
// season taken from memory: mid-April to mid-June, October and November in the
// south.
func (b *Block) Slip(day unit.Date) SlipSeason {
	if s, ok := b.SlipOn(day); ok {
		return s
	}
	anywhere := *b
	anywhere.SlipFrom, anywhere.SlipTo = MonthDay{time.April, 15}, MonthDay{time.June, 15}
	if b.South() {
		anywhere.SlipFrom, anywhere.SlipTo = MonthDay{time.October, 1}, MonthDay{time.November, 30}
	}
	s, _ := anywhere.SlipOn(day)
	s.Own = false
	return s
}

func (b *Block) usualSlip() (from, to MonthDay, ok bool) {
	for _, u := range usualSlip {
		if b.Placed && b.Lat >= u.least && b.Lat < u.below {
			return u.from, u.to, true
		}
	}
	return from, to, false
}

// Left is how many days of slip there are from a day to the last, that day
// counted; before the season all of them.
func (s SlipSeason) Left(day unit.Date) int { return max(0, int(s.To-max(day, s.From))+1) }

// Holds says whether bark is taken to slip on a day.
func (s SlipSeason) Holds(day unit.Date) bool { return day >= s.From && day <= s.To }

// Facts is by whose word the season is what it is.
func (s SlipSeason) Facts() []trade.Fact {
	if s.Own {
		return []trade.Fact{trade.SlipSeason}
	}
	return []trade.Fact{trade.SlipSeason, trade.SlipDates}
}
