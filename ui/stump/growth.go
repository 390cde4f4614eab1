package stump

import (
	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// growthView is the leader's length through the season against its stake and
// the aim, with the growth forecast a month on.
func (s *Screen) growthView(w, h int) []paper.Line {
	fig, ok := s.growth()
	if !ok {
		return nil
	}
	return s.x.Inked(fig.Draw(w, h, s.x.Mode()))
}

// growth is the leader's lengths measured this season; ok is false where there is
// nothing to tell of it.
func (s *Screen) growth() (fig figure.Shoot, ok bool) {
	b, a := s.x.Site(), s.walk.A
	fig = figure.Shoot{Sys: b.Units}
	var shoots []girth.Shoot
	for _, t := range a.Ties {
		on := b.Day(t.At)
		if !t.What.Shoot.Given() || b.Day(s.x.Time())-on > seasonDays {
			continue
		}
		fig.Measured = append(fig.Measured, figure.Reached{On: on, Length: t.What.Shoot.Length})
		fig.Ties = append(fig.Ties, t.What.Shoot.Length)
		shoots = append(shoots, girth.Shoot{On: on, Long: t.What.Shoot.Length})
	}
	if bodies := s.typed(); len(bodies) == 1 {
		if t, ok := bodies[0].(*record.Tied); ok {
			fig.Measured = append(fig.Measured, figure.Reached{On: b.Day(s.x.Time()), Length: t.Shoot.Length})
		}
	}
	if a.Stake != nil {
		fig.StakeTop = a.Stake.What.Height.Length
	}
	if len(fig.Measured) == 0 && (fig.StakeTop == 0 || len(a.Ties) > 0 && s.asked.Step.ID != walk.StepTie) {
		return fig, false // nothing to draw, or nothing measured this season yet
	}
	if fig.StakeTop > 0 {
		fig.AimLow, fig.AimHigh = fig.StakeTop+trade.LeaderAim, fig.StakeTop+trade.LeaderAimMost
	}
	fig.Next = nextTie(fig)
	fig.From = b.Day(s.x.Time())
	if push := a.FirstPush(); !push.IsZero() && fig.From-b.Day(push) <= seasonDays {
		fig.From = b.Day(push)
	} else if len(fig.Measured) > 0 {
		fig.From = fig.Measured[0].On
	}
	fig.To = max(b.Day(s.x.Time()), fig.From).Add(forecastDays)
	fig.Forecast = forecast(shoots, fig.To)
	return fig, true
}

// nextTie is where the next tie goes, by the step of ties; 0 over the stake.
func nextTie(fig figure.Shoot) unit.Length {
	next := trade.TieEvery
	for _, tie := range fig.Ties {
		for next <= tie {
			next += trade.TieEvery
		}
	}
	if next > fig.StakeTop+unit.Millimetre {
		return 0
	}
	return next
}

// seasonDays is how far back measures belong to the season under way.
const seasonDays = 200

// forecastDays is how far ahead the growth is drawn.
const forecastDays = 30

// forecast runs the growth of the newest measures on, a foot at a time.
func forecast(shoots []girth.Shoot, to unit.Date) []figure.Reached {
	if len(shoots) < 2 {
		return nil
	}
	newest := shoots[len(shoots)-1]
	out := []figure.Reached{{On: newest.On, Length: newest.Long}}
	for long := newest.Long + trade.TieEvery; len(out) < 20; long += trade.TieEvery {
		on, ok := girth.Reaches(shoots, long)
		if !ok || on > to {
			break
		}
		out = append(out, figure.Reached{On: on, Length: long})
	}
	return out
}
