package build

import (
	"context"
	"os"
	"time"
)

// Between two tries for a lock. A build holds it for some ten milliseconds.
const (
	firstWait = 1 * time.Millisecond
	lastWait  = 10 * time.Millisecond
)

// lock waits for the lock file name in root until ctx ends. The kernel drops
// a lock with its process, so a lock file left by a killed run locks nothing;
// release removes the file.
//
// Asking again and again, instead of a call that blocks, keeps the wait
// cancellable everywhere.
func lock(ctx context.Context, root *os.Root, name string) (release func(), err error) {
	wait := firstWait
	for {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		release, err := tryLock(root, name)
		if err != nil || release != nil {
			return release, err
		}
		select {
		case <-ctx.Done():
		case <-time.After(wait):
		}
		wait = min(2*wait, lastWait)
	}
}
