package load

import (
	"fmt"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// busyYard has the vehicles of a middling yard: seven kinds, two trailers.
func busyYard() *catalog.Catalog {
	box, flat := truck("box-26", 2, 15400, 26000, 26, 48), truck("stake-24", 1, 14200, 26000, 24, 46)
	box.Combined, flat.Combined = massOf(pounds(40000)), massOf(pounds(40000))
	flat.Longest = feet(30)
	long, short := truck("trailer-20", 1, 3900, 14000, 20, 22), truck("trailer-12", 1, 1850, 6000, 12, 14)
	long.Kind, long.TowedBy = "trailer", []string{"box-26", "stake-24"}
	short.Kind, short.TowedBy = "trailer", []string{"box-16", "box-26"}
	c := shop(truck("van", 1, 5350, 9070, 11, 18), truck("box-16", 1, 8900, 14500, 16, 32), box, flat,
		truck("flat-28", 1, 19800, 33000, 28, 74), long, short)
	for i := range c.Fleet.Vehicles {
		c.Fleet.Vehicles[i].Fill = money.Int(70)
	}
	return c
}

// busyJob has parts of every use, times larger than a wedding for 200.
func busyJob(lines, times int) []parts.Line {
	job := make([]parts.Line, lines)
	for i := range job {
		use := needed[i%len(needed)]
		job[i] = line(fmt.Sprintf("part-%d", i), use, (5+i*7%40)*times, 4+i*5%30, 1+i%6, 2+i%18)
		size := &job[i].Part.Pack.Size
		size.W, size.H = size.W/2, size.H/2
		job[i].Part.Wets = use == "top" || use == "walls"
		job[i].Part.Consumable = use == "mark"
		job[i].Part.Pack.Tare = massOf(unit.Pound)
	}
	return job
}

func BenchmarkPack(b *testing.B) {
	for _, size := range []struct{ lines, times int }{{60, 1}, {60, 10}, {600, 1}} {
		b.Run(fmt.Sprintf("%d lines x %d", size.lines, size.times), func(b *testing.B) {
			c, result := busyYard(), &parts.Result{Lines: busyJob(size.lines, size.times)}
			trips := 0
			b.ReportAllocs()
			for b.Loop() {
				plan, list := Pack(c, result, money.Int(20))
				if err := list.Err(); err != nil {
					b.Fatal(err)
				}
				trips = len(plan.Out.Trips)
			}
			b.ReportMetric(float64(trips), "trips")
		})
	}
}
