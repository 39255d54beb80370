package build

import (
	"os"
	"path/filepath"
	"slices"
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
