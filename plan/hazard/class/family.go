package class

// NoFamily is the family of classes that count under none: a caution is
// offered for them and never demanded.
const NoFamily = "none"

// Family is a group of classes that one caution covers. It is what a plan's
// author and the linter's findings speak of; the class picks the words.
type Family struct {
	ID   string
	Name string // what hurts, in words: "mains shock", "a hot surface"
	Lead string // id of the class that stands for the family; empty for NoFamily
}

// families stand in the order of their first class; NoFamily is last. A family
// that shares its id with a class is led by that class, so that the one name
// means one thing in a plan.
var families = [...]Family{
	{"raised-load", "a raised or falling load", "raised-vehicle"},
	{"bystander-child", "harm to a child or bystander", "child-bystander"},
	{"critical-fastener", "a loose fastener that lives depend on", "critical-fastener"},
	{"stored-spring", "stored spring energy", "spring-energy"},
	{"crush-pinch", "crushing and pinching", "pinch-crush"},
	{"high-pressure-fluid", "fluid under pressure", "fluid-injection"},
	{"eye-debris", "flying bits in the eyes", "eye-impact"},
	{"power-tool", "a power tool", "power-blade"},
	{"airbag-srs", "an airbag or belt pretensioner", "srs-airbag"},
	{"battery-chemical", "battery gas and acid", "battery-gas-acid"},
	{"electric-short", "a short circuit", "battery-short"},
	{"high-voltage-dc", "high voltage of a vehicle or an ignition", "hv-vehicle"},
	{"rotating-parts", "moving parts", "rotating-parts"},
	{"hot-surface", "a hot surface", "hot-surface"},
	// Water and steam speak for boilers, machines and engines alike; the words
	// of hot-coolant fit an engine only.
	{"scald-pressure", "scalding under pressure", "hot-water-steam"},
	{"fuel-vapour", "fuel and its vapour", "fuel-vapour"},
	{"chemical-skin-lung", "chemicals and dust on skin and lungs", "chemicals-solvents"},
	{"asbestos-dust", "asbestos dust", "asbestos-building"},
	{"refrigerant", "cooling gas", "refrigerant"},
	{"carbon-monoxide", "carbon monoxide", "exhaust-co"},
	{"hot-work-fire", "fire from hot work", "hot-work"},
	{"lead-hazard", "lead", "lead-paint"},
	{"mains-shock", "mains shock", "mains-isolation"},
	{"licensed-work", "work for a licensed person", "fixed-wiring"},
	{"capacitor-charge", "stored electric charge", "capacitor-charge"},
	{"water-electric", "water near electricity", "water-electricity"},
	{"lithium-fire", "a lithium battery fire", "lithium-cells"},
	{"gas-leak", "a gas leak", "gas-appliance"},
	{"hearing", "damage to hearing", "hearing"},
	{"heavy-lift", "heavy lifting", "heavy-lift"},
	{"sharp-edge", "sharp edges", "sharp-edges"},
	{"height-fall", "a fall from a height", "ladder-height"},
	{NoFamily, "notices", ""},
}

// Families are all families in catalogue order, NoFamily last.
func Families() []Family {
	all := families
	return all[:]
}

// FindFamily is the family of that id, spelled exactly.
func FindFamily(id string) (Family, bool) {
	for _, f := range families {
		if f.ID == id {
			return f, true
		}
	}
	return Family{}, false
}

// InFamily are the classes of a family in catalogue order, none for a family
// that is not there.
func InFamily(id string) []Class {
	var in []Class
	for _, c := range index().byFamily[id] {
		in = append(in, c.clone())
	}
	return in
}

// Lead is the class whose words are used when a plan lists a family by name.
// NoFamily has none.
func Lead(family string) (Class, bool) {
	f, _ := FindFamily(family)
	return Find(f.Lead)
}
