package align

// weights are what the search for the steps goes by, as natural logarithms of
// likelihood ratios unless said otherwise. All but the last three
// were fitted to the truth of many edits by likelihood (quality_test.go says
// which): what an edit's true starts and its talk beside the work are given by
// the model, not how many fall within so many seconds.
type weights struct {
	lambda float64 // share of a step's words that come from its plan, before any was heard
	film   float64 // words that belief is worth for the film …
	each   float64 // … and the film's share for each step
	small  float64 // how far a small word that is not planned speaks against a step, 1 as much as others

	trust   float64 // 0 to 1: how far words of a step count as independent of each other
	general float64 // how much of a word's usual share is ordinary talk, the rest is the plan
	smooth  float64 // words added to each step's size
	level   float64 // 0 to 1: how far steps count as of one size
	hint    float64 // what a word of the title is worth against one to be said
	alike   float64 // degree of a word that stands for another

	bentTalk float64 // what of a word's bent to work speaks against talk beside it …
	bentStep float64 // … and for a step

	open     float64 // a step begins before a word, silence unknown
	gapSome  float64 // after a silence of 0.25 s
	gapLong  float64 // after a silence of a second
	gapWork  float64 // after a long one, hands at work
	cue      float64 // at the head of a cue without silence
	hidden   float64 // where a cue hides a silence, all its partings together
	lead     float64 // at a word that leads on
	link     float64 // at a word that may lead on
	sentence float64 // after a full stop
	inside   float64 // inside a sentence, where captions have full stops

	ordered float64 // 0 to 1: how far a step's words come in the planned order
	turn    float64 // a step comes to its second part
	hasty   float64 // another begins before it has
	lengthy float64 // 0 to 1: how far steps with more to say last longer

	skip, skipMore, skipMost float64 // steps left out; for each of them; the most
	passed                   float64 // 0 to 1: how far one that is said elsewhere does not count among them
	cut, cutMore             float64 // the film ends before the last step; for each further one
	back                     float64 // a step before the one just said
	backNear, backMore       float64 // the one before it; for each further one
	once                     float64 // a step that is said elsewhere begins here, taken off
	add                      float64 // talk beside the work begins
	resume                   float64 // a step goes on after it
	halt                     float64 // share of a parting's weight that counts for these two

	said    float64 // chance from which a step counts as said
	early   float64 // share of the likeliest place's chance from which an earlier one is the start …
	telling float64 // … and of what the words there say for the step
}

func usualWeights() weights {
	return weights{
		lambda: 0.043, film: 29.26, each: 4.291, small: 1.275,
		trust: 0.8, general: 0.986, smooth: 11.6, level: 0.098, hint: 0.167,
		alike:    0.276,
		bentTalk: 0.239, bentStep: 0.06,
		open: -6.483, gapSome: 2.14, gapLong: 5.749, gapWork: 5.727, cue: -1.041, hidden: 3.963,
		lead: 4.173, link: 0.405, sentence: 2.73, inside: -2.644,
		ordered: 0.861, turn: -1.45, hasty: -3.053, lengthy: 0.109,
		skip: -0.777, skipMore: -0.162, skipMost: -2.358, passed: 0.254, cut: -0.011, cutMore: -1.252,
		back: -7.272, backNear: -1.817, backMore: -1.384, once: 3.911,
		add: 0.744, resume: 0.692, halt: 0.755,
		said: 0.65, early: 0.8, telling: 0.8,
	}
}
