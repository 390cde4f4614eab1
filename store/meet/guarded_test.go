package meet

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"math/big"
	"net"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/nats-io/jwt/v2"
	"github.com/nats-io/nats-server/v2/server"
	"github.com/nats-io/nkeys"
)

// A server that encrypts, and lets in only who has credentials.
func TestEncryptedAndGuarded(t *testing.T) {
	certificate, ca := certificateFor(t, "127.0.0.1")
	keys, credentials := credentialsFor(t)
	s := truck(t, func(o *server.Options) {
		keys(o)
		o.TLSConfig = &tls.Config{Certificates: []tls.Certificate{certificate}, MinVersion: tls.VersionTLS12}
		o.TLSTimeout = 5
	})
	address := "tls://" + s.Addr().String()
	crew := crewOf("hollow", 1)
	one, two := newBook(t, 1), newBook(t, 2)
	note(t, one, stumpAt(1, 1), 5, "one")
	right := Server{URL: address, CA: ca, Credentials: credentials}
	met(t, one, crew, right)
	met(t, two, crew, right)
	if exported(t, one) != exported(t, two) {
		t.Error("they are not one")
	}

	note(t, one, stumpAt(1, 2), 6, "of another crew")
	if _, err := Meet(context.Background(), one, crewOf("other", 1), right, Options{Wait: 2 * time.Second}); !errors.Is(err, ErrKeptOut) {
		t.Errorf("another crew's journal: %v", err)
	}

	_, otherCA := certificateFor(t, "127.0.0.1")
	_, otherCredentials := credentialsFor(t)
	empty := filepath.Join(t.TempDir(), "empty.pem")
	if err := os.WriteFile(empty, []byte("nothing\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		server Server
		says   string
	}{
		"unknown certificate": {Server{URL: address, Credentials: credentials}, "vouches"},
		"another's":           {Server{URL: address, CA: otherCA, Credentials: credentials}, "vouches"},
		"no credentials":      {Server{URL: address, CA: ca}, "does not let"},
		"other credentials":   {Server{URL: address, CA: ca, Credentials: otherCredentials}, "does not let"},
		"missing credentials": {Server{URL: address, CA: ca, Credentials: "/nowhere/crew.creds"}, "/nowhere/crew.creds cannot be read"},
		"a device":            {Server{URL: address, CA: "/dev/zero", Credentials: credentials}, "cannot be read"},
		"no certificate":      {Server{URL: address, CA: empty, Credentials: credentials}, "no certificate"},
	} {
		if _, err := Meet(context.Background(), one, crew, c.server, Options{Wait: 2 * time.Second}); !errors.Is(err, ErrKeptOut) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		} else {
			t.Logf("%s: %v", name, err)
		}
	}
}

// certificateFor is a certificate for an address, and the file of who vouches for it.
func certificateFor(t *testing.T, address string) (tls.Certificate, string) {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	of := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "truck"}, NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour),
		IPAddresses: []net.IP{net.ParseIP(address)}, IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageCertSign | x509.KeyUsageDigitalSignature,
	}
	der, err := x509.CreateCertificate(rand.Reader, of, of, &key.PublicKey, key)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "ca.pem")
	if err := os.WriteFile(file, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}), 0o600); err != nil {
		t.Fatal(err)
	}
	return tls.Certificate{Certificate: [][]byte{der}, PrivateKey: key}, file
}

// credentialsFor is how a server knows a crew's account, and a file that lets into it.
func credentialsFor(t *testing.T) (func(*server.Options), string) {
	t.Helper()
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	pair := func(make func() (nkeys.KeyPair, error)) (nkeys.KeyPair, string) {
		k, err := make()
		must(err)
		public, err := k.PublicKey()
		must(err)
		return k, public
	}
	operator, operatorName := pair(nkeys.CreateOperator)
	account, accountName := pair(nkeys.CreateAccount)
	system, systemName := pair(nkeys.CreateAccount)
	user, userName := pair(nkeys.CreateUser)
	_ = system
	ofOperator := jwt.NewOperatorClaims(operatorName)
	text, err := ofOperator.Encode(operator)
	must(err)
	ofOperator, err = jwt.DecodeOperatorClaims(text)
	must(err)
	ofAccount := jwt.NewAccountClaims(accountName)
	ofAccount.Limits.JetStreamLimits = jwt.JetStreamLimits{MemoryStorage: -1, DiskStorage: -1, Streams: -1, Consumer: -1}
	accountText, err := ofAccount.Encode(operator)
	must(err)
	systemText, err := jwt.NewAccountClaims(systemName).Encode(operator)
	must(err)
	ofUser := jwt.NewUserClaims(userName) // no more than what the guide says it needs
	ofUser.Pub.Allow.Add("barkslip-hollow.>", "$JS.API.>")
	ofUser.Sub.Allow.Add("_INBOX.>")
	userText, err := ofUser.Encode(account)
	must(err)
	seed, err := user.Seed()
	must(err)
	credentials, err := jwt.FormatUserConfig(userText, seed)
	must(err)
	file := filepath.Join(t.TempDir(), "crew.creds")
	must(os.WriteFile(file, credentials, 0o600))
	return func(o *server.Options) {
		known := &server.MemAccResolver{}
		must(known.Store(accountName, accountText))
		must(known.Store(systemName, systemText))
		o.TrustedOperators, o.AccountResolver, o.SystemAccount = []*jwt.OperatorClaims{ofOperator}, known, systemName
	}, file
}
