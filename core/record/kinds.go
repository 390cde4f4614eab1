package record

// kinds lists every kind of event by its code in the packed form. Codes are
// never changed or used again; new kinds go last.
var kinds = []func() Body{
	0:  func() Body { return &Foreign{} },
	1:  func() Body { return &BlockMade{} },
	2:  func() Body { return &BlockSet{} },
	3:  func() Body { return &Same{} },
	4:  func() Body { return &StumpAdded{} },
	5:  func() Body { return &NurseJudged{} },
	6:  func() Body { return &CutBack{} },
	7:  func() Body { return &Gashed{} },
	8:  func() Body { return &Drilled{} },
	9:  func() Body { return &Looked{} },
	10: func() Body { return &FreshCut{} },
	11: func() Body { return &StumpMeasured{} },
	12: func() Body { return &SlotsMarked{} },
	13: func() Body { return &WoodChosen{} },
	14: func() Body { return &ScionSet{} },
	15: func() Body { return &Sealed{} },
	16: func() Body { return &StillWet{} },
	17: func() Body { return &PaintedWhite{} },
	18: func() Body { return &RingSet{} },
	19: func() Body { return &SealChecked{} },
	20: func() Body { return &Resealed{} },
	21: func() Body { return &Staked{} },
	22: func() Body { return &Visited{} },
	23: func() Body { return &SproutsRubbed{} },
	24: func() Body { return &SproutsKept{} },
	25: func() Body { return &LeaderChosen{} },
	26: func() Body { return &Pinched{} },
	27: func() Body { return &Tied{} },
	28: func() Body { return &LeaderBroken{} },
	29: func() Body { return &Twined{} },
	30: func() Body { return &TwineChecked{} },
	31: func() Body { return &TwineMoved{} },
	32: func() Body { return &TwineCut{} },
	33: func() Body { return &TapesLoosened{} },
	34: func() Body { return &HeadedBack{} },
	35: func() Body { return &RivalCut{} },
	36: func() Body { return &SecondShootOff{} },
	37: func() Body { return &NurseLimbOff{} },
	38: func() Body { return &SeasonsEnd{} },
	39: func() Body { return &Failed{} },
	40: func() Body { return &GivenUp{} },
	41: func() Body { return &Untied{} },
	42: func() Body { return &Noted{} },
	43: func() Body { return &Withdrawn{} },
	44: func() Body { return &AgainstAdvice{} },
	45: func() Body { return &LotReceived{} },
	46: func() Body { return &StoreRead{} },
	47: func() Body { return &LotHeld{} },
	48: func() Body { return &DayWeather{} },
	49: func() Body { return &LimbTakenOff{} },
	50: func() Body { return &SlotEmpty{} },
	51: func() Body { return &WashedOff{} },
	52: func() Body { return &AnotherYear{} },
	53: func() Body { return &ScionBroke{} },
	54: func() Body { return &RainedHard{} },
	55: func() Body { return &ScionSeen{} },
	56: func() Body { return &Aware{} },
	57: func() Body { return &WorkGiven{} },
	58: func() Body { return &LotFollowed{} },
}

var kindByName = func() map[string]uint64 {
	m := make(map[string]uint64, len(kinds))
	for code, make := range kinds[1:] {
		m[make().Kind()] = uint64(code + 1)
	}
	return m
}()

func kindCode(b Body) uint64 {
	if _, ok := b.(*Foreign); ok {
		return 0
	}
	return kindByName[b.Kind()]
}

// newBody is an empty body of a kind, nil for an unknown one.
func newBody(code uint64) Body {
	if code >= uint64(len(kinds)) {
		return nil
	}
	return kinds[code]()
}
