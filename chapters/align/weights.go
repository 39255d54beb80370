package align

// weights are what the search for the steps goes by, as natural logarithms of
// likelihood ratios unless said otherwise.
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

	chatAdded, chatStep float64 // words of talk beside the work …
	chatPlanned         float64 // … and what is left of that for one that is planned
	workAdded, workStep float64 // words of hands at work
	newAdded, newStep   float64 // other words that are neither common nor planned

	open     float64 // a step begins before a word, silence unknown
	gapSome  float64 // after a silence of 0.25 s
	gapLong  float64 // after a silence of a second
	cue      float64 // at the head of a cue without silence
	hidden   float64 // where a cue hides a silence, all its partings together
	lead     float64 // at a word that leads on
	sentence float64 // after a full stop
	inside   float64 // inside a sentence, where captions have full stops

	ordered float64 // 0 to 1: how far a step's words come in the planned order
	turn    float64 // a step comes to its second part

	skip, skipMore, skipMost float64 // one step left out, each further one, the most
	back                     float64 // a step before the one just said
	add                      float64 // talk beside the work begins
	resume                   float64 // a step goes on after it
	halt                     float64 // share of a parting's weight that counts for these two

	said    float64 // chance from which a step counts as said
	early   float64 // share of the likeliest place's chance from which an earlier one is the start …
	telling float64 // … and of what the words there say for the step
}

func usualWeights() weights {
	return weights{
		lambda: 0.65, film: 33, each: 16, small: 0.83, general: 0.9, smooth: 7.4, level: 0.45, hint: 0.4,
		alike: 0.23, sound: 0.53, farthest: 0.395, both: 0.28,
		chatAdded: 0.32, chatStep: -0.49, chatPlanned: 0.68,
		workAdded: -0.18, workStep: 0.21, newAdded: 0.115, newStep: -0.136,
		open: -6.36, gapSome: 2.84, gapLong: 5.72, cue: 0.38, hidden: 3.67, lead: 2.22, sentence: 1.46, inside: -2.05,
		ordered: 0.87, turn: -1.38, skip: -2.5, skipMore: -0.66, skipMost: -3.46, back: -5,
		add: -1.04, resume: -0.4, halt: 0.445,
		said: 0.7, early: 0.6, telling: 0.8,
	}
}
