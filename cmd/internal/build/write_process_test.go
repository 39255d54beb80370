//go:build unix

package build

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"golang.org/x/sys/unix"
)

// These tests run the writer in processes of its own: the test binary again,
// with one of the tasks below in its environment.
const taskVar = "FIXSLATE_WRITE_TASK"

// TestTask is not a test of its own but what such a process does.
func TestTask(t *testing.T) {
	task, dir, _ := strings.Cut(os.Getenv(taskVar), "=")
	ta := target(dir)
	switch task {
	case "":
		t.Skip("runs only in a process that another test has started")
	case "for ever":
		fmt.Println("ready")
		for {
			noError(t, Write(t.Context(), ta, someSet("a")))
			noError(t, Write(t.Context(), ta, someSet("bb")))
		}
	case "a", "bb":
		noError(t, Write(t.Context(), ta, someSet(task)))
	case "umask 000", "umask 077":
		mask, err := strconv.ParseInt(task[6:], 8, 32)
		noError(t, err)
		unix.Umask(int(mask))
		noError(t, Write(t.Context(), ta, someSet("a")))
	case "small files": // as ulimit -f
		limit(t, unix.RLIMIT_FSIZE, 4096)
		fails(t, ta, unix.EFBIG)
	case "few files": // as ulimit -n; the runtime itself holds some
		_, err := os.ReadFile(os.Args[0]) // as a plan is read first, which starts the runtime's poller
		noError(t, err)
		limit(t, unix.RLIMIT_NOFILE, 8)
		if err := Write(t.Context(), ta, someSet("bb")); err != nil && !errors.Is(err, unix.EMFILE) {
			t.Error(err)
		}
	case "full":
		fails(t, ta, unix.ENOSPC)
	case "nobody":
		if os.Getuid() == 0 {
			noError(t, syscall.Setgid(65534))
			noError(t, syscall.Setuid(65534))
		}
		checkRefused(t, Write(t.Context(), ta, someSet("bb")), ta.Dir)
	case "nobody inside":
		if os.Getuid() == 0 {
			noError(t, syscall.Setgid(65534))
			noError(t, syscall.Setuid(65534))
		}
		noError(t, Write(t.Context(), ta, someSet("a")))
		noError(t, Write(t.Context(), ta, someSet("bb")))
	default:
		t.Fatalf("no such task: %q", task)
	}
}

// limit lowers a limit of this process until the test ends.
func limit(t *testing.T, what int, n uint64) {
	t.Helper()
	var was unix.Rlimit
	noError(t, unix.Getrlimit(what, &was))
	noError(t, unix.Setrlimit(what, &unix.Rlimit{Cur: n, Max: was.Max}))
	t.Cleanup(func() { noError(t, unix.Setrlimit(what, &was)) })
}

func fails(t *testing.T, ta Target, errno error) {
	t.Helper()
	err := Write(t.Context(), ta, someSet("bb"))
	if !errors.Is(err, errno) {
		t.Fatalf("got %v, want %v", err, errno)
	}
	for _, words := range []string{ta.Dir + ": cannot write it", "nothing was changed"} {
		if !strings.Contains(err.Error(), words) {
			t.Errorf("%q does not say %q", err, words)
		}
	}
	if strings.Contains(err.Error(), "fixslate-new") {
		t.Errorf("%q speaks of a temporary", err)
	}
}

func process(t *testing.T, task, dir string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	noError(t, err)
	cmd := exec.Command(self, "-test.run=^TestTask$", "-test.v")
	cmd.Env = append(os.Environ(), taskVar+"="+task+"="+dir)
	return cmd
}

func runTask(t *testing.T, task, dir string) {
	t.Helper()
	if out, err := process(t, task, dir).CombinedOutput(); err != nil {
		t.Errorf("%s: %v\n%s", task, err, out)
	}
}

// rounds is n, or what FIXSLATE_ROUNDS says for a longer run.
func rounds(t *testing.T, n int) int {
	if s := os.Getenv("FIXSLATE_ROUNDS"); s != "" {
		var err error
		n, err = strconv.Atoi(s)
		noError(t, err)
	}
	if testing.Short() {
		n = min(n, 5)
	}
	return n
}

// oneOf tells which of the sets a, bb or a mix of them the folder holds
// besides users: "" for a mix.
func oneOf(t *testing.T, dir string, users map[string]string) string {
	t.Helper()
	got := readTree(t, dir)
	for name, text := range users {
		if got[name] != text {
			t.Errorf("%s: %q now", name, got[name])
		}
		delete(got, name)
	}
	for _, label := range []string{"a", "bb"} {
		all := wantTree(target(dir), someSet(label), nil)
		same := len(all) == len(got)
		for name, text := range all {
			same = same && got[name] == text
		}
		if same {
			return label
		}
	}
	for name, text := range got { // each file of its own must be whole
		a := wantTree(target(dir), someSet("a"), nil)
		b := wantTree(target(dir), someSet("bb"), nil)
		if text == "" || text != a[name] && text != b[name] {
			t.Errorf("%s is neither old nor new: %d bytes", name, len(text))
		}
	}
	return ""
}

// A kill at any moment: row 1 of the list of faults that this tool is held to.
func TestKill(t *testing.T) {
	for way, more := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			ta := target(filepath.Join(top, "out"))
			users := map[string]string{"notes.txt": "mine"}
			for name, text := range more {
				users[name] = text
			}
			noError(t, Write(t.Context(), ta, someSet("a")))
			putFiles(t, ta.Dir, users)
			mixed, midway := 0, 0
			n := rounds(t, 30)
			for i := range n {
				cmd := process(t, "for ever", ta.Dir)
				out, err := cmd.StdoutPipe()
				noError(t, err)
				noError(t, cmd.Start())
				for line := bufio.NewScanner(out); line.Scan() && line.Text() != "ready"; {
				}
				time.Sleep(time.Duration(i*i*7919%40_000) * time.Microsecond)
				noError(t, cmd.Process.Kill())
				var exit *exec.ExitError
				if err := cmd.Wait(); !errors.As(err, &exit) || exit.ExitCode() != -1 {
					t.Fatalf("the process was not killed: %v", err)
				}
				if oneOf(t, ta.Dir, users) == "" {
					mixed++
				}
				if _, err := os.Lstat(filepath.Join(top, ".out.fixslate-new")); err == nil {
					midway++
				}
				if i%2 == 0 { // else the next process has to recover
					noError(t, Write(t.Context(), ta, someSet("a")))
					checkTree(t, ta.Dir, wantTree(ta, someSet("a"), users))
					checkAlone(t, top, "out")
				}
			}
			t.Logf("%d kills, %d of them midway, %d left files of both sets until the next run", n, midway, mixed)
			if way == "swap" && mixed > 0 && swaps(t) {
				t.Errorf("%d of %d kills left a mix of two sets", mixed, n)
			}
			if n >= 30 && midway == 0 {
				t.Error("no kill hit a write: the test shows nothing")
			}
			noError(t, Write(t.Context(), ta, someSet("bb")))
			checkTree(t, ta.Dir, wantTree(ta, someSet("bb"), users))
			checkAlone(t, top, "out")
		})
	}
}

// swaps tells whether folders can be exchanged here.
func swaps(t *testing.T) bool {
	root, err := os.OpenRoot(t.TempDir())
	noError(t, err)
	defer root.Close()
	noError(t, errors.Join(root.Mkdir("a", 0o755), root.Mkdir("b", 0o755)))
	return exchange(root, "a", "b") == nil
}

// Two builds into one folder: one of the two sets, never a mix.
func TestWritersAtOnce(t *testing.T) {
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			ta := target(filepath.Join(top, "out"))
			putFiles(t, top, map[string]string{"plan.toml": "title = \"x\""})
			for round := range rounds(t, map[string]int{"swap": 50, "move": 20}[way]) {
				if round == 1 {
					putFiles(t, ta.Dir, users)
				}
				var all sync.WaitGroup
				for i := range 4 {
					all.Go(func() {
						if err := Write(t.Context(), ta, someSet([]string{"a", "bb"}[i%2])); err != nil {
							t.Error(err)
						}
					})
				}
				all.Wait()
				with := users
				if round == 0 {
					with = nil
				}
				if oneOf(t, ta.Dir, with) == "" {
					t.Fatalf("round %d: a mix", round)
				}
				checkAlone(t, top, "out", "plan.toml")
			}
		})
	}
}

func TestProcessesAtOnce(t *testing.T) {
	top := t.TempDir()
	dir := filepath.Join(top, "out")
	for range rounds(t, 10) {
		var all sync.WaitGroup
		for i := range 4 {
			all.Go(func() { runTask(t, []string{"a", "bb"}[i%2], dir) })
		}
		all.Wait()
		if oneOf(t, dir, nil) == "" {
			t.Fatal("a mix")
		}
		checkAlone(t, top, "out")
	}
}

// Somebody swaps a folder of the target for a link while it is written.
func TestWriteUnderALinkGame(t *testing.T) {
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			ta := target(filepath.Join(top, "in", "out"))
			noError(t, os.Mkdir(filepath.Join(top, "outside"), 0o755))
			noError(t, os.Mkdir(filepath.Join(top, "in"), 0o755))
			noError(t, Write(t.Context(), ta, someSet("a")))
			putFiles(t, ta.Dir, users)
			stop, done := make(chan bool), make(chan bool)
			go func() {
				defer close(done)
				chapters := filepath.Join(ta.Dir, "chapters")
				for {
					select {
					case <-stop:
						return
					default:
						os.Rename(chapters, chapters+".away")
						os.Symlink(filepath.Join(top, "outside"), chapters)
						os.Remove(chapters)
						os.Rename(chapters+".away", chapters)
					}
				}
			}()
			for i := range rounds(t, 40) {
				// It may be refused; what counts is where it writes.
				Write(t.Context(), ta, someSet([]string{"a", "bb"}[i%2]))
			}
			close(stop)
			<-done
			checkAlone(t, filepath.Join(top, "outside"))
		})
	}
}
