package class

// vehicleClasses are the classes of the electrical side of a vehicle, from
// its battery to its airbags.
var vehicleClasses = []Class{
	{
		ID: "srs-airbag", Name: "Airbag",
		Family: "airbag-srs", Signal: Warning,
		Escalation: Escalation{Danger, "if the squib circuit is probed live"},
		Spoken:     "An airbag that fires can kill, so disconnect the battery and wait as the maker says.",
		Card:       "Battery off. Wait. Then touch.",
		Text: "An airbag that fires during work breaks bones and burns, and it can fire with the ignition off. " +
			"Switch off, disconnect the battery, and wait the time the maker gives for this model before " +
			"unplugging or moving any part of the system. Never put a test lamp or ohmmeter on it, and carry " +
			"a live module facing away from you.",
		Gear:     []Gear{safetyGlasses},
		Kit:      []string{"the maker's waiting time for this model"},
		Who:      Who{Trained, "A trained technician is strongly advised; storing such units may need a licence."},
		When:     Timing{Before | Step | Return, "before the first trim part comes off, again before reconnecting"},
		Answered: []string{"battery-off", "srs-waited"},
		Present:  []string{"airbag"},
		Domains:  []string{"car", "electric-vehicle"},
		Source: "UK HSE page on storing and handling airbags and pretensioners; Explosives Regulations 2014, 5 kg " +
			"threshold [read]; UK HSE INDG280 [read]; Makers' service manuals: waits of 10 s, 1 min and up to " +
			"10 min seen for different models [read]; 49 CFR 571.208 (FMVSS 208) [memory]; 49 CFR 173.166 " +
			"[memory]",
	},
	{
		ID: "belt-pretensioner", Name: "Seat belt pretensioner",
		Family: "airbag-srs", Signal: Warning,
		Spoken: "This belt unit can fire at your hand, so disconnect the battery, wait and never drop it.",
		Card:   "Battery off. Wait. Do not drop.",
		Text: "A seat belt pretensioner holds a small explosive charge that can injure hands and face. Disable " +
			"the restraint system and wait as the maker says, keep its open end away from people, and do not " +
			"pull hard on the belt or drop the unit. Never reuse a fired or dropped one.",
		Gear:     []Gear{safetyGlasses, workGloves},
		Kit:      []string{"the maker's waiting time for this model"},
		Who:      Who{Trained, "A trained technician; disposal as the maker approves."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"battery-off", "srs-waited"},
		Present:  []string{"airbag"},
		Domains:  []string{"car", "electric-vehicle"},
		Source: "UK HSE page on storing and handling airbags and pretensioners [read]; Maker's service manual: " +
			"bench rest position, reject if dropped [read]; 49 CFR 571.209/210 [memory]",
	},
	{
		ID: "battery-gas-acid", Name: "Lead-acid battery, gas and acid",
		Family: "battery-chemical", Signal: Warning,
		Escalation: Escalation{Danger, "if charging in a closed space"},
		Spoken:     "Keep sparks away and wear goggles, because this battery can explode and throw acid.",
		Card:       "No sparks. Goggles on.",
		Text: "A lead-acid battery gives off gas that a spark can explode, and its acid blinds and burns. Let " +
			"air through, keep flames and sparks away, switch the charger off before touching its clamps, and " +
			"have water ready to flush eyes.",
		Gear:    []Gear{goggles, acidGloves},
		Kit:     []string{"water to flush eyes"},
		Who:     Who{CarefulAdult, "Anyone careful; old batteries go to a recycler."},
		When:    Timing{Before | Step | Return, ""},
		Present: []string{"low-voltage"},
		Domains: []string{"car", "engine", "bicycle"},
		Source: "29 CFR 1926.441(a)(1)-(7),(b): ventilate, shields, aprons, gloves, drench within 25 ft, caps in " +
			"place [read]; UK HSE INDG139 [read]; 29 CFR 1910.178(g) [memory]",
	},
	{
		ID: "battery-short", Name: "Short circuit across the battery",
		Family: "electric-short", Signal: Warning,
		Spoken: "A short across the battery burns you, so take the earth lead off first and refit it last.",
		Card:   "Earth lead off first, on last.",
		Text: "A spanner between a battery's live post and the body turns red hot in a second: it burns, and it " +
			"can start a fire. Take rings and watches off, undo the earth lead first and refit it last, and " +
			"cover the live post. See what the maker says about codes and modules before you disconnect.",
		Gear:     []Gear{safetyGlasses},
		Kit:      []string{"insulating cover for the live post"},
		Who:      Who{CarefulAdult, "Anyone careful."},
		When:     Timing{Step | Return, "at disconnecting and at reconnecting"},
		Answered: []string{"battery-off"},
		Present:  []string{"low-voltage"},
		Domains:  []string{"car", "engine"},
		Source: "UK HSE INDG139: no jewellery, insulated single-ended tools, cover terminals [read]; makers' " +
			"handbooks: negative first off, last on [common practice]",
	},
	{
		ID: "unfused-jumper", Name: "Unfused link or bridged terminals",
		Family: "electric-short", Signal: Warning,
		Escalation: Escalation{Danger, "near fuel vapour or SRS wiring"},
		Spoken:     "Use a fused lead on the right two pins, because a bare link can set the wiring on fire.",
		Card:       "Fused lead, right pins.",
		Text: "A link with no fuse carries whatever the battery can give, and the wiring can burn. Use a fused " +
			"lead rated no higher than the circuit's own fuse, connect the load side last, and never cross a " +
			"supply straight to earth. Take the pins from the wiring diagram for this exact model.",
		Gear:    []Gear{safetyGlasses},
		Kit:     []string{"fused jumper lead"},
		Who:     Who{CarefulAdult, "Someone who can read the wiring diagram; never on airbag or high-voltage circuits."},
		When:    Timing{Step | Return, ""},
		Present: []string{"low-voltage"},
		Domains: []string{"car", "engine", "electronics", "appliance"},
		Source: "vehicle test-equipment practice: fused leads [common practice]; 29 CFR 1910.333(a)(1) work " +
			"de-energised unless infeasible [secondary]",
	},
	{
		ID: "jump-start", Name: "Jump starting",
		Family: "battery-chemical", Signal: Warning,
		Spoken: "A spark can blow up a flat battery, so put the last clamp on bare engine metal.",
		Card:   "Last clamp on engine metal.",
		Text: "A spark at a gassing battery can explode it and throw acid in your face. Use the same voltage, " +
			"keep the cars apart, connect positive to positive first, and make the last connection to bare " +
			"engine metal well away from the flat battery. Never jump a frozen, cracked or leaking one, and " +
			"follow the handbook for hybrids and remote posts.",
		Gear:    []Gear{safetyGlasses},
		Who:     Who{CarefulAdult, "Anyone careful; by the handbook for hybrids and for cars with remote posts."},
		When:    Timing{Before | Step, ""},
		Present: []string{"low-voltage"},
		Domains: []string{"car", "engine"},
		Source: "Two makers' owner's handbooks: last clamp to engine metal away from the battery because of gas " +
			"[read]; Machine maker's manual: hydrogen and acid, no welding set as booster [read]; UK HSE " +
			"INDG139 [read]",
	},
	{
		ID: "hv-vehicle", Name: "High-voltage vehicle system",
		Family: "high-voltage-dc", Signal: Danger,
		Spoken: "Orange cables carry enough to kill, so leave them to someone trained for high voltage.",
		Card:   "Orange cables: trained only.",
		Text: "The traction system holds enough voltage to stop a heart and stays charged after it is switched " +
			"off. Stop unless you have the training the maker and local rules ask for; never cut or probe " +
			"anything orange. Trained people isolate it, wait the maker's time and prove it dead with a " +
			"proved tester.",
		Gear:     []Gear{highVoltageGloves, faceShield},
		Kit:      []string{"insulated tools", "proved two-pole tester"},
		Who:      Who{Licensed, "Only someone trained and qualified for high-voltage vehicles, as the maker and local rules ask."},
		When:     Timing{Before | Step | Return, "before the first work near orange parts, and after every time it is switched back on"},
		Answered: []string{"power-off", "proven-dead"},
		Present:  []string{"high-voltage-dc", "stored-charge"},
		Domains:  []string{"electric-vehicle", "bicycle"},
		Source: "UK HSE electric and hybrid vehicle guidance (republished): dc 60-1500 V called high voltage, " +
			"parts can stay charged when off, four work categories, qualified people [secondary]; UN R100 " +
			"(2011 edition contents): 5.1.1.4 service disconnect, 5.1.1.5 marking [read]; AIS-038 copy of the " +
			"R100 text 5.1.1.5.3: orange outer covering [read]; 49 CFR 571.305 S3: above 60 V dc or 30 V ac " +
			"[secondary]; UN R100 definition >60 V dc to 1500 V, >30 V ac to 1000 V rms [memory]; NFPA 70E " +
			"120.5 [secondary]",
	},
	{
		ID: "ignition-ht", Name: "Ignition high tension",
		Family: "high-voltage-dc", Signal: Warning,
		Spoken: "Switch off before you handle a lead or a coil, or the ignition can give a vicious shock.",
		Card:   "Ignition off first.",
		Text: "Ignition voltage gives a shock that throws you into moving parts, and it can upset a pacemaker. " +
			"Switch off before pulling leads or coils, test with a grounded spark tester instead of your " +
			"hand, and keep fuel vapour away, because the test is a spark.",
		Gear:     []Gear{safetyGlasses},
		Kit:      []string{"insulated pliers", "spark tester"},
		Who:      Who{CarefulAdult, "Anyone careful; not people with implanted devices."},
		When:     Timing{Step | Return, ""},
		Answered: []string{"key-off", "spark-off"},
		Present:  []string{"low-voltage", "stored-charge"},
		Domains:  []string{"car", "engine", "bicycle"},
		Source: "engine makers' service cautions [common practice]; Maker's common-rail note: implant wearers " +
			"keep 20 cm from a running engine [read]",
	},
}
