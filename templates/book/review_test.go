package book

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/chapters/captions"
	"fixslate/chapters/cut"
	"fixslate/plan/given"
	"fixslate/plan/lint"
	"fixslate/plan/timing"
	"fixslate/samples"
	"fixslate/templates/blurb"
)

// reviewOfTexts lays captions beside a plan, as a match does.
func reviewOfTexts(t testing.TB, text, srt []byte) cut.Edit {
	t.Helper()
	p, spans := given.Spans(t, text)
	file, _ := captions.Read(srt, "edit.srt")
	r := cut.Edit{Plan: p, Planned: timing.Estimate(p, timing.DefaultPace())}
	r.PlannedChapters = chapters.FromTimeline(p, r.Planned)
	r.Match = align.Read(p, r.Planned, file.Cues)
	r.Accepted = make([]bool, len(r.Match.Terms))
	r.Timeline = r.Match.Timeline(p)
	r.Chapters = chapters.FromTimeline(p, r.Timeline)
	edit := &lint.Edit{Captions: file, Match: r.Match, Timeline: r.Planned, Chapters: r.PlannedChapters}
	r.Findings = lint.Review(&lint.Pass{
		Plan: p, Spans: spans, Timeline: r.Timeline, Chapters: r.Chapters, Description: blurb.Describe(p, r.Chapters),
		Edit: edit,
	})
	for _, f := range r.Findings {
		at, heard := edit.Second(f.At)
		if !heard {
			at = -1
		}
		r.Seconds = append(r.Seconds, at)
	}
	return r
}

// washer is the review of the rough edit that stands beside the sample.
func washer(t testing.TB) cut.Edit {
	t.Helper()
	text, ok := samples.Plan("washer-pump")
	if !ok {
		t.Fatal("no sample")
	}
	srt, err := os.ReadFile(filepath.Join("..", "..", "samples", "washer-pump", "edit.srt"))
	if err != nil {
		t.Fatal(err)
	}
	return reviewOfTexts(t, text, srt)
}

func TestReviewPage(t *testing.T) {
	r := washer(t)
	page := ReviewPage(r)
	if !bytes.Equal(page, ReviewPage(washer(t))) {
		t.Error("two pages of one match differ")
	}
	for _, want := range []string{"Look for drips before you close it", "caution-said-late", "sorry about the van outside", "Planned words beside said words", blurb.Precedence} {
		if !strings.Contains(string(page), strings.ReplaceAll(want, "'", "&#39;")) {
			t.Errorf("the page has no %q", want)
		}
	}
	if strings.Contains(string(page), "<script") || strings.Contains(string(page), "http://") || strings.Contains(string(page), "style=\"") {
		t.Error("the page has a script, an address or a style of an element")
	}
}

// An edit of nothing, and a plan without narration, still give a page.
func TestReviewPageOfNothing(t *testing.T) {
	for _, srt := range []string{"", "1\n00:00:01,000 --> 00:00:01,000\nx\n"} {
		r := reviewOfTexts(t, []byte("[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\n"), []byte(srt))
		if page := ReviewPage(r); !bytes.Contains(page, []byte("</html>")) {
			t.Errorf("%q gives %d bytes", srt, len(page))
		}
	}
}

// A chapter of the edit that the plan joins to another has the planned time of
// its step beside it.
func TestReviewChaptersAreTimed(t *testing.T) {
	plan, srt := "[video]\ntitle = \"T\"\n", ""
	for i, s := range [][2]string{
		{"Shut the valves", "Turn both valves under the basin clockwise until they stop, then open the lever and wait until nothing comes out of the spout at all."},
		{"Lever off", "Prise the cap out and lift the lever."},
		{"Old one out", "Pull the worn cartridge straight up out of the housing and look at the two pegs below it, since they show which way round the next one goes in."},
		{"New one in", "Grease both seals with silicone, press the pegs into their holes and hold the cartridge flat while the brass nut is screwed down over it by hand."},
	} {
		plan += "[[step]]\ntitle = \"" + s[0] + "\"\nsay = \"" + s[1] + "\"\n"
		srt += fmt.Sprintf("%d\n00:00:%02d,000 --> 00:00:%02d,000\n%s\n\n", i+1, 15*i, 15*i+9, s[1])
	}
	page := string(ReviewPage(reviewOfTexts(t, []byte(plan), []byte(srt))))
	_, chapters, _ := strings.Cut(page, `id="chapters"`)
	chapters, _, _ = strings.Cut(chapters, "</table>")
	if strings.Count(chapters, "<tr>") != 4 || strings.Contains(chapters, ">–<") {
		t.Errorf("chapters without a planned time:\n%s", chapters)
	}
}

// What is missing is seen without scrolling on a phone and on a screen, above a
// bar of plan and edit; every link leads somewhere, nothing is too wide, and
// both looks are legible.
func TestReviewInABrowser(t *testing.T) {
	r := washer(t)
	p := openBook(t, ReviewPage(r))
	timed := 0
	for i, f := range r.Findings {
		if r.Seconds[i] >= 0 && f.Waived == "" {
			timed++
		}
	}
	for _, size := range [][2]int64{{320, 640}, {390, 844}, {1280, 800}} {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		if over := p.ask(`document.documentElement.scrollWidth - document.documentElement.clientWidth`); over > 0 {
			t.Errorf("%d pixels too wide at %d", over, size[0])
		}
		if p.ask(`Array.from(document.querySelectorAll(".bars")).filter((s) => s.getBoundingClientRect().width > 0).length`) != 1 {
			t.Errorf("not one picture is seen at %d", size[0])
		}
		if size[0] == 320 {
			continue
		}
		if p.ask(`document.querySelector(".verdict li").getBoundingClientRect().bottom < innerHeight`) != 1 {
			t.Errorf("what is missing is not seen at %d without scrolling", size[0])
		}
		if p.ask(`Array.from(document.querySelectorAll(".bars rect.missing")).some((r) => { const b = r.getBoundingClientRect(); return b.width > 0 && b.bottom < innerHeight; })`) != 1 {
			t.Errorf("the missing step is not seen in the bar at %d without scrolling", size[0])
		}
		letters := `Array.from(document.querySelectorAll(".bars text")).filter((e) => e.getBoundingClientRect().height > 0).every((e) => e.getBoundingClientRect().height > 10)`
		if p.ask(letters) != 1 {
			t.Errorf("letters in the picture are too small at %d", size[0])
		}
		marks := `Array.from(document.querySelectorAll(".bars .mark")).filter((e) => e.getBoundingClientRect().width > 0).length`
		if n := p.ask(marks); n < timed {
			t.Errorf("%d of %d findings stand at their times at %d", n, timed, size[0])
		}
	}
	if n := p.ask(`Array.from(document.querySelectorAll("a[href^='#']")).filter((a) => !document.getElementById(a.getAttribute("href").slice(1))).length`); n > 0 {
		t.Errorf("%d links lead nowhere", n)
	}
	if n := p.ask(`document.querySelectorAll(".line.unheard").length`); n == 0 {
		t.Error("no planned line is marked as not heard")
	}
	if n := p.ask(`new Set(Array.from(document.querySelectorAll("[id]")).map((e) => e.id)).size - document.querySelectorAll("[id]").length`); n != 0 {
		t.Error("an id stands twice")
	}
	for _, looks := range []string{"light", "dark"} {
		_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: looks}},
		})
		if err != nil {
			t.Fatal(err)
		}
		for _, what := range []string{"body", ".verdict a", ".soft", ".warning .severity", ".error .severity", ".own", "tr.missing .what"} {
			if c := p.ask(strings.ReplaceAll(contrast, "WHAT", what)); c < 450 {
				t.Errorf("%s has a contrast of %d to 100 when %s", what, c, looks)
			}
		}
	}
	p.quiet()
}

// contrast is a hundred times the contrast ratio of an element's text with the
// page (W3C WCAG 2.2, relative luminance and 1.4.3).
const contrast = `(() => {
  const light = (css) => { const v = css.match(/[\d.]+/g).slice(0, 3).map((n) => n / 255).map((n) => n <= 0.04045 ? n / 12.92 : ((n + 0.055) / 1.055) ** 2.4); return 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2]; };
  const e = document.querySelector("WHAT");
  const a = light(getComputedStyle(e).color), b = light(getComputedStyle(document.body).backgroundColor);
  return Math.round(100 * (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05));
})()`

// Hostile words in plan and captions stay words.
func TestHostileReview(t *testing.T) {
	text := "[video]\ntitle = \"<script>window.owned=1</script>\"\n[[step]]\ntitle = \"</title><img src=x onerror=window.owned=1>\"\nsay = \"Undo the cap, then lift the brush out of its guide.\"\n" +
		"[[step]]\ntitle = \"Never said\"\nsay = \"Grease the bearing with a brush.\"\n"
	srt := "1\n00:00:01,000 --> 00:00:06,000\nundo the cap then lift the brush out of its guide\n\n2\n00:00:09,000 --> 00:00:14,000\n&lt;svg onload=window.owned=1&gt; \" onclick=\"window.owned=1\n\n3\n00:00:14,000 --> 00:00:18,000\n\u202eevil\u0007 words here and more of them\n"
	page := ReviewPage(reviewOfTexts(t, []byte(text), []byte(srt)))
	if bytes.ContainsAny(page, "\u202e\u0007") {
		t.Error("a mark that turns the text is in the page")
	}
	p := openBook(t, page)
	if p.ask(`"owned" in window`) != 0 {
		t.Error("a script of the plan's or the captions' ran")
	}
	if n := p.ask(`document.querySelectorAll("img, main [onclick], main [onload]").length`); n > 0 {
		t.Errorf("%d elements of theirs", n)
	}
	p.quiet()
}

func BenchmarkReviewPage(b *testing.B) {
	r := washer(b)
	for b.Loop() {
		ReviewPage(r)
	}
}
