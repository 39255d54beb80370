package claim

// consequences reads cause and effect without a word for it: "if it clicks,
// it's the relay", "overtighten it and it strips", "too hot and it warps",
// "heat kills bearings".
func (r *reader) consequences() {
	k := kindsOfWord()
	condition := -1
	for i := range r.words {
		w := &r.words[i]
		if w.mood == question {
			return
		}
		switch {
		case w.text == "if" || w.text == "unless" || w.text == "when" || w.text == "without" || w.text == "too" && i+2 < len(r.words):
			if condition < 0 {
				condition = i
			}
		case w.text == "or" || w.text == "and" && (r.said(i, k.order) || i > 0 && r.words[i-1].mood == order):
			if condition < 0 {
				condition = i
			}
		}
		if condition < 0 || i <= condition || w.mood != statement {
			continue
		}
		if w.classes&k.harm != 0 && r.happens(i) {
			r.add(Causal)
			return
		}
		if r.diagnosed(condition, i) {
			r.add(Causal)
			return
		}
	}
}

// happens says whether a verb of failure is what a thing does: behind a
// subject, not behind an article or "to".
func (r *reader) happens(i int) bool {
	k := kindsOfWord()
	if i == 0 {
		return false
	}
	before := &r.words[i-1]
	if before.classes&(k.det|k.prep|k.be|k.self|k.order) != 0 && before.classes&k.modal == 0 && before.text != "it" && before.text != "they" {
		return before.classes&k.be != 0 && false
	}
	return before.text != "to" && before.text != "you" && before.text != "not"
}

// diagnosed reads "if it hums, it's the capacitor": a condition, then what it
// is or means.
func (r *reader) diagnosed(condition, i int) bool {
	k := kindsOfWord()
	if !r.is(condition, "if") && !r.is(condition, "when") || !r.in(i, k.be) || r.said(i, k.self) || i < condition+4 {
		return false
	}
	subject := r.is(i-1, "it") || r.is(i-1, "that") || r.is(i-1, "problem") || r.is(i-1, "fault")
	if !subject || r.words[i-1].mood != statement {
		return false
	}
	// the subject opens a clause of its own, behind the condition
	opens := r.words[i-1].stopped || r.is(i-2, "then") || r.is(i-1, "problem") || r.is(i-1, "fault")
	next := i + 1
	for r.in(next, k.lead) || r.is(next, "probably") || r.in(next, k.often) || r.is(next, "not") {
		next++
	}
	return opens && (r.in(next, k.det) || r.is(next, "because") || r.is(next, "time"))
}
