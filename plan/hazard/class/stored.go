package class

// storedClasses are the classes of energy stored in springs, fluids and
// gases, and guards that hold it back.
var storedClasses = []Class{
	{
		ID: "spring-energy", Name: "Loaded spring",
		Family: "stored-spring", Signal: Warning,
		Escalation: Escalation{Danger, "for garage door torsion springs, strut top nuts, spring brake chambers"},
		Spoken:     "A loaded spring can fly at your face, so hold it captive and stay out of its line.",
		Card:       "Hold the spring captive.",
		Text: "A loaded spring lets go without warning and strikes hard enough to break bones or blind. Capture " +
			"it with the right compressor or clips, keep your body out of the line it would fly along, and " +
			"release it slowly. If the tool is damaged or does not seat fully, stop; garage door springs, " +
			"strut springs and spring brakes are work for trained people.",
		Gear:    []Gear{faceShield, workGloves},
		Kit:     []string{"spring compressor rated for the spring"},
		Who:     Who{Trained, "Strut springs: a skilled person with a rated compressor; garage door torsion springs and spring brakes: a trained technician."},
		When:    Timing{Before | Step | Return, "before it is loaded, before the last fastener comes off, again on reassembly"},
		Present: []string{"spring"},
		Domains: []string{"car", "electric-vehicle", "appliance", "tool", "building", "bicycle"},
		Source: "29 CFR 1910.147(d)(5)(i)-(ii) stored energy relieved or restrained, re-check if it can build up " +
			"again [read]; Door trade body statement: consult a trained door systems technician for torsion " +
			"springs [read]; CPSC door hazard material [secondary]; makers' strut instructions [common " +
			"practice]",
	},
	{
		ID: "tensioned-line", Name: "Tight belt, chain, rope or strap",
		Family: "stored-spring", Signal: Warning,
		Spoken: "Slacken it slowly and keep out of its path, because a tight belt or rope whips back.",
		Card:   "Slacken slowly. Stand clear.",
		Text: "A tight belt, chain, rope or strap whips back or traps fingers when it lets go. Ease the tension " +
			"off with the tool on the tensioner's own drive point, keep fingers off its run, and clear " +
			"everyone from the line of a loaded rope or strap. Leave gloves off near a belt that can move.",
		Gear:    []Gear{safetyGlasses},
		Who:     Who{CarefulAdult, "Anyone careful for belts at rest; trained users for winches and recovery gear."},
		When:    Timing{Step | Return, ""},
		Present: []string{"spring", "motion"},
		Domains: []string{"car", "engine", "bicycle", "tool"},
		Source: "29 CFR 1910.147(d)(5)(i) [read]; 29 CFR 1910.219 belts and pulleys [memory]; winch makers' " +
			"instructions [common practice]",
	},
	{
		ID: "pinch-crush", Name: "Crushing and pinching gaps",
		Family: "crush-pinch", Signal: Caution,
		Escalation: Escalation{Warning, "for powered presses and scissor mechanisms"},
		Spoken:     "Keep your fingers out of the gap, because it closes hard enough to crush them.",
		Card:       "Fingers out of the gap.",
		Text: "A closing gap, press or lever crushes fingers before you can pull back, and a part that frees " +
			"suddenly strikes. Keep hands out of the gap and body out of its path, set presses and pullers " +
			"square, and take the load up gently.",
		Gear:    []Gear{workGloves, safetyGlasses},
		Who:     Who{CarefulAdult, "Anyone careful; press users trained."},
		When:    Timing{Step, ""},
		Present: []string{"motion"},
		Domains: []string{"car", "appliance", "tool", "bicycle", "any"},
		Source: "29 CFR 1910.212(a)(1) guard nip points and point of operation [read]; 29 CFR 1910.147(d)(5)(i) " +
			"[read]",
	},
	{
		ID: "fluid-injection", Name: "Jet of fluid under high pressure",
		Family: "high-pressure-fluid", Signal: Warning,
		Escalation: Escalation{Danger, "when the circuit is live"},
		Spoken:     "Let the pressure off and never feel for a leak, because a fine jet goes through skin.",
		Card:       "Pressure off. Never feel for it.",
		Text: "A jet of fluid too fine to see goes through gloves and skin and poisons the flesh beneath; the " +
			"limb can be lost. Let the pressure off first, never feel for a leak by hand, and look for it " +
			"with a piece of card. Any puncture, however small, is a hospital emergency at once.",
		Gear:     []Gear{faceShield, heavyGloves},
		Kit:      []string{"a piece of card to look for leaks"},
		Who:      Who{Trained, "A trained person for anything above hand-pump pressure."},
		When:     Timing{Before | Step | Return, ""},
		Answered: []string{"depressurised"},
		Present:  []string{"pressure"},
		Domains:  []string{"car", "engine", "tool"},
		Source: "Toolbox-talk alert: skin breached from about 100 psi (7 bar); systems 600-12,000 psi [read]; " +
			"University extension note: search with wood or cardboard, not fingers [read]; 29 CFR " +
			"1910.147(d)(5)(i) [read]",
	},
	{
		ID: "compressed-air", Name: "Compressed air",
		Family: "eye-debris", Signal: Caution,
		Escalation: Escalation{Warning, "near brake dust, lead or asbestos: do not blow at all"},
		Spoken:     "Compressed air drives grit into your eyes, so wear goggles and never aim it at anyone.",
		Card:       "Goggles on. Aim at nobody.",
		Text: "Compressed air throws grit into eyes and can force air through skin. Wear eye protection, keep " +
			"the nozzle to the pressure your local rules allow, and never point it at skin, clothing or " +
			"another person. Do not blow at dust that may hold asbestos or lead.",
		Gear:    []Gear{goggles, earProtection},
		Who:     Who{CarefulAdult, "Any careful adult; not children."},
		When:    Timing{Step | Return, ""},
		Present: []string{"pressure", "noise"},
		Domains: []string{"car", "tool", "any"},
		Source: "29 CFR 1910.242(b) less than 30 psi, chip guard, PPE [read]; OSHA letter 14 Jan 1994: not for " +
			"cleaning people or clothing [read]; 29 CFR 1917.154 [read]",
	},
	{
		ID: "tyre-inflation", Name: "Fitting and inflating a tyre",
		Family: "high-pressure-fluid", Signal: Warning,
		Escalation: Escalation{Danger, "for multi-piece rims and run-flat-damaged commercial tyres"},
		Spoken:     "Stand to one side and stop at the marked pressure, because a tyre can burst as it fills.",
		Card:       "Stand aside. Watch the gauge.",
		Text: "A tyre or rim that bursts under pressure can kill the person beside it. Inflate to the pressure " +
			"marked for tyre and rim, with a clip-on chuck, a gauge and a hose long enough to stand out of " +
			"the burst path. Truck and multi-piece rims need a cage or restraint and trained hands.",
		Gear:    []Gear{safetyGlasses, earProtection},
		Kit:     []string{"clip-on chuck and gauge"},
		Who:     Who{CarefulAdult, "Car and cycle tyres: anyone careful; commercial, run-flat-damaged and multi-piece rims: a trained fitter with a restraint."},
		When:    Timing{Step | Return, ""},
		Present: []string{"pressure", "noise"},
		Domains: []string{"car", "bicycle", "engine"},
		Source: "UK HSE tyre removal, replacement and inflation page: for commercial-type tyres (light ones now " +
			"near 70 psi) a restraint when inflating above 15 psi; a cage is not normally needed for car " +
			"tyres; stand outside the burst path [read]; 29 CFR 1910.177(d) restraint to 150% of max " +
			"pressure, clip-on chuck, trajectory [read]; 29 CFR 1910.177(a)(1) excludes cars and LT-tyre vans " +
			"[secondary]",
	},
	{
		ID: "pressurised-part", Name: "Sealed part under pressure",
		Family: "high-pressure-fluid", Signal: Warning,
		Spoken: "Never drill, cut or heat this part, because it is sealed under pressure and can burst.",
		Card:   "Never drill, cut or heat it.",
		Text: "A gas strut, damper, cylinder or other part under pressure bursts like a bomb if it is heated or " +
			"pierced, and the pieces injure. Do not heat, drill, cut or crush it; vent it only by the method " +
			"the maker gives, and hand spent ones to a scheme that takes them.",
		Gear:     []Gear{safetyGlasses, workGloves},
		Who:      Who{CarefulAdult, "Anyone careful, by the maker's method; disposal by a firm that takes them."},
		When:     Timing{Step | After, "again at disposal"},
		Answered: []string{"depressurised"},
		Present:  []string{"pressure"},
		Domains:  []string{"car", "appliance", "tool", "any"},
		Source: "29 CFR 1910.147(d)(5)(i) [read]; 29 CFR 1910.253 cylinders [memory]; makers' disposal sheets " +
			"[common practice]",
	},
	{
		ID: "defeat-safety-device", Name: "Guard or safety switch out of action",
		Family: "power-tool", Signal: Warning,
		Escalation: Escalation{Danger, "on microwave ovens, presses, gas controls"},
		Spoken:     "Put the guard and safety switch back before you run it, or it can maim you.",
		Card:       "Put the safety device back.",
		Text: "A guard, interlock or cut-out stops a machine from maiming someone; with it held off nothing " +
			"does. Never run a machine that way to use it. Where a test cannot be done otherwise, it is for a " +
			"competent person with hands clear, and the device is put back and proved before the cover goes " +
			"on.",
		NoGear: "the gear is that of the machine",
		Who:    Who{Trained, "A competent technician; some places forbid it outright on some appliances."},
		When:   Timing{Step | Close, "closed by putting the device back and proving it"},
		Arises: []string{"guard-off"},
		// It maims when it runs: with its supply or ignition off the guard is only a part.
		Answered: []string{"power-off", "battery-off", "spark-off", "key-off"},
		Present:  []string{"motion"},
		Domains:  []string{"appliance", "car", "tool", "gas", "electrical"},
		Source: "29 CFR 1910.333(b)(2)(ii): interlocks and push buttons are not isolation (WAC 296-24-975 copy) " +
			"[read]; 49 U.S.C. 30122(b) [read]; California 16 CCR 2743(a)(1) dealers may not defeat microwave " +
			"interlocks [read]; 29 CFR 1910.212(a) [read]",
	},
}
