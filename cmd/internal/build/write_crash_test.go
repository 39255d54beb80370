package build

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// staged makes a target that holds set a and users, and stages set bb for it,
// as a run does before it changes anything.
func staged(t *testing.T, users map[string]string) (*place, *change) {
	t.Helper()
	ta := target(filepath.Join(t.TempDir(), "out"))
	noError(t, Write(t.Context(), ta, someSet("a")))
	putFiles(t, ta.Dir, users)
	p, err := openPlace(ta.Dir)
	noError(t, err)
	t.Cleanup(p.close)
	c, err := p.change(ta, writing{files: someSet("bb")})
	noError(t, err)
	noError(t, p.fill(t.Context(), c))
	return p, c
}

// nextRun checks that a later run with another plan has no trouble.
func nextRun(t *testing.T, p *place, users map[string]string) {
	t.Helper()
	ta := target(p.shown)
	noError(t, Write(t.Context(), ta, someSet("ccc")))
	checkTree(t, p.shown, wantTree(ta, someSet("ccc"), users))
	checkAlone(t, filepath.Dir(p.shown), "out")
}

// after is what recovery alone makes of the target, seen through a run that is
// then refused: it must not have mixed two sets.
func after(t *testing.T, p *place, label string, users map[string]string) {
	t.Helper()
	noError(t, p.recover())
	checkTree(t, p.shown, wantTree(target(p.shown), someSet(label), users))
	checkAlone(t, filepath.Dir(p.shown), "out")
}

var users = map[string]string{"notes.txt": "mine", "captions/german.srt": "mine", "link": "-> nowhere"}

func TestKilledWhileStaging(t *testing.T) {
	for _, missing := range []string{"", manifestName, "shots.md"} {
		p, _ := staged(t, users)
		if missing != "" {
			noError(t, p.root.Remove(p.tree(missing)))
		}
		after(t, p, "a", users)
		nextRun(t, p, users)
	}
}

func TestKilledBeforeTheExchange(t *testing.T) {
	p, c := staged(t, users)
	for _, name := range c.carry[:2] {
		noError(t, p.root.Link(p.at(name), p.tree(name)))
	}
	noError(t, p.root.Link(p.tree(manifestName), p.mark(markSwapping)))
	after(t, p, "a", users)
	nextRun(t, p, users)
}

// What the user does between the kill and the next run stays done.
func TestKilledBeforeTheExchangeAndChanged(t *testing.T) {
	p, c := staged(t, users)
	for _, name := range c.carry {
		noError(t, p.root.Link(p.at(name), p.tree(name)))
	}
	noError(t, p.root.Link(p.tree(manifestName), p.mark(markSwapping)))
	noError(t, os.Remove(filepath.Join(p.shown, "notes.txt")))
	srt := filepath.Join(p.shown, "captions", "german.srt") // saved anew
	noError(t, os.Remove(srt))
	noError(t, os.WriteFile(srt, []byte("mine, better"), 0o644))
	now := map[string]string{"captions/german.srt": "mine, better", "link": "-> nowhere"}
	after(t, p, "a", now)
	nextRun(t, p, now)
}

// An exchange that fails leaves no mark of a swap: what follows is a move.
func TestExchangeFails(t *testing.T) {
	p, c := staged(t, nil)
	noError(t, os.RemoveAll(p.shown))
	if p.swap(c) {
		t.Error("swapped with nothing")
	}
	if mark, err := p.there(p.mark(markSwapping)); mark != nil || err != nil {
		t.Errorf("the mark stays, %v", err)
	}
	p.discard()
	checkAlone(t, filepath.Dir(p.shown))
}

// Where there are no hard links, a move backs up by copies.
func TestMoveWithCopies(t *testing.T) {
	p, _ := staged(t, nil)
	noError(t, os.Chmod(filepath.Join(p.shown, "shots.md"), 0o600))
	noError(t, os.Remove(filepath.Join(p.shown, "day.md")))
	noError(t, os.Symlink("shots.md", filepath.Join(p.shown, "day.md")))
	c, err := p.change(target(p.shown), writing{files: someSet("bb")})
	noError(t, err)
	before := readTree(t, p.shown)
	noError(t, p.root.MkdirAll(p.old("captions"), 0o755))
	noError(t, p.root.MkdirAll(p.old("chapters"), 0o755))
	for name, info := range c.held.outputs {
		noError(t, p.copyOld(name, info))
	}
	noError(t, writeNew(p.root, p.mark(markMoving), nil, nil))
	done, err := p.moveAll(movedNames(c), nil)
	noError(t, err)
	noError(t, p.moveBack(done))
	checkTree(t, p.shown, before)
	info, err := os.Stat(filepath.Join(p.shown, "shots.md"))
	noError(t, err)
	if info.Mode().Perm() != 0o600 {
		t.Errorf("shots.md came back with mode %o", info.Mode().Perm())
	}
	p.discard()
	checkAlone(t, filepath.Dir(p.shown), "out")
}

// A move that can be neither finished nor undone says so, and is finished by
// the next run.
func TestMoveStuckHalfway(t *testing.T) {
	p, c := staged(t, nil)
	names := movedNames(c)
	noError(t, p.backUp(names, c))
	noError(t, writeNew(p.root, p.mark(markMoving), nil, nil))
	done, err := p.moveAll(names[:3], nil)
	noError(t, err)
	first := done[0].name
	noError(t, p.root.Mkdir(p.tree(first), 0o755)) // in the way of moving it back
	back := p.moveBack(done)
	if back == nil {
		t.Fatal("moved back")
	}
	noError(t, p.root.Remove(p.tree(first)))
	told := p.failed("write it", &halfway{p.shown, err, back}).Error()
	if !strings.Contains(told, "halfway") || strings.Contains(told, "nothing was changed") {
		t.Errorf("told: %s", told)
	}
	p.discard()
	after(t, p, "bb", nil)
	nextRun(t, p, nil)
}

// exchanged is the state just after an exchange, before anything is tidied up.
func exchanged(t *testing.T) *place {
	t.Helper()
	p, c := staged(t, users)
	for _, name := range c.carry {
		noError(t, p.root.Link(p.at(name), p.tree(name)))
	}
	noError(t, p.root.Link(p.tree(manifestName), p.mark(markSwapping)))
	if err := exchange(p.root, p.tree("."), p.dir); err != nil {
		t.Skipf("two folders can't be exchanged here (%v): nothing to recover from", err)
	}
	return p
}

func TestKilledAfterTheExchange(t *testing.T) {
	p := exchanged(t)
	after(t, p, "bb", users)
	nextRun(t, p, users)
}

// What the user put into the old folder between the linking and the exchange
// has no link in the new one.
func TestKilledAfterTheExchangeWithLateFiles(t *testing.T) {
	p := exchanged(t)
	late := map[string]string{"late.txt": "mine", "captions/late.srt": "mine", "footage/clip.txt": "a clip"}
	putFiles(t, filepath.Join(p.root.Name(), p.tree(".")), late)
	saved := filepath.Join(p.root.Name(), p.tree("notes.txt")) // saved anew, as an editor does it
	noError(t, os.Remove(saved))
	noError(t, os.WriteFile(saved, []byte("mine, second thoughts"), 0o644))

	all := map[string]string{"notes.kept-1.txt": "mine, second thoughts"}
	for _, m := range []map[string]string{users, late} {
		for name, text := range m {
			all[name] = text
		}
	}
	after(t, p, "bb", all)
	nextRun(t, p, all)
}

// Tidying up can be killed after any number of removals.
func TestKilledWhileTidyingUp(t *testing.T) {
	for n := range 30 {
		p := exchanged(t)
		removed := 0
		var files []string
		for name := range readTree(t, filepath.Join(p.root.Name(), p.tree("."))) {
			if name != manifestName {
				files = append(files, name)
			}
		}
		slices.Sort(files)
		files = append(files, manifestName) // retire takes it last
		for _, name := range files {
			if removed == n {
				break
			}
			noError(t, p.root.Remove(p.tree(name)))
			removed++
		}
		after(t, p, "bb", users)
		nextRun(t, p, users)
		if removed < n {
			return
		}
	}
	t.Error("there are more removals than were tried")
}

// A target thrown away after a kill stays away.
func TestKilledAfterTheExchangeAndThrownAway(t *testing.T) {
	p := exchanged(t)
	noError(t, os.RemoveAll(p.shown))
	nextRun(t, p, nil)
}

func TestKilledWhileMoving(t *testing.T) {
	users := map[string]string{"notes.txt": "mine", "footage/clip.txt": "a clip"}
	for n := 0; ; n++ {
		p, c := staged(t, users)
		names := movedNames(c)
		noError(t, p.backUp(names, c))
		noError(t, writeNew(p.root, p.mark(markMoving), nil, nil))
		if n > len(names) {
			break
		}
		if n == len(names) {
			_, err := p.moveAll(names, c.drop)
			noError(t, err)
		} else {
			_, err := p.moveAll(names[:n], nil)
			noError(t, err)
		}
		after(t, p, "bb", users)
		nextRun(t, p, users)
	}
}

// A move that fails halfway is undone; here a file can't be renamed because
// its staged twin is gone.
func TestMoveFails(t *testing.T) {
	users := map[string]string{"notes.txt": "mine", "footage/clip.txt": "a clip"}
	_, c := staged(t, users)
	for _, missing := range movedNames(c) {
		p, c := staged(t, users)
		c.files = append(c.files, File{Name: "brand-new/x.txt"})
		noError(t, p.root.Mkdir(p.tree("brand-new"), 0o755))
		noError(t, p.root.WriteFile(p.tree("brand-new/x.txt"), nil, 0o644))
		noError(t, p.root.Remove(p.tree(missing)))
		if err := p.move(c); err == nil {
			t.Fatalf("%s: moved", missing)
		}
		p.discard()
		checkTree(t, p.shown, wantTree(target(p.shown), someSet("a"), users))
		checkAlone(t, filepath.Dir(p.shown), "out")
		nextRun(t, p, users)
	}
}
