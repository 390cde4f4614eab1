package ui

import (
	"strings"
	"testing"

	"barkslip/core/record"
)

// mostForAQuestion is how many keys a supervisor needs from the block to an answer
// at the most.
const mostForAQuestion = 6

// TestTwelveQuestions asks what a supervisor asks of a made-up block, each from the
// block; the keys are counted and printed. What must stand on the screen is in words.
func TestTwelveQuestions(t *testing.T) {
	saved := ""
	for _, q := range []struct {
		asks string
		keys []string
		sees []string
	}{
		{"which lot did worst, and is it chance?", []string{"k"}, []string{"Lantern", "took", "chance explains"}},
		{"which hand did worst, what was lost later apart?", []string{"k", "4"}, []string{"AS", "took", "stand", "hance explains"}},
		{"whose late work is it?", []string{"j", "5"}, []string{"Late now, by who last worked", " on "}},
		{"will it be done in time?", []string{"p"}, []string{"to graft", "bark stops"}},
		{"how many are to be cut back this week?", []string{"p"}, []string{"cut graft", "Fri 21 May"}},
		{"are sticks short, and of which variety?", []string{"p", "2", "1"}, []string{"Lantern", "sticks"}},
		{"which stumps have the lot that is held?", []string{"f", "3", "1"}, []string{"of 240"}},
		{"why did the lost ones die?", []string{"k"}, []string{"Lost of all:", "bled"}},
		{"which are to be grafted again?", []string{"f", "1", "down"}, []string{"failed"}},
		{"what changed since Monday?", []string{"j"}, []string{"Since Mon 17 May", "done or seen"}},
		{"the sheet of a hand for tomorrow", []string{"p", "ctrl-p", "7"}, []string{"Written: ", "2027-05-21"}},
		{"how hot will it be tomorrow?", nil, []string{"Tomorrow"}},
	} {
		d := blockOf(t, 240)
		d.root.x.SaveText = func(name, text string) (string, error) { saved = text; return "/tmp/" + name, nil }
		if q.asks[:9] == "which stu" { // one lot is held first
			lot := d.root.x.Book.Folded().LotList()[0]
			if err := d.root.x.Answer(&record.LotHeld{Lot: lot.ID, Held: true, Why: "mouldy"}, d.now); err != nil {
				t.Fatal(err)
			}
			d.open()
			q.sees = append(q.sees, "only lot "+lot.Received.What.Name)
		}
		before := d.keys
		d.press(q.keys...)
		n := d.keys - before
		screen := d.screen()
		for _, words := range q.sees {
			if !strings.Contains(screen, words) {
				t.Errorf("%s: %q is not seen:\n%s", q.asks, words, screen)
			}
		}
		t.Logf("%d keys: %s", n, q.asks)
		if n > mostForAQuestion {
			t.Errorf("%s: %d keys, at most %d", q.asks, n, mostForAQuestion)
		}
	}
	if !strings.HasPrefix(saved, "%PDF-") {
		t.Errorf("the sheet is no PDF: %.20q", saved)
	}
}
