package serve

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"syscall"
	"time"

	"rowlight/cmd/site/build"
)

// Listen takes the address. A taken port is said in one line with the way out.
func Listen(addr string) (net.Listener, error) {
	host, port, err := net.SplitHostPort(addr)
	if err != nil {
		return nil, &build.Fault{What: fmt.Sprintf("%q is not an address", addr), Remedy: "give it as host:port, such as -addr localhost:8080"}
	}
	listener, err := net.Listen("tcp", addr)
	switch {
	case err == nil:
		return listener, nil
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, &build.Fault{What: fmt.Sprintf("port %s is taken", port), Remedy: fmt.Sprintf("run with -addr %s", net.JoinHostPort(host, nextPort(port)))}
	case errors.Is(err, syscall.EACCES):
		return nil, &build.Fault{What: fmt.Sprintf("port %s needs more rights", port), Remedy: "run with -addr localhost:8080"}
	default:
		return nil, &build.Fault{What: fmt.Sprintf("cannot listen on %s (%v)", addr, err), Remedy: "run with -addr localhost:8080"}
	}
}

// nextPort is the port after the given one, or 8081 where there is none.
func nextPort(port string) string {
	number, err := strconv.Atoi(port)
	if err != nil || number >= 65535 {
		return "8081"
	}
	return strconv.Itoa(number + 1)
}

// Until serves until the context ends, then lets running answers finish for a moment.
func Until(ctx context.Context, listener net.Listener, handler http.Handler) error {
	server := &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second}
	stopped := make(chan error, 1)
	go func() {
		<-ctx.Done()
		grace, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		stopped <- server.Shutdown(grace)
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return <-stopped
}
