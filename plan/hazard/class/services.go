package class

// serviceClasses are the classes of gas, water, hidden services and
// enclosed places.
var serviceClasses = []Class{
	{
		ID: "gas-appliance", Name: "Gas appliance, pipe or meter",
		Family: "gas-leak", Signal: Danger,
		Spoken: "A gas leak can blow up a house, so leave gas parts to a registered engineer.",
		Card:   "Gas: registered engineer only.",
		Text: "Escaping gas explodes, and a badly burning appliance poisons the room. Gas work is for licensed " +
			"or registered engineers in many places; never open a sealed gas part without that standing. If " +
			"you smell gas, shut it off at the valve, use no flame or switch, open up, get out, and ring the " +
			"gas emergency line.",
		NoGear:   "nothing worn protects against an explosion; leaving the work to a registered engineer does",
		Who:      Who{Licensed, "A registered or licensed gas engineer, as local law asks."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"gas-off"},
		Present:  []string{"gas"},
		Domains:  []string{"gas", "appliance", "plumbing"},
		Source: "UK Gas Safety (Installation and Use) Regulations 1998, headings of regs 3, 6, 26, 27, 33, 37 and " +
			"the wording of reg 3 as quoted [read]; ACOP extract: registered class of persons for employees " +
			"and self-employed [read]; NFPA 54-2024 contents 4.1 qualified agency, 4.2 interruption, 4.3 " +
			"accidental ignition [read]",
	},
	{
		ID: "gas-tightness", Name: "Leak test after a gas joint",
		Family: "gas-leak", Signal: Danger,
		Spoken: "Test every gas joint with leak fluid, never a flame, because one small leak can explode.",
		Card:   "Leak fluid, never a flame.",
		Text: "A joint that leaks fills a room with gas until a spark explodes it. After any gas joint has been " +
			"open, have a registered or licensed engineer test it with leak detection fluid or a gauge, never " +
			"a flame, then check burner and flue. Leave the supply off if anything bubbles.",
		NoGear:   "nothing worn protects against an explosion; the test does",
		Kit:      []string{"leak detection fluid"},
		Who:      Who{Licensed, "A registered or licensed gas engineer; outdoor bottle hoses as the maker says."},
		When:     Timing{Step | After, "after every reconnection"},
		Answered: []string{"gas-off"},
		Present:  []string{"gas"},
		Domains:  []string{"gas", "appliance"},
		Source: "NFPA 54 8.2.3 leak check after turn-on or interruption, quoted by a supplier [secondary]; LP-gas " +
			"trade article on 2012 8.2.3 [secondary]; Fla. Admin. Code 5J-20.044 leak test by licensed dealer " +
			"[read]; UK GSIUR reg 22 testing and purging, heading [read]",
	},
	{
		ID: "water-isolation", Name: "Water shut off and drained",
		Family: "none", Signal: Notice,
		Spoken: "Close the valve and let the pressure off first, or an open pipe soon floods the room.",
		Card:   "Valve closed, pressure off.",
		Text: "An open pipe floods a room and ruins floors and wiring in minutes. Close the nearest valve and " +
			"the main, open a tap to drop the pressure, have a bucket ready, and check for leaks again some " +
			"minutes after refilling. Drinking water and sealed systems may need a licensed plumber.",
		NoGear:   "water, not injury, is the trouble here",
		Kit:      []string{"bucket and towels"},
		Who:      Who{Anyone, "Anyone; drinking water and sealed systems may need a licensed plumber."},
		When:     Timing{Before | Step | After, "with a look for leaks afterwards"},
		Answered: []string{"water-off", "drained", "depressurised"},
		Present:  []string{"water", "pressure"},
		Domains:  []string{"plumbing", "appliance"},
		Source:   "plumbing trade practice [common practice]; local plumbing code [memory]",
	},
	{
		ID: "buried-services", Name: "Hidden cables and pipes",
		Family: "mains-shock", Signal: Warning,
		Escalation: Escalation{Danger, "for gas or high-voltage routes"},
		Spoken:     "Find the cables and pipes before you drill or dig, because hitting one can kill you.",
		Card:       "Find cables and pipes first.",
		Text: "A drill or spade that meets a cable or gas pipe can electrocute you or cause an explosion. Use a " +
			"detector, stay out of the zones above, below and beside sockets, taps and meters, and have " +
			"services marked before breaking ground.",
		Gear:    []Gear{insulatingGloves, safetyFootwear},
		Kit:     []string{"cable and pipe detector"},
		Who:     Who{CarefulAdult, "Anyone careful; services are marked free of charge in many countries."},
		When:    Timing{Before | Step, ""},
		Present: []string{"mains", "gas", "water"},
		Domains: []string{"building", "electrical", "gas", "plumbing"},
		Source: "US one-call law 811 / 29 CFR 1926.651(b) [memory]; UK wiring zones BS 7671 [memory]; trade " +
			"practice [common practice]",
	},
	{
		ID: "confined-space", Name: "Pit, tank or crawl space",
		Family: "none", Signal: Danger,
		Spoken: "Bad air in here can kill before you notice, so test it and never go in alone.",
		Card:   "Test the air. Never alone.",
		Text: "A pit, tank or crawl space can lack oxygen or hold gas, and people die in it before they notice; " +
			"rescuers die the same way. Test and ventilate it first, keep someone outside with a rope and a " +
			"phone, and use no engine, paint or flame inside. Local rules may keep it for trained entrants.",
		NoGear:  "breathing apparatus is specialist kit; untrained people stay out",
		Kit:     []string{"gas detector", "light", "rope and phone"},
		Who:     Who{Trained, "Trained entrants only; a crawl space at home still needs light, air and someone watching."},
		When:    Timing{Before | Step | Return, ""},
		Domains: []string{"plumbing", "car", "building"},
		Source: "29 CFR 1910.146(b) definitions, permit space [read]; 29 CFR 1926.1202 / residential FAQ: crawl " +
			"spaces can qualify [read]",
	},
}
