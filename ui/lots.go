package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// lots shows the lots of scion wood; picking one says what can be put down
// about it.
func (r *root) lots() {
	var items []listItem
	lots := r.x.Book.Folded().LotList()
	slices.SortStableFunc(lots, func(a, b *record.Lot) int { return heldRank(a) - heldRank(b) })
	for _, l := range lots {
		items = append(items, listItem{l.Received.What.Name, r.lotWords(l), func() error { r.lot(l); return nil }})
	}
	items = append(items, listItem{"receive a lot", "name, variety, day cut, sticks, thickness", func() error { r.receiveLot(); return nil }})
	r.pick("Lots of scion wood", trade.MovingWood.Says, items)
}

func heldRank(l *record.Lot) int {
	if l.Held != nil && l.Held.What.Held {
		return 1
	}
	return 0
}

// lotWords is a lot in a line: what speaks against it first.
func (r *root) lotWords(l *record.Lot) string {
	w, b := l.Received.What, r.x.site()
	words := append([]string{w.Variety}, l.Doubts(b, b.Day(r.x.now()))...)
	if w.Thickness.Given() {
		words = append(words, b.Units.Length(w.Thickness.Length))
	}
	if w.Sticks > 0 {
		words = append(words, counted(w.Sticks, "stick"))
	}
	if w.Cut != 0 {
		words = append(words, "cut "+w.Cut.Long())
	}
	if n := len(l.Readings); n > 0 {
		words = append(words, fmt.Sprintf("store %s on %s", b.Units.Temperature(l.Readings[n-1].What.Temp.Temperature), b.Day(l.Readings[n-1].At).Short()))
	}
	return strings.Join(words, ", ")
}

// lot is what can be put down about one lot.
func (r *root) lot(l *record.Lot) {
	hold := listItem{"hold it", "not to be used; say why", func() error { r.holdLot(l); return nil }}
	if heldRank(l) > 0 {
		hold = listItem{"let it go", "it may be used again", func() error {
			return r.aboutLot(&record.LotHeld{Lot: l.ID}, "lot "+l.Received.What.Name+" may be used again")
		}}
	}
	r.pick("Lot "+l.Received.What.Name, r.lotWords(l), []listItem{
		{"read the store", "how warm it is where the wood is kept", func() error { r.readStore(l); return nil }}, hold,
		{"all lots", "back to the list", func() error { r.lots(); return nil }},
	})
}

func (r *root) readStore(l *record.Lot) {
	b := r.x.site()
	r.ask("How warm is the store (such as "+b.Units.Temperature(unit.Fahrenheit(35))+")?", "", true, func(text string) error {
		text = strings.TrimSpace(record.Clean(text))
		t, err := unit.ParseTemperature(text, b.Units.BareTemperature())
		if err != nil {
			return err
		}
		return r.aboutLot(&record.StoreRead{Lot: l.ID, Temp: record.Degrees{Temperature: t, Typed: text}}, "the store of "+l.Received.What.Name+" stands at "+b.Units.Temperature(t))
	})
}

func (r *root) holdLot(l *record.Lot) {
	r.ask("Why is it held?", "", true, func(text string) error {
		why := strings.TrimSpace(record.Clean(text))
		if why == "" {
			return &unit.Error{Given: text, Accepted: "a reason, such as mouldy"}
		}
		return r.aboutLot(&record.LotHeld{Lot: l.ID, Held: true, Why: why}, "lot "+l.Received.What.Name+" is held")
	})
}

// aboutLot puts down something about a lot, in place of the answer that stood,
// and goes back to the lots.
func (r *root) aboutLot(body record.Body, words string) error {
	events, err := r.x.Book.Folded().Answer(record.Given{Bodies: []record.Body{body}, At: r.x.now()})
	if err != nil {
		return err
	}
	if _, err := r.x.write(record.NoStump, events...); err != nil {
		return err
	}
	r.lots()
	r.x.say("Taken: " + words + ".")
	return nil
}

// lotQuestions are asked one after another of a lot that came in; Enter leaves
// out what is not known.
var lotQuestions = []struct {
	asks string
	take func(b *record.Block, text string, lot *record.LotReceived) error
}{
	{"Name of the lot:", func(_ *record.Block, text string, lot *record.LotReceived) error {
		if lot.Name = text; text == "" {
			return &unit.Error{Given: text, Accepted: "a name, such as L-27"}
		}
		return nil
	}},
	{"Variety on the label:", func(_ *record.Block, text string, lot *record.LotReceived) error {
		if lot.Variety = text; text == "" {
			return &unit.Error{Given: text, Accepted: "the variety on the label"}
		}
		return nil
	}},
	{"Day it was cut, such as 2027-02-14 (Enter if not known):", func(_ *record.Block, text string, lot *record.LotReceived) (err error) {
		if text != "" {
			lot.Cut, err = unit.ParseDate(text)
		}
		return err
	}},
	{"How many sticks (Enter if not counted):", func(_ *record.Block, text string, lot *record.LotReceived) error {
		if text == "" {
			return nil
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 || n > mostSticks {
			return &unit.Error{Given: text, Accepted: fmt.Sprintf("a whole number from 1 to %d", mostSticks)}
		}
		lot.Sticks = n
		return nil
	}},
	{"How thick (Enter if they differ):", func(b *record.Block, text string, lot *record.LotReceived) (err error) {
		if text != "" {
			lot.Thickness, err = walk.ReadThickness(text, b.Units)
		}
		return err
	}},
}

const mostSticks = 100_000

// receiveLot asks for a new lot.
func (r *root) receiveLot() {
	lot := &record.LotReceived{}
	if _, err := r.x.Random.Read(lot.Lot[:]); err != nil {
		r.x.fail(err)
		return
	}
	r.askLot(lot, 0)
}

func (r *root) askLot(lot *record.LotReceived, at int) {
	q, likely := lotQuestions[at], ""
	if at == 1 {
		likely = r.x.site().Variety
	}
	r.ask(q.asks, likely, true, func(text string) error {
		if err := q.take(r.x.site(), strings.TrimSpace(record.Clean(text)), lot); err != nil {
			return err
		}
		if at+1 < len(lotQuestions) {
			r.askLot(lot, at+1)
			return nil
		}
		return r.aboutLot(lot, "lot "+lot.Name+", "+lot.Variety)
	})
}
