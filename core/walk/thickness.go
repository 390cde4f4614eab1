package walk

import (
	"fmt"
	"slices"
	"strings"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Unfit says that wood is thinner or thicker than suits the stump; empty where
// it suits, or where its thickness or the stump's size is not known. It is a
// warning: the classes of thickness are from memory.
func (c *Case) Unfit(w record.WoodChosen) string {
	word, fit := c.unfit(w)
	if word == "" {
		return ""
	}
	return fmt.Sprintf("%s wood is %s for a stump %s across: %s to %s suits it (%s).", c.length(w.Thickness.Length), word,
		c.length(c.Found.Across), c.length(fit.Least), c.length(fit.Most), trade.ThicknessClasses.Standing)
}

// unfit is thin or stout, empty where wood suits the stump.
func (c *Case) unfit(w record.WoodChosen) (word string, fit scion.FitAnswer) {
	if !w.Thickness.Given() || c.Found.Across <= 0 {
		return "", fit
	}
	fit, err := scion.Fit(scion.Wood{Across: c.Found.Across, Thick: w.Thickness.Length})
	switch {
	case err != nil:
		return "", fit
	case fit.Thin:
		return "thin", fit
	case fit.Stout:
		return "stout", fit
	}
	return "", fit
}

// otherWood takes other wood for the scion of one slot.
func (c *Case) otherWood(slot int) Choice {
	return Choice{Key: "8", Word: "other wood", Meaning: "for this scion alone", Entry: &Entry{Text: true,
		Asks: "its thickness, or its lot or variety and thickness, such as " + c.eg("Lantern 7/16", "Lantern 1.1"),
		Read: func(text string) ([]record.Body, error) { return c.readOtherWood(slot, text) }}}
}

// readOtherWood reads a thickness, a lot or a variety, or one of these with a
// thickness behind it: "7/16", "L-27", "Lantern 7/16".
func (c *Case) readOtherWood(slot int, text string) ([]record.Body, error) {
	w := c.woodFor(slot)
	w.Slot, w.Pieces = slot, nil
	name, thickness := c.nameAndThickness(record.Clean(text))
	if name != "" {
		w.Lot, w.Variety, w.Thickness = record.None, name, record.Measure{}
		if l := c.lotNamed(name); l != nil {
			w.Lot, w.Variety, w.Thickness = l.ID, l.Received.What.Variety, l.Received.What.Thickness
		}
	}
	if thickness != "" {
		m, err := ReadThickness(thickness, c.B.Units)
		if err != nil {
			return nil, err
		}
		w.Thickness = m
	}
	if !w.Thickness.Given() {
		return nil, &unit.Error{Given: text, Accepted: "its thickness too, such as " + c.eg("Lantern 7/16", "Lantern 1.1")}
	}
	if _, err := scion.Cuts(w.Cut()); err != nil {
		return nil, err
	}
	return []record.Body{&w}, nil
}

// nameAndThickness parts the name of a lot or a variety from a length behind it.
func (c *Case) nameAndThickness(text string) (name, thickness string) {
	words := strings.Fields(text)
	for i := len(words); i > 0; i-- {
		if name := strings.Join(words[:i], " "); c.lotNamed(name) != nil {
			return name, strings.Join(words[i:], " ")
		}
	}
	for i := range words {
		behind := strings.Join(words[i:], " ")
		if _, err := record.ReadMeasure(behind, c.B.Units.Bare()); err == nil {
			return strings.Join(words[:i], " "), behind
		}
	}
	return strings.Join(words, " "), ""
}

// lotNamed is the newest lot of a name, nil if there is none.
func (c *Case) lotNamed(name string) *record.Lot {
	lots := c.Book.LotList()
	if i := slices.IndexFunc(lots, func(l *record.Lot) bool { return strings.EqualFold(l.Received.What.Name, strings.TrimSpace(name)) }); i >= 0 {
		return lots[i]
	}
	return nil
}

// broke offers to say that a scion broke, or was dropped, before it is sealed:
// its slot gets another, and the wood of both is used. ok is false where none
// is set, or they are sealed.
func (c *Case) broke(key string) (ch Choice, ok bool) {
	if len(c.A.Grafts) == 0 || c.A.IsSealed() {
		return ch, false
	}
	ch = Choice{Key: key, Word: "one broke", Meaning: "or was dropped: set another"}
	which := &Doubt{Says: "Which one broke or was dropped? Its wood is counted, and another is set."}
	for i, g := range c.A.Grafts {
		w := Choice{Key: fmt.Sprint((i + 1) % 10), Word: fmt.Sprintf("scion %d", g.Slot), Meaning: c.slotWords(g.Slot),
			Bodies: []record.Body{&record.ScionBroke{Slot: g.Slot, Lot: g.Set.What.Lot}}}
		if i < 10 {
			which.Ways = append(which.Ways, w)
		}
	}
	ch.Doubt = which
	return ch, true
}

// slotWords is where a slot is: at 23°, NNE.
func (c *Case) slotWords(slot int) string {
	if s := c.A.Slots; s != nil && slot <= len(s.What.Slots) {
		return "at " + s.What.Slots[slot-1].Bearing.Words()
	}
	return ""
}
