package ui

import (
	"context"

	tea "github.com/charmbracelet/bubbletea"
)

// frames a second; enough that a key shows within 9 ms.
const fps = 120

// Run opens the screens and returns when they are left.
func Run(ctx context.Context, o Options) error {
	settings := []tea.ProgramOption{tea.WithAltScreen(), tea.WithFPS(fps), tea.WithContext(ctx)}
	if o.Input != nil {
		settings = append(settings, tea.WithInput(o.Input))
	}
	if o.Output != nil {
		settings = append(settings, tea.WithOutput(o.Output))
	}
	r := newRoot(o)
	r.calm = true
	_, err := tea.NewProgram(r, settings...).Run()
	return err
}
