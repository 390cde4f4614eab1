package meet

import (
	"context"
	"crypto/x509"
	"errors"
	"fmt"
	"net"
	"net/url"
	"os"
	"strings"
	"time"

	"github.com/nats-io/nats.go"

	"barkslip/store"
)

// Server is where a crew's journal is.
type Server struct {
	URL         string // nats://truck:4222 or tls://…; several servers of a cluster with commas between
	CA          string // a file of certificates that vouch for the server, "" for the system's
	Credentials string // a file that lets this computer in, "" for none
}

// usualPort is the port of a server whose address names none.
const usualPort = "4222"

// CheckURL says why an address is none of a server's.
func CheckURL(address string) error {
	for _, one := range strings.Split(address, ",") {
		one = strings.TrimSpace(one)
		if !strings.Contains(one, "://") {
			one = "nats://" + one
		}
		u, err := url.Parse(one)
		if err != nil || u.Hostname() == "" || u.Path != "" && u.Path != "/" {
			return fmt.Errorf("%q is no address of a server; one looks like nats://truck.local:%s or tls://truck.local:%s", shownURL(one), usualPort, usualPort)
		}
		switch u.Scheme {
		case "nats", "tls", "ws", "wss":
		default:
			return fmt.Errorf("an address begins with nats:// or tls://, not with %s://", u.Scheme)
		}
	}
	return nil
}

// shownURL is an address without a password in it.
func shownURL(address string) string {
	shown := strings.Split(address, ",")
	for i, one := range shown {
		if u, err := url.Parse(strings.TrimSpace(one)); err == nil && u.User != nil {
			u.User = url.User(u.User.Username())
			shown[i] = u.String()
		}
	}
	return strings.Join(shown, ",")
}

// dial connects. What breaks later breaks the meeting, which begins again from where the
// book is.
func (s Server) dial(ctx context.Context, wait time.Duration) (*nats.Conn, error) {
	if err := CheckURL(s.URL); err != nil {
		return nil, err
	}
	reaching := &dialer{ctx: ctx, wait: wait}
	options := []nats.Option{
		nats.Name("barkslip"), nats.Timeout(wait), nats.NoReconnect(), nats.PingInterval(5 * time.Second), nats.MaxPingsOutstanding(2),
		nats.SetCustomDialer(reaching), nats.ErrorHandler(func(*nats.Conn, *nats.Subscription, error) {}),
	}
	if s.CA != "" {
		if err := holdsCertificates(s.CA); err != nil {
			return nil, err
		}
		options = append(options, nats.RootCAs(s.CA))
	}
	if s.Credentials != "" {
		if err := readable("the credentials file", s.Credentials); err != nil {
			return nil, err
		}
		options = append(options, nats.UserCredentials(s.Credentials))
	}
	conn, err := nats.Connect(s.URL, options...)
	if errors.Is(err, nats.ErrNoServers) && reaching.failed != nil {
		err = reaching.failed
	}
	if err != nil {
		return nil, s.explain(err)
	}
	return conn, nil
}

// dialer reaches servers up to the end of a context.
type dialer struct {
	ctx    context.Context
	wait   time.Duration
	failed error // why the last could not be reached
}

func (d *dialer) Dial(network, address string) (net.Conn, error) {
	conn, err := (&net.Dialer{Timeout: d.wait}).DialContext(d.ctx, network, address)
	if err != nil {
		d.failed = err
	}
	return conn, err
}

// mostFile is how long, in bytes, a file of certificates or credentials may be.
const mostFile = 1 << 20

func readable(what, path string) error {
	info, err := os.Stat(path)
	if err == nil && (!info.Mode().IsRegular() || info.Size() > mostFile) {
		err = fmt.Errorf("it is no file of at most %d bytes", mostFile)
	}
	if err == nil {
		var f *os.File
		if f, err = os.Open(path); err == nil {
			err = f.Close()
		}
	}
	if err != nil {
		var bad *os.PathError
		if errors.As(err, &bad) {
			err = bad.Err
		}
		return trouble(ErrKeptOut, err, "%s %s cannot be read: %v", what, path, err)
	}
	return nil
}

func holdsCertificates(path string) error {
	if err := readable("the file of certificates", path); err != nil {
		return err
	}
	text, err := store.ReadPlain(path, mostFile)
	if err == nil && !x509.NewCertPool().AppendCertsFromPEM(text) {
		err = errors.New("there is no certificate in it")
	}
	if err != nil {
		return trouble(ErrKeptOut, err, "the file of certificates %s cannot be used: %v", path, err)
	}
	return nil
}

// explain turns what the client said into a sentence.
func (s Server) explain(err error) error {
	var known *problem
	var unknown x509.UnknownAuthorityError
	var wrongName x509.HostnameError
	var expired x509.CertificateInvalidError
	shown := shownURL(s.URL)
	switch {
	case err == nil || errors.As(err, &known):
		return err
	case errors.As(err, &unknown):
		return trouble(ErrKeptOut, err, "nobody known here vouches for the certificate of %s; give the file of the one who does (--ca)", shown)
	case errors.As(err, &wrongName), errors.As(err, &expired):
		return trouble(ErrKeptOut, err, "the certificate of %s does not hold: %v", shown, err)
	case errors.Is(err, nats.ErrSecureConnRequired), errors.Is(err, nats.ErrSecureConnWanted):
		return trouble(ErrKeptOut, err, "%s and this computer do not agree whether to encrypt: write tls:// or nats:// as the server is set up", shown)
	case errors.Is(err, nats.ErrAuthorization), errors.Is(err, nats.ErrAuthExpired), errors.Is(err, nats.ErrAuthRevoked), errors.Is(err, nats.ErrPermissionViolation),
		strings.Contains(strings.ToLower(err.Error()), "authorization violation"):
		return trouble(ErrKeptOut, err, "%s does not let this computer in; its credentials or its rights on the crew's journal are missing or out of date", shown)
	}
	return trouble(ErrNoServer, err, "nobody answers at %s (%v); is the server on, and this computer on its network?", shown, bare(err))
}

// bare is an error without the names of libraries and calls.
func bare(err error) string {
	var call *os.SyscallError
	var name *net.DNSError
	switch {
	case errors.As(err, &name):
		return "no computer of that name is known"
	case errors.As(err, &call):
		return call.Err.Error()
	}
	return strings.TrimPrefix(err.Error(), "nats: ")
}
