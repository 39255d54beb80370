package align

// weights are what the search for the steps goes by, as natural logarithms of
// likelihood ratios unless said otherwise. All but the last four
// were fitted to the truth of many edits by likelihood (quality_test.go says
// which): what an edit's true starts and its talk beside the work are given by
// the model, not how many fall within so many seconds. They are the mean of fits
// on halves of the plans, which did better on both halves than any of the fits;
// backNear was then raised by hand, for steps said out of order.
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
		lambda: 0.037, film: 135.6, each: 4.238, small: 1.38,
		trust: 0.78, general: 0.995, smooth: 13.84, level: 0.209, hint: 0.481,
		alike: 0.226, kin: 0.141,
		bentTalk: 0.199, bentStep: 0.014,
		open: -6.152, gapSome: 2.094, gapLong: 5.41, gapWork: 7.556, cue: -0.613, hidden: 3.587,
		lead: 4.131, link: 0.399, dangling: -0.549, clinging: -1.113, sentence: 2.868, inside: -2.565,
		ordered: 0.929, turn: -1.342, hasty: -3.347, linger: 0.851, lengthy: 0.292,
		skip: -0.493, skipMore: -0.175, skipMost: -2.493, passed: 0.707, cut: -0.236, cutMore: -1.823,
		back: -7.459, backNear: -1.4, backMore: -1.011, once: 4.045,
		add: 1.054, resume: 0.531, halt: 0.841,
		said: 0.6, early: 0.8, telling: 0.7, orderly: 0.4,
	}
}
