package pdf

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"barkslip/core/sheet"
	"barkslip/core/unit"
)

var made = time.Date(2027, 5, 4, 8, 0, 0, 0, time.UTC)

// file is a document's file, which must be the same each time.
func file(t *testing.T, doc sheet.Doc) []byte {
	t.Helper()
	out, err := Bytes(doc)
	if err != nil {
		t.Fatal(err)
	}
	if again, _ := Bytes(doc); !bytes.Equal(out, again) {
		t.Error("made again it is another file")
	}
	return out
}

// drawnLine is a straight line as the file draws it, in mm.
type drawnLine struct{ across, down float64 }

var lineInFile = regexp.MustCompile(`(?m)^([\d.-]+) ([\d.-]+) m ([\d.-]+) ([\d.-]+) l S$`)

func linesOf(t *testing.T, data []byte) (out []drawnLine) {
	t.Helper()
	for _, m := range lineInFile.FindAllStringSubmatch(string(data), -1) {
		var n [4]float64
		for i := range n {
			var err error
			if n[i], err = strconv.ParseFloat(m[i+1], 64); err != nil {
				t.Fatal(err)
			}
		}
		out = append(out, drawnLine{math.Abs(n[2]-n[0]) * 25.4 / 72, math.Abs(n[3]-n[1]) * 25.4 / 72})
	}
	return out
}

// The card is read back from its file: it is drawn at true size.
func TestTheCardIsTrue(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		doc, err := sheet.CardPages(sys, Letters{}, made)
		if err != nil {
			t.Fatal(err)
		}
		data := file(t, doc)
		lines := linesOf(t, data)
		const near = 0.2
		count := func(across, down float64) (n int) {
			for _, l := range lines {
				if math.Abs(l.across-across) < near && math.Abs(l.down-down) < near {
					n++
				}
			}
			return n
		}
		in := 25.4
		for _, c := range []struct {
			what         string
			across, down float64
		}{
			{"long cut of 5/16 in", 5./16*in - 0.06*in, 63.5}, {"long cut of 7/16 in", 7./16*in - 0.06*in, 63.5}, {"long cut of 5/8 in", 5./8*in - 0.06*in, 63.5},
			{"100 mm", 100, 0}, {"4 in", 101.6, 0},
		} {
			if count(c.across, c.down) != 1 {
				t.Errorf("%v: %s is drawn %d times", sys, c.what, count(c.across, c.down))
			}
		}
		for _, c := range []struct {
			what         string
			across, down float64
			want         int
		}{{"the long cut's length", 0, 63.5, 3}, {"back cut", 0.06 * in, 12.7, 3}, {"slits", 0, 76, 12}} {
			if count(c.across, c.down) != c.want {
				t.Errorf("%v: %s is drawn %d times, want %d", sys, c.what, count(c.across, c.down), c.want)
			}
		}
		wide, high := doc.Size.Wide*72/25.4, doc.Size.High*72/25.4
		box := regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`).FindSubmatch(data)
		if box == nil {
			t.Fatal("no page size")
		}
		w, _ := strconv.ParseFloat(string(box[1]), 64)
		h, _ := strconv.ParseFloat(string(box[2]), 64)
		if math.Abs(w-wide) > 0.1 || math.Abs(h-high) > 0.1 {
			t.Errorf("%v: the page is %g by %g points", sys, w, h)
		}
	}
}

// The slot's sides stand apart as the sum of it says, within 0.2 mm.
func TestSlotsAreTrue(t *testing.T) {
	doc, err := sheet.CardPages(unit.US, Letters{}, made)
	if err != nil {
		t.Fatal(err)
	}
	var at []float64
	for _, m := range lineInFile.FindAllStringSubmatch(string(file(t, doc)), -1) {
		x1, _ := strconv.ParseFloat(m[1], 64)
		x2, _ := strconv.ParseFloat(m[3], 64)
		y1, _ := strconv.ParseFloat(m[2], 64)
		y2, _ := strconv.ParseFloat(m[4], 64)
		if x1 == x2 && math.Abs(math.Abs(y1-y2)*25.4/72-76) < 0.2 {
			at = append(at, x1*25.4/72)
		}
	}
	if len(at) != 12 {
		t.Fatalf("%d sides", len(at))
	}
	for i, thick := range []float64{5. / 16 * 25.4, 7. / 16 * 25.4, 5. / 8 * 25.4} {
		slot := at[4*i : 4*i+4] // left least, left most, right least, right most
		if least, most := slot[2]-slot[0], slot[3]-slot[1]; math.Abs(least-thick-0.8) > 0.2 || math.Abs(most-thick-6.35) > 0.2 {
			t.Errorf("slot of %.2f mm: %.2f to %.2f", thick, least, most)
		}
	}
}

func TestWhatIsDrawn(t *testing.T) {
	for _, c := range []struct{ words, want string }{
		{"Hollow Lane", "Hollow Lane"}, {"Straße Ørsted Čapek", "Straße Ørsted Čapek"}, {"Ελιά Орех", "Ελιά Орех"},
		{"cafe\u0301", "café"}, {"tree 🌳 here", "tree □ here"}, {"👩‍🌾", "□□"}, {"胡桃", "□□"},
		{"שדה", "הדש"}, {"lot שדה 12", "lot 12 הדש"}, {"שדה (12/4) ab", "(12/4) הדש ab"},
		{"ab שדה עץ cd", "ab ץע הדש cd"}, {"lot שדה)", "lot הדש)"}, {"שָׂדֶה", "הדֶשָׂ"},
		{"row \u202eevil", "row evil"}, {"a\u200bb", "ab"}, {"", ""},
	} {
		if got := drawn(c.words); got != c.want {
			t.Errorf("%q is drawn %q, want %q", c.words, got, c.want)
		}
	}
	// Jawz, walnut: jeem begins and joins the waw, which joins nothing behind it.
	if got := drawn("جوز"); got != "\ufeaf\ufeee\ufe9f" {
		t.Errorf("walnut is drawn %+q", got)
	}
}

// reader gives the text of a file as another program reads it.
func reader(t *testing.T, data []byte) string {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("there is no pdftotext here")
	}
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(tool, "-layout", path, "-").CombinedOutput()
	if err != nil || strings.Contains(string(out), "Error") {
		t.Fatalf("%v\n%s", err, out)
	}
	return string(out)
}

func TestAnotherReaderFindsTheText(t *testing.T) {
	tags := []sheet.Tag{
		{Block: "Hollow Lane", Place: "4/17", Long: "row 4 tree 17", Variety: "Lantern", Lot: "Čapek (old) \\ Ελιά", Hand: "MK", Date: "6 May 2027"},
		{Block: "Ореховая 🌳", Place: "5/2", Long: "row 5 tree 2", Variety: "=1+2", Lot: "שדה", Date: "7 May 2027"},
	}
	text := reader(t, file(t, sheet.TagPages("Hollow Lane", tags, unit.US, Letters{}, made)))
	for _, want := range []string{"Hollow Lane", "4/17", "row 4 tree 17", "Lantern", "lot Čapek (old) \\ Ελιά", "grafted 6 May 2027, MK",
		"Ореховая □", "5/2", "=1+2", "grafted 7 May 2027", "שדה"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not found in\n%s", want, text)
		}
	}
	day := sheet.Day{Block: "Hollow Lane", On: unit.MakeDate(2027, 5, 4), Heat: []string{"52 F to 91 F."}}
	day.Parts = []sheet.Part{{Hand: "MK", Load: []string{"12 scions of Lantern"}}}
	for n := range 200 {
		place := strconv.Itoa(4) + "/" + strconv.Itoa(n+1)
		task := sheet.Task{Name: "white", When: "09:00 to 10:00", Why: "Sealed at 07:00."}
		day.Parts[0].Stops = append(day.Parts[0].Stops, sheet.Stop{Row: 4, Place: place, Tasks: []sheet.Task{task}})
	}
	text = reader(t, file(t, sheet.DayPages(day, Letters{}, made)))
	for _, want := range []string{"Tuesday, 4 May 2027", "MK", "52 F to 91 F.", "12 scions of Lantern.", "4/1 ", "4/200", "09:00 to 10:00",
		"Sealed at 07:00.", "page 1 of "} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not found", want)
		}
	}
	card, err := sheet.CardPages(unit.Metric, Letters{}, made)
	if err != nil {
		t.Fatal(err)
	}
	if text = reader(t, file(t, card)); !strings.Contains(text, "long cut 63.5 mm") || !strings.Contains(text, "100 mm long") {
		t.Errorf("the card says\n%s", text)
	}
}
