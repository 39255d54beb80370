package captions

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

func TestCheckClock(t *testing.T) {
	const file = "1\n00:00:01,000 --> 00:00:03,000\nfirst\n\n2\n00:00:02,000 --> 00:00:04,000\noverlaps\n\n3\n00:00:01,500 --> 00:00:01,800\nback in time\n\n" +
		"4\n00:00:05,000 --> 00:00:05,000\nno time\n\n5\n00:00:06,000 --> 00:00:05,500\nbackwards\n\n6\n00:00:07,000 --> 00:00:08,000\n\n7\n100:00:00,000 --> 100:00:02,000\nfar\n"
	f, found := Read([]byte(file), "a.srt")
	if len(found) > 0 || len(f.Cues) != 7 {
		t.Fatalf("%d cues, %v", len(f.Cues), found)
	}
	want := "6:1 warning caption-overlap\n10:1 warning caption-order\n14:1 error caption-unshown\n18:1 error caption-unshown\n22:1 note caption-empty\n25:1 warning caption-far\n"
	if diff := cmp.Diff(want, places(Check(f, Profile{}))); diff != "" {
		t.Error(diff)
	}
}

func TestCheckProfile(t *testing.T) {
	p, _ := ProfileNamed("broadcast")
	f := File{Cues: []Cue{
		{Start: 0, End: 2 * time.Second, Text: "fine"},
		{Start: 3 * time.Second, End: 8 * time.Second, Text: strings.Repeat("é", 37) + "\n" + strings.Repeat("e\u0301", 37)},
		{Start: 9 * time.Second, End: 15 * time.Second, Text: strings.Repeat("w", 38)},
		{Start: 16 * time.Second, End: 18 * time.Second, Text: "one\ntwo\nthree"},
		{Start: 19 * time.Second, End: 19*time.Second + 833*time.Millisecond, Text: "20 frames"},
		{Start: 20 * time.Second, End: 20*time.Second + 800*time.Millisecond, Text: "short"},
		{Start: 21 * time.Second, End: 22 * time.Second, Text: "seventeen chars.."},
		{Start: 23 * time.Second, End: 24 * time.Second, Text: "eighteen characters"},
		{Start: 25 * time.Second, End: 33 * time.Second, Text: "eight seconds"},
		{Start: 34 * time.Second, End: 36 * time.Second, Text: "cut", Cut: true},
	}}
	var got []string
	for _, one := range Check(f, p) {
		got = append(got, one.Path+" "+one.Rule)
	}
	want := []string{"cue[2] caption-wide", "cue[3] caption-tall", "cue[5] caption-short", "cue[7] caption-fast", "cue[8] caption-long", "cue[9] caption-wide"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestResegmentReadable takes captions that no profile allows and cuts them
// anew.
func TestResegmentReadable(t *testing.T) {
	var b strings.Builder
	b.WriteString("WEBVTT\n\n")
	r := rand.New(rand.NewPCG(11, 12))
	at := int64(0)
	for i, s := range sentences(r, 300) {
		end := at + int64(len(s))*62
		if i%20 == 0 {
			s = "[water runs]\n" + s
			end += 800
		}
		b.Write(appendStamp(nil, at, '.'))
		b.WriteString(" --> ")
		b.Write(appendStamp(nil, end, '.'))
		b.WriteString("\n" + strings.ReplaceAll(s, "<", "&lt;") + "\n\n")
		at = end + int64(r.IntN(1500))
	}
	f, found := Read([]byte(b.String()), "a.vtt")
	if len(found) > 0 || len(f.Cues) != 300 {
		t.Fatalf("%d cues, %v", len(f.Cues), found)
	}
	for _, p := range Profiles() {
		got := Resegment(f, p)
		var before, after []string
		for _, c := range f.Cues {
			before = append(before, strings.Fields(c.Text)...)
		}
		labels := 0
		for _, c := range got.Cues {
			after = append(after, strings.Fields(c.Text)...)
			labels += strings.Count("\n"+c.Text+"\n", "\n[water runs]\n")
		}
		if diff := cmp.Diff(before, after); diff != "" || labels != 15 {
			t.Errorf("%s: %d labels, words %s", p.Name, labels, diff)
		}
		if found := Check(got, p); len(found) > 0 {
			t.Errorf("%s: %d findings in %d cues, the first: %s", p.Name, len(found), len(got.Cues), found[0].Message)
		}
	}
}
