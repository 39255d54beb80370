package captions

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// vttCues prints what a WebVTT file's cues hold: "start end id [settings] text".
func vttCues(f File) string {
	var b strings.Builder
	for _, c := range f.Cues {
		fmt.Fprintf(&b, "%v %v %q [%s] %q\n", c.Start, c.End, c.ID, c.Settings, c.Text)
	}
	return b.String()
}

// The parser of W3C WebVTT, Candidate Recommendation, §6.1 to 6.4, rule by
// rule (from memory). Each text is a file; cues is what a player makes of it.
func TestWebVTTRules(t *testing.T) {
	const head = "WEBVTT\n\n"
	for _, c := range []struct{ name, text, cues, found string }{
		// 6.1: signature, header, blocks
		{"signature and a tab", "WEBVTT\ttitle\n\n00:01.000 --> 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", ""},
		{"signature and a letter", "WEBVTTx\n\n00:01.000 --> 00:02.000\na\n", "", "1:1 error caption-unread\n"},
		{"signature in small letters", "webvtt\n\n00:01.000 --> 00:02.000\na\n", "", "1:1 error caption-unread\n"},
		{"one byte order mark", "\ufeffWEBVTT\n\n00:01.000 --> 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", ""},
		{"header lines", "WEBVTT x\nKind: captions\nLanguage: en\n\n00:01.000 --> 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", ""},
		{"a time ends the header", "WEBVTT\n00:01.000 --> 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", ""},
		{"many blank lines", "WEBVTT\n\n\n\n\n00:01.000 --> 00:02.000\na\n\n\n\n00:03.000 --> 00:04.000\nb\n\n\n", "1s 2s \"\" [] \"a\"\n3s 4s \"\" [] \"b\"\n", ""},
		{"no line end at the end", head + "00:01.000 --> 00:02.000\na", "1s 2s \"\" [] \"a\"\n", ""},
		{"no words", head + "00:01.000 --> 00:02.000\n\n00:03.000 --> 00:04.000", "1s 2s \"\" [] \"\"\n3s 4s \"\" [] \"\"\n", ""},
		{"a zero byte", head + "00:01.000 --> 00:02.000\na\x00b\n", "1s 2s \"\" [] \"a\ufffdb\"\n", "4:2 warning caption-doubtful\n"},
		{"a blank of white space is a line of words", head + "00:01.000 --> 00:02.000\na\n \nb\n", "1s 2s \"\" [] \"a\\nb\"\n", ""},
		{"an arrow in the words begins a block", head + "00:01.000 --> 00:02.000\na\n00:03.000 --> 00:04.000\nb\n", "1s 2s \"\" [] \"a\"\n3s 4s \"\" [] \"b\"\n", ""},
		{"words with an arrow are lost", head + "00:01.000 --> 00:02.000\na\nb --> c\n", "1s 2s \"\" [] \"a\"\n", "5:1 error caption-unread\n"},

		// identifiers
		{"id", head + "intro 1\n00:01.000 --> 00:02.000\na\n", "1s 2s \"intro 1\" [] \"a\"\n", ""},
		{"two lines before the time", head + "one\ntwo\n00:01.000 --> 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", "3:1 warning caption-doubtful\n"},
		{"STYLE as an id", head + "STYLE\n00:01.000 --> 00:02.000\na\n", "1s 2s \"STYLE\" [] \"a\"\n", ""},
		{"NOTE as an id", head + "NOTE\n00:01.000 --> 00:02.000\na\n", "1s 2s \"NOTE\" [] \"a\"\n", ""},

		// blocks that are no cues
		{"note, style, region", head + "NOTE one\nline\n\nSTYLE\n::cue { color: red }\n\nREGION\nid:r\nlines:2\n\n00:01.000 --> 00:02.000 region:r\na\n", "1s 2s \"\" [region:r] \"a\"\n", ""},
		{"an arrow ends a style sheet", head + "STYLE\n::cue(a) {}\n00:01.000 --> 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", ""},
		{"style and region after a cue", head + "00:01.000 --> 00:02.000\na\n\nSTYLE\n::cue {}\n\nREGION\nid:r\n\n00:03.000 --> 00:04.000 region:r\nb\n",
			"1s 2s \"\" [] \"a\"\n3s 4s \"\" [region:r] \"b\"\n", "6:1 note caption-doubtful\n9:1 note caption-doubtful\n12:25 note caption-doubtful\n"},
		{"STYLE with a word is none", head + "STYLE x\n::cue {}\n\n00:01.000 --> 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", "3:1 warning caption-doubtful\n"},

		// 6.3: timestamps
		{"hours", head + "00:00:01.000 --> 01:00:02.500\na\n", "1s 1h0m2.5s \"\" [] \"a\"\n", ""},
		{"hours of three and one digits", head + "100:00:01.000 --> 100:00:02.000\na\n\n1:00:03.000 --> 1:00:04.000\nb\n", "100h0m1s 100h0m2s \"\" [] \"a\"\n1h0m3s 1h0m4s \"\" [] \"b\"\n", ""},
		{"sixty minutes are hours without seconds", head + "60:00.000 --> 60:01.000\na\n", "", "3:6 error caption-unread\n"},
		{"sixty seconds", head + "00:60.000 --> 01:01.000\na\n", "", "3:1 error caption-unread\n"},
		{"four digits of milliseconds", head + "00:01.0000 --> 00:02.000\na\n", "", "3:11 error caption-unread\n"},
		{"two digits of milliseconds", head + "00:01.00 --> 00:02.000\na\n", "", "3:9 error caption-unread\n"},
		{"a comma", head + "00:01,000 --> 00:02.000\na\n", "", "3:6 error caption-unread\n"},
		{"no white space at the arrow", head + "00:01.000-->00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", ""},
		{"white space before and in plenty", head + " \t00:01.000 \t--> \f 00:02.000\na\n", "1s 2s \"\" [] \"a\"\n", ""},
		{"a longer arrow", head + "00:01.000 ---> 00:02.000\na\n", "", "3:11 error caption-unread\n"},
		{"a minus", head + "-00:01.000 --> 00:02.000\na\n", "", "3:1 error caption-unread\n"},
		{"an end before the start is a cue", head + "00:02.000 --> 00:01.000\na\n", "2s 1s \"\" [] \"a\"\n", ""},
		{"settings without white space", head + "00:01.000 --> 00:02.000align:start\na\n", "1s 2s \"\" [align:start] \"a\"\n", ""},

		// 6.4: settings that are passed over
		{"strange settings", head + "00:01.000 --> 00:02.000 align:middle size:101% line:1.% position:50 vertical:lr foo :x a:\na\n",
			"1s 2s \"\" [align:middle size:101% line:1.% position:50 vertical:lr foo :x a:] \"a\"\n",
			"3:25 note caption-doubtful\n3:38 note caption-doubtful\n3:48 note caption-doubtful\n3:57 note caption-doubtful\n3:81 note caption-doubtful\n3:85 note caption-doubtful\n3:88 note caption-doubtful\n"},

		// 6.4: cue text
		{"tags", head + "00:01.000 --> 00:02.000\n<b>a</b><i.x.y>b</i><c.red>c</c><u>d</u><ruby>e<rt>f</rt></ruby><lang en-GB>g</lang>\n", "1s 2s \"\" [] \"abcdefg\"\n", ""},
		{"time stamps inside", head + "00:01.000 --> 00:03.000\na <00:02.000>b <00:00:02.500>c\n", "1s 3s \"\" [] \"a b c\"\n", ""},
		{"tags over lines", head + "00:01.000 --> 00:02.000\n<c.a\nb>x</c>y\n", "1s 2s \"\" [] \"xy\"\n", ""},
		{"unknown tags", head + "00:01.000 --> 00:02.000\n<x>a</x><>b</>\n", "1s 2s \"\" [] \"ab\"\n", "4:1 warning caption-doubtful\n4:5 warning caption-doubtful\n4:9 warning caption-doubtful\n4:12 warning caption-doubtful\n"},
		{"character references", head + "00:01.000 --> 00:02.000\n&lt;&gt;&amp;&nbsp;&quot;&copy;&#65;&#x42;&amp;lt; &unknown; & &lt a\n", "1s 2s \"\" [] \"<>&\\u00a0\\\"©AB&lt; &unknown; & < a\"\n", ""},
		{"directional marks", head + "00:01.000 --> 00:02.000\n&lrm;a&rlm;b\n", "1s 2s \"\" [] \"\\u200ea\\u200fb\"\n", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, found := Read([]byte(c.text), "a.vtt")
			if d := cmp.Diff(c.cues, vttCues(f)); d != "" {
				t.Error(d)
			}
			if d := cmp.Diff(c.found, places(found)); d != "" {
				t.Errorf("findings %v\n%s", found, d)
			}
		})
	}
}

// Voices: one voice over all of a cue is its speaker.
func TestWebVTTVoices(t *testing.T) {
	for text, speaker := range map[string]string{
		"<v Nora>a</v>": "Nora", "<v Nora>a": "Nora", "<v.loud Nora &amp; Li>a</v>": "Nora & Li", "<v  Nora  Quist >a": "Nora Quist",
		"<v Nora>a</v><v Li>b</v>": "", "a <v Nora>b</v>": "", "<v>a": "", "a": "",
	} {
		f, _ := Read([]byte("WEBVTT\n\n00:01.000 --> 00:02.000\n"+text+"\n"), "a.vtt")
		if len(f.Cues) != 1 || f.Cues[0].Speaker != speaker {
			t.Errorf("%s: %+v", text, f.Cues)
		}
	}
}
