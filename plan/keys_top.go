package plan

import (
	"cmp"

	"fixslate/plan/hazard/class"
)

// planTable is the top of the file. Its order is the order in which faults of
// one pass are found and in which the README lists the tables.
var planTable = table[Plan]{
	doc: "the top of the file",
	keys: []key[Plan]{
		{Key{Name: "plan", Doc: "version of the plan language", Default: "1", Example: "1"}, func(p *Plan) any { return &p.Version }},
		{Key{Name: "use", Doc: "files of facts, cautions, terms and sources shared between videos, beside or below the plan", Example: `["shop.toml"]`}, func(p *Plan) any { return &p.Use }},
		{Key{Name: "video", Doc: "what the video is about", Need: true}, func(p *Plan) any { return oneOf(&videoTable, &p.Video) }},
		{Key{Name: "voice", Doc: "how the presenter speaks"}, func(p *Plan) any { return oneOf(&voiceTable, &p.Voice) }},
		{Key{Name: "pace", Doc: "the presenter's measured pace"}, func(p *Plan) any { return oneOf(&paceTable, &p.Pace) }},
		{Key{Name: "publish", Doc: "limits of where the video goes"}, func(p *Plan) any { return oneOf(&publishTable, &p.Publish) }},
		{Key{Name: "captions", Doc: "how captions look"}, func(p *Plan) any { return oneOf(&captionsTable, &p.Captions) }},
		{Key{Name: "shoot", Doc: "the day: who, when, with what"}, func(p *Plan) any { return oneOf(&shootTable, &p.Shoot) }},
		{Key{Name: "variant", Doc: "a version of the object that viewers may have"}, func(p *Plan) any { return listOf(&variantTable, &p.Variants) }},
		{Key{Name: "differs", Doc: "how the filmed object differs from the viewer's"}, func(p *Plan) any { return listOf(&differsTable, &p.Differs) }},
		{Key{Name: "source", Doc: "where facts come from"}, func(p *Plan) any { return listOf(&sourceTable, &p.Sources) }},
		{Key{Name: "tool", Doc: "what turns, holds or measures"}, func(p *Plan) any { return listOf(&toolTable, &p.Tools) }},
		{Key{Name: "part", Doc: "what is fitted or replaced"}, func(p *Plan) any { return listOf(&partTable, &p.Parts) }},
		{Key{Name: "supply", Doc: "what is used up, and protective gear"}, func(p *Plan) any { return listOf(&supplyTable, &p.Supplies) }},
		{Key{Name: "fastener", Doc: "a kind of screw, bolt, nut or clip"}, func(p *Plan) any { return listOf(&fastenerTable, &p.Fasteners) }},
		{Key{Name: "fuse", Doc: "a fuse and its place"}, func(p *Plan) any { return listOf(&fuseTable, &p.Fuses) }},
		{Key{Name: "wire", Doc: "a wire and its ends"}, func(p *Plan) any { return listOf(&wireTable, &p.Wires) }},
		{Key{Name: "spec", Doc: "any other value of the object"}, func(p *Plan) any { return listOf(&specTable, &p.Specs) }},
		{Key{Name: "term", Doc: "a word of the trade: how it is said and mis-heard"}, func(p *Plan) any { return listOf(&termTable, &p.Terms) }},
		{Key{Name: "caution", Doc: "a caution in the author's own words"}, func(p *Plan) any { return listOf(&cautionTable, &p.Cautions) }},
		{Key{Name: "cause", Doc: "what could be wrong"}, func(p *Plan) any { return listOf(&causeTable, &p.Causes) }},
		{Key{Name: "test", Doc: "what tells the causes apart"}, func(p *Plan) any { return listOf(&testTable, &p.Tests) }},
		{Key{Name: "claim", Doc: "an assertion of the narration and what it rests on"}, func(p *Plan) any { return listOf(&claimTable, &p.Claims) }},
		{Key{Name: "setup", Doc: "a place for the camera"}, func(p *Plan) any { return listOf(&setupTable, &p.Setups) }},
		{Key{Name: "step", Doc: "a step of the repair, in story order", Need: true}, func(p *Plan) any { return listOf(&stepTable, &p.Steps) }},
		{Key{Name: "waiver", Doc: "sets a finding aside, with a reason"}, func(p *Plan) any { return listOf(&waiverTable, &p.Waivers) }},
		{Key{Name: "correction", Doc: "what the published video got wrong"}, func(p *Plan) any { return listOf(&correctionTable, &p.Corrections) }},
	},
}

// usable are the tables a used file may hold: what videos share, never steps.
var usable = []string{"plan", "voice", "publish", "shoot", "source", "tool", "part", "supply", "fastener", "fuse", "wire", "spec", "term", "caution", "test"}

var videoTable = table[Video]{
	name: "video", doc: "what the video is about",
	common: func(v *Video) *Common { return &v.Common },
	keys: []key[Video]{
		{Key{Name: "title", Doc: "title of the video", Need: true, Example: `"Washer won't drain: test the pump before you buy one"`}, func(v *Video) any { return &v.Title }},
		{Key{Name: "subject", Doc: "the object that is repaired", Example: `"Norvik W7 front-load washing machine"`}, func(v *Video) any { return &v.Subject }},
		{Key{Name: "fits", Doc: "for which objects it holds", Example: `"Norvik W5 to W9, 2014 on"`}, func(v *Video) any { return &v.Fits }},
		{Key{Name: "symptom", Doc: "what the viewer sees or hears", Example: `"Drum stays full, pump silent or humming"`}, func(v *Video) any { return &v.Symptom }},
		{Key{Name: "outcome", Doc: "what the viewer can do afterwards", Example: `"You can fit a new pump in an evening"`}, func(v *Video) any { return &v.Outcome }},
		{Key{Name: "audience", Doc: "for whom", Example: `"owners with a small tool box"`}, func(v *Video) any { return &v.Audience }},
		{Key{Name: "language", Doc: "language of the narration, as BCP 47 writes it", Default: `"en"`, Example: `"en"`, Settles: true}, func(v *Video) any { return &v.Language }},
		{Key{Name: "region", Doc: "whose law and licensing notes are meant", Default: "the general form", Example: `"GB"`}, func(v *Video) any { return &v.Region }},
		{Key{Name: "trade", Doc: "the trade, in a word", Example: `"appliance"`}, func(v *Video) any { return &v.Trade }},
		{Key{Name: "present", Doc: "what can hurt", Default: "inferred", Example: `["mains", "water"]`, Words: class.Energies()}, func(v *Video) any { return &v.Present }},
	},
}

var narrationWords = []string{Live, Later}

var voiceTable = table[Voice]{
	name: "voice", doc: "how the presenter speaks",
	common: func(v *Voice) *Common { return &v.Common },
	keys: []key[Voice]{
		{Key{Name: "wpm", Doc: "words a minute on ordinary prose", Default: "157", Example: "157"}, func(v *Voice) any { return &v.WPM }},
		{Key{Name: "narrated", Doc: "when the narration is recorded: while filming, or later", Default: `"live"`, Example: `"later"`, Words: narrationWords}, func(v *Voice) any { return &v.Narrated }},
	},
}

var paceTable = table[Pace]{
	name: "pace", doc: "the presenter's measured pace",
	common: func(v *Pace) *Common { return &v.Common },
	keys: []key[Pace]{
		{Key{Name: "file", Doc: "a pace file: measured rate, pauses and times of work", Example: `"pace.toml"`, Settles: true}, func(v *Pace) any { return &v.File }},
	},
}

var publishTable = table[Publish]{
	name: "publish", doc: "limits of where the video goes",
	common: func(v *Publish) *Common { return &v.Common },
	keys: []key[Publish]{
		{Key{Name: "title_max", Doc: "longest title, in characters", Default: "100", Example: "100"}, func(v *Publish) any { return &v.TitleMax }},
		{Key{Name: "description_max", Doc: "longest description, in bytes", Default: "5000", Example: "5000"}, func(v *Publish) any { return &v.DescriptionMax }},
		{Key{Name: "chapters_min", Doc: "fewest chapters", Default: "3", Example: "3"}, func(v *Publish) any { return &v.ChaptersMin }},
		{Key{Name: "chapter_shortest", Doc: "shortest chapter", Default: `"10s"`, Example: `"10s"`}, func(v *Publish) any { return &v.ChapterShortest }},
		{Key{Name: "running_max", Doc: "longest running time", Default: "no limit", Example: `"15m"`}, func(v *Publish) any { return &v.RunningMax }},
		{Key{Name: "fps", Doc: "frames a second of the edit", Default: "25", Example: "25"}, func(v *Publish) any { return &v.FPS }},
		{Key{Name: "footer", Doc: "Markdown at the end of the description", Example: `"Ask below."`}, func(v *Publish) any { return &v.Footer }},
		{Key{Name: "disclosure", Doc: "who paid for what, in the description", Example: `"The pump was bought by us."`}, func(v *Publish) any { return &v.Disclosure }},
	},
}

var captionsTable = table[Captions]{
	name: "captions", doc: "how captions look",
	common: func(v *Captions) *Common { return &v.Common },
	keys: []key[Captions]{
		{Key{Name: "profile", Doc: "line length and number of lines: 37×2, 42×2, 32×2 or 25×3", Default: `"broadcast"`, Example: `"broadcast"`, Words: []string{"broadcast", "wide", "narrow", "vertical"}}, func(v *Captions) any { return &v.Profile }},
		{Key{Name: "sounds", Doc: "how sound labels are marked", Default: `"brackets"`, Example: `"brackets"`, Words: []string{"brackets", "parentheses", "capitals"}}, func(v *Captions) any { return &v.Sounds }},
	},
}

var shootTable = table[Shoot]{
	name: "shoot", doc: "the day: who, when, with what",
	common: func(v *Shoot) *Common { return &v.Common },
	keys: []key[Shoot]{
		{Key{Name: "start", Doc: "when shooting starts", Default: `"09:00"`, Example: `"09:30"`}, func(v *Shoot) any { return &v.Start }},
		{Key{Name: "end", Doc: "when it must end", Example: `"17:00"`}, func(v *Shoot) any { return &v.End }},
		{Key{Name: "breaks", Doc: "pauses: clock and length", Example: `["12:30 30m"]`}, func(v *Shoot) any { return &v.Breaks }},
		{Key{Name: "people", Doc: "who is there", Default: "a presenter"}, func(v *Shoot) any { return listOf(&personTable, &v.People) }},
		{Key{Name: "gear", Doc: "the crew's kit", Example: `["camera", "two lights"]`}, func(v *Shoot) any { return &v.Gear }},
		{Key{Name: "object", Doc: "what is filmed", Default: "the subject", Example: `"a three-pin W7"`}, func(v *Shoot) any { return &v.Object }},
		{Key{Name: "has", Doc: "causes: what is wrong with the filmed object", Example: `["pump-dead"]`, Refs: []Kind{KindCause}, Names: true}, func(v *Shoot) any { return &v.Has }},
		{Key{Name: "tried", Doc: "when the fault was last seen on it", Example: "2026-11-20"}, func(v *Shoot) any { return &v.Tried }},
		{Key{Name: "begins", Doc: "states true of the filmed object before step 1", Example: `["unplugged"]`}, func(v *Shoot) any { return &v.Begins }},
		{Key{Name: "stays", Doc: "states it never leaves", Example: `["unplugged"]`}, func(v *Shoot) any { return &v.Stays }},
		{Key{Name: "card_minutes", Doc: "minutes of recording that a card holds", Example: "60", Rare: true}, func(v *Shoot) any { return &v.CardMinutes }},
		{Key{Name: "battery", Doc: "how long a camera battery lasts", Example: `"90m"`, Rare: true}, func(v *Shoot) any { return &v.Battery }},
		{Key{Name: "change", Doc: "how long changes between shots take", Rare: true}, func(v *Shoot) any { return oneOf(&changeTable, &v.Change) }},
	},
}

var changeTable = table[Change]{
	name: "shoot.change", doc: "how long each change between two shots takes",
	common: func(v *Change) *Common { return &v.Common },
	keys: []key[Change]{
		{Key{Name: "place", Doc: "the camera to another place", Default: `"12m"`, Example: `"12m"`}, func(v *Change) any { return &v.Place }},
		{Key{Name: "view", Doc: "another view from the same place", Default: `"4m"`, Example: `"4m"`}, func(v *Change) any { return &v.View }},
		{Key{Name: "lens", Doc: "another lens", Default: `"3m"`, Example: `"3m"`}, func(v *Change) any { return &v.Lens }},
		{Key{Name: "light", Doc: "another light", Default: `"5m"`, Example: `"5m"`}, func(v *Change) any { return &v.Light }},
		{Key{Name: "state", Doc: "bringing the object back to a state it had left", Default: `"10m"`, Example: `"10m"`}, func(v *Change) any { return &v.State }},
		{Key{Name: "helper", Doc: "the helper coming or going once more", Default: `"5m"`, Example: `"5m"`}, func(v *Change) any { return &v.Helper }},
	},
}

var personTable = table[Person]{
	name: "shoot.people", doc: "someone on the shoot", kind: KindPerson,
	common: func(v *Person) *Common { return &v.Common },
	id:     func(v *Person) *string { return &v.ID },
	naming: func(v *Person) string { return "person" },
	keys: []key[Person]{
		{Key{Name: "id", Doc: "id", Need: true, Example: `"helper"`}, func(v *Person) any { return &v.ID }},
		{Key{Name: "adult", Doc: "false for a child", Default: "true", Example: "true"}, func(v *Person) any { return &v.Adult }},
		{Key{Name: "from", Doc: "when they come", Default: "the start", Example: `"11:00"`}, func(v *Person) any { return &v.From }},
		{Key{Name: "until", Doc: "when they go", Default: "the end", Example: `"12:00"`}, func(v *Person) any { return &v.Until }},
		{Key{Name: "wears", Doc: "what they wear", Example: `["safety glasses"]`}, func(v *Person) any { return &v.Wears }},
	},
}

var variantTable = table[Variant]{
	name: "variant", doc: "a version of the object that viewers may have", kind: KindVariant,
	common: func(v *Variant) *Common { return &v.Common },
	id:     func(v *Variant) *string { return &v.ID },
	naming: func(v *Variant) string { return cmp.Or(v.Short.Source, v.Name.Source) },
	keys: []key[Variant]{
		{Key{Name: "id", Doc: "id", Default: "from short or name", Example: `"two-wire"`}, func(v *Variant) any { return &v.ID }},
		{Key{Name: "name", Doc: "what the version is called", Need: true, Example: `"early machines, two-pin pump"`}, func(v *Variant) any { return &v.Name }},
		{Key{Name: "short", Doc: "a word or two after a value", Default: "the name", Example: `"two-pin"`}, func(v *Variant) any { return &v.Short }},
		{Key{Name: "tell", Doc: "how to tell it", Example: `"look at the plug: two pins"`}, func(v *Variant) any { return &v.Tell }},
	},
}

var differsTable = table[Differs]{
	name: "differs", doc: "how the filmed object differs from the viewer's",
	common: func(v *Differs) *Common { return &v.Common },
	keys: []key[Differs]{
		{Key{Name: "on_camera", Doc: "what the video shows", Need: true, Example: `"a machine with its door off"`}, func(v *Differs) any { return &v.OnCamera }},
		{Key{Name: "viewers", Doc: "what the viewer has", Need: true, Example: `"yours keeps its door"`}, func(v *Differs) any { return &v.Viewers }},
		{Key{Name: "step", Doc: "the step in which it is said", Example: `"swap"`, Refs: []Kind{KindStep}}, func(v *Differs) any { return &v.Step }},
	},
}

var waiverTable = table[Waiver]{
	name: "waiver", doc: "sets a finding aside, with a reason",
	common: func(v *Waiver) *Common { return &v.Common },
	keys: []key[Waiver]{
		{Key{Name: "rule", Doc: "the rule", Need: true, Example: `"torque-unsaid"`}, func(v *Waiver) any { return &v.Rule }},
		{Key{Name: "at", Doc: "kind:id, a unique id, or a step", Default: "the whole plan", Example: `"fastener:pump-screws"`}, func(v *Waiver) any { return &v.At }},
		{Key{Name: "why", Doc: "the reason", Example: `"plastic threads, hand tight"`}, func(v *Waiver) any { return &v.Why }},
		{Key{Name: "by", Doc: "who decided it", Example: `"the reviewer"`}, func(v *Waiver) any { return &v.By }},
		{Key{Name: "until", Doc: "when it runs out", Example: "2027-01-31"}, func(v *Waiver) any { return &v.Until }},
	},
}

var correctionTable = table[Correction]{
	name: "correction", doc: "what the published video got wrong",
	common: func(v *Correction) *Common { return &v.Common },
	keys: []key[Correction]{
		{Key{Name: "date", Doc: "when it was corrected", Example: "2026-11-25"}, func(v *Correction) any { return &v.Date }},
		{Key{Name: "at", Doc: "where: a step, or a time of the video", Example: `"3:20"`}, func(v *Correction) any { return &v.At }},
		{Key{Name: "was", Doc: "what was said or shown", Example: `"5 N·m"`}, func(v *Correction) any { return &v.Was }},
		{Key{Name: "now", Doc: "what is right", Need: true, Example: `"3 N·m"`}, func(v *Correction) any { return &v.Now }},
	},
}
