package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"strings"
	"sync"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/mattn/go-isatty"

	"barkslip/core/unit"
)

// patience is how long work may take before it says how far it is.
const patience = 500 * time.Millisecond

// watched does work that may take long. On a terminal it says from half a second on how
// far the work is, and Esc ends the work's context; so does an interrupt everywhere.
func (a *app) watched(far func() string, work func(ctx context.Context) error) error {
	ctx, cancel := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGQUIT)
	defer cancel()
	ended := make(chan error, 1)
	people := a.err
	if to, ok := people.(*tame); ok {
		people = to.to
	}
	screen, onTerminal := people.(*os.File)
	onTerminal = onTerminal && isatty.IsTerminal(screen.Fd())
	told := &teller{to: people}
	if onTerminal {
		was := a.err
		a.err = &tame{to: told}
		defer func() { a.err = was }()
	}
	go func() { ended <- work(ctx) }()
	select {
	case err := <-ended:
		return err
	case <-time.After(patience):
	}
	if !onTerminal {
		return <-ended
	}
	options := []tea.ProgramOption{tea.WithOutput(screen), tea.WithoutSignalHandler()}
	if isatty.IsTerminal(os.Stdin.Fd()) {
		options = append(options, tea.WithInput(os.Stdin))
	} else {
		options = append(options, tea.WithInput(nil))
	}
	p := tea.NewProgram(lengthy{far: far, stop: cancel}, options...)
	told.over(p)
	var err error
	go func() {
		err = <-ended
		p.Send(endOfWork{})
	}()
	if failed := a.holding(func() error { _, err := p.Run(); return err }); failed != nil { // the terminal went away: the work goes on
		told.over(nil)
		return <-ended
	}
	told.over(nil)
	return err
}

// teller passes complaints on: above the line that says how far the work is, where one
// stands.
type teller struct {
	mu sync.Mutex
	to io.Writer
	p  *tea.Program
}

func (t *teller) over(p *tea.Program) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.p = p
}

func (t *teller) Write(says []byte) (int, error) {
	t.mu.Lock()
	p := t.p
	t.mu.Unlock()
	if p == nil {
		return t.to.Write(says)
	}
	p.Println(strings.TrimSuffix(string(says), "\n"))
	return len(says), nil
}

// lengthy is the line that says how far work is.
type lengthy struct {
	far     func() string
	stop    func()
	stopped bool
	over    bool
}

type (
	endOfWork struct{}
	lookAgain struct{}
)

// lookEvery is how often the line is written anew.
const lookEvery = 250 * time.Millisecond

func (l lengthy) again() tea.Cmd {
	return tea.Tick(lookEvery, func(time.Time) tea.Msg { return lookAgain{} })
}

func (l lengthy) Init() tea.Cmd { return l.again() }

func (l lengthy) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case endOfWork:
		l.over = true
		return l, tea.Quit
	case lookAgain:
		return l, l.again()
	case tea.KeyMsg:
		if k := msg.Type; k == tea.KeyEsc || k == tea.KeyCtrlC {
			l.stopped = true
			l.stop()
		}
	}
	return l, nil
}

func (l lengthy) View() string {
	switch {
	case l.over:
		return ""
	case l.stopped:
		return l.far() + "  Stopping; what came is kept.\n"
	}
	return l.far() + "  Esc stops and keeps what came.\n"
}

// left says how long work will take that is a share done after a time, "" where nobody
// can say.
func left(share float64, after time.Duration) string {
	if share <= 0 || share > 1 {
		return ""
	}
	rest := time.Duration(float64(after) * (1 - share) / share)
	if rest < time.Minute {
		return "about " + count(max(1, int(rest.Round(time.Second)/time.Second)), "second") + " left"
	}
	return "about " + unit.Lasting(rest.Round(time.Minute)) + " left"
}
