package meet

import (
	"fmt"
	"io"
	"net"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/nats-io/nats-server/v2/server"
)

// truck starts one server, as on the truck's computer.
func truck(t testing.TB, change func(*server.Options)) *server.Server {
	t.Helper()
	o := &server.Options{ServerName: "truck", Host: "127.0.0.1", Port: -1, JetStream: true, StoreDir: t.TempDir(), NoLog: true, NoSigs: true}
	if change != nil {
		change(o)
	}
	return started(t, o)
}

func started(t testing.TB, o *server.Options) *server.Server {
	t.Helper()
	s, err := server.NewServer(o)
	if err != nil {
		t.Fatal(err)
	}
	s.Start()
	t.Cleanup(func() { s.Shutdown(); s.WaitForShutdown() })
	if !s.ReadyForConnections(10 * time.Second) {
		t.Fatal("the server does not start")
	}
	return s
}

// cluster is three servers that hold every message each.
type cluster struct {
	t       testing.TB
	options []*server.Options
	servers []*server.Server
}

func newCluster(t testing.TB) *cluster {
	t.Helper()
	c := &cluster{t: t, servers: make([]*server.Server, copies)}
	ports := make([]int, copies)
	for i := range ports {
		l, err := net.Listen("tcp", "127.0.0.1:0")
		if err != nil {
			t.Fatal(err)
		}
		ports[i] = l.Addr().(*net.TCPAddr).Port
		defer l.Close()
	}
	for i := range copies {
		o := &server.Options{
			ServerName: fmt.Sprint("office-", i+1), Host: "127.0.0.1", Port: -1, JetStream: true, StoreDir: filepath.Join(t.TempDir(), "kept"), NoLog: true, NoSigs: true,
			Cluster: server.ClusterOpts{Name: "office", Host: "127.0.0.1", Port: ports[i]},
		}
		for k, port := range ports {
			if k != i {
				o.Routes = append(o.Routes, server.RoutesFromStr(fmt.Sprintf("nats://127.0.0.1:%d", port))...)
			}
		}
		c.options = append(c.options, o)
	}
	return c
}

func (c *cluster) start() {
	c.t.Helper()
	for i := range c.servers {
		c.begin(i)
	}
	c.t.Cleanup(func() {
		for i := range c.servers {
			c.kill(i)
		}
	})
	c.led()
}

func (c *cluster) begin(i int) {
	c.t.Helper()
	o := c.options[i].Clone()
	s, err := server.NewServer(o)
	if err != nil {
		c.t.Fatal(err)
	}
	s.Start()
	if !s.ReadyForConnections(10 * time.Second) {
		c.t.Fatal("a server of the cluster does not start")
	}
	c.options[i].Port = s.Addr().(*net.TCPAddr).Port
	c.servers[i] = s
}

func (c *cluster) kill(i int) {
	if c.servers[i] != nil {
		c.servers[i].Shutdown()
		c.servers[i].WaitForShutdown()
		c.servers[i] = nil
	}
}

// led waits until the cluster has a leader and takes orders.
func (c *cluster) led() {
	c.t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		current := 0
		leader := false
		for _, s := range c.servers {
			if s != nil && s.JetStreamIsCurrent() {
				current++
			}
			leader = leader || s != nil && s.JetStreamIsLeader()
		}
		if leader && current >= 2 {
			return
		}
	}
	c.t.Fatal("the cluster finds no leader")
}

func (c *cluster) url() string {
	out := ""
	for i, o := range c.options {
		if i > 0 {
			out += ","
		}
		out += fmt.Sprintf("nats://127.0.0.1:%d", o.Port)
	}
	return out
}

// leash is a connection to a server that breaks after some bytes have gone out, or that
// brings nothing back from then on.
type leash struct {
	address string
	left    atomic.Int64 // bytes that still go out; below nought it is cut
	mute    atomic.Bool  // cut by silence
	mu      sync.Mutex
	open    []net.Conn
}

func newLeash(t testing.TB, to string) *leash {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close() })
	k := &leash{address: l.Addr().String()}
	k.left.Store(1 << 60)
	go func() {
		for {
			near, err := l.Accept()
			if err != nil {
				return
			}
			far, err := net.Dial("tcp", to)
			if err != nil {
				near.Close()
				continue
			}
			k.mu.Lock()
			k.open = append(k.open, near, far)
			k.mu.Unlock()
			go k.out(near, far)
			go k.back(near, far)
		}
	}()
	return k
}

func (k *leash) out(near, far net.Conn) {
	buf := make([]byte, 4096)
	for {
		n, err := near.Read(buf)
		if err != nil {
			far.Close()
			return
		}
		if k.left.Add(int64(-n)) < 0 && !k.mute.Load() {
			near.Close()
			far.Close()
			return
		}
		if _, err := far.Write(buf[:n]); err != nil {
			near.Close()
			return
		}
	}
}

func (k *leash) back(near, far net.Conn) {
	buf := make([]byte, 4096)
	for {
		n, err := far.Read(buf)
		if err != nil {
			near.Close()
			return
		}
		if k.left.Load() < 0 && k.mute.Load() {
			_, _ = io.Copy(io.Discard, far)
			near.Close()
			return
		}
		if _, err := near.Write(buf[:n]); err != nil {
			far.Close()
			return
		}
	}
}

// cutAfter breaks connections after so many more bytes.
func (k *leash) cutAfter(n int64, silent bool) {
	k.mute.Store(silent)
	k.left.Store(n)
}

// mend lets connections hold again.
func (k *leash) mend() {
	k.left.Store(1 << 60)
	k.mute.Store(false)
	k.mu.Lock()
	defer k.mu.Unlock()
	for _, c := range k.open {
		c.Close()
	}
	k.open = nil
}

func (k *leash) url() string { return "nats://" + k.address }
