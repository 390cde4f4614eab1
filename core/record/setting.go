package record

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// settings reads the value of each setting of a block into it.
var settings = map[string]func(b *Block, value string) error{
	"units":        func(b *Block, v string) (err error) { b.Units, err = unit.ParseSystem(v); return },
	"latitude":     func(b *Block, v string) error { b.Placed = true; return number(v, -90, 90, &b.Lat) },
	"longitude":    func(b *Block, v string) error { return number(v, -180, 180, &b.Lon) },
	"altitude":     func(b *Block, v string) error { return length(v, &b.Altitude) },
	"zone":         func(b *Block, v string) error { b.ZoneName = v; return nil },
	"species":      func(b *Block, v string) error { b.Species = v; return nil },
	"variety":      func(b *Block, v string) error { b.Variety = v; return nil },
	"graft-height": func(b *Block, v string) error { return length(v, &b.GraftHeight) },
	"browse":       func(b *Block, v string) error { return length(v, &b.Browse) },
	"frosty":       func(b *Block, v string) error { return yes(v, &b.Frosty) },
	"earwigs":      func(b *Block, v string) error { return yes(v, &b.Earwigs) },
	"row-spacing":  func(b *Block, v string) error { return length(v, &b.RowSpacing) },
	"tree-spacing": func(b *Block, v string) error { return length(v, &b.TreeSpacing) },
	"slip-from":    func(b *Block, v string) error { return dayOfYear(v, &b.SlipFrom) },
	"slip-to":      func(b *Block, v string) error { return dayOfYear(v, &b.SlipTo) },
	"wait-days":    func(b *Block, v string) error { return whole(v, trade.WaitLeast, trade.WaitMost, &b.Wait) },
	"a-day":        func(b *Block, v string) error { return whole(v, 1, 1000, &b.PerDay) },
	"days-off":     func(b *Block, v string) error { return readDaysOff(v, &b.Off) },
	"hands":        func(b *Block, v string) error { return readHands(v, &b.Hands) },
	"pinch-until":  func(b *Block, v string) error { return dayOfYear(v, &b.PinchUntil) },
	"made-up":      func(b *Block, v string) error { return yes(v, &b.MadeUp) },
	"away":         func(b *Block, v string) error { return yes(v, &b.Away) },
	"corner":       corner,
	"row-bearing": func(b *Block, v string) (err error) {
		b.Lay.Bearing, err = unit.ParseBearing(v)
		b.Lay.HasBearing = err == nil
		return
	},
	"next-row": nextRow,
}

// SettingNames lists the settings of a block.
func SettingNames() []string {
	var names []string
	for name := range settings {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

func number(v string, low, high float64, into *float64) error {
	n, err := strconv.ParseFloat(strings.TrimSpace(v), 64)
	if err != nil || !(n >= low && n <= high) {
		return &unit.Error{Given: v, Accepted: fmt.Sprintf("a number from %g to %g", low, high)}
	}
	*into = n
	return nil
}

func whole(v string, least, most int, into *int) error {
	n, err := strconv.Atoi(strings.TrimSpace(v))
	if err != nil || n < least || n > most {
		return &unit.Error{Given: v, Accepted: fmt.Sprintf("a whole number from %d to %d", least, most)}
	}
	*into = n
	return nil
}

func length(v string, into *Measure) (err error) {
	*into, err = ReadMeasure(v, 0)
	return err
}

func yes(v string, into *bool) error {
	switch v {
	case "yes":
		*into = true
	case "no":
		*into = false
	default:
		return &unit.Error{Given: v, Accepted: "yes or no"}
	}
	return nil
}

// dayOfYear reads 05-10, month and day.
func dayOfYear(v string, into *MonthDay) error {
	d, err := unit.ParseDate("2028-" + v)
	if err != nil {
		return &unit.Error{Given: v, Accepted: "a month and day such as 05-10"}
	}
	_, m, day := d.Parts()
	*into = MonthDay{m, day}
	return nil
}

// WaitDays is how many days a stump waits from cutting back to grafting.
func (b *Block) WaitDays() int {
	if b.Wait > 0 {
		return b.Wait
	}
	return trade.CutBackDays
}
