package part

import (
	"strconv"
	"strings"

	"barkslip/core/unit"
)

// Telling is what a screen says in words alone, for those who hear it or read it
// line by line. Nothing of it is drawn.
type Telling struct {
	Head     string   // which block and stump, or which screen; said when it changes
	Question string   // the question, or what is told, in a sentence
	Says     []string // what belongs to it, a sentence or more each
	Answers  []Told   // by number
	Asks     string   // what is typed, in a few words; "" where nothing is
	Likely   string   // what an empty line takes; "" where it takes nothing
}

// Told is one answer, by the digit that gives it.
type Told struct{ Key, Word, Meaning string }

// Words are the answer in one line.
func (a Told) Words() string {
	words := a.Key + " " + a.Word
	if a.Meaning != "" {
		words += ": " + a.Meaning
	}
	return words
}

// SpokenWidth is the window of a session that is told in words: no line of it is
// broken, the reader does that.
const SpokenWidth, spokenHeight = 4000, 400

// Speak has the session be told in words: nothing is drawn and no line is broken.
func (x *Session) Speak() {
	x.spoken, x.Plain = true, false
	x.Width, x.Height = SpokenWidth, spokenHeight
}

// Spoken says whether the session is told in words.
func (x *Session) Spoken() bool { return x.spoken }

// Measure is how wide a text is set in some room: no wider than can be read with
// ease, but where it is spoken.
func (x *Session) Measure(room int) int {
	if x.spoken {
		return room
	}
	return min(room, 96)
}

// Teller is a screen that tells itself in words.
type Teller interface{ Tell() Telling }

// Mapper is a screen that tells rows of stumps in words: one row stump by stump,
// or all of them for row 0.
type Mapper interface {
	Map(row int) ([]string, error)
}

// Numbered is a list whose items are picked by their number, from 1.
type Numbered interface{ Number(n int) Msgs }

// Tell is what is asked.
func (p *Prompt) Tell() Telling {
	if w := p.which; w != nil {
		return Telling{Question: w.Given + " is which day?", Answers: []Told{{"1", w.First.Long(), ""}, {"2", w.Second.Long(), ""}}}
	}
	return Telling{Question: p.asks, Asks: "text", Likely: p.likely}
}

// Tell is the items by number.
func (l *List) Tell() Telling {
	t := Telling{Question: l.title}
	if l.why != "" {
		t.Says = []string{l.why}
	}
	for i, item := range l.items {
		t.Answers = append(t.Answers, Told{strconv.Itoa(i + 1), item.Word, item.Meaning})
	}
	if l.at >= 0 && l.at < len(l.items) {
		t.Likely = strconv.Itoa(l.at+1) + ", " + l.items[l.at].Word
	}
	return t
}

// Number picks an item by its number.
func (l *List) Number(n int) Msgs { return l.take(n - 1) }

// Tell is the whole page.
func (p *Page) Tell() Telling {
	t := Telling{Question: p.title + ", " + p.where}
	for _, l := range p.Lines() {
		t.Says = append(t.Says, l.Words())
	}
	return t
}

// ClockWords is what runs by the minute on all blocks, "" where nothing does.
func (x *Session) ClockWords() string {
	now := x.Now()
	white, _ := x.Clocks.words(now)
	var words []string
	for _, w := range []string{x.Clocks.Late(x.Book.Folded(), now), white, x.Clocks.Tops(now, mostNamed)} {
		if w != "" {
			words = append(words, w)
		}
	}
	return strings.Join(words, "; ")
}

// StandingWords is what must be known of all that is told: that the block is made
// up, that nothing is written, that answers are for an earlier time; "" for a book
// as any.
func (x *Session) StandingWords() string {
	var words []string
	if mark := x.mark(); mark != "" {
		words = append(words, mark)
	}
	if !x.Earlier.IsZero() && x.Site() != nil {
		words = append(words, "answers are for "+unit.When(x.Earlier, x.Now(), x.Site().Zone))
	}
	return strings.Join(words, "; ")
}
