package class

// fuelClasses are the classes of fuel, cooling gas, fire and what burning
// leaves in the air.
var fuelClasses = []Class{
	{
		ID: "fuel-vapour", Name: "Fuel vapour and fire",
		Family: "fuel-vapour", Signal: Warning,
		Escalation: Escalation{Danger, "when draining a tank, over a pit or with hot work nearby"},
		Spoken:     "Fuel vapour catches from one spark, so work in the open and keep flames and sparks away.",
		Card:       "Open air. No sparks, no flame.",
		Text: "Fuel vapour runs along the floor to any spark and goes up in a fireball. Work with a cold " +
			"engine, outdoors or with plenty of air, never over a pit; keep lamps, chargers and flames away, " +
			"an extinguisher in reach, and catch fuel in an approved sealed can. Never siphon by mouth.",
		Gear:    []Gear{fuelGloves, goggles},
		Kit:     []string{"fire extinguisher", "approved fuel can"},
		Who:     Who{CarefulAdult, "Anyone careful for small engines; vehicle tanks by trained people with a fuel retriever."},
		When:    Timing{Before | Step | Return, ""},
		Arises:  []string{"fuel-open"},
		Present: []string{"fuel"},
		Domains: []string{"car", "engine"},
		Source: "UK HSE fire and explosion page for vehicle repair; safe use of petrol in garages: fuel retriever " +
			"[read]; UK HSE OC 803/71 (DSEAR in vehicle repair) [read]; UK HSE storing and using petrol page: " +
			"cool the mower, fill outdoors [read]; 29 CFR 1910.106 [memory]",
	},
	{
		ID: "fuel-rail-pressure", Name: "Fuel under pressure",
		Family: "fuel-vapour", Signal: Warning,
		Escalation: Escalation{Danger, "on a running engine"},
		Spoken:     "Let the pressure off before you undo anything, or fuel can spray out and blind you.",
		Card:       "Pressure off before you undo.",
		Text: "Pressurised fuel sprays into eyes, can go through skin, and catches fire on hot metal. Let the " +
			"pressure off by the maker's procedure and wait as it says, wrap the joint in cloth, open it " +
			"slowly, and never crack a union on a running engine.",
		Gear:     []Gear{faceShield, fuelGloves},
		Kit:      []string{"fire extinguisher"},
		Who:      Who{Trained, "Diesel common rail and petrol direct injection: a trained technician."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"depressurised"},
		Present:  []string{"fuel", "pressure"},
		Domains:  []string{"car", "engine"},
		Source: "Engine maker's common-rail safety text: up to 1600 bar, wait at least one minute, never loosen " +
			"while running [read]; Maker's service precautions: cloth, gloves, eyewear, fuel up to 100 C " +
			"[read]; Service text: relieve pressure before disconnecting, Class B extinguisher [read]",
	},
	{
		ID: "brake-fluid", Name: "Brake and clutch fluid",
		Family: "chemical-skin-lung", Signal: Warning,
		Spoken: "Wear goggles and wash off every drop, because brake fluid hurts eyes and strips paint.",
		Card:   "Goggles on. Wash off drips.",
		Text: "Brake fluid irritates skin and eyes and strips paint; the wrong or dirty fluid, or air left in, " +
			"can make the brakes fail. Use only the grade on the cap, from a sealed container, keep dirt and " +
			"water out, and wash spills at once. Never drive until the pedal is firm.",
		Gear:    []Gear{nitrileGloves, goggles},
		Who:     Who{Trained, "A competent person; a qualified mechanic where the maker asks for a special bleeding procedure."},
		When:    Timing{Step | Return | Close, "closed by a firm pedal and no leaks"},
		Domains: []string{"car", "bicycle"},
		Source: "49 CFR 571.116 S1-S4 purpose; S5.2.2.2 container warnings quoted in an NHTSA letter: follow " +
			"maker, keep clean and dry, original sealed container [read]; 49 CFR 571.105 S5.4.3 reservoir " +
			"label quoted in an NHTSA letter [read]; vehicle textbook: fluid softens paint, wash off [read]",
	},
	{
		ID: "brake-clutch-dust", Name: "Brake and clutch dust",
		Family: "asbestos-dust", Signal: Warning,
		Spoken: "This dust may hold asbestos and scar your lungs, so wet it down and never blow it off.",
		Card:   "Wet it. Never blow it.",
		Text: "Dust from old brake, clutch and gasket material may hold asbestos, which causes lung disease " +
			"years later. Treat it so unless proven otherwise: no air line, no dry brush. Wet it down or use " +
			"a suitable vacuum, wipe with a damp cloth, bag the waste, and wash your hands before eating.",
		Gear:    []Gear{respirator, nitrileGloves, safetyGlasses},
		Kit:     []string{"water spray", "waste bags"},
		Who:     Who{CarefulAdult, "Anyone careful; trades follow the methods their rules set."},
		When:    Timing{Before | Step | Return, ""},
		Domains: []string{"car", "engine", "bicycle"},
		Source: "29 CFR 1910.1001 Appendix F: enclosure/HEPA, low-pressure wet, or equivalent; wet method only up " +
			"to 5 brake pairs or 5 clutches a week [read]; NIOSH 2004-101 checklist [read]; OSHA Q&A: no dry " +
			"brushing with spray-can method [read]",
	},
	{
		ID: "refrigerant", Name: "Cooling gas in a sealed circuit",
		Family: "refrigerant", Signal: Warning,
		Escalation: Escalation{Danger, "in a closed space or near flame"},
		Spoken:     "Escaping refrigerant freezes skin and eyes, so leave the circuit to a certified person.",
		Card:       "Sealed circuit: certified only.",
		Text: "Refrigerant that escapes freezes skin and eyes and can suffocate in a closed space. Letting it " +
			"out on purpose is unlawful in many countries. Leave the circuit closed, or hand that work to a " +
			"certified person with recovery equipment.",
		Gear:    []Gear{goggles, coldGloves},
		Who:     Who{Licensed, "A technician certified for refrigerants, as local law asks."},
		When:    Timing{Before | Step, ""},
		Present: []string{"refrigerant", "pressure"},
		Domains: []string{"car", "electric-vehicle", "appliance"},
		Source: "40 CFR 82.34(a) vehicles, for consideration: approved equipment and certified technician [read]; " +
			"40 CFR 82.154(a) no knowing venting by any person servicing appliances (2005 text) [read]; 42 " +
			"U.S.C. 7671h [read]; 40 CFR 82.161 technician certification [secondary]; EU/UK F-gas regulation " +
			"[memory]",
	},
	{
		ID: "flammable-refrigerant", Name: "Cooling gas that burns",
		Family: "refrigerant", Signal: Warning,
		Escalation: Escalation{Danger, "with any flame or brazing"},
		Spoken:     "Keep flames, drills and sharp tools away, because the gas in this circuit can catch fire.",
		Card:       "No flame, drill or sharp tool.",
		Text: "Many household fridges hold a small charge of flammable gas that can burn or explode. Never use " +
			"sharp tools on the ice or drill the cabinet, keep flames and switching motors away from an open " +
			"circuit, and let air through low down. Leave the circuit to a technician trained for it.",
		Gear:    []Gear{goggles, coldGloves},
		Kit:     []string{"gas leak detector"},
		Who:     Who{Licensed, "A technician trained and certified for flammable refrigerants."},
		When:    Timing{Before | Step | Return, ""},
		Present: []string{"refrigerant"},
		Domains: []string{"appliance", "electric-vehicle", "car"},
		Source: "EPA final rule 20 Dec 2011 (76 FR 78832) R-600a, R-441A, R-290 with use conditions [read]; trade " +
			"account: 57 g limit household, red-marked service port [read]; IEC 60335-2-24 [memory]",
	},
	{
		ID: "exhaust-co", Name: "Carbon monoxide",
		Family: "carbon-monoxide", Signal: Danger,
		Spoken: "Carbon monoxide kills without warning, so never run an engine indoors or block a flue.",
		Card:   "Never run it indoors.",
		Text: "Carbon monoxide has no smell and kills within minutes; an open door or a fan is not enough. Run " +
			"engines outside with the exhaust away from openings, or through an extraction hose, and fit an " +
			"alarm. At the first headache, get into fresh air.",
		NoGear:  "ordinary masks do not stop this gas; fresh air and an alarm do",
		Kit:     []string{"carbon monoxide alarm"},
		Who:     Who{CarefulAdult, "Anyone, outdoors; flues and gas appliances by licensed people only."},
		When:    Timing{Before | Step | Return, "before each engine start under a roof"},
		Present: []string{"fuel", "gas"},
		Domains: []string{"car", "engine", "gas", "appliance"},
		Source: "NIOSH/CPSC/OSHA/EPA joint alert 96-118(a): minutes to harm, open doors and fans do not guarantee " +
			"safety [read]; UK Gas Safety (Installation and Use) Regulations 1998 regs 27 flues and 34 use of " +
			"appliances, headings [read]; 29 CFR 1910.1000 Table Z-1 [memory]",
	},
	{
		ID: "hot-work", Name: "Welding, flames and sparks",
		Family: "hot-work-fire", Signal: Warning,
		Escalation: Escalation{Danger, "on or near fuel tanks, closed vessels, foam-filled sills"},
		Spoken:     "Sparks smoulder out of sight, so clear what burns and keep an extinguisher beside you.",
		Card:       "Clear what burns. Extinguisher.",
		Text: "Sparks and heat start fires behind panels that break out later, and a tank that held fuel can " +
			"explode. Clear or shield everything that burns, keep an extinguisher in hand, and keep watching " +
			"after you stop. Never heat or cut a tank, drum or tyre, and disconnect the battery as the maker " +
			"says.",
		Gear:    []Gear{weldingHelmet, leatherGloves, coverall, respirator},
		Kit:     []string{"fire extinguisher"},
		Who:     Who{Trained, "A competent welder; structural welds and gas pipes by qualified people only."},
		When:    Timing{Before | Step | After, "with a fire watch afterwards"},
		Present: []string{"heat"},
		Domains: []string{"car", "plumbing", "tool", "building"},
		Source: "29 CFR 1910.252(a)(2) via WAC 296-307-49503 copy: 35 ft, half-hour fire watch, extinguisher " +
			"[read]; UK HSE fire page: hot work on diesel tanks explosions [read]; NFPA 51B (longer watch in " +
			"newer editions) [memory]; 29 CFR 1910.253 [memory]",
	},
	{
		ID: "soldering", Name: "Soldering",
		Family: "hot-surface", Signal: Caution,
		Spoken: "The iron burns and its fumes hurt your lungs, so wear glasses and keep fresh air moving.",
		Card:   "Glasses on. Fresh air.",
		Text: "The tip burns, hot solder spits, and the fume harms the lungs. Stand the iron in a holder, work " +
			"with extraction or a fan, wear glasses, and wash your hands after solder that holds lead.",
		Gear:    []Gear{safetyGlasses},
		Kit:     []string{"fume extraction or a fan"},
		Who:     Who{CarefulAdult, "Anyone careful; adults supervise learners."},
		When:    Timing{Step, ""},
		Present: []string{"heat"},
		Domains: []string{"electronics", "electrical", "car"},
		Source: "electronics trade practice (iron temperature from memory) [common practice]; 29 CFR 1910.1025 " +
			"lead [memory]",
	},
	{
		ID: "oily-rags", Name: "Oily rags that heat themselves",
		Family: "hot-work-fire", Signal: Warning,
		Spoken: "Spread oily rags out flat in the open to dry, or they can catch fire by themselves.",
		Card:   "Spread rags flat outdoors.",
		Text: "Rags with drying oils heat up and can burn a building down hours later. Spread them flat " +
			"outdoors to dry, or keep them under water in a lidded metal can until they are thrown away.",
		Gear:    []Gear{nitrileGloves},
		Kit:     []string{"lidded metal can"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Step | After, ""},
		Present: []string{"heat"},
		Domains: []string{"building", "any"},
		Source: "29 CFR 1926.252(e) quoted: oily rags in fire-resistant covered containers [read]; 29 CFR " +
			"1910.106 [secondary]",
	},
}
