package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"barkslip/core/sample"
	"barkslip/core/walk"
	"barkslip/store"
)

// guide is what people who use the program read first.
const guide = "../README.md"

// made is the block that the sample command makes, on its own day: a newcomer who
// follows the guide sees the same screens. Its book is written without waiting for a
// disk.
func made(t *testing.T) *driver {
	t.Helper()
	plan := sample.Plan{Seed: 1, Zone: newYork, Now: at("2026-11-25 12:00")}
	book, err := store.Create(filepath.Join(t.TempDir(), "try.bark"), store.Options{})
	if err == nil {
		err = book.Bulk(sample.Events(plan))
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { book.Close() })
	d := &driver{t: t, book: book, now: sample.Today(plan), hand: time.Unix(0, 0)}
	d.open()
	return d
}

// pictureNow is the screen as the guide shows it.
func (d *driver) pictureNow() string {
	var b strings.Builder
	b.WriteString("```\n")
	for _, l := range strings.Split(d.screen(), "\n") {
		fmt.Fprintln(&b, strings.TrimRight(l, " "))
	}
	b.WriteString("```\n")
	return b.String()
}

// TestPicturesInTheGuide: the pictures of the main screens in the guide are what the
// program shows of the sample at 80 by 24. With -update they are made anew.
func TestPicturesInTheGuide(t *testing.T) {
	text, err := os.ReadFile(guide)
	if err != nil {
		t.Fatal(err)
	}
	was, is := string(text), string(text)
	show := func(name string, d *driver) {
		t.Helper()
		mark := fmt.Sprintf("<!-- picture: %s -->\n", name)
		before, rest, begun := strings.Cut(is, mark+"```\n")
		old, after, ended := strings.Cut(rest, "\n```\n")
		if !begun || !ended {
			t.Fatalf("the guide has no picture of %s under %q", name, mark)
		}
		now := d.pictureNow()
		if old = "```\n" + old + "\n```\n"; old != now && !*update {
			t.Errorf("the guide shows another picture of %s; look at it, then write it with -update. It is\n%s", name, now)
		}
		is = before + mark + now + after
	}

	d := made(t)
	show("block", d)
	for _, over := range []struct{ name, key string }{{"rounds", "g"}, {"tally", "k"}, {"plan", "p"}, {"wood", "l"}} {
		d.press(over.key)
		show(over.name, d)
		d.press("esc")
	}
	d.press("10/15", "enter")
	d.on(walk.StepBleeding)
	d.press("1", "1")
	d.on(walk.StepNewFace)
	d.wait(16 * time.Minute)
	d.press("1")
	d.on(walk.StepMeasure)
	d.press("3.4 3.1", "enter")
	d.on(walk.StepLongWay)
	d.press("1")
	d.on(walk.StepSlots)
	show("stump", d)

	if *update && is != was {
		if err := os.WriteFile(guide, []byte(is), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
