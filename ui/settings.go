package ui

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// setting is one row of the block's settings.
type setting struct {
	name, word, asks string
	show             func(b *record.Block) string
}

// settingRows lists the settings as they are shown and asked.
var settingRows = []setting{
	{"name", "name", "the block's name", func(b *record.Block) string { return b.Name }},
	{"units", "units", "us or metric", func(b *record.Block) string { return b.Units.String() }},
	{"zone", "time zone", "such as America/New_York", func(b *record.Block) string { return b.ZoneName }},
	{"latitude", "latitude", "degrees, north above 0", func(b *record.Block) string { return degrees(b, b.Lat) }},
	{"longitude", "longitude", "degrees, east above 0", func(b *record.Block) string { return degrees(b, b.Lon) }},
	{"altitude", "altitude", "such as 700ft or 210m", func(b *record.Block) string { return shown(b, b.Altitude) }},
	{"species", "stock", "species of the stumps", func(b *record.Block) string { return b.Species }},
	{"variety", "variety planned", "unless a stump says otherwise", func(b *record.Block) string { return b.Variety }},
	{"graft-height", "graft height", "wanted, such as 36in", func(b *record.Block) string { return shown(b, b.GraftHeight) }},
	{"browse", "browse height", "to which animals eat, such as 6ft", func(b *record.Block) string { return shown(b, b.Browse) }},
	{"frosty", "frosty", "yes or no: late frosts", func(b *record.Block) string { return yesNo(b.Frosty) }},
	{"earwigs", "earwigs", "yes or no: a problem here", func(b *record.Block) string { return yesNo(b.Earwigs) }},
	{"row-spacing", "between rows", "such as 30ft", func(b *record.Block) string { return shown(b, b.RowSpacing) }},
	{"tree-spacing", "between trees", "such as 25ft", func(b *record.Block) string { return shown(b, b.TreeSpacing) }},
	{"slip-from", "bark slips from", "month and day, 05-10", func(b *record.Block) string { return monthDay(b.SlipFrom) }},
	{"slip-to", "bark slips until", "month and day, 06-10", func(b *record.Block) string { return monthDay(b.SlipTo) }},
	{"wait-days", "days to graft", "after cutting back, 3 to 21; 7 unless set", func(b *record.Block) string { return number(b.Wait) }},
	{"a-day", "grafted a day", "stumps the crew grafts a day", func(b *record.Block) string { return number(b.PerDay) }},
	{"pinch-until", "pinch until", "month and day, 08-15", func(b *record.Block) string { return monthDay(b.PinchUntil) }},
}

func degrees(b *record.Block, v float64) string {
	if !b.Placed {
		return ""
	}
	return fmt.Sprintf("%g", v)
}

func shown(b *record.Block, m record.Measure) string {
	if !m.Given() {
		return ""
	}
	return b.Units.Length(m.Length)
}

func yesNo(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}

func number(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

func monthDay(m record.MonthDay) string {
	if m.Day == 0 {
		return ""
	}
	return m.In(2028).Short()
}

// settings lists the block's settings; picking one asks for its value.
func (r *root) settings() {
	b := r.x.site()
	var items []listItem
	for _, s := range settingRows {
		value := s.show(b)
		if value == "" {
			value = "not set"
		}
		items = append(items, listItem{s.word, value, func() error { r.askSetting(s); return nil }})
	}
	r.pick("Settings of "+b.Name, "Pick one to change it; the old value stays in the journal.", items)
}

func (r *root) askSetting(s setting) {
	r.ask(paperTitle(s.word)+" ("+s.asks+"):", "", true, func(text string) error {
		text = strings.TrimSpace(record.Clean(text))
		if err := r.setBlock(r.x.block, s.name, text); err != nil {
			return err
		}
		r.openBlock()
		r.settings()
		return nil
	})
}

func paperTitle(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// setBlock writes one setting, replacing the one that stands.
func (r *root) setBlock(block record.ID, name, value string) error {
	var body record.Body = &record.BlockSet{Block: block, Setting: name, Value: value}
	if name == "name" {
		if value == "" {
			return &unit.Error{Given: value, Accepted: "a name"}
		}
		body = &record.BlockMade{Block: block, Name: value}
	}
	if name == "zone" {
		zone, err := readZone(r.x.Zones, value)
		if err != nil {
			return err
		}
		value, body = zone, &record.BlockSet{Block: block, Setting: name, Value: zone}
	}
	events, err := r.x.Book.Folded().Answer(record.Given{Bodies: []record.Body{body}, At: r.x.Now()})
	if err != nil {
		return err
	}
	_, err = r.x.write(record.NoStump, events...)
	return err
}

// pickBlock goes to another block or begins one.
func (r *root) pickBlock() {
	var items []listItem
	for _, b := range r.x.Book.Folded().List() {
		sums := r.x.summaries(b.ID)
		items = append(items, listItem{b.Name, fmt.Sprintf("%d stumps", len(sums)), func() error {
			r.x.block = b.ID
			r.openBlock()
			return nil
		}})
	}
	if len(items) > 1 {
		items = append(items, listItem{"two are one", "this block was begun twice, on two laptops", func() error { r.pickSame(); return nil }})
	}
	items = append(items, listItem{"a new block", "by rows and trees, or from a list", func() error {
		r.first = newFirst(r)
		r.on = onFirst
		return nil
	}})
	r.pick("Which block?", "", items)
}

// pickSame says that the block the screens are on and another are one: both were
// begun by hand, and their stumps, by row and tree, are the same.
func (r *root) pickSame() {
	here := r.x.site()
	var items []listItem
	for _, b := range r.x.Book.Folded().List() {
		if b.ID == here.ID {
			continue
		}
		items = append(items, listItem{b.Name, counted(len(r.x.summaries(b.ID)), "stump"), func() error {
			same := &record.Same{What: "block", A: here.ID.String(), B: b.ID.String()}
			events, err := r.x.Book.Folded().Answer(record.Given{Bodies: []record.Body{same}, At: r.x.Now()})
			if err != nil {
				return err
			}
			if _, err := r.x.write(record.NoStump, events...); err != nil {
				return err
			}
			r.x.block = r.x.Book.Folded().CanonicalBlock(here.ID)
			r.block = nil
			r.openBlock()
			r.x.say(fmt.Sprintf("Taken: %s and %s are one block.", here.Name, b.Name))
			return nil
		}})
	}
	r.pick("Which block is the same as "+here.Name+"?", "Stumps with the same row and tree become one; answers that disagree are shown. This stays.", items)
}
