package plan

// Kind is the kind of thing an id names: its table's name.
type Kind string

// The tables whose elements have ids.
const (
	KindVariant  Kind = "variant"
	KindSource   Kind = "source"
	KindTool     Kind = "tool"
	KindPart     Kind = "part"
	KindSupply   Kind = "supply"
	KindFastener Kind = "fastener"
	KindFuse     Kind = "fuse"
	KindWire     Kind = "wire"
	KindSpec     Kind = "spec"
	KindTerm     Kind = "term"
	KindCaution  Kind = "caution"
	KindCause    Kind = "cause"
	KindTest     Kind = "test"
	KindClaim    Kind = "claim"
	KindSetup    Kind = "setup"
	KindStep     Kind = "step"
	KindPerson   Kind = "person"
)

// Ref names one thing of the plan.
type Ref struct {
	Kind Kind
	ID   string
}

// String is the long form that settles a clash: "tool:meter".
func (r Ref) String() string { return string(r.Kind) + ":" + r.ID }
