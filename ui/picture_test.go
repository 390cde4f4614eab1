package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/mattn/go-runewidth"

	"barkslip/core/sample"
	"barkslip/ui/paper"
)

// sizes are the windows in which the main screens are kept as pictures.
var sizes = [][2]int{{60, 15}, {80, 24}, {100, 30}, {140, 45}, {220, 60}}

// setBefore is the escape sequence of an ink in a theme.
func setBefore(theme paper.Theme, ink paper.Ink) string {
	return strings.SplitN(theme.Paint([]paper.Line{paper.Text(ink, "X")}, 1, 1), "X", 2)[0]
}

// inkRuns are the stretches of a painted screen that are not plain, a line for each
// line that has any: 3: 1-12 strong, 14 alarm.
func inkRuns(raw string, theme paper.Theme) string {
	name := map[string]string{}
	for _, ink := range paper.Inks() {
		name[setBefore(theme, ink)] = ink.String()
	}
	span := regexp.MustCompile("(\x1b\\[[0-9;]*m)([^\x1b]*)\x1b\\[0m")
	var b strings.Builder
	for y, line := range strings.Split(raw, "\n") {
		var runs []string
		column, from, last := 1, 1, "plain"
		end := func(ink string) {
			if ink == last {
				return
			}
			switch {
			case last == "plain":
			case from == column-1:
				runs = append(runs, fmt.Sprintf("%d %s", from, last))
			default:
				runs = append(runs, fmt.Sprintf("%d-%d %s", from, column-1, last))
			}
			from, last = column, ink
		}
		for _, m := range span.FindAllStringSubmatch(line, -1) {
			ink := name[m[1]]
			if strings.TrimSpace(m[2]) == "" && (ink == "faint" || ink == "accent" || ink == "strong" || ink == "warn" || ink == "growth") {
				ink = "plain" // nothing is seen of it
			}
			end(ink)
			column += runewidth.StringWidth(m[2])
		}
		end("")
		if len(runs) > 0 {
			fmt.Fprintf(&b, "%d: %s\n", y+1, strings.Join(runs, ", "))
		}
	}
	return b.String()
}

// picture compares the screen in every size, with its inks, with those kept.
func (d *driver) picture(name string) {
	d.t.Helper()
	for _, size := range sizes {
		d.size(size[0], size[1])
		raw := d.root.View()
		var lines []string
		for _, l := range strings.Split(escapes.ReplaceAllString(raw, ""), "\n") {
			lines = append(lines, strings.TrimRight(l, " "))
		}
		got := strings.Join(lines, "\n") + "\n\ninks\n" + inkRuns(raw, d.root.x.Theme)
		path := filepath.Join("testdata", "pictures", fmt.Sprintf("%s-%dx%d.txt", name, size[0], size[1]))
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				d.t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			d.t.Fatal(err)
		}
		if got != string(want) {
			d.t.Errorf("%s has changed; look at it, then write it with -update. It is:\n%s", path, got)
		}
	}
	d.size(80, 24)
}

// TestPicturesOfTheWalk keeps the walk in every size, with its colours: a face to
// be looked at with the coach on, torn bark, the slots, white that is late.
func TestPicturesOfTheWalk(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.press("enter", "2", "enter", "enter", "enter", "enter")
	d.clock("2027-05-04 08:00")
	d.press("c")
	d.picture("look-coach")
	d.press("c", "1", "1", "enter", "2", "120:1in")
	d.picture("torn")
	d.press("enter")
	d.wait(15 * time.Minute)
	d.press("1", "3.4 3.1", "enter", "1")
	d.picture("slots")
	d.press("c")
	d.picture("slots-coach")
	d.press("c", "enter", "9", "Lantern", "enter", "enter", "enter")
	d.picture("scion")
	d.press("enter", "enter", "enter", "enter")
	d.wait(4 * time.Hour)
	d.press("c")
	d.picture("white-late-coach")
}

// TestPicturesOfTheSample keeps the screens of a block in its third year: the map,
// what is due, and a stump whose early parts lie years back.
func TestPicturesOfTheSample(t *testing.T) {
	d := newDriver(t, "2027-05-20 10:12")
	if err := d.book.Bulk(sample.Events(sample.Plan{Stumps: 240, Seasons: 3, Seed: 1, Zone: newYork, Now: d.now})); err != nil {
		t.Fatal(err)
	}
	d.open()
	d.picture("block")
	d.press("g")
	d.picture("rounds")
	d.press("esc")
	d.goToPlace("3/4")
	d.picture("third-year")
}

// goToPlace opens a stump of the book's block by its place.
func (d *driver) goToPlace(place string) { d.press("/", place, "enter") }

// TestStemKeepsWholeWords sees that in no full window a word of the stem is cut,
// and that its bar is filled up to its end.
func TestStemKeepsWholeWords(t *testing.T) {
	tourWalk(t, func(name string, d *driver) {
		for _, size := range [][2]int{{80, 24}, {120, 40}} {
			d.size(size[0], size[1])
			for _, l := range strings.Split(d.screen(), "\n")[2 : size[1]-3] {
				if stem := string([]rune(l)[:29]); strings.ContainsAny(stem, "┃╋│█") && strings.Contains(stem, "…") {
					t.Errorf("%s, %v: %s", name, size, stem)
				}
			}
		}
		d.size(80, 24)
	})
}
