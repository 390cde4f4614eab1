package store

import (
	"maps"
	"reflect"
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// regroup adds to remake the stumps whose summaries depend on what changed in
// the events about no stump.
func (c *change) regroup(remake map[record.StumpID]bool) error {
	was, now := c.was.folded, c.now.folded
	moved := map[record.ID]bool{} // blocks that stumps left or came to
	for id := range c.now.numbers {
		if before, after := was.CanonicalBlock(id), now.CanonicalBlock(id); before != after {
			moved[before], moved[after] = true, true
		}
	}
	for id := range moved {
		if n, ok := c.now.numbers[id]; ok {
			if err := c.dropSummaries(numberKey(n)); err != nil {
				return err
			}
		}
	}
	for _, id := range c.now.standing() {
		c.regroupBlock(id, moved[id], remake)
	}
	return nil
}

func (c *change) regroupBlock(id record.ID, moved bool, remake map[record.StumpID]bool) {
	before, after := c.was.block(id), c.now.block(id)
	switch {
	case moved || !reflect.DeepEqual(bearing(before), bearing(after)):
		for _, s := range stumpsOf(c.tx, &c.now, id) {
			remake[s] = true
		}
	case !maps.EqualFunc(before.Weather, after.Weather, sameDay):
		for _, s := range c.weatherbound(id) {
			remake[s] = true
		}
	}
}

// bearing is the settings of a block without those that no summary depends on.
func bearing(b *record.Block) record.Block {
	out := b.Settings()
	out.Name, out.Made, out.MadeUp, out.Away = "", time.Time{}, false, false
	out.Species, out.Variety, out.GraftHeight = "", "", record.Measure{}
	out.SlipFrom, out.SlipTo, out.PerDay = record.MonthDay{}, record.MonthDay{}, 0
	out.RowSpacing, out.TreeSpacing = record.Measure{}, record.Measure{}
	out.Off, out.Hands, out.Load = record.DaysOff{}, nil, record.LoadRates{}
	out.RowSpacing, out.TreeSpacing, out.Lay = record.Measure{}, record.Measure{}, record.Lay{}
	return out
}

func sameDay(a, b record.Said[record.DayWeather]) bool { return a.ID == b.ID && a.What == b.What }

// weatherbound is the stumps whose dues the weather can move: those up to
// sealing, and those sealed that are not white yet.
func (c *change) weatherbound(block record.ID) []record.StumpID {
	n := c.now.numbers[block]
	var out []record.StumpID
	var u due.Unpacker
	for k, v := range rising(c.summaries, numberKey(n)) {
		s, ok := unpackSummary(&u, spot(k), v, c.now.block(block))
		white := func(d due.Due) bool { return d.Kind == due.White }
		if !ok || s.Stage <= record.StageSealed || slices.ContainsFunc(s.Dues, white) {
			out = append(out, spot(k).stump(block))
		}
	}
	return out
}
