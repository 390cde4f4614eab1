package practice

// maker makes a case of one kind from a seed.
type maker struct {
	kind string
	make func(seed uint64) Case
}

// makers are the kinds of case of each skill.
var makers = map[Skill][]maker{
	Draining: drainingKinds, Slip: slipKinds, Places: placesKinds, Wood: woodKinds, Cuts: cutsKinds, Seal: sealKinds,
	Sprouts: sproutsKinds, Buds: budsKinds, Leader: leaderKinds, Ties: tiesKinds, Winter: winterKinds, Cautions: cautionsKinds,
}

// Kinds are the kinds of case of a skill, by their codes.
func Kinds(s Skill) []string {
	var out []string
	for _, m := range makers[s] {
		out = append(out, m.kind)
	}
	return out
}

// Make makes the case of a seed on a skill, the same one for ever. Which kind it
// is follows from the seed.
func Make(seed uint64, s Skill) Case {
	of := makers[s]
	m := of[seed%uint64(len(of))]
	c := m.make(seed)
	c.Seed, c.Skill, c.Kind = seed, s, m.kind
	return c
}
