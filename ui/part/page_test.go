package part

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/paper"
)

// numbered is a page of a hundred lines on a window with room for nineteen.
func numbered(x *Session) *Page {
	return NewPage(x, "Count", "", func(width int) []paper.Line {
		var lines []paper.Line
		for n := 1; n <= 100; n++ {
			lines = append(lines, paper.Text(paper.Plain, fmt.Sprintf("line %d of a width of %d", n, width)))
		}
		return lines
	})
}

// first is the first line in sight.
func first(p *Page) string { return p.Frame().Body[0][0].Text }

// TestPageScrolls reads a page forward and back.
func TestPageScrolls(t *testing.T) {
	x := session(time.Now())
	p := numbered(x)
	for _, c := range []struct{ key, want string }{
		{"down", "line 2 "}, {"down", "line 3 "}, {"up", "line 2 "}, {" ", "line 20 "}, {"up", "line 19 "}, {"end", "line 82 "}, {"down", "line 82 "},
		{"home", "line 1 "}, {"up", "line 1 "},
	} {
		if msgs := p.Key(keyNamed(c.key)); len(msgs) != 0 {
			t.Errorf("%q asks for %v", c.key, msgs)
		}
		if got := first(p); !strings.HasPrefix(got, c.want) {
			t.Errorf("after %q the first line is %q, want %q", c.key, got, c.want)
		}
	}
	for key, want := range map[string]Msg{"q": Quit{}, "esc": Back{}, "w": NoUse{}, "left": NoUse{}, "enter": NoUse{}, "i": Words{}} {
		if msgs := p.Key(keyNamed(key)); len(msgs) != 1 || msgs[0] != want {
			t.Errorf("%q asks for %v, want %T", key, msgs, want)
		}
	}
}

// TestPageFollowsItsWindow opens a page at its end and makes the window larger,
// then wider.
func TestPageFollowsItsWindow(t *testing.T) {
	x := session(time.Now())
	p := numbered(x).AtEnd()
	if got := first(p); !strings.HasPrefix(got, "line 82 ") {
		t.Errorf("it opens at %q", got)
	}
	x.Height = 45
	if got := first(p); !strings.HasPrefix(got, "line 61 ") {
		t.Errorf("in a high window it begins with %q", got)
	}
	x.Width = 120
	if got := first(p); !strings.HasSuffix(got, "a width of 120") {
		t.Errorf("in a wide window it begins with %q", got)
	}
}

// TestPromptStaysUntilItIsTaken types what cannot be taken, then what can.
func TestPromptStaysUntilItIsTaken(t *testing.T) {
	x := session(time.Now())
	taken := ""
	p := x.Asks("How many?", "none", true, func(text string) (Msgs, error) {
		if text == "x" {
			return nil, fmt.Errorf("%s is no number", text)
		}
		taken = text
		return Msgs{Reload{}}, nil
	})[0].(Ask).Prompt
	p.Key(keyNamed("x"))
	msgs := p.Key(tea.KeyMsg{Type: tea.KeyEnter})
	if _, failed := msgs[0].(Fail); len(msgs) != 1 || !failed {
		t.Errorf("a wrong answer asks for %v", msgs)
	}
	p.Key(keyNamed("backspace"))
	msgs = p.Key(tea.KeyMsg{Type: tea.KeyEnter})
	if want := (Msgs{Say{}, Back{}, Reload{}}); fmt.Sprint(msgs) != fmt.Sprint(want) || taken != "none" {
		t.Errorf("the likely answer asks for %v and is %q", msgs, taken)
	}
}

// TestListAsAScreen keeps its letters for commands, and stays.
func TestListAsAScreen(t *testing.T) {
	x := session(time.Now())
	var items []Item
	for n := range 12 {
		items = append(items, Item{Word: fmt.Sprint(n), Take: Does(Say{fmt.Sprint(n)})})
	}
	over, screen := NewList(x, "Which?", "", items), NewList(x, "Which?", "", items).AsScreen()
	if msgs := over.Key(keyNamed("b")); fmt.Sprint(msgs) != fmt.Sprint(Msgs{Back{}, Say{"10"}}) {
		t.Errorf("b asks for %v", msgs)
	}
	if msgs := screen.Key(keyNamed("b")); fmt.Sprint(msgs) != fmt.Sprint(Msgs{NoUse{}}) {
		t.Errorf("on a screen b asks for %v", msgs)
	}
	if msgs := screen.Key(keyNamed("2")); fmt.Sprint(msgs) != fmt.Sprint(Msgs{Say{"1"}}) {
		t.Errorf("on a screen 2 asks for %v", msgs)
	}
}
