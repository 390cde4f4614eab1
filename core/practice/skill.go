package practice

// Skill is one of the things a grafter must be able to judge.
type Skill int

// The skills.
const (
	Draining Skill = iota + 1 // cutting back, bleeding, gashes, drain holes, waiting
	Slip                      // whether and when bark slips
	Places                    // how many scions and where
	Wood                      // scion wood: lot, thickness, buds, how a stick is cut
	Cuts                      // the cuts of a scion, its slot and nails
	Seal                      // sealing, and getting it white in time
	Sprouts                   // which are rubbed, how often, which stay
	Buds                      // reading buds, and the causes of loss
	Leader                    // choosing and keeping one leader
	Ties                      // ties, stakes and twine
	Winter                    // what is done after the season, until untied
	Cautions                  // what can hurt somebody
	skills
)

var skillNames = [skills]struct{ code, name string }{
	Draining: {"draining", "draining"}, Slip: {"slip", "bark slip"}, Places: {"places", "count and places"}, Wood: {"wood", "scion wood"},
	Cuts: {"cuts", "the cuts"}, Seal: {"seal", "seal and white"}, Sprouts: {"sprouts", "sprouts"}, Buds: {"buds", "buds and causes"},
	Leader: {"leader", "the leader"}, Ties: {"ties", "ties and twine"}, Winter: {"winter", "winter"}, Cautions: {"cautions", "cautions"},
}

// Skills are all skills, in the order of the work.
func Skills() []Skill {
	var out []Skill
	for s := Draining; s < skills; s++ {
		out = append(out, s)
	}
	return out
}

// String is the skill's name on screens.
func (s Skill) String() string { return skillNames[s].name }

// Code is the skill's name in files and on the command line.
func (s Skill) Code() string { return skillNames[s].code }

// SkillCoded is the skill of a code; ok is false if there is none.
func SkillCoded(code string) (s Skill, ok bool) {
	for _, s := range Skills() {
		if s.Code() == code {
			return s, true
		}
	}
	return 0, false
}
