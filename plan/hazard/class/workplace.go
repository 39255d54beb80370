package class

// workplaceClasses are the classes of tools, the body, the workplace and
// the people near it.
var workplaceClasses = []Class{
	{
		ID: "eye-impact", Name: "Flying bits",
		Family: "eye-debris", Signal: Warning,
		Spoken: "Put safety glasses on before you start, because flying bits can blind you.",
		Card:   "Safety glasses on.",
		Text: "Chips and sparks fly faster than you can blink and can blind. Wear safety glasses or goggles, " +
			"with a face shield for wheels, clamp the work, keep the guard on, watch where sparks go, and " +
			"make people nearby cover up too. Gloves stay off near a turning bit.",
		Gear:    []Gear{safetyGlasses, faceShield, earProtection},
		Who:     Who{CarefulAdult, "Careful adults."},
		When:    Timing{Step | Return, "each time the tool starts again"},
		Present: []string{"motion"},
		Domains: []string{"tool", "car", "building", "any"},
		Source: "29 CFR 1910.133(a)(1) quoted [read]; 29 CFR 1910.215(a)(4) rest within 1/8 in (OSHA STD " +
			"01-12-008) [read]; 29 CFR 1910.212(a)(1) [read]; 29 CFR 1910.242(b) [read]",
	},
	{
		ID: "power-blade", Name: "Powered blades and cutters",
		Family: "power-tool", Signal: Warning,
		Spoken: "A powered blade takes fingers, so keep the guard on and cut its power before you touch it.",
		Card:   "Power off before you touch it.",
		Text: "A powered blade takes fingers or opens a leg before you can react. Unplug it or pull the battery " +
			"before touching the blade, keep guard and riving knife on and both hands on the tool, clamp the " +
			"work, and wait for it to stop. Gloves stay off at table machines.",
		Gear:     []Gear{safetyGlasses, earProtection, dustMask},
		Who:      Who{Trained, "A trained adult; a chainsaw needs training and full kit."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"power-off", "battery-off"},
		Present:  []string{"motion", "noise"},
		Domains:  []string{"tool", "building"},
		Source: "29 CFR 1910.243 guarding of portable powered tools [memory]; 29 CFR 1910.212(a) [read]; makers' " +
			"manuals [common practice]",
	},
	{
		ID: "abrasive-wheel", Name: "Grinding and cutting discs",
		Family: "power-tool", Signal: Warning,
		Spoken: "A damaged disc can burst in your face, so check it, guard it, and stand to one side.",
		Card:   "Check the disc. Guard on.",
		Text: "A damaged or overspeeding disc bursts and its pieces can kill. Check that it is sound, in date " +
			"and rated above the tool's speed, keep the guard fitted, never side-load a thin disc, stand " +
			"aside while it runs free for a minute, and keep hands off until it stops.",
		Gear:     []Gear{faceShield, safetyGlasses, workGloves, earProtection},
		Who:      Who{Trained, "A trained user."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"power-off", "battery-off"},
		Present:  []string{"motion", "noise"},
		Domains:  []string{"tool"},
		Source: "29 CFR 1910.215(a)(4) work rest 1/8 in (OSHA STD 01-12-008) [read]; 29 CFR 1910.215(b)(9) tongue " +
			"1/4 in, (d)(1) ring test [memory]; WAC 296-806-40504 guards [read]",
	},
	{
		ID: "small-engine-start", Name: "Small engine that fires by hand",
		Family: "rotating-parts", Signal: Warning,
		Spoken: "Pull the plug lead off before you reach in, because turning it by hand can fire it up.",
		Card:   "Plug lead off first.",
		Text: "Turning a blade or shaft by hand can fire the engine and take fingers or a foot. Pull the plug " +
			"lead clear and earth it, or take the battery out, before tipping it or touching the blade.",
		Gear:     []Gear{cutGloves, safetyGlasses},
		Who:      Who{CarefulAdult, "Anyone careful."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"spark-off", "battery-off"},
		Present:  []string{"motion", "fuel"},
		Domains:  []string{"engine", "tool"},
		Source: "16 CFR 1205.5: blade stop within 3.0 s of release (limits, does not remove, the hazard) [read]; " +
			"University safety list: stop engine, remove plug wire before work [read]; 29 CFR 1910.147(a)(1) " +
			"[read]",
	},
	{
		ID: "hearing", Name: "Noise",
		Family: "hearing", Signal: Caution,
		Spoken: "Put ear protection on first, because this is loud enough to hurt your hearing for good.",
		Card:   "Ear protection on.",
		Text: "Loud tools and horns damage hearing for good, and short blasts count. Put ear protection on " +
			"before it starts, and on anyone nearby.",
		Gear:    []Gear{earProtection},
		Who:     Who{Anyone, "Anyone; earphones are not protection."},
		When:    Timing{Step | Return, ""},
		Present: []string{"noise"},
		Domains: []string{"tool", "car", "engine"},
		Source: "29 CFR 1910.95 Table G-16: 90 dBA 8 h down to 115 dBA 15 min; engineering controls first [read]; " +
			"29 CFR 1910.95(b)(2) impulse 140 dB peak [secondary]; 29 CFR 1910.95(c) 85 dBA action level " +
			"[memory]; UK HSE HSG261 covers noise and vibration in the trade [read]",
	},
	{
		ID: "heavy-lift", Name: "Heavy lifting",
		Family: "heavy-lift", Signal: Caution,
		Spoken: "This is heavy enough to wreck your back, so get a second person or a hoist.",
		Card:   "Two people, or a hoist.",
		Text: "A lift too heavy or too far from the body injures backs, hands and feet. Get help or a hoist, " +
			"know the weight, keep it close, and clear the path first. Never hold a part up while someone " +
			"bolts it.",
		Gear:    []Gear{workGloves, safetyFootwear},
		Kit:     []string{"hoist, trolley or a second person"},
		Who:     Who{CarefulAdult, "Two people for more than you can manage; better, a hoist or trolley."},
		When:    Timing{Before | Step, ""},
		Domains: []string{"car", "appliance", "building", "plumbing"},
		Source: "NIOSH revised lifting equation: 51 lb (23 kg) is the most under ideal conditions [secondary]; UK " +
			"HSE INDG143: a third of reported injuries from handling [read]; UK HSE guideline weights (25 kg " +
			"men / 16 kg women at best height) [memory]",
	},
	{
		ID: "tip-over", Name: "Tipping over",
		Family: "raised-load", Signal: Warning,
		Spoken: "Strap it or brace it before you free it, because it can tip over and crush someone.",
		Card:   "Strap it before you free it.",
		Text: "A cooker, fridge, cabinet or motorcycle that tips can crush a child or an adult. Brace or strap " +
			"it before you free its feet, take doors off or tape them shut, clear children out, and refit its " +
			"anti-tip bracket at the end.",
		Gear:    []Gear{workGloves, safetyFootwear},
		Kit:     []string{"strap or brace"},
		Who:     Who{CarefulAdult, "Two adults."},
		When:    Timing{Step | Close, "closed by refitting the anti-tip bracket"},
		Present: []string{"raised"},
		Domains: []string{"appliance", "bicycle", "any"},
		Source: "CPSC tip-over awareness; ranges: fit the maker's bracket [secondary]; Inspection notes: UL/ANSI " +
			"range stability from 1991 [secondary]; ASTM F2057 / 16 CFR 1261 (clothing storage units) " +
			"[memory]",
	},
	{
		ID: "sharp-edges", Name: "Sharp edges, blades and glass",
		Family: "sharp-edge", Signal: Caution,
		Escalation: Escalation{Warning, "for broken toughened or laminated glass"},
		Spoken:     "Wear cut-resistant gloves and move your hands slowly, because the edges here cut deep.",
		Card:       "Sharp. Cut-resistant gloves.",
		Text: "Sheet metal, blades and broken glass cut tendons as easily as skin. Wear cut-resistant gloves, " +
			"file burrs, draw the knife blade back in, cut away from your hands, and sweep glass instead of " +
			"wiping it.",
		Gear:    []Gear{cutGloves, longSleeves, safetyGlasses},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Step, ""},
		Domains: []string{"appliance", "car", "any", "electronics"},
		Source: "29 CFR 1910.138 hand protection [memory]; UK HSE motor vehicle repair pages on handling " +
			"[secondary]",
	},
	{
		ID: "ladder-height", Name: "Ladders and heights",
		Family: "height-fall", Signal: Warning,
		Spoken: "Even a short fall can kill, so set the ladder firm and always keep a hand on it.",
		Card:   "Ladder firm. One hand on it.",
		Text: "Falls from no more than head height kill people. Set the ladder on firm level ground, about one " +
			"out for four up or with its spreaders locked, tie or hold it, keep your belt buckle between the " +
			"stiles and a hand free to hold on. Use a platform for two-handed work, and leave roofs to " +
			"roofers.",
		Gear:    []Gear{gripFootwear},
		Kit:     []string{"someone to hold the ladder"},
		Who:     Who{Trained, "A trained user; roof work by roofers, fall protection as local law asks."},
		When:    Timing{Before | Step | Return, ""},
		Arises:  []string{"on-ladder"},
		Domains: []string{"building", "gas", "electrical", "tool"},
		Source: "29 CFR 1926.1053(b) / 1910.23 [memory]; Trade summaries: 4 to 1, 3 ft past landing, three points " +
			"of contact [secondary]; UK HSE LA455/INDG455 [memory]",
	},
	{
		ID: "spill-slip", Name: "Slips, trips and spills",
		Family: "none", Signal: Caution,
		Spoken: "Spills and trailing leads make people fall, so mop up and clear the floor as you go.",
		Card:   "Mop up. Clear the floor.",
		Text: "Spills and trailing leads trip people, and a fall among tools breaks bones. Clear the walkway, " +
			"catch and mop up spills as they happen, and route leads overhead or along the wall.",
		Gear:    []Gear{gripFootwear},
		Kit:     []string{"drip tray and absorbent"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Step | After, ""},
		Domains: []string{"any", "car", "plumbing"},
		Source:  "UK HSE: slips are the commonest trade accident [read]",
	},
	{
		ID: "child-bystander", Name: "Child, pet or onlooker nearby",
		Family: "bystander-child", Signal: Warning,
		Escalation: Escalation{Danger, "with running engines, gas, high voltage or hot oil"},
		Spoken:     "This can hurt anyone close by, so keep children, pets and onlookers well away.",
		Card:       "Children and pets well away.",
		Text: "Children, pets and onlookers walk into dangers they cannot see and are injured first. Keep them " +
			"out of the work area from before the danger starts until it is over. If help is needed, name one " +
			"adult and that adult's one job.",
		Gear:    []Gear{safetyGlasses, earProtection},
		Who:     Who{CarefulAdult, "Adults only in the work area."},
		When:    Timing{Before | Return, "before the first danger, and again at each one"},
		Domains: []string{"any"},
		Source: "IEC 60335 manuals and CPSC advice on children (clause 7.12) [memory]; 29 CFR 1910.212(a)(1) " +
			"protects others in the area [read]; common workshop practice [common practice]",
	},
	{
		ID: "working-alone", Name: "Working alone",
		Family: "none", Signal: Warning,
		Spoken: "If you are hurt alone nobody will know, so tell someone and keep a phone on you.",
		Card:   "Tell someone. Keep a phone.",
		Text: "Someone hurt alone may lie there until it is too late. Tell somebody what you are doing and when " +
			"you will be done, keep a phone in reach, and do nothing under a vehicle, at height, on high " +
			"voltage, on gas or in an enclosed place by yourself.",
		NoGear:  "nothing worn replaces a second person",
		Kit:     []string{"phone", "first-aid kit"},
		Who:     Who{CarefulAdult, "Not alone for high-risk work."},
		When:    Timing{Before, ""},
		Arises:  []string{"alone"},
		Domains: []string{"any"},
		Source: "UK HSE INDG73: lone working is often allowed but some high-risk work needs a second person " +
			"[read]",
	},
	{
		ID: "carbon-parts", Name: "Carbon parts",
		Family: "critical-fastener", Signal: Warning,
		Spoken: "Use a torque wrench and the maker's figure, because crushed carbon breaks without warning.",
		Card:   "Torque wrench, maker's figure.",
		Text: "Carbon that has been crushed or crashed can snap without warning and throw the rider. Use a " +
			"calibrated torque wrench and the maker's figure for that exact part, carbon paste instead of " +
			"grease, and scrap a part that creaks, cracks or was crashed.",
		NoGear:  "it hurts the rider later, not the hands that fit it",
		Kit:     []string{"torque wrench"},
		Who:     Who{Trained, "A competent mechanic."},
		When:    Timing{Step | After, "with a check after a short ride"},
		Present: []string{"motion"},
		Domains: []string{"bicycle"},
		Source:  "ISO 4210-2 / TBIS copy: torque values, part inspection notes [read]",
	},
}
