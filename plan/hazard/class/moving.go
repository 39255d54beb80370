package class

// movingClasses are the classes of parts that move and parts that are hot.
var movingClasses = []Class{
	{
		ID: "rotating-parts", Name: "Moving belts, fans and shafts",
		Family: "rotating-parts", Signal: Warning,
		Spoken: "Keep hands, hair and sleeves well clear, because moving parts can take a finger off.",
		Card:   "Hands, hair, sleeves clear.",
		Text: "A moving belt, fan, chain or shaft catches cuffs, hair and gloves and takes fingers with them. " +
			"Stop it and isolate it before hands go in. Where it must run, tie back hair and sleeves, wear no " +
			"gloves, keep the guard on, and keep hands where you can see them.",
		Gear:     []Gear{safetyGlasses, earProtection},
		Who:      Who{CarefulAdult, "Careful adults only."},
		When:     Timing{Before | Step | Return, "before it starts, and each time it is started again"},
		Arises:   []string{"running"},
		Answered: []string{"power-off", "battery-off", "key-off", "spark-off"},
		Present:  []string{"motion"},
		Domains:  []string{"car", "engine", "appliance", "tool", "bicycle"},
		Source: "29 CFR 1910.212(a)(1) guard rotating parts and nip points; fans under 7 ft guarded [read]; 29 " +
			"CFR 1910.147 isolate before servicing [read]; 29 CFR 1910.219 [memory]",
	},
	{
		ID: "auto-start", Name: "Machine that starts by itself",
		Family: "rotating-parts", Signal: Warning,
		Spoken: "This can start on its own and take a finger, so cut its power before you reach in.",
		Card:   "Cut the power, then reach in.",
		Text: "Some fans, pumps and engines start by themselves, even with the key out or the program paused, " +
			"and take fingers. Isolate it at plug, fuse or battery, and take the key away, before you reach " +
			"in.",
		Gear:     []Gear{safetyGlasses},
		Who:      Who{CarefulAdult, "Anyone careful."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"power-off", "battery-off"},
		Present:  []string{"motion"},
		Domains:  []string{"car", "appliance", "plumbing", "engine"},
		Source: "Owners' handbooks: electric fan may start with the engine off, keep hands clear or unplug it " +
			"[read]; 29 CFR 1910.147(a)(1) unexpected energisation or start-up [read]",
	},
	{
		ID: "hot-surface", Name: "Hot metal, lamp or element",
		Family: "hot-surface", Signal: Caution,
		Escalation: Escalation{Warning, "for DPF regeneration or red-hot parts"},
		Spoken:     "Let it cool or wear thick gloves, because it can burn you long after it is switched off.",
		Card:       "Hot. Let it cool.",
		Text: "Exhausts, brakes, lamps and elements stay hot enough to burn skin and light fuel long after they " +
			"are off. Let them cool, or glove up and keep skin, cables and fuel away.",
		Gear:     []Gear{heatGloves, longSleeves},
		Who:      Who{CarefulAdult, "Anyone careful."},
		When:     Timing{Step | Return, "after each run"},
		Answered: []string{"cooled"},
		Present:  []string{"heat"},
		Domains:  []string{"car", "engine", "appliance", "electronics"},
		Source: "Maker's service note: fuel and lines can be 100 C after shut-off [read]; Owner's handbook " +
			"hot-parts caution [read]; 29 CFR 1910.138 hand protection [memory]",
	},
	{
		ID: "hot-coolant", Name: "Hot cooling system under pressure",
		Family: "scald-pressure", Signal: Warning,
		Spoken: "Hot coolant bursts out and scalds, so wait until the hoses are cool before you open it.",
		Card:   "Wait until it is cool.",
		Text: "A hot cooling system is under pressure, and opening it throws boiling coolant over face and " +
			"hands. Wait until the hoses are cool and soft, cover the cap with thick cloth, turn it to the " +
			"first stop to let pressure out, then open it. Coolant is poisonous to children and pets; catch " +
			"it all.",
		Gear:     []Gear{goggles, heavyGloves, longSleeves},
		Who:      Who{CarefulAdult, "Anyone careful."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"cooled", "depressurised"},
		Present:  []string{"heat", "pressure"},
		Domains:  []string{"car", "engine"},
		Source: "Several owners' handbooks: do not open hot [read]; Maker's service precautions: wait at least an " +
			"hour, release slowly, glove and face protection [read]",
	},
	{
		ID: "hot-water-steam", Name: "Scalding water and steam",
		Family: "scald-pressure", Signal: Warning,
		Spoken: "Hot water and steam scald in a second, so switch off and let it cool before you open it.",
		Card:   "Off, and let it cool.",
		Text: "Hot water and steam scald deep in a second. Switch off and let it cool, open a hot tap to drop " +
			"the pressure, and drain through a secured hose. Never plug or cap a relief valve; sealed hot " +
			"water systems are licensed work in many places.",
		Gear:     []Gear{workGloves, goggles, longSleeves},
		Who:      Who{CarefulAdult, "Anyone careful for plug-in appliances; sealed cylinders, gas heaters and relief valves: a licensed plumber or heating engineer in many places."},
		When:     Timing{Before | Step | Close, "closed by checking the relief valve and for leaks"},
		Answered: []string{"cooled", "drained", "depressurised"},
		Present:  []string{"heat", "pressure", "water"},
		Domains:  []string{"plumbing", "appliance", "gas"},
		Source: "CPSC tap-water scald material [secondary]; Home-inspection notes on relief valves [secondary]; " +
			"UK Building Regulations G3 (unvented) [memory]",
	},
}
