package lint

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

var claimUntested = Rule{Name: "claim-untested", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	bare := map[int]bool{} // steps in which a line stands without evidence
	adrift := p.adriftWords()
	for _, s := range p.said {
		kind := asserted(s.Claim)
		if kind == "" || p.excused(s, kind) || len(s.Evidence) > 0 || p.Plan.Steps[s.step].Opinion || s.quotesFact() || p.readAloud(s) || len(p.loose(s)) > 0 {
			continue
		}
		if words := bareWords(s.line.Print); slices.ContainsFunc(adrift, func(says string) bool { return strings.Contains(words, says) }) {
			continue // the claim that answers for it is reported: the remedy is the same
		}
		r := s.report(0, 0)
		r.Message = fmt.Sprintf("nothing in the plan shows this (%s): %q", kind, shorten(s.line.Print))
		r.Hint = `show it in a test, give it a source with a [[claim]] (says = its words, evidence = [...]), or call it opinion = true`
		report(r)
		bare[s.step] = true
	}
	p.claimsAdrift(bare, report)
}}

// excused holds for a line that shows what it asserts, or asserts nothing of
// other objects: why to keep clear is the cautions' matter; what happened to this
// one or how it is, and what is in the picture, is shown; the symptom is why the
// viewer watches; the other side is what other_side is for.
func (p *Pass) excused(s said, kind string) bool {
	folded := fold(s.line.Print)
	switch kind {
	case causal:
		return p.Plan.Steps[s.step].HandsOn() && (s.Conditional || tellsOfTheAct(folded)) ||
			claim.Warns(s.line.Print) || reports(folded) || p.whyOfAnOrder(s) || p.verdict(s) || p.tellsSymptom(folded)
	case law:
		return says(folded, licenceWords...)
	case costly:
		return len(s.Values) == 0
	case frequent:
		return reports(folded) || p.ofThisOne(s) || wordless(folded)
	case compared:
		return reports(folded) || p.verdict(s)
	case made:
		return s.inSight() || says(folded, standing...) || p.allTested(s)
	case fitted:
		return strings.HasSuffix(s.Path, ".other_side")
	}
	return false
}

// tellsSymptom holds for a line that has most of the symptom's words and says
// nothing of where it comes from: "your machine trips the breaker a few seconds
// after you switch it on".
func (p *Pass) tellsSymptom(folded string) bool {
	if says(folded, "because", "cause", "causes", "caused", "due to", "down to", "why", "means", "makes", "comes from", "so") {
		return false
	}
	symptom := contentWords(p.Plan.Video.Symptom.Print)
	told := 0
	for _, w := range symptom {
		stem := w[:min(len(w), max(4, len(w)-2))] // "switched" and "switch"
		if strings.Contains(folded, " "+stem) {
			told++
		}
	}
	const fewest = 2
	return told >= fewest && 2*told > len(symptom)
}

// claimsAdrift are the [[claim]]s that rest on nothing, and those that answer
// for words which nobody says; not the latter where a line of a step that
// lists them is reported already: then the remedy is the same.
func (p *Pass) claimsAdrift(bare map[int]bool, report func(Report)) {
	said := sync.OnceValue(p.saidWords)
	for i := range p.Plan.Claims {
		c := &p.Plan.Claims[i]
		name := shorten(cmp.Or(c.Text.Print, c.Says, c.ID))
		if restsOnNothing(c) {
			report(Report{
				Message: fmt.Sprintf("the claim %q rests on nothing", name),
				Hint:    `add evidence = ["test:…", "source:…"], or opinion = true`,
				Path:    row(plan.KindClaim, i, ""),
			})
			continue
		}
		words := bareWords(c.Says)
		if words == " " && !p.listed(c.ID) {
			report(Report{
				Message: fmt.Sprintf("the claim %q answers for nothing that is said", name),
				Hint:    "add says = the words of the sentence it answers for, or list it in claims of that step",
				Path:    row(plan.KindClaim, i, ""),
			})
			continue
		}
		if words == " " || strings.Contains(said(), words) || p.listedIn(bare, c.ID) {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("the claim %q answers for words that nobody says: %q", name, shorten(c.Says)),
			Hint:    "copy the words from the sentence it answers for, or take the claim out",
			Path:    row(plan.KindClaim, i, "says"),
		})
	}
}

// restsOnNothing holds for a claim that rests on nothing.
func restsOnNothing(c *plan.Claim) bool {
	return len(c.Evidence) == 0 && !c.Opinion && c.Verify == ""
}

// adriftWords are what the claims that rest on nothing answer for.
func (p *Pass) adriftWords() []string {
	var words []string
	for i := range p.Plan.Claims {
		if c := &p.Plan.Claims[i]; restsOnNothing(c) && bareWords(c.Says) != " " {
			words = append(words, bareWords(c.Says))
		}
	}
	return words
}

// listed holds where a step lists the claim.
func (p *Pass) listed(id string) bool {
	return slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool { return slices.Contains(s.Claims, id) })
}

// listedIn holds where one of some steps lists the claim.
func (p *Pass) listedIn(steps map[int]bool, id string) bool {
	for i := range p.Plan.Steps {
		if steps[i] && slices.Contains(p.Plan.Steps[i].Claims, id) {
			return true
		}
	}
	return false
}

// saidWords are the words of all spoken lines, one space around each and two
// between lines: a claim answers for words of one line.
func (p *Pass) saidWords() string {
	var b strings.Builder
	for i := range p.Plan.Steps {
		for _, l := range slices.Concat(p.Plan.Steps[i].Lines, p.Plan.Steps[i].OtherSaid) {
			if l.Kind == plan.Spoken {
				b.WriteString(bareWords(l.Print))
			}
		}
	}
	return b.String()
}

// bareWords are a text's words without marks, a space around each, as
// plan/claim compares them.
func bareWords(text string) string {
	var b strings.Builder
	b.WriteByte(' ')
	for _, w := range prose.Words(text) {
		b.WriteString(prose.Fold(w.Of(text)))
		b.WriteByte(' ')
	}
	return b.String()
}

// asserted is the kind of a claim that wants evidence, in words; empty for what
// other rules speak of (hedges, universals, part numbers) and for times.
func asserted(c claim.Claim) string {
	if !c.NeedsEvidence || c.Has(claim.Hedge) {
		return ""
	}
	for _, k := range []struct {
		kind claim.Kind
		word string
	}{
		{claim.Legal, law}, {claim.Compatibility, fitted}, {claim.Causal, causal}, {claim.Frequency, frequent},
		{claim.Comparison, compared}, {claim.Cost, costly},
	} {
		if c.Has(k.kind) && !(k.kind == claim.Frequency && says(fold(c.Text), "as many", "as often")) {
			return k.word
		}
	}
	// How a thing looks is there to be seen; how many or how much is not.
	if c.Has(claim.Spec) && slices.ContainsFunc(c.Values, ofTheObject) {
		return made
	}
	return ""
}

const causal, law, made, compared, fitted, frequent, costly = "a cause", "law", "how it is made", "a comparison", "what fits", "how often", "a cost"

// ofTheObject holds for a value of the thing itself: no time, no turn of the
// hand, no share, and none that a fact gives.
func ofTheObject(v claim.Value) bool {
	if v.Quoted || v.Part != "" {
		return false
	}
	unit, ok := trade.LookupUnit(v.Unit)
	if !ok {
		return true
	}
	switch unit.Dimension() {
	case trade.Time, trade.Angle, trade.Ratio:
		return false
	}
	return !travelled(unit)
}

// inSight holds for a line whose figures are small counts without a unit: two
// rollers, four clicks. The camera shows them.
func (s said) inSight() bool {
	return !slices.ContainsFunc(s.Values, func(v claim.Value) bool {
		_, unit := trade.LookupUnit(v.Unit)
		return ofTheObject(v) && (unit || v.Number > atAGlance)
	})
}

// atAGlance is how many of a thing are counted in a picture. Common practice,
// no source.
const atAGlance = 12

// tellsOfTheAct holds for a line that says what the act in the picture is good
// for: "That gives the belt some slack."
func tellsOfTheAct(folded string) bool {
	if says(folded, "otherwise", "enough to", "so that nothing", "so that we", "so that you", "so nothing", "so we can", "so you can") || says(folded, "until it", "until they") && !says(folded, "because") {
		return true
	}
	words := strings.Fields(folded)
	if len(words) > 0 && !slices.Contains(openers, words[0]) && strings.Contains(folded, " will ") && promise().MatchString(folded) {
		return true
	}
	return len(words) > 1 && slices.Contains([]string{"that", "this", "it", "which"}, words[0]) &&
		slices.Contains([]string{"gives", "lets", "leaves", "frees", "takes", "keeps", "holds", "opens", "loosens"}, words[1])
}

// promise is what an order comes with: "tap the hose, and more will let go".
var promise = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` and (\S+ ){1,3}will `)
})

// openers open a statement; what opens otherwise beside a promise is an order.
var openers = []string{"the", "a", "an", "this", "that", "these", "those", "it", "they", "some", "most", "every", "any", "all", "old", "new", "no"}

// whyOfAnOrder holds for a line of hands-on work that gives an order its reason
// in the thing at hand ("lift it in one piece, because it goes back"), and in a
// detour for one that points at what its test has shown ("that is your rattle").
func (p *Pass) whyOfAnOrder(s said) bool {
	step := &p.Plan.Steps[s.step]
	folded := fold(s.line.Print)
	if step.OnlyIf.Test != "" && pointing().MatchString(folded) {
		return true
	}
	if head, _, or := strings.Cut(folded, " or the "); or && step.HandsOn() && !stated(strings.Fields(head)) && !strings.Contains(head, " . ") {
		return true // "no pressure, or the plastic melts"
	}
	head, reason, found := strings.Cut(folded, " because ")
	if !found || !step.HandsOn() || says(folded, "always", "usually", "every", "never") {
		return false
	}
	words := strings.Fields(strings.TrimPrefix(reason, "of "))
	if len(words) == 0 || !slices.Contains(atHand, words[0]) {
		return false
	}
	_, _, thenDo := strings.Cut(reason, " so ")
	return thenDo || !stated(strings.Fields(head))
}

// ofThisOne holds for a line of work or of a test that tells what the filmed
// object does: "it keeps coming back".
func (p *Pass) ofThisOne(s said) bool {
	step := &p.Plan.Steps[s.step]
	words := strings.Fields(fold(s.line.Print))
	return len(words) > 0 && words[0] == "it" && (step.HandsOn() || len(step.Tests) > 0)
}

// verdict holds for a line of a test that says what its reading leaves: "it lies
// flat, so the height is right", "one of them is twice the other".
func (p *Pass) verdict(s said) bool {
	words := strings.Fields(fold(s.line.Print))
	if len(p.Plan.Steps[s.step].Tests) == 0 || len(words) == 0 {
		return false
	}
	return slices.Contains([]string{"it", "mine", "this", "that", "there"}, words[0]) && slices.Contains(words, "so") || words[0] == "one" && s.Has(claim.Comparison)
}

// wordless holds for a line without a verb: "all of them, left and right".
func wordless(folded string) bool {
	words := strings.Fields(strings.ReplaceAll(folded, " . ", " "))
	const short = 7
	return len(words) <= short && !slices.ContainsFunc(words, func(w string) bool {
		return len(w) > 3 && (strings.HasSuffix(w, "s") || strings.HasSuffix(w, "ed") || strings.HasSuffix(w, "ing")) ||
			slices.Contains([]string{"is", "are", "was", "were", "has", "have", "had", "do", "does", "can", "will", "fail", "leak", "break", "rust", "wear", "crack", "stick", "go", "come", "look", "fit", "get", "need"}, w)
	})
}

// atHand open a reason that lies in the thing in the picture.
var atHand = []string{"it", "this", "that", "the", "there", "they", "your", "my", "here"}

// pointing is a line that names what was looked for.
var pointing = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^ (?:and )?(?:that|this|there|here)(?: is|'s) (?:your|the|our|my) `)
})

// stated holds for words that have the verb of a statement: "slack gives the
// belt a short life". A plural behind a word for how many or which is none.
func stated(words []string) bool {
	if len(words) > 0 && slices.Contains(openers, words[0]) && words[0] != "the" && words[0] != "that" {
		return true // "these discs burst"
	}
	for i, w := range words {
		switch {
		case i == 0, slices.Contains(counting, words[i-1]):
		case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"), len(w) > 3 && strings.HasSuffix(w, "ed"), slices.Contains(finite, w):
			return true
		}
	}
	return false
}

// counting stand before a noun, finite are verbs of a statement without an "s".
var (
	counting = []string{"the", "a", "an", "both", "all", "these", "those", "two", "three", "four", "its", "your", "my", "each", "some", "of"}
	finite   = []string{"is", "are", "was", "were", "has", "have", "had", "do", "can", "can't", "will", "won't", "must", "may", "came", "went", "broke", "fell", "got"}
)

// reports holds for a line that tells what happened to the filmed object or to
// the viewer's, and claims nothing of others: "it had blocked the jet", "my bulb
// was the fault", "your washer has stopped".
func reports(folded string) bool {
	words := strings.Fields(folded)
	if len(words) == 0 || says(folded, "because", "always", "usually", "every", "these") {
		return false
	}
	return says(folded, "had", "my", "mine", "this one") || (words[0] == "your" || words[0] == "you" || words[0] == "if" && len(words) > 1 && words[1] == "your") && says(folded, "has", "have")
}

// shorten keeps a quoted line to what a message has room for.
func shorten(text string) string { return diag.Shorten(text, 60) }
