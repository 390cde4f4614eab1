package meet

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/nats-io/nats.go"
	"github.com/nats-io/nats.go/jetstream"
)

// journal is a crew's journal on a server, while this computer is connected.
type journal struct {
	crew   Crew
	server Server
	conn   *nats.Conn
	js     jetstream.JetStream
	stream jetstream.Stream
	made   int64  // when it was made, in unix nanoseconds
	lacks  uint64 // how many of its messages it has lost
	last   uint64 // the number of its last message
	wait   time.Duration
}

// message is one message as it came.
type message struct {
	number  uint64
	subject string
	data    []byte
}

// copies is on how many servers of a cluster each message stands.
const copies = 3

// openJournal connects to a crew's journal, which is made if there is none.
func openJournal(ctx context.Context, crew Crew, server Server, wait time.Duration) (*journal, error) {
	conn, err := server.dial(ctx, wait)
	if err != nil {
		return nil, err
	}
	j := &journal{crew: crew, server: server, conn: conn, wait: wait}
	if j.js, err = jetstream.New(conn, jetstream.WithDefaultTimeout(wait)); err == nil {
		err = j.open(ctx)
	}
	if err != nil {
		conn.Close()
		return nil, j.explain(err)
	}
	return j, nil
}

func (j *journal) close() { j.conn.Close() }

// config is how a crew's journal is kept: for ever, and nothing of it can be deleted.
func (j *journal) config() jetstream.StreamConfig {
	c := jetstream.StreamConfig{
		Name: j.crew.stream(), Subjects: j.crew.subjects(), Description: "what a crew's books have met of one another",
		Retention: jetstream.LimitsPolicy, Discard: jetstream.DiscardNew, Storage: jetstream.FileStorage,
		DenyDelete: true, DenyPurge: true, Replicas: 1,
	}
	if j.conn.ConnectedClusterName() != "" {
		c.Replicas = copies
	}
	return c
}

func (j *journal) open(ctx context.Context) (err error) {
	j.stream, err = j.js.Stream(ctx, j.crew.stream())
	if errors.Is(err, jetstream.ErrStreamNotFound) {
		j.stream, err = j.js.CreateStream(ctx, j.config())
		if errors.Is(err, jetstream.ErrStreamNameAlreadyInUse) { // another made it in this moment
			j.stream, err = j.js.Stream(ctx, j.crew.stream())
		}
	}
	if err != nil {
		return err
	}
	if why := j.notOurs(j.stream.CachedInfo().Config); why != "" {
		return trouble(ErrNotOurs, nil, "the stream %s at %s is no crew's journal of this program: %s; choose another name for the crew", j.crew.stream(), shownURL(j.server.URL), why)
	}
	return j.look(ctx)
}

// notOurs says in what a stream is kept otherwise than a crew's journal, "" where in nothing.
func (j *journal) notOurs(c jetstream.StreamConfig) string {
	switch {
	case !slices.Equal(c.Subjects, j.crew.subjects()):
		return "it is for other messages"
	case c.Mirror != nil || len(c.Sources) > 0 || c.RePublish != nil || c.SubjectTransform != nil:
		return "it is filled from elsewhere"
	case !c.DenyDelete || !c.DenyPurge:
		return "what stands in it can be deleted"
	case c.Retention != jetstream.LimitsPolicy || c.MaxAge > 0 || c.Discard != jetstream.DiscardNew && (c.MaxMsgs > 0 || c.MaxBytes > 0) || c.MaxMsgsPerSubject > 0 || c.AllowRollup:
		return "it does not keep all that is sent"
	}
	return ""
}

// look sees how far the journal goes now.
func (j *journal) look(ctx context.Context) error {
	info, err := j.stream.Info(ctx)
	if err != nil {
		return err
	}
	j.made, j.last = info.Created.UnixNano(), info.State.LastSeq
	j.lacks = j.last - min(j.last, info.State.Msgs)
	return nil
}

// read gives the messages behind a number up to the last, in order, until take has enough.
func (j *journal) read(ctx context.Context, behind uint64, take func(message) bool) error {
	if behind >= j.last {
		return nil
	}
	at := behind
	consumer, err := j.stream.OrderedConsumer(ctx, jetstream.OrderedConsumerConfig{
		DeliverPolicy: jetstream.DeliverByStartSequencePolicy, OptStartSeq: behind + 1, InactiveThreshold: time.Minute, MaxResetAttempts: 3,
	})
	if err != nil {
		return err
	}
	if info := consumer.CachedInfo(); info != nil {
		defer func() {
			ctx, end := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
			defer end()
			_ = j.stream.DeleteConsumer(ctx, info.Name) // else it goes by itself
		}()
		if info.NumPending == 0 {
			return j.readRest(ctx, at, take)
		}
	}
	messages, err := consumer.Messages(jetstream.PullMaxMessages(256))
	if err != nil {
		return err
	}
	defer messages.Stop()
	for at < j.last {
		got, err := j.next(ctx, messages)
		if err != nil {
			return err
		}
		meta, err := got.Metadata()
		if err != nil {
			return err
		}
		at = meta.Sequence.Stream
		if !take(message{at, got.Subject(), got.Data()}) {
			return nil
		}
		if meta.NumPending == 0 {
			return j.readRest(ctx, at, take)
		}
	}
	return nil
}

// readRest gives what lies between the end of what was read and the last message. There is
// nothing where the journal has lost it; but a server of a cluster that has not caught up
// yet also ends early: what the journal is not known to have lost is never passed by.
func (j *journal) readRest(ctx context.Context, behind uint64, take func(message) bool) error {
	gone := uint64(0)
	for at := behind + 1; at <= j.last; at++ {
		within, end := context.WithTimeout(ctx, j.wait)
		m, err := j.stream.GetMsg(within, at)
		end()
		switch {
		case errors.Is(err, jetstream.ErrMsgNotFound):
			if gone++; gone > j.lacks {
				return trouble(ErrNoServer, err, "the servers at %s have not all caught up yet; what came is kept", shownURL(j.server.URL))
			}
		case err != nil:
			return err
		case !take(message{at, m.Subject, m.Data}):
			return nil
		}
	}
	return nil
}

// next waits for a message as long as a server may take.
func (j *journal) next(ctx context.Context, messages jetstream.MessagesContext) (jetstream.Msg, error) {
	within, end := context.WithTimeout(ctx, j.wait)
	defer end()
	m, err := messages.Next(jetstream.NextContext(within))
	if err != nil && ctx.Err() != nil {
		return nil, ctx.Err()
	}
	return m, err
}

// errNotTheEnd is a message that was not taken since another came first.
var errNotTheEnd = errors.New("the journal has gone on")

// append puts a message at the end of the journal, if nothing came behind the last that
// is known.
func (j *journal) append(ctx context.Context, subject string, data []byte) error {
	within, end := context.WithTimeout(ctx, j.wait)
	defer end()
	ack, err := j.js.PublishMsg(within, &nats.Msg{Subject: subject, Data: data},
		jetstream.WithExpectStream(j.crew.stream()), jetstream.WithExpectLastSequence(j.last), jetstream.WithRetryAttempts(0))
	var api *jetstream.APIError
	if errors.As(err, &api) && (api.ErrorCode == jetstream.JSErrCodeStreamWrongLastSequence || api.ErrorCode == jetstream.JSErrCodeStreamWrongLastSequenceConstant) {
		return errNotTheEnd
	}
	if err != nil {
		return err
	}
	j.last = ack.Sequence
	return nil
}

// largest is how many bytes a message may have.
func (j *journal) largest() int { return int(j.conn.MaxPayload()) - 1024 } // its headers count too

// codes of errors of a server that the client has no name for.
const (
	codeNoResources = 10023 // insufficient resources
	codeStoreFailed = 10077 // message not stored: no room
	codeNoPeers     = 10005 // no suitable peers
	codeStorageFull = 10047 // no room for the stream
)

// explain turns what the client or the server said into a sentence.
func (j *journal) explain(err error) error {
	var known *problem
	var api *jetstream.APIError
	switch {
	case err == nil, errors.As(err, &known), errors.Is(err, errNotTheEnd), errors.Is(err, context.Canceled):
		return err
	case errors.Is(err, jetstream.ErrJetStreamNotEnabled), errors.Is(err, jetstream.ErrJetStreamNotEnabledForAccount), errors.Is(err, nats.ErrNoResponders) && j.stream == nil:
		return trouble(ErrNoJournal, err, "the server at %s keeps no journals; start it with JetStream (-js)", shownURL(j.server.URL))
	case errors.As(err, &api) && (api.ErrorCode == codeNoResources || api.ErrorCode == codeStoreFailed || api.ErrorCode == codeStorageFull):
		return trouble(ErrFullThere, err, "the server at %s has no room for the crew's journal (%s)", shownURL(j.server.URL), api.Description)
	case errors.As(err, &api) && api.ErrorCode == codeNoPeers:
		return trouble(ErrNoServer, err, "of the cluster at %s too few servers are on to begin a journal (%s)", shownURL(j.server.URL), api.Description)
	case errors.Is(err, nats.ErrMaxPayload):
		return trouble(ErrTooLarge, err, "the server at %s takes no message of this size", shownURL(j.server.URL))
	case errors.Is(j.conn.LastError(), nats.ErrPermissionViolation): // a server does not answer what may not be asked
		return j.server.explain(j.conn.LastError())
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, nats.ErrTimeout), errors.Is(err, jetstream.ErrNoHeartbeat):
		return trouble(ErrNoServer, err, "the server at %s does not answer any more; what came is kept", shownURL(j.server.URL))
	}
	return trouble(ErrNoServer, err, "the meeting at %s broke off (%v); what came is kept", shownURL(j.server.URL), fmt.Sprint(bare(err)))
}
