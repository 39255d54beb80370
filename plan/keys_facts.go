package plan

import "cmp"

var sourceRefs = []Kind{KindSource}

var sourceTable = table[Source]{
	name: "source", doc: "where facts come from", kind: KindSource,
	common: func(v *Source) *Common { return &v.Common },
	id:     func(v *Source) *string { return &v.ID },
	naming: func(v *Source) string { return v.Title.Source },
	keys: []key[Source]{
		{Key{Name: "id", Doc: "id", Default: "from the title", Example: `"sheet"`}, func(v *Source) any { return &v.ID }},
		{Key{Name: "title", Doc: "what it is called", Need: true, Example: `"Norvik W7 technical sheet"`}, func(v *Source) any { return &v.Title }},
		{Key{Name: "where", Doc: "the place in it", Example: `"page 12"`}, func(v *Source) any { return &v.Where }},
		{Key{Name: "kind", Doc: "what kind of source", Example: `"maker"`, Words: []string{"maker", "standard", "law", "handbook", "own-measurement"}}, func(v *Source) any { return &v.Kind }},
		{Key{Name: "date", Doc: "its date", Example: "2024-03-01"}, func(v *Source) any { return &v.Date }},
		{Key{Name: "link", Doc: "where to read it: http, https or mailto", Example: `"https://example.org/w7"`, Rare: true}, func(v *Source) any { return &v.Link }},
	},
}

var toolTable = table[Tool]{
	name: "tool", doc: "what turns, holds or measures", kind: KindTool,
	common: func(v *Tool) *Common { return &v.Common },
	id:     func(v *Tool) *string { return &v.ID },
	naming: func(v *Tool) string { return v.Name.Source },
	keys: []key[Tool]{
		{Key{Name: "id", Doc: "id", Default: "from the name", Example: `"driver"`}, func(v *Tool) any { return &v.ID }},
		{Key{Name: "name", Doc: "its name with its size", Need: true, Example: `"8 mm nut driver"`}, func(v *Tool) any { return &v.Name }},
		{Key{Name: "drives", Doc: "what it turns", Default: "read from the name", Example: `["8 mm"]`}, func(v *Tool) any { return &v.Drives }},
		{Key{Name: "optional", Doc: "nice to have", Default: "false", Example: "true"}, func(v *Tool) any { return &v.Optional }},
		{Key{Name: "instead_of", Doc: "what it stands in for", Example: `"a pin extractor"`}, func(v *Tool) any { return &v.InsteadOf }},
		{Key{Name: "why", Doc: "why it is needed", Example: `"the clip cannot be reached by hand"`}, func(v *Tool) any { return &v.Why }},
		{Key{Name: "link", Doc: "where to read about it", Example: `"https://example.org/driver"`, Rare: true}, func(v *Tool) any { return &v.Link }},
	},
}

var partTable = table[Part]{
	name: "part", doc: "what is fitted or replaced", kind: KindPart,
	common: func(v *Part) *Common { return &v.Common },
	id:     func(v *Part) *string { return &v.ID },
	naming: func(v *Part) string { return v.Name.Source },
	keys: []key[Part]{
		{Key{Name: "id", Doc: "id", Default: "from the name", Example: `"pump"`}, func(v *Part) any { return &v.ID }},
		{Key{Name: "name", Doc: "its name", Need: true, Example: `"drain pump"`}, func(v *Part) any { return &v.Name }},
		{Key{Name: "number", Doc: "part number", Example: `"NV-2231"`}, func(v *Part) any { return &v.Number }},
		{Key{Name: "count", Doc: "how many", Default: "1", Example: "1"}, func(v *Part) any { return &v.Count }},
		{Key{Name: "price", Doc: "what it costs, as said", Example: `"about 30 €"`}, func(v *Part) any { return &v.Price }},
		{Key{Name: "replaces", Doc: "the number it replaces", Example: `"NV-2230"`}, func(v *Part) any { return &v.Replaces }},
		{Key{Name: "link", Doc: "where to read about it", Example: `"https://example.org/pump"`, Rare: true}, func(v *Part) any { return &v.Link }},
		{Key{Name: "source", Doc: "where it is from", Example: `"sheet"`, Refs: sourceRefs, Names: true}, func(v *Part) any { return &v.Source }},
	},
}

var supplyTable = table[Supply]{
	name: "supply", doc: "what is used up, and protective gear", kind: KindSupply,
	common: func(v *Supply) *Common { return &v.Common },
	id:     func(v *Supply) *string { return &v.ID },
	naming: func(v *Supply) string { return v.Name.Source },
	keys: []key[Supply]{
		{Key{Name: "id", Doc: "id", Default: "from the name", Example: `"glasses"`}, func(v *Supply) any { return &v.ID }},
		{Key{Name: "name", Doc: "its name", Need: true, Example: `"safety glasses"`}, func(v *Supply) any { return &v.Name }},
		{Key{Name: "amount", Doc: "how much", Example: `"2 rags"`}, func(v *Supply) any { return &v.Amount }},
		{Key{Name: "protects", Doc: "for protective gear: eyes, hearing, hands, lungs, feet, head, body or another part", Example: `"eyes"`}, func(v *Supply) any { return &v.Protects }},
	},
}

var fastenerTable = table[Fastener]{
	name: "fastener", doc: "a kind of screw, bolt, nut or clip", kind: KindFastener,
	common: func(v *Fastener) *Common { return &v.Common },
	id:     func(v *Fastener) *string { return &v.ID },
	naming: func(v *Fastener) string { return v.What.Source },
	keys: []key[Fastener]{
		{Key{Name: "id", Doc: "id", Default: "from what", Example: `"pump-screws"`}, func(v *Fastener) any { return &v.ID }},
		{Key{Name: "what", Doc: "what it is", Need: true, Example: `"pump bracket screws"`}, func(v *Fastener) any { return &v.What }},
		{Key{Name: "thread", Doc: "thread", Example: `"M5"`}, func(v *Fastener) any { return &v.Thread }},
		{Key{Name: "head", Doc: "head", Example: `"hex"`}, func(v *Fastener) any { return &v.Head }},
		{Key{Name: "drive", Doc: "what turns it", Example: `"8 mm"`}, func(v *Fastener) any { return &v.Drive }},
		{Key{Name: "grade", Doc: "property class", Example: `"8.8"`}, func(v *Fastener) any { return &v.Grade }},
		{Key{Name: "count", Doc: "how many", Example: "3"}, func(v *Fastener) any { return &v.Count }},
		{Key{Name: "torque", Doc: "quantity or words", Example: `"3 N·m"`}, func(v *Fastener) any { return &v.Torque }},
		{Key{Name: "reuse", Doc: "false where a new one is fitted each time", Default: "true", Example: "false"}, func(v *Fastener) any { return &v.Reuse }},
		{Key{Name: "angle", Doc: "further turn after the torque", Example: `"90°"`, Rare: true}, func(v *Fastener) any { return &v.Angle }},
		{Key{Name: "thread_lock", Doc: "thread lock", Example: `"medium"`, Rare: true}, func(v *Fastener) any { return &v.ThreadLock }},
		{Key{Name: "source", Doc: "where the values are from", Example: `"sheet"`, Refs: sourceRefs, Names: true}, func(v *Fastener) any { return &v.Source }},
	},
}

var fuseTable = table[Fuse]{
	name: "fuse", doc: "a fuse and its place", kind: KindFuse,
	common: func(v *Fuse) *Common { return &v.Common },
	id:     func(v *Fuse) *string { return &v.ID },
	naming: func(v *Fuse) string { return cmp.Or(v.At.Source, "fuse") },
	keys: []key[Fuse]{
		{Key{Name: "id", Doc: "id", Default: "from at", Example: `"blower-fuse"`}, func(v *Fuse) any { return &v.ID }},
		{Key{Name: "at", Doc: "where it sits", Example: `"fuse 12"`}, func(v *Fuse) any { return &v.At }},
		{Key{Name: "rating", Doc: "rating", Example: `"15 A"`}, func(v *Fuse) any { return &v.Rating }},
		{Key{Name: "form", Doc: "form", Example: `"regular blade"`}, func(v *Fuse) any { return &v.Form }},
		{Key{Name: "colour", Doc: "colour", Default: "inferred from form and rating", Example: `"blue"`}, func(v *Fuse) any { return &v.Colour }},
		{Key{Name: "protects", Doc: "what it feeds", Example: `"blower and rear window"`}, func(v *Fuse) any { return &v.Protects }},
		{Key{Name: "source", Doc: "where it is from", Example: `"sheet"`, Refs: sourceRefs, Names: true}, func(v *Fuse) any { return &v.Source }},
	},
}

var wireTable = table[Wire]{
	name: "wire", doc: "a wire and its ends", kind: KindWire,
	common: func(v *Wire) *Common { return &v.Common },
	id:     func(v *Wire) *string { return &v.ID },
	naming: func(v *Wire) string { return cmp.Or(v.Colour, "wire") },
	keys: []key[Wire]{
		{Key{Name: "id", Doc: "id", Default: "from the colour", Example: `"feed"`}, func(v *Wire) any { return &v.ID }},
		{Key{Name: "from", Doc: "where it comes from", Example: `"blower relay"`}, func(v *Wire) any { return &v.From }},
		{Key{Name: "to", Doc: "where it goes", Example: `["motor", "resistor pack"]`}, func(v *Wire) any { return &v.To }},
		{Key{Name: "from_pin", Doc: "pin at that end", Example: `"pin 4"`}, func(v *Wire) any { return &v.FromPin }},
		{Key{Name: "to_pin", Doc: "pin at this end", Example: `"pin 1"`}, func(v *Wire) any { return &v.ToPin }},
		{Key{Name: "colour", Doc: "colour, base first", Example: `"violet-blue"`}, func(v *Wire) any { return &v.Colour }},
		{Key{Name: "section", Doc: "cross-section", Example: `"1.5 mm²"`}, func(v *Wire) any { return &v.Section }},
		{Key{Name: "length", Doc: "length", Example: `"2 m"`}, func(v *Wire) any { return &v.Length }},
		{Key{Name: "source", Doc: "where it is from", Example: `"sheet"`, Refs: sourceRefs, Names: true}, func(v *Wire) any { return &v.Source }},
	},
}

var specTable = table[Spec]{
	name: "spec", doc: "any other value of the object", kind: KindSpec,
	common: func(v *Spec) *Common { return &v.Common },
	id:     func(v *Spec) *string { return &v.ID },
	naming: func(v *Spec) string { return v.What.Source },
	keys: []key[Spec]{
		{Key{Name: "id", Doc: "id", Default: "from what", Example: `"winding"`}, func(v *Spec) any { return &v.ID }},
		{Key{Name: "what", Doc: "what is specified", Need: true, Example: `"pump winding"`}, func(v *Spec) any { return &v.What }},
		{Key{Name: "value", Doc: "quantity, place or words", Need: true, Example: `"10..20 Ω"`}, func(v *Spec) any { return &v.Value }},
		{Key{Name: "source", Doc: "where it is from", Example: `"sheet"`, Refs: sourceRefs, Names: true}, func(v *Spec) any { return &v.Source }},
	},
}

var termTable = table[Term]{
	name: "term", doc: "a word of the trade: how it is said and mis-heard", kind: KindTerm,
	common: func(v *Term) *Common { return &v.Common },
	id:     func(v *Term) *string { return &v.ID },
	naming: func(v *Term) string { return v.Text },
	keys: []key[Term]{
		{Key{Name: "id", Doc: "id", Default: "from the text", Example: `"impeller"`}, func(v *Term) any { return &v.ID }},
		{Key{Name: "text", Doc: "as it is spelled", Need: true, Example: `"impeller"`}, func(v *Term) any { return &v.Text }},
		{Key{Name: "say_as", Doc: "as it is said, for the timing", Example: `"im-PELL-er"`}, func(v *Term) any { return &v.SayAs }},
		{Key{Name: "misheard", Doc: "what automatic captions make of it", Example: `["in pillar"]`}, func(v *Term) any { return &v.Misheard }},
	},
}

var claimTable = table[Claim]{
	name: "claim", doc: "an assertion of the narration and what it rests on", kind: KindClaim,
	common: func(v *Claim) *Common { return &v.Common },
	id:     func(v *Claim) *string { return &v.ID },
	naming: func(v *Claim) string { return cmp.Or(v.Text.Source, v.Says) },
	keys: []key[Claim]{
		{Key{Name: "id", Doc: "id", Default: "from the text", Example: `"pumps-fail-open"`}, func(v *Claim) any { return &v.ID }},
		{Key{Name: "text", Doc: "what is claimed", Example: `"Most dead pumps have an open winding"`}, func(v *Claim) any { return &v.Text }},
		{Key{Name: "says", Doc: "words of the narration that this answers for", Example: `"nearly every dead one"`}, func(v *Claim) any { return &v.Says }},
		{Key{Name: "evidence", Doc: "tests and sources", Example: `["test:ohms", "source:sheet"]`, Refs: []Kind{KindTest, KindSource}}, func(v *Claim) any { return &v.Evidence }},
		{Key{Name: "opinion", Doc: "the presenter's own view", Default: "false", Example: "true"}, func(v *Claim) any { return &v.Opinion }},
	},
}

var setupTable = table[Setup]{
	name: "setup", doc: "a place for the camera", kind: KindSetup,
	common: func(v *Setup) *Common { return &v.Common },
	id:     func(v *Setup) *string { return &v.ID },
	naming: func(v *Setup) string { return cmp.Or(joinWords(v.Place.Source, v.View.Source), "setup") },
	keys: []key[Setup]{
		{Key{Name: "id", Doc: "id", Default: "from place and view", Example: `"floor-low"`}, func(v *Setup) any { return &v.ID }},
		{Key{Name: "place", Doc: "where the camera stands", Example: `"floor"`}, func(v *Setup) any { return &v.Place }},
		{Key{Name: "view", Doc: "what it looks at, and how", Example: `"low"`}, func(v *Setup) any { return &v.View }},
		{Key{Name: "lens", Doc: "lens", Example: `"macro"`}, func(v *Setup) any { return &v.Lens }},
		{Key{Name: "light", Doc: "light", Example: `"head lamp"`}, func(v *Setup) any { return &v.Light }},
		{Key{Name: "sound", Doc: "sound", Example: `"lapel microphone"`, Rare: true}, func(v *Setup) any { return &v.Sound }},
	},
}
