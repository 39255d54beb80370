package hazard

import "slices"

// How a sentence says it: what is denied, what is only talked of, what "it" is,
// and which things an act is done to.

// deniedMax is how many words a negation reaches, boundMax how far an act's
// things may stand from it.
const (
	deniedMax = 9
	boundMax  = 12
)

// manner marks hits that are denied or only talked of.
func (x *lexicon) manner(toks []token, hits []hit) {
	x.deny(toks, hits)
	x.hush(toks, hits)
}

// deny goes through the negations. A denied act is no act, unless what is
// denied is a protection: then its denial is a state of its own ("without
// stands", "no need to unplug it").
func (x *lexicon) deny(toks []token, hits []hit) {
	at := 0
	for i := range toks {
		if toks[i].grammar&neg == 0 || toks[i].blank {
			continue
		}
		for at < len(hits) && hits[at].from <= int32(i) {
			at++
		}
		reach := i + 1
		for reach < len(toks) && reach <= i+deniedMax && !toks[reach].bar && !toks[reach].comma &&
			toks[reach].grammar&(endneg|sub) == 0 {
			reach++
		}
		for k := at; k < len(hits) && int(hits[k].from) < reach; k++ {
			h := &hits[k]
			var said set
			h.marks.each(func(m uint16) { said.join(&x.denied[m]) })
			if !said.empty() {
				h.marks, h.act, h.state = said, false, true
				continue
			}
			if h.act {
				h.marks, h.act = set{}, false
			} else if small(toks[i+1 : h.from]) {
				h.marks = set{} // "no gas", "not on the old ladder"
			}
		}
	}
}

// small holds for words that name nothing by themselves.
func small(toks []token) bool {
	return !slices.ContainsFunc(toks, func(t token) bool { return t.grammar&(prep|det|adj) == 0 })
}

// hush marks what is talked of: from an act of talking to the next clause with
// an act of its own, and all of a sentence that tells what others did or should
// do.
func (x *lexicon) hush(toks []token, hits []hit) {
	quiet, all := false, false
	last := int32(0)
	for k := range hits {
		h := &hits[k]
		if h.marks.has(x.own.hearsay) {
			all = true
		}
		if !h.act {
			h.quiet = quiet
			continue
		}
		if begins(toks, last, h.from) {
			quiet = conditional(toks, last, h.from)
		}
		if h.marks.has(x.own.talk) {
			quiet = true
		}
		h.quiet = quiet
		last = h.from + 1
	}
	if all {
		for k := range hits {
			hits[k].quiet = true
		}
	}
}

// begins says whether another clause has begun between two words.
func begins(toks []token, from, to int32) bool {
	for i := from; i <= to; i++ {
		if toks[i].bar || toks[i].comma && i > from || toks[i].grammar&(coord|sub|cond|endneg) != 0 {
			return true
		}
	}
	return from == 0
}

func conditional(toks []token, from, to int32) bool {
	for i := to; i >= from; i-- {
		if toks[i].grammar&cond != 0 {
			return true
		}
		if toks[i].bar || toks[i].comma {
			return false
		}
	}
	return false
}

// heads marks the hits that only qualify another word: the next hit, or a word
// of substance that the lexicon doesn't know. What they qualify is part of them
// where it is a fitting, a cover, a wire or the like: undoing the header nuts is
// work on the header. Size and weight stay behind: a washing machine's lid is
// light.
func (x *lexicon) heads(toks []token, hits []hit) {
	for k := range hits {
		h := &hits[k]
		if h.act || h.state {
			continue
		}
		to := int(h.to)
		if to >= len(toks) || toks[to].bar || toks[to].comma {
			continue
		}
		if k+1 < len(hits) && int(hits[k+1].from) == to {
			next := &hits[k+1]
			if h.modifier = !next.act && !next.state; h.modifier && next.marks.has(x.own.fitting) {
				own := h.marks
				for i, bulk := range x.bulk {
					own[i] &^= bulk
				}
				next.marks.join(&own)
			}
			continue
		}
		next := &toks[to]
		h.modifier = next.grammar == 0 && !next.blank && next.kind == 0
	}
}

// bound calls for the things that the act at v is done to, until do says that
// it has enough: the things of its clause, those behind the next acts where it
// names none ("undo and lift off the cover"), and those before it in the same
// clause ("the cover lifts off", but not "it pulls the paper"). An act that names nothing at all is done to
// the object of the plan.
func (s *scene) bound(v int, do func(*hit) bool) {
	act := &s.hits[v]
	some := false
	unknown := namesUnknown(s.toks, act)
	to := act.to // of the last thing
	hands := false
	for k := v + 1; k < len(s.hits); k++ {
		h := &s.hits[k]
		if (some || unknown) && s.another(to, h) {
			break
		}
		if int(h.from-act.from) > boundMax || parted(s.toks, act.from+1, h.from) || h.act && (some || unknown) {
			break
		}
		if h.act || h.modifier || h.state || (some || unknown) && !hands && beside(s.toks, h.from) {
			continue
		}
		some, to, hands = true, h.to, hands || h.marks.has(s.body)
		if do(h) {
			return
		}
	}
	for k := v - 1; k >= 0 && !(act.thirdPerson && (some || unknown)); k-- {
		h := &s.hits[k]
		if h.act || int(act.from-h.to) > boundMax/2 || parted(s.toks, h.to, act.from) || joined(s.toks, h.to, act.from) {
			break
		}
		if h.modifier || h.state {
			continue
		}
		some = true
		if do(h) {
			return
		}
	}
	if !some && !s.object.marks.empty() && !unknown {
		do(&s.object)
	}
}

// another says whether the comma before a thing ends what the act is done to:
// "cut the wires, three screws, pump out" cuts no screw, but "cut the wires, the
// ties and the tape" goes on.
func (s *scene) another(to int32, h *hit) bool {
	if h.act || !comma(s.toks, to, h.from) || joins(s.toks, to, h.from) {
		return false
	}
	for i := h.to; int(i) < len(s.toks) && !s.toks[i].bar && s.toks[i].grammar&sub == 0; i++ {
		if s.toks[i].grammar&coord != 0 {
			return false
		}
	}
	return true
}

// among says whether one of the words from one to another, both included, is so.
func among(toks []token, from, to int32, is func(*token) bool) bool {
	for i := from; i <= to && int(i) < len(toks); i++ {
		if is(&toks[i]) {
			return true
		}
	}
	return false
}

func comma(toks []token, from, to int32) bool {
	return among(toks, from, to, func(t *token) bool { return t.comma })
}

func joins(toks []token, from, to int32) bool {
	return among(toks, from, to, func(t *token) bool { return t.grammar&coord != 0 })
}

// beside says whether what begins at a word only says next to what something is
// done: "behind the fridge". Hands are another matter: "hold your hand near the
// silencer" is done to the silencer.
func beside(toks []token, at int32) bool {
	for i := at - 1; i >= 0 && i >= at-4 && !toks[i+1].bar && !toks[i+1].comma; i-- {
		switch g := toks[i].grammar; {
		case g&aside != 0:
			return true
		case g&(prep|infinitive|coord|object|sub) != 0 && g&det == 0:
			return false
		}
	}
	return false
}

// parted says whether a clause ends between two words.
func parted(toks []token, from, to int32) bool {
	return among(toks, from, to, func(t *token) bool { return t.bar || t.grammar&sub != 0 })
}

// joined says whether a comma or an "and" stands between two words.
func joined(toks []token, from, to int32) bool {
	return comma(toks, from, to) || joins(toks, from, to)
}

// namesUnknown says whether an act is done to something that the lexicon does
// not know.
func namesUnknown(toks []token, act *hit) bool {
	i := int(act.to)
	if act.gapped {
		i = int(act.from) + 1
	}
	for ; i < len(toks) && toks[i].grammar&(adverb|part|prep) != 0 && toks[i].grammar&det == 0; i++ {
		if toks[i].bar || toks[i].comma {
			return false
		}
	}
	if i >= len(toks) || toks[i].bar || toks[i].comma {
		return false
	}
	return toks[i].grammar&(det|adj|number) != 0 || toks[i].grammar == 0
}

// resolve puts what "it" and "them" stand for among the hits: the last thing
// that was named, else the object of the plan. It gives back dst, in which the
// hits stand if there is such a word.
func (s *scene) resolve(dst []hit, last hit) []hit {
	pronouns := 0
	for i := range s.toks {
		if s.toks[i].grammar&object != 0 && !s.toks[i].blank {
			pronouns++
		}
	}
	if pronouns == 0 {
		return dst
	}
	named := s.hits
	s.hits = dst
	k := 0
	for i := range s.toks {
		for ; k < len(named) && int(named[k].from) <= i; k++ {
			if h := &named[k]; !h.act && !h.state && !h.modifier {
				last = *h
			}
			s.hits = append(s.hits, named[k])
		}
		t := &s.toks[i]
		if t.grammar&object == 0 || t.blank || last.marks.empty() || t.grammar&det != 0 && names(s.toks, i) {
			continue
		}
		h := last
		h.act, h.state, h.quiet, h.implied, h.modifier, h.zone = false, false, false, true, false, here
		h.from, h.to = int32(i), int32(i+1)
		s.hits = append(s.hits, h)
	}
	s.hits = append(s.hits, named[k:]...)
	return s.hits
}

// names says whether a word that may be a pronoun goes with the noun behind it:
// "this bolt".
func names(toks []token, i int) bool {
	return i+1 < len(toks) && !toks[i+1].bar && !toks[i+1].comma &&
		toks[i+1].grammar&(part|prep|aux|coord|adverb|sub|infinitive|det) == 0
}
