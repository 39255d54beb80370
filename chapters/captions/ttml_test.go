package captions

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Times of TTML 2 (W3C Recommendation 2018) §12, which takes its containers
// from SMIL 3.0 §5.4, and its parameters from §7.2: each result worked out by
// hand from the document's text.
func TestTTMLTimes(t *testing.T) {
	for _, c := range []struct{ name, parameters, body, cues string }{
		{"parallel is the default", "", `<body><div><p begin="1s" end="2s">a</p><p begin="1s" dur="2s">b</p></div></body>`, "1s 2s \"a\"\n1s 3s \"b\"\n"},
		{"begins add up", "", `<body begin="10s"><div begin="5s"><p begin="1s" end="2s">a<span begin="500ms">b</span></p></div></body>`, "16s 17s \"ab\"\n"},
		{"the sooner of end and dur", "", `<body><div><p begin="1s" dur="5s" end="3s">a</p><p begin="1s" dur="1s" end="3s">b</p></div></body>`, "1s 3s \"a\"\n1s 2s \"b\"\n"},
		{"nothing outlasts what holds it", "", `<body dur="5s"><div end="4s"><p begin="1s" end="9s">a</p><p begin="2s">b</p></div><div><p begin="3s" end="9s">c</p></div></body>`, "1s 4s \"a\"\n2s 4s \"b\"\n3s 5s \"c\"\n"},
		{"a sequence of p", "", `<body><div timeContainer="seq"><p dur="1s">a</p><p begin="2s" dur="1s">b</p><p end="3s">c</p></div></body>`, "0s 1s \"a\"\n3s 4s \"b\"\n4s 7s \"c\"\n"},
		{"a sequence of div", "", `<body timeContainer="seq"><div><p dur="2s">a</p><p dur="3s">b</p></div><div><p dur="1s">c</p></div></body>`, "0s 2s \"a\"\n0s 3s \"b\"\n3s 4s \"c\"\n"},
		{"sequences in a sequence", "", `<body timeContainer="seq"><div timeContainer="seq"><p dur="1s">a</p><p dur="1s">b</p></div><div timeContainer="seq" begin="1s"><p dur="1s">c</p></div></body>`, "0s 1s \"a\"\n1s 2s \"b\"\n3s 4s \"c\"\n"},
		{"a p ends with its last span", "", `<body><div timeContainer="seq"><p><span begin="1s" end="2s">a</span> <span begin="2s" dur="2s">b</span></p><p dur="3s">c</p></div></body>`, "1s 4s \"a b\"\n4s 7s \"c\"\n"},
		{"a sequence of spans", "", `<body><div><p timeContainer="seq" begin="1s"><span dur="1s">a</span><span dur="2s">b</span></p></div></body>`, "1s 4s \"ab\"\n"},
		{"an empty p in a sequence takes its time", "", `<body><div timeContainer="seq"><p dur="2s"/><p dur="1s">a</p></div></body>`, "0s 2s \"\"\n2s 3s \"a\"\n"},
		{"the container is not handed down", "", `<body timeContainer="seq"><div><p dur="1s">a</p><p dur="1s">b</p></div></body>`, "0s 1s \"a\"\n0s 1s \"b\"\n"},

		{"clock times", "", `<body><div><p begin="00:00:01" end="01:02:03.25">a</p><p begin="100:00:00.5" end="100:00:01">b</p></div></body>`, "1s 1h2m3.25s \"a\"\n100h0m0.5s 100h0m1s \"b\"\n"},
		{"offsets", "", `<body><div><p begin="0.5h" end="31m">a</p><p begin="1500ms" end="2.75s">b</p></div></body>`, "30m0s 31m0s \"a\"\n1.5s 2.75s \"b\"\n"},
		{"frames, 30 where nothing is said", "", `<body><div><p begin="15f" end="00:00:01:15">a</p></div></body>`, "500ms 1.5s \"a\"\n"},
		{"frames of 25", `ttp:frameRate="25"`, `<body><div><p begin="00:00:01:05" end="100f">a</p></div></body>`, "1.2s 4s \"a\"\n"},
		{"frames of 23.976", `ttp:frameRate="24" ttp:frameRateMultiplier="1000 1001"`, `<body><div><p begin="24f" end="00:00:02:12">a</p></div></body>`, "1.001s 2.5005s \"a\"\n"},
		{"parts of frames", `ttp:frameRate="25" ttp:subFrameRate="2"`, `<body><div><p begin="00:00:01:10.1" end="2s">a</p></div></body>`, "1.42s 2s \"a\"\n"},
		{"ticks", `ttp:tickRate="10000000"`, `<body><div><p begin="15000000t" end="20000000t">a</p></div></body>`, "1.5s 2s \"a\"\n"},
		{"ticks of a second where nothing is said", "", `<body><div><p begin="1t" end="2t">a</p></div></body>`, "1s 2s \"a\"\n"},
		{"ticks of a frame where frames are said", `ttp:frameRate="25"`, `<body><div><p begin="25t" end="50t">a</p></div></body>`, "1s 2s \"a\"\n"},
		{"smpte without dropped frames", `ttp:timeBase="smpte" ttp:frameRate="30" ttp:frameRateMultiplier="1000 1001" ttp:dropMode="nonDrop"`, `<body><div><p begin="00:00:10:00" end="00:01:00:00">a</p></div></body>`, "10.01s 1m0.06s \"a\"\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := `<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" xml:lang="en" ` + c.parameters + `><head/>` + c.body + `</tt>`
			f, found := Read([]byte(text), "a.ttml")
			if d := cmp.Diff(c.cues, cueLines(f)); d != "" || !f.Whole {
				t.Errorf("%v\n%s", found, d)
			}
		})
	}
}

// Text of TTML 2: white space (§8.1.5, §10.2.xml:space), line breaks, spans in
// spans, what is metadata, and what is somebody else's.
func TestTTMLText(t *testing.T) {
	for _, c := range []struct{ name, p, text string }{
		{"collapsed", "<p>\n   a  b\n\t<span>c </span> d\n </p>", "a b c d"},
		{"around a break", "<p>a <br/> b<br/>\n c </p>", "a\nb\nc"},
		{"a break in a span", "<p><span>a<br/>b</span></p>", "a\nb"},
		{"kept", "<p xml:space=\"preserve\">a  b\nc</p>", "a  b\nc"},
		{"kept by a span, not by its parent", "<p>a  b<span xml:space=\"preserve\">  c</span>  d</p>", "a b  c d"},
		{"spans in spans", "<p><span>a<span>b<span>c</span></span></span>d</p>", "abcd"},
		{"metadata", "<p><metadata><ttm:title>no</ttm:title></metadata><ttm:desc>no</ttm:desc>a</p>", "a"},
		{"foreign elements", "<p>a<x:y xmlns:x=\"http://example.com/\">no<span>no</span></x:y>b</p>", "ab"},
		{"animation", "<p><set begin=\"1s\" tts:color=\"red\"/>a</p>", "a"},
		{"references and sections", "<p>&lt;&#x41;&amp;<![CDATA[<b>]]><!-- no --><?no no?></p>", "<A&<b>"},
		{"ruby", "<p><span tts:ruby=\"container\"><span tts:ruby=\"base\">漢</span><span tts:ruby=\"text\">かん</span></span></p>", "漢かん"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, prefix := range []string{"", "tt:"} {
				if prefix != "" && c.name != "spans in spans" {
					continue
				}
				text := `<?xml version="1.0" encoding="UTF-8"?>
<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttm="http://www.w3.org/ns/ttml#metadata" xmlns:tts="http://www.w3.org/ns/ttml#styling"><head><metadata><ttm:title>no</ttm:title></metadata><styling><style xml:id="s"/></styling><layout><region xml:id="r"/></layout></head><body><div>` + "<div begin=\"1s\" end=\"5s\">" + c.p + `</div></div></body></tt>`
				f, found := Read([]byte(text), "a.ttml")
				if len(f.Cues) != 1 || f.Cues[0].Text != c.text || len(found) > 0 {
					t.Errorf("%q, want %q; %v", cueLines(f), c.text, found)
				}
			}
		})
	}
}

// Names with a prefix, the namespaces of the drafts, and documents in which
// nothing is shown.
func TestTTMLDocuments(t *testing.T) {
	for name, text := range map[string]string{
		"prefix": `<tt:tt xmlns:tt="http://www.w3.org/ns/ttml"><tt:body><tt:div><tt:p begin="1s" end="2s"><tt:span>a</tt:span></tt:p></tt:div></tt:body></tt:tt>`,
		"2006":   `<tt xmlns="http://www.w3.org/2006/10/ttaf1"><body><div><p begin="1s" end="2s">a</p></div></body></tt>`,
		"none":   `<tt><body><div><p begin="1s" end="2s">a</p></div></body></tt>`,
	} {
		f, found := Read([]byte(text), "a.ttml")
		if len(f.Cues) != 1 || f.Cues[0].Text != "a" || len(found) > 0 {
			t.Errorf("%s: %q, %v", name, cueLines(f), found)
		}
	}
	for name, text := range map[string]string{
		"no body":  `<tt xmlns="http://www.w3.org/ns/ttml"/>`,
		"no p":     `<tt xmlns="http://www.w3.org/ns/ttml"><head/><body><div/></body></tt>`,
		"pictures": `<tt xmlns="http://www.w3.org/ns/ttml"><body><div begin="1s" end="2s"><image src="a.png"/></div></body></tt>`,
	} {
		f, found := Read([]byte(text), "a.ttml")
		if len(f.Cues) != 0 || !f.Whole || places(found) != "1:1 warning caption-doubtful\n" {
			t.Errorf("%s: whole %v, %v", name, f.Whole, found)
		}
	}
}
