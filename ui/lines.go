package ui

import (
	"io"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/lines"
	"barkslip/ui/part"
)

// NotTaken is the error of an input that ended behind a wrong line, with lines that
// were not taken.
type NotTaken = lines.NotTaken

// RunLines tells the screens in words and takes answers line by line, until the
// program is left or the input ends. With echo what is read is written as well.
func RunLines(o Options, in io.Reader, out io.Writer, echo bool) error {
	r := newRoot(o)
	r.calm = true
	r.x.Speak()
	return lines.Talk(&spoken{r}, in, out, echo)
}

// spoken is the router as it is driven by lines.
type spoken struct{ *root }

func (r *spoken) Session() *part.Session { return r.x }

func (r *spoken) Top() part.Screen { return r.top() }

// Key gives a key to what is on top. No key is held down here.
func (r *spoken) Key(k tea.KeyMsg) (useless bool) {
	defer r.recovered()
	r.noUse = false
	r.send(k)
	return r.noUse
}

func (r *spoken) Do(msgs ...part.Msg) {
	defer r.recovered()
	r.do(msgs...)
}

func (r *spoken) Said() part.Status {
	said := r.said
	r.said, r.noUse = part.Status{}, false
	return said
}

func (r *spoken) Beat() {
	defer r.recovered()
	if r.x.Looking() {
		r.glance()
	}
	r.do(r.screen().Tick()...)
}

func (r *spoken) Left() bool { return r.quit }
