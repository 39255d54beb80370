// Package trade knows the repair trade's units and tables: which spanner a
// thread takes, what torque a bolt bears, what colour a fuse has, what a
// battery's voltage means, how long a noise may last.
//
// In go texts as an author writes them ("10..20 Ω", "T25 bit") and plain
// numbers; out come typed values, small answers of checks, and table rows that
// each name their source. Where two standards differ, every answer says which
// standard it speaks for.
//
// The package never reports a finding, never reads a file, and never says that
// a value is safe: it says what published tables and formulas give. The
// maker's figure for the job in hand comes first.
package trade
