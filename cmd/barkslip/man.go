package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"
	"github.com/spf13/pflag"
)

// man writes the manual, made from the commands themselves.
func (a *app) man() *cobra.Command {
	var folder string
	c := &cobra.Command{
		Use: "man [COMMAND]", Short: "The manual, for man to show",
		Long: "Writes the page of the manual on a command, made from what the program says of itself;\n" +
			"without a command that on the program. With --to, all pages are written into a folder.",
		Example: "  barkslip man | man -l -\n" +
			"  barkslip man reckon ready | man -l -\n" +
			"  barkslip man --to ~/.local/share/man/man1",
		RunE: func(c *cobra.Command, args []string) error {
			root := c.Root()
			if folder != "" {
				if len(args) > 0 {
					return mistaken("COMMAND", strings.Join(args, " "), "none together with --to, which writes all pages")
				}
				return a.writeManual(root, folder)
			}
			about, left, err := root.Find(args)
			if err != nil || len(left) > 0 {
				return subcommandsOnly(about, left)
			}
			page, err := a.page(about)
			_, _ = a.out.Write(page)
			return err
		},
	}
	c.Flags().StringVar(&folder, "to", "", "write all pages into this `FOLDER`")
	return c
}

// page is the page of one command in roff.
func (a *app) page(c *cobra.Command) ([]byte, error) {
	c.Root().DisableAutoGenTag = true
	long := c.Long
	c.Long = literal(long)
	defer func() { c.Long = long }()
	at := a.clock()
	if made := revision().at; !made.IsZero() {
		at = made
	}
	head := &doc.GenManHeader{Section: "1", Date: &at, Source: "barkslip " + version, Manual: "Barkslip"}
	var out bytes.Buffer
	if err := doc.GenMan(c, head, &out); err != nil {
		return nil, err
	}
	text := withValues(c, out.String())
	if i := strings.LastIndex(text, ".SH SEE ALSO"); i >= 0 {
		text = text[:i] + exitStatus + text[i:]
	} else {
		text += exitStatus
	}
	return []byte(text), nil
}

const exitStatus = `.SH EXIT STATUS
.TP
.B 0
done
.TP
.B 1
failed: the book, the disk or the program
.TP
.B 2
bad input: what was given cannot be; it is said what is accepted

`

// literal keeps the lines of a text that are set in as they stand: in the text a
// page is made from, four columns do that.
func literal(long string) string {
	lines := strings.Split(long, "\n")
	var out []string
	for i, l := range lines {
		if strings.HasPrefix(l, "  ") {
			if i > 0 && !strings.HasPrefix(lines[i-1], "  ") {
				out = append(out, "")
			}
			l = "    " + l
		}
		out = append(out, l)
	}
	return strings.Join(out, "\n")
}

// withValues puts the name of its value behind each option, and nothing behind
// those that have none.
func withValues(c *cobra.Command, page string) string {
	put := func(f *pflag.Flag) {
		was := `\fB--` + f.Name + `\fP`
		name, _ := pflag.UnquoteUsage(f)
		if name == "" {
			page = strings.Replace(page, was+"[="+f.DefValue+"]", was, 1)
			return
		}
		for _, value := range []string{"=" + strconv.Quote(f.DefValue), "=" + f.DefValue} {
			if strings.Contains(page, was+value+"\n") {
				page = strings.Replace(page, was+value+"\n", was+` \fI`+name+"\\fP\n", 1)
				return
			}
		}
	}
	c.NonInheritedFlags().VisitAll(put)
	c.InheritedFlags().VisitAll(put)
	return page
}

// writeManual writes the pages of all commands into a folder that is there.
func (a *app) writeManual(c *cobra.Command, folder string) error {
	info, err := os.Stat(folder)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return mistaken("--to", folder, "a folder that is there; make it first")
	case err != nil:
		return err
	case !info.IsDir():
		return mistaken("--to", folder, "a folder")
	}
	page, err := a.page(c)
	if err != nil {
		return err
	}
	name := strings.ReplaceAll(c.CommandPath(), " ", "-") + ".1"
	if err := os.WriteFile(filepath.Join(folder, name), page, 0o644); err != nil {
		return err
	}
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() && !sub.IsAdditionalHelpTopicCommand() {
			if err := a.writeManual(sub, folder); err != nil {
				return err
			}
		}
	}
	return nil
}
