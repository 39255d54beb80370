package class

// What gear guards. A plan's supply says the same in protects.
const (
	Eyes    = "eyes"
	Hearing = "hearing"
	Hands   = "hands"
	Lungs   = "lungs"
	Feet    = "feet"
	Head    = "head"
	Body    = "body"
)

// BodyParts are the words that Gear.Protects and a supply's protects know.
func BodyParts() []string {
	return []string{Eyes, Hearing, Hands, Lungs, Feet, Head, Body}
}

// Gear is one thing worn against a hazard.
type Gear struct {
	Protects string // one of BodyParts
	Name     string // "safety glasses"
}

// The gear the catalogue names, once each, so that one thing has one name in
// every list a plan prints.
var (
	safetyGlasses = Gear{Eyes, "safety glasses"}
	goggles       = Gear{Eyes, "goggles"}
	faceShield    = Gear{Eyes, "face shield"}
	weldingHelmet = Gear{Eyes, "welding helmet"}

	earProtection = Gear{Hearing, "ear protection"}

	workGloves        = Gear{Hands, "work gloves"}
	heavyGloves       = Gear{Hands, "heavy gloves"}
	acidGloves        = Gear{Hands, "acid-resistant gloves"}
	fuelGloves        = Gear{Hands, "fuel-resistant gloves"}
	nitrileGloves     = Gear{Hands, "nitrile gloves"}
	coldGloves        = Gear{Hands, "insulated gloves against cold"}
	leatherGloves     = Gear{Hands, "leather gloves"}
	heatGloves        = Gear{Hands, "heat-resistant gloves"}
	chemicalGloves    = Gear{Hands, "chemical-resistant gloves"}
	insulatingGloves  = Gear{Hands, "insulating gloves"}
	highVoltageGloves = Gear{Hands, "tested high-voltage gloves with leather covers"}
	dryGloves         = Gear{Hands, "dry gloves"}
	cutGloves         = Gear{Hands, "cut-resistant gloves"}

	respirator = Gear{Lungs, "respirator of the class local rules name"}
	dustMask   = Gear{Lungs, "dust mask"}
	airFedMask = Gear{Lungs, "air-fed mask"}

	safetyFootwear     = Gear{Feet, "safety footwear"}
	insulatingFootwear = Gear{Feet, "insulating footwear"}
	gripFootwear       = Gear{Feet, "non-slip footwear"}

	bumpCap     = Gear{Head, "bump cap"}
	cycleHelmet = Gear{Head, "helmet on a cycle"}

	hiVis       = Gear{Body, "high-visibility vest"}
	longSleeves = Gear{Body, "long sleeves"}
	apron       = Gear{Body, "waterproof apron"}
	coverall    = Gear{Body, "coverall"}
)
