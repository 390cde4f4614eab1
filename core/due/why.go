package due

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// Why says in one sentence what the due counts from.
func (d Due) Why(b *record.Block) string {
	says := dueReasons[d.Kind].says
	text := says[min(int(d.Hint), len(says)-1)]
	out := make([]byte, 0, len(text)+16)
	for {
		plain, rest, more := strings.Cut(text, "{")
		out = append(out, plain...)
		if !more {
			return string(out)
		}
		name, after, _ := strings.Cut(rest, "}")
		out, text = d.fill(out, name, b), after
	}
}

// fill appends what a name in braces stands for.
func (d Due) fill(out []byte, name string, b *record.Block) []byte {
	since, opens, by := d.Since.In(b.Zone), d.Opens.In(b.Zone), d.By.In(b.Zone)
	switch name {
	case "since":
		return since.AppendFormat(out, dayMonth)
	case "at":
		return since.AppendFormat(out, hourMinute)
	case "year":
		return since.AppendFormat(out, "2006")
	case "opens":
		return opens.AppendFormat(out, dayMonth)
	case "openyear":
		return opens.AppendFormat(out, "2006")
	case "from":
		return opens.AppendFormat(out, hourMinute)
	case "month":
		return opens.AppendFormat(out, "January")
	case "by":
		return by.AppendFormat(out, dayMonth)
	case "byyear":
		return by.AppendFormat(out, "2006")
	case "till":
		return by.AppendFormat(out, hourMinute)
	case "monthby":
		return by.AppendFormat(out, "January")
	case "wait":
		return strconv.AppendInt(out, int64(b.WaitDays()), 10)
	case "waited":
		return strconv.AppendInt(out, int64(b.WaitDays()+trade.GraftWithin), 10)
	case "shoot":
		return append(out, b.Units.Length(trade.FirstTieShoot)...)
	case "long":
		return append(out, b.Units.Length(trade.TwineShoot)...)
	case "foot":
		return append(out, b.Units.Length(trade.TieEvery)...)
	}
	return append(append(append(out, '{'), name...), '}')
}

const (
	dayMonth   = "2 Jan"
	hourMinute = "15:04"
)

// Facts is what the due rests on.
func (d Due) Facts() []trade.Fact { return dueReasons[d.Kind].facts }

// reason is what a kind of due counts from, a sentence for each hint, and the
// facts behind it.
type reason struct {
	says  []string
	facts []trade.Fact
}

func because(facts []trade.Fact, says ...string) reason { return reason{says, facts} }

func on(facts ...trade.Fact) []trade.Fact { return facts }

var dueReasons = [kinds]reason{
	White: because(on(trade.WhiteIn, trade.DarkSealer, trade.StillWet),
		fmt.Sprintf("Sealed {since} at {at}: white %d to %d hours after, once the sealer is dry.", trade.WhiteOpensHours, trade.WhiteByHours),
		fmt.Sprintf("It was wet still on {since} at {at}: look again %d minutes later.", trade.StillWetMinutes),
		"The clock runs out in the dark: white an hour after sunrise.",
		"Sealed {since} at {at}: the day's sun would harm the dark sealer before the 3 hours are up."),
	LookAgain: because(on(trade.Bleeding, trade.DryFace, trade.WaitDays),
		"Seen {since} and told to wait until {opens} {from}: look within a day of that.",
		"Cut, gashed or drilled {since} at {at}: the sap has settled by {from}, and the look is due within the hour.",
		"Wiped and damp {since} at {at}: see whether it wets again at {from}, within the hour."),
	Look: because(on(trade.DaysToGraft, trade.Bleeding),
		"Cut back {since}: look from {wait} days on, by {waited} days.",
		"Cut back {since}, and told at the last look to wait until {by} {till}."),
	Graft: because(on(trade.DryFace, trade.BarkSticks, trade.DaysToGraft),
		"Found ready {since} at {at}: graft it the same day, or judge it anew."),
	AfterLook: because(on(trade.SealLook),
		fmt.Sprintf("Sealed {since}: look at the seal %d to %d days on.", trade.AfterLookDays, trade.AfterLookBy)),
	Reseal: because(on(trade.BareCracks, trade.SealLook),
		fmt.Sprintf("Sealed bare {since}: bare sealer cracks, so seal again %d to %d days on.", trade.ResealDays, trade.ResealBy),
		"Seen cracked {since}: seal it again by {by}."),
	Earwigs: because(on(trade.Earwigs),
		fmt.Sprintf("Set {since}: earwigs eat opening buds, so a fresh ring %d to %d days on.", trade.EarwigOpens, trade.EarwigBy),
		fmt.Sprintf("The ring is of {since}: a new one every %d days until the shoots harden.", trade.EarwigDays)),
	Stake: because(on(trade.StakeTime, trade.BudsMove),
		fmt.Sprintf("Set {since}: stake it from %d days on; nothing pushes yet.", trade.StakeDays),
		fmt.Sprintf("Set {since} and pushing: the stake stands by {by}, at most %d days after the first push.", trade.StakeAfterPush)),
	Buds: because(on(trade.BudsMove, trade.BudRounds, trade.ScratchTest),
		fmt.Sprintf("Set {since}: buds begin to move %d to %d days on.", trade.BudsDays, trade.BudsBy),
		fmt.Sprintf("Seen {since} with grafts not moving: look again every %d days.", trade.BudsEvery),
		fmt.Sprintf("Not moving when last seen {since}: from day %d after setting scratch the bark, brown is dead.", trade.ScratchFrom),
		fmt.Sprintf("Green when scratched: left until day %d after setting, {opens}.", trade.GreenWaits),
		fmt.Sprintf("Still not moving past day %d after setting: scratch again and settle it.", trade.GreenWaits)),
	ConfirmTake: because(on(trade.MovingNotTaking, trade.CallusDays),
		fmt.Sprintf("First push seen {since}: taken is alive and growing %d days after.", trade.TakenDays)),
	Sprouts: because(on(trade.StockSprouts, trade.SproutRounds),
		fmt.Sprintf("Set {since}: sprouts come from %d days on.", trade.SproutsAfterSet),
		fmt.Sprintf("Cut back {since}: sprouts come from %d days on.", trade.SproutsAfterCut),
		fmt.Sprintf("Last rubbed {since}: every %d days until a leader is chosen.", trade.SproutsEvery),
		fmt.Sprintf("Last rubbed {since}: every %d days once a leader is chosen.", trade.SproutsEveryLeader),
		fmt.Sprintf("Last rubbed {since}: every %d days in later years.", trade.SproutsEveryLater),
		fmt.Sprintf("Sprouts start with the leaf, {opens}, and are rubbed every %d days from then.", trade.SproutsEveryLater)),
	KeepSprouts: because(on(trade.KeepSprouts, trade.SproutsUsed),
		fmt.Sprintf("The last graft was lost {since}: keep %d to %d sprouts by {by}, so that the tree lives.", trade.SproutsKeptLeast, trade.SproutsKeptMost)),
	Leader: because(on(trade.Leader, trade.LeaderTime),
		fmt.Sprintf("First push seen {since}: choose the leader %d to %d days after.", trade.LeaderDays, trade.LeaderBy),
		"The leader was lost {since}: choose another by {by}."),
	Tie: because(on(trade.Ties, trade.TieTime),
		fmt.Sprintf("First push seen {since}: the first tie goes on %d days after.", trade.FirstTieDays),
		"Pushing since {since}: the shoot measures {shoot} by {opens}, enough for its first tie.",
		"Last tied {since}: by the growth measured it has made another {foot} by {opens}.",
		fmt.Sprintf("Last tied {since}: the next %d days on while shoots run.", trade.TieDaysEarly),
		fmt.Sprintf("Last tied {since}: the next %d days on, late in the summer.", trade.TieDaysLate),
		"Shoots start again with the leaf, {opens}: tie the leader at every {foot}."),
	Pinch: because(on(trade.Leader, trade.PinchTime),
		fmt.Sprintf("The leader was chosen {since}: pinch its rivals within %d days.", trade.PinchBy),
		fmt.Sprintf("Last pinched {since}: again %d to %d days on.", trade.PinchEvery, trade.PinchEveryBy)),
	Twine: because(on(trade.Twine, trade.TwineLoop, trade.TwineTime),
		"The leader, chosen {since}, measures {long} by {opens}: time for twine.",
		"The leader was chosen {since}: twine goes on from {opens}, however long it is."),
	SeasonsEnd: because(on(trade.SeasonJudged, trade.MovingNotTaking),
		"The season's growth is over in {month}: put down how it stands by {by}."),
	TiesOff: because(on(trade.WinterTapes),
		"Tied since {since}: loosen the tapes from {month} to {monthby}, so that they do not cut in."),
	HeadBack: because(on(trade.HeadBack, trade.HeadBackShort, trade.HeadBackMild, trade.HeadBackFrost),
		"Set {since} {year}: after the first season the leader is headed back, {opens} to {by} where winters are mild.",
		"Set {since} {year}: after the first season the leader is headed back, {opens} to {by} in frost country.",
		"Too short {since} {year}: head the leader back in the next winter, {opens} to {by}.",
		"Too short {since} {year}: head the leader back in the next winter, {opens} to {by}, as in frost country."),
	SecondShootOff: because(on(trade.KeptAlone, trade.HeadBackMild, trade.HeadBackFrost),
		"Set {since} {year}: after the second season the leader stands alone, {opens} to {by} where winters are mild.",
		"Set {since} {year}: after the second season the leader stands alone, {opens} to {by} in frost country."),
	NurseLimbsOff: because(on(trade.NurseLimbs, trade.NurseOff),
		"Set {since} {year}: the graft's own leaf takes over, so nurse limbs come off {opens} to {by}.",
		"Set {since} {year}: the graft's own leaf takes over, so nurse limbs come off {opens} to {by}, as in frost country."),
	TwineCheck: because(on(trade.TwineGirdles, trade.TwineChecks),
		"The twine was last seen {since}: it is checked again from {opens}."),
	CutTwine: because(on(trade.TwineGirdles, trade.GirthGain, trade.TwineOff),
		"Twined {since} {year}: the stem fills the loop about {by} {byyear}, so cut it in the month before.",
		fmt.Sprintf("Twined {since} {year}: %d years is as long as twine stays on.", trade.TwineYears),
		"Twined {since} {year} and seen tight {by} {byyear}: cut it now, or let it out."),
	Regraft: because(on(trade.RegraftTime, trade.SproutsUsed),
		"Lost {since} {year}: cut it back again from {opens} {openyear}, by {by}.",
		"Left for the season {since} {year}: cut it back again from {opens} {openyear}, by {by}."),
}

// Sentence is a due as the walk says it, with its dates.
func (d Due) Sentence(b *record.Block, now time.Time) string {
	if !d.Late(now) {
		return d.Why(b)
	}
	return fmt.Sprintf("%s It is %s late.", d.Why(b), d.lateBy(b, now))
}

// lateBy is how late the due is at now: in the block's days, or by the clock for
// what runs by it within the day.
func (d Due) lateBy(b *record.Block, now time.Time) string {
	days := int(b.Day(now) - b.Day(d.By))
	by := now.Sub(d.By)
	switch {
	case days > 1:
		return fmt.Sprintf("%d days", days)
	case days == 1:
		return "a day"
	case by >= 2*time.Hour:
		return fmt.Sprintf("%d hours", int(by.Hours()))
	}
	return fmt.Sprintf("%d minutes", max(1, int(by.Minutes())))
}
