package ui

import (
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
)

// The story of a stump with notes of the greatest length opens within a frame, and so does
// each key in it.
func TestTheLongestNotesOpenInAFrame(t *testing.T) {
	if raceDetector {
		t.Skip("timing")
	}
	d := newDriver(t, "2027-05-04 09:00")
	d.block()
	d.press("right", "enter")
	words := strings.Repeat("bark slips well on the shady side; ", record.LongestText/35+1)
	for _, text := range []string{words[:record.LongestText], strings.Repeat("é", record.LongestText), strings.Repeat("木", record.LongestText), words[:record.LongestText]} {
		events, err := d.stump().Answer(record.Given{Bodies: []record.Body{&record.Noted{Text: text}}, At: d.now, Hand: "RK", Zone: newYork})
		if err == nil {
			_, err = d.book.Append(events...)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	d.press("esc", "enter")
	for _, key := range []string{"j", "down", "pgdown", "end", "home", "esc"} {
		best := time.Hour
		for range 5 { // the machine may be busy with other things
			began := time.Now()
			d.press(key)
			_ = d.screen()
			best = min(best, time.Since(began))
			if key == "j" {
				d.press("esc")
			}
		}
		if key == "j" {
			d.press("j")
		}
		t.Logf("%s: %v", key, best)
		if best > 16*time.Millisecond {
			t.Errorf("%s takes %v to its frame", key, best)
		}
	}
}
