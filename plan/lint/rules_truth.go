package lint

// truthRules are the rules of the group Truth, by name.
var truthRules = []Rule{
	batteryUnchecked, causeUntested, differsUnsaid, driveOlderStandard, driveUnknown, fuseColour,
	fuseWire, objectUntried, sourceDated, sourceMissing, testUnshown, testWithoutReading,
	torqueImplausible, torqueUnitSlip, valueOpen,
}
