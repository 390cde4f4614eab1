package record

import "barkslip/core/unit"

// LoadRates are the rates by which a load is reckoned that a block sets of its own;
// a rate at nought is the usual one.
type LoadRates struct {
	PerStick int     // scions that a 12 in stick gives
	Nails    int     // a scion
	Wrap     int     // squares a scion, those over the top apart
	Stakes   int     // a stump
	Ties     int     // a stump in its first season
	Sealer   Measure // thickness of both coats together
	Paint    Measure // thickness of what is put on
	Tape     Measure // a tie
	Knot     Measure // of twine, for the knot of a loop
}

func init() {
	count := func(into func(*LoadRates) *int, most int) func(*Block, string) error {
		return func(b *Block, v string) error { return whole(v, 1, most, into(&b.Load)) }
	}
	long := func(into func(*LoadRates) *Measure, most unit.Length, accepted string) func(*Block, string) error {
		return func(b *Block, v string) error {
			var m Measure
			if err := length(v, &m); err != nil {
				return err
			}
			if m.Length <= 0 || m.Length > most {
				return &unit.Error{Given: v, Accepted: accepted}
			}
			*into(&b.Load) = m
			return nil
		}
	}
	const coat, strand = "a thickness above 0 and up to 10 mm", "a length above 0 and up to 10 ft"
	settings["load-sticks"] = count(func(r *LoadRates) *int { return &r.PerStick }, 20)
	settings["load-nails"] = count(func(r *LoadRates) *int { return &r.Nails }, 10)
	settings["load-wrap"] = count(func(r *LoadRates) *int { return &r.Wrap }, 20)
	settings["load-stakes"] = count(func(r *LoadRates) *int { return &r.Stakes }, 10)
	settings["load-ties"] = count(func(r *LoadRates) *int { return &r.Ties }, 50)
	settings["load-sealer"] = long(func(r *LoadRates) *Measure { return &r.Sealer }, 10*unit.Millimetre, coat)
	settings["load-paint"] = long(func(r *LoadRates) *Measure { return &r.Paint }, 10*unit.Millimetre, coat)
	settings["load-tape"] = long(func(r *LoadRates) *Measure { return &r.Tape }, 10*unit.Foot, strand)
	settings["load-twine"] = long(func(r *LoadRates) *Measure { return &r.Knot }, 10*unit.Foot, strand)
}
