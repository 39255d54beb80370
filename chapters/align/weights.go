package align

// weights are what the search for the steps goes by, as natural logarithms of
// likelihood ratios unless said otherwise. All but the last five were fitted to the
// truth of many edits by likelihood (DEVELOPERS.md says which): what an edit's true
// starts and its talk beside the work are given by the model, not how many fall within
// so many seconds. They are the mean of two fits, which did better on edits that
// neither had seen than either of them. open and begin were then learned with the words
// of phrases.txt (learn_test.go).
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

	again float64 // how far a word counts that was said a moment ago

	bentTalk float64 // what of a word's bent to work speaks against talk beside it …
	bentStep float64 // … and for a step
	chat     float64 // what of the weight of words and pairs of talk speaks for it

	open          float64 // a step begins before a word, silence unknown …
	begin         signs   // … and what signs at the parting add
	aside, goesOn signs   // the same for talk beside the work that begins, and for a step that goes on after it

	phrases *phrases

	ordered float64 // 0 to 1: how far a step's words come in the planned order
	linger  float64 // 0 to 1: how far the words of a step are of the expected number
	hasty   float64 // another step begins in the first part of one, added to the cost …
	unripe  float64 // … and how fast less of that is added in later parts, as a power

	skip, skipMore, skipMost float64 // steps left out; for each of them; the most
	passed                   float64 // 0 to 1: how far one that is said elsewhere does not count among them
	first                    float64 // the plan's first step is left out, or comes after others, added to the cost
	cut, cutMore             float64 // the film ends before the last step; for each further one
	back                     float64 // a step before the one just said
	backNear, backMore       float64 // the one before it; for each further one
	once                     float64 // a step that is said elsewhere begins here, taken off
	add                      float64 // talk beside the work begins
	resume                   float64 // a step goes on after it

	beside  float64 // chance from which a word counts as talk beside the work
	said    float64 // chance from which a step counts as said
	early   float64 // share of the likeliest place's chance from which an earlier one is the start …
	telling float64 // … and of what the words there say for the step …
	orderly float64 // … which may be less for one in the plan's order
}

func usualWeights() weights {
	return weights{
		phrases: english().phrases,
		lambda:  0.0404, film: 109, each: 17.7, small: 1.24,
		trust: 0.81, general: 0.995, smooth: 14.56, level: 0.1659, hint: 0.604,
		alike: 0.227, kin: 0.06867,
		again:    0.738,
		bentTalk: 0.1442, bentStep: 0.013, chat: 0.5112,
		open:    -3.66,
		begin:   signs{4.23, -0.483, 1.63, 4.7, 7.16, 6.74, 3.11, 0.449, 1.53, -1.66, -0.253, -0.0806, 2.21, 0.762, -0.124, 0.0826},
		aside:   signs{4.55, -0.445, 1.38, 4.05, 4.92, 5.38, 2.63, 0.817, 1.42, -2.2, -0.0386, -0.702, 0.0103, -0.35, -0.373, 0.075},
		goesOn:  signs{4.55, -0.835, 1.36, 3.9, 4.03, 5.8, 3.85, 0.152, 2.02, -2.81, -0.244, -0.39, 0.518, -0.214, -0.39, 0.0924},
		ordered: 0.981, unripe: 0.486, hasty: -4.46, linger: 0.795,
		skip: -0.476, skipMore: -0.303, skipMost: -2.24, passed: 0.597, first: -2.73, cut: -0.352, cutMore: -2.85,
		back: -7.33, backNear: -2.27, backMore: -0.874, once: 3.25,
		add: -3.18, resume: -7.42,
		beside: 0.5, said: 0.5, early: 0.8, telling: 0.7, orderly: 0.4,
	}
}
