package practice

import (
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

var sealKinds = kinds([]situation{
	{"still-wet", func(t *tale) {
		t.sealed(record.Wrapped).later(t.of(20, 80))
		t.sayNow().say("Sealed at %s over wrap squares. Touched with a finger, the sealer is still soft and dark. The white stands ready in the bucket.", t.clock(t.sealedAt()))
	}, "White goes on dry sealer.", []reply{
		{rest, "It would stand dark through the heat of the day."},
		{"white", "It looks diligent. On soft sealer the white does not hold: it runs, cracks and bares the dark under it just when the sun is high."},
		{"reseal", "A second coat on a wet one only makes it dry later. Nothing is cracked here."},
		{"after-look", "A seal is looked at when it had some days to crack."}}},
	{"dry-and-dark", func(t *tale) {
		t.sealed(record.Wrapped).later(t.of(125, 175))
		t.sayNow().say("Sealed at %s. The sealer is dry to the finger, and warm already in the sun. There are four more stumps to graft.", t.clock(t.sealedAt()))
	}, "Dark sealer in the sun heats the bark under it.", []reply{
		{"white", ""},
		{rest, "Four more stumps first, and the white for all of them at evening: it saves steps, and cooks the grafts that stood dark through noon."},
		{"after-look", "In two days it will be looked at; by then the sun has told."},
		{"sprouts", "There are none to speak of within hours of the cut."}}},
	{"white-late", func(t *tale) {
		t.sealed(record.Wrapped).later(t.of(200, 330))
		t.sayNow().say("Sealed at %s, and forgotten behind the hedge. It stands dark in full sun, hot to the hand.", t.clock(t.sealedAt()))
	}, "Late, and worth doing all the same: each hour more kills more.", []reply{
		{"white", ""},
		{rest, "The worst of the day may be over, but tomorrow's sun comes on dark sealer as well."},
		{"reseal", "Fresh sealer is as dark as the old one."},
		{"buds", "What the heat did shows in weeks. White helps today."}}},
	{"cracked-seal", func(t *tale) {
		t.white(record.Wrapped).on(t.of(3, 6), 9, 0, &record.SealChecked{Cracked: true})
		t.sayNow().say("Grafted on %s. A crack as wide as a thumbnail runs through white and sealer, from the edge of a slot to the top.", t.day.Short())
	}, "Air dries callus before it has closed.", []reply{
		{"reseal", ""},
		{rest, "Callus will close it, says the hope; through a crack it dries instead, and rain comes in behind the scion."},
		{"white", "White is no seal: it covers the crack for the eye, and lets air through."},
		{"buds", "Whether they move is seen later; the crack is open today."}}},
	{"bare-sealer", func(t *tale) {
		t.white(record.Bare).at(t.of(5, 6), 9, 0)
		t.sayNow().say("Grafted on %s and sealed without wrap squares. Two days later the seal was whole. Today you see nothing wrong from the path.", t.day.Short())
	}, "Without squares under it, it moves with the drying wood.", []reply{
		{"reseal", ""},
		{rest, "From the path it looks whole. Hair cracks are not seen from there, and bare sealer gets them in its first week."},
		{"after-look", "It was looked at. This coat is due whatever the look says."},
		{"sprouts", "Too early for sprouts, by days."}}},
	{"hard-rain", func(t *tale) {
		t.white(record.Wrapped).on(t.of(4, 9), 7, 0, &record.RainedHard{})
		t.at(int(t.b.Day(t.now)-t.day), 14, 0)
		t.sayNow().say("Grafted on %s, sealed over squares, painted white, and seen whole on the second day. This morning a thunderstorm poured over the block.", t.day.Short())
	}, "Hard rain lifts edges and washes white off.", []reply{
		{"after-look", ""},
		{rest, "It was seen whole, but that was before the storm."},
		{"reseal", "Sealer on a wet, whole seal does not hold. Look first; it may need nothing."},
		{"white", "If the white is gone it goes on again, but that is found by looking."}}},
	{"one-slot-open", func(t *tale) {
		t.wooded().did(t.scion(1), t.scion(2)).later(t.of(10, 50))
		t.sayNow().say("Three slots are marked. Two scions sit; the crew calls for lunch, and the cut faces shine.")
	}, "Cut faces dry by the minute.", []reply{
		{"finish", ""},
		{"seal", "With a slot open, the seal has to be broken again for the third scion."},
		{rest, "Lunch is an hour; a cut face in the sun has less."},
		{"white", "White goes on dry sealer, and no sealer is on yet."}}},
	{"set-and-bare", func(t *tale) {
		t.set().later(t.of(5, 25))
		t.sayNow().say("The third scion is nailed. The sealer is at the other end of the row, and the next stump is ready to cut.")
	}, "What is open dries: slots, top and tips.", []reply{
		{"seal", ""},
		{"graft", "Each stump is finished before the next is begun, or two stand open at once."},
		{"white", "The coat of white comes when the sealer is dry."},
		{rest, "The nails hold it, but nothing keeps it moist."}}},
	{"ring-worn-out", func(t *tale) {
		t.b.Earwigs = true
		t.sealed(record.Wrapped).later(125).did(&record.PaintedWhite{}, &record.RingSet{}).on(2, 9, 0, &record.SealChecked{}).at(t.of(12, 13), 9, 0)
		t.sayNow().say("There are earwigs in this block. The tape ring went on with the graft on %s; dust and bark flakes stick in it. The buds are fat and still closed.", t.day.Short())
	}, "It is the opening bud that they eat.", []reply{
		{"earwigs", ""},
		{rest, "A ring is on, so all seems done; one full of dust is a bridge."},
		{"sprouts", "Sprouts come soon; the buds are at risk now."},
		{"reseal", "The seal is whole, and earwigs do not mind it."}}},
}, nil,
	maker{"hot-still-day", hotStillDay},
	nextStep(Seal),
)

// sealedAt is when the stump was sealed.
func (t *tale) sealedAt() time.Time { return t.walk().A.Sealed.At }

// hotStillDay asks by when a graft must be white on a day whose heat was recorded.
func hotStillDay(seed uint64) Case {
	t := newTale(seed)
	t.sealed(record.Wrapped)
	high := float64(t.of(24, 38))
	wind := pick(&t.dice, 0.5, 1, 1.5)
	t.b.Weather = map[unit.Date]record.Said[record.DayWeather]{t.day: {At: t.now, What: record.DayWeather{Block: tellsBlock, Day: t.day,
		Low: t.degrees(high - 14), High: t.degrees(high), Wind: wind}}}
	t.sayNow().say("Sealed at %s, over wrap squares. The sky is clear, the air still; the forecast says a high of %s.", t.clock(t.sealedAt()), t.b.Units.Temperature(unit.Temperature(high)))
	var d due.Due
	for _, is := range t.walk().Dues() {
		if is.Kind == due.White {
			d = is
		}
	}
	work := facts("By when must it be white?", d.Facts()...)
	right := d.Why(t.b)
	if heat, ok := due.Heat(t.stump(), t.b, t.sealedAt()); ok {
		work = heat.Work
		right += " The sum behind w tells when harm would begin. Where that is before the sealer is dry, it is painted as soon as it is dry, and shaded until then."
	}
	by := d.By.Round(time.Minute)
	at := func(shift time.Duration) string { return t.clock(by.Add(shift)) }
	return t.withDue(t.ask("By when must it be white?", at(0), right, work,
		option{at(0), fmt.Sprintf("By %s.", at(0)), ""},
		option{at(90 * time.Minute), fmt.Sprintf("By %s: there is no hurry.", at(90*time.Minute)), "By then the bark under dark sealer has stood in the sun longer than it is to."},
		option{at(4 * time.Hour), fmt.Sprintf("By %s, when the heat is over.", at(4*time.Hour)), "The heat that is over then is the heat it had to be kept from."},
		option{"wet", fmt.Sprintf("By %s, at once after sealing.", t.clock(t.sealedAt().Add(20*time.Minute))), "The sealer is wet for its first hours; white on it runs and cracks."}), d.Kind)
}

// degrees is a temperature as it would be read here.
func (t *tale) degrees(c float64) record.Degrees {
	at := unit.Temperature(c)
	return record.Degrees{Temperature: at, Typed: t.b.Units.Temperature(at)}
}

// withDue is a case that turns on a due.
func (t *tale) withDue(c Case, k due.Kind) Case {
	c.Rule = Rule{Due: k, IsDue: true, Step: t.walk().Present()}
	return c
}
