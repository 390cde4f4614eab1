package due

import (
	"encoding/binary"
	"math"
	"slices"

	"barkslip/core/record"
)

// LotUse is the scions of a lot that a stump took in all its graftings, those that
// broke included; how those set fare; and what is done about them if the lot is
// held.
type LotUse struct {
	Lot     record.ID
	Scions  int
	Waiting int // neither moving nor dead as last seen
	Growing int
	Dead    int             // or gone with a grafting that is over
	Do      record.FollowUp // the answer that stands in the present grafting, "" for none
	Told    uint64          // clock of that answer
}

// Living is how many scions of the lot are not known to be dead.
func (u LotUse) Living() int { return u.Waiting + u.Growing }

// And is what a stump took of two lots that are one.
func (u LotUse) And(v LotUse) LotUse {
	if v.Told > u.Told {
		u.Do, u.Told = v.Do, v.Told
	}
	u.Scions, u.Waiting, u.Growing, u.Dead = u.Scions+v.Scions, u.Waiting+v.Waiting, u.Growing+v.Growing, u.Dead+v.Dead
	return u
}

// used is the wood of recorded lots that a stump took, in order of the lots; what
// its trunk took goes with the first of the limbs.
func used(s *record.Stump, b *record.Block) (out []LotUse) {
	all := map[record.ID]*LotUse{}
	count(all, s, b)
	if s.TellsTrunk() {
		count(all, s.Trunk, b)
	}
	for _, f := range s.Now().Followed { // maybe by the name that its lot goes on as
		if all[f.What.Lot] == nil {
			all[f.What.Lot] = &LotUse{Lot: f.What.Lot}
		}
		all[f.What.Lot].Do, all[f.What.Lot].Told = f.What.Do, f.Clock
	}
	for lot, u := range all {
		if lot != record.None {
			out = append(out, *u)
		}
	}
	slices.SortFunc(out, func(x, y LotUse) int { return x.Lot.Compare(y.Lot) })
	return out
}

// count adds what a stump took of each lot, and how it fares.
func count(all map[record.ID]*LotUse, s *record.Stump, b *record.Block) {
	for lot, n := range s.Used() {
		if all[lot] == nil {
			all[lot] = &LotUse{Lot: lot}
		}
		all[lot].Scions += n
	}
	for _, a := range s.Attempts {
		over := a != s.Now() || a.GivenUp != nil
		for _, g := range a.Grafts {
			switch u := all[g.Set.What.Lot]; {
			case over || !a.OutcomeOf(g, b).Died.IsZero():
				u.Dead++
			case g.Waiting():
				u.Waiting++
			default:
				u.Growing++
			}
		}
	}
}

// followCode is what is done about the scions of a lot, as it is packed: its place
// among the answers from 1, 0 for none.
func followCode(f record.FollowUp) byte { return byte(slices.Index(record.FollowUps, f) + 1) }

func packLot(dst []byte, u LotUse) []byte {
	dst = append(dst, u.Lot[:]...)
	dst = binary.BigEndian.AppendUint16(dst, uint16(min(u.Scions, math.MaxUint16)))
	dst = append(dst, byte(min(u.Waiting, 255)), byte(min(u.Growing, 255)), byte(min(u.Dead, 255)), followCode(u.Do))
	return binary.BigEndian.AppendUint64(dst, u.Told)
}

func unpackLot(p []byte) LotUse {
	u := LotUse{Lot: record.ID(p[:16]), Scions: int(binary.BigEndian.Uint16(p[16:])), Waiting: int(p[18]), Growing: int(p[19]), Dead: int(p[20])}
	if code := int(p[21]); code >= 1 && code <= len(record.FollowUps) {
		u.Do = record.FollowUps[code-1]
	}
	u.Told = binary.BigEndian.Uint64(p[22:])
	return u
}
