package lint

// truthRules are the rules of the group Truth, by name.
var truthRules = []Rule{}
