package align

// weights are what the search for the steps goes by, as natural logarithms of
// likelihood ratios unless said otherwise. All but the last four
// were fitted to the truth of many edits by likelihood (quality_test.go says
// which): what an edit's true starts and its talk beside the work are given by
// the model, not how many fall within so many seconds. They are the mean of fits
// on one half of the plans and on the other, which did better on both than either.
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
	kin     float64 // … and of one that goes with another

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
	dangling float64 // after a word that leads to another, as "the" does
	clinging float64 // at a word that goes on with the one before, as "of" does
	sentence float64 // after a full stop
	inside   float64 // inside a sentence, where captions have full stops

	ordered float64 // 0 to 1: how far a step's words come in the planned order
	turn    float64 // a step comes to its second part
	linger  float64 // 0 to 1: how far those with more to say come to it later
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
	telling float64 // … and of what the words there say for the step …
	orderly float64 // … which may be less for one in the plan's order
}

func usualWeights() weights {
	return weights{
		lambda: 0.037, film: 108.5, each: 4.848, small: 1.369,
		trust: 0.78, general: 0.994, smooth: 13.5, level: 0.23, hint: 0.311,
		alike: 0.209, kin: 0.18,
		bentTalk: 0.199, bentStep: 0.036,
		open: -6.152, gapSome: 2.218, gapLong: 5.619, gapWork: 6.857, cue: -0.774, hidden: 3.899,
		lead: 3.827, link: 0.361, dangling: -0.535, clinging: -1.173, sentence: 2.926, inside: -2.641,
		ordered: 0.872, turn: -1.346, hasty: -3.173, linger: 0.7, lengthy: 0.37,
		skip: -0.538, skipMore: -0.103, skipMost: -2.359, passed: 0.543, cut: -0.188, cutMore: -1.819,
		back: -7.405, backNear: -1.969, backMore: -1.28, once: 3.978,
		add: 0.899, resume: 0.494, halt: 0.824,
		said: 0.6, early: 0.8, telling: 0.8, orderly: 0.5,
	}
}
