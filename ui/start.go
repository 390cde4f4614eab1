package ui

import (
	"time"

	"barkslip/core/record"
	"barkslip/ui/first"
	"barkslip/ui/part"
	"barkslip/ui/practice"
)

// start opens the block worked last, or the first-use questions; and practice, where
// that is wanted first.
func (r *root) start() {
	if p := r.x.Practice; p != nil && p.Only {
		r.mode = mode{}
		r.fail(r.push(practice.New(r.x)))
		return
	}
	r.startBlock()
	if r.x.Practice != nil {
		r.fail(r.push(practice.New(r.x)))
	}
}

// startBlock opens the block worked last, or the first-use questions.
func (r *root) startBlock() {
	blocks := r.x.Book.Folded().List()
	if len(blocks) == 0 {
		r.mode = mode{}
		r.fail(r.push(first.New(r.x)))
		return
	}
	if r.x.Block == record.None {
		r.x.Block = r.latestBlock(blocks)
	}
	r.mode = mode{}
	r.openBlock(r.x.Block)
	r.warnClock()
	if r.x.OwnDay != nil && r.x.OwnDay() {
		day := r.x.Time().In(r.x.Site().Zone).Format("2 January 2006")
		r.say("A made-up block; nothing in it is real. Its own day is "+day+".", false)
	}
	if r.x.Looking() {
		r.say("Looking on: this book is open elsewhere. What is answered there is seen here; nothing is written.", false)
		return
	}
	if r.x.Hand == "" {
		r.do(r.x.AskHand()...)
	}
}

// reopen starts anew on another book, with the same hand and window.
func (r *root) reopen(o Options) {
	was := r.x
	o.Prefs = was.Prefs
	r.x, r.met = part.NewSession(o), met{asked: -1}
	r.x.Width, r.x.Height, r.x.Hand = was.Width, was.Height, was.Hand
	if was.Spoken() {
		r.x.Speak()
	}
	r.start()
}

// latestBlock is the block with the newest work.
func (r *root) latestBlock(blocks []*record.Block) record.ID {
	best, newest := blocks[0].ID, time.Time{}
	for _, b := range blocks {
		for _, s := range r.x.Summaries(b.ID) {
			if s.Newest.After(newest) {
				best, newest = b.ID, s.Newest
			}
		}
	}
	return best
}

// warnClock says when the laptop's clock stands before the newest answer.
func (r *root) warnClock() {
	newest := r.x.Book.Newest()
	if newest.Sub(r.x.Now()) > time.Hour {
		at := newest.In(r.x.Site().Zone).Format("2 Jan 15:04")
		r.do(part.Warn{Text: "The newest answer is dated " + at + ", after this laptop's clock. Is the clock right?"})
	}
}
