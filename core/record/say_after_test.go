package record

import (
	"testing"

	"barkslip/core/unit"
)

func TestSayAfterCare(t *testing.T) {
	for _, c := range []struct {
		body Body
		want string
	}{
		{&Staked{Height: inches(60), Side: 270}, "staked 60 in on the W side"},
		{&Visited{Found: []Finding{{Slot: 1, State: Dead, Cause: "wind"}, {Slot: 2, State: NoChange, Scratch: Green}, {Slot: 3, State: Growing, Shoot: inches(9)}}},
			"graft 1 dead, wind; 2 no change, green under the bark; 3 growing, shoot 9 in"},
		{&SproutsRubbed{Near: 3}, "sprouts rubbed, 3 near"},
		{&SproutsRubbed{Near: 1, Below: 2, Leaf: "some"}, "sprouts rubbed, 1 near, 2 below, leaf below some"},
		{&LeaderChosen{Slot: 2, Shoot: "upper"}, "leader from graft 2, upper shoot"},
		{&LeaderBroken{Cause: "wind", Promoted: 1, Shoot: "lower"}, "leader broken, wind, graft 1 lower takes over"},
		{&LeaderBroken{}, "leader broken"},
		{&Tied{}, "tied, not measured"},
		{&Tied{Shoot: inches(20), Broken: true}, "tied, shoot 20 in, tip broken"},
		{&Twined{Loops: 2, Loop: inches(12), Stem: inches(4), Material: "natural"}, "2 loops of twine 12 in round, stem 4 in round, natural"},
		{&TwineChecked{Tight: true, Stem: inches(9)}, "twine tight, stem 9 in round"},
		{&TwineChecked{}, "twine loose"},
		{&TwineMoved{Loop: inches(16)}, "twine let out, loop 16 in round"},
		{&HeadedBack{Height: inches(62)}, "headed back at 62 in"},
		{&HeadedBack{Short: true}, "leader too short, cut to strong buds"},
		{&NurseLimbOff{Left: 1}, "nurse limb off, 1 limb left"},
		{&SeasonsEnd{Word: "fair", Alive: 2}, "season's end, fair, 2 alive"},
		{&SproutsKept{Number: 2}, "2 sprouts kept"},
		{&TwineCut{}, "twine cut"},
	} {
		if got := Say(c.body, unit.US); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
