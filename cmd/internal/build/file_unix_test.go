//go:build unix

package build

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// Devices and pipes are written straight and never replaced.
func TestWriteFileToADevice(t *testing.T) {
	before, err := os.Stat("/dev/null")
	noError(t, err)
	noError(t, WriteFile(t.Context(), "/dev/null", []byte("x"), nil))
	top := t.TempDir()
	putFiles(t, top, map[string]string{"link": "-> /dev/null"})
	noError(t, WriteFile(t.Context(), filepath.Join(top, "link"), []byte("x"), nil))
	after, err := os.Stat("/dev/null")
	noError(t, err)
	if !os.SameFile(before, after) || after.Mode()&os.ModeDevice == 0 {
		t.Fatal("/dev/null is something else now")
	}
	checkTree(t, top, map[string]string{"link": "-> /dev/null"})
	if _, err := os.Stat("/dev/full"); err == nil {
		if err := WriteFile(t.Context(), "/dev/full", []byte("x"), nil); !errors.Is(err, unix.ENOSPC) {
			t.Errorf("/dev/full: %v", err)
		}
	}
}

func TestWriteFileToAPipe(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	noError(t, unix.Mkfifo(pipe, 0o644))
	checkRefused(t, WriteFile(t.Context(), pipe, []byte("x"), nil), "nobody reads")

	r, err := os.OpenFile(pipe, os.O_RDONLY|unix.O_NONBLOCK, 0)
	noError(t, err)
	defer r.Close()
	noError(t, WriteFile(t.Context(), pipe, []byte("words"), nil))
	buf := make([]byte, 10)
	n, err := r.Read(buf)
	if err != nil || string(buf[:n]) != "words" {
		t.Errorf("read %q, %v", buf[:n], err)
	}

	// More than a pipe holds, and nobody takes it out: only the context ends it.
	ctx, cancel := context.WithCancel(t.Context())
	go func() {
		var b [1]byte
		r.Read(b[:]) // it has begun
		cancel()
	}()
	if err := WriteFile(ctx, pipe, make([]byte, 1<<20), nil); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}
