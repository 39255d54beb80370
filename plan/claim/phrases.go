package claim

import "strings"

// A cue is a kind and the phrases that show it by themselves.
type cue struct {
	kind    Kind
	phrases []string
}

// cues are phrases whose meaning hardly depends on their neighbours. From the
// tiers of a hedge list tried on spoken instruction, and common English.
var cues = []cue{
	{Hedge, []string{"i reckon", "i believe", "i guess", "i 'd guess", "i assume", "i suppose", "i suspect", "i figure", "i imagine", "i 'd say", "i would say", "i want to say",
		"fairly sure", "pretty sure", "quite sure", "almost sure", "not sure", "not certain", "percent sure", "percent certain", "fairly certain", "pretty certain", "fairly confident", "not too sure",
		"in my opinion", "in my view", "in my experience", "to my knowledge", "as far as i know", "as far as i remember", "as far as i can tell", "if i remember", "if i recall", "if memory serves", "from memory",
		"off the top of my head", "don't quote me", "don't take my word", "correct me if", "my guess", "my hunch", "my understanding", "who knows", "give or take", "or thereabouts", "or so", "ballpark", "ish",
		"probably", "possibly", "perhaps", "maybe", "apparently", "presumably", "supposedly", "seemingly", "theoretically", "in theory", "likely", "unlikely", "conceivably", "hopefully", "as a rule", "more or less", "seems to", "seem to", "tends to", "tend to",
		"they say", "people say", "some say", "i heard", "i 've heard", "i 've read", "i was told", "someone told", "mate told", "mate says", "rumour has it", "the forum says", "the forums say", "the internet says", "so i 'm told", "reportedly", "allegedly", "supposed to be", "most likely"}},
	{Frequency, []string{"usually", "normally", "typically", "generally", "often", "sometimes", "frequently", "rarely", "seldom", "mostly", "most of the time", "in most cases", "nine times out of ten", "more often than not", "most of them", "most of these", "most of the ones", "half the time", "half of them", "half of these",
		"all of them", "all of these", "most common", "common fault", "common failure", "common problem", "known issue", "once in a while", "now and then", "now and again", "hardly ever", "hardly any", "every single one of", "every other one", "all the time", "of the time"}},
	{Hedge, []string{"of the time", "more often than not", "nine times out of ten"}},
	{Universal, []string{"every single", "every one of", "every time", "all of them", "all of these", "all of those", "they all", "nobody", "no one", "everyone", "everybody", "without fail", "guaranteed", "foolproof", "bulletproof", "can't go wrong", "can't fail", "no matter what", "no way", "nothing else",
		"works perfectly", "perfectly safe", "completely safe", "totally safe", "impossible", "forever", "for good", "for life", "good as new", "none of them", "none of these", "in every case", "only way", "no two", "100 percent", "whichever one you have"}},
	{Causal, []string{"because", "caused by", "causes", "due to", "that 's why", "which is why", "the reason", "is what kills", "is what makes", "comes from", "comes down to", "leads to", "which means", "which makes", "that makes", "as a result", "so it must", "so it has to", "brought on by", "thanks to", "the culprit", "otherwise"}},
	{Compatibility, []string{"fits all", "fits every", "fits any", "fits the", "will fit", "won't fit", "doesn't fit", "interchangeable", "interchange", "compatible", "drop-in", "straight in place", "drops straight in", "same part", "same one as", "works with", "works on all", "works on any", "swap straight", "direct replacement", "cross-reference", "shares the", "will do", "will go in here", "goes straight on", "straight swap"}},
	{Comparison, []string{"better than", "worse than", "more than the", "less than the", "twice as", "half as", "as good as", "as strong as", "the best", "the worst", "the strongest", "the cheapest", "the fastest", "the weakest", "the easiest", "half the"}},
	{Legal, []string{"illegal", "legal", "legally", "by law", "the law", "regulations", "regulation", "permit", "warranty", "guarantee is", "up to code", "to code", "building code", "certified", "approved", "registered fitter", "insurance", "licensed", "not allowed"}},
	{Cost, []string{"cost", "costs", "cheap", "cheaper", "expensive", "price"}},
	{Spec, []string{"single use", "one use", "single-use", "left-hand thread", "left-handed thread", "left hand thread", "reverse thread", "made of", "made from", "rated for", "rated at", "normally open", "normally closed", "self-locking"}},
	{PartNumber, []string{"part number"}},
}

func (r *reader) phrases() {
	for _, c := range cues {
		if !r.kinds[c.kind] && r.has(c.phrases...) && !(c.kind == Causal && r.isMotive()) && !(c.kind == Hedge && r.isIntent()) {
			r.add(c.kind)
		}
	}
	if i := strings.Index(r.line, " i think "); i >= 0 && !r.isIntent() && !r.has("i think that 's it", "i think that 's all", "i think that 's everything") {
		r.add(Hedge)
	}
}

// isMotive: a reason of the speaker's own is no claim about the object.
func (r *reader) isMotive() bool {
	return r.has("because i", "because we", "because you 'll")
}

// isIntent: a plan of the speaker's own is no hedge about the object.
func (r *reader) isIntent() bool {
	return len(r.figs) == 0 && r.has("i 'll probably", "we 'll probably", "i might", "we might", "i think we", "i think you", "i think i", "maybe we", "maybe i", "perhaps we")
}

// generals reads "always" and "never", which are claims of an object and
// ordinary words of an order: "never touch it".
func (r *reader) generals() {
	for i, w := range r.words {
		if w != "always" && w != "never" && w != "never," {
			continue
		}
		if i == 0 || i < 3 && order(r.words[i+1:]) && connectives[r.words[i-1]] {
			continue
		}
		subject := r.words[i-1]
		if subject == "you" || subject == "we" || subject == "i" || subject == "should" || subject == "must" || subject == "i've" && !r.has("come back") {
			continue
		}
		r.add(Universal)
		if r.has("if", "after", "once", "unless", "as long as") {
			r.add(Causal)
		}
	}
	if r.has("if", "or the", "or it") && !r.has("if you hear", "if you like") {
		for _, w := range r.words {
			if harms[w] {
				r.add(Causal)
			}
		}
	}
}

// modal reads "it should be about 25": of a thing, and not an expectation of
// the viewer, which hears, sees or feels.
func (r *reader) modal() {
	for i, w := range r.words {
		if !modals[w] {
			continue
		}
		first := 0
		for j := i - 1; j >= 0 && j > i-4; j-- {
			if w := r.words[j]; w == "you" || w == "we" || w == "i" || w == "they" {
				first = 1
			}
		}
		if first == 1 || w == "may" && i == 0 {
			continue
		}
		// "should" of a thing without a figure states what is expected.
		if (w == "should" || w == "ought") && len(r.values) == 0 {
			continue
		}
		if w == "may" || w == "could" {
			if r.has("be hot", "be live", "be sharp", "could you", "hurt", "start") {
				continue // the language of cautions
			}
		}
		r.add(Hedge)
	}
	for _, f := range r.figs {
		b := r.before(f.Start)
		if n := len(b); n > 0 && len(r.values) > 0 && f.Kind != prosePart {
			last := b[n-1]
			if (last == "a" || last == "an") && n > 1 {
				last = b[n-2]
			}
			if approximators[last] && (!order(r.words) || r.kinds[Hedge]) || last == "like" && n > 1 && (b[n-2] == "something" || b[n-2] == "somewhere") || last == "good" {
				r.add(Hedge)
			}
		}
	}
	if r.has("somewhere between", "somewhere around") {
		r.add(Hedge)
	}
}

// compared reads "-er than", "more ... than", "lasts longer".
func (r *reader) compared() {
	for i, w := range r.words {
		if w != "than" || i == 0 {
			continue
		}
		for j := i - 1; j >= 0 && j > i-4; j-- {
			p := r.words[j]
			if p == "rather" || p == "other" || p == "often" {
				break
			}
			if p == "more" || p == "less" || p == "better" || p == "worse" || strings.HasSuffix(p, "er") && len(p) > 4 {
				if i+1 < len(r.words) && !startsFigure(r, r.spans[i].End) {
					r.add(Comparison)
				}
				break
			}
		}
	}
}

func startsFigure(r *reader, at int) bool {
	for _, f := range r.figs {
		if f.Start > at && f.Start <= at+2 {
			return true
		}
	}
	return false
}

// property reads "the brown wire is live": an object, "is", a trade property.
func (r *reader) property() {
	for i, w := range r.words {
		if w != "is" && w != "are" && !strings.HasSuffix(w, "'s") && !strings.HasSuffix(w, "'re") || i == 0 && !strings.Contains(w, "'") {
			continue
		}
		for j := i + 1; j < len(r.words) && j < i+3; j++ {
			if properties[r.words[j]] && r.words[j-1] != "the" {
				r.add(Spec)
			}
		}
	}
}
