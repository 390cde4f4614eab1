package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// even is a font whose letters are all half as wide as they are high.
type even struct{}

func (even) Width(words string, points float64, _ bool) float64 {
	return float64(len([]rune(words))) * points * 25.4 / 72 / 2
}

// asked is a block of rows of stumps, each with white open at 9:00 on 10 May.
func asked(rows, trees int) Ask {
	b := recordtest.Northern()
	b.Name = "Hollow Lane"
	at := recordtest.May(10, 9, 0)
	a := Ask{Book: record.FoldBook(nil, recordtest.UTC), Block: b, Now: recordtest.May(10, 6, 0)}
	for row := 1; row <= rows; row++ {
		for tree := 1; tree <= trees; tree++ {
			id := record.StumpID{Block: b.ID, Row: uint16(row), Tree: uint16(tree)}
			a.Sums = append(a.Sums, due.Summary{ID: id, Stage: record.StageSealed, Scions: 2, Set: recordtest.MayDay(9),
				Dues: []due.Due{{Stump: id, Kind: due.White, Opens: at, By: at.Add(time.Hour), Since: at.Add(-2 * time.Hour)}}})
		}
	}
	a.Stump = func(id record.StumpID) (*record.Stump, error) { return record.Fold(id, nil), nil }
	return a
}

// words are all texts of a document, a line each.
func words(d Doc) string {
	var out strings.Builder
	for _, p := range d.Pages {
		for _, t := range p.Texts {
			out.WriteString(t.Words + "\n")
		}
	}
	return out.String()
}

// within faults what stands off its page.
func within(t *testing.T, d Doc) {
	t.Helper()
	for i, p := range d.Pages {
		on := func(x, y float64, what string) {
			if x < 4 || y < 4 || x > d.Size.Wide-4 || y > d.Size.High-4 {
				t.Errorf("page %d: %s at %.1f, %.1f is off the page", i+1, what, x, y)
			}
		}
		for _, l := range p.Lines {
			on(l.X1, l.Y1, "a line")
			on(l.X2, l.Y2, "a line")
		}
		for _, s := range p.Shapes {
			for _, pt := range s.Points {
				on(pt.X, pt.Y, "a shape")
			}
		}
		for _, w := range p.Texts {
			from, wide := w.X, even{}.Width(w.Words, w.Points, w.Bold)
			switch w.Side {
			case FromRight:
				from -= wide
			case Middle:
				from -= wide / 2
			}
			on(from, w.Y, w.Words)
			on(from+wide, w.Y, w.Words)
		}
	}
}

func TestADaysSheetGoesAsOneWalks(t *testing.T) {
	a := asked(3, 4)
	day, err := DayOf(a)
	if err != nil || len(day.Parts) != 1 {
		t.Fatal(day, err)
	}
	var got []string
	for _, s := range day.Parts[0].Stops {
		got = append(got, s.Place)
	}
	want := strings.Fields("1/1 1/2 1/3 1/4 2/4 2/3 2/2 2/1 3/1 3/2 3/3 3/4")
	if !slices.Equal(got, want) {
		t.Errorf("walked %v", got)
	}
	task := day.Parts[0].Stops[0].Tasks[0]
	if task.Name != "paint white" || task.When != "09:00 to 10:00" || task.Late || task.Why == "" {
		t.Errorf("%+v", task)
	}
	doc := DayPages(day, even{}, a.Now)
	within(t, doc)
	for _, p := range doc.Pages {
		if last := p.Texts[len(p.Texts)-2].Words; !strings.Contains(last, "Hollow Lane · Monday, 10 May 2027 · hand:") {
			t.Errorf("foot: %q", last)
		}
	}
	if doc.Size != Letter {
		t.Error("paper of", doc.Size)
	}
	a.Block.Units = unit.Metric
	if day, err = DayOf(a); err != nil || DayPages(day, even{}, a.Now).Size != A4 {
		t.Error("metric paper")
	}
}

// What was given to hands makes a sheet for each; what nobody has comes last.
func TestASheetForEachHand(t *testing.T) {
	a := asked(3, 2)
	a.Given = func(id record.StumpID) string { return map[uint16]string{1: "RD", 2: "MK"}[id.Row] }
	day, err := DayOf(a)
	if err != nil || len(day.Parts) != 3 {
		t.Fatal(day.Parts, err)
	}
	for i, want := range []string{"MK", "RD", ""} {
		if p := day.Parts[i]; p.Hand != want || len(p.Stops) != 2 {
			t.Errorf("sheet %d: %q with %d stumps", i, p.Hand, len(p.Stops))
		}
	}
	if !strings.Contains(words(DayPages(day, even{}, a.Now)), "nobody's yet") {
		t.Error("what nobody has is not said")
	}
	a.Hand = "jt"
	day, err = DayOf(a)
	if err != nil || !strings.Contains(words(DayPages(day, even{}, a.Now)), "Nothing that is due on this day was given to JT.") {
		t.Errorf("a hand with none: %+v %v", day, err)
	}
	a.Hand = "mk"
	if day, err = DayOf(a); err != nil || len(day.Parts) != 1 || len(day.Parts[0].Stops) != 2 {
		t.Errorf("MK alone: %+v %v", day, err)
	}
}

func TestRowsAndNothing(t *testing.T) {
	a := asked(4, 2)
	a.Rows = []int{2, 4}
	day, err := DayOf(a)
	if err != nil || len(day.Parts[0].Stops) != 4 {
		t.Fatal(day, err)
	}
	a.Sums = a.Sums[:2]
	day, err = DayOf(a)
	doc := DayPages(day, even{}, a.Now)
	if err != nil || len(doc.Pages) != 1 || !strings.Contains(words(doc), "Nothing is due on this day in rows 2 and 4.") {
		t.Errorf("%v\n%s", err, words(doc))
	}
	within(t, doc)
	if _, err := Make(ForTags, a, even{}); err != ErrNoTags {
		t.Error("no tags:", err)
	}
}

// A day's weather says by when white must be on; sooner on a hot one.
func TestHeatOnTheSheet(t *testing.T) {
	a := asked(1, 1)
	if got := heatOf(a.Block, recordtest.MayDay(10)); !strings.Contains(got[0], "No weather") {
		t.Error(got)
	}
	a.Block.Placed, a.Block.Lon = true, -77.2
	a.Block.Weather = map[unit.Date]record.Said[record.DayWeather]{recordtest.MayDay(10): {What: record.DayWeather{
		Low: record.Degrees{Temperature: 15}, High: record.Degrees{Temperature: 34}, Wind: 1}}}
	got := strings.Join(heatOf(a.Block, recordtest.MayDay(10)), " ")
	if !strings.Contains(got, "59 F to 93 F. Hot: shade each graft and paint it white in time. Paint white, if sealed at 08:00 by ") || strings.Contains(got, "08:00 by 11:00") {
		t.Error(got)
	}
}

// A name may hold anything: it stays one line on its page.
func TestHostileNames(t *testing.T) {
	long := strings.Repeat("Hollow Lane below the road ", 200)
	for _, name := range []string{long, strings.Repeat("w", 5000), "🌳🌳", "שדה העץ", "a\x00b\x1b[31m\nc\td", "=1+2", ""} {
		a := asked(2, 2)
		a.Block.Name = name
		a.Stump = func(id record.StumpID) (*record.Stump, error) {
			s := record.Fold(id, nil)
			s.Notes = []record.Said[record.Noted]{{What: record.Noted{Text: name}}}
			s.Now().Grafts = []*record.Graft{{Slot: 1, Set: &record.Said[record.ScionSet]{Hand: "MK", What: record.ScionSet{Variety: name}}}}
			return s, nil
		}
		for i := range a.Sums {
			a.Sums[i].Noted = true
		}
		for _, kind := range []Kind{ForDay, ForTags, ForCuts} {
			doc, err := Make(kind, a, even{})
			if err != nil {
				t.Fatalf("%s of %.20q: %v", kind, name, err)
			}
			within(t, doc)
			if strings.ContainsAny(strings.ReplaceAll(words(doc), "\n", ""), "\x00\x1b\t") {
				t.Errorf("%s of %.20q holds what is not seen", kind, name)
			}
		}
	}
}

// 5,000 stumps are laid out in order, none of them lost, each page with its number.
func TestManyStumps(t *testing.T) {
	a := asked(50, 100)
	doc, err := Make(ForDay, a, even{})
	if err != nil {
		t.Fatal(err)
	}
	within(t, doc)
	for i, p := range doc.Pages {
		if got := p.Texts[len(p.Texts)-1].Words; got != fmt.Sprintf("page %d of %d", i+1, len(doc.Pages)) {
			t.Errorf("page %d says %q", i+1, got)
		}
	}
	if n := strings.Count(words(doc), "\npaint white\n"); n != 5000 {
		t.Errorf("%d stumps", n)
	}
}

func TestTagsAreOfWhatWasAskedFor(t *testing.T) {
	a := asked(2, 7)
	a.Stump = func(id record.StumpID) (*record.Stump, error) {
		s, hand := record.Fold(id, nil), "MK"
		if id.Row == 2 {
			hand = "RD"
		}
		s.Now().Grafts = []*record.Graft{{Slot: 1, Set: &record.Said[record.ScionSet]{Hand: hand, What: record.ScionSet{Variety: "Lantern"}}},
			{Slot: 2, Set: &record.Said[record.ScionSet]{Hand: hand, What: record.ScionSet{Variety: "Brisk"}}}}
		return s, nil
	}
	a.Sums[0].Stage = record.StageFailed
	a.Sums[1].Set = recordtest.MayDay(8)
	for _, c := range []struct {
		on   unit.Date
		hand string
		rows []int
		want int
	}{{0, "", nil, 13}, {recordtest.MayDay(8), "", nil, 1}, {0, "mk", nil, 6}, {0, "RD", []int{1}, 0}, {recordtest.MayDay(9), "RD", []int{2}, 7}} {
		a.On, a.Hand, a.Rows = c.on, c.hand, c.rows
		tags, err := TagsOf(a)
		if err != nil || len(tags) != c.want {
			t.Errorf("%v: %d tags, %v", c, len(tags), err)
		}
	}
	a.On, a.Hand, a.Rows = 0, "", nil
	doc, err := Make(ForTags, a, even{})
	if err != nil || len(doc.Pages) != 2 {
		t.Fatal(len(doc.Pages), err)
	}
	within(t, doc)
	if n := strings.Count(words(doc), "Lantern, Brisk\n"); n != 13 {
		t.Errorf("%d tags name both varieties", n)
	}
}

func TestFileNames(t *testing.T) {
	a := asked(1, 1)
	a.Block.Name, a.Hand, a.Rows = "../Hollow Lane/x", "MK", []int{4}
	for kind, want := range map[Kind]string{
		ForDay: "day----hollow-lane-x-2027-05-10-mk-row-4.pdf", ForTags: "tags----hollow-lane-x-mk-row-4.pdf", ForCuts: "cuts.pdf",
	} {
		if got := FileName(kind, a); got != want {
			t.Errorf("%s: %s", kind, got)
		}
	}
	a.Block.Name = strings.Repeat("ü", 500)
	if got := FileName(ForDay, a); len(got) > 255 {
		t.Errorf("a name of %d bytes", len(got))
	}
}
