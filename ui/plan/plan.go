// Package plan is the screen that looks ahead: whether the block is grafted while
// bark slips, what is cut back and grafted on each coming day, who has which work, and
// what to load. It may import core and ui/part with its leaves, and no other screen.
package plan

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen shows how the grafting keeps up with the season, day by day, and who has
// the work of a day.
type Screen struct {
	*part.Page
	x     *part.Session
	pace  plan.Pace
	days  []plan.Shares // today, tomorrow, and later days for which work is given
	taken []record.Event
}

// New is the plan of the session's block.
func New(x *part.Session) *Screen { return &Screen{x: x} }

// Load reckons the plan anew.
func (s *Screen) Load() error {
	site, sums := s.x.Site(), s.x.Summaries(s.x.Block)
	s.pace = plan.PaceOf(site, sums, s.x.Time())
	s.days = nil
	for _, day := range s.given() {
		s.days = append(s.days, s.shares(day))
	}
	s.Page = part.NewPage(s.x, site.Name, "plan", s.lines)
	return s.x.Trouble()
}

// Frame is the page with the keys of the screen.
func (s *Screen) Frame() part.Frame {
	f := s.Page.Frame()
	var lead paper.Line
	if len(s.Page.Lines()) > s.x.BodyHeight() {
		lead = paper.Text(paper.Faint, fmt.Sprintf(" %d of %d lines ", min(len(s.Page.Lines()), len(s.Page.Lines())-len(f.Body)+s.x.BodyHeight()), len(s.Page.Lines())))
	}
	f.Keys = s.x.KeyLine(lead, s.Table())
	return f
}

// Key takes a key of the table; else it scrolls the page, or goes back.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs {
	return part.Press(append(s.Table(), s.x.Common(s.help)...), k, func(k tea.KeyMsg) part.Msgs {
		switch k.String() {
		case "up", " ", "pgup", "pgdown", "home", "end":
			return s.Page.Key(k)
		}
		return part.Useless(k)
	})
}

// Table is the keys of the screen beside those of a page.
func (s *Screen) Table() []part.Row {
	return []part.Row{
		{Binding: part.On("1", "give"), Says: "Give rows, or a number of stumps, to a hand for a day.", Do: s.give},
		{Binding: part.On("2", "load"), Says: "What to load, for a hand, for a day or for the season.", Do: s.load},
		part.ToPaper.Row(part.Does(part.Sheets{})),
		part.ToSet.Row(s.settings).Told("Days off, the crew, what is grafted a day, and the rates of the load."),
		part.ToWhy.Row(s.why).Told("Why: how it was reckoned, and by whose word."),
		part.ToNext.Row(part.Does(part.Next{})),
		part.ToTakeBack.Row(s.takeBack).Told("Take back what was given to a hand last."),
		part.ToWeather.Row(part.Does(part.Weather{})),
		part.ToFind.Row(func() part.Msgs { return s.x.AskPlace(0, "") }),
		part.ToPutBack.Row(s.putBack).Named(""),
		{Binding: part.On("up down", "", "down"), Says: "Read on; Space goes on by a screen.", Do: func() part.Msgs { return s.Page.Key(tea.KeyMsg{Type: tea.KeyDown}) }},
		part.ToBack.Row(part.Does(part.Back{})).Named("").Told("Back to the block."),
	}
}

func (s *Screen) help() part.Msgs { return s.x.Help("plan", s.Table(), s.x.Common(nil)) }

func (s *Screen) why() part.Msgs {
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Why", "plan", func(width int) []paper.Line {
		b := s.x.Site()
		season := s.pace.Season
		if !s.pace.Known {
			season = plan.SeasonOf(b, s.x.Summaries(s.x.Block), plan.SeasonAsked{On: s.pace.Today})
		}
		lines := []paper.Line{}
		for _, w := range season.Worked(b.WaitDays(), b.Off.Words()) {
			lines = append(append(lines, nil), part.WorkLines(w, b.Units, s.x.Measure(width-4))...)
		}
		return lines
	})}}
}

// given is today, tomorrow, and later days for which something is given.
func (s *Screen) given() []unit.Date {
	b := s.x.Site()
	days := []unit.Date{s.pace.Today, s.pace.Today.Add(1)}
	for day := days[1].Add(1); day <= s.pace.Today.Add(farGiven); day++ {
		if len(b.GivenOn(day)) > 0 {
			days = append(days, day)
		}
	}
	return days
}

// farGiven is how many days ahead work is given at the most.
const farGiven = 60

func (s *Screen) shares(day unit.Date) plan.Shares {
	return plan.SharesOf(s.x.Site(), day, s.round(day))
}

func (s *Screen) round(day unit.Date) []due.Call {
	return plan.DayRound(s.x.Site(), s.x.Summaries(s.x.Block), s.pace, day, s.x.Time())
}

func (s *Screen) dayName(day unit.Date) string {
	name := day.Weekday().String()[:3] + " " + day.Short()
	switch day {
	case s.pace.Today:
		return "today, " + name
	case s.pace.Today.Add(1):
		return "tomorrow, " + name
	}
	return name
}
