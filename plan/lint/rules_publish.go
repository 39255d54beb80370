package lint

// publishRules are the rules of the group Publish, by name.
var publishRules = []Rule{titleLong}
