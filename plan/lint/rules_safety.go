package lint

// safetyRules are the rules of the group Safety, by name.
var safetyRules = []Rule{}
