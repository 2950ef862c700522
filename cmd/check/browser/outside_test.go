//go:build browser

package browser

import (
	"bufio"
	"net"
	"strings"
	"sync"
)

// outside is a proxy that lets nothing through and remembers what was asked for. It sees what a
// page, its frames and its workers ask of any host but this machine.
type outside struct {
	listener net.Listener
	mu       sync.Mutex
	asked    []string // first lines of the requests, such as "CONNECT example.org:443 HTTP/1.1"
}

func listenOutside() (*outside, error) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	o := &outside{listener: listener}
	go func() {
		for {
			conn, err := listener.Accept()
			if err != nil {
				return // closed
			}
			go o.refuse(conn)
		}
	}()
	return o, nil
}

func (o *outside) refuse(conn net.Conn) {
	defer conn.Close()
	line, err := bufio.NewReader(conn).ReadString('\n')
	if err != nil {
		return
	}
	o.mu.Lock()
	o.asked = append(o.asked, strings.TrimSpace(line))
	o.mu.Unlock()
	_, _ = conn.Write([]byte("HTTP/1.1 403 Forbidden\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"))
}

// requests lists what was asked for so far.
func (o *outside) requests() []string {
	o.mu.Lock()
	defer o.mu.Unlock()
	return append([]string(nil), o.asked...)
}

func (o *outside) address() string { return "http://" + o.listener.Addr().String() }

func (o *outside) close() { o.listener.Close() }
