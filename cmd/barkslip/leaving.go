package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"runtime"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// traceVariable names the environment variable that asks for a trace of the program where
// it has a fault, or is ended by SIGQUIT.
const traceVariable = "BARKSLIP_TRACE"

var errEnded = errors.New("ended by a signal; every answer recorded is on disk")

// heedQuit has SIGQUIT end the program without a trace: where it holds the terminal, by
// way of the context, so that the terminal is left as it was.
func (a *app) heedQuit() (ctx context.Context, done func()) {
	ctx, cancel := context.WithCancel(context.Background())
	quits := make(chan os.Signal, 1)
	signal.Notify(quits, syscall.SIGQUIT)
	go func() {
		for range quits {
			if a.holdsTerminal.Load() {
				cancel()
				continue
			}
			fmt.Fprint(a.err, trace())
			os.Exit(128 + int(syscall.SIGQUIT))
		}
	}()
	return ctx, func() { signal.Stop(quits); cancel() }
}

// holding runs what has the terminal to itself.
func (a *app) holding(run func() error) error {
	a.holdsTerminal.Store(true)
	defer a.holdsTerminal.Store(false)
	err := run()
	if errors.Is(err, tea.ErrProgramKilled) {
		return errEnded
	}
	return err
}

// trace is where all parts of the program stand, if it was asked for.
func trace() string {
	if os.Getenv(traceVariable) == "" {
		return ""
	}
	text := make([]byte, 1<<20)
	return string(text[:runtime.Stack(text, true)]) + "\n"
}
