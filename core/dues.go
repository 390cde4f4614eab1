package core

// dueRules has for each kind of due while what it is asked, and its rule. To add
// a due: add its kind and name in due.go, its row here, its reason in
// due_why.go and its step in step_after.go.
var dueRules = [dueKinds]struct {
	while phase
	rule  dueRule
}{
	DueWhite:          {always, whiteDue},
	DueLookAgain:      {preparing, lookAgainDue},
	DueLook:           {preparing, lookDue},
	DueGraft:          {preparing, graftDue},
	DueAfterLook:      {sealedUp, afterLookDue},
	DueReseal:         {sealedUp, resealDue},
	DueEarwigs:        {grafted, earwigsDue},
	DueStake:          {grafted, stakeDue},
	DueBuds:           {grafted, budsDue},
	DueConfirmTake:    {pushed, confirmDue},
	DueSprouts:        {working, sproutsDue},
	DueKeepSprouts:    {over, keepSproutsDue},
	DueLeader:         {pushed, leaderDue},
	DueTie:            {pushed, tieDue},
	DuePinch:          {grafted, pinchDue},
	DueTwine:          {grafted, twineDue},
	DueSeasonsEnd:     {grafted, seasonsEndDue},
	DueTiesOff:        {grafted, tiesOffDue},
	DueHeadBack:       {pushed, headBackDue},
	DueSecondShootOff: {pushed, secondShootDue},
	DueNurseLimbsOff:  {grafted, nurseOffDue},
	DueTwineCheck:     {grafted, twineCheckDue},
	DueCutTwine:       {grafted, cutTwineDue},
	DueRegraft:        {over, regraftDue},
}
