package power

import (
	"os"
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote/tent"
)

// BenchmarkBuild plans heat and current of the dinner that comes with the
// program; its tents are built before.
func BenchmarkBuild(b *testing.B) {
	c := demo(b)
	data, err := os.ReadFile("../../testdata/jobs/dinner.yaml")
	if err != nil {
		b.Fatal(err)
	}
	j := readJob(b, c, data)
	tents, list := tent.Build(c, j)
	if list.Err() != nil {
		b.Fatal(list)
	}
	for b.Loop() {
		Build(c, j, tents)
	}
}

// BenchmarkCover chooses among four kinds of which sixty each are at hand.
func BenchmarkCover(b *testing.B) {
	options := make([]option, 4)
	for i, size := range []int{136000, 64000, 41000, 23000} {
		options[i] = option{size: money.Int(size), first: money.Int(90 + 7*i), second: money.One, have: 60, most: 10}
	}
	for b.Loop() {
		cover(money.Int(8123457), options)
	}
}
