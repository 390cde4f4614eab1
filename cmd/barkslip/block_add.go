package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"barkslip/core/list"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/store"
)

const listAccepted = "a list of stumps as comma-separated text: row,tree and optional limb,across,stock,variety,note"

func (a *app) blockAdd() *cobra.Command {
	c := &cobra.Command{
		Use: "add FILE.csv", Short: "Add the stumps of a list to a block",
		Long: "Reads a list of stumps: a first line that names the columns, row and tree and any\n" +
			"of limb, across, stock, variety and note, then a line a stump. A size without a\n" +
			"unit is in the block's own: inches, or centimetres where it is metric.\n\n" +
			"With any fault in the list nothing is added. Adding a list again adds nothing; a\n" +
			"line that has changed takes the place of what was there.",
		Example: "  barkslip block add \"Hollow Lane.csv\" --zone America/Los_Angeles --lat 38.5 --lon -121.8\n" +
			"  barkslip block add more.csv --block \"Hollow Lane\"",
		Args: oneArgument("FILE.csv", listAccepted),
	}
	g := declare(c.Flags(),
		option{name: "block", value: "NAME", says: "the block, made if there is none; without it the name of the file"},
		bookOption,
		option{name: "units", value: "SYSTEM", says: "units of the block: us or metric; a new one is us without it"},
		option{name: "zone", value: "ZONE", says: "time zone of the block; a new one has this computer's without it"},
		option{name: "lat", value: "DEGREES", says: "latitude of the block, north positive"},
		option{name: "lon", value: "DEGREES", says: "longitude of the block, east positive"})
	c.RunE = func(_ *cobra.Command, args []string) error {
		if info, err := os.Stat(args[0]); err == nil && info.IsDir() {
			return mistaken("FILE.csv", args[0], listAccepted+" (it is a folder)")
		}
		wanted := readWanted(g, args[0])
		if g.err != nil {
			return g.err
		}
		return a.addList(g, wanted, args[0])
	}
	return c
}

// wanted is what the command line says of the block.
type wanted struct {
	name     string
	settings [][2]string // in order, those given
	units    unit.System // given, or those of a new block
	unitsSet bool
}

func readWanted(g *given, file string) wanted {
	w := wanted{name: g.text("block", "the name of a block"), units: g.system("units"), unitsSet: g.has("units")}
	if w.name == "" {
		w.name = strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
	}
	if w.name = strings.TrimSpace(record.Clean(w.name)); w.name == "" || len(w.name) > 200 {
		g.refuse("block", "a name of up to 200 letters")
	}
	if w.unitsSet {
		w.settings = append(w.settings, [2]string{"units", w.units.String()})
	}
	g.zone("zone")
	g.decimal("lat", -90, 90)
	g.decimal("lon", -180, 180)
	needBoth(g, "lat", "lon")
	for _, s := range [][2]string{{"zone", "zone"}, {"lat", "latitude"}, {"lon", "longitude"}} {
		if g.has(s[0]) {
			w.settings = append(w.settings, [2]string{s[1], strings.TrimSpace(g.each(s[0])[0])})
		}
	}
	return w
}

// addList adds a list to a book that may have to be made.
func (a *app) addList(g *given, w wanted, file string) error {
	book, err := a.openBook(g, false)
	if err != nil && !errors.Is(err, store.ErrMissing) {
		return err
	}
	var block *record.Block
	if book != nil {
		defer func() { _ = book.Close() }()
		if block, err = findBlock(book, w.name); err != nil {
			return err
		}
	}
	if block != nil && !w.unitsSet {
		w.units = block.Units
	}
	rows, err := a.readList(file, w.units)
	if err != nil {
		return err
	}
	if book == nil {
		if book, err = openOrMakeBook(g, store.Options{}); err != nil {
			return err
		}
		defer func() { _ = book.Close() }()
	}
	ended := a.ownDay(book)
	if ended { // work of a real block is dated by the real day
		if err := book.SetApart(0); err != nil {
			return err
		}
	}
	p, err := planList(book, block, w, rows, a.clockOf(book)())
	if err != nil {
		return err
	}
	if ended && p.made { // what stood in the book until now stays made up, and apart
		for _, body := range book.Folded().AllMadeUp() {
			p.events = append(p.events, record.Event{At: a.clock(), Body: body})
		}
	}
	if _, err := book.Append(p.events...); err != nil {
		return err
	}
	a.reportAdded(p, w, len(rows.Rows))
	return nil
}

// findBlock finds a block by its name, or by its id where names are alike; nil
// if there is none.
func findBlock(book *store.Book, name string) (*record.Block, error) {
	var same, alike []*record.Block
	for _, b := range book.Folded().List() {
		switch {
		case b.ID.String() == name:
			return b, nil
		case b.Name == name:
			same = append(same, b)
		case strings.EqualFold(b.Name, name):
			alike = append(alike, b)
		}
	}
	if len(same) == 0 {
		same = alike
	}
	switch len(same) {
	case 0:
		return nil, nil
	case 1:
		return same[0], nil
	}
	var ids []string
	for _, b := range same {
		ids = append(ids, b.ID.String())
	}
	return nil, mistaken("--block", name, "the id of one of the blocks of that name: "+strings.Join(ids, ", "))
}

// mostProblems is how many faults of a list are written out.
const mostProblems = 20

// readList reads the list; its faults are written line by line.
func (a *app) readList(name string, sys unit.System) (list.List, error) {
	file, err := openFile("FILE.csv", name)
	if err != nil {
		return list.List{}, err
	}
	defer file.Close()
	rows, problems := list.Read(file, sys.Bare())
	if len(problems) == 0 {
		return rows, nil
	}
	for _, p := range problems[:min(len(problems), mostProblems)] {
		a.complain(filepath.Base(name) + ": " + p.String())
	}
	if more := len(problems) - mostProblems; more > 0 {
		a.complain(fmt.Sprintf("%s: and %d more", filepath.Base(name), more))
	}
	a.complain(fmt.Sprintf("nothing was added: %s in %s", count(len(problems), "fault"), filepath.Base(name)))
	return list.List{}, errBadLines
}

func (a *app) reportAdded(p planned, w wanted, rows int) {
	fmt.Fprintln(a.out, p.name+": "+p.counts(rows))
	if !p.made {
		return
	}
	says := "A new block in " + map[unit.System]string{unit.US: "inches and degrees F", unit.Metric: "metric units"}[w.units]
	switch {
	case p.zone == "":
		says += ", without a time zone: its days are counted in UTC. Say which with --zone."
	case p.guessed:
		says += ", in this computer's time zone, " + p.zone + "; --zone sets another."
	default:
		says += ", in the time zone " + p.zone + "."
	}
	if !p.placed {
		says += " With --lat and --lon it also reckons sun and heat."
	}
	fmt.Fprintln(a.out, wrap("", says, 0))
}
