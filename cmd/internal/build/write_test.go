package build

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// someSet is a whole set of outputs of invented content; sets of different labels
// differ in every file, and only label "a" has voice.md.
func someSet(label string) []File {
	names := []string{"before.md", "shots.md", "shots.csv", "day.md", "helper.md", "edit.md", "book.html", "risks.md",
		"description.txt", "chapters/planned.txt", "chapters/planned.vtt", "captions/planned.srt", "captions/planned.vtt"}
	if label == "a" {
		names = append(names, "voice.md")
	}
	var files []File
	for i, name := range names {
		line := fmt.Sprintf("%s of set %s\n", name, label)
		files = append(files, File{Name: name, Bytes: bytes.Repeat([]byte(line), 20*(i+1)+len(label))})
	}
	return files
}

func target(dir string) Target {
	return Target{Dir: dir, PlanSum: strings.Repeat("0", 64), Version: "0.0-test"}
}

// wantTree is what a folder holds after Write, together with the user's files.
func wantTree(t Target, files []File, users map[string]string) map[string]string {
	m := map[string]string{manifestName: string(manifestOf(t, files))}
	for _, f := range files {
		m[f.Name] = string(f.Bytes)
	}
	for name, text := range users {
		m[name] = text
	}
	return m
}

// readTree reads everything below dir; links read "-> where", empty folders "/".
func readTree(t *testing.T, dir string) map[string]string {
	t.Helper()
	m := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, _ := filepath.Rel(dir, path)
		rel = filepath.ToSlash(rel)
		switch {
		case d.IsDir():
			if entries, _ := os.ReadDir(path); len(entries) == 0 {
				m[rel] = "/"
			}
		case d.Type()&fs.ModeSymlink != 0:
			to, err := os.Readlink(path)
			m[rel] = "-> " + to
			return err
		default:
			data, err := os.ReadFile(path)
			m[rel] = string(data)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func checkTree(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	if diff := cmp.Diff(want, readTree(t, dir)); diff != "" {
		t.Errorf("%s (-want +got):\n%s", dir, diff)
	}
}

// checkAlone checks that nothing but the named entries stands in dir.
func checkAlone(t *testing.T, dir string, names ...string) {
	t.Helper()
	var got []string
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if diff := cmp.Diff(names, got); diff != "" {
		t.Errorf("entries of %s (-want +got):\n%s", dir, diff)
	}
}

func putFiles(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		var err error
		if to, ok := strings.CutPrefix(text, "-> "); ok {
			err = os.Symlink(to, path)
		} else {
			err = os.WriteFile(path, []byte(text), 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

func noError(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// checkRefused checks for a refusal that speaks of the words.
func checkRefused(t *testing.T, err error, words ...string) {
	t.Helper()
	var r *Refusal
	if !errors.As(err, &r) {
		t.Fatalf("got %v, want a refusal", err)
	}
	if r.Instead == "" {
		t.Errorf("%v: does not say what to do", err)
	}
	for _, w := range words {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("%q does not speak of %q", err, w)
		}
	}
}

// ways are the two ways into a target, chosen by what stands in it: a folder
// of the user's makes a swap a move.
var ways = map[string]map[string]string{
	"swap": {},
	"move": {"footage/clip.txt": "a clip"},
}

func TestWrite(t *testing.T) {
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			dir := filepath.Join(top, "out")
			ta := target(dir)
			noError(t, Write(t.Context(), ta, someSet("a")))
			checkTree(t, dir, wantTree(ta, someSet("a"), nil))
			putFiles(t, dir, users)
			noError(t, Write(t.Context(), ta, someSet("bb")))
			checkTree(t, dir, wantTree(ta, someSet("bb"), users))
			noError(t, Write(t.Context(), ta, someSet("a")))
			checkTree(t, dir, wantTree(ta, someSet("a"), users))
			checkAlone(t, top, "out")
		})
	}
}

func TestWriteCarriesTheUsersFiles(t *testing.T) {
	for way, more := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			dir := filepath.Join(top, "out")
			ta := target(dir)
			noError(t, Write(t.Context(), ta, someSet("a")))
			users := map[string]string{
				"notes.txt":           "mine",
				".hidden":             "mine too",
				"captions/german.srt": "translated by hand",
				"chapters/old.txt":    "-> ../shots.md",
				"gone":                "-> nowhere",
				"voice.md":            "a hand-made change to a file that is no longer produced",
			}
			for name, text := range more {
				users[name] = text
			}
			putFiles(t, dir, users)
			before, err := os.Stat(filepath.Join(dir, "notes.txt"))
			noError(t, err)
			putFiles(t, dir, map[string]string{"shots.md": "a hand-made change, overwritten as documented"})
			noError(t, os.Remove(filepath.Join(dir, "day.md")))
			noError(t, Write(t.Context(), ta, someSet("bb")))
			checkTree(t, dir, wantTree(ta, someSet("bb"), users))
			checkAlone(t, top, "out")
			after, err := os.Stat(filepath.Join(dir, "notes.txt"))
			noError(t, err)
			if !os.SameFile(before, after) || !before.ModTime().Equal(after.ModTime()) {
				t.Error("notes.txt is another file now")
			}
		})
	}
}

// A second build leaves what it would write again as it stands: those who copy or
// watch the folder see only what is new, and nothing is written to the disk.
func TestWriteSparesWhatStands(t *testing.T) {
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			dir := filepath.Join(top, "out")
			ta, files := target(dir), someSet("a")
			noError(t, Write(t.Context(), ta, files))
			putFiles(t, dir, users)
			stat := func() map[string]fs.FileInfo {
				m := map[string]fs.FileInfo{}
				for name := range wantTree(ta, files, nil) {
					info, err := os.Stat(filepath.Join(dir, name))
					noError(t, err)
					m[name] = info
				}
				return m
			}
			first := stat()
			noError(t, Write(t.Context(), ta, files))
			for name, now := range stat() {
				if !os.SameFile(first[name], now) {
					t.Errorf("%s was written again though nothing has changed", name)
				}
			}
			// A file changed by hand without changing its size, one changed in
			// the plan, one taken away.
			hand := bytes.ToUpper(files[0].Bytes)
			putFiles(t, dir, map[string]string{files[0].Name: string(hand)})
			files[1].Bytes = []byte("another list of shots")
			noError(t, os.Remove(filepath.Join(dir, files[2].Name)))
			noError(t, Write(t.Context(), ta, files))
			checkTree(t, dir, wantTree(ta, files, users))
			checkAlone(t, top, "out")
			for name, now := range stat() {
				if name == files[2].Name {
					continue // a new file, but it may have got the number of the old one
				}
				anew := name == files[0].Name || name == files[1].Name || name == manifestName
				if os.SameFile(first[name], now) == anew {
					t.Errorf("%s: written anew %v, expected %v", name, !anew, anew)
				}
			}
		})
	}
}

func TestWriteOnly(t *testing.T) {
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "out")
			ta := target(dir)
			noError(t, Write(t.Context(), ta, someSet("a")))
			putFiles(t, dir, users)
			noError(t, os.Remove(filepath.Join(dir, "edit.md")))
			later := ta
			later.PlanSum = strings.Repeat("1", 64)
			part := []File{{"shots.md", []byte("new shots")}, {"faults.svg", []byte("<svg/>")}}
			noError(t, WriteOnly(t.Context(), later, part))

			all := readTree(t, dir)
			m, err := readManifest([]byte(all[manifestName]))
			noError(t, err)
			delete(all, manifestName)
			expect := wantTree(ta, someSet("a"), users)
			delete(expect, manifestName)
			delete(expect, "edit.md") // was gone before, and is not claimed
			expect["shots.md"], expect["faults.svg"] = "new shots", "<svg/>"
			if diff := cmp.Diff(expect, all); diff != "" {
				t.Error(diff)
			}
			if m.PlanSum != later.PlanSum || len(m.Files) != len(someSet("a")) {
				t.Errorf("manifest: plan %s, %d files", m.PlanSum, len(m.Files))
			}
			for _, e := range m.Files {
				if e.Sum != Sum([]byte(all[e.Name])) || e.Size != len(all[e.Name]) {
					t.Errorf("manifest: %s does not match its file", e.Name)
				}
				fresh := e.Name == "shots.md" || e.Name == "faults.svg"
				if fresh != (e.PlanSum == "") || !fresh && e.PlanSum != ta.PlanSum {
					t.Errorf("manifest: %s is said to come from plan %q", e.Name, e.PlanSum)
				}
			}
			noError(t, Write(t.Context(), later, someSet("bb")))
			checkTree(t, dir, wantTree(later, someSet("bb"), users))
		})
	}
}

func TestWriteLeavesOtherSetsAlone(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	built, matched := target(dir), target(dir)
	matched.Set = "match"
	noError(t, Write(t.Context(), built, someSet("a")))
	noError(t, Write(t.Context(), matched, []File{{"chapters/final.txt", []byte("0:00 Start\n")}, {"review.md", []byte("fine")}}))
	noError(t, Write(t.Context(), built, someSet("bb")))
	noError(t, Write(t.Context(), matched, []File{{"chapters/final.txt", []byte("0:00 Begin\n")}}))
	got := readTree(t, dir)
	delete(got, manifestName)
	expect := wantTree(built, someSet("bb"), map[string]string{"chapters/final.txt": "0:00 Begin\n"})
	delete(expect, manifestName)
	if diff := cmp.Diff(expect, got); diff != "" {
		t.Error(diff)
	}
}

// A target that the process stands in must not be pulled away from under it.
func TestWriteIntoTheCurrentFolder(t *testing.T) {
	top := t.TempDir()
	noError(t, os.Mkdir(filepath.Join(top, "out"), 0o755))
	t.Chdir(filepath.Join(top, "out"))
	ta := target(".")
	noError(t, Write(t.Context(), ta, someSet("a")))
	noError(t, Write(t.Context(), ta, someSet("bb")))
	checkTree(t, ".", wantTree(ta, someSet("bb"), nil))
	checkAlone(t, top, "out")
}

func TestWriteMakesOneParent(t *testing.T) {
	top := t.TempDir()
	ta := target(filepath.Join(top, "outs", "washer"))
	noError(t, Write(t.Context(), ta, someSet("a")))
	checkTree(t, ta.Dir, wantTree(ta, someSet("a"), nil))

	err := Write(t.Context(), target(filepath.Join(top, "no", "such", "washer")), someSet("a"))
	checkRefused(t, err, "no", "missing", "make it first")

	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := Write(ctx, target(filepath.Join(top, "else", "washer")), someSet("a")); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	checkAlone(t, top, "outs")
}

func TestWriteLongName(t *testing.T) {
	top := t.TempDir()
	ta := target(filepath.Join(top, strings.Repeat("w", 255)))
	noError(t, Write(t.Context(), ta, someSet("a")))
	noError(t, Write(t.Context(), ta, someSet("bb")))
	checkTree(t, ta.Dir, wantTree(ta, someSet("bb"), nil))
	checkAlone(t, top, filepath.Base(ta.Dir))
	checkRefused(t, Write(t.Context(), target(ta.Dir+"w"), someSet("a")), "too long")
}

func TestWriteCancelled(t *testing.T) {
	top := t.TempDir()
	ta := target(filepath.Join(top, "out"))
	noError(t, Write(t.Context(), ta, someSet("a")))
	// Cancelled at the first question, the second and so on: it is stopped with
	// nothing changed, or was too late and is wholly done.
	for calls := 1; calls < 30; calls++ {
		ctx := &tiring{Context: t.Context(), left: calls, done: make(chan struct{})}
		err := Write(ctx, ta, someSet("bb"))
		switch {
		case errors.Is(err, context.Canceled):
			checkTree(t, ta.Dir, wantTree(ta, someSet("a"), nil))
		case err == nil && calls > 3:
			checkTree(t, ta.Dir, wantTree(ta, someSet("bb"), nil))
			noError(t, Write(t.Context(), ta, someSet("a")))
		default:
			t.Fatalf("after %d questions: got %v", calls, err)
		}
		checkAlone(t, top, "out")
	}
}

// tiring is a context that is cancelled once it was asked a number of times.
type tiring struct {
	context.Context
	mu   sync.Mutex
	left int
	done chan struct{}
}

func (c *tiring) tick() bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.left--; c.left == 0 {
		close(c.done)
	}
	return c.left <= 0
}

func (c *tiring) Done() <-chan struct{} { c.tick(); return c.done }

func (c *tiring) Err() error {
	if c.tick() {
		return context.Canceled
	}
	return nil
}

func TestCheckNames(t *testing.T) {
	for _, names := range [][]string{
		{"../x"}, {"/x"}, {""}, {"."}, {"a/../b"}, {`a\b`}, {"a:b"}, {"a\nb"}, {"manifest.json"}, {"Manifest.json"},
		{"a", "a"}, {"a", "A"}, {"a", "a/b"}, {"a/b/c", "A/B"},
	} {
		var files []File
		for _, n := range names {
			files = append(files, File{Name: n})
		}
		top := t.TempDir()
		if err := Write(t.Context(), target(filepath.Join(top, "out")), files); err == nil {
			t.Errorf("%q: written", names)
		}
		checkAlone(t, top)
	}
}

func BenchmarkWrite(b *testing.B) {
	var files [2][]File
	for i := range 25 {
		for v := range files {
			dir := []string{"", "chapters/", "captions/"}[i%3]
			files[v] = append(files[v], File{fmt.Sprintf("%sfile-%d.txt", dir, i), bytes.Repeat([]byte{byte('a' + v)}, 20_000)})
		}
	}
	for way, users := range ways {
		b.Run(way, func(b *testing.B) {
			ta := target(filepath.Join(b.TempDir(), "out"))
			if err := Write(b.Context(), ta, files[0]); err != nil {
				b.Fatal(err)
			}
			for name := range users {
				if err := os.MkdirAll(filepath.Join(ta.Dir, filepath.Dir(name)), 0o755); err != nil {
					b.Fatal(err)
				}
			}
			n := 0
			for b.Loop() {
				n++
				if err := Write(b.Context(), ta, files[n%2]); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
