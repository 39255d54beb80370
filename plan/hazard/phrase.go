package hazard

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// phrase is a way of saying how to keep clear that has no act and its thing for
// the rules to meet: "goggles on", "doors wide open", "keep your hands behind the
// fence". A sentence without one of the hints, and one of the ends after it, is none:
// to look for these costs less than the form.
type phrase struct {
	hints    []string
	ends     []string // any where there are none
	families []string
	form     func() *regexp.Regexp
	lasts    bool // power is taken away, until it comes back
}

func said(form string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(form) })
}

// putOn is gear that goes on, in either order: "goggles and gloves on", "on with
// the mask". What lies on a bench is not on.
func putOn(gear string) func() *regexp.Regexp {
	return said(`\b(?:` + gear + `)\b(?:,? (?:and )?\w+){0,4}? on(?:[.,;:!]|$| (?:before|and|first|now|for|please|while|here|when|until|so|because|everybody)\b)|\bon (?:go|goes|with) (?:the |your |my )?(?:\w+ (?:and )?){0,3}(?:` + gear + `)\b|\b(?:wear|put on) (?:\w+ ){0,4}(?:` + gear + `)\b`)
}

// powerWords are one of them in whatever is said of power.
var powerWords = []string{"plug", "power", "mains", "electricity", "breaker", "current"}

var (
	backWords  = []string{" in", " on"}
	clearWords = []string{" away", " clear", " out", " off", " behind", " back"}
)

// phrases are common practice in how people speak, no source.
var phrases = []phrase{
	{hints: powerWords, ends: []string{" off", " out"}, families: []string{"mains-shock", "rotating-parts", "power-tool", "water-electric"}, lasts: true,
		form: said(`\b(?:power|mains|electricity|breaker|current) (?:is |goes |comes |stays )?off\b|\bplug(?:'s| is| comes| stays)? out(?:[.,;:!]|$| (?:of the (?:wall|socket)|first|before|now|and)\b)`)},
	{hints: []string{"gas"}, ends: []string{" off"}, families: []string{"gas-leak"}, form: said(`\bgas (?:is |goes |stays )?off\b`)},
	{hints: []string{"two "}, ends: []string{"people", " of us", " of you", "pairs of"}, families: []string{"heavy-lift"},
		form: said(`\btwo (?:people|of us|of you|pairs of hands) (?:for|on|to|at|lift|carry)\b`)},
	{hints: []string{"somebody", "someone", "mate", "friend", "neighbour", "helper"}, ends: []string{"other end"}, families: []string{"heavy-lift"},
		form: said(`\b(?:somebody|someone|mate|friend|neighbour|helper) (?:takes |lifts |on |at |has )?(?:at )?the other end\b`)},
	{hints: []string{"goggles", "glasses", "eye protection", "face shield", "visor"}, families: []string{"eye-debris"},
		form: putOn("goggles|glasses|eye protection|face shield|visor")},
	{hints: []string{"ear def", "ear plug", "earplug", "ear muff", "earmuff", "ear prot", "hearing prot"}, families: []string{"hearing"},
		form: putOn("ear defenders|ear ?plugs|ear ?muffs|ear protection|hearing protection")},
	{hints: []string{"glove", "gauntlet"}, families: []string{"chemical-skin-lung", "sharp-edge", "battery-chemical"},
		form: putOn("gloves?|gauntlets")},
	{hints: []string{"mask", "respirator"}, families: []string{"chemical-skin-lung", "asbestos-dust", "lead-hazard"},
		form: putOn("mask|dust mask|respirator")},
	{hints: []string{"hand", "finger", "sleeve", "hair", "feet", "arms", "face", "loose "}, ends: clearWords, families: []string{"power-tool", "rotating-parts", "crush-pinch", "sharp-edge"},
		form: said(`\bkeep (?:your |both |all )?(?:hands?|fingers|hair|sleeves|feet|arms|face|loose \w+)(?:(?:,| and) (?:your )?\w+){0,2} (?:well |right |far )?(?:away|clear|out|off|behind|back)\b|\b(?:hands?|fingers|sleeves|hair) (?:stay|stays|kept|go|well) (?:well |right )?(?:away|clear|out|off|behind|back)\b`)},
	{hints: []string{"ladder", "foot of", "bottom"}, families: []string{"height-fall"},
		form: said(`\b(?:hold|holds|held|foots|steady|steadies|tie|tied|lash|lashed|strap|strapped)\b[^.]*\b(?:ladder|foot of it|bottom rung)\b|\b(?:somebody|someone|mate|friend|helper|partner|neighbour|wife|husband)\b[^.]* (?:at|on) the (?:foot|bottom) of\b|\bladder\b[^.]*\b(?:held|tied|lashed|strapped|hold (?:it|the foot|the bottom))\b`)},
	{hints: []string{"door", "window"}, ends: []string{" open"}, families: []string{"carbon-monoxide", "fuel-vapour", "chemical-skin-lung"},
		form: said(`\b(?:doors?|windows?)\b (?:\w+ ){0,3}open\b(?:[.,;:!]|$| (?:before|and|first|now|for|while|so|because)\b)`)},
	{hints: []string{"battery", "negative", "minus"}, ends: []string{" off"}, families: []string{"electric-short"},
		form: said(`\b(?:battery|negative(?: lead| cable| clamp| terminal)?|minus(?: lead| cable| clamp)?) (?:is |comes |goes )?off\b`)},
	{hints: []string{"plug"}, ends: []string{"lead", " cap", " wire", " boot"}, families: []string{"rotating-parts"},
		form: said(`\b(?:take|pull|unplug|slip|draw) (?:\w+ ){0,2}plug (?:lead|cap|wire|boot)\b|\bplug (?:lead|cap|wire|boot)s? (?:is |comes |goes )?off\b`)},
	{hints: []string{"flame", "smok", "spark"}, families: []string{"fuel-vapour"},
		form: said(`\b(?:no|nothing with a|away from|far from|keep) (?:\w+ ){0,3}(?:flames?|smoking|sparks)\b|\bnobody smokes\b`)},
	{hints: []string{"extinguisher", "fire blanket", "bucket of water"}, families: []string{"hot-work-fire"},
		form: said(`\b(?:extinguisher|fire blanket|bucket of water)\b[^.]*\b(?:ready|beside|hand|reach|next to|by)\b`)},
	{hints: []string{"kids", "child", "pets", "the dog"}, ends: []string{" away", " out", " clear", " back"}, families: []string{"bystander-child"},
		form: said(`\bkeep (?:\w+ ){0,4}(?:kids|children|child|pets|dog)\b[^.]* (?:away|out|clear|back)\b`)},
}

// poweredUp is power that comes back in as few words as it was taken away: "plug
// in", "breaker on".
var poweredUp = said(`\b(?:plug (?:it |that |her )?(?:back )?in|(?:power|mains|electricity|breaker|current) (?:is |comes |goes )?(?:back )?on|plug(?:'s| is| goes)? (?:back )?in)(?:[.,;:!]|$| (?:again|and|now|at|for|then|first)\b)`)

// denied are words that take a phrase back: "no need for gloves".
var denied = said(`\b(?:no need|without|don't need|do not need|needn't|don't bother|never bother|forget|if you like|never mind|(?:never|don't|do not|didn't|not|nobody) (?:wears?|put)|if the|when the|trips?)\b`)

// heedPhrases notes what a text of the narration says in such phrases, sentence
// by sentence.
func (r *reader) heedPhrases(k int32) {
	src := &r.sources[k]
	if src.kind != "say" && src.kind != "do" || src.text == nil {
		return
	}
	low := strings.ToLower(src.print)
	if len(low) != len(src.print) {
		return // a letter that changes its length: places would be off
	}
	var live []*phrase // those whose hints the text has
	if src.kind == "say" {
		for i := range phrases {
			if p := &phrases[i]; hinted(low, p.hints, p.ends) {
				live = append(live, p)
			}
		}
	}
	power := hinted(low, powerWords, backWords)
	if !power && live == nil {
		return
	}
	for from := 0; from < len(low); {
		to := len(low)
		if end := strings.IndexAny(low[from:], ".!?\n"); end >= 0 {
			to = from + end + 1
		}
		sentence := low[from:to]
		if power && hinted(sentence, powerWords, backWords) && poweredUp().MatchString(sentence) {
			r.powered = true
		}
		for _, p := range live {
			r.heedPhrase(p, src, sentence, from)
		}
		from = to
	}
}

// heedPhrase does so of one phrase in the sentence that stands at a byte of its text.
func (r *reader) heedPhrase(p *phrase, src *source, sentence string, from int) {
	if !hinted(sentence, p.hints, p.ends) {
		return
	}
	m := p.form().FindStringIndex(sentence)
	if m == nil || denied().MatchString(sentence) {
		return
	}
	at, _ := src.text.SourceSpan(from+m[0], from+m[1])
	for _, family := range p.families {
		r.avoided = append(r.avoided, avoidance{family: family, at: at + src.start, lasts: p.lasts})
	}
}

// hinted says whether one of the hints stands in a sentence, and one of the ends,
// if there are any, behind the first of them.
func hinted(sentence string, hints, ends []string) bool {
	first := len(sentence)
	for _, h := range hints {
		if at := strings.Index(sentence[:min(len(sentence), first+len(h)-1)], h); at >= 0 {
			first = at
		}
	}
	if first == len(sentence) || ends == nil {
		return first < len(sentence)
	}
	return slices.ContainsFunc(ends, func(e string) bool { return strings.Contains(sentence[first:], e) })
}
