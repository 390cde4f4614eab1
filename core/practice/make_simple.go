package practice

import "barkslip/core/trade"

func init() {
	for _, s := range Skills() {
		for _, k := range []string{"-a", "-b"} {
			makers[s] = append(makers[s], maker{s.Code() + k, func(seed uint64) Case {
				d := draws(seed)
				best := int(d.next() % 4)
				c := Case{Told: []string{"The face was cut at 9:10.", "It was wiped at 9:20 and is wet again at 9:23."}, Question: "What now?",
					Work: []trade.Worked{{Question: "Ready?", Facts: []trade.Fact{trade.Leader}}}}
				if s == Places {
					c.Figure = &Figure{Face: &Face{Across: 90, Slots: []float64{20, 140, 260}}, Says: []string{"A face 3 1/2 in across with slots at 20, 140 and 260 degrees."}}
				}
				for i := range 4 {
					c.Choices = append(c.Choices, Choice{Words: "Wait and look again " + string(rune('A'+i)), Best: i == best, Because: "Because of this and that, which is a sentence of some length so that it has to go on in the next line."})
				}
				return c
			}})
		}
	}
}
