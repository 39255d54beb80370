package align

// weights are what the search for the steps goes by, as natural logarithms of
// likelihood ratios unless said otherwise. Those above the blank line at the end
// were fitted to the truth of many edits by likelihood (quality_test.go says
// which): what an edit's true starts and its talk beside the work are given by
// the model, not how many fall within so many seconds.
type weights struct {
	lambda float64 // share of a step's words that come from its plan, before any was heard
	film   float64 // words that belief is worth for the film …
	each   float64 // … and the film's share for each step
	small  float64 // how far a small word that is not planned speaks against a step, 1 as much as others

	general  float64 // how much of a word's usual share is ordinary talk, the rest is the plan
	smooth   float64 // words added to each step's size
	level    float64 // 0 to 1: how far steps count as of one size
	hint     float64 // what a word of the title is worth against one to be said
	alike    float64 // degree of a word that stands for another
	sound    float64 // degree of a word that sounds the same
	farthest float64 // distance of sounds at which the degree is nothing
	both     float64 // share of that left for a word that is planned as it stands

	bentTalk float64 // what of a word's bent to work speaks against talk beside it …
	bentStep float64 // … and for a step

	open     float64 // a step begins before a word, silence unknown
	gapSome  float64 // after a silence of 0.25 s
	gapLong  float64 // after a silence of a second
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
		lambda: 0.104, film: 33, each: 4.806, small: 1.42,
		general: 0.939, smooth: 8.563, level: 0.218, hint: 0.614,
		alike: 0.279, sound: 0.289, farthest: 0.395, both: 0.28,
		bentTalk: 0.301, bentStep: 0.055,
		open: -6.36, gapSome: 1.818, gapLong: 5.7, cue: -0.24, hidden: 3.5,
		lead: 3.662, link: 0.554, sentence: 2.276, inside: -2.655,
		ordered: 0.964, turn: -1.185, hasty: -2.302, lengthy: 0.2,
		skip: -1.3, skipMore: -0.877, skipMost: -3, passed: 0.203, cut: -0.085, cutMore: -0.675,
		back: -6.719, backNear: -2.604, backMore: -1.031, once: 4.631,
		add: 0.885, resume: -0.42, halt: 0.56,
		said: 0.7, early: 0.6, telling: 0.8,
	}
}
