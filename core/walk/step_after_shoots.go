package walk

import (
	"fmt"
	"strconv"
	"strings"

	"barkslip/core/record"
	"barkslip/core/unit"
)

func askShoots(c *Case, a *Ask) {
	var grafts []*record.Graft
	for _, g := range c.A.Living() {
		if !g.Waiting() {
			grafts = append(grafts, g)
		}
	}
	if len(grafts) == 0 {
		a.Question, a.Because = "No graft grows yet.", "Shoots are measured once there are any."
		a.choice(leaveIt("1"))
		return
	}
	var slots []string
	for _, g := range grafts {
		slots = append(slots, strconv.Itoa(g.Slot))
	}
	a.Question = "How long is the longest shoot of each graft?"
	a.Because = "Two measures on different days tell how fast it grows."
	e := &Entry{Asks: "lengths of grafts " + strings.Join(slots, ", ") + ", in that order"}
	base, refines := c.shootsBase()
	e.Refines = refines
	e.Read = func(text string) ([]record.Body, error) { return c.readShoots(text, grafts, base) }
	a.Entry = e
}

// shootsBase is today's visit, to be said more exactly, or each graft as it was.
func (c *Case) shootsBase() (record.Visited, []record.ID) {
	if v := c.visitToday(); v != nil {
		return record.Visited{Found: append([]record.Finding(nil), v.What.Found...)}, []record.ID{v.ID}
	}
	return *visitWith(record.Visited{}, c.A.Living(), ""), nil
}

func (c *Case) readShoots(text string, grafts []*record.Graft, base record.Visited) ([]record.Body, error) {
	long, err := c.readLengths(text, len(grafts), 6*unit.Metre)
	if err != nil {
		return nil, err
	}
	if len(long) != len(grafts) {
		return nil, &unit.Error{Given: text, Accepted: fmt.Sprintf("%d lengths, one for each graft that grows", len(grafts))}
	}
	v := record.Visited{Found: append([]record.Finding(nil), base.Found...)}
	var shorter []string
	for i, g := range grafts {
		for j := range v.Found {
			if v.Found[j].Slot == g.Slot {
				v.Found[j].Shoot = long[i]
			}
		}
		if was := c.shootBefore(g.Slot); long[i].Length < was-tapeSlack {
			shorter = append(shorter, fmt.Sprintf("graft %d was %s, now %s", g.Slot, c.length(was), c.length(long[i].Length)))
		}
	}
	if len(shorter) == 0 {
		return []record.Body{&v}, nil
	}
	return nil, &Doubt{"Shorter than before: " + strings.Join(shorter, "; ") + ".", []Choice{
		{Key: "1", Word: "as typed", Meaning: "it lost its tip, or was mismeasured", Bodies: []record.Body{&v}, Refines: c.refinesToday()},
		{Key: "2", Word: "leader broken", Meaning: "say what broke it", Go: StepBroken},
	}}
}

func (c *Case) refinesToday() []record.ID {
	_, ids := c.shootsBase()
	return ids
}

// tapeSlack is by how much two measures of one thing may differ.
const tapeSlack = 2 * unit.Millimetre

// shootBefore is a graft's shoot as last measured before today.
func (c *Case) shootBefore(slot int) (long unit.Length) {
	for _, v := range c.A.Visits {
		if f := record.FindingOf(&v, slot); f != nil && f.Shoot.Given() && !c.today(v.At) {
			long = f.Shoot.Length
		}
	}
	return long
}

func (c *Case) shootsWord(v record.Visited) string {
	var words []string
	for _, f := range v.Found {
		if f.Shoot.Given() {
			words = append(words, c.length(f.Shoot.Length))
		}
	}
	return strings.Join(words, ", ")
}

func doneShoots(c *Case) answer {
	if v := c.visitToday(); v != nil {
		return spoken(c.shootsWord(v.What))
	}
	return open
}

func lastShoots(c *Case) string {
	for i := len(c.A.Visits) - 1; i >= 0; i-- {
		if words := c.shootsWord(c.A.Visits[i].What); words != "" {
			return words + ", " + c.when(c.A.Visits[i].At)
		}
	}
	return ""
}
