package plan

import (
	"encoding/json"
	"slices"
)

// Schema is the JSON Schema (draft-07, the one that editors with TOML support
// know best) of the plan language, made from the same description as the
// decoder. It is a little wider than the decoder: it cannot know which ids
// exist.
func Schema() []byte {
	top := schemaOf(Language())
	top["$schema"] = "http://json-schema.org/draft-07/schema#"
	top["title"] = "fixslate repair plan, version 1"
	out, err := json.MarshalIndent(top, "", "  ")
	if err != nil {
		panic(err) // maps of strings always marshal
	}
	return append(out, '\n')
}

type schema = map[string]any

func schemaOf(t Table) schema {
	properties, required := schema{}, []string{}
	for _, k := range t.Keys {
		if k.Need {
			required = append(required, k.Name)
		}
		if inner, isTable := t.Find(k.Name); isTable && (k.Type == "table" || k.Type == "list of tables") {
			s := schemaOf(inner)
			s["description"] = inner.Doc
			if inner.List {
				s = schema{"type": "array", "items": s, "description": k.Doc}
				if k.Need {
					s["minItems"] = 1
				}
			}
			properties[k.Name] = s
			continue
		}
		properties[k.Name] = keySchema(k)
	}
	s := schema{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		s["required"] = required
	}
	return s
}

func keySchema(k Key) schema {
	text := schema{"type": "string"}
	if len(k.Words) > 0 {
		text["enum"] = slices.Concat(k.Words, []string{"?"})
	}
	open := schema{"const": "?"}
	texts := schema{"type": "array", "items": text}
	var s schema
	switch k.Type {
	case "list", "list of ids", "list of ids or names":
		s = either(texts, text)
	case "list of ids or tables":
		use := schemaOf(describe(&cautionUseTable))
		s = either(schema{"type": "array", "items": either(text, use)}, text)
	case "true or false":
		s = either(schema{"type": "boolean"}, open)
	case "whole number":
		s = either(schema{"type": "integer", "minimum": 1}, open)
	case "number":
		s = either(schema{"type": "number", "exclusiveMinimum": 0}, open)
	case "word or number":
		s = either(schema{"enum": []string{"usual", "sometimes", "rare", "?"}}, schema{"type": "number", "exclusiveMinimum": 0, "maximum": 1})
	case "false or text":
		s = either(schema{"type": "boolean"}, text)
	default:
		s = text
	}
	s["description"] = k.Doc
	if k.Default != "" {
		s["description"] = k.Doc + " (if unset: " + k.Default + ")"
	}
	return s
}

func either(a, b schema) schema { return schema{"anyOf": []schema{a, b}} }
