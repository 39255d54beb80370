package plan_test

import (
	"bytes"
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag"
)

// Taking out what was written gives the old bytes: nothing else changed.
func TestAddCautions(t *testing.T) {
	const word = `"mains-isolation"`
	for name, text := range map[string]string{
		"no list":      "[video]\ntitle = \"T\"\n[[step]]\n  title = \"A\" # first\n  say = \"Off it comes.\"\n",
		"a list":       "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\ncautions = [\"hot-surface\",\n]\nsay = \"x\"\n",
		"empty list":   "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\ncautions = [ ]\nsay = \"x\"",
		"inline step":  "video.title = \"T\"\nstep = [{ title = \"A\", say = \"x\" }]\n",
		"inline list":  "video.title = \"T\"\ncaution = [{ id = \"c\", say = \"Keep } clear\" }, # one\n]\nstep = [{ title = \"A\", cautions = [{ id = \"c\", side = \"left\" }], say = \"x\" }]\n",
		"own table":    "[video]\ntitle = \"T\"\n[[caution]]\nid = \"c\"\nsay = \"Keep clear.\"\n[[step]]\ntitle = \"A\"\nsay = \"x\"\n",
		"mark, CRLF":   "\xef\xbb\xbf[video]\r\ntitle = \"T\"\r\n[[step]]\r\ntitle = \"Å\"\r\nsay = \"\"\"\r\nOne.\r\nTwo.\"\"\"\r\n",
		"a text":       "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\ncautions = \"hot-surface\" # one\nsay = \"x\"\n[[step.shot]]\nof = \"a [b]\"\n",
		"empty inline": "caution = [\n  # none yet ]\n]\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\nsay = \"x\"\n",
		"a list apart": "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\ncautions = [ # ] [\n  \"hot-surface\" # \"x\", ]\n  ,\n]\nsay = \"x\"\n",
		"odd order":    "[[step]]\nsay = \"\"\"\n[[step]]\ntitle = 1\n\"\"\"\n\"title\"\t=\t'A'\t# cautions = []\n[[step.shot]]\nof = \"it\"\n[[caution]]\nid = \"c\"\nsay = \"Keep clear.\"\n[[step]]\ntitle = \"B\"\nsay = \"y\"\n[video]\ntitle = \"T\"\n",
		"long title":   "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"\"\"\\\n  A\"\"\"\nsay = \"x\"\n",
		"dotted":       "step = [ { say = \"x\", title = \"A\", cautions = [] } ]\nvideo.title = \"T\"\n",
		"spaces":       "   [video]\n   title = \"T\"\n   [[ step ]]\n\t title = \"A\"\n\t say = \"x\"\n\n\n\n",
		"no last line": "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"",
	} {
		t.Run(name, func(t *testing.T) {
			src, _ := diag.NewSource("plan.toml", []byte(text))
			p, spans, findings := plan.Decode(src, nil)
			if p == nil {
				t.Fatalf("the plan has faults: %v", findings)
			}
			got := plan.AddCautions(src, spans, p, []plan.Addition{{Step: 0, Class: "mains-isolation"}})
			again, _, findings := decode(t, string(got))
			if again == nil {
				t.Fatalf("the plan can't be read any more:\n%s\n%s", print(findings), got)
			}
			listed := false
			for _, use := range again.Steps[0].Cautions {
				listed = listed || use.ID == "mains-isolation" && use.Spoken
			}
			if !listed || again.Steps[0].Title.Print != p.Steps[0].Title.Print || len(again.Steps[0].Cautions) != len(p.Steps[0].Cautions)+1 {
				t.Errorf("the step does not list %s beside its own:\n%s", word, got)
			}
			if c := again.Caution("mains-isolation"); len(c) != 1 || c[0].Stock {
				t.Errorf("the usual words are not there to be edited:\n%s", got)
			}
			if !subsequence([]byte(text), got) {
				t.Errorf("bytes of the old plan are gone:\n%q\n%q", text, got)
			}
			if strings.Contains(text, "\r\n") && bytes.Count(got, []byte("\n")) != bytes.Count(got, []byte("\r\n")) {
				t.Error("line ends are mixed")
			}
		})
	}
}

// subsequence holds where all of a stands in b in its order.
func subsequence(a, b []byte) bool {
	for _, c := range b {
		if len(a) > 0 && a[0] == c {
			a = a[1:]
		}
	}
	return len(a) == 0
}

// That the words are the usual ones is said once, whatever is written.
func TestUsualWordsAreNamedOnce(t *testing.T) {
	src, _ := diag.NewSource("plan.toml", []byte("[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\nsay = \"x\"\n"))
	p, spans, _ := plan.Decode(src, nil)
	got := string(plan.AddCautions(src, spans, p, []plan.Addition{{Step: 0, Class: "mains-isolation"}, {Step: 0, Class: "hot-surface"}}))
	if strings.Count(got, "# The usual words") != 1 || strings.Count(got, "\n\n[[caution]]") != 1 || strings.Count(got, "[[caution]]") != 2 {
		t.Error(got)
	}
}
