package hazard

import (
	"slices"
	"strings"

	"fixslate/plan"
)

// pastMax is how many things said before a sentence are kept in mind.
const pastMax = 96

// tokens are the words of a source, without part numbers of the plan: the TV-35K
// of a tap is no television.
func (r *reader) tokens(k int32) []token {
	text := r.sources[k].print
	toks := r.lex.tokens(r.toks[:0], text)
	if len(r.numbers) == 0 {
		return toks
	}
	for from := 0; from < len(text); {
		word, _, _ := strings.Cut(text[from:], " ")
		for _, number := range r.numbers[strings.TrimRight(word, ".,;:!?)")] {
			if to := from + len(number); strings.HasPrefix(text[from:], number) {
				toks = slices.DeleteFunc(toks, func(t token) bool { return from <= int(t.start) && int(t.end) <= to })
			}
		}
		from += len(word) + 1
	}
	return toks
}

// partNumbers are the part numbers of a plan by their first words.
func partNumbers(p *plan.Plan) map[string][]string {
	var all map[string][]string
	for i := range p.Parts {
		number := p.Parts[i].Number
		first, _, _ := strings.Cut(number, " ")
		if first == "" || slices.Contains(all[first], number) {
			continue
		}
		if all == nil {
			all = map[string][]string{}
		}
		all[first] = append(all[first], number)
	}
	return all
}

// read looks for hazards in one text of the action, sentence by sentence; what
// was named before is still in the reader's mind.
func (r *reader) read(f *finding, k int32) {
	r.toks = r.tokens(k)
	if src := &r.sources[k]; src.weight != unweighed {
		src.from = int32(len(r.done))
		r.done = append(r.done, r.toks...)
		src.to = int32(len(r.done))
	}
	for toks := range stretches(r.toks) {
		r.sentence(f, toks, k)
	}
	r.heedPhrases(k)
}

// sentence reads one sentence and keeps what it names.
func (r *reader) sentence(f *finding, toks []token, k int32) {
	s := &r.scene
	s.toks = toks
	z := here
	if r.sources[k].strict {
		z = told
	}
	r.cues = r.lex.find(r.cues[:0], toks, z, k)
	if r.sources[k].kind == "do" {
		r.imply(toks, k)
	}
	s.hits = r.cues
	r.lex.heads(toks, s.hits)
	r.lex.manner(toks, s.hits)
	s.object, s.strict, s.body = r.object, r.sources[k].strict, r.lex.own.body
	if s.strict {
		s.object = hit{}
	}
	r.named = s.resolve(r.named[:0], r.last())
	s.around = r.past
	r.using(toks)
	r.turn()
	r.judge(f, k)
	r.heed(k)
	for i := range s.hits {
		h := &s.hits[i]
		if h.implied || h.marks.empty() {
			continue
		}
		if !h.act && !h.quiet {
			r.behind.join(&h.marks)
		}
		if len(r.past) < pastMax {
			r.past = append(r.past, *h)
		}
	}
}

// turn forgets the states that the sentence's acts end: a cold stove that is
// being lit is cold no more.
func (r *reader) turn() {
	for i := range r.scene.hits {
		h := &r.scene.hits[i]
		if !h.act || h.quiet {
			continue
		}
		r.powered = r.powered || h.marks.has(r.lex.own.energise)
		h.marks.each(func(m uint16) { r.behind.cut(&r.lex.ends[m]) })
	}
}

// imply puts an act before a sentence of the action that has none: what stands
// there is done, however short it is said ("Up the stairs with it.").
func (r *reader) imply(toks []token, k int32) {
	if slices.ContainsFunc(r.cues, func(h hit) bool { return h.act }) {
		return
	}
	first := &toks[0]
	r.cues = slices.Insert(r.cues, 0, hit{
		marks: r.lex.implied[r.lex.own.busy], act: true, to: 1, text: k, start: first.start, end: first.end,
	})
}

// last is the thing that was named last, else the object.
func (r *reader) last() hit {
	for i := len(r.past) - 1; i >= len(r.subject.hits); i-- {
		if h := &r.past[i]; h.zone <= told && !h.act && !h.state && !h.modifier {
			return *h
		}
	}
	return r.scene.object
}

// using marks the tools in use: "with the saw", "use a saw".
func (r *reader) using(toks []token) {
	s := &r.scene
	s.used = append(s.used[:0], make([]bool, len(s.hits))...)
	for k := range s.hits {
		h := &s.hits[k]
		if h.act || h.state || h.modifier {
			continue
		}
		for i := int(h.from) - 1; i >= 0 && i >= int(h.from)-4 && !toks[i+1].bar; i-- {
			if toks[i].grammar&with != 0 {
				s.used[k] = true
			}
			if toks[i].grammar&(sub|coord) != 0 {
				break
			}
		}
	}
}

// judge lets the rules speak about the sentence.
func (r *reader) judge(f *finding, k int32) {
	s, src := &r.scene, &r.sources[k]
	s.sum(&r.behind, &r.lex.harmless)
	if !r.object.marks.empty() {
		s.harmless = r.behind.meets(&r.lex.harmless) // the camera beside an engine tames no engine
	}
	for i := range s.hits {
		h := &s.hits[i]
		r.told = r.told || h.act && !h.implied
		if h.act && !h.quiet && !h.implied && !src.mention && h.marks.has(r.lex.own.work) {
			r.works = true
		}
	}
	r.apply(&r.lex.rules, func(rl *rule, h *hit, by []*hit) {
		acted := !h.quiet && !src.mention && !r.staged && (h.act || !src.strict)
		r.add(f, rl, acted, by)
	})
}

// apply calls do for each rule of a book whose first term a hit of the scene
// meets, and others the rest, with all that meet it. Where there are no words only
// a tool in use can be the first.
func (r *reader) apply(book *rulebook, do func(rl *rule, h *hit, by []*hit)) {
	s := &r.scene
	r.due = book.due(r.due, s)
	for _, n := range r.due {
		rl := &book.rules[n]
		if s.toks == nil && rl.terms[0].kind != tool {
			continue
		}
		for i := range s.hits {
			h := &s.hits[i]
			if h.implied || !h.marks.meets(&rl.terms[0].a) {
				continue
			}
			by, ok := s.meets(rl, i, r.by[:0])
			r.by = by[:0]
			if ok {
				do(rl, h, by)
			}
		}
	}
}

// sum gathers the marks of the sentence; behind are those of all around it.
func (s *scene) sum(behind, harmless *set) {
	here, acts, things := &s.sums[inHere], &s.sums[inActs], &s.sums[inThings]
	*here, *acts, *things = set{}, set{}, s.object.marks
	for i := range s.hits {
		h := &s.hits[i]
		if h.act {
			acts.join(&h.marks)
		} else {
			things.join(&h.marks)
		}
		here.join(&h.marks)
	}
	s.sums[inAll] = *here
	s.sums[inAll].join(behind)
	s.harmless = s.sums[inAll].meets(harmless)
}

func (r *reader) add(f *finding, rl *rule, acted bool, by []*hit) {
	h := f.of(rl.class, rl.family, acted)
	h.strong = h.strong || rl.strong
	h.weak = min(h.weak, rl.weak)
	if rl.loose && len(by) > 1 {
		r.keep(&h.vague, by[:1])
		by = by[1:]
	}
	r.keep(&h.says, by)
}

// heed notes what a sentence of the narration, or a card, says about how to keep
// clear of a hazard.
func (r *reader) heed(k int32) {
	src := &r.sources[k]
	if src.kind != "say" && src.kind != "card" {
		return
	}
	r.apply(&r.lex.avoids, func(rl *rule, h *hit, _ []*hit) {
		if h.quiet {
			return
		}
		a := avoidance{family: rl.family, card: src.kind == "card", lasts: h.marks.has(r.lex.own.isolate)}
		if rl.class >= 0 {
			a.class = catalogue()[rl.class].ID
		}
		if !a.card {
			at, _ := src.text.SourceSpan(int(h.start), int(h.end))
			a.at = at + src.start
		}
		r.avoided = append(r.avoided, a)
	})
}

// tools lets rules speak that a tool in use meets alone.
func (r *reader) tools(f *finding) {
	s := &r.scene
	s.strict = false
	s.toks, s.hits, s.around, s.object = nil, r.cues[:0], r.past, r.object
	for i := range r.past {
		if r.past[i].zone == gear {
			s.hits = append(s.hits, r.past[i])
		}
	}
	r.cues = s.hits[:0]
	if len(s.hits) == 0 {
		return
	}
	s.used = s.used[:0]
	for range s.hits {
		s.used = append(s.used, true)
	}
	s.sum(&r.behind, &r.lex.harmless)
	r.apply(&r.lex.rules, func(rl *rule, _ *hit, by []*hit) {
		r.add(f, rl, r.works && !r.staged, by)
	})
}

// entire holds for a source that is shown whole, whatever word of it counts.
func (s *source) entire() bool { return s.kind == "tool" || s.kind == "supply" }

// spot is a stretch of a source's text.
type spot struct{ text, start, end int32 }

func (h *hit) spot() spot { return spot{h.text, h.start, h.end} }

func (r *reader) evidenceAt(at spot) Evidence {
	src := &r.sources[at.text]
	e := Evidence{Kind: src.kind, Path: src.path, Words: src.print[at.start:at.end]}
	switch {
	case src.entire():
		e.Words = src.print
	case src.text != nil:
		e.Start, e.End = src.text.SourceSpan(int(at.start), int(at.end))
		e.Start, e.End = e.Start+src.start, e.End+src.start
	}
	return e
}
