package class

// supportClasses are the classes of vehicles and heavy parts: how they are
// held, and what holds them together.
var supportClasses = []Class{
	{
		ID: "raised-vehicle", Name: "Raised vehicle, held on stands",
		Family: "raised-load", Signal: Warning,
		Escalation: Escalation{Danger, "when anyone goes beneath"},
		Spoken:     "Set the weight down on stands before you touch anything else, because a jack can slip.",
		Card:       "On stands, not on the jack.",
		Text: "A jack can creep, sink or slip, and a falling vehicle crushes whoever is beside it. Lift only at " +
			"the points the maker names, on firm level ground, and set the weight on rated stands before " +
			"touching anything else. A jack raises the load; it is never what holds it.",
		Gear:     []Gear{safetyGlasses, workGloves, safetyFootwear},
		Kit:      []string{"rated axle stands"},
		Who:      Who{CarefulAdult, "Any careful adult; two-post and four-post lifts by trained users."},
		When:     Timing{Before | Step | Return | Close, "before it goes up, before the first job done while it is up, each time it goes up again; it ends with the weight back on the ground"},
		Arises:   []string{"raised"},
		Answered: []string{"on-stands"},
		Present:  []string{"raised"},
		Domains:  []string{"car", "electric-vehicle"},
		Source: "29 CFR 1910.244(a)(1)-(2), esp. (a)(2)(iii) secure the load at once [read]; WAC 296-307-22509(3) " +
			"no work under a load held only by a jack [read]; 29 CFR 1926.305 [read]; UK HSE INDG434 and HSE " +
			"motor vehicle repair pages: jacks plus stands [read]; 29 CFR 1926.600(a)(3)(i) [secondary]",
	},
	{
		ID: "wheel-chocks", Name: "Wheel chocks and rolling away",
		Family: "raised-load", Signal: Warning,
		Spoken: "Chock the wheels first, or it can roll over you once the brake is off or one end is up.",
		Card:   "Chock the wheels first.",
		Text: "With one end raised or the parking brake freed, nothing may be left to hold the vehicle, and it " +
			"can roll over someone and crush them. Park on level ground, set the brake, select gear or park, " +
			"and chock the wheels that stay on the floor.",
		Gear:     []Gear{safetyFootwear},
		Kit:      []string{"wheel chocks"},
		Who:      Who{CarefulAdult, "Any careful adult."},
		When:     Timing{Before | Step | Return, "before the first lift, before the brake is freed and each time it is freed again"},
		Arises:   []string{"raised", "brake-freed"},
		Answered: []string{"chocked"},
		Present:  []string{"raised", "motion"},
		Domains:  []string{"car", "electric-vehicle", "engine"},
		Source: "UK HSE motor vehicle repair intro page: brakes on, wheels chocked [read]; 29 CFR 1926.600(a)(3) " +
			"brake set, chocked on a slope [secondary]; Note read in a compliance digest: OSHA has no chock " +
			"rule for cars on stands; falls under general duty [secondary]",
	},
	{
		ID: "under-load", Name: "Beneath a raised or hanging load",
		Family: "raised-load", Signal: Danger,
		Spoken: "A falling load kills, so never get under it until stands or a locked lift hold it.",
		Card:   "Never under a jack alone.",
		Text: "A vehicle or part that drops on someone beneath it crushes and kills. Nobody goes under until " +
			"the weight sits on stands or a locked lift and has been rocked to prove it. Keep wheels or spare " +
			"supports under the sills as a second barrier, and keep arms and head out of the line it would " +
			"fall along.",
		Gear:     []Gear{safetyGlasses, bumpCap, workGloves},
		Kit:      []string{"rated axle stands"},
		Who:      Who{CarefulAdult, "Any careful adult, never alone for heavy drops; lift users trained."},
		When:     Timing{Step | Return, "right before each job done beneath, every time someone goes back under"},
		Arises:   []string{"under"},
		Answered: []string{"on-stands"},
		Present:  []string{"raised"},
		Domains:  []string{"car", "electric-vehicle", "engine"},
		Source: "UK HSE INDG434: never beneath a vehicle held only by a jack; fatal cases listed [read]; UK HSE " +
			"motor vehicle repair intro page: most trade deaths are crush under poorly supported vehicles " +
			"[read]; WAC 296-307-22509(3) [read]; 29 CFR 1910.244(a)(2)(iii) [read]",
	},
	{
		ID: "occupant-raised", Name: "Someone sitting in a raised vehicle",
		Family: "raised-load", Signal: Warning,
		Spoken: "Climbing in can rock it off its stands, so check them again before anyone gets in.",
		Card:   "Check the stands again.",
		Text: "Getting in, pumping a pedal or starting the engine can rock a raised vehicle off its supports " +
			"and crush whoever is near. Keep everybody out unless the job needs them there; if someone must " +
			"sit in, check the stands again first and clear everyone from underneath.",
		NoGear:   "nothing worn protects against a falling vehicle; keeping people out does",
		Who:      Who{CarefulAdult, "Adults only; no children in the cab."},
		When:     Timing{Step | Return, "right before anyone gets in, and each time"},
		Answered: []string{"on-stands"},
		Present:  []string{"raised"},
		Domains:  []string{"car", "electric-vehicle"},
		Source: "UK HSE INDG434 (stability cases) [secondary]; vehicle makers' jack labels and handbooks: no " +
			"occupants while jacked [common practice]",
	},
	{
		ID: "suspended-part", Name: "Heavy part hoisted, propped or hanging",
		Family: "raised-load", Signal: Warning,
		Spoken: "Keep out from under a hanging load and out of its path, because it can swing or drop.",
		Card:   "Keep out of its path.",
		Text: "A part on a hoist or a prop can swing, slip or drop without warning and crush anyone in its way. " +
			"Stay out from under it and out of its path, check the rated load of every link in the chain, and " +
			"hold lids and tailgates with a solid prop before the strut comes off.",
		Gear:    []Gear{workGloves, safetyFootwear, bumpCap},
		Kit:     []string{"lifting gear rated for the load"},
		Who:     Who{CarefulAdult, "Two adults, with lifting gear used to its marked rating."},
		When:    Timing{Step | Return, "before the load is taken up and before each move"},
		Present: []string{"raised"},
		Domains: []string{"car", "electric-vehicle", "engine", "appliance"},
		Source: "29 CFR 1926.600(a)(3)(i) parts held aloft blocked before work under or between [secondary]; 29 " +
			"CFR 1910.147(d)(5)(i) stored energy incl. gravity restrained [read]; UK HSE INDG434 hoist case " +
			"[read]; UK HSE motor vehicle repair intro page: prop raised bodies [read]",
	},
	{
		ID: "roadside", Name: "Work beside live traffic",
		Family: "bystander-child", Signal: Warning,
		Spoken: "Passing traffic can kill you here, so get well away from the road before you start.",
		Card:   "Get away from the traffic.",
		Text: "Drivers do not expect someone working at the roadside, and being struck is often fatal. Get " +
			"clear of the carriageway first, put lights and a high-visibility vest on, and keep passengers " +
			"behind the barrier. If the side to work on faces the traffic, call recovery; local law decides " +
			"what is allowed.",
		Gear:    []Gear{hiVis},
		Kit:     []string{"warning triangle where the law allows one"},
		Who:     Who{CarefulAdult, "Any careful adult well clear of the traffic; motorways are for trained recovery crews, and local law decides."},
		When:    Timing{Before, "before anything is done at that place"},
		Present: []string{"motion"},
		Domains: []string{"car", "bicycle"},
		Source: "UK HSE HSG261 covers roadside repair and recovery [read]; road-safety handbooks [common " +
			"practice]",
	},
	{
		ID: "road-test", Name: "First drive or ride after the repair",
		Family: "critical-fastener", Signal: Warning,
		Spoken: "Brakes can fail on the first run, so try them at walking pace, away from traffic.",
		Card:   "Brakes first, at walking pace.",
		Text: "A fault left in brakes, steering or wheels shows at the first corner and can cause a crash. Before " +
			"moving off, prove the brakes hold, then check steering, lights and every wheel fastener; make the " +
			"first stops slow and away from traffic. Drive only what is insured and roadworthy, and leave " +
			"instruments to a second person.",
		Gear:    []Gear{cycleHelmet},
		Who:     Who{CarefulAdult, "A licensed, insured driver; a second person for any instrument."},
		When:    Timing{Step | After, "before moving off; followed by a check"},
		Present: []string{"motion"},
		Domains: []string{"car", "electric-vehicle", "bicycle"},
		Source: "Maker's service precaution (diesel injection): instruments secured in the rear and read by a " +
			"second person [read]; 16 CFR 1512.19(a) bicycle manual must cover brake operation and safe " +
			"riding [read]; traffic law [common practice]",
	},
	{
		ID: "critical-fastener", Name: "Fastener that lives depend on",
		Family: "critical-fastener", Signal: Warning,
		Spoken: "Tighten every one of these to the maker's figure, because a loose one can cause a crash.",
		Card:   "Tighten to the maker's figure.",
		Text: "These fasteners hold brakes, steering, wheels or belts on, and one that works loose can cause a " +
			"fatal crash. Use the maker's torque for this exact model, renew single-use bolts and split pins, " +
			"mark each one when it is tight, and check again after a short distance. If the figure cannot be " +
			"found, stop and hand the job to a qualified mechanic.",
		Gear:    []Gear{workGloves, safetyGlasses},
		Kit:     []string{"torque wrench"},
		Who:     Who{Trained, "A competent person; a qualified mechanic where torque figures or tools are missing. Some places require an inspection after brake or structural work."},
		When:    Timing{Step | After, "at undoing, for what must be renewed; at refitting, for torque and check mark; checked again later"},
		Present: []string{"motion"},
		Domains: []string{"car", "electric-vehicle", "bicycle"},
		Source: "Owner's handbook: retighten lug nuts within 100 miles (160 km) of any wheel disturbance [read]; " +
			"49 U.S.C. 30122(b) repair business may not make a required safety device inoperative [read]; 16 " +
			"CFR 1512.19(a)(3) bicycle maintenance instructions [read]; ISO 4210-2 / TBIS copy: instructions " +
			"must give torque values, genuine parts for safety-critical items [read]; 49 CFR 570 in-use " +
			"inspection [memory]",
	},
	{
		ID: "hanging-caliper", Name: "Part hanging by its hose or cable",
		Family: "critical-fastener", Signal: Notice,
		Spoken: "Tie the part up before you let go, because its weight can tear the hose or cable.",
		Card:   "Tie it up. Never let it hang.",
		Text: "A brake hose, cable or wire that carries the weight of a part is damaged inside where nobody " +
			"sees it, and fails later. Tie the part up with wire or a hook; if a brake hose has been " +
			"stretched, replace it.",
		NoGear:  "no injury in doing it; the hose is what suffers",
		Kit:     []string{"wire or a hook to hang it by"},
		Who:     Who{Anyone, "Anyone."},
		When:    Timing{Step, ""},
		Domains: []string{"car", "electric-vehicle", "bicycle"},
		Source:  "trade service manuals [common practice]",
	},
}
