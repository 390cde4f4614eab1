package due

// dueRules has for each kind of due while what it is asked, and its rule. To add
// a due: add its kind and name in due.go, its row here, its reason in
// due_why.go and its step in step_after.go.
var rules = [kinds]struct {
	while phase
	rule  rule
}{
	White:          {always, whiteDue},
	LookAgain:      {preparing, lookAgainDue},
	Look:           {preparing, lookDue},
	Graft:          {preparing, graftDue},
	AfterLook:      {sealedUp, afterLookDue},
	Reseal:         {sealedUp, resealDue},
	Earwigs:        {grafted, earwigsDue},
	Stake:          {grafted, stakeDue},
	Buds:           {grafted, budsDue},
	ConfirmTake:    {pushed, confirmDue},
	Sprouts:        {working, sproutsDue},
	KeepSprouts:    {over, keepSproutsDue},
	Leader:         {pushed, leaderDue},
	Tie:            {pushed, tieDue},
	Pinch:          {grafted, pinchDue},
	Twine:          {grafted, twineDue},
	SeasonsEnd:     {grafted, seasonsEndDue},
	TiesOff:        {grafted, tiesOffDue},
	HeadBack:       {pushed, headBackDue},
	SecondShootOff: {pushed, secondShootDue},
	NurseLimbsOff:  {grafted, nurseOffDue},
	TwineCheck:     {grafted, twineCheckDue},
	CutTwine:       {grafted, cutTwineDue},
	Regraft:        {over, regraftDue},
}
