package plan

// cautionUses reads a step's cautions: names, or { id or hazard, say, side }.
func (r *reader) cautionUses(t target, value any) []StepCaution {
	entries, isList := value.([]any)
	if rows, ok := value.([]map[string]any); ok {
		isList = true
		for _, row := range rows {
			entries = append(entries, row)
		}
	}
	if !isList {
		entries = []any{value}
	}
	var uses []StepCaution
	for i, entry := range entries {
		at := &element{path: t.path(), parent: t.at}
		if isList {
			at.path = nth(t.path(), i)
		}
		use := StepCaution{path: at.path}
		switch entry := entry.(type) {
		case string:
			if use.ID = entry; entry == "?" {
				continue // still to be found
			}
		case map[string]any:
			cautionUseTable.read(r, at, entry, &use)
			if use.ID == "" && use.hazard == "" {
				r.fault("key-missing", at.path, `write { hazard = "sharp-edges", say = "…" }`, "a caution of a step needs id or hazard")
				continue
			}
		default:
			r.fault("type-wrong", at.path, "write "+t.key.Example, "a caution is a name or a table, not %s", typeOf(entry))
			continue
		}
		uses = append(uses, use)
	}
	return uses
}

var cautionUseTable = table[StepCaution]{
	name: "step.cautions", doc: "a caution as one step gives it",
	keys: []key[StepCaution]{
		{Key{Name: "id", Doc: "caution by id, hazard class or family", Example: `"mains-isolation"`}, func(v *StepCaution) any { return &v.ID }},
		{Key{Name: "hazard", Doc: "hazard class or family", Example: `"sharp-edges"`}, func(v *StepCaution) any { return &v.hazard }},
		{Key{Name: "say", Doc: "what is spoken in this step", Default: "the caution's words", Example: `"Mind the edge of the lid."`}, func(v *StepCaution) any { return &v.Say }},
		{Key{Name: "side", Doc: "only for this side", Example: `"left"`}, func(v *StepCaution) any { return &v.Side }},
	},
}
