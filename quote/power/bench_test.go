package power

import (
	"os"
	"testing"

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
