package class

// electricClasses are the classes of mains, stored charge, cells and
// electronics.
var electricClasses = []Class{
	{
		ID: "mains-isolation", Name: "Mains: isolate and prove dead",
		Family: "mains-shock", Signal: Warning,
		Escalation: Escalation{Danger, "when bare conductors can be reached and power may be present"},
		Spoken:     "A mains shock can kill, so unplug it or lock it off and prove it dead before you reach in.",
		Card:       "Power off. Prove it dead.",
		Text: "Mains voltage can stop a heart, and the switch on the appliance does not isolate it. Pull the " +
			"plug or switch off at the right isolator, lock it or keep the plug in sight, then prove your " +
			"tester, test for dead where you will touch, and prove the tester again. Fixed wiring follows the " +
			"local code.",
		Gear:     []Gear{safetyGlasses},
		Kit:      []string{"voltage tester of the right category", "insulated tools"},
		Who:      Who{CarefulAdult, "Plug-in appliances: a careful adult; fixed wiring: a licensed or registered electrician where the law says so."},
		When:     Timing{Before | Step | Return, "before the cover comes off, and every time power has been put back and taken off again"},
		Answered: []string{"power-off", "proven-dead"},
		Present:  []string{"mains"},
		Domains:  []string{"appliance", "electrical", "plumbing", "tool", "electronics"},
		Source: "29 CFR 1910.147(d)(1)-(5) sequence, (d)(6) verification cut off in the excerpt [read]; 29 CFR " +
			"1910.333(b)(2) via WAC 296-24-975: lock and tag, discharge, interlocks are not isolation; test " +
			"by qualified person [read]; 29 CFR 1910.333(a)(1) [secondary]; US DOE electrical handbook: test " +
			"tester before and after, recommended below 600 V too [read]; NFPA 70E 120.5 live-dead-live " +
			"[secondary]; UK Electricity at Work Regulations 1989 reg 13, 14; HSG85 [secondary]",
	},
	{
		ID: "live-test", Name: "Work or measuring on live mains",
		Family: "mains-shock", Signal: Danger,
		Spoken: "Leave live mains to someone qualified for it, because one touch can kill you.",
		Card:   "Live mains: qualified only.",
		Text: "Touching a live part can kill at once, and a slipped probe can flash in your face. Do the check " +
			"dead, by resistance, wherever you can. Where a live check cannot be avoided it is for a " +
			"competent person with rated probes, one hand, a dry floor and someone beside the switch; do not " +
			"copy it without that training.",
		Gear:     []Gear{faceShield, insulatingGloves},
		Kit:      []string{"meter and probes of the right category"},
		Who:      Who{Trained, "A qualified electrical person."},
		When:     Timing{Step | Return, "each time power returns"},
		Arises:   []string{"live"},
		Answered: []string{"power-off", "proven-dead"},
		Present:  []string{"mains"},
		Domains:  []string{"appliance", "electrical", "electronics"},
		Source: "29 CFR 1910.333(a)(1)-(2) live work only if infeasible otherwise [secondary]; 29 CFR 1910.333(c) " +
			"[memory]; UK Electricity at Work Regulations 1989 reg 14 [secondary]; Irish SI 299/2007 reg 86, " +
			"same principle [read]; NFPA 70E 130 [memory]",
	},
	{
		ID: "fixed-wiring", Name: "House wiring, circuits and meters",
		Family: "licensed-work", Signal: Warning,
		Spoken: "Bad house wiring kills, so check your local rules and leave it to an electrician.",
		Card:   "Leave it to an electrician.",
		Text: "Faulty house wiring starts fires and kills people long after the work is done. It is regulated: " +
			"permits, an inspection or a registered electrician may be required where you live, and the meter " +
			"side is never yours to touch. Never feed a house back through a socket.",
		Gear:     []Gear{safetyGlasses},
		Kit:      []string{"voltage tester of the right category", "insulated tools"},
		Who:      Who{Licensed, "A licensed or registered electrician, or work notified and inspected, as local law asks."},
		When:     Timing{Before | Step, "while the job is still being thought out, and again on the spot"},
		Answered: []string{"power-off", "proven-dead"},
		Present:  []string{"mains"},
		Domains:  []string{"electrical", "gas", "building"},
		Source: "England Approved Document P 2013: new circuit, consumer unit, bath/shower zone changes " +
			"notifiable (several accounts) [secondary]; NEC/NFPA 70 and state licence law [memory]; 29 CFR " +
			"1910.399 qualified person [secondary]",
	},
	{
		ID: "earth-continuity", Name: "Earth wire after the repair",
		Family: "mains-shock", Signal: Warning,
		Spoken: "Refit and test the earth before you switch on, or the case itself can kill you.",
		Card:   "Refit the earth. Test it.",
		Text: "A case with its earth missing can become live and kill the next person who touches it. Put every " +
			"earth wire and insulating boot back, match line and neutral, fit the right fuse, and check earth " +
			"continuity and insulation before the first switch-on.",
		NoGear:  "it is work on a dead machine; the earth protects whoever uses it next",
		Kit:     []string{"continuity tester"},
		Who:     Who{CarefulAdult, "Anyone careful; at work, a portable appliance test by a competent person."},
		When:    Timing{Step | After, "with a test before power goes on"},
		Present: []string{"mains"},
		Domains: []string{"appliance", "electrical", "tool"},
		Source: "Appliance trade training page: insulation and earth continuity tests [secondary]; IEC 60335-1 " +
			"clauses 13, 16, 27 (leakage, insulation, earthing) [memory]; 29 CFR 1910.334(a)(2) cord " +
			"inspection via WAC 296-24-985 [read]",
	},
	{
		ID: "capacitor-charge", Name: "Charge stored in capacitors",
		Family: "capacitor-charge", Signal: Warning,
		Escalation: Escalation{Danger, "above about 1 kV or tens of joules"},
		Spoken:     "Capacitors can kill with the power off, so discharge them and measure before you touch.",
		Card:       "Discharge, measure, then touch.",
		Text: "A capacitor keeps its charge with the power off and can give a shock that kills. Wait as the " +
			"maker says, discharge it through a suitable resistor with one hand and insulated probes, then " +
			"measure zero before touching. Leave it shorted if it can charge again.",
		Gear:     []Gear{safetyGlasses},
		Kit:      []string{"discharge resistor with insulated probes", "insulated tools"},
		Who:      Who{Trained, "A competent person; high-energy units by trained technicians only."},
		When:     Timing{Before | Step | Return, "after every time it has been powered"},
		Answered: []string{"discharged"},
		Present:  []string{"stored-charge"},
		Domains:  []string{"appliance", "electronics", "electrical", "electric-vehicle"},
		Source: "29 CFR 1910.333(b)(2)(ii)(C) via WAC 296-24-975: discharge, short and ground high-capacitance " +
			"parts, treat as live meanwhile [read]; IEC 60335-1 22.5: plug pins at or below 34 V one second " +
			"after unplugging (tested limit, accessible side only) [secondary]; 29 CFR 1910.147(d)(5) [read]",
	},
	{
		ID: "microwave-oven", Name: "Inside a microwave oven",
		Family: "capacitor-charge", Signal: Danger,
		Spoken: "A microwave can kill even unplugged, so leave the inside to a trained technician.",
		Card:   "Inside: trained people only.",
		Text: "The capacitor inside can kill with the plug out, and a bad door lets microwaves burn people. " +
			"Leave the inside to trained service people, never bypass a door switch, and have it checked for " +
			"leaks after any repair. Do not break the magnetron; its ceramic may be poisonous.",
		NoGear:   "gear does not make the inside a job for the untrained",
		Who:      Who{Trained, "A trained service technician only."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"power-off", "discharged"},
		Present:  []string{"mains", "stored-charge"},
		Domains:  []string{"appliance"},
		Source: "Makers' service manuals: charge remains about 30 s after stop, unplug and discharge, watch off " +
			"near the magnetron, do not measure the HV [read]; Service safety text: interlock, door seal and " +
			"leakage checks before release; untrained people should not try [read]; California 16 CCR " +
			"2743(a): no interlock defeat, leakage test [read]; 21 CFR 1030.10(c): 1 mW/cm2 new, 5 in use at " +
			"5 cm (copy) [read]; IEC 60335-2-25 [secondary]; beryllia caution 29 CFR 1910.1024 [memory]",
	},
	{
		ID: "crt-implosion", Name: "Picture tube",
		Family: "capacitor-charge", Signal: Warning,
		Escalation: Escalation{Danger, "before discharge"},
		Spoken:     "This tube holds a deadly charge and can implode, so leave it to an experienced hand.",
		Card:       "Deadly charge. Experts only.",
		Text: "A picture tube can hold a lethal charge for days, and it throws glass if it breaks. Leave it to " +
			"an experienced technician, who discharges it as the maker says, keeps tools off the neck and " +
			"wears a face shield.",
		Gear:     []Gear{faceShield, workGloves},
		Kit:      []string{"insulated discharge probe"},
		Who:      Who{Trained, "An experienced technician."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"discharged"},
		Present:  []string{"stored-charge"},
		Domains:  []string{"electronics"},
		Source:   "service manuals [common practice]; 29 CFR 1910.333(b)(2)(ii)(C) via WAC 296-24-975 [read]",
	},
	{
		ID: "water-electricity", Name: "Water near electricity",
		Family: "water-electric", Signal: Warning,
		Escalation: Escalation{Danger, "with standing water and power on"},
		Spoken:     "Cut the power before any water can leak, because wet hands make a shock far worse.",
		Card:       "Power off before water flows.",
		Text: "Wet skin lets far more current through, so a shock near water is more likely to kill. Cut the " +
			"power and turn off the water before opening either, stand dry, and use a residual-current device " +
			"on every tool and lead. Never switch anything with wet hands or in a flooded room.",
		Gear:     []Gear{dryGloves, insulatingFootwear},
		Kit:      []string{"residual-current device"},
		Who:      Who{CarefulAdult, "Anyone careful; flooded panels by an electrician."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"power-off", "water-off"},
		Present:  []string{"mains", "water"},
		Domains:  []string{"appliance", "plumbing", "electrical", "any"},
		Source: "29 CFR 1926.404(b)(1)(ii) quoted: 120 V 15/20 A temporary outlets on GFCI [read]; 29 CFR " +
			"1910.304(b)(3) [secondary]; safety article: trips at about 5 mA within 25 ms [secondary]",
	},
	{
		ID: "lithium-cells", Name: "Lithium cells and packs",
		Family: "lithium-fire", Signal: Warning,
		Escalation: Escalation{Danger, "when opening multi-cell packs"},
		Spoken:     "Use plastic tools and never force it, because a damaged lithium cell can burst into flame.",
		Card:       "Plastic tools. Never force it.",
		Text: "A pierced, bent, crushed or overheated lithium cell burns fiercely and gives off poisonous " +
			"smoke. Run it down to the maker's service level, use plastic tools, keep metal off the tabs, and " +
			"work on a fire-safe surface with sand and a metal box ready. Swollen or hot cells go outside and " +
			"then to battery collection, never in the post.",
		Gear:    []Gear{safetyGlasses, nitrileGloves},
		Kit:     []string{"plastic opening tools", "sand and a metal box"},
		Who:     Who{CarefulAdult, "Single cells: a careful adult; rebuilding packs: someone trained."},
		When:    Timing{Before | Step | Return, ""},
		Present: []string{"lithium"},
		Domains: []string{"electronics", "bicycle", "tool", "appliance"},
		Source: "CPSC warning 8 Jan 2021: do not use loose 18650 cells; short circuit, thermal runaway [read]; UN " +
			"38.3 / transport rules [memory]; IEC 62133-2 [memory]",
	},
	{
		ID: "ebike-power", Name: "Electric bike or scooter drive",
		Family: "rotating-parts", Signal: Warning,
		Spoken: "Take the battery off first, because one touch can start the motor and injure your hand.",
		Card:   "Battery off the bike first.",
		Text: "A bumped pedal or throttle starts the drive and catches fingers, and a large pack can give a " +
			"shock. Switch off and take the battery off before any work.",
		Gear:     []Gear{safetyGlasses},
		Who:      Who{CarefulAdult, "Anyone careful; motor and battery internals by trained service."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"battery-off"},
		Present:  []string{"motion", "lithium"},
		Domains:  []string{"bicycle"},
		Source:   "e-bike makers' manuals [common practice]; EN 15194 [memory]",
	},
	{
		ID: "coin-cell-small-parts", Name: "Button cells and small magnets",
		Family: "bystander-child", Signal: Warning,
		Spoken: "A child who swallows one of these can die, so keep every one out of reach.",
		Card:   "Keep away from children.",
		Text: "A button cell or strong magnet that is swallowed burns or pinches through the gut and can kill a " +
			"child within hours. Keep them out of reach at every moment, tape old cells and take them to a " +
			"collection point, and refit the battery door. If one may be swallowed, go to hospital now.",
		NoGear:  "the danger is to a child, not to the hands that do the work",
		Kit:     []string{"tape for old cells"},
		Who:     Who{CarefulAdult, "Any careful adult; never left within a child's reach."},
		When:    Timing{Step | Return | After, ""},
		Domains: []string{"electronics", "any"},
		Source:  "16 CFR 1263 (US Reese's Law) [memory]; CPSC and UK OPSS advice [memory]",
	},
	{
		ID: "esd", Name: "Static damage to electronics",
		Family: "none", Signal: Notice,
		Spoken: "Earth yourself and hold the board by its edges, because a tiny spark can ruin it.",
		Card:   "Earth yourself. Edges only.",
		Text: "Static too weak to feel can ruin a circuit board at once or weaken it so that it fails later. " +
			"Earth yourself with a wrist strap and hold boards by the edge.",
		NoGear:  "it harms the board, not the hand",
		Kit:     []string{"wrist strap"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Step, ""},
		Domains: []string{"electronics"},
		Source:  "ANSI/ESD S20.20, IEC 61340-5-1 [memory]",
	},
	{
		ID: "data-loss", Name: "Lost data and settings",
		Family: "none", Signal: Notice,
		Spoken: "Back up and write down every code first, because this can wipe data and settings.",
		Card:   "Back up first.",
		Text: "A reset, a flash or a dead battery can lose data, settings and codes for good. Back up first, " +
			"write codes and settings down, and keep a steady supply during any flash; some units need the " +
			"maker's login afterwards.",
		NoGear:  "nothing here can injure",
		Kit:     []string{"backup"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Before | Step, ""},
		Domains: []string{"electronics", "car", "appliance"},
		Source:  "makers' manuals [common practice]",
	},
}
