package record

// Taken is an event that does not stand because it was taken back, with what took
// it back.
type Taken struct{ What, By Event }

// TakenBack is what of a stump's events is taken back, each once, in order. What
// was put back again stands and is not among it, nor is the earlier wording of an
// answer that is taken back with it.
func TakenBack(events []Event) (out []Taken) {
	sorted := InOrder(events)
	void := voided(sorted)
	byID := make(map[ID]Event, len(sorted))
	for _, e := range sorted {
		byID[e.ID] = e
	}
	replaced, seen := map[ID]bool{}, map[ID]bool{}
	for i, e := range sorted {
		w, taking := e.Body.(*Withdrawn)
		if !taking || void[i] {
			continue
		}
		what, known := byID[w.Of]
		if _, again := what.Body.(*Withdrawn); !known || again || seen[what.ID] || e.Compare(what) < 0 {
			continue
		}
		seen[what.ID] = true
		out = append(out, Taken{what, e})
		for _, id := range what.Replaces {
			replaced[id] = true
		}
	}
	kept := out[:0]
	for _, t := range out {
		if !replaced[t.What.ID] {
			kept = append(kept, t)
		}
	}
	return kept
}
