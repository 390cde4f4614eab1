package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"barkslip/core/out"
	"barkslip/core/record"
	"barkslip/store"
)

func (a *app) blockExport() *cobra.Command {
	c := &cobra.Command{
		Use: "export", Short: "A line a stump or a graft, for spreadsheets; a map",
		Long: "Writes the stumps of the blocks, or with --grafts every scion ever set, as\n" +
			"comma-separated text, or as points on the map (GeoJSON). A map needs settings of\n" +
			"the block: its corner, where row 1 tree 1 stands (without it the block's place is\n" +
			"taken), the bearing its rows run to, and the distances between rows and trees.",
		Example: "  barkslip block export --out block.csv\n" +
			"  barkslip block export --grafts --csv > grafts.csv\n  barkslip block export --geojson --block \"Hollow Lane\"",
		Args: noArguments,
	}
	g := declare(c.Flags(), bookOption,
		option{name: "block", value: "NAME", says: "the block; without it all that are in the list"},
		option{name: "out", value: "FILE", says: "the file to write, one that is not there yet; without it standard output"})
	grafts := c.Flags().Bool("grafts", false, "a line a graft")
	asCSV := c.Flags().Bool("csv", false, "comma-separated text with a heading, as without it")
	asMap := c.Flags().Bool("geojson", false, "points on the map, GeoJSON")
	c.RunE = func(*cobra.Command, []string) error {
		name, file := g.text("block", "the name of a block"), g.text("out", "a file that is not there yet")
		if g.err != nil {
			return g.err
		}
		if *asCSV && *asMap {
			return mistaken("--geojson", "--csv --geojson", "one of --csv and --geojson")
		}
		book, err := a.openBook(g, true)
		if err != nil {
			return err
		}
		defer book.Close()
		x := exported{book: book, now: a.clockOf(book)(), grafts: *grafts}
		if x.blocks, err = blocksNamed(book, name); err != nil {
			return err
		}
		write := x.csv
		if *asMap {
			if err := x.lay(a); err != nil {
				return err
			}
			write = x.geoJSON
		}
		if file == "" {
			return write(a.out)
		}
		return writeOut(file, write)
	}
	return c
}

// blocksNamed is the block of a name, or all that are in the list without one.
func blocksNamed(book *store.Book, name string) ([]*record.Block, error) {
	if name == "" {
		return book.Folded().List(), nil
	}
	b, err := findBlock(book, name)
	if err == nil && b == nil {
		err = mistaken("--block", name, "the name of a block in this book; barkslip block list shows them")
	}
	return []*record.Block{b}, err
}

// writeOut writes what goes out to a file that is not there yet, whole or not at
// all.
func writeOut(name string, write func(io.Writer) error) error {
	var made bytes.Buffer
	if err := write(&made); err != nil {
		return err
	}
	switch err := writeNew(name, made.Bytes()); {
	case errors.Is(err, fs.ErrExist):
		return taken(name)
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrPermission):
		return mistaken("--out", name, "a file that can be written ("+cause(err)+")")
	case err != nil:
		return fmt.Errorf("%s cannot be written: %s", name, cause(err))
	}
	return nil
}

// exported is what goes out.
type exported struct {
	book   *store.Book
	now    time.Time
	grafts bool
	blocks []*record.Block
	lays   map[record.ID]out.Lay
}

func (x *exported) columns() []string {
	if x.grafts {
		return out.GraftColumns
	}
	return out.StumpColumns
}

// each gives every line in order of the list.
func (x *exported) each(fn func(b *record.Block, id record.StumpID, line []out.Cell) error) error {
	for _, b := range x.blocks {
		sums, err := x.book.Summaries(b.ID)
		if err != nil {
			return err
		}
		for _, sum := range sums {
			s, err := x.book.Stump(sum.ID)
			if err != nil {
				return err
			}
			lines := [][]out.Cell{}
			if x.grafts {
				lines = out.Grafts(x.book.Folded(), b, s)
			} else {
				lines = append(lines, out.Stump(x.book.Folded(), b, s, x.now))
			}
			for _, line := range lines {
				if err := fn(b, sum.ID, line); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// csv writes RFC 4180 text.
func (x *exported) csv(to io.Writer) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	row := append([]string{}, x.columns()...)
	if err := w.Write(row); err != nil {
		return err
	}
	err := x.each(func(_ *record.Block, _ record.StumpID, line []out.Cell) error {
		for i, c := range line {
			if row[i] = c.Text; c.User {
				row[i] = guarded(c.Text)
			}
		}
		return w.Write(row)
	})
	w.Flush()
	return errors.Join(err, w.Error())
}

// lay finds out how each block lies, before anything is written.
func (x *exported) lay(a *app) error {
	x.lays = map[record.ID]out.Lay{}
	for _, b := range x.blocks {
		lay, missing := out.LayOf(b)
		if missing != "" {
			return mistaken("--geojson", record.Clean(b.Name), "a block whose settings have what a map needs; this one lacks "+missing+
				" (on the screen of the block: o; another block: --block)")
		}
		x.lays[b.ID] = lay
		if lay.Assumed {
			a.complain(record.Clean(b.Name) + " has no corner set: its latitude and longitude are taken for where row 1 tree 1 stands")
		}
	}
	return nil
}

// geoJSON writes a FeatureCollection of points, RFC 7946.
func (x *exported) geoJSON(to io.Writer) error {
	if _, err := io.WriteString(to, `{"type":"FeatureCollection","features":[`); err != nil {
		return err
	}
	names, between := x.columns(), "\n"
	err := x.each(func(b *record.Block, id record.StumpID, line []out.Cell) error {
		var f strings.Builder
		f.WriteString(between + `{"type":"Feature","geometry":{"type":"Point","coordinates":` + out.Coordinates(x.lays[b.ID].At(id)) + `},"properties":{`)
		for i, c := range line {
			if i > 0 {
				f.WriteByte(',')
			}
			f.WriteString(`"` + names[i] + `":` + jsonOf(c))
		}
		f.WriteString("}}")
		between = ",\n"
		_, err := io.WriteString(to, f.String())
		return err
	})
	if err != nil {
		return err
	}
	_, err = io.WriteString(to, "\n]}\n")
	return err
}

// jsonOf is a value as JSON has it, null where it is not known.
func jsonOf(c out.Cell) string {
	switch {
	case c.Text == "":
		return "null"
	case c.Number:
		return c.Text
	}
	text, err := json.Marshal(c.Text)
	if err != nil { // a string is always written
		return "null"
	}
	return string(text)
}
