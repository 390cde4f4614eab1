package ui

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/mattn/go-runewidth"
	"github.com/muesli/termenv"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// TestMain sees to it that colours and widths do not depend on the terminal the
// tests are run in. As a child process it opens the screens instead.
func TestMain(m *testing.M) {
	if os.Getenv(childVariable) != "" {
		os.Exit(child())
	}
	lipgloss.SetColorProfile(termenv.ANSI256)
	runewidth.DefaultCondition.EastAsianWidth = false
	os.Exit(m.Run())
}

// childVariable makes the test program open the screens on the book it names.
const childVariable = "BARKSLIP_UI_TEST_CHILD"

// home is the block that plant makes.
var home = record.ID{1, 2, 3}

// plant puts a block with stumps straight into the book and opens it.
func (d *driver) plant(name string, places ...[2]int) {
	d.t.Helper()
	bodies := []record.Body{&record.BlockMade{Block: home, Name: name}}
	for setting, value := range map[string]string{"zone": "America/New_York", "units": "us", "latitude": "42.7", "longitude": "-77.2",
		"variety": "Lantern", "graft-height": "36in", "species": "walnut"} {
		bodies = append(bodies, &record.BlockSet{Block: home, Setting: setting, Value: value})
	}
	var events []record.Event
	for _, b := range bodies {
		events = append(events, record.Event{At: d.now, Hand: "RK", Body: b})
	}
	for _, p := range places {
		events = append(events, record.Event{At: d.now, Hand: "RK", Stump: tree(p[0], p[1]), Body: &record.StumpAdded{}})
	}
	d.append(events...)
	d.open()
}

func (d *driver) append(events ...record.Event) {
	d.t.Helper()
	if _, err := d.book.Append(events...); err != nil {
		d.t.Fatal(err)
	}
}

// did puts answers for one stump straight into the book, all at one time.
func (d *driver) did(id record.StumpID, when string, bodies ...record.Body) {
	d.t.Helper()
	var events []record.Event
	for _, b := range bodies {
		events = append(events, record.Event{At: at(when), Hand: "RK", Stump: id, Body: b})
	}
	d.append(events...)
}

func tree(row, tree int) record.StumpID {
	return record.StumpID{Block: home, Row: uint16(row), Tree: uint16(tree)}
}

// rows is rows of the same number of trees.
func rows(number, trees int) [][2]int {
	var out [][2]int
	for r := 1; r <= number; r++ {
		for t := 1; t <= trees; t++ {
			out = append(out, [2]int{r, t})
		}
	}
	return out
}

func inches(n float64) record.Measure {
	return record.Measured(unit.Length(n)*unit.Inch, unit.US)
}

// cut is the answers of part 1.
func cut() []record.Body {
	return []record.Body{
		&record.NurseJudged{Limbs: 1, Nearest: inches(24), Leaf: "some"}, &record.CutBack{Height: inches(42)},
		&record.Gashed{Number: 2, Depth: inches(0.5)},
	}
}

// graft is the answers of a graft day up to the last of three scions, which is
// as good as the others.
func graft() []record.Body {
	wood := record.WoodChosen{Variety: "Lantern", Thickness: inches(0.5), Nodes: []record.Node{{Buds: record.Paired}, {Buds: record.Paired}}}
	out := []record.Body{
		&record.Looked{Bleeding: record.Dry}, &record.Looked{Slip: record.SlipsClean}, &record.Gashed{Number: 2, Depth: inches(0.5)},
		&record.FreshCut{Height: inches(36)}, &record.Looked{Bleeding: record.Dry}, &record.StumpMeasured{Across: inches(3.4)},
		&record.SlotsMarked{Slots: []record.Slot{{Bearing: 22.5}, {Bearing: 142.5}, {Bearing: 262.5}}}, &wood,
	}
	for n := 1; n <= 3; n++ {
		out = append(out, &record.ScionSet{Slot: n, Variety: "Lantern", Thickness: wood.Thickness, Nodes: wood.Nodes, Checks: record.AllGood})
	}
	return out
}

// sealed puts a stump straight to where its white clock runs.
func (d *driver) sealed(id record.StumpID, cutBack, day, sealed string) {
	d.did(id, cutBack, cut()...)
	d.did(id, day, graft()...)
	d.did(id, sealed, &record.Sealed{Cover: record.Wrapped})
}

// goTo opens a stump by its place.
func (d *driver) goTo(row, tree int) {
	d.t.Helper()
	d.press("/", fmt.Sprintf("%d/%d", row, tree), "enter")
	if d.walk().ID().Row != uint16(row) || d.walk().ID().Tree != uint16(tree) {
		d.t.Fatalf("%d/%d did not open:\n%s", row, tree, d.screen())
	}
}

// wait moves the clock on.
func (d *driver) wait(by time.Duration) {
	d.now = d.now.Add(by)
	d.root.Update(tick(d.now))
}

// burst sends several letters in one message, as a terminal does when keys come
// fast.
func (d *driver) burst(letters string) {
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(letters)})
}

// hold sends a key again and again as a key held down does.
func (d *driver) hold(key string, times int, every time.Duration) {
	for range times {
		d.hand = d.hand.Add(every - time.Second) // send adds a second
		d.press(key)
	}
}

// lacks fails if the screen shows the words.
func (d *driver) lacks(words ...string) {
	d.t.Helper()
	screen := d.screen()
	flat := strings.Join(strings.Fields(screen), " ")
	for _, w := range words {
		if strings.Contains(flat, w) {
			d.t.Fatalf("the screen shows %q:\n%s", w, screen)
		}
	}
}

// on fails unless the open stump asks the step.
func (d *driver) on(step walk.StepID) {
	d.t.Helper()
	if !is[*stump.Screen](d) || d.walk().Asked().Step.ID != step {
		d.t.Fatalf("the step is not %s:\n%s", step, d.screen())
	}
}

func (d *driver) step() walk.StepID { return d.walk().Asked().Step.ID }

// live is the answers of the open stump that stand, newest last, without the
// stump's own adding.
func (d *driver) live() []record.Event {
	d.t.Helper()
	var out []record.Event
	for _, e := range d.stump().Live {
		if _, added := e.Body.(*record.StumpAdded); !added {
			out = append(out, e)
		}
	}
	return out
}

// newest is the newest standing answer, which must be of type T.
func newest[T record.Body](d *driver) (record.Event, T) {
	d.t.Helper()
	var none T
	live := d.live()
	if len(live) == 0 {
		d.t.Fatalf("nothing stands:\n%s", d.screen())
	}
	e := live[len(live)-1]
	body, ok := e.Body.(T)
	if !ok {
		d.t.Fatalf("the newest answer is %s, not %T:\n%s", e.Body.Kind(), none, d.screen())
	}
	return e, body
}

// pickWord takes the item of the open list that has the word.
func (d *driver) pickWord(word string) {
	d.t.Helper()
	list, ok := d.root.top().(interface {
		Items() []part.Item
		KeyOf(int) string
	})
	if !ok {
		d.t.Fatalf("no list is open:\n%s", d.screen())
	}
	for i, item := range list.Items() {
		if item.Word == word {
			d.press(list.KeyOf(i))
			return
		}
	}
	d.t.Fatalf("the list has no %q:\n%s", word, d.screen())
}

// choose takes the choice of the question that has the word.
func (d *driver) choose(word string) {
	d.t.Helper()
	for _, ch := range d.walk().Asked().Choices {
		if ch.Word == word {
			d.press(ch.Key)
			return
		}
	}
	d.t.Fatalf("no choice %q:\n%s", word, d.screen())
}

// files lets the screens open files that are only texts.
func (d *driver) files(texts map[string]string) {
	d.root.x.OpenFile = func(path string) (io.ReadCloser, error) {
		text, ok := texts[path]
		if !ok {
			return nil, errors.New("no such file")
		}
		return io.NopCloser(strings.NewReader(text)), nil
	}
}
