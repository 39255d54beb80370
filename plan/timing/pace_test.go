package timing

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestPaceFileReadsBack(t *testing.T) {
	for _, p := range []Pace{
		DefaultPace(),
		{Rate: Rate{15.123456789012345, 0.1 + 0.2, 1.0 / 3}, ScreenShare: 2.0 / 7, HandsOn: 1.75, Counts: Counts{4, 311, 47, 40}},
	} {
		got, err := ReadPace(p.File())
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(p, got); diff != "" {
			t.Errorf("read back otherwise (-written +read):\n%s", diff)
		}
		windows, err := ReadPace([]byte("\ufeff" + strings.ReplaceAll(string(p.File()), "\n", "\r\n")))
		if err != nil || windows != p {
			t.Errorf("with a byte order mark and CRLF: %v, %v", windows, err)
		}
	}
	zero, err := ReadPace(Pace{}.File())
	if err != nil || zero != DefaultPace() {
		t.Errorf("the zero pace is written as %v, %v", zero, err)
	}
}

func TestPaceFileKeepsDefaults(t *testing.T) {
	got, err := ReadPace([]byte("# one read line\ncharacters_per_second = 15 # slow\n"))
	want := DefaultPace()
	want.Rate.CharactersPerSecond = 15
	if err != nil || got != want {
		t.Errorf("got %v, %v, want %v", got, err, want)
	}
}

func TestPaceFileRefuses(t *testing.T) {
	for file, want := range map[string]string{
		"characters_per_second = 0\n":            "line 1: characters_per_second is \"0\"; write 5 to 40",
		"\n\ncomma_pause = -1":                   "line 3: comma_pause is \"-1\"; write 0 to 5",
		"comma_pause = nan":                      "line 1: comma_pause is \"nan\"; write 0 to 5",
		"comma_pause = inf":                      "line 1: comma_pause is \"inf\"; write 0 to 5",
		"comma_pause = 0x1p-1":                   "line 1: comma_pause is \"0x1p-1\"; write a plain number",
		"comma_pause = \"0.3\"":                  "line 1: comma_pause is \"\\\"0.3\\\"\"; write a plain number",
		"comma_pause =":                          "line 1: comma_pause is \"\"; write a plain number",
		"videos = 1.5":                           "line 1: videos is \"1.5\"; write a whole number",
		"videos = 1e300":                         "line 1: videos is \"1e300\"; write 0 to 1000000",
		"videos = 1\nvideos = 2":                 "line 2: key \"videos\" stands twice; remove one",
		"[pace]":                                 "line 1: \"[pace]\" is no line of a pace file; write a key and a number, like \"comma_pause = 0.3\"",
		"coma_pause = 0.3":                       "line 1: key \"coma_pause\" is not known; the keys are characters_per_second, comma_pause",
		strings.Repeat("x", 1000) + " = 1":       "line 1: key \"" + strings.Repeat("x", 40) + "…\" is not known",
		"\x00\xff\x1b[31m":                       "is no line of a pace file",
		"screen_share = 1\nhands_on_factor = 99": "line 2: hands_on_factor is \"99\"; write 0.1 to 10",
	} {
		got, err := ReadPace([]byte(file))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.40q: error %v, want %s", file, err, want)
		}
		if got != DefaultPace() {
			t.Errorf("%.40q: refused, but gives %v", file, got)
		}
		if err != nil && strings.ContainsAny(err.Error(), "\x00\x1b\n") {
			t.Errorf("%.40q: the message holds control characters: %q", file, err)
		}
	}
}

func FuzzReadPace(f *testing.F) {
	f.Add(DefaultPace().File())
	f.Add([]byte("characters_per_second = 1e1\r\nvideos=3"))
	f.Add([]byte("comma_pause = = 1\n\ufeff#"))
	f.Fuzz(func(t *testing.T, file []byte) {
		p, err := ReadPace(file)
		if err != nil {
			return
		}
		again, err := ReadPace(p.File())
		if err != nil || again != p {
			t.Errorf("%v is written as\n%s\nand read as %v, %v", p, p.File(), again, err)
		}
	})
}
