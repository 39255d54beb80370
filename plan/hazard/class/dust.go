package class

// dustClasses are the classes of chemicals, dusts, germs and waste.
var dustClasses = []Class{
	{
		ID: "chemicals-solvents", Name: "Solvents, glues, acids and sprays",
		Family: "chemical-skin-lung", Signal: Caution,
		Escalation: Escalation{Warning, "for corrosives, dichloromethane strippers, flammable aerosol near flame"},
		Spoken:     "Splashes burn and fumes harm your lungs, so open a window and wear gloves and goggles.",
		Card:       "Fresh air, gloves, goggles.",
		Text: "Solvents, acids, glues and sprays can burn skin and eyes, harm the lungs or catch fire. Read the " +
			"label and the safety data sheet first, let air through, keep off hot parts and sparks, and wear " +
			"the gloves it names. Never use chlorinated cleaner before welding.",
		Gear:    []Gear{chemicalGloves, goggles},
		Kit:     []string{"the safety data sheet"},
		Who:     Who{CarefulAdult, "Anyone careful; professional products by trained users."},
		When:    Timing{Step | Return, ""},
		Domains: []string{"any", "car", "electronics", "building"},
		Source: "29 CFR 1910.1200 SDS duty [secondary]; 29 CFR 1910.133(a)(1) eye protection for chemicals, " +
			"quoted [read]; 29 CFR 1910.106 [memory]; 29 CFR 1910.138 [memory]",
	},
	{
		ID: "drain-chemicals", Name: "Drain and cleaning chemicals",
		Family: "chemical-skin-lung", Signal: Warning,
		Spoken: "Never mix cleaners, because together they can give off a gas that kills.",
		Card:   "Never mix cleaners.",
		Text: "Drain opener burns skin and eyes, and bleach mixed with acid or ammonia gives off a poisonous " +
			"gas. Never mix cleaners, and find out whether a drain already holds chemical before you open or " +
			"rod it.",
		Gear:    []Gear{goggles, chemicalGloves, apron},
		Who:     Who{CarefulAdult, "Anyone careful; concentrated acid by plumbers."},
		When:    Timing{Before | Step | Return, ""},
		Domains: []string{"plumbing", "appliance"},
		Source: "Public works safety talk: bleach plus ammonia or acid gives toxic gas; drain openers mostly " +
			"alkaline [read]; US poison-centre and public health advice [secondary]",
	},
	{
		ID: "isocyanate-spray", Name: "Two-pack paint and spray foam",
		Family: "chemical-skin-lung", Signal: Warning,
		Spoken: "This mist can cause asthma for life, so leave it to a painter with an air-fed mask.",
		Card:   "Air-fed mask, or leave it.",
		Text: "Mist from two-pack paint and spray foam can cause lasting asthma. It needs an air-fed mask and a " +
			"vented booth, and nobody else in that air until it clears. Choose a product without isocyanates, " +
			"or hand the spraying to a body shop.",
		Gear:    []Gear{airFedMask, chemicalGloves, coverall},
		Who:     Who{Trained, "A trained sprayer with a booth."},
		When:    Timing{Before | Step | Return, ""},
		Domains: []string{"car", "building"},
		Source: "UK HSE motor vehicle repair intro page: air-fed equipment for two-pack paints [read]; UK HSE " +
			"HSG276 [memory]",
	},
	{
		ID: "lead-paint", Name: "Lead in old paint",
		Family: "lead-hazard", Signal: Warning,
		Spoken: "Never sand old paint dry or burn it off, because it can hold lead that poisons children.",
		Card:   "No dry sanding, no burning.",
		Text: "Old paint may hold lead, and its dust poisons children and the unborn. Assume it does in an old " +
			"building until a test says not: no dry sanding, no burning, no power sanding without proper " +
			"extraction. Keep children and pregnant women out, clean up wet, and follow local rules.",
		Gear:    []Gear{respirator, coverall, workGloves},
		Who:     Who{CarefulAdult, "A careful owner in their own home, by the same rules; paid work needs a certified firm in some places."},
		When:    Timing{Before | Step, ""},
		Domains: []string{"building", "plumbing"},
		Source: "40 CFR 745.83 (EPA FAQ): minor work is up to 6 sq ft inside per room or 20 sq ft outside, no " +
			"window replacement, no banned practices [read]; 40 CFR 745.85(a)(3) banned practices, cited " +
			"there [read]; EPA 2006 proposal: renovations for compensation, homes before 1978 [read]",
	},
	{
		ID: "asbestos-building", Name: "Asbestos in building materials",
		Family: "asbestos-dust", Signal: Danger,
		Spoken: "Asbestos dust can kill years later, so stop and have it tested before you disturb it.",
		Card:   "Stop. Have it tested.",
		Text: "Disturbed asbestos gives off fibres that cause fatal lung disease many years later. Stop if a " +
			"material might hold it: do not drill, sand, snap or sweep it. Check the age and any survey, have " +
			"it sampled, and leave lagging, insulating board and sprayed coatings to licensed contractors.",
		NoGear:  "the answer is to leave it alone; a mask does not make it a job for the untrained",
		Who:     Who{Licensed, "A licensed contractor, as local law asks."},
		When:    Timing{Before | Step, "while the job is still being thought out, and again on the spot"},
		Domains: []string{"building", "plumbing", "electrical", "gas"},
		Source: "UK HSE trades quick guide as republished: buildings before 2000, one drilled hole matters, stop " +
			"work [secondary]; 29 CFR 1926.1101 [memory]; UK Control of Asbestos Regulations 2012 [memory]",
	},
	{
		ID: "silica-dust", Name: "Dust from brick, stone and concrete",
		Family: "chemical-skin-lung", Signal: Warning,
		Spoken: "Wet the cut and wear the right mask, because masonry dust scars your lungs for good.",
		Card:   "Wet the cut. Mask on.",
		Text: "Dust from brick, stone and concrete scars the lungs for good. Wet the cut or use a shrouded tool " +
			"with a suitable vacuum, and wear the mask your local rules name.",
		Gear:    []Gear{respirator, goggles, earProtection},
		Kit:     []string{"water spray or dust shroud"},
		Who:     Who{CarefulAdult, "Anyone careful."},
		When:    Timing{Step | Return, ""},
		Present: []string{"noise"},
		Domains: []string{"building", "tool"},
		Source: "29 CFR 1926.1153(a) action level 25 ug/m3; Table 1 methods by tool [read]; UNLV summary: limit " +
			"50 ug/m3, 25 action level [secondary]",
	},
	{
		ID: "sanding-dust", Name: "Sanding dust",
		Family: "chemical-skin-lung", Signal: Caution,
		Spoken: "Use extraction and wear a dust mask, because sanding dust harms your lungs.",
		Card:   "Extraction on. Mask on.",
		Text: "Dust from wood, filler and paint irritates and harms the lungs. Use extraction and a dust mask, " +
			"and check the coating first: old paint may hold lead, and two-pack is worse.",
		Gear:    []Gear{dustMask, safetyGlasses},
		Kit:     []string{"dust extraction"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Step, ""},
		Domains: []string{"building", "car", "tool"},
		Source:  "UK HSE woodworking dust guidance [memory]; trade practice [common practice]",
	},
	{
		ID: "mould-sewage", Name: "Mould, sewage and waste water",
		Family: "chemical-skin-lung", Signal: Warning,
		Spoken: "Mould and foul water make you ill, so wear gloves and goggles and wash afterwards.",
		Card:   "Gloves, goggles, then wash.",
		Text: "Mould and foul water carry spores and germs that make people ill. Glove up, cover eyes and " +
			"mouth, keep it off food surfaces, then wash hands and tools and air the room. Leave large " +
			"patches, sewage floods and hidden mould to a trained crew.",
		Gear:    []Gear{workGloves, goggles, dustMask, apron},
		Who:     Who{CarefulAdult, "Anyone careful for small patches and traps; large mould and sewage backups: a trained contractor."},
		When:    Timing{Step | Return | After, "with the clean-up"},
		Domains: []string{"plumbing", "building", "appliance"},
		Source: "EPA mould guidance, 10 sq ft threshold, N-95 [secondary]; EPA remediation table extract: " +
			"contaminated water needs PPE and an experienced professional [read]; UK HSE INDG198 [memory]",
	},
	{
		ID: "mercury", Name: "Mercury in lamps and switches",
		Family: "chemical-skin-lung", Signal: Caution,
		Spoken: "If this breaks it gives off poisonous mercury, so handle it gently and never vacuum it up.",
		Card:   "Do not break it or vacuum it.",
		Text: "A broken lamp or switch gives off mercury vapour, which poisons the nerves, so handle it gently. " +
			"If it breaks, get people out, air the room, turn the heating off and scoop it up with card and " +
			"tape; never vacuum. Take the sealed waste to a hazardous collection.",
		Gear:    []Gear{workGloves, safetyGlasses},
		Kit:     []string{"card, tape and a jar with a lid"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Step | After, ""},
		Domains: []string{"electrical", "appliance", "building"},
		Source: "EPA lamp clean-up steps republished by several agencies: leave and ventilate 5-10 min, HVAC off, " +
			"no vacuum [secondary]",
	},
	{
		ID: "waste-fluids", Name: "Used oil, coolant and other fluids",
		Family: "none", Signal: Notice,
		Spoken: "Old oil and coolant poison water and pets, so catch it all and hand it in.",
		Card:   "Catch it all. Hand it in.",
		Text: "Used oil and coolant poison soil and water, and coolant tastes sweet to pets. Catch it, never " +
			"tip it on the ground or down a drain, keep oil apart from other fluids, and take it to a " +
			"collection point.",
		Gear:    []Gear{nitrileGloves},
		Kit:     []string{"drain tray", "container with a lid"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{After, ""},
		Domains: []string{"car", "engine"},
		Source: "Maker's environmental note on coolant: poisonous, not to drains, do not mix [read]; 40 CFR 279 " +
			"[memory]",
	},
}
