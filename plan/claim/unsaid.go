package claim

// What has the cue of a claim and claims nothing: a scene that an order is for, what
// the speaker does and did, figures of speech, and what is left to others.

// unsaid drops the kinds that lie only in the turn of a sentence. Kinds that state a
// value stay: a scene and an order can hold one. It is true where nothing is left.
func (r *reader) unsaid() bool {
	if r.found == 0 {
		return false
	}
	if r.invites() {
		r.found = 0
	}
	if r.staged() || r.concedes() {
		r.drop(Hedge, Universal, Comparison, Frequency, Legal)
	}
	if r.habit() {
		r.drop(Frequency)
	}
	if r.defers() {
		r.drop(Legal)
	}
	if r.chosen() {
		r.drop(Spec, Measurement)
	}
	if r.thrift() {
		r.drop(Cost)
	}
	if r.found == 0 {
		r.values = r.values[:0]
	}
	return r.found == 0
}

func (r *reader) drop(list ...Kind) {
	for _, k := range list {
		r.found &^= bitOf(k)
	}
}

// invites reads for whom a video is: "if your gate squeals, this one's for you".
func (r *reader) invites() bool {
	if !r.is(0, "if") {
		return false
	}
	for i := 2; i < len(r.words); i++ {
		switch {
		case r.is(i, "for") && r.is(i+1, "you") && r.in(i-1, r.known.be) && (r.is(i-2, "this") || r.is(i-2, "that") || r.is(i-2, "one")),
			r.is(i, "stay") && (r.is(i+1, "with") || r.is(i+1, "tuned")),
			r.is(i, "in") && r.is(i+1, "the") && r.is(i+2, "right") && r.is(i+3, "place"):
			return true
		}
	}
	return false
}

// staged holds for a scene and nothing but what to do in it: "if it trips once a day,
// leave it off". The scene is not said to be so.
func (r *reader) staged() bool {
	if !r.is(0, "if") && !r.is(0, "when") && !r.is(0, "unless") {
		return false
	}
	does := 0
	for i := 2; i < len(r.words); i++ {
		switch m := r.words[i].mood; {
		case m == order:
			does = i
		case does > 0 && m != own:
			return false // a reason, or what comes of it
		}
	}
	return does > 0
}

// concedes reads "not with a hammer, however often you've seen it" and "no matter how
// careful you are, wear them": whatever is so, the order stands.
func (r *reader) concedes() bool {
	granted, orders := false, r.is(0, "not") || r.is(0, "never")
	for i := range r.words {
		granted = granted || r.is(i, "however") && !r.words[min(i+1, len(r.words)-1)].stopped || r.is(i, "whatever") ||
			r.is(i, "no") && r.is(i+1, "matter") || r.is(i, "as") && r.is(i+1, "often") && r.is(i+2, "as") && r.is(i+3, "you")
		orders = orders || r.words[i].mood == order
	}
	return granted && orders
}

// habit holds where how often something is, is how often the speaker does it: "I
// grease mine every spring". How often one sees or changes a thing tells of the thing.
func (r *reader) habit() bool {
	k := &r.known.classes
	acts := false
	for i := range r.words {
		w := &r.words[i]
		switch {
		case w.mood == own && w.classes&k.self != 0:
			next := i + 1
			for r.in(next, k.often) || r.is(next, "always") || r.is(next, "just") || r.is(next, "also") {
				next++
			}
			if r.in(next, k.seeing|k.modal|k.have|k.be) {
				return false
			}
			acts = true
		case w.mood != own && (w.classes&k.often != 0 || w.text == "every" || w.text == "once" || w.text == "twice" || w.text == "most"):
			return false
		}
	}
	return acts
}

// defers holds for a sentence that leaves the work to who may do it: "that's for
// somebody with a licence". That the law asks for one is a claim.
func (r *reader) defers() bool {
	const reach = 5
	k := &r.known.seconds
	leaves := false
	for i := range r.words {
		switch w := r.words[i].text; {
		case w == "must" || w == "required" || w == "allowed" || w == "permitted" || w == "only",
			(w == "has" || w == "have" || w == "need" || w == "needs") && r.is(i+1, "to"),
			r.second(i, k.law) && !r.second(i, k.licensed) && !isPaper(w):
			return false
		case w == "for" || w == "to" || w == "get" || w == "call" || w == "ring" || w == "ask" || w == "find" || w == "hire":
			for j := i + 1; j < len(r.words) && j <= i+reach && !r.words[j].stopped; j++ {
				leaves = leaves || r.second(j, k.licensed|k.licensee) || r.is(j, "trained") || isPaper(r.words[j].text)
			}
		}
	}
	return leaves
}

// isPaper holds for what somebody has who may do the work, or a thing that is still the
// maker's to mend.
func isPaper(w string) bool {
	switch w {
	case "licence", "license", "ticket", "certificate", "papers", "warranty", "guarantee":
		return true
	}
	return false
}

// chosen reads "eighty grit is what I use": the speaker's choice and no property.
func (r *reader) chosen() bool {
	for i := 1; i+2 < len(r.words); i++ {
		if r.is(i, "what") && r.in(i-1, r.known.be) && r.in(i+1, r.known.self) {
			switch r.words[i+2].text {
			case "use", "used", "take", "took", "had", "have", "like", "want", "wanted", "prefer", "do", "did", "buy", "bought":
				return true
			}
		}
	}
	return false
}

// thrift reads "you just saved twenty quid": talk at the end of a test, no price.
func (r *reader) thrift() bool {
	for i := 1; i < len(r.words); i++ {
		if r.is(i, "saved") && (r.is(i-1, "just") || r.is(i+1, "yourself")) {
			return true
		}
	}
	return false
}
