package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"sync/atomic"
	"time"

	"github.com/spf13/cobra"

	"barkslip/store"
	"barkslip/store/meet"
	"barkslip/ui/part"
)

// meetEvery is how long it is from one meeting to the next where they follow each other.
const meetEvery = time.Minute

func (a *app) meet() *cobra.Command {
	c := &cobra.Command{
		Use: "meet [URL]", Short: "Have the book and the crew's journal take from each other what each lacks",
		Long: "The crew's journal lies on a server, nats://truck.local:4222. The book takes from it\n" +
			"what it does not know yet and sends what the journal lacks; the first meeting of a\n" +
			"new computer fetches all, and makes the book if there is none. What is sent is sealed\n" +
			"with the crew's key. A message that does not hold is named and passed over.\n\n" +
			"With --remember, crew, server and files are kept on this computer: meet needs no\n" +
			"options then, and the screens meet by themselves, once a minute.",
		Example: "  barkslip meet --new-key hollow-lane.key\n" +
			"  barkslip meet nats://truck.local:4222 --crew hollow-lane --key-file hollow-lane.key --remember\n" +
			"  barkslip meet --follow",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return mistaken("URL", strings.Join(args, " "), "one address; several servers of a cluster with commas between")
			}
			return nil
		},
	}
	g := declare(c.Flags(), bookOption,
		option{name: "crew", value: "NAME", says: "the crew's name: a to z, digits, hyphens"},
		option{name: "key-file", value: "FILE", says: "the file with the crew's key; former ones stand behind it in the file"},
		option{name: "ca", value: "FILE", says: "certificates that vouch for the server; without it those of this computer"},
		option{name: "credentials", value: "FILE", says: "what lets this computer in, where the server asks for it"},
		option{name: "new-key", value: "FILE", says: "only make a key and write it to a new file; the keys of --key-file stand behind it there"})
	remember := c.Flags().Bool("remember", false, "keep crew, server and files on this computer, for the next time and for the screens")
	follow := c.Flags().Bool("follow", false, "meet again every minute until it is stopped")
	c.RunE = func(c *cobra.Command, args []string) error {
		if path := g.text("new-key", "a file that is not there yet"); g.err != nil || path != "" {
			if g.err == nil && len(args) > 0 {
				return mistaken("URL", args[0], "none with --new-key, which only makes a key")
			}
			return a.newKey(g, path)
		}
		crew, err := a.askedCrew(g, args)
		if err != nil {
			return err
		}
		if *remember {
			prefs := loadPrefs()
			if prefs.Crew, err = keptCrew(crew); err != nil {
				return err
			}
			if err := savePrefs(prefs); err != nil {
				return err
			}
			crew = prefs.Crew
		}
		if *follow {
			return a.follow(g, crew)
		}
		return a.meetOnce(g, crew)
	}
	return c
}

// newKey makes a key file.
func (a *app) newKey(g *given, path string) error {
	former := g.text("key-file", "a file")
	if g.err != nil {
		return g.err
	}
	var behind []meet.Key
	if former != "" {
		var err error
		if behind, err = readKeys(former); err != nil {
			return err
		}
	}
	if err := makeKey(path, behind...); err != nil {
		return err
	}
	fmt.Fprintf(a.out, "A new key is in %s. Bring it to the crew's other computers by hand; whoever has it reads all.\n", shownPath(path))
	return nil
}

// askedCrew is whom to meet: as it is given, the rest as this computer remembers it.
func (a *app) askedCrew(g *given, args []string) (part.Crew, error) {
	crew := loadPrefs().Crew
	if len(args) == 1 {
		if err := meet.CheckURL(args[0]); err != nil {
			return crew, mistaken("URL", args[0], err.Error())
		}
		crew.URL = args[0]
	}
	if name := g.text("crew", "a crew's name"); name != "" {
		if err := meet.CheckName(name); err != nil {
			return crew, mistaken("--crew", name, err.Error())
		}
		crew.Name = name
	}
	crew.Key = cmp.Or(g.text("key-file", "a file"), crew.Key)
	crew.CA = cmp.Or(g.text("ca", "a file"), crew.CA)
	crew.Credentials = cmp.Or(g.text("credentials", "a file"), crew.Credentials)
	switch {
	case g.err != nil:
		return crew, g.err
	case crew.URL == "":
		return crew, missing("URL", "the address of the crew's server, such as nats://truck.local:4222")
	case crew.Name == "":
		return crew, missing("--crew", "the crew's name: a to z, digits, hyphens")
	case crew.Key == "":
		return crew, missing("--key-file", "the file with the crew's key; --new-key makes one")
	}
	return crew, checkCrew(crew)
}

// meetOnce holds one meeting and tells of it.
func (a *app) meetOnce(g *given, set part.Crew) error {
	crew, server, err := openedCrew(set)
	if err != nil {
		return err
	}
	book, err := openOrMakeBook(g, store.Options{Much: true})
	if err != nil {
		return err
	}
	var now atomic.Pointer[meet.Far]
	far := func() string { return "Meeting " + crew.Name + farWords(now.Load()) + "." }
	var report meet.Report
	stopped := false
	err = a.watched(far, func(ctx context.Context) (err error) {
		report, err = meet.Meet(ctx, book, crew, server, meet.Options{Far: func(f meet.Far) { now.Store(&f) }})
		stopped = ctx.Err() != nil
		return err
	})
	if err == nil || report.Came > 0 || report.Sent > 0 {
		fmt.Fprintln(a.out, reportWords(report))
	}
	wrong := a.sayPassed(report)
	if stopped {
		a.complain("stopped; what came and what went is kept, meet again for the rest")
	}
	if err = errors.Join(err, book.Close()); err == nil && (wrong || stopped) {
		return errFindings
	}
	return err
}

// sayPassed names what a meeting passed over; it says whether anything was.
func (a *app) sayPassed(report meet.Report) (wrong bool) {
	for _, passed := range report.Passed {
		a.complain(passed.Error())
	}
	for _, id := range report.Clashing {
		a.complain(fmt.Sprintf("the event %s came with two contents; one of them is kept", id))
	}
	return len(report.Passed) > 0
}

// follow meets again and again. A server that is away for a while, or a book that is open
// elsewhere, is said once and does not end it.
func (a *app) follow(g *given, set part.Crew) error {
	ctx, cancel := signal.NotifyContext(context.Background(), os.Interrupt)
	defer cancel()
	said := ""
	for {
		err := a.meetOnce(g, set)
		switch says := ""; {
		case errors.Is(err, errFindings), err == nil:
			said = ""
		case errors.Is(err, meet.ErrNoServer), errors.Is(err, store.ErrLocked):
			if says = err.Error(); says != said {
				a.complain(says + "; trying again every minute")
			}
			said = says
		default:
			return err
		}
		if err := a.out.Flush(); err != nil {
			return err
		}
		select {
		case <-ctx.Done():
			return nil
		case <-time.After(meetEvery):
		}
	}
}

// farWords are how far a meeting is.
func farWords(f *meet.Far) string {
	switch {
	case f == nil || f.Of == 0:
		return ""
	case f.Sending:
		return fmt.Sprintf(": %d of %s sent", f.Done, count(f.Of, "record"))
	}
	return fmt.Sprintf(": %d of %s taken", f.Done, count(f.Of, "message"))
}

// reportWords are what a meeting did.
func reportWords(r meet.Report) string {
	says := fmt.Sprintf("Met: %d came, %d sent", r.Came, r.Sent)
	if r.Left > 0 {
		says += fmt.Sprintf(", %d still to send", r.Left)
	}
	return says + "."
}
