package marks

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"fixslate/chapters"
)

// film is a video of three chapters whose titles try to break the formats.
// 60.06 s is frame 1800 at 29.97.
func film() Film {
	return Film{
		Title: "Drain pump; a \"test\" = worth it # 1", Language: "en-GB", FPS: 25, End: 4000.0625,
		Chapters: []chapters.Chapter{
			{Title: "Make it safe", Start: 0, End: 60.06, Steps: []int{0, 1}},
			{Title: `Look & <listen> --> C:\`, Start: 60.06, End: 3723.0, Steps: []int{2}},
			{Title: "Überwurf = 24 mm; #2", Start: 3723.0, End: 4000.0625, Steps: []int{3}},
		},
		Clips: []Clip{{"safe", 0, 40.01}, {"look", 40.01, 60.06}, {"ohms", 60.06, 3723.0}, {"swap", 3723.0, 4000.0625}},
	}
}

func TestText(t *testing.T) {
	want := "0:00 Make it safe\n1:00 Look & ‹listen› --› C:\\\n1:02:03 Überwurf = 24 mm; #2\n"
	if diff := cmp.Diff(want, string(description(film()))); diff != "" {
		t.Error(diff)
	}
	if got := description(Film{}); len(got) != 0 {
		t.Errorf("no chapters are written as %q", got)
	}
}

func TestWebVTT(t *testing.T) {
	want := "WEBVTT\n" +
		"\n00:00:00.000 --> 00:01:00.060\nMake it safe\n" +
		"\n00:01:00.060 --> 01:02:03.000\nLook &amp; &lt;listen&gt; --&gt; C:\\\n" +
		"\n01:02:03.000 --> 01:06:40.063\nÜberwurf = 24 mm; #2\n"
	if diff := cmp.Diff(want, string(webVTT(film()))); diff != "" {
		t.Error(diff)
	}
}

func TestFFMetadata(t *testing.T) {
	want := ";FFMETADATA1\ntitle=Drain pump\\; a \"test\" \\= worth it \\# 1\n" +
		"\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=0\nEND=60060\ntitle=Make it safe\n" +
		"\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=60060\nEND=3723000\ntitle=Look & <listen> --> C:\\\\ \n" +
		"\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=3723000\nEND=4000063\ntitle=Überwurf \\= 24 mm\\; \\#2\n"
	if diff := cmp.Diff(want, string(ffMetadata(film()))); diff != "" {
		t.Error(diff)
	}
}

func TestMatroska(t *testing.T) {
	type atom struct {
		Start   string `xml:"ChapterTimeStart"`
		End     string `xml:"ChapterTimeEnd"`
		UID     uint64 `xml:"ChapterUID"`
		Display struct {
			String   string `xml:"ChapterString"`
			Language string `xml:"ChapterLanguage"`
			IETF     string `xml:"ChapLanguageIETF"`
		} `xml:"ChapterDisplay"`
	}
	var file struct {
		Edition struct {
			UID   uint64 `xml:"EditionUID"`
			Atoms []atom `xml:"ChapterAtom"`
		} `xml:"EditionEntry"`
	}
	if err := xml.Unmarshal(matroska(film()), &file); err != nil {
		t.Fatal(err)
	}
	f := film()
	ends := []string{"00:01:00.060000000", "01:02:03.000000000", "01:06:40.063000000"}
	seen := map[uint64]bool{0: true}
	if len(file.Edition.Atoms) != 3 {
		t.Fatalf("%d atoms, want 3", len(file.Edition.Atoms))
	}
	for i, a := range file.Edition.Atoms {
		if a.Display.String != f.Chapters[i].Title || a.Display.Language != "eng" || a.Display.IETF != "en-GB" {
			t.Errorf("atom %d displays %+v", i, a.Display)
		}
		if a.End != ends[i] || i > 0 && a.Start != ends[i-1] {
			t.Errorf("atom %d runs from %s to %s, want to %s", i, a.Start, a.End, ends[i])
		}
		if seen[a.UID] || a.UID > 1<<63 {
			t.Errorf("atom %d has the UID %d: 0, too long or seen before", i, a.UID)
		}
		seen[a.UID] = true
	}
}

func TestJSON(t *testing.T) {
	validate(t, "podcast.schema.json", podcast(film()))
	validate(t, "podcast.schema.json", podcast(Film{}))
	var file struct {
		Title    string
		Chapters []struct {
			StartTime, EndTime float64
			Title              string
		}
	}
	if err := json.Unmarshal(podcast(film()), &file); err != nil {
		t.Fatal(err)
	}
	last := -1.0
	for i, c := range file.Chapters {
		if c.StartTime <= last || c.EndTime <= c.StartTime || c.Title != film().Chapters[i].Title {
			t.Errorf("chapter %d is %+v after %v s", i, c, last)
		}
		last = c.StartTime
	}
	if len(file.Chapters) != 3 || file.Chapters[1].StartTime != 60.06 || file.Chapters[2].EndTime != 4000.063 || file.Title != film().Title {
		t.Errorf("read back as %+v", file)
	}
}

func TestOTIO(t *testing.T) {
	for _, fps := range []float64{23.976, 24, 25, 29.97, 30, 50, 59.94} {
		f := film()
		f.FPS = fps
		validate(t, "otio.schema.json", otio(f))
		file := readOTIO(t, otio(f))
		for i, m := range file.Tracks.Markers {
			if m.Name != f.Chapters[i].Title {
				t.Errorf("marker %d is called %q", i, m.Name)
			}
			got := m.Range.Start.Value / m.Range.Start.Rate
			if d := got - f.Chapters[i].Start; d > 0.5/fps+1e-9 || d < -0.5/fps-1e-9 {
				t.Errorf("at %v marker %d stands at %v s, want %v", fps, i, got, f.Chapters[i].Start)
			}
		}
		at := 0.0
		for i, c := range file.Tracks.Children[0].Children {
			at += c.Range.Duration.Value
			if d := at/c.Range.Duration.Rate - f.Clips[i].End; d > 0.5/fps+1e-9 || d < -0.5/fps-1e-9 {
				t.Errorf("at %v clip %d ends %v s off", fps, i, d)
			}
		}
	}
	validate(t, "otio.schema.json", otio(Film{}))
}

// A real edit has talk between the steps; its clips keep their places.
func TestOTIOKeepsGaps(t *testing.T) {
	f := Film{FPS: 25, Clips: []Clip{{"b", 2, 4}, {"a", 4.001, 4.002}, {"c", 6, 8}}}
	file := readOTIO(t, otio(f))
	var got []string
	for _, c := range file.Tracks.Children[0].Children {
		got = append(got, fmt.Sprintf("%s %s %v", c.Schema, c.Name, c.Range.Duration.Value))
	}
	if diff := cmp.Diff([]string{"Gap.1  50", "Clip.2 b 50", "Gap.1  50", "Clip.2 c 50"}, got); diff != "" {
		t.Error(diff)
	}
}

type otioFile struct {
	Tracks struct {
		Markers []struct {
			Name  string    `json:"name"`
			Range otioRange `json:"marked_range"`
		} `json:"markers"`
		Children []struct {
			Children []struct {
				Schema string    `json:"OTIO_SCHEMA"`
				Name   string    `json:"name"`
				Range  otioRange `json:"source_range"`
			} `json:"children"`
		} `json:"children"`
	} `json:"tracks"`
}

type otioRange struct {
	Start, Duration struct{ Rate, Value float64 }
}

func (r *otioRange) UnmarshalJSON(b []byte) error {
	var raw struct {
		Start    struct{ Rate, Value float64 } `json:"start_time"`
		Duration struct{ Rate, Value float64 } `json:"duration"`
	}
	err := json.Unmarshal(b, &raw)
	r.Start, r.Duration = raw.Start, raw.Duration
	return err
}

func readOTIO(t *testing.T, file []byte) otioFile {
	t.Helper()
	var f otioFile
	if err := json.Unmarshal(file, &f); err != nil {
		t.Fatal(err)
	}
	return f
}

func validate(t *testing.T, schema string, file []byte) {
	t.Helper()
	s, err := os.ReadFile("testdata/" + schema)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(s))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(schema, doc); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile(schema)
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled.Validate(value); err != nil {
		t.Errorf("%s: %v\n%s", schema, err, file)
	}
}

func TestFormatsHaveTheirOwnNames(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range Formats() {
		name := f.File("planned")
		if seen[name] || !strings.HasPrefix(name, "planned.") {
			t.Errorf("format %+v", f)
		}
		seen[name] = true
		if first, second := f.Write(film()), f.Write(film()); !bytes.Equal(first, second) || len(first) == 0 {
			t.Errorf("%s differs from one writing to the next", name)
		}
	}
	for _, name := range []string{"planned.txt", "planned.vtt", "planned.ffmeta", "planned.xml", "planned.json", "planned.tc.txt", "planned.otio"} {
		if !seen[name] {
			t.Errorf("no format writes %s", name)
		}
	}
}
