package class

import (
	"slices"
	"testing"
)

// A family and its classes know each other.
func TestFamilies(t *testing.T) {
	seen, names := map[string]bool{}, map[string]bool{}
	classes := 0
	for _, f := range Families() {
		if seen[f.ID] || names[f.Name] || f.Name == "" {
			t.Errorf("family %q, name %q: twice or unnamed", f.ID, f.Name)
		}
		seen[f.ID], names[f.Name] = true, true
		in := InFamily(f.ID)
		classes += len(in)
		for _, c := range in {
			if c.Family != f.ID {
				t.Errorf("%s stands in %s and says %s", c.ID, f.ID, c.Family)
			}
		}
		lead, ok := Lead(f.ID)
		switch {
		case f.ID == NoFamily:
			if ok {
				t.Errorf("%s has a lead: %s", f.ID, lead.ID)
			}
		case !ok || !slices.ContainsFunc(in, func(c Class) bool { return c.ID == lead.ID }):
			t.Errorf("%s: lead %q is not one of its classes", f.ID, f.Lead)
		}
	}
	if classes != len(All()) {
		t.Errorf("families hold %d classes, the catalogue %d", classes, len(All()))
	}
	if len(seen) != 33 {
		t.Errorf("%d families, want 33 with %q", len(seen), NoFamily)
	}
	if last := Families()[len(seen)-1]; last.ID != NoFamily {
		t.Errorf("%s is last, want %s", last.ID, NoFamily)
	}
}

// A plan that lists a name must get the same words whether it is read as a
// class or as a family.
func TestSharedNamesMeanOneThing(t *testing.T) {
	shared := 0
	for _, f := range Families() {
		if c, ok := Find(f.ID); ok {
			shared++
			if f.Lead != c.ID {
				t.Errorf("%s is a class, but the family of that id is led by %s", c.ID, f.Lead)
			}
		}
	}
	if shared == 0 {
		t.Error("no family shares its id with a class")
	}
}

// The lead speaks for its family as strongly as the mildest injury in it.
func TestLeadIsNoNotice(t *testing.T) {
	for _, f := range Families() {
		if c, ok := Lead(f.ID); ok && c.Signal == Notice {
			t.Errorf("%s is led by the notice %s", f.ID, c.ID)
		}
	}
}

func TestUnknownFamily(t *testing.T) {
	if _, ok := FindFamily("sharks"); ok {
		t.Error("FindFamily found sharks")
	}
	if _, ok := Lead("sharks"); ok {
		t.Error("Lead found sharks")
	}
	if got := InFamily("sharks"); len(got) != 0 {
		t.Errorf("InFamily found %d sharks", len(got))
	}
}
