package record

// LimbOff is the limb taken off last since the limbs were judged, nil if none
// was. What was said last holds, so that a judgement corrected afterwards is of
// what stays.
func (a *Attempt) LimbOff() *Said[LimbTakenOff] {
	for i := len(a.LimbsOff) - 1; i >= 0; i-- {
		if a.Nurse == nil || a.LimbsOff[i].Clock > a.Nurse.Clock {
			return &a.LimbsOff[i]
		}
	}
	return nil
}

// Limbs is the limbs below the graft as last judged and what has come off since
// before the graft, and the clear stem down to the nearest; ok is false where
// nobody judged them.
func (a *Attempt) Limbs() (left int, nearest Measure, ok bool) {
	if a.Nurse == nil {
		return 0, nearest, false
	}
	left, nearest = a.Nurse.What.Limbs, a.Nurse.What.Nearest
	if off := a.LimbOff(); off != nil {
		left, nearest = off.What.Left, off.What.Nearest
	}
	return left, nearest, true
}

// LimbsLeft is how many nurse limbs still stand.
func (a *Attempt) LimbsLeft() int {
	if off := LastOf(a.NurseOff); off != nil {
		return off.What.Left
	}
	left, _, _ := a.Limbs()
	return left
}
