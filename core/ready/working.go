package ready

import (
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// working fills in how the verdict was come by.
func (j *judge) working() {
	w := &j.out.Work
	w.Question = "Is this stump ready?"
	w.Answer = []trade.Input{{Name: "verdict", Value: string(j.out.Verdict)}}
	if j.out.Until != nil {
		w.Answer = append(w.Answer, trade.Input{Name: "until", Value: j.out.Until.Format("2 Jan 15:04")})
	}
	w.Formula = "the first rule that applies decides: size, cutting back, limbs, bark and days, a look after each cut, gashes, then what the face shows"
	w.Inputs = j.inputs()
}

// inputs is what is known of the stump; what is not is left out.
func (j *judge) inputs() (in []trade.Input) {
	add := func(known bool, name string, value any) {
		if known {
			in = append(in, trade.Input{Name: name, Value: value})
		}
	}
	if j.Across > 0 {
		in = append(in, trade.Input{Name: "across", Value: j.Across, Limits: trade.StumpLimits})
	}
	add(true, "bleeding", orNone(string(j.Bleeding)))
	add(true, "bark", orNone(j.Slip.Word()))
	add(j.CutBack != 0, "cut back", j.CutBack)
	for _, t := range []struct {
		name string
		at   time.Time
	}{{"looked", j.Looked}, {"newest gash", j.Gashed}, {"newest hole", j.Drilled}, {"fresh cut", j.FreshCut}} {
		add(!t.at.IsZero(), t.name, t.at.In(j.zone).Format("2 Jan 15:04"))
	}
	add(j.Gashes > 0, "gashes so far", j.Gashes)
	add(j.Holes > 0, "drain holes", j.Holes)
	add(j.Wipes > 0, "wipes", j.Wipes)
	add(j.Waits > 0, "waits while running", j.Waits)
	add(j.Limbs > 0 || j.NoLimbs, "limbs left", j.Limbs)
	if j.HasLimb {
		in = append(in, trade.Input{Name: "clear stem to the nearest limb", Value: j.Limb, Limits: []unit.Length{j.sys.Round(trade.LimbClear)}})
	}
	return in
}

func orNone(s string) string {
	if s == "" {
		return "not seen"
	}
	return s
}
