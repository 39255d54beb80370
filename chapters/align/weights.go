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

	again float64 // how far a word counts that was said a moment ago

	bentTalk float64 // what of a word's bent to work speaks against talk beside it …
	bentStep float64 // … and for a step

	open          float64 // a step begins before a word, silence unknown …
	begin         signs   // … and what signs at the parting add
	aside, goesOn signs   // the same for talk beside the work that begins, and for a step that goes on after it

	phrases *phrases

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

	beside  float64 // chance from which a word counts as talk beside the work
	said    float64 // chance from which a step counts as said
	early   float64 // share of the likeliest place's chance from which an earlier one is the start …
	telling float64 // … and of what the words there say for the step …
	orderly float64 // … which may be less for one in the plan's order
}

func usualWeights() weights {
	return weights{
		phrases: english().phrases,
		lambda:  0.041, film: 132.8, each: 4.78, small: 1.421,
		trust: 0.766, general: 0.995, smooth: 13.59, level: 0.196, hint: 0.604,
		alike: 0.227, kin: 0.081,
		again:    0.717,
		bentTalk: 0.162, bentStep: 0.013,
		open:    -7.087,
		begin:   signs{4.654, -0.072, 2.175, 4.688, 6.909, 6.567, 3.193, 0.503, 2.296, -2.34, -0.155, -0.255, 3.089, 0.84},
		aside:   signs{4.55, -0.287, 1.262, 4.219, 5.225, 5.289, 2.536, 0.836, 1.749, -2.226, -0.013, -0.4, 0.126, -0.295},
		goesOn:  signs{4.55, -0.901, 1.426, 3.845, 4.751, 5.637, 3.809, 0.077, 1.955, -2.518, -0.429, -0.426, 0.556, -0.229},
		ordered: 0.971, turn: -0.928, hasty: -3.631, linger: 0.853, lengthy: 0.387,
		skip: -0.724, skipMore: -0.346, skipMost: -2.679, passed: 0.619, cut: -0.234, cutMore: -2.83,
		back: -6.4, backNear: -1, backMore: -1.065, once: 4.045,
		add: -4.486, resume: -5.563,
		beside: 0.4, said: 0.55, early: 0.8, telling: 0.7, orderly: 0.4,
	}
}
