package part

import (
	"cmp"
	"errors"
	"fmt"
	"strings"
	"time"

	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// Crew is whom a book meets: the crew's name and server, and the files on this computer
// that let it in. The key itself stands in its file alone.
type Crew struct {
	Name        string `json:",omitempty"`
	URL         string `json:",omitempty"`
	Key         string `json:",omitempty"` // a file with the crew's key
	CA          string `json:",omitempty"` // a file of certificates that vouch for the server, "" for the system's
	Credentials string `json:",omitempty"` // a file that lets this computer in, "" for none
}

// Complete says whether a crew can be met.
func (c Crew) Complete() bool { return c.Name != "" && c.URL != "" && c.Key != "" }

// Meeting is how the book meets its crew's journal, in the background and by itself while
// the screens are open.
type Meeting interface {
	// Crew is the one that is set.
	Crew() Crew
	// Set sets it, once it holds; files are copied, so that a memory stick can be pulled.
	Set(Crew) error
	// NewKey draws a key for the crew of that name; it is kept on this computer.
	NewKey(crew string) (path string, err error)
	// Now has the book meet at once.
	Now()
	// Met is how it stands.
	Met() Met
}

// Met is how the meeting with a crew stands.
type Met struct {
	Busy   bool
	Far    string    // while it is busy: how far it is
	At     time.Time // when it met last, by the computer's clock; zero for not yet
	ToSend int       // records that the crew's journal lacks
	Round  int       // how many meetings were held, also those that failed
	Came   int       // records that came since the screens were opened
	Report string    // what the last did, in a sentence
	Err    error     // why the last could not be held; nil where it was
	Passed []error   // what was passed over, ever since the screens were opened
}

// meets says whether the book meets a crew.
func (x *Session) meets() bool { return x.Meeting != nil && !x.MadeUp() && x.Meeting.Crew().Complete() }

// metWords are how the meeting stands, from the longest to the shortest; none where nobody
// is met.
func (x *Session) metWords() (words []string, wrong bool) {
	if !x.meets() {
		return nil, false
	}
	m := x.Meeting.Met()
	toSend := ""
	if m.ToSend > 0 {
		toSend = fmt.Sprintf(", %d to send", m.ToSend)
	}
	switch {
	case m.Busy && m.Far != "":
		return []string{"meeting: " + m.Far, "meeting"}, false
	case m.Err != nil && m.At.IsZero():
		return []string{"not met yet" + toSend, "not met yet"}, true
	case m.Err != nil:
		return []string{"not met since " + x.since(m.At) + toSend, "not met" + toSend, "not met"}, true
	case m.At.IsZero():
		return []string{"not met yet" + toSend, "not met yet"}, false
	case len(m.Passed) > 0:
		return []string{"met " + ago(x.Tick().Sub(m.At)) + toSend + ", some passed over", "met, some passed over"}, true
	}
	return []string{"met " + ago(x.Tick().Sub(m.At)) + toSend, "met" + toSend, "met"}, false
}

func wrongWords(m Met) string {
	switch {
	case m.Err == nil:
		return Counted(len(m.Passed), "thing") + " passed over"
	case len(m.Passed) == 0:
		return "the last meeting could not be held"
	}
	return "the last meeting could not be held; " + Counted(len(m.Passed), "thing") + " passed over"
}

// since is when the book met last.
func (x *Session) since(at time.Time) string {
	if b := x.Site(); b != nil {
		at = at.In(b.Zone)
	}
	return at.Format("15:04")
}

func ago(d time.Duration) string {
	if d < time.Minute {
		return "just now"
	}
	return unit.Lasting(d.Truncate(time.Minute)) + " ago"
}

// Meet has the book meet its crew at once; where none is set, it is set first.
func (x *Session) Meet() Msgs {
	switch {
	case x.Looking():
		return Fails(ErrLooking)
	case x.MadeUp() || x.Life != nil:
		return Msgs{NoUse{"What is made up meets nobody; your own book does."}}
	case x.Meeting == nil:
		return Msgs{NoUse{"No crew is met here."}}
	case !x.Meeting.Crew().Complete():
		return x.PickCrew("")
	}
	x.Meeting.Now()
	return Msgs{MeetNow{}}
}

// PickCrew lists what is set of the crew; picking a line asks for it.
func (x *Session) PickCrew(said string) Msgs {
	if x.Meeting == nil {
		return Msgs{NoUse{"What is made up meets nobody; your own book does."}}
	}
	c := x.Meeting.Crew()
	items := []Item{
		{"crew", orNot(c.Name), x.asksCrew("Crew's name (a to z, digits, hyphens: hollow-lane):", c.Name, func(c *Crew, text string) { c.Name = strings.ToLower(text) })},
		{"server", orNot(c.URL), x.asksCrew("Server (nats://truck.local:4222; several with commas):", c.URL, func(c *Crew, text string) { c.URL = text })},
		{"key", orNot(c.Key), x.pickKey},
		{"certificates", cmp.Or(c.CA, "those of this computer"), x.asksCrew("File of the certificates that vouch for the server (- for none):", "-", func(c *Crew, text string) { c.CA = none(text) })},
		{"credentials", cmp.Or(c.Credentials, "none"), x.asksCrew("File with the credentials that let this computer in (- for none):", "-", func(c *Crew, text string) { c.Credentials = none(text) })},
	}
	if c.Complete() {
		items = append(items, Item{"meet now", "it also meets by itself", x.Meet})
		if m := x.Meeting.Met(); len(m.Passed) > 0 || m.Err != nil {
			items = append(items, Item{"what was wrong", wrongWords(m), x.readPassed})
		}
		items = append(items, Item{"meet no more", "the book is kept as it is", func() Msgs {
			msgs, err := x.setCrew(Crew{})
			return msgs.And(Fails(err)...).And(Say{"This book meets nobody any more."})
		}})
	}
	list := NewList(x, "The crew's books", "This book and the crew's journal, on a server, take from each other what each lacks: "+
		"once a minute while the screens are open and the server is there.", items)
	msgs := Msgs{PickList{list.On(c.unset())}}
	if said != "" {
		msgs = append(msgs, Say{said})
	}
	return msgs
}

// unset is which line of the list is to be set next; that of meeting where all is.
func (c Crew) unset() int {
	for i, s := range []string{c.Name, c.URL, c.Key} {
		if s == "" {
			return i
		}
	}
	return 5
}

func orNot(s string) string { return cmp.Or(s, "not set") }

func none(text string) string {
	if text == "-" {
		return ""
	}
	return text
}

// asksCrew asks for one thing of the crew.
func (x *Session) asksCrew(asks, likely string, put func(c *Crew, text string)) func() Msgs {
	return func() Msgs {
		return x.Asks(asks, likely, true, func(text string) (Msgs, error) {
			if text = Typed(text); text == "" {
				return nil, errors.New("type it first; Esc leaves it")
			}
			c := x.Meeting.Crew()
			put(&c, text)
			msgs, err := x.setCrew(c)
			if err != nil {
				return nil, err
			}
			return msgs.And(x.PickCrew(x.nextOfCrew())...), nil
		})
	}
}

// nextOfCrew says what is still to be set.
func (x *Session) nextOfCrew() string {
	c := x.Meeting.Crew()
	switch {
	case c.Name == "":
		return "Now the crew's name."
	case c.URL == "":
		return "Now the server's address."
	case c.Key == "":
		return "Now the key: a new one on the crew's first computer, the same on all others."
	}
	return "Set; this book meets " + c.Name + "."
}

// setCrew sets the crew, also for the next start.
func (x *Session) setCrew(c Crew) (Msgs, error) {
	if err := x.Meeting.Set(c); err != nil {
		return nil, err
	}
	x.Prefs.Crew = x.Meeting.Crew()
	return x.keepPrefs(), nil
}

// pickKey makes a key or takes one from a file.
func (x *Session) pickKey() Msgs {
	return x.Picks("The crew's key", "What the crew sends is sealed with it: all of the crew's computers have the same one, and nobody else.", []Item{
		{"read it from a file", "as on a memory stick, from the crew's first computer", x.asksCrew("File with the key:", "", func(c *Crew, text string) { c.Key = text })},
		{"make a new one", "on the crew's first computer only", func() Msgs {
			c := x.Meeting.Crew()
			if c.Name == "" {
				return Fails(errors.New("set the crew's name first"))
			}
			path, err := x.Meeting.NewKey(c.Name)
			if err != nil {
				return Fails(err)
			}
			c.Key = path
			msgs, err := x.setCrew(c)
			if err != nil {
				return Fails(err)
			}
			return msgs.And(x.PickCrew("Made: " + path + ". Take it to the others by hand, as on a memory stick; whoever has it reads all.")...)
		}},
	})
}

// CrewWords are whom the book meets, and how that stands.
func (x *Session) CrewWords() string {
	c := x.Meeting.Crew()
	if !c.Complete() {
		return "not set; this book meets nobody"
	}
	return c.Name + ", " + x.metShort()
}

func (x *Session) metShort() string {
	words, _ := x.metWords()
	if len(words) == 0 {
		return ""
	}
	return words[0]
}

// readPassed shows what was wrong with the last meeting and what was passed over.
func (x *Session) readPassed() Msgs {
	return Msgs{Read{NewPage(x, "The crew's books", "", func(width int) []paper.Line {
		m := x.Meeting.Met()
		lines := []paper.Line{nil}
		say := func(err error) {
			lines = append(append(lines, Indent(2, Wrapped(paper.Plain, Typed(err.Error()), width-4))...), nil)
		}
		if m.Err != nil {
			say(m.Err)
		}
		for _, err := range m.Passed {
			say(err)
		}
		return lines
	})}}
}
