// Package lines has the screens told in words and answered line by line: a
// question, numbered answers, a prompt. Nothing is drawn or coloured, and nothing
// that was written is written over. It is for those who hear the screen, for
// serial lines and for scripts. It drives the screens by an interface and imports
// none of them; what an answer becomes is theirs to say.
package lines

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/part"
)

// Program is the screens as they are driven by lines.
type Program interface {
	Session() *part.Session
	// Top is the screen, list, prompt or page that is answered.
	Top() part.Screen
	// Key gives the top a key; useless says that it has no use there.
	Key(tea.KeyMsg) (useless bool)
	// Do does what messages ask.
	Do(...part.Msg)
	// Said is what was said since it was last asked.
	Said() part.Status
	// Beat brings all in step with the clock and the book.
	Beat()
	// Left says whether the program was left.
	Left() bool
}

// NotTaken is an error: the input ended behind a wrong line, with lines that were
// not taken.
type NotTaken struct{ Lines int }

func (e *NotTaken) Error() string {
	return fmt.Sprintf("the input has a wrong line, and %s behind it not taken; every answer recorded before it is kept", part.Counted(e.Lines, "line"))
}

// talk is one conversation.
type talk struct {
	p      Program
	in     *source
	out    *bufio.Writer
	echo   bool // lines read are written too
	failed error

	head, told, clocks string // as told last
	dropped            int    // lines not taken, as long as nothing was taken since
}

// Talk tells and asks until the program is left or the input ends, which loses
// nothing. With echo what is read is written as well, as where the input is a file.
func Talk(p Program, in io.Reader, out io.Writer, echo bool) error {
	t := &talk{p: p, in: newSource(in), out: bufio.NewWriter(out), echo: echo}
	defer t.in.close()
	t.report()
	for !p.Left() && t.failed == nil {
		if t.in.ended { // among lines that were not taken
			t.end(line{})
			break
		}
		t.tell()
		l := t.in.next()
		if t.echo {
			t.write(l.text + " ")
		}
		if l.ended {
			t.end(l)
			break
		}
		p.Beat()
		t.answer(l)
	}
	t.flush()
	switch {
	case t.failed != nil:
		return t.failed
	case t.dropped > 0:
		return &NotTaken{t.dropped}
	}
	return nil
}

func (t *talk) flush() {
	if err := t.out.Flush(); err != nil && t.failed == nil {
		t.failed = fmt.Errorf("what is told cannot be written: %w", err)
	}
}

// end says that the input has ended. Half a line is no answer.
func (t *talk) end(l line) {
	if !t.echo {
		fmt.Fprintln(t.out)
	}
	if l.text != "" {
		t.write(fmt.Sprintf("Half a line came without its end and was not taken: %q.", l.text))
	}
	t.write("The input has ended. Every answer recorded is kept.")
}

// answer takes one line. Behind a wrong one nothing is taken that was pasted with
// it.
func (t *talk) answer(l line) {
	wrong := "that line is too long"
	if !l.long {
		wrong = t.take(l.text)
	}
	if wrong == "" {
		t.dropped = 0
		t.report()
		return
	}
	at := t.in.at
	t.dropped = t.in.drop()
	switch {
	case t.dropped == 1:
		t.write(fmt.Sprintf("Line %d was not taken: %s The line behind it was not taken either.", at, sentence(wrong)))
	case t.dropped > 1:
		t.write(fmt.Sprintf("Line %d was not taken: %s The %d lines behind it were not taken either.", at, sentence(wrong), t.dropped))
	case at > 1:
		t.write(fmt.Sprintf("Line %d was not taken: %s", at, sentence(wrong)))
	default:
		t.write("Not taken: " + sentence(wrong))
	}
	if t.dropped >= mostDropped {
		t.failed = &NotTaken{t.dropped}
	}
}

// sentence ends a text as a sentence.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

// report says what was said, and reads out a page that was laid over the screen.
func (t *talk) report() {
	if said := t.p.Said(); said.Text != "" {
		t.write(said.Text)
	}
	for range mostPages {
		page, ok := t.p.Top().(*part.Page)
		if !ok {
			return
		}
		told := page.Tell()
		t.write(append([]string{told.Question}, told.Says...)...)
		t.p.Do(part.Back{})
	}
}

// mostPages is how many pages may lie over one another.
const mostPages = 10

// take takes a line; it gives what is wrong with it, "" where it was taken.
func (t *talk) take(text string) (wrong string) {
	field := t.p.Top().Field()
	if field != nil {
		field.Clear() // what was typed before was not taken
	}
	switch {
	case text == "":
		return t.empty()
	case field != nil && field.Letters():
		return t.typed(text)
	case text == "?" || strings.EqualFold(text, "help"):
		t.help()
		return ""
	case field != nil && isQuantity(text):
		return t.fill(text)
	case number.MatchString(text):
		return t.numbered(text)
	case place.MatchString(text):
		return t.find(text)
	}
	return t.word(text)
}

// typed takes a text where every letter is text, but for the way back.
func (t *talk) typed(text string) string {
	switch strings.ToLower(text) {
	case "esc", "back":
		return t.key(tea.KeyMsg{Type: tea.KeyEsc})
	case "?":
		t.help()
		return ""
	}
	return t.fill(text)
}

// isQuantity says whether a text is one for a field of numbers.
func isQuantity(text string) bool {
	return strings.ContainsAny(text[:1], "0123456789.-") && text != "-"
}

// empty takes what is likely.
func (t *talk) empty() string {
	now := t.telling()
	if now.Likely != "" {
		return t.key(tea.KeyMsg{Type: tea.KeyEnter})
	}
	if now.Asks != "" {
		return "type " + now.Asks
	}
	if a := answersOf(now); a != "" {
		return "nothing is likely here, look first; answer " + a
	}
	return "there is nothing to take here; ? lists the words"
}

// numbered takes an answer by its number.
func (t *talk) numbered(text string) string {
	now := t.telling()
	for _, a := range now.Answers {
		if a.Key != text {
			continue
		}
		if list, ok := t.p.Top().(part.Numbered); ok {
			n, _ := strconv.Atoi(text)
			t.p.Do(list.Number(n)...)
			return t.wrong(false)
		}
		return t.key(runes(text))
	}
	if len(now.Answers) == 0 {
		return text + " is no answer here; ? lists the words"
	}
	var all []string
	for _, a := range now.Answers {
		all = append(all, a.Key+" "+a.Word)
	}
	return text + " is no answer here; the answers are " + strings.Join(all, ", ")
}

// find goes to a stump.
func (t *talk) find(where string) string {
	if wrong := t.key(runes("/")); wrong != "" {
		return wrong
	}
	return t.prompted(where)
}

// word takes a word, with a text behind it where its prompt asks for one.
func (t *talk) word(text string) string {
	word, rest := worded(text)
	switch strings.ToLower(word) {
	case "map", "v":
		if m, ok := t.p.Top().(part.Mapper); ok && rest == "" {
			return t.rows(m, 0)
		}
	case "row":
		if m, ok := t.p.Top().(part.Mapper); ok && number.MatchString(rest) {
			n, _ := strconv.Atoi(rest)
			return t.rows(m, n)
		}
	}
	k, ok := keyNamed(text)
	if ok {
		return t.key(k)
	}
	if k, ok = keyNamed(word); !ok {
		return fmt.Sprintf("%q is no answer and no word here; ? lists the words", text)
	}
	if rest != "" && !takesText[k.String()] {
		return fmt.Sprintf("%s takes no text behind it; give one answer a line", word)
	}
	if wrong := t.key(k); wrong != "" || rest == "" {
		return wrong
	}
	return t.prompted(rest)
}

// takesText are the keys that ask for a text.
var takesText = map[string]bool{"/": true, "m": true, "h": true, "t": true, "M": true, "H": true, "T": true}

// prompted answers the prompt that a word has laid over the screen.
func (t *talk) prompted(text string) string {
	if _, ok := t.p.Top().(*part.Prompt); !ok {
		return t.wrong(false)
	}
	t.p.Top().Field().Clear()
	wrong := t.fill(text)
	if wrong != "" {
		t.key(tea.KeyMsg{Type: tea.KeyEsc})
		t.p.Said()
	}
	return wrong
}

// rows tells rows of stumps.
func (t *talk) rows(m part.Mapper, row int) string {
	told, err := m.Map(row)
	if err != nil {
		return err.Error()
	}
	t.write(told...)
	return ""
}

// fill types a text and takes it.
func (t *talk) fill(text string) string {
	field := t.p.Top().Field()
	if field == nil {
		return "nothing is typed here"
	}
	if n := len([]rune(text)); n > part.FieldLimit {
		return fmt.Sprintf("%d letters are too many; at most %d", n, part.FieldLimit)
	}
	field.Paste(text)
	return t.key(tea.KeyMsg{Type: tea.KeyEnter})
}

// key gives the top a key and says what was wrong with it.
func (t *talk) key(k tea.KeyMsg) string { return t.wrong(t.p.Key(k)) }

// wrong is what the screen says is wrong, "" for nothing. What else it says stays
// said.
func (t *talk) wrong(useless bool) string {
	said := t.p.Said()
	if said.Failed || useless {
		return said.Text
	}
	t.write(said.Text)
	return ""
}

// help lists the words of the screen on top.
func (t *talk) help() {
	t.write("Answer with the number of an answer, or type what is asked for; an empty line takes what is likely, where anything is.",
		"One answer a line. Several lines pasted are taken in their order, up to the first that is wrong.",
		"These words are taken as well:",
		"esc or back: one step back.", "?: these words.", "q or quit: leave the program; every answer is kept.")
	if _, ok := t.p.Top().(part.Mapper); ok {
		t.write("map or v: every row in words.", "row 4: one row, stump by stump.")
	}
	t.write("/4 17 or 4/17: go to row 4, tree 17.", "m TEXT: a note.", "h RK: another hand.", "t 13:40: answers are for an earlier time.",
		"practice: made-up cases to judge, apart from the book.")
	for _, row := range t.table() {
		if key := row.Help().Key; row.Says != "" && key != "Esc" && key != "v" && !strings.HasPrefix(key, "arrows") {
			t.write(key + ": " + row.Says)
		}
	}
}
