package ui

import (
	"bytes"
	"context"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
)

// A book of many stumps says at once what is read; one of few shows its stumps.
func TestWhatIsReadIsSaidFirst(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.append(record.Event{At: d.now, Hand: "AB", Body: &record.BlockMade{Block: record.ID{9}, Name: "Hollow Lane"}})
	for stumps, want := range map[int]string{0: "", 240: "", manyStumps - 1: "", manyStumps: "Hollow Lane, reading 5000 stumps"} {
		var out bytes.Buffer
		err := Run(context.Background(), Options{
			Book: d.book, Stumps: stumps, Now: time.Now, Prefs: Prefs{Hand: "RK"}, LocalZone: "UTC", Zones: time.LoadLocation,
			Input: strings.NewReader("q"), Output: &out,
		})
		if err != nil {
			t.Fatal(err)
		}
		if want != "" {
			want = "\x1b[1;2H" + want
		}
		if got := out.String(); got != openWindow+want+closeWindow { // a window without a size has no frame
			t.Errorf("%d stumps: %q, want %q in it", stumps, got, want)
		}
	}
}
