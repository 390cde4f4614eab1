package walk

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Hand is one of the seven things done at a scion, by the number under which it
// is recorded as seen: the six of record.CheckWords, then the slit.
type Hand int

// The seven. With the coach on they are asked in the order of handOrder.
const (
	HandWayUp Hand = iota + 1
	HandLongCut
	HandBackCut
	HandSlideIn
	HandNails
	HandProud
	HandSlot
)

// handOrder is the order in which the hands do them: the slot is ready before the
// scion goes in, and how far it goes in is settled before it is nailed.
var handOrder = [record.SlitItem]Hand{HandWayUp, HandLongCut, HandBackCut, HandSlot, HandSlideIn, HandProud, HandNails}

// Handwork is one of them on the scion in hand, with what the coach says of it.
type Handwork struct {
	Lesson
	Hand Hand
	Slot int       // of the scion in hand, from 1
	Cut  scion.Cut // of this scion
	Sums scion.Answer

	asks string // behind the name
	does string // what is done, with the figures of this scion
}

// Lesson is what the coach says at a question.
type Lesson struct {
	ID       string // no two questions of a stump that are apart have the same
	Name     string
	LookFor  string
	NotRight string
	Why      string
	Cautions []trade.Caution // of which one is said
	Facts    []trade.Fact
}

// Lesson is what the coach says here: of the thing in hand at the scion where
// there is one, else of the step.
func (a Ask) Lesson() Lesson {
	if a.Hand != nil {
		return a.Hand.Lesson
	}
	s := a.Step
	return Lesson{ID: string(s.ID), Name: s.Name, LookFor: s.LookFor, NotRight: s.NotRight, Why: s.Why, Cautions: s.Cautions, Facts: s.Facts}
}

// handwork is one of the seven on a scion of some wood that goes into a slot.
func (c *Case) handwork(hand Hand, slot int, w record.WoodChosen) *Handwork {
	h := c.handWords(hand)
	h.Hand, h.Slot, h.ID = hand, slot, fmt.Sprintf("%s/%d/%d", StepScion, slot, hand)
	if w.Thickness.Given() {
		h.Cut = w.Cut()
		if sums, err := scion.Cuts(h.Cut); err == nil {
			h.Sums = sums
			h.does = c.handDoes(h)
		}
	}
	return &h
}

// handWords is what is asked and said of each, whatever the scion.
func (c *Case) handWords(hand Hand) Handwork {
	items := c.checkItems()
	instead := items[hand-1].If
	switch hand {
	case HandWayUp:
		return Handwork{asks: "are the buds up, the second bud below the first?", Lesson: Lesson{Name: "way up",
			LookFor:  "At each node the leaf scar lowest, over it the second bud, and the first bud on top.",
			NotRight: instead,
			Why:      "Set upside down a scion dies, and nothing shows it until no bud moves weeks later.",
			Facts:    []trade.Fact{trade.WayUp}}}
	case HandLongCut:
		return Handwork{asks: "is it flat?", Lesson: Lesson{Name: "long cut",
			LookFor:  "One even slope of clean wood. A straight blade laid along it shows no light beneath.",
			NotRight: instead + " A step, a hollow or a wave shows as light under the blade.",
			Why:      "A flat face lies against the wood of the stump all along; a gap dries, and nothing joins across it.",
			Cautions: []trade.Caution{trade.KnifeHand}, Facts: []trade.Fact{trade.LongCutLength, trade.TipThickness}}}
	case HandBackCut:
		return Handwork{asks: "does cambium show at the tip?", Lesson: Lesson{Name: "back cut",
			LookFor:  "A thin wet line of cambium along both edges of the cut, between bark and wood.",
			NotRight: instead + " Only bark shows: it was too shallow. The tip is gone: it was too deep, and both cuts are made again.",
			Why:      "The tip lies between wood and bark, and can join on both sides only where both show cambium.",
			Cautions: []trade.Caution{trade.KnifeHand}, Facts: []trade.Fact{trade.BackCutTip, trade.BarkThickness}}}
	case HandSlot:
		return Handwork{asks: "does the slit stop where it was cut?", Lesson: Lesson{Name: "slot and slit",
			LookFor:  "Bark that lifts whole between the slits, wet and smooth beneath, and stays down outside them.",
			NotRight: "Bark has torn on below: answer no. How far it ran is asked once the scion is set, and the seal goes on to below its end.",
			Why:      "A slot close to the width of the scion holds it; a split left open dries the graft from beneath.",
			Cautions: []trade.Caution{trade.KnifeHand}, Facts: []trade.Fact{trade.SlotSpare, trade.SlotTight, trade.Slit}}}
	case HandSlideIn:
		return Handwork{asks: "did it go in easily?", Lesson: Lesson{Name: "slide in",
			LookFor:  "It slides down without force, and the bark beside the slot lies as it lay.",
			NotRight: "It sticks, or bark rises beside it: draw it out. " + instead,
			Why:      "Where bark is lifted beside the scion air gets in, and both dry.",
			Facts:    []trade.Fact{trade.SlotTight, trade.SlotSpare}}}
	case HandProud:
		return Handwork{asks: "does a little face show above?", Lesson: Lesson{Name: "a little proud",
			LookFor:  "A little of the long cut over the top of the stump, the same on both edges.",
			NotRight: "None shows. " + instead + " Much shows: slide it farther down.",
			Why:      "With a little to spare it still fits where the cut is a little uneven. It is settled now: a nailed scion cannot be moved.",
			Facts:    []trade.Fact{trade.LittleProud, trade.ProudBy}}}
	}
	return Handwork{asks: "do they hold it?", Lesson: Lesson{Name: "two nails",
		LookFor:  "Each through flap and scion into the wood. Touched with a finger, the scion does not move.",
		NotRight: instead + " It rocks: a nail missed the wood. The tip splits: the nail was too low.",
		Why:      "The upper one holds it against wind and birds, the lower one keeps the tip against the wood.",
		Cautions: []trade.Caution{trade.HammerNails, trade.NailsStay}, Facts: []trade.Fact{trade.TwoNails, trade.NailPlaces, trade.NailSizes}}}
}

// handDoes is what is done, with the figures of the scion.
func (c *Case) handDoes(h Handwork) string {
	long, sums := c.usual(h.Cut.LongCut, trade.LongCut), h.Sums
	switch h.Hand {
	case HandWayUp:
		return fmt.Sprintf("Hold the piece as it grew. It is %s thick; its lower %s is for the long cut.", c.length(h.Cut.Thick), long)
	case HandLongCut:
		return fmt.Sprintf("%s thick: a cut %s long in one stroke, from the bark down to %s left at the tip.", c.length(h.Cut.Thick), long, c.length(h.Cut.Tip))
	case HandBackCut:
		return fmt.Sprintf("The last %s of the other side, through the bark to an edge at the tip.", c.usual(h.Cut.Back, trade.BackCut))
	case HandSlot:
		return fmt.Sprintf("Two slits %s down from the top, %s to %s apart for this scion, and the bark between them lifted.", c.B.Units.Figure(trade.SlitLong),
			c.length(sums.Slot.Least), c.length(sums.Slot.Most))
	case HandSlideIn:
		return "Down between wood and lifted bark, the long cut against the wood, the bark over its back."
	case HandProud:
		return fmt.Sprintf("Stop with %s of the long cut above the top of the stump.", c.length(trade.Proud))
	}
	return fmt.Sprintf("One %s below the top of the long cut, a nail of %s; one at %s, a nail of %s.", c.length(sums.Nails[0].FromTop), c.soldNail(sums.Nails[0]),
		c.length(sums.Nails[1].FromTop), c.soldNail(sums.Nails[1]))
}

// usual prints a length of the usual size as the trade's figure is told.
func (c *Case) usual(l, figure unit.Length) string {
	if l == figure {
		return c.B.Units.Figure(l)
	}
	return c.length(l)
}

// soldNail is a nail as it is reckoned, and as it is bought where that is longer.
func (c *Case) soldNail(n scion.Nail) string {
	least := c.length(n.Length)
	if sold, ok := trade.NailSold(n.Length, c.B.Units); ok && c.length(sold) != least {
		return fmt.Sprintf("%s (sold as %s)", least, c.length(sold))
	}
	return least
}
