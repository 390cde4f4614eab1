package main

import (
	"fmt"
	"math"
	"time"

	"github.com/spf13/cobra"

	"barkslip/core/sample"
	"barkslip/store"
)

// sampleZone is where the made-up block lies.
const sampleZone = "America/New_York"

func (a *app) sample() *cobra.Command {
	c := &cobra.Command{
		Use: "sample", Short: "Write a made-up block with a lived-in history, to try things on",
		Long: "Writes a new book with a made-up block: stumps at every stage, told up to a\n" +
			"day in this year's grafting season. The book stays on that day: its clock starts\n" +
			"there when it is made. The same numbers give the same block.",
		Example: "  barkslip sample --book try.bark\n  barkslip sample --stumps 600 --seasons 3 --seed 7 --book large.bark", Args: noArguments,
	}
	g := declare(c.Flags(),
		option{name: "book", value: "FILE", says: "the book to write; nothing is written over", need: true},
		option{name: "stumps", value: "N", says: "how many stumps", usual: 240},
		option{name: "seasons", value: "N", says: "full seasons behind most of the block", usual: 1},
		option{name: "seed", value: "N", says: "another number gives another history", usual: 1})
	c.RunE = func(*cobra.Command, []string) error {
		path := g.text("book", "the file to write")
		plan := sample.Plan{
			Stumps: g.whole("stumps", 1, 100_000), Seasons: g.whole("seasons", 1, 20), Seed: uint64(g.whole("seed", 0, math.MaxInt32)),
		}
		if g.err != nil {
			return g.err
		}
		return a.writeSample(path, plan)
	}
	return c
}

// writeSample makes a book and fills it; it is there whole or not at all.
func (a *app) writeSample(path string, plan sample.Plan) error {
	var events, stumps int
	err := store.CreateFilled(path, store.Options{}, func(book *store.Book) error {
		err := a.fillSample(book, plan)
		events, stumps = book.Count()
		return err
	})
	if err != nil {
		return err
	}
	fmt.Fprintf(a.out, "Made %s: a made-up block of %s with %s. Nothing in it is real.\n", path, count(stumps, "stump"), count(events, "record"))
	fmt.Fprintf(a.out, "Open it with: barkslip --book %s\n", path)
	return nil
}

// fillSample writes the made-up block into an empty book.
func (a *app) fillSample(book *store.Book, plan sample.Plan) (err error) {
	if plan.Zone, err = time.LoadLocation(sampleZone); err != nil {
		return err
	}
	plan.Now = a.clock()
	if err := book.Bulk(sample.Events(plan)); err != nil || a.set {
		return err
	}
	return book.SetApart(sample.Today(plan).Sub(plan.Now))
}
