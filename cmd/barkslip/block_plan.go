package main

import (
	"fmt"
	"time"

	"barkslip/core/list"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/store"
)

// planned is what adding a list comes to: events not yet written, and what they
// do.
type planned struct {
	events  []record.Event
	name    string // of the block
	added   int
	changed int
	set     int  // settings of a block that was there
	made    bool // the block is new
	zone    string
	guessed bool // the zone is this computer's
	placed  bool
}

// counts says what was done.
func (p planned) counts(rows int) string {
	if p.added+p.changed == 0 {
		says := fmt.Sprintf("nothing to add, all %s of the list are known.", count(rows, "stump"))
		if rows == 0 {
			says = "the list has no stumps."
		}
		if p.set > 0 {
			says += fmt.Sprintf(" %s changed.", count(p.set, "setting"))
		}
		return says
	}
	says := fmt.Sprintf("%s added, %d changed, %d known.", count(p.added, "stump"), p.changed, rows-p.added-p.changed)
	if p.set > 0 {
		says += fmt.Sprintf(" %s changed.", count(p.set, "setting"))
	}
	return says
}

// planList works out the events that bring a book to a list. Block is nil where
// it has to be made.
func planList(book *store.Book, block *record.Block, w wanted, rows list.List, now time.Time) (planned, error) {
	p := planned{name: w.name}
	var err error
	if block == nil {
		block, err = p.makeBlock(book, w, now)
	} else {
		err = p.setBlock(book, block, w, now)
	}
	if err != nil {
		return p, err
	}
	at := now.In(block.Zone)
	known := map[record.StumpID]bool{}
	if !p.made {
		stumps, err := book.Summaries(block.ID)
		if err != nil {
			return p, err
		}
		for _, s := range stumps {
			known[s.ID], known[s.ID.Trunk()] = true, true // a trunk with limbs has its record still
		}
	}
	for _, row := range rows.Rows {
		id, says := record.FromList(block.ID, row)
		if err := p.addStump(book, id, known[id], *says, rows.Columns, at); err != nil {
			return p, err
		}
	}
	return p, nil
}

// makeBlock begins the block with its settings.
func (p *planned) makeBlock(book *store.Book, w wanted, now time.Time) (*record.Block, error) {
	id, err := book.NewID()
	if err != nil {
		return nil, err
	}
	p.made = true
	settings := w.settings
	if !w.unitsSet {
		settings = append([][2]string{{"units", unit.US.String()}}, settings...)
	}
	for _, s := range settings {
		p.placed = p.placed || s[0] == "latitude"
		if s[0] == "zone" {
			p.zone = s[1]
		}
	}
	if p.zone == "" {
		if p.zone = localZone(); p.zone != "" {
			p.guessed = true
			settings = append(settings, [2]string{"zone", p.zone})
		}
	}
	block := &record.Block{ID: id, Name: w.name, Zone: time.UTC}
	if z, err := parseZone(p.zone); err == nil {
		block.Zone = z
	}
	at := now.In(block.Zone)
	p.events = append(p.events, record.Event{At: at, Body: &record.BlockMade{Block: id, Name: w.name}})
	for _, s := range settings {
		p.events = append(p.events, record.Event{At: at, Body: &record.BlockSet{Block: id, Setting: s[0], Value: s[1]}})
	}
	return block, nil
}

// setBlock changes the settings of a block that are given and differ.
func (p *planned) setBlock(book *store.Book, block *record.Block, w wanted, now time.Time) error {
	p.name = block.Name
	if len(w.settings) == 0 {
		return nil
	}
	events, err := book.Events(record.NoStump)
	if err != nil {
		return err
	}
	stands := map[string]string{}
	for _, old := range record.Live(events) {
		if set, ok := old.Body.(*record.BlockSet); ok && set.Block == block.ID {
			stands[set.Setting] = set.Value
		}
	}
	given := record.Given{At: now.In(block.Zone)}
	for _, s := range w.settings {
		if stands[s[0]] != s[1] {
			given.Bodies = append(given.Bodies, &record.BlockSet{Block: block.ID, Setting: s[0], Value: s[1]})
		}
	}
	p.set = len(given.Bodies)
	changed, err := book.Folded().Answer(given)
	p.events = append(p.events, changed...)
	return err
}

// addStump adds a stump, or answers anew what a list says of one that is there.
func (p *planned) addStump(book *store.Book, id record.StumpID, known bool, says record.StumpAdded, columns []string, at time.Time) error {
	stump := record.Fold(id, nil)
	if id.Limb > 0 && !known && !p.made {
		trunk, err := book.Stump(id.Trunk())
		if err != nil {
			return err
		}
		if err := trunk.TakesLimbs(); err != nil {
			return err
		}
	}
	if known {
		var err error
		if stump, err = book.Stump(id); err != nil {
			return err
		}
	}
	var before record.StumpAdded
	there := stump.Added != nil
	if there {
		before = stump.Added.What
	}
	now := takenIn(before, says, columns)
	switch {
	case there && now == before:
		return nil
	case there:
		p.changed++
	default:
		p.added++
	}
	added, err := stump.Answer(record.Given{Bodies: []record.Body{&now}, At: at, Zone: at.Location()})
	p.events = append(p.events, added...)
	return err
}

// takenIn is what is known of a stump once a line of a list is taken in:
// columns that the list lacks stay as they were.
func takenIn(before, says record.StumpAdded, columns []string) record.StumpAdded {
	after := before
	for _, column := range columns {
		switch column {
		case "across":
			after.Across = says.Across
		case "stock":
			after.Stock = says.Stock
		case "variety":
			after.Variety = says.Variety
		case "note":
			after.Note = says.Note
		}
	}
	return after
}
