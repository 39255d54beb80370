package order_test

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fixslate/plan/diag/outside"
	"fixslate/shotlist/order"
)

// A published problem of TSPLIB 95 with the bounds known for it; the sources
// of the bounds stand in the data's own table.
type published struct {
	name         string
	p            order.Problem
	lower, upper int
}

func readPublished(tb testing.TB) []published {
	tb.Helper()
	dir := outside.Data(tb, "sop")
	table, err := os.Open(filepath.Join(dir, "best-known.tsv"))
	if err != nil {
		tb.Fatal(err)
	}
	defer table.Close()
	var all []published
	for sc := bufio.NewScanner(table); sc.Scan(); {
		f := strings.Split(sc.Text(), "\t")
		if len(f) < 4 || f[0] == "instance" || strings.HasPrefix(f[0], "#") {
			continue
		}
		file, err := os.Open(filepath.Join(dir, f[0]+".sop"))
		if err != nil {
			tb.Fatal(err)
		}
		p, err := order.ReadSOP(file)
		file.Close()
		if err != nil {
			tb.Fatalf("%s: %v", f[0], err)
		}
		x := published{name: f[0], p: p}
		if n, _ := strconv.Atoi(f[1]); n != len(p.Cost) {
			tb.Fatalf("%s: read %d nodes, the table says %s", f[0], len(p.Cost), f[1])
		}
		x.lower, _ = strconv.Atoi(f[2])
		x.upper, _ = strconv.Atoi(f[3])
		all = append(all, x)
	}
	return all
}

// No sequence beats a published lower bound, no bound a published sequence,
// and the default rounds come within a tenth of the best known.
func TestPublished(t *testing.T) {
	for _, x := range readPublished(t) {
		r, err := order.Solve(t.Context(), x.p, order.Budget{})
		if err != nil {
			t.Fatalf("%s: %v", x.name, err)
		}
		check(t, x.p, r)
		if r.Cost < x.lower || r.Bound > x.upper {
			t.Errorf("%s: cost %d and bound %d, published %d to %d", x.name, r.Cost, r.Bound, x.lower, x.upper)
		}
		if 10*r.Cost > 11*x.upper {
			t.Errorf("%s: cost %d, best known %d", x.name, r.Cost, x.upper)
		}
	}
}

// BenchmarkOrder prints the gap to the best known sequence after 0.1 s and 1 s,
// over five seeds.
func BenchmarkOrder(b *testing.B) {
	all := readPublished(b)
	budgets := []float64{0.1, 1}
	for b.Loop() {
		var table strings.Builder
		fmt.Fprintf(&table, "%-10s %4s %9s", "problem", "n", "best")
		for _, s := range budgets {
			fmt.Fprintf(&table, " | %3.1f s: %8s %4s %6s %7s", s, "gap", "hits", "proved", "bound")
		}
		means := make([]float64, len(budgets))
		for _, x := range all {
			fmt.Fprintf(&table, "\n%-10s %4d %9d", x.name, len(x.p.Cost), x.upper)
			for k, s := range budgets {
				gap := row(b, &table, x, s)
				means[k] += gap / float64(len(all))
			}
		}
		for k, s := range budgets {
			fmt.Fprintf(&table, "\nmean gap after %.1f s: %.4f %%", s, means[k])
			b.ReportMetric(means[k], fmt.Sprintf("%%gap/%.1fs", s))
		}
		fmt.Println(table.String())
	}
}

// row writes five runs of one problem and gives their mean gap in percent.
func row(b *testing.B, table *strings.Builder, x published, seconds float64) float64 {
	const seeds = 5
	gap, hits, proofs, bound := 0.0, 0, 0, 0
	for seed := range uint64(seeds) {
		r, err := order.Solve(b.Context(), x.p, order.Budget{Seconds: seconds, Seed: seed})
		if err != nil {
			b.Fatalf("%s: %v", x.name, err)
		}
		gap += 100 * (float64(r.Cost)/float64(x.upper) - 1) / seeds
		bound = max(bound, r.Bound)
		if r.Cost <= x.upper {
			hits++
		}
		if r.Optimal {
			proofs++
		}
	}
	fmt.Fprintf(table, " | %12.3f %% %2d/%d %4d/%d %7d", gap, hits, seeds, proofs, seeds, bound)
	return gap
}

// BenchmarkDay times the default rounds on made days.
func BenchmarkDay(b *testing.B) {
	for _, d := range []day{{12, 1, 3, 0.1}, {40, 1, 6, 0.1}, {40, 2, 5, 0.1}, {60, 2, 6, 0.1}, {100, 1, 12, 0.05}, {2000, 2, 40, 0.05}} {
		b.Run(fmt.Sprintf("shots=%d/chains=%d", d.shots, d.chains), func(b *testing.B) {
			p := d.problem(seeded(1))
			for b.Loop() {
				if _, err := order.Solve(b.Context(), p, order.Budget{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
