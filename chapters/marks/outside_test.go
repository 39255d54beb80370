package marks

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"fixslate/chapters"
	"fixslate/plan/diag/outside"
)

// hostile is a video whose titles hold what each format treats as structure.
func hostile() Film {
	titles := []string{
		"Make it safe", `ends in a backslash\`, `a=b;c#d\e`, "[CHAPTER]", "TIMEBASE=1/1", "; comment", "# comment",
		"00:00:01.000 --> 00:00:02.000", "NOTE not a note", "STYLE", "WEBVTT", "<b>bold</b> & <script>alert(1)</script>",
		"&amp; &lt; &#65; &copy", "]]> <!-- --> <?x?>", `"quoted" 'twice'`, "12 ± 0.5 V, 10–20 Ω, 90 °C", "Überwurfmutter 🔧 3/4″", "{\"json\": 1}", "%s %d $HOME `ls`",
	}
	f := Film{Title: titles[2], Language: "en", FPS: 25}
	at := 0.0
	for i, title := range titles {
		c := chapters.Chapter{Title: title, Start: at, Steps: []int{i}}
		at += 10.9995 + float64(i)*61.0003 // never whole
		if i >= len(titles)-3 {
			at += 360000 // a hundred hours: no reader may take them for something else
		}
		c.End = at
		f.Chapters = append(f.Chapters, c)
		f.Clips = append(f.Clips, Clip{fmt.Sprint("step-", i), c.Start, c.End})
	}
	f.End = at
	return f
}

// mark is a chapter as an outside reader understood it.
type mark struct {
	Start, End int64 // milliseconds
	Title      string
}

func wanted(f Film) []mark {
	var all []mark
	for _, c := range f.Chapters {
		all = append(all, mark{chapters.Millisecond(c.Start), chapters.Millisecond(c.End), c.Title})
	}
	return all
}

func compare(t *testing.T, reader string, got []mark) {
	t.Helper()
	if diff := cmp.Diff(wanted(hostile()), got); diff != "" {
		t.Errorf("%s reads other chapters than were written (-written +read):\n%s", reader, diff)
	}
}

// save writes a file for a program to read.
func save(t *testing.T, name string, file []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, file, 0o666); err != nil {
		t.Fatal(err)
	}
	return path
}

func run(t *testing.T, program string, args ...string) []byte {
	t.Helper()
	var out, errs bytes.Buffer
	c := exec.Command(program, args...)
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		t.Fatalf("%s: %v\n%s%s", filepath.Base(program), err, out.Bytes(), errs.Bytes())
	}
	if errs.Len() > 0 {
		t.Logf("%s: %s", filepath.Base(program), errs.Bytes())
	}
	return out.Bytes()
}

func TestFFprobeReadsFFMetadata(t *testing.T) {
	ffprobe := outside.Program(t, "ffprobe")
	out := run(t, ffprobe, "-v", "error", "-show_chapters", "-show_format", "-of", "json", save(t, "c.ffmeta", ffMetadata(hostile())))
	var file struct {
		Chapters []struct {
			TimeBase   string `json:"time_base"`
			Start, End int64
			Tags       map[string]string
		}
		Format struct{ Tags map[string]string }
	}
	if err := json.Unmarshal(out, &file); err != nil {
		t.Fatal(err)
	}
	var got []mark
	for _, c := range file.Chapters {
		if c.TimeBase != "1/1000" || len(c.Tags) != 1 {
			t.Errorf("chapter %+v, want milliseconds and a title alone", c)
		}
		title := c.Tags["title"]
		if before, ok := strings.CutSuffix(title, `\ `); ok {
			title = before + `\` // see ffValue
		}
		got = append(got, mark{c.Start, c.End, title})
	}
	compare(t, "ffprobe", got)
	if title := file.Format.Tags["title"]; title != hostile().Title {
		t.Errorf("ffprobe reads the title %q, want %q", title, hostile().Title)
	}
}

func TestMkvmergeReadsMatroska(t *testing.T) {
	mkvmerge, mkvextract := outside.Program(t, "mkvmerge"), outside.Program(t, "mkvextract")
	mks := filepath.Join(t.TempDir(), "only.mks")
	run(t, mkvmerge, "-q", "-o", mks, "--chapters", save(t, "c.xml", matroska(hostile())))
	simple := string(run(t, mkvextract, mks, "chapters", "-s", "-"))
	var got []mark
	for line := range strings.Lines(simple) {
		key, value, _ := strings.Cut(strings.TrimRight(line, "\r\n"), "=")
		if strings.HasSuffix(key, "NAME") {
			got[len(got)-1].Title = value
			continue
		}
		got = append(got, mark{Start: milliseconds(t, value)})
	}
	want := wanted(hostile())
	for i := range want {
		want[i].End = 0 // this form has no ends
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("mkvmerge reads other chapters than were written (-written +read):\n%s", diff)
	}
}

// milliseconds reads hh:mm:ss.mmm.
func milliseconds(t *testing.T, clock string) int64 {
	t.Helper()
	var h, m, s, ms int64
	if n, err := fmt.Sscanf(clock, "%d:%d:%d.%d", &h, &m, &s, &ms); n != 4 || err != nil {
		t.Fatalf("%q is no time", clock)
	}
	return ((h*60+m)*60+s)*1000 + ms
}

func TestMatroskaFollowsItsDTD(t *testing.T) {
	xmllint := outside.Program(t, "xmllint")
	found, _ := filepath.Glob("/usr/share/doc/mkvtoolnix*/examples/matroskachapters.dtd")
	if len(found) == 0 {
		outside.Absent(t, "matroskachapters.dtd of the mkvtoolnix package is not there")
	}
	run(t, xmllint, "--noout", "--nonet", "--dtdvalid", found[0], save(t, "c.xml", matroska(hostile())))
	run(t, xmllint, "--noout", "--nonet", "--dtdvalid", found[0], save(t, "none.xml", matroska(Film{})))
}

// The parser has no program of its own; this is its reader.
const readVTT = `
const { WebVTTParser } = require("webvtt-parser");
const tree = new WebVTTParser().parse(require("fs").readFileSync(0, "utf8"), "chapters");
console.log(JSON.stringify({
  errors: tree.errors,
  cues: tree.cues.map(c => ({
    start: Math.round(c.startTime * 1000), end: Math.round(c.endTime * 1000), title: c.tree.children.map(n => n.value).join("")
  })),
}));`

func TestWebVTTParserReadsWebVTT(t *testing.T) {
	node := outside.Program(t, "node")
	modules := outside.Modules(t, "webvtt-parser")
	c := exec.Command(node, "-e", readVTT)
	c.Env = append(os.Environ(), "NODE_PATH="+modules)
	c.Stdin = bytes.NewReader(webVTT(hostile()))
	c.Stderr = os.Stderr
	out, err := c.Output()
	if err != nil {
		t.Fatalf("node: %v", err)
	}
	var file struct {
		Errors []map[string]any
		Cues   []mark
	}
	if err := json.Unmarshal(out, &file); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	if len(file.Errors) > 0 {
		t.Errorf("webvtt-parser objects: %v", file.Errors)
	}
	// This parser leaves the semicolon of a reference standing ("&lt;" reads
	// "<;"). The browser below does not.
	written := wanted(hostile())
	for i := range written {
		written[i].Title = strings.NewReplacer("&", "&;", "<", "<;", ">", ">;").Replace(written[i].Title)
	}
	if diff := cmp.Diff(written, file.Cues); diff != "" {
		t.Errorf("webvtt-parser reads other chapters than were written (-written +read):\n%s", diff)
	}
}

const trackPage = `<!doctype html><meta charset="utf-8"><title>waiting</title>
<video><track kind="chapters" src="c.vtt"></video><pre id="out"></pre>
<script>
const el = document.querySelector("track");
el.track.mode = "hidden";
el.onload = el.onerror = () => {
  document.getElementById("out").textContent = JSON.stringify({ state: el.readyState, cues: [...(el.track.cues || [])].map(c => ({
    start: Math.round(c.startTime * 1000), end: Math.round(c.endTime * 1000), title: c.getCueAsHTML().textContent })) });
};
</script>`

// A browser reads a track over http only.
func TestBrowserReadsWebVTT(t *testing.T) {
	chromium := outside.Program(t, "chromium")
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case "/":
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			fmt.Fprint(w, trackPage)
		case "/c.vtt":
			w.Header().Set("Content-Type", "text/vtt; charset=utf-8")
			_, _ = w.Write(webVTT(hostile()))
		default:
			http.NotFound(w, r)
		}
	}))
	defer server.Close()
	c := exec.CommandContext(t.Context(), chromium, "--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run",
		"--user-data-dir="+t.TempDir(), "--virtual-time-budget=8000", "--dump-dom", server.URL+"/")
	c.WaitDelay = 5 * time.Second
	page, err := c.Output()
	if err != nil {
		t.Fatalf("chromium: %v", err)
	}
	_, rest, _ := strings.Cut(string(page), `<pre id="out">`)
	rest, _, _ = strings.Cut(rest, "</pre>")
	var file struct {
		State int
		Cues  []mark
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(rest)), &file); err != nil {
		t.Fatalf("%v\n%s", err, page)
	}
	if file.State != 2 {
		t.Fatalf("the browser's track is in state %d, want 2 (loaded)", file.State)
	}
	compare(t, "the browser", file.Cues)
}

// A description's list has no reader outside; this one follows the published
// rules: a time, a space, a title with no angle bracket, times rising from 0:00.
func TestTextReadsBack(t *testing.T) {
	last := -1
	n := 0
	for line := range strings.Lines(string(description(hostile()))) {
		stamp, title, ok := strings.Cut(strings.TrimSuffix(line, "\n"), " ")
		seconds := 0
		for i, part := range strings.Split(stamp, ":") {
			v, err := strconv.Atoi(part)
			if err != nil || i > 0 && (v > 59 || len(part) != 2) {
				t.Fatalf("%q is no time", stamp)
			}
			seconds = seconds*60 + v
		}
		if !ok || title == "" || strings.ContainsAny(title, "<>\r") {
			t.Errorf("line %q", line)
		}
		if n == 0 && stamp != "0:00" || seconds <= last || seconds != chapters.WholeSecond(hostile().Chapters[n].Start) {
			t.Errorf("chapter %d is marked %s after %d s", n, stamp, last)
		}
		last = seconds
		n++
	}
	if n != len(hostile().Chapters) {
		t.Errorf("%d lines for %d chapters", n, len(hostile().Chapters))
	}
}
