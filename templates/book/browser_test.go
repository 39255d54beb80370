package book

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"fixslate/plan/diag/outside"
)

// tab is a book opened from disk in a Chromium of the machine with an empty
// profile.
type tab struct {
	t   *testing.T
	ctx context.Context

	mu         sync.Mutex
	complaints []string // script errors, and what the page's policy refused
}

func openBook(t *testing.T, html []byte) *tab {
	t.Helper()
	program := outside.Program(t, "chromium")
	file := filepath.Join(t.TempDir(), "book.html")
	if err := os.WriteFile(file, html, 0o600); err != nil {
		t.Fatal(err)
	}
	p := &tab{t: t}
	p.start(program)
	p.do(chromedp.Navigate((&url.URL{Scheme: "file", Path: file}).String()))
	return p
}

// start launches the browser, before it sees any page. Chromium now and then
// dies at launch on a busy machine, which says nothing about a book: it is
// launched anew, twice at most, each time with a profile of its own.
func (p *tab) start(program string) {
	p.t.Helper()
	for launch := 1; ; launch++ {
		ctx, stop := context.WithTimeout(context.Background(), 2*time.Minute)
		ctx, quit := chromedp.NewExecAllocator(ctx,
			chromedp.ExecPath(program), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(p.t.TempDir()),
			chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-dev-shm-usage", true))
		ctx, shut := chromedp.NewContext(ctx, chromedp.WithListener(p.hear))
		_, err := chromedp.Run(ctx, chromedp.EmulateViewport(390, 844))
		if err == nil {
			p.ctx = ctx
			p.t.Cleanup(func() { shut(); quit(); stop() })
			return
		}
		shut()
		quit()
		stop()
		if launch == 3 {
			p.t.Fatal(err)
		}
		p.t.Logf("launch %d: %v", launch, err)
	}
}

func (p *tab) hear(event any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch event := event.(type) {
	case *runtime.EventExceptionThrown:
		p.complaints = append(p.complaints, fmt.Sprint(event.ExceptionDetails.Text))
	case *log.EventEntryAdded:
		p.complaints = append(p.complaints, event.Entry.Text)
	}
}

func (p *tab) do(a chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	if _, err := chromedp.Run(p.ctx, a); err != nil {
		p.t.Fatal(err)
	}
}

// ask evaluates a script that gives a number.
func (p *tab) ask(script string) int {
	p.t.Helper()
	n, err := chromedp.Run(p.ctx, chromedp.Evaluate[int]("Number(("+script+") ?? 0)"))
	if err != nil {
		p.t.Fatalf("%s: %v", script, err)
	}
	return n
}

// quiet holds where the browser has complained of nothing.
func (p *tab) quiet() {
	p.t.Helper()
	p.mu.Lock()
	defer p.mu.Unlock()
	if len(p.complaints) > 0 {
		p.t.Errorf("the browser complains:\n%s", strings.Join(p.complaints, "\n"))
	}
}

const firstShot = `document.querySelector("input[data-shot]")`

// A tick survives a reload and can be copied out; versions switch; the
// prompter opens; nothing scrolls sideways and nothing is complained of.
func TestBookInABrowser(t *testing.T) {
	p := openBook(t, Page(sample(t, "van-blower")))
	if n := p.ask(`document.querySelectorAll("input[data-shot]").length`); n < 30 {
		t.Errorf("%d shots", n)
	}
	if p.ask(firstShot+`.checked`) != 0 {
		t.Error("ticked before anybody ticked it")
	}
	p.ask(firstShot + `.click()`)
	p.do(chromedp.Navigate(p.address()))
	if p.ask(firstShot+`.checked`) != 1 {
		t.Error("the tick is gone after a reload")
	}
	p.ask(`document.getElementById("copy").click()`)
	if p.ask(`document.getElementById("got").value.trim() === `+firstShot+`.dataset.shot`) != 1 {
		t.Error("the copied list is not the ticked shot")
	}
	visible := `Array.from(document.querySelectorAll(".step")).filter((s) => s.offsetParent !== null).length`
	before := p.ask(visible)
	p.ask(`(() => { const v = document.getElementById("version"); v.value = "early"; v.dispatchEvent(new Event("change")); })()`)
	if after := p.ask(visible); after >= before || after == 0 {
		t.Errorf("%d steps in all versions, %d in one", before, after)
	}
	p.ask(`document.getElementById("prompt").click()`)
	if p.ask(`document.getElementById("prompter").open && document.querySelectorAll("#prompt-lines p").length > 50`) != 1 {
		t.Error("the prompter does not open")
	}
	p.ask(`document.getElementById("shut").click()`)
	for _, width := range []int64{320, 390, 1280} {
		p.do(chromedp.EmulateViewport(width, 844))
		if over := p.ask(`document.documentElement.scrollWidth - document.documentElement.clientWidth`); over > 0 {
			t.Errorf("%d pixels too wide at %d", over, width)
		}
	}
	p.quiet()
}

// address is where the book was opened.
func (p *tab) address() string {
	p.t.Helper()
	at, err := chromedp.Run(p.ctx, chromedp.Evaluate[string]("location.href"))
	if err != nil {
		p.t.Fatal(err)
	}
	return at
}

// A hostile plan runs nothing: its words are words.
func TestHostileBookInABrowser(t *testing.T) {
	hostile := "[video]\ntitle = \"<script>window.owned=1</script> \\\"><img src=x onerror=window.owned=1> ${{window.owned=1}} \\u2028 \\u202e\"\n" +
		"[[step]]\ntitle = \"</title></script><script>window.owned=1</script>\"\nsay = \"`${{window.owned=1}}` <svg onload=window.owned=1>\"\nnote = \"[x](javascript:window.owned=1) <script>window.owned=1</script>\"\ndo = \"'-window.owned=1-'\"\n"
	p := openBook(t, Page(bookOf(t, "hostile", []byte(hostile))))
	if p.ask(`"owned" in window`) != 0 {
		t.Error("a script of the plan's ran")
	}
	if n := p.ask(`document.querySelectorAll("a[href^='javascript'], img, main svg[onload]").length`); n > 0 {
		t.Errorf("%d links or images of the plan's", n)
	}
	p.quiet()
}

// A tick in the shooting order is the tick of the step, both ways; and the
// coverage leads to the shot.
func TestDayInABrowser(t *testing.T) {
	p := openBook(t, Page(sample(t, "van-blower")))
	if n := p.ask(`document.querySelectorAll("input[data-day]").length`); n < 30 {
		t.Errorf("%d shots in the day", n)
	}
	first := `document.querySelector("input[data-day]")`
	same := `document.getElementById("shot-" + ` + first + `.dataset.day)`
	p.ask(first + `.click()`)
	if p.ask(same+`.checked && /^1 of [0-9]+ made$/.test(document.getElementById("total").textContent)`) != 1 {
		t.Error("a tick in the day is none in the step")
	}
	p.ask(same + `.click()`)
	if p.ask(first+`.checked`) != 0 {
		t.Error("a tick taken off in the step stays in the day")
	}
	if n := p.ask(`Array.from(document.querySelectorAll("#coverage ~ ul a")).filter((a) => !document.querySelector(a.getAttribute("href"))).length`); n > 0 {
		t.Errorf("%d links to no shot", n)
	}
	if p.ask(`document.querySelectorAll("svg[aria-labelledby^=day-1] rect.pic-bar").length`) < 4 {
		t.Error("the day is not drawn")
	}
	p.quiet()
}

// The prompter moves when told to, at the pace planned, and stops.
func TestPrompterRuns(t *testing.T) {
	p := openBook(t, Page(sample(t, "van-blower")))
	where := `Math.round(document.getElementById("prompt-text").scrollTop)`
	p.ask(`document.getElementById("prompt").click()`)
	p.do(chromedp.KeyEvent(" "))
	deadline := `new Promise((done) => setTimeout(() => done(` + where + `), 1500))`
	moved, err := chromedp.Run(p.ctx, chromedp.Evaluate[int](deadline, chromedp.EvalAwaitPromise))
	if err != nil || moved <= 0 {
		t.Errorf("moved %d pixels, %v", moved, err)
	}
	p.do(chromedp.KeyEvent(" "))
	at := p.ask(where)
	if still, err := chromedp.Run(p.ctx, chromedp.Evaluate[int](strings.Replace(deadline, "1500", "300", 1), chromedp.EvalAwaitPromise)); err != nil || still != at {
		t.Errorf("stopped at %d, then at %d, %v", at, still, err)
	}
	p.do(chromedp.KeyEvent("\u001b"))
	if p.ask(`document.getElementById("prompter").open`) != 0 {
		t.Error("escape does not close the prompter")
	}
	p.quiet()
}

// Without a store the boxes still tick, and the page says that it keeps nothing.
func TestBookWithoutAStore(t *testing.T) {
	p := openBook(t, Page(sample(t, "minimal")))
	_, err := chromedp.Call(p.ctx, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{
		Source: `Object.defineProperty(window, "localStorage", { get() { throw new Error("refused"); } })`,
	})
	if err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.Navigate(p.address()))
	if p.ask(`!document.getElementById("memory").hidden`) != 1 {
		t.Error("nothing says that ticks are lost")
	}
	p.ask(firstShot + `.click()`)
	if p.ask(`/^1 of [0-9]+ made$/.test(document.getElementById("total").textContent)`) != 1 {
		t.Error("a tick is not counted")
	}
	p.ask(`document.getElementById("missing").click()`)
	if p.ask(firstShot+`.closest(".shot").offsetParent === null`) != 1 {
		t.Error("a ticked shot shows among the missing ones")
	}
	p.quiet()
}
