package meet

import (
	"crypto/aes"
	"crypto/cipher"
	"crypto/rand"
	"errors"
	"fmt"
	"sync"

	"github.com/klauspost/compress/zstd"

	"barkslip/core/record"
	"barkslip/store"
)

// form is how a message is written: this byte, the mark of its key 8, a nonce 12, and
// sealed with AES-GCM (NIST SP 800-38D) under its subject, lines of a journal packed with
// zstd (RFC 8878).
const form = 1

const (
	markLen  = 8
	nonceLen = 12
	frameLen = 1 + markLen + nonceLen + 16
)

// How much goes into one message, as text and in events, and how much text one from
// elsewhere may hold.
const (
	batchBytes  = 1 << 20
	batchEvents = 4000
	mostText    = 16 << 20
)

var (
	errOtherKey = errors.New("it is sealed with a key that is not in the key file here")
	errSeal     = errors.New("its seal is broken: it was damaged, or put there by somebody without the crew's key")
	errForm     = errors.New("it is no message of this program, or of a newer version of it")
)

// batch is events on their way out, all of one subject.
type batch struct {
	subject string
	text    []byte
	prints  []store.Print
	ends    []int // where each event's line ends in the text
}

func (b *batch) add(u store.Unmet) {
	b.text = append(append(b.text, u.Text()...), '\n')
	b.prints, b.ends = append(b.prints, u.As), append(b.ends, len(b.text))
}

func (b *batch) full() bool { return len(b.text) >= batchBytes || len(b.prints) >= batchEvents }

// halves are the batch in two, as where it is too large for the server.
func (b *batch) halves() (x, y batch) {
	n := len(b.prints) / 2
	at := b.ends[n-1]
	x = batch{subject: b.subject, text: b.text[:at], prints: b.prints[:n], ends: b.ends[:n]}
	y = batch{subject: b.subject, text: b.text[at:], prints: b.prints[n:]}
	for _, end := range b.ends[n:] {
		y.ends = append(y.ends, end-at)
	}
	return x, y
}

// packer packs texts. It keeps nothing between two of them.
var packer = sync.OnceValue(func() *zstd.Encoder {
	z, _ := zstd.NewWriter(nil, zstd.WithEncoderLevel(zstd.SpeedFastest)) // these options always hold
	return z
})

var unpacker = sync.OnceValue(func() *zstd.Decoder {
	z, _ := zstd.NewReader(nil, zstd.WithDecoderConcurrency(0), zstd.WithDecoderMaxMemory(mostText), zstd.WithDecoderMaxWindow(mostText))
	return z
})

func aead(key Key) cipher.AEAD {
	block, _ := aes.NewCipher(key[:]) // a key of 32 bytes always holds
	gcm, _ := cipher.NewGCM(block)
	return gcm
}

// seal is the message of a text.
func (c Crew) seal(subject string, text []byte) []byte {
	key := c.Keys[0]
	mark := key.mark()
	packed := packer().EncodeAll(text, nil)
	out := make([]byte, 1+markLen+nonceLen, frameLen+len(packed))
	out[0] = form
	copy(out[1:], mark[:])
	_, _ = rand.Read(out[1+markLen:]) // it never fails
	return aead(key).Seal(out, out[1+markLen:], packed, []byte(subject))
}

// open is the text of a message.
func (c Crew) open(subject string, message []byte) ([]byte, error) {
	if len(message) < frameLen || message[0] != form {
		return nil, errForm
	}
	mark, nonce, sealed := message[1:1+markLen], message[1+markLen:1+markLen+nonceLen], message[1+markLen+nonceLen:]
	for _, k := range c.Keys {
		if k.mark() != [markLen]byte(mark) {
			continue
		}
		packed, err := aead(k).Open(nil, nonce, sealed, []byte(subject))
		if err != nil {
			return nil, errSeal
		}
		text, err := unpacker().DecodeAll(packed, nil)
		if err != nil {
			return nil, fmt.Errorf("its packing does not hold: %w", err)
		}
		return text, nil
	}
	return nil, errOtherKey
}

// subject is where the events about a block go, those about none behind the crew's name.
func (c Crew) subject(block record.ID) string {
	if block == record.None {
		return c.stream() + ".book"
	}
	return c.stream() + "." + block.String()
}

// taken is what came of one message: its events, and the lines that gave none.
type taken struct {
	number  uint64
	entries []store.Entry
	wrong   []error
	err     error // of the message as a whole
}

// take opens a message and parses its lines.
func (c Crew) take(m message) (t taken) {
	t.number = m.number
	text, err := c.open(m.subject, m.data)
	if err != nil {
		t.err = err
		return t
	}
	for n, err := range store.EntriesIn(text) {
		if err != nil {
			t.wrong = append(t.wrong, err)
			continue
		}
		t.entries = append(t.entries, n)
	}
	return t
}
