package ui

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/list"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// firstScreen begins a block: one question after another, each with a likely
// answer. Nothing is written until the last is answered.
type firstScreen struct {
	r     *root
	x     *shared
	at    int // question asked
	field field
	begun bool // past the choice of how to begin
	list  bool // from a list
	given map[string]string
}

// firstQuestion is one question of the form.
type firstQuestion struct {
	name, question, because, asks string
	likely                        func(f *firstScreen) string
	check                         func(f *firstScreen, text string) error
	skip                          func(f *firstScreen) bool
}

func newFirst(r *root) *firstScreen {
	return &firstScreen{r: r, x: r.x, given: map[string]string{}, field: field{any: true}}
}

func always(s string) func(*firstScreen) string { return func(*firstScreen) string { return s } }

var firstQuestions = []firstQuestion{
	{"hand", "Whose hand is it?", "Your initials go with every answer.", "initials, such as RK",
		func(f *firstScreen) string { return f.x.Prefs.Hand }, checkHand, func(f *firstScreen) bool { return f.x.hand != "" }},
	{"name", "What is the block called?", "The name on the gate will do.", "name", always(""), notEmpty, nil},
	{"file", "Which list?", "A CSV file with columns row and tree; also limb, across, stock, variety, note.", "path of the file", always(""), checkFile,
		func(f *firstScreen) bool { return !f.list }},
	{"rows", "How many rows?", "Rows are numbered from 1.", "rows", always("12"), wholeUpTo(record.MaxRow), func(f *firstScreen) bool { return f.list }},
	{"trees", "How many trees in a row?", "Trees are numbered from 1 along each row; gaps can be left standing.", "trees", always("20"), checkTrees, func(f *firstScreen) bool { return f.list }},
	{"units", "Inches, or metric?", "Lengths may be typed in either at any time.", "us or metric", always("us"), checkUnits, nil},
	{"zone", "In which time zone does the block lie?", "Days and clocks are the block's own, not the laptop's.", "time zone", func(f *firstScreen) string { return f.x.LocalZone }, checkZone, nil},
	{"place", "Where does it lie?", "For sunrise and the heat of the sun on a sealed graft. Leave it empty if you do not know.", "latitude longitude, such as 42.7 -77.2", always("-"), checkPlace, nil},
	{"variety", "Which variety is planned?", "A stump can have its own. Wood of another variety is warned of.", "variety", always("-"), nil, nil},
	{"graft-height", "At what height do you want the grafts?", "The cut-back stands 6 in higher, for the fresh cut.", "height", func(f *firstScreen) string {
		if f.given["units"] == "metric" {
			return "90cm"
		}
		return "36in"
	}, checkHeight, nil},
}

func notEmpty(_ *firstScreen, text string) error {
	if text == "" {
		return errors.New("type a name first")
	}
	return nil
}

func checkHand(f *firstScreen, text string) error {
	return checkInitials(text)
}

func wholeUpTo(most int) func(*firstScreen, string) error {
	return func(_ *firstScreen, text string) error {
		if n, err := strconv.Atoi(text); err != nil || n < 1 || n > most {
			return &unit.Error{Given: text, Accepted: fmt.Sprintf("a whole number from 1 to %d", most)}
		}
		return nil
	}
}

// mostStumps is the most stumps one block may be begun with.
const mostStumps = 200_000

func checkTrees(f *firstScreen, text string) error {
	if err := wholeUpTo(record.MaxTree)(f, text); err != nil {
		return err
	}
	rows, _ := strconv.Atoi(f.given["rows"])
	trees, _ := strconv.Atoi(text)
	if rows*trees > mostStumps {
		return fmt.Errorf("%d rows of %d are %d stumps; a block begins with at most %d", rows, trees, rows*trees, mostStumps)
	}
	return nil
}

func checkUnits(_ *firstScreen, text string) error { _, err := unit.ParseSystem(text); return err }

func checkZone(f *firstScreen, text string) error {
	_, err := readZone(f.x.Zones, text)
	return err
}

func checkPlace(f *firstScreen, text string) error {
	_, _, err := place(text)
	return err
}

func checkHeight(f *firstScreen, text string) error {
	l, err := unit.ParseLength(text, f.units().Bare())
	if err == nil && (l < 4*unit.Inch || l > 5*unit.Metre) {
		err = &unit.Error{Given: text, Accepted: "a height from 4 in (10 cm) to 5 m"}
	}
	return err
}

func (f *firstScreen) units() unit.System {
	sys, _ := unit.ParseSystem(f.given["units"])
	return sys
}

func checkFile(f *firstScreen, text string) error {
	_, err := f.readList(text)
	return err
}

// readList reads the stump list; what is wrong with it is said by line and
// column.
func (f *firstScreen) readList(path string) (list.List, error) {
	if path == "" {
		return list.List{}, errors.New("type the path of the list first")
	}
	file, err := f.x.OpenFile(path)
	if err != nil {
		return list.List{}, fmt.Errorf("the list cannot be opened: %s", paper.Shorten(path, 60))
	}
	defer file.Close()
	l, problems := list.Read(file, f.units().Bare())
	if len(problems) > 0 {
		return l, fmt.Errorf("nothing added: %s (%d in all)", problems[0], len(problems))
	}
	return l, nil
}

func (f *firstScreen) key(key string) {
	switch {
	case !f.begun:
		f.begin(key)
	case key == "enter":
		f.answer()
	case key == "esc":
		f.back()
	default:
		f.field.typed(key)
	}
}

// begin takes the choice of how to begin.
func (f *firstScreen) begin(key string) {
	switch key {
	case "1", "enter", "2":
		f.begun, f.list = true, key == "2"
		f.at = -1
		f.next()
	case "3":
		if err := f.sample(); err != nil {
			f.x.fail(err)
		}
	case "esc":
		if len(f.x.Book.Folded().List()) > 0 {
			f.r.openBlock()
		}
	default:
		if !press(f.r.common(func() { f.r.help("start", f.r.common(nil)[:2]) })[:2], key) {
			f.x.say("1, 2 or 3.")
		}
	}
}

func (f *firstScreen) sample() error {
	if f.x.Sample == nil {
		return errors.New("the sample block is not to be had here")
	}
	if err := f.x.Sample(); err != nil {
		return err
	}
	f.x.block, f.x.sums = record.None, nil
	f.x.clocks.refresh(f.x)
	f.x.say("A made-up block, to try things on. Nothing in it is real.")
	f.r.start()
	return nil
}

// next goes to the next question that is not skipped, or makes the block.
func (f *firstScreen) next() {
	for f.at++; f.at < len(firstQuestions); f.at++ {
		if q := firstQuestions[f.at]; q.skip == nil || !q.skip(f) {
			f.field = field{any: true, text: f.given[q.name]}
			return
		}
	}
	if err := f.make(); err != nil {
		f.x.fail(err)
		f.back()
	}
}

func (f *firstScreen) back() {
	for f.at--; f.at >= 0; f.at-- {
		if q := firstQuestions[f.at]; q.skip == nil || !q.skip(f) {
			f.field = field{any: true, text: f.given[q.name]}
			return
		}
	}
	f.begun = false
}

func (f *firstScreen) answer() {
	q := firstQuestions[f.at]
	text := strings.TrimSpace(record.Clean(f.field.text))
	if text == "" {
		text = q.likely(f)
	}
	if q.check != nil {
		if err := q.check(f, text); err != nil {
			f.x.fail(err)
			return
		}
	}
	f.x.say("")
	f.given[q.name] = text
	if q.name == "hand" {
		f.x.hand = strings.ToUpper(text)
		f.x.Prefs.Hand = f.x.hand
		f.x.savePrefs()
	}
	f.next()
}

// make writes the block, its settings and its stumps in one transaction.
func (f *firstScreen) make() error {
	ended := f.x.OwnDay != nil && f.x.OwnDay()
	if ended { // work of a real block is dated by the real day
		if err := f.x.EndOwnDay(); err != nil {
			return err
		}
	}
	var id record.ID
	if _, err := f.x.Random.Read(id[:]); err != nil {
		return err
	}
	bodies := []record.Body{&record.BlockMade{Block: id, Name: f.given["name"]}}
	set := func(name, value string) {
		if value != "" && value != "-" {
			bodies = append(bodies, &record.BlockSet{Block: id, Setting: name, Value: value})
		}
	}
	lat, lon, _ := place(f.given["place"])
	set("units", f.units().String())
	zone, err := readZone(f.x.Zones, f.given["zone"])
	if err != nil {
		return err
	}
	set("zone", zone)
	set("latitude", lat)
	set("longitude", lon)
	set("variety", f.given["variety"])
	set("graft-height", f.height())
	set("species", "walnut")
	events, err := f.stumps(id)
	if err != nil {
		return err
	}
	all, err := f.x.Book.Folded().Answer(record.Given{Bodies: bodies, At: f.x.Now(), Hand: f.x.hand})
	if err != nil {
		return err
	}
	out, err := f.x.Book.Append(append(all, events...)...)
	if err != nil {
		return err
	}
	f.x.answered(out)
	f.x.block = id
	f.r.openBlock()
	said := fmt.Sprintf("%s: %s. Everything can be changed with o.", f.given["name"], counted(len(events), "stump"))
	if ended {
		said += " The made-up day is over: the clock is yours."
	}
	f.x.say(said)
	return nil
}

// height is the graft height with a unit.
func (f *firstScreen) height() string {
	l, err := unit.ParseLength(f.given["graft-height"], f.units().Bare())
	if err != nil {
		return ""
	}
	return f.units().Length(l)
}

func (f *firstScreen) stumps(id record.ID) ([]record.Event, error) {
	at := f.x.Now().Truncate(time.Second)
	var events []record.Event
	add := func(s record.StumpID, body *record.StumpAdded) {
		events = append(events, record.Event{At: at, Hand: f.x.hand, Stump: s, Body: body})
	}
	if f.list {
		l, err := f.readList(f.given["file"])
		if err != nil {
			return nil, err
		}
		for _, r := range l.Rows {
			add(record.FromList(id, r))
		}
		return events, nil
	}
	rows, _ := strconv.Atoi(f.given["rows"])
	trees, _ := strconv.Atoi(f.given["trees"])
	for r := 1; r <= rows; r++ {
		for t := 1; t <= trees; t++ {
			add(record.StumpID{Block: id, Row: uint16(r), Tree: uint16(t)}, &record.StumpAdded{})
		}
	}
	return events, nil
}

func (f *firstScreen) frame() frame {
	width := min(f.x.width-4, 76)
	out := frame{title: "Barkslip", where: "a new block"}
	var lines []paper.Line
	if !f.begun {
		lines = []paper.Line{nil, paper.Text(paper.Strong, "How do you want to begin?"), nil}
		lines = append(lines, wrapped(paper.Plain, "Barkslip takes you through a block of walnuts to be grafted, stump by stump, and knows what each needs next.", width)...)
		lines = append(lines, nil)
		for _, c := range [][3]string{{f.x.dot() + "1", "a block", "by name, rows and trees"}, {"  2", "a list", "stumps from a CSV file"}, {"  3", "the sample", "a made-up block, to try things on"}} {
			lines = append(lines, paper.Line{{Text: c[0] + "  ", Ink: paper.Accent}, {Text: c[1], Ink: paper.Strong}}.Pad(19).Add(paper.Faint, c[2]))
		}
		out.keys = keyLine(f.r.common(func() {})[:2], f.x.width)
	} else {
		q := firstQuestions[f.at]
		lines = []paper.Line{nil, paper.Text(paper.Strong, q.question), nil}
		lines = append(lines, wrapped(paper.Plain, q.because, width)...)
		lines = append(lines, nil, paper.Text(paper.Faint, q.asks), f.field.line(q.likely(f), width))
		out.keys = paper.Text(paper.Faint, " Enter takes it   Esc back   ctrl+c leaves")
	}
	out.body = indent(2, lines)
	return out
}
