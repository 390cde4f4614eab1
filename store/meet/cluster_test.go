package meet

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"net"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"barkslip/store"
)

// Five books meet through a cluster of three in any order, while connections are cut in the
// middle of a batch, acknowledgements are lost and a server is killed. They end as one, and
// each event was sent once.
func TestFiveBooksThroughACluster(t *testing.T) {
	if testing.Short() {
		t.Skip("three servers")
	}
	rounds := 25
	if n, err := strconv.Atoi(os.Getenv("BARKSLIP_MEETINGS")); err == nil {
		rounds = n
	}
	c := newCluster(t)
	c.start()
	crew := crewOf("hollow", 1)
	chance := rand.New(rand.NewPCG(uint64(time.Now().UnixNano()), 1))
	var books []*store.Book
	for i := range 5 {
		b := newBook(t, uint64(i+1))
		books = append(books, b)
		note(t, b, stumpAt(uint16(i+1), 1), 20, fmt.Sprint("laptop ", i))
	}
	made(t, books[0])
	leashes := make([]*leash, copies)
	for i, o := range c.options {
		leashes[i] = newLeash(t, net.JoinHostPort("127.0.0.1", fmt.Sprint(o.Port)))
	}
	down, broke := -1, 0
	for round := range rounds {
		switch {
		case round == rounds/3:
			down = chance.IntN(copies)
			c.kill(down)
			c.led()
		case round == 2*rounds/3:
			c.begin(down)
			down = -1
			c.led()
		}
		who := chance.IntN(5)
		b := books[who]
		note(t, b, stumpAt(uint16(chance.IntN(12)+1), uint16(chance.IntN(20)+1)), 1+chance.IntN(40), fmt.Sprint("round ", round, " by ", who))
		i := chance.IntN(copies)
		for i == down {
			i = chance.IntN(copies)
		}
		through := Server{URL: leashes[i].url()}
		if chance.IntN(4) > 0 {
			leashes[i].cutAfter(int64(300+chance.IntN(1500)), chance.IntN(2) == 0)
		}
		_, err := Meet(context.Background(), b, crew, through, Options{Wait: time.Second, Tries: 1})
		if err != nil && !errors.Is(err, ErrNoServer) {
			t.Fatal(err)
		}
		if err != nil {
			broke++
		}
		leashes[i].mend()
	}
	t.Logf("%d of %d meetings broke off", broke, rounds)
	alike := func() bool {
		for _, b := range books {
			if exported(t, b) != exported(t, books[0]) {
				return false
			}
		}
		return true
	}
	for try := range 12 { // servers that are still catching up say so, or end early
		for _, b := range books {
			if _, err := Meet(context.Background(), b, crew, Server{URL: c.url()}, Options{}); err != nil && (try == 11 || !errors.Is(err, ErrNoServer)) {
				t.Fatal(err)
			}
		}
		if try > 0 && alike() {
			break
		}
		time.Sleep(100 * time.Millisecond)
	}
	first := exported(t, books[0])
	for i, b := range books {
		if exported(t, b) != first {
			t.Errorf("book %d is not as the first", i)
		}
		if _, left, _ := b.Meeting(crew.Mark()); left != 0 {
			t.Errorf("book %d has %d to send", i, left)
		}
	}
	onceEach(t, crew, c.url(), strings.Count(first, "\n"))
}

// All five at once, each while the others send.
func TestFiveBooksAtOnce(t *testing.T) {
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	var books []*store.Book
	for i := range 5 {
		b := newBook(t, uint64(i+1))
		for k := range 30 {
			note(t, b, stumpAt(uint16(i+1), uint16(k+1)), 200, fmt.Sprint("laptop ", i))
		}
		books = append(books, b)
	}
	done := make(chan error)
	for _, b := range books {
		go func() {
			_, err := Meet(context.Background(), b, crew, at, Options{})
			done <- err
		}()
	}
	for range books {
		if err := <-done; err != nil {
			t.Error(err)
		}
	}
	for _, b := range books {
		met(t, b, crew, at)
		if exported(t, b) != exported(t, books[0]) {
			t.Error("they are not one")
		}
	}
	onceEach(t, crew, s.ClientURL(), 5*30*200)
}

// A message whose acknowledgement is lost is not sent again.
func TestLostAcknowledgement(t *testing.T) {
	s := truck(t, nil)
	crew := crewOf("hollow", 1)
	b := newBook(t, 1)
	met(t, b, crew, Server{URL: s.ClientURL()}) // the journal is made
	l := newLeash(t, s.Addr().String())
	lost := 0
	for n := int64(500); n < 4000; n += 290 {
		note(t, b, stumpAt(1, uint16(n)), 20, "one")
		l.cutAfter(n, true)
		if _, err := Meet(context.Background(), b, crew, Server{URL: l.url()}, Options{Wait: 300 * time.Millisecond, Tries: 1}); err != nil {
			lost++
		}
		l.mend()
	}
	if lost == 0 {
		t.Error("nothing was lost: the test tries nothing")
	}
	met(t, b, crew, Server{URL: s.ClientURL()})
	onceEach(t, crew, s.ClientURL(), strings.Count(exported(t, b), "\n"))
}

// A server that has not caught up yet ends early: what stands behind that is not passed by.
func TestWhatAServerHasNotCaughtUpWithIsNotPassedBy(t *testing.T) {
	s := truck(t, nil)
	crew := crewOf("hollow", 1)
	b := newBook(t, 1)
	note(t, b, stumpAt(1, 1), 5, "one")
	met(t, b, crew, Server{URL: s.ClientURL()})
	j, err := openJournal(context.Background(), crew, Server{URL: s.ClientURL()}, time.Second)
	if err != nil {
		t.Fatal(err)
	}
	defer j.close()
	read := func(behind uint64) (n int, err error) {
		err = j.read(context.Background(), behind, func(message) bool { n++; return true })
		return n, err
	}
	was := int(j.last)
	if n, err := read(0); n != was || err != nil {
		t.Fatalf("%d of %d messages, %v", n, was, err)
	}
	j.last += 3 // as the leader of the cluster knows it
	for _, behind := range []uint64{0, uint64(was)} {
		if n, err := read(behind); n != was-int(behind) || !errors.Is(err, ErrNoServer) {
			t.Errorf("behind %d: %d of %d messages, %v", behind, n, was, err)
		}
	}
	j.lacks = 3 // it is known to have lost them
	if n, err := read(0); n != was || err != nil {
		t.Errorf("%d of %d messages, %v", n, was, err)
	}
}
