package main

import (
	"fmt"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/store"
)

// namedClashes is how many places a join names at which answers disagree.
const namedClashes = 3

// clashesOf is the stumps of a book on which answers disagree, block by block in
// walking order.
func clashesOf(book *store.Book) (out []record.StumpID, err error) {
	for _, b := range book.Folded().List() {
		sums, err := book.Summaries(b.ID)
		if err != nil {
			return nil, err
		}
		out = append(out, due.Clashes(sums)...)
	}
	return out, nil
}

// sayClashes says on how many stumps answers disagree that did not before, and
// names the first of them; nothing where there is none.
func (a *app) sayClashes(book *store.Book, before []record.StumpID) error {
	known := map[record.StumpID]bool{}
	for _, id := range before {
		known[id] = true
	}
	after, err := clashesOf(book)
	if err != nil {
		return err
	}
	n, names := 0, []string{}
	for _, id := range after {
		if known[id] {
			continue
		}
		if n++; n <= namedClashes {
			names = append(names, book.Folded().Blocks[id.Block].Name+" "+id.Place())
		}
	}
	if n == 0 {
		return nil
	}
	where := strings.Join(names, ", ")
	if n > namedClashes {
		where += " and others"
	}
	fmt.Fprintf(a.out, "%s: %s. Open each and press e to settle it.\n", count(n, "disagreement"), oneLine(where))
	return nil
}
