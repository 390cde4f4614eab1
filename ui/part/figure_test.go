package part

import (
	"strings"
	"testing"

	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// Black and white are as far apart as the ground allows: on a dark ground white is
// the stronger, on a light one black is.
func TestBlackAndWhiteGoByTheGround(t *testing.T) {
	day := figure.Day{Limit: 45, Lines: []figure.DayLine{
		{Name: "black", Dash: figure.Filled, Ink: figure.Black, Points: []figure.Reading{{Hour: 6, Temp: 10}, {Hour: 21, Temp: 60}}},
		{Name: "white", Dash: figure.Hollow, Ink: figure.White, Points: []figure.Reading{{Hour: 6, Temp: 10}, {Hour: 21, Temp: 20}}},
	}}
	for theme, want := range map[string][2]paper.Ink{
		"dark": {paper.Faint, paper.Strong}, "sunlight": {paper.Strong, paper.Plain}, "plain": {paper.Strong, paper.Plain},
	} {
		x := &Session{Theme: paper.ThemeNamed(theme)}
		found := map[string]paper.Ink{}
		for _, l := range x.Inked(day.Draw(60, 20, figure.ASCII)) {
			for _, s := range l {
				for _, name := range []string{"black", "white"} {
					if strings.Contains(s.Text, name) {
						found[name] = s.Ink
					}
				}
			}
		}
		if found["black"] != want[0] || found["white"] != want[1] || len(found) != 2 {
			t.Errorf("%s: %v, want %v", theme, found, want)
		}
	}
}
