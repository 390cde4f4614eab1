package first

import (
	"fmt"
	"strconv"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// make writes the block, its settings and its stumps in one transaction.
func (f *Screen) make() (part.Msgs, error) {
	ended := f.x.OwnDay != nil && f.x.OwnDay()
	if ended { // work of a real block is dated by the real day
		if err := f.x.EndOwnDay(); err != nil {
			return nil, err
		}
	}
	var id record.ID
	if _, err := f.x.Random.Read(id[:]); err != nil {
		return nil, err
	}
	bodies := []record.Body{&record.BlockMade{Block: id, Name: f.given["name"]}}
	if ended { // what stood in the book until now stays made up, and apart
		bodies = append(bodies, f.x.Book.Folded().AllMadeUp()...)
	}
	set := func(name, value string) {
		if value != "" && value != "-" {
			bodies = append(bodies, &record.BlockSet{Block: id, Setting: name, Value: value})
		}
	}
	lat, lon, _ := part.ReadPosition(f.given["place"])
	set("units", f.units().String())
	set("zone", f.given["zone"])
	set("latitude", lat)
	set("longitude", lon)
	set("variety", f.given["variety"])
	set("graft-height", f.height())
	set("species", "walnut")
	events, err := f.stumps(id)
	if err != nil {
		return nil, err
	}
	all := make([]record.Event, 0, len(bodies)+len(events))
	for _, b := range bodies {
		all = append(all, record.Event{At: f.x.Now(), Body: b})
	}
	if _, err := f.x.Write(append(all, events...)...); err != nil {
		return nil, err
	}
	said := fmt.Sprintf("%s: %s. Everything can be changed with o.", f.given["name"], part.Counted(len(events), "stump"))
	if ended {
		said += " The made-up day is over: the clock is yours. The made-up block is apart; b shows it."
	}
	return part.Msgs{part.OpenBlock{Block: id}, part.Say{Text: said}}, nil
}

// height is the graft height with a unit.
func (f *Screen) height() string {
	l, err := unit.ParseLength(f.given["graft-height"], f.units().Bare())
	if err != nil {
		return ""
	}
	return f.units().Length(l)
}

func (f *Screen) stumps(id record.ID) ([]record.Event, error) {
	at := f.x.Now()
	var events []record.Event
	add := func(s record.StumpID, body *record.StumpAdded) {
		events = append(events, record.Event{At: at, Stump: s, Body: body})
	}
	if f.list {
		l, err := f.readList(f.given["file"])
		if err != nil {
			return nil, err
		}
		for _, r := range l.Rows {
			add(record.FromList(id, r))
		}
		return events, nil
	}
	rows, _ := strconv.Atoi(f.given["rows"])
	trees, _ := strconv.Atoi(f.given["trees"])
	for r := 1; r <= rows; r++ {
		for t := 1; t <= trees; t++ {
			add(record.StumpID{Block: id, Row: uint16(r), Tree: uint16(t)}, &record.StumpAdded{})
		}
	}
	return events, nil
}
