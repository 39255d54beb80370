package hazard

// pastMax is how many things said before a sentence are kept in mind.
const pastMax = 96

// read looks for hazards in one text of the action, sentence by sentence; what
// was named before is still in the reader's mind.
func (r *reader) read(f *finding, k int32) {
	r.toks = r.lex.tokens(r.toks[:0], r.sources[k].print)
	for from := 0; from < len(r.toks); {
		to := from + 1
		for to < len(r.toks) && to-from < stretchMax && r.toks[to].sentence == r.toks[from].sentence {
			to++
		}
		r.sentence(f, r.toks[from:to], k)
		from = to
	}
}

// sentence reads one sentence and keeps what it names.
func (r *reader) sentence(f *finding, toks []token, k int32) {
	s := &r.scene
	s.toks = toks
	r.cues = r.lex.find(r.cues[:0], toks, here, k)
	s.hits = r.cues
	r.lex.heads(toks, s.hits)
	r.lex.manner(toks, s.hits)
	s.object = r.object
	s.resolve(r.last())
	s.around = r.past
	r.using(toks)
	r.judge(f, k)
	for i := range s.hits {
		if h := &s.hits[i]; !h.implied && !h.marks.empty() && len(r.past) < pastMax {
			r.past = append(r.past, *h)
		}
	}
}

// last is the thing that was named last, else the object.
func (r *reader) last() hit {
	for i := len(r.past) - 1; i >= len(r.subject); i-- {
		if h := &r.past[i]; h.zone == here && !h.act && !h.state && !h.modifier {
			return *h
		}
	}
	return r.object
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
	s.here, s.all = set{}, r.object.marks
	for i := range s.hits {
		s.here.join(&s.hits[i].marks)
	}
	for i := range s.around {
		if h := &s.around[i]; !h.act && !h.quiet {
			s.all.join(&h.marks)
		}
	}
	s.all.join(&s.here)
	for i := range s.hits {
		h := &s.hits[i]
		if h.implied {
			continue
		}
		if h.act && !h.quiet && !src.mention && h.marks.has(r.lex.own.work) {
			r.works = true
		}
		h.marks.each(func(m uint16) {
			for _, n := range r.lex.first[m] {
				rl := &r.lex.rules[n]
				if rl.weak > 0 && s.all.meets(&r.lex.harmless) {
					continue
				}
				by, ok := s.meets(rl, i, r.by[:0])
				r.by = by[:0]
				if ok {
					if r.trace != nil {
						r.trace(rl)
					}
					acted := !h.quiet && !src.mention && !r.staged && (h.act || !src.spoken)
					f.add(shown{class: rl.class, family: rl.family, acted: acted, strong: rl.strong, weak: rl.weak, evidence: r.evidence(by)})
				}
			}
		})
	}
}

// tools lets rules speak that a tool in use meets alone.
func (r *reader) tools(f *finding) {
	s := &r.scene
	s.toks, s.hits, s.around, s.object = nil, nil, r.past, r.object
	for i := range r.past {
		if r.past[i].zone == gear {
			s.hits = append(s.hits, r.past[i])
		}
	}
	s.used = s.used[:0]
	s.here, s.all = set{}, set{}
	for i := range s.hits {
		s.used = append(s.used, true)
		s.here.join(&s.hits[i].marks)
	}
	for i := range s.around {
		if h := &s.around[i]; !h.quiet {
			s.all.join(&h.marks)
		}
	}
	for i := range s.hits {
		s.hits[i].marks.each(func(m uint16) {
			for _, n := range r.lex.first[m] {
				rl := &r.lex.rules[n]
				if rl.terms[0].kind != tool || rl.weak > 0 && s.all.meets(&r.lex.harmless) {
					continue
				}
				by, ok := s.meets(rl, i, r.by[:0])
				r.by = by[:0]
				if ok {
					f.add(shown{class: rl.class, family: rl.family, acted: r.works && !r.staged, strong: rl.strong, weak: rl.weak, evidence: r.evidence(by)})
				}
			}
		})
	}
}

// evidence turns hits into places of the plan.
func (r *reader) evidence(by []*hit) []Evidence {
	list := make([]Evidence, 0, len(by))
	for _, h := range by {
		src := &r.sources[h.text]
		e := Evidence{Kind: src.kind, Path: src.path, Words: src.print[h.start:h.end]}
		switch {
		case src.kind == "tool" || src.kind == "supply":
			e.Words = src.print
		case src.text != nil:
			e.Start, e.End = src.text.SourceSpan(int(h.start), int(h.end))
			e.Start, e.End = e.Start+src.start, e.End+src.start
		}
		list = append(list, e)
	}
	return list
}
