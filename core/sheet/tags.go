package sheet

import (
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Tag is what hangs on a grafted tree.
type Tag struct {
	Block, Place, Long string
	Variety, Lot, Hand string // several are parted by commas; "" where not told
	Date               string
}

// TagsOf is a tag for each stump that carries grafts, in walking order: of the rows
// asked for, grafted on the day and by the hand asked for, where they are.
func TagsOf(a Ask) (tags []Tag, err error) {
	sums := slices.Clone(a.Sums)
	slices.SortFunc(sums, func(x, y due.Summary) int { return x.ID.WalkCompare(y.ID) })
	for _, sum := range sums {
		gone := sum.Stage == record.StageFailed || sum.Stage == record.StageGivenUp
		if sum.Scions == 0 || sum.Set == 0 || gone || !a.wants(sum.ID) || a.On != 0 && sum.Set != a.On {
			continue
		}
		s, err := a.Stump(sum.ID)
		if err != nil {
			return nil, err
		}
		tag, byHand := a.tag(s, sum.Set)
		if a.Hand == "" || byHand {
			tags = append(tags, tag)
		}
	}
	return tags, nil
}

// tag is the tag of a stump, and whether the hand asked for set a scion on it.
func (a Ask) tag(s *record.Stump, set unit.Date) (t Tag, byHand bool) {
	var varieties, lots, hands []string
	add := func(to *[]string, word string) {
		if word = clean(word); word != "" && !slices.Contains(*to, word) {
			*to = append(*to, word)
		}
	}
	for _, g := range s.Now().Grafts {
		if g.Set == nil {
			continue
		}
		add(&varieties, g.Set.What.Variety)
		if lot := a.Book.LotOf(g.Set.What.Lot); lot != nil && lot.Received != nil {
			add(&lots, lot.Received.What.Name)
			if g.Set.What.Variety == "" {
				add(&varieties, lot.Received.What.Variety)
			}
		}
		add(&hands, g.Set.Hand)
		byHand = byHand || a.sameHand(g.Set.Hand, a.Hand)
	}
	return Tag{Block: clean(a.Block.Name), Place: s.ID.Place(), Long: s.ID.Long(), Variety: strings.Join(varieties, ", "),
		Lot: strings.Join(lots, ", "), Hand: strings.Join(hands, ", "), Date: set.Long()}, byHand
}

// Tags a page, and the room they leave at its edges.
const (
	tagsAcross = 2
	tagsDown   = 6
	tagMargin  = 10.0
)

// TagPages lays out tags, several a page with lines to cut along.
func TagPages(block string, tags []Tag, sys unit.System, font Font, made time.Time) Doc {
	doc := Doc{Title: clean(block) + ", tags", Made: made, Size: SizeFor(sys)}
	wide, high := (doc.Size.Wide-2*tagMargin)/tagsAcross, (doc.Size.High-2*tagMargin)/tagsDown
	for some := range slices.Chunk(tags, tagsAcross*tagsDown) {
		page := cutLines(doc.Size, wide, high, (len(some)+tagsAcross-1)/tagsAcross)
		for i, t := range some {
			t.draw(&page, font, tagMargin+wide*float64(i%tagsAcross), tagMargin+high*float64(i/tagsAcross), wide)
		}
		doc.Pages = append(doc.Pages, page)
	}
	return doc
}

// cutLines are the lines along which the tags of so many rows are cut.
func cutLines(size Size, wide, high float64, down int) (p Page) {
	bottom := tagMargin + high*float64(down)
	for i := 0; i <= tagsAcross; i++ {
		x := tagMargin + wide*float64(i)
		p.Lines = append(p.Lines, Line{X1: x, Y1: tagMargin, X2: x, Y2: bottom, Thick: hairline, Dashed: true, Faint: true})
	}
	for i := 0; i <= down; i++ {
		y := tagMargin + high*float64(i)
		p.Lines = append(p.Lines, Line{X1: tagMargin, Y1: y, X2: size.Wide - tagMargin, Y2: y, Thick: hairline, Dashed: true, Faint: true})
	}
	return p
}

// draw draws a tag at a place: a hole for the wire, where the tree stands, what is
// on it.
func (t Tag) draw(p *Page, font Font, x, y, wide float64) {
	const inset, hole = 8.0, 2.2
	p.Shapes = append(p.Shapes, Shape{Points: circle(x+inset, y+inset+1, hole), Thick: hairline})
	left, right := x+inset+6, x+wide-6
	text := func(words string, at, points float64, bold, faint bool) {
		if words != "" {
			p.Texts = append(p.Texts, Text{X: left, Y: y + at, Words: fit(font, words, points, bold, right-left), Points: points, Bold: bold, Faint: faint})
		}
	}
	text(t.Block, 9, 8.5, false, true)
	points := widest(font, t.Place, true, 40, 24, 12)
	text(t.Place, 19.5, points, true, false)
	place := left + font.Width(t.Place, points, true) + 4
	p.Texts = append(p.Texts, Text{X: place, Y: y + 19.5, Words: fit(font, t.Long, 8.5, false, right-place), Points: 8.5, Faint: true})
	text(t.Variety, 27, widest(font, t.Variety, true, right-left, 13, 8), true, false)
	text(lotWords(t.Lot), 32.5, 9, false, false)
	grafted := "grafted " + t.Date
	if t.Hand != "" {
		grafted += ", " + t.Hand
	}
	text(grafted, 37.5, 9, false, false)
}

func lotWords(lot string) string {
	if lot == "" {
		return ""
	}
	return "lot " + lot
}
