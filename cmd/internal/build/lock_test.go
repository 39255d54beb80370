package build

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"
)

func TestLock(t *testing.T) {
	root, err := os.OpenRoot(t.TempDir())
	noError(t, err)
	defer root.Close()
	var inside, most, held atomic.Int32
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for range 3000 { // tight, for the moment between opening and locking
				release, err := tryLock(root, "lock")
				if err != nil {
					t.Error(err)
					return
				}
				if release == nil {
					continue
				}
				held.Add(1)
				if n := inside.Add(1); n > most.Load() {
					most.Store(n)
				}
				runtime.Gosched()
				inside.Add(-1)
				release()
			}
		})
	}
	all.Wait()
	if held.Load() == 0 {
		t.Error("nobody ever held the lock")
	}
	if most.Load() != 1 {
		t.Errorf("%d held the lock at once", most.Load())
	}
	checkAlone(t, root.Name())
}

// Who waits for a lock can be stopped, and leaves the holder's lock alone.
func TestLockCancelled(t *testing.T) {
	top := t.TempDir()
	root, err := os.OpenRoot(top)
	noError(t, err)
	defer root.Close()
	release, err := lock(t.Context(), root, ".out.fixslate-lock")
	noError(t, err)
	ctx := &tiring{Context: t.Context(), left: 4, done: make(chan struct{})}
	ta := target(filepath.Join(top, "out"))
	if err := Write(ctx, ta, someSet("a")); !errors.Is(err, context.Canceled) {
		t.Fatalf("got %v", err)
	}
	checkAlone(t, top, ".out.fixslate-lock")
	release()
	noError(t, Write(t.Context(), ta, someSet("a")))
	checkAlone(t, top, "out")
}
