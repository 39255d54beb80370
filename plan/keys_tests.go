package plan

import "cmp"

var causeRefs = []Kind{KindCause}

var cautionTable = table[Caution]{
	name: "caution", doc: "a caution in the author's own words", kind: KindCaution,
	common: func(v *Caution) *Common { return &v.Common },
	id:     func(v *Caution) *string { return &v.ID },
	naming: func(v *Caution) string { return cmp.Or(v.Hazard, v.Card.Source, "caution") },
	keys: []key[Caution]{
		{Key{Name: "id", Doc: "id; a class's name replaces that class's words", Default: "from hazard", Example: `"pull-the-plug"`}, func(v *Caution) any { return &v.ID }},
		{Key{Name: "hazard", Doc: "hazard class or family; everyday words are answered with the nearest class", Default: "the id, where it is one", Example: `"mains-isolation"`, Settles: true}, func(v *Caution) any { return &v.Hazard }},
		{Key{Name: "signal", Doc: "signal word", Default: "the class's", Example: `"warning"`, Words: []string{"danger", "warning", "caution", "notice"}}, func(v *Caution) any { return &v.SignalWord }},
		{Key{Name: "say", Doc: "what is spoken", Default: "the class's words", Example: `"Pull the plug before you touch anything."`}, func(v *Caution) any { return &v.Say }},
		{Key{Name: "card", Doc: "what the card shows", Default: "the class's", Example: `"Pull the plug"`}, func(v *Caution) any { return &v.Card }},
		{Key{Name: "leave_to", Doc: "to whom the work is left", Example: `"a licensed electrician"`}, func(v *Caution) any { return &v.LeaveTo }},
	},
}

var causeTable = table[Cause]{
	name: "cause", doc: "what could be wrong", kind: KindCause,
	common: func(v *Cause) *Common { return &v.Common },
	id:     func(v *Cause) *string { return &v.ID },
	naming: func(v *Cause) string { return v.What.Source },
	keys: []key[Cause]{
		{Key{Name: "id", Doc: "id", Default: "from what", Example: `"pump-dead"`}, func(v *Cause) any { return &v.ID }},
		{Key{Name: "what", Doc: "what is wrong", Need: true, Example: `"open pump winding"`}, func(v *Cause) any { return &v.What }},
		{Key{Name: "share", Doc: "how likely: usual, sometimes, rare, or a probability from 0 to 1", Default: `"sometimes"`, Example: `"usual"`}, func(v *Cause) any { return &v.Share }},
	},
}

var testTable = table[Test]{
	name: "test", doc: "what tells the causes apart", kind: KindTest,
	common: func(v *Test) *Common { return &v.Common },
	id:     func(v *Test) *string { return &v.ID },
	naming: func(v *Test) string { return v.Question.Source },
	keys: []key[Test]{
		{Key{Name: "id", Doc: "id", Default: "from the question", Example: `"ohms"`}, func(v *Test) any { return &v.ID }},
		{Key{Name: "question", Doc: "what it answers", Need: true, Example: `"Is the winding open?"`}, func(v *Test) any { return &v.Question }},
		{Key{Name: "how", Doc: "how it is done", Example: `"plug off, probe on each terminal"`}, func(v *Test) any { return &v.How }},
		{Key{Name: "instrument", Doc: "tools, or eyes, ears, nose, hand; several: either will do", Example: `"meter"`, Refs: []Kind{KindTool}, Names: true}, func(v *Test) any { return &v.Instrument }},
		{Key{Name: "setting", Doc: "setting of the instrument", Example: `"ohms"`}, func(v *Test) any { return &v.Setting }},
		{Key{Name: "at", Doc: "where", Example: `"across the two pump terminals"`}, func(v *Test) any { return &v.At }},
		{Key{Name: "expect", Doc: "the good reading: value or words", Example: `"{winding}"`}, func(v *Test) any { return &v.Expect }},
		{Key{Name: "work", Doc: "hands-on time", Example: `"3m"`}, func(v *Test) any { return &v.Work }},
		{Key{Name: "checks", Doc: "causes: a good reading clears them, a bad one means one of them", Example: `["pump-dead"]`, Refs: causeRefs, Names: true}, func(v *Test) any { return &v.Checks }},
		{Key{Name: "clears", Doc: "causes with which the reading is good, in place of checks: a bad reading clears them", Example: `["blocked"]`, Refs: causeRefs, Names: true, Rare: true}, func(v *Test) any { return &v.Clears }},
		{Key{Name: "blames", Doc: "causes with which the reading is bad; with a cause in neither list it may be good or bad", Example: `["pump-dead"]`, Refs: causeRefs, Names: true, Rare: true}, func(v *Test) any { return &v.Blames }},
		{Key{Name: "pass", Doc: `after a good reading: "step:id", "test:id", "stop: why" or advice`, Example: `"stop: look at the hose"`}, func(v *Test) any { return &v.Pass }},
		{Key{Name: "fail", Doc: "after a bad one", Example: `"step:swap"`}, func(v *Test) any { return &v.Fail }},
		{Key{Name: "reading", Doc: "one of several readings"}, func(v *Test) any { return listOf(&readingTable, &v.Readings) }},
		{Key{Name: "outcome", Doc: "one of more than two ends"}, func(v *Test) any { return listOf(&outcomeTable, &v.Outcomes) }},
		{Key{Name: "source", Doc: "where the expected reading is from", Example: `"sheet"`, Refs: sourceRefs, Names: true}, func(v *Test) any { return &v.Source }},
	},
}

var readingTable = table[Reading]{
	name: "test.reading", doc: "one of several readings of a test",
	common: func(v *Reading) *Common { return &v.Common },
	keys: []key[Reading]{
		{Key{Name: "when", Doc: "when", Example: `"key on"`}, func(v *Reading) any { return &v.When }},
		{Key{Name: "at", Doc: "where", Example: `"second leg of the fuse"`}, func(v *Reading) any { return &v.At }},
		{Key{Name: "instrument", Doc: "with what", Default: "the test's", Example: `"meter"`, Refs: []Kind{KindTool}, Names: true}, func(v *Reading) any { return &v.Instrument }},
		{Key{Name: "expect", Doc: "the good reading", Need: true, Example: `"at least 11.5 V"`}, func(v *Reading) any { return &v.Expect }},
	},
}

var outcomeTable = table[Outcome]{
	name: "test.outcome", doc: "one of more than two ends of a test",
	common: func(v *Outcome) *Common { return &v.Common },
	id:     func(v *Outcome) *string { return &v.ID },
	naming: func(v *Outcome) string { return v.Sees.Source },
	keys: []key[Outcome]{
		{Key{Name: "id", Doc: "id", Default: "from sees", Example: `"dim"`}, func(v *Outcome) any { return &v.ID }},
		{Key{Name: "sees", Doc: "what is seen", Need: true, Example: `"the lamp glows dimly"`}, func(v *Outcome) any { return &v.Sees }},
		{Key{Name: "means", Doc: "causes that it means", Default: "those not in checks", Example: `["bad-earth"]`, Refs: causeRefs, Names: true}, func(v *Outcome) any { return &v.Means }},
		{Key{Name: "go", Doc: "where it sends the viewer", Example: `"step:clean-earth"`}, func(v *Outcome) any { return &v.Go }},
	},
}
