package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/sheet"
	"barkslip/core/unit"
	"barkslip/store"
	"barkslip/ui/part"
	"barkslip/ui/pdf"
)

// sheet is the command that makes paper.
func (a *app) sheet() *cobra.Command {
	c := &cobra.Command{
		Use: "sheet COMMAND", Short: "Paper: the day's sheet, tags for the trees, a cutting card",
		Long: "Makes a PDF to print, on A4 or US Letter by the block's units. It only reads the\n" +
			"book, and works while the screens are open. A file that is there already is left\n" +
			"as it is.",
		Example: "  barkslip sheet day --out today.pdf\n  barkslip sheet day --on tomorrow --hand MK --out mk.pdf\n" +
			"  barkslip sheet tags --row 4 --row 5 --out tags.pdf\n  barkslip sheet cuts --out card.pdf",
	}
	holds(c)
	c.AddCommand(
		a.sheetOf(sheet.ForDay, "The day's sheet of a hand: stumps in walking order, what each needs, why",
			"the day; without it today", "the initials of whose sheet it is; without it one for each hand"),
		a.sheetOf(sheet.ForTags, "Tags for grafted trees, several a page, to cut apart",
			"only what was grafted on this day", "only what this hand grafted"),
		a.sheetOf(sheet.ForCuts, "A cutting card at true size: cuts, slot and nails for three thicknesses", "", ""))
	return c
}

// sheetOf is the command of one kind of paper.
func (a *app) sheetOf(kind sheet.Kind, short, onSays, handSays string) *cobra.Command {
	c := &cobra.Command{Use: string(kind), Short: short, Example: "  barkslip sheet " + string(kind) + " --out " + string(kind) + ".pdf", Args: noArguments}
	options := []option{bookOption,
		{name: "out", value: "FILE.pdf", says: "the file to write; nothing is written over", need: true},
		{name: "block", value: "NAME", says: "the block; without it the first one"}}
	if kind != sheet.ForCuts {
		options = append(options, option{name: "on", value: "DATE", says: onSays}, option{name: "hand", value: "XX", says: handSays},
			option{name: "row", value: "N", says: "only this row; may be given more than once", many: true})
	}
	g := declare(c.Flags(), options...)
	c.RunE = func(*cobra.Command, []string) error {
		out := g.text("out", "the name of a file to write: today.pdf")
		if g.err != nil {
			return g.err
		}
		book, err := a.openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		ask, err := sheetAsk(g, book, kind, a.clockOf(book)())
		if err != nil {
			return err
		}
		return a.writeSheet(kind, ask, out)
	}
	return c
}

// sheetAsk reads what a sheet is asked for.
func sheetAsk(g *given, book *store.Book, kind sheet.Kind, now time.Time) (ask sheet.Ask, err error) {
	ask = sheet.Ask{Book: book.Folded(), Stump: book.Stump, Now: now}
	name := ""
	if g.has("block") {
		name = g.text("block", "the name of a block")
	}
	if kind != sheet.ForCuts {
		if g.has("on") {
			g.dayLike("on")
			ask.On = g.dayOf(book, "on", now)
		}
		if g.has("hand") {
			ask.Hand = initialsOf(g)
		}
	}
	if g.err != nil {
		return ask, g.err
	}
	if ask.Block, err = blockFor(book, name); err != nil {
		return ask, err
	}
	ask.Now = now.In(ask.Block.Zone)
	if ask.Sums, err = book.Summaries(ask.Block.ID); err != nil || kind == sheet.ForCuts {
		return ask, err
	}
	ask.Rows, err = rowsOf(g, ask.Sums)
	return ask, err
}

// initialsOf is the hand of --hand.
func initialsOf(g *given) string {
	return read(g, "hand", func(s string) (string, error) {
		s = strings.ToUpper(strings.TrimSpace(s))
		if part.CheckInitials(s) != nil {
			return "", &unit.Error{Given: s, Accepted: "one to four letters, such as RK"}
		}
		return s, nil
	})
}

// blockFor is the block of a name, or the first where none is given.
func blockFor(book *store.Book, name string) (*record.Block, error) {
	blocks := book.Folded().List()
	if len(blocks) == 0 {
		return nil, errors.New("the book has no block yet")
	}
	if name == "" {
		return blocks[0], nil
	}
	b, err := findBlock(book, name)
	if err == nil && b == nil {
		err = mistaken("--block", name, "the name of a block of the book")
	}
	return b, err
}

// rowsOf is the rows of --row; each must have stumps.
func rowsOf(g *given, sums []due.Summary) (rows []int, err error) {
	there := sheet.Rows(sums)
	for _, text := range g.each("row") {
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil || !slices.Contains(there, n) {
			accepted := "a row of the block"
			if len(there) > 0 {
				accepted = fmt.Sprintf("a row of the block, from %d to %d", there[0], there[len(there)-1])
			}
			return nil, mistaken("--row", text, accepted)
		}
		rows = append(rows, n)
	}
	slices.Sort(rows)
	return slices.Compact(rows), nil
}

// writeSheet makes a sheet and writes it to a file that is not there yet.
func (a *app) writeSheet(kind sheet.Kind, ask sheet.Ask, out string) error {
	if err := freeName(out); err != nil {
		return err
	}
	doc, err := sheet.Make(kind, ask, pdf.Letters{})
	if err != nil {
		return err
	}
	data, err := pdf.Bytes(doc)
	if err != nil {
		return err
	}
	if err := writeNew(out, data); errors.Is(err, fs.ErrExist) {
		return taken(out)
	} else if err != nil {
		return fmt.Errorf("%s cannot be written: %s", out, cause(err))
	}
	fmt.Fprintf(a.out, "Written to %s: %s.\n", out, count(len(doc.Pages), "page"))
	return nil
}

// taken is the fault of a name that another file has.
func taken(out string) error {
	return mistaken("--out", out, "the name of a file that is not there yet; nothing is written over")
}

// freeName faults a name that is taken, or whose folder is not there.
func freeName(out string) error {
	if _, err := os.Lstat(out); err == nil {
		return taken(out)
	}
	dir, err := os.Stat(filepath.Dir(out))
	if err != nil || !dir.IsDir() {
		return mistaken("--out", out, "a name in a folder that is there")
	}
	return nil
}
