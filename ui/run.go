package ui

import (
	"context"
	"errors"
	"io"
	"os"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/part"
)

// Run opens the screens and returns when they are left. Bubble Tea has the terminal and reads
// the keys and the size; the frames are written by a window of our own: Bubble Tea's
// renderer would wake up 120 times a second to show a key in time.
func Run(ctx context.Context, o Options) (err error) {
	settings := []tea.ProgramOption{tea.WithFPS(1), tea.WithContext(ctx)}
	if o.Input != nil {
		settings = append(settings, tea.WithInput(o.Input))
	}
	var out io.Writer = os.Stdout
	if o.Output != nil {
		out = o.Output
	}
	if terminal, ok := out.(*os.File); ok {
		settings = append(settings, tea.WithOutput(silent{terminal}))
	} else {
		settings = append(settings, tea.WithOutput(io.Discard))
	}
	w := &window{to: out}
	if err := w.open(); err != nil {
		return err
	}
	defer func() { err = errors.Join(err, w.close()) }()
	if err := w.say(reading(o)); err != nil {
		return err
	}
	r := newRoot(o)
	r.calm = true
	_, err = tea.NewProgram(&calm{root: r, window: w}, settings...).Run()
	return err
}

// manyStumps is how many stumps are read at a glance: of more it is said that they are read.
const manyStumps = 5000

// reading says what is read before the first frame can be drawn, "" where that is at once.
func reading(o Options) string {
	if o.Stumps < manyStumps {
		return ""
	}
	says := "reading " + part.Counted(o.Stumps, "stump")
	if blocks := o.Book.Folded().List(); len(blocks) == 1 {
		says = blocks[0].Name + ", " + says
	}
	return says
}

// calm has no fault of the program reach the terminal: it is said on the screens, which go
// on, and every answer recorded is safe.
type calm struct {
	*root
	window *window
	failed bool // the last drawing
}

// Update takes one message.
func (c *calm) Update(msg tea.Msg) (m tea.Model, cmd tea.Cmd) {
	m = c
	defer func() {
		if c.show(msg); c.quit {
			cmd = tea.Quit
		}
	}()
	defer c.recovered()
	switch msg.(type) { // these go on, whatever happens
	case tick:
		cmd = beat()
	case glanced:
		cmd = glance()
	}
	_, cmd = c.root.Update(msg)
	return c, cmd
}

// View is nothing: the frame is in the window already.
func (c *calm) View() string { return "" }

// show writes the frame.
func (c *calm) show(msg tea.Msg) {
	if _, resized := msg.(tea.WindowSizeMsg); resized {
		c.window.resized()
	}
	if c.quit {
		return
	}
	if err := c.window.draw(c.drawn()); err != nil { // the terminal went away
		c.quit = true
	}
}

// drawn is what is on top; what cannot be drawn is left for what lies beneath.
func (c *calm) drawn() (out string) {
	defer func() {
		if recover() == nil {
			return
		}
		if out = "A fault in the program: this cannot be drawn. Every answer recorded is safe. Esc goes back, q leaves."; !c.failed {
			c.failed = true
			c.bare()
			out = c.drawn()
		}
	}()
	out = c.root.View()
	c.failed = false
	return out
}
