package ui

import (
	"errors"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// crewBooks is a meeting that a test holds by hand.
type crewBooks struct {
	crew part.Crew
	met  part.Met
	now  int
}

func (c *crewBooks) Crew() part.Crew { return c.crew }
func (c *crewBooks) Set(crew part.Crew) error {
	if strings.Contains(crew.Name, " ") {
		return errors.New("no name with spaces")
	}
	c.crew = crew
	return nil
}
func (c *crewBooks) NewKey(crew string) (string, error) { return crew + ".key", nil }
func (c *crewBooks) Now()                               { c.now++ }
func (c *crewBooks) Met() part.Met                      { return c.met }

func TestTheCrewIsSetAndMet(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.block()
	var kept part.Prefs
	d.root.x.SavePrefs = func(p part.Prefs) error { kept = p; return nil }
	books := &crewBooks{}
	d.root.x.Meeting = books
	d.press(".")
	d.sees("The crew's books")
	d.press("1")
	d.press("hollow lane")
	d.press("enter")
	d.sees("no name with spaces")
	for range "hollow lane" {
		d.press("backspace")
	}
	d.press("hollow-lane")
	d.press("enter")
	d.sees("Now the server's address.")
	d.press("enter")
	d.press("nats://truck:4222")
	d.press("enter", "enter")
	d.sees("The crew's key")
	d.press("2")
	d.sees("Made: hollow-lane.key")
	want := part.Crew{Name: "hollow-lane", URL: "nats://truck:4222", Key: "hollow-lane.key"}
	if books.crew != want || kept.Crew != want {
		t.Fatalf("set %+v, kept %+v, want %+v", books.crew, kept.Crew, want)
	}
	d.press("enter")
	d.sees("Meeting hollow-lane")
	if books.now != 1 {
		t.Fatal("it was not met")
	}
	books.met = part.Met{At: d.root.x.Tick(), Round: 1, Report: "Met: 3 came, 4 sent."}
	d.root.Update(tick(d.now))
	d.sees("Met: 3 came, 4 sent.")
	d.sees("met just now")
	books.met.At = d.root.x.Tick().Add(-3 * time.Minute)
	books.met.ToSend = 14
	d.sees("met 3 min ago, 14 to send")
	d.press("f5")
	books.met.Round, books.met.Err = 2, errors.New("nobody answers at the truck")
	d.root.Update(tick(d.now))
	d.sees("nobody answers at the truck")
	d.sees("not met since")
	d.sees("14 to send")
}

// What came from others is seen on the block at once, but not put under the hands of one
// who walks a stump.
func TestWhatCameIsSeenOnceTheStumpIsLeft(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.block()
	books := &crewBooks{crew: part.Crew{Name: "a", URL: "b", Key: "c"}}
	d.root.x.Meeting = books
	note := func(text string) {
		t.Helper()
		s, err := d.book.Stump(d.root.x.Summaries(d.root.x.Block)[0].ID)
		var events []record.Event
		if err == nil {
			events, err = s.Answer(record.Given{Bodies: []record.Body{&record.Noted{Text: text}}, At: d.now, Hand: "XY", Zone: newYork})
		}
		if err == nil {
			_, err = d.book.Append(events...)
		}
		if err != nil {
			t.Fatal(err)
		}
		books.met.Came++
	}
	note("from the other crew")
	d.root.Update(tick(d.now))
	if d.root.met.came != 1 {
		t.Fatal("what came was not taken in on the block")
	}
	d.press("right", "enter")
	note("again")
	d.root.Update(tick(d.now))
	if d.root.met.came != 1 {
		t.Fatal("what came was taken in while a stump is walked")
	}
	d.press("esc")
	d.root.Update(tick(d.now))
	if d.root.met.came != 2 {
		t.Fatal("what came was not taken in once the stump was left")
	}
}

func TestWhatIsMadeUpMeetsNobody(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.block()
	d.press(".")
	d.sees("No crew is met here.")
	d.root.x.OwnDay = func() bool { return true }
	d.root.x.Meeting = &crewBooks{crew: part.Crew{Name: "a", URL: "b", Key: "c"}}
	d.press(".")
	d.sees("What is made up meets nobody")
	if strings.Contains(d.root.View(), "not met") {
		t.Error("something is said of meetings")
	}
}
