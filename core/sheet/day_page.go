package sheet

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/unit"
)

// How a day's sheet is laid out, in mm and points.
const (
	margin     = 16.0
	placeAt    = margin + 7.5
	tasksAt    = margin + 31.0
	writeWide  = 50.0 // room to write, at the right edge
	leastHigh  = 11.5 // of a stop, so that there is room to write
	footHigh   = 18.0 // kept at the foot of a page
	whyPoints  = 8.0
	bodyPoints = 9.5
	gutter     = 8.0
)

// dayPen lays out one hand's sheet.
type dayPen struct {
	font  Font
	size  Size
	day   Day
	part  Part
	pages []Page
	y     float64 // where the next stop begins
}

// DayPages lays out the day's sheets.
func DayPages(d Day, font Font, made time.Time) Doc {
	doc := Doc{Title: d.Block + ", " + d.On.Long(), Made: made, Size: SizeFor(d.Units)}
	for _, part := range d.Parts {
		p := dayPen{font: font, size: doc.Size, day: d, part: part}
		p.lay()
		doc.Pages = append(doc.Pages, p.pages...)
	}
	return doc
}

// page is the page that is written on.
func (p *dayPen) page() *Page { return &p.pages[len(p.pages)-1] }

func (p *dayPen) text(t Text) { p.page().Texts = append(p.page().Texts, t) }

func (p *dayPen) rule(y, thick float64, faint bool) {
	p.page().Lines = append(p.page().Lines, Line{X1: margin, Y1: y, X2: p.right(), Y2: y, Thick: thick, Faint: faint})
}

func (p *dayPen) right() float64 { return p.size.Wide - margin }

// handWords are whose sheet it is.
func (p *dayPen) handWords() string {
	switch {
	case p.part.Hand != "":
		return p.part.Hand
	case p.part.Open:
		return "hand: ____________"
	}
	return "nobody's yet"
}

func (p *dayPen) dayWords() string { return p.day.On.Weekday().String() + ", " + p.day.On.Long() }

func (p *dayPen) lay() {
	p.firstPage()
	if len(p.part.Stops) == 0 {
		p.text(Text{X: margin, Y: p.y + 8, Words: p.nothing(), Points: 11})
	}
	row := 0
	for _, s := range p.part.Stops {
		high, why := p.measure(s)
		head := 0.0
		if s.Row != row {
			head = 8.5
		}
		if p.y+head+high > p.size.High-footHigh {
			p.nextPage()
			head = 8.5 // the row is named again
		}
		if head > 0 {
			p.text(Text{X: margin, Y: p.y + 6, Words: fmt.Sprintf("Row %d", s.Row), Points: 8.5, Faint: true})
			p.y += head
			p.rule(p.y, thin, false)
		}
		row = s.Row
		p.stop(s, high, why)
	}
	p.feet()
}

// nothing says that the sheet is empty, and why it may be.
func (p *dayPen) nothing() string {
	switch {
	case p.part.Hand != "" && !p.part.Open:
		return "Nothing that is due on this day was given to " + p.part.Hand + "."
	case len(p.day.Rows) > 0:
		return "Nothing is due on this day in " + rowWords(p.day.Rows) + "."
	}
	return "Nothing is due on this day."
}

// firstPage begins with the block, the day, the hand, the heat and the load.
func (p *dayPen) firstPage() {
	p.pages = append(p.pages, Page{})
	wide := p.right() - margin
	day := p.dayWords()
	p.text(Text{X: p.right(), Y: 24, Words: day, Points: 11, Side: FromRight})
	room := wide - p.font.Width(day, 11, false) - gutter
	points := widest(p.font, p.day.Block, true, room, 22, 13)
	p.text(Text{X: margin, Y: 24, Words: fit(p.font, p.day.Block, points, true, room), Points: points, Bold: true})
	p.text(Text{X: p.right(), Y: 31, Words: fit(p.font, p.handWords(), 11, true, wide/2), Points: 11, Bold: true, Side: FromRight})
	p.text(Text{X: margin, Y: 31, Words: fit(p.font, p.counted(), bodyPoints, false, wide/2), Points: bodyPoints, Faint: true})
	p.rule(35, firm, false)
	half := (wide - gutter) / 2
	load := p.part.Load
	if len(load) == 0 {
		load = []string{"nothing beyond what is always carried"}
	}
	left := p.column(margin, 42, half, "Heat and white paint", p.day.Heat)
	right := p.column(margin+half+gutter, 42, half, "To load", []string{strings.ToUpper(load[0][:1]) + strings.Join(load, "; ")[1:] + "."})
	p.y = max(left, right) + 1
}

// column writes sentences under a heading and gives where they end.
func (p *dayPen) column(x, y, wide float64, heading string, says []string) float64 {
	p.text(Text{X: x, Y: y, Words: heading, Points: 8.5, Faint: true})
	y += 5
	for _, s := range says {
		for _, line := range wrap(p.font, s, bodyPoints, wide) {
			p.text(Text{X: x, Y: y, Words: line, Points: bodyPoints})
			y += 4.6
		}
	}
	return y
}

// counted says how much there is to do.
func (p *dayPen) counted() string {
	words := []string{unit.Count(len(p.part.Stops), "stump")}
	if p.part.Late > 0 {
		words = append(words, fmt.Sprintf("%d late", p.part.Late))
	}
	if p.part.Walk != "" {
		words = append(words, p.part.Walk+" to walk")
	}
	if len(p.day.Rows) > 0 {
		words = append(words, rowWords(p.day.Rows)+" only")
	}
	return strings.Join(words, ", ")
}

// rowWords names rows: row 4, rows 4 and 6.
func rowWords(rows []int) string {
	words := make([]string, len(rows))
	for i, r := range rows {
		words[i] = fmt.Sprint(r)
	}
	if len(words) == 1 {
		return "row " + words[0]
	}
	last := len(words) - 1
	return "rows " + strings.Join(words[:last], ", ") + " and " + words[last]
}

func (p *dayPen) nextPage() {
	p.pages = append(p.pages, Page{})
	p.y = margin
}

// measure is how high a stop is, and why each of its tasks is due, in lines.
func (p *dayPen) measure(s Stop) (high float64, why [][]string) {
	wide := p.right() - writeWide - tasksAt - 4
	high = 3.0
	for _, t := range s.Tasks {
		lines := wrap(p.font, t.Why, whyPoints, wide)
		why = append(why, lines)
		high += 4.6 + float64(len(lines))*3.6
	}
	if s.Note != "" {
		lines := wrap(p.font, "Note: "+s.Note, whyPoints, wide)
		lines = lines[:min(len(lines), 3)]
		why = append(why, lines)
		high += float64(len(lines)) * 3.6
	}
	return max(high, leastHigh), why
}

// stop writes one stump: a box to tick, its place, what it needs and why, and to
// the right room to write.
func (p *dayPen) stop(s Stop, high float64, why [][]string) {
	const box = 3.4
	top := p.y + 2.8
	square := []Point{{margin, top}, {margin + box, top}, {margin + box, top + box}, {margin, top + box}}
	p.page().Shapes = append(p.page().Shapes, Shape{Thick: thin, Points: square})
	p.text(Text{X: placeAt, Y: p.y + 6.1, Words: s.Place, Points: widest(p.font, s.Place, true, tasksAt-placeAt-2, 13, 8), Bold: true})
	y := p.y + 5.6
	for i, t := range s.Tasks {
		p.text(Text{X: tasksAt, Y: y, Words: t.Name, Points: 10, Bold: true})
		p.text(Text{X: tasksAt + p.font.Width(t.Name, 10, true) + 2.2, Y: y, Words: t.When, Points: bodyPoints, Bold: t.Late})
		y = p.small(y, why[i])
		y += 4.6
	}
	if s.Note != "" {
		p.small(y-4.6, why[len(why)-1])
	}
	p.y += high
	p.rule(p.y, hairline, true)
}

// small writes lines of small text under a line and gives where the last is.
func (p *dayPen) small(y float64, lines []string) float64 {
	for _, l := range lines {
		y += 3.6
		p.text(Text{X: tasksAt, Y: y, Words: l, Points: whyPoints, Faint: true})
	}
	return y
}

// feet writes block, day, hand and page under each page.
func (p *dayPen) feet() {
	y, wide := p.size.High-10, p.right()-margin
	for i := range p.pages {
		page := fmt.Sprintf("page %d of %d", i+1, len(p.pages))
		tail := " · " + p.dayWords() + " · " + p.handWords()
		room := wide - p.font.Width(page, 8, false) - gutter
		words := fit(p.font, p.day.Block, 8, false, room-p.font.Width(tail, 8, false)) + tail
		p.pages[i].Texts = append(p.pages[i].Texts,
			Text{X: margin, Y: y, Words: words, Points: 8, Faint: true},
			Text{X: p.right(), Y: y, Words: page, Points: 8, Faint: true, Side: FromRight})
	}
}
