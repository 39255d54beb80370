package lint

// editRules are the rules of the group AfterEdit, by name.
var editRules = []Rule{}
