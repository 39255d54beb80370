package build

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestWriteRefuses(t *testing.T) {
	sum := strings.Repeat("0", 64)
	ours := string(manifestOf(Target{PlanSum: sum, Version: "1"}, nil))
	listing := func(name string) string {
		return string(manifestOf(Target{PlanSum: sum, Version: "1"}, []File{{Name: name}}))
	}
	cases := []struct {
		name  string
		files map[string]string // below the top folder
		dir   string
		words []string
	}{
		{"no name", nil, "", []string{"names no folder"}},
		{"a file", map[string]string{"out": "x"}, "out", []string{"is a file"}},
		{"below a file", map[string]string{"x": "x"}, "x/out", []string{"part of the path is a file"}},
		{"a link to a file", map[string]string{"x": "x", "out": "-> x"}, "out", []string{"is a file"}},
		{"a link to nothing", map[string]string{"out": "-> nowhere"}, "out", []string{"missing"}},
		{"a link to itself", map[string]string{"out": "-> out"}, "out", []string{"leads back to itself"}},
		{"below a link to itself", map[string]string{"x": "-> x"}, "x/out", []string{"leads back to itself"}},
		{"others' files", map[string]string{"out/b.txt": "x", "out/a.txt": "x", "out/c/d": "x"}, "out", []string{"a.txt, 2 more", "empty"}},
		{"an output of no manifest", map[string]string{"out/shots.md": "x"}, "out", []string{"shots.md"}},
		{"a manifest of another program", map[string]string{"out/manifest.json": `{"name":"an app","files":[]}`}, "out", []string{"not one of fixslate's"}},
		{"a broken manifest", map[string]string{"out/manifest.json": ours[:len(ours)/2]}, "out", []string{"broken"}},
		{"an empty manifest", map[string]string{"out/manifest.json": ""}, "out", []string{"broken"}},
		{"a huge manifest", map[string]string{"out/manifest.json": ours + strings.Repeat(" ", manifestMax)}, "out", []string{"too large"}},
		{"a manifest that is a link", map[string]string{"x": ours, "out/manifest.json": "-> ../x"}, "out", []string{"not a plain file"}},
		{"a manifest that is a folder", map[string]string{"out/manifest.json/x": "x"}, "out", []string{"not a plain file"}},
		{"a manifest that leads out", map[string]string{"x": "x", "out/manifest.json": listing("../x")}, "out", []string{"broken", "../x"}},
		{"a manifest that names itself", map[string]string{"out/manifest.json": listing("manifest.json")}, "out", []string{"broken"}},
		{"a new name taken", map[string]string{"out/manifest.json": ours, "out/shots.md": "mine"}, "out", []string{"shots.md", "move it"}},
		{"a new name taken by a link", map[string]string{"out/manifest.json": ours, "out/shots.md": "-> x"}, "out", []string{"shots.md", "move it"}},
		{"a name taken by a folder", map[string]string{"out/manifest.json": listing("shots.md"), "out/shots.md/x": "mine"}, "out", []string{"is a folder", "move it"}},
		{"a folder's name taken", map[string]string{"out/manifest.json": ours, "out/chapters": "mine"}, "out", []string{"chapters", "move it"}},
		{"a folder's name taken by a link", map[string]string{"out/manifest.json": listing("chapters/planned.txt"), "else/planned.txt": "x", "out/chapters": "-> ../else"}, "out", []string{"chapters", "move it"}},
		{"the lock's name taken by a link", map[string]string{".out.fixslate-lock": "-> x", "x": "x"}, "out", []string{"lock", "remove it"}},
		{"the stage's name taken by a file", map[string]string{".out.fixslate-new": "x"}, "out", []string{"temporaries", "move it"}},
		{"the stage holds another's file", map[string]string{".out.fixslate-new/x": "x"}, "out", []string{"temporaries", "move it"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			top := t.TempDir()
			putFiles(t, top, c.files)
			before := readTree(t, top)
			dir := c.dir
			if dir != "" {
				dir = filepath.Join(top, filepath.FromSlash(dir))
			}
			ta := target(dir)
			checkRefused(t, Write(t.Context(), ta, someSet("a")), c.words...)
			checkRefused(t, WriteOnly(t.Context(), ta, someSet("a")), c.words...)
			checkTree(t, top, before)
		})
	}
}

// What desktops and file systems leave in a folder unasked is not the user's.
func TestWriteTakesAFolderForEmpty(t *testing.T) {
	dir := t.TempDir()
	left := map[string]string{".DS_Store": "x", "._shots.md": "x", "lost+found/#123": "x"}
	putFiles(t, dir, left)
	ta := target(dir)
	noError(t, Write(t.Context(), ta, someSet("a")))
	noError(t, Write(t.Context(), ta, someSet("bb")))
	checkTree(t, dir, wantTree(ta, someSet("bb"), left))
}

func TestWriteFollowsALinkThatTheUserNamed(t *testing.T) {
	top := t.TempDir()
	putFiles(t, top, map[string]string{"disk/real/.DS_Store": "x", "link": "-> disk/real"})
	ta := target(filepath.Join(top, "link"))
	noError(t, Write(t.Context(), ta, someSet("a")))
	noError(t, Write(t.Context(), ta, someSet("bb")))
	checkTree(t, filepath.Join(top, "disk", "real"), wantTree(ta, someSet("bb"), map[string]string{".DS_Store": "x"}))
	checkAlone(t, filepath.Join(top, "disk"), "real")
	checkAlone(t, top, "disk", "link")
}

func TestWriteReplacesALinkInTheTarget(t *testing.T) {
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			ta := target(filepath.Join(top, "out"))
			noError(t, Write(t.Context(), ta, someSet("a")))
			putFiles(t, ta.Dir, users)
			putFiles(t, top, map[string]string{"outside": "not to be touched"})
			for _, name := range []string{"shots.md", "chapters/planned.txt"} {
				path := filepath.Join(ta.Dir, name)
				noError(t, os.Remove(path))
				noError(t, os.Symlink(filepath.Join(top, "outside"), path))
			}
			noError(t, Write(t.Context(), ta, someSet("bb")))
			checkTree(t, ta.Dir, wantTree(ta, someSet("bb"), users))
			checkTree(t, top, merge(map[string]string{"outside": "not to be touched"}, "out", readTree(t, ta.Dir)))
		})
	}
}

func merge(m map[string]string, dir string, below map[string]string) map[string]string {
	for name, text := range below {
		m[dir+"/"+name] = text
	}
	return m
}

func TestWriteKeepsThePlan(t *testing.T) {
	for _, how := range []string{"the plan is an output", "hard link", "the plan named by a link"} {
		for _, name := range []string{"shots.md", "voice.md"} { // replaced; dropped
			t.Run(how+" "+name, func(t *testing.T) {
				top := t.TempDir()
				ta := target(filepath.Join(top, "out"))
				noError(t, Write(t.Context(), ta, someSet("a")))
				plan, output := filepath.Join(top, "plan.toml"), filepath.Join(ta.Dir, name)
				switch how {
				case "the plan is an output":
					plan = output
				case "hard link":
					putFiles(t, top, map[string]string{"plan.toml": string(someSet("a")[slices.IndexFunc(someSet("a"), func(f File) bool { return f.Name == name })].Bytes)})
					noError(t, os.Remove(output))
					noError(t, os.Link(plan, output))
				case "the plan named by a link":
					noError(t, os.Symlink(output, plan))
				}
				before := readTree(t, top)
				ta.Keep = []string{filepath.Join(top, "no such file"), plan}
				checkRefused(t, Write(t.Context(), ta, someSet("bb")), name, "plan")
				checkTree(t, top, before)
			})
		}
	}
}

// Another case of an output's name is the output itself where the file system
// folds case. A hard link stands in for such a file system here.
func TestWriteFoldsCase(t *testing.T) {
	for _, folds := range []bool{false, true} {
		dir := t.TempDir()
		ta := target(dir)
		noError(t, Write(t.Context(), ta, someSet("a")))
		shots, other := filepath.Join(dir, "shots.md"), filepath.Join(dir, "Shots.md")
		users := map[string]string{}
		if folds {
			noError(t, os.Link(shots, other))
		} else {
			if _, err := os.Lstat(other); err == nil {
				t.Skip("this file system folds case")
			}
			users["Shots.md"] = "mine"
			putFiles(t, dir, users)
		}
		noError(t, Write(t.Context(), ta, someSet("bb")))
		checkTree(t, dir, wantTree(ta, someSet("bb"), users))
	}
}

func TestWriteKeepsPermissions(t *testing.T) {
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			ta := target(filepath.Join(t.TempDir(), "out"))
			noError(t, Write(t.Context(), ta, someSet("a")))
			putFiles(t, ta.Dir, users)
			modes := map[string]os.FileMode{"shots.md": 0o600, "day.md": 0o444, "edit.md": 0o664, "chapters": 0o700, "manifest.json": 0o640, ".": 0o750}
			for name, mode := range modes {
				noError(t, os.Chmod(filepath.Join(ta.Dir, name), mode))
			}
			noError(t, Write(t.Context(), ta, someSet("bb")))
			checkTree(t, ta.Dir, wantTree(ta, someSet("bb"), users))
			for name, mode := range modes {
				info, err := os.Stat(filepath.Join(ta.Dir, name))
				noError(t, err)
				if got := info.Mode().Perm(); got != mode {
					t.Errorf("%s: mode %o, want %o", name, got, mode)
				}
			}
		})
	}
}
