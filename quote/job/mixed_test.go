package job

import (
	"os"
	"strings"
	"testing"

	"tentwright/catalog/diag/diagtest"
)

// Faults of form and ids that the shop does not have come together, and what
// only follows from a fault is not reported beside it.
func TestMixedFaultsOfJobs(t *testing.T) {
	c := smallShop(t)
	diagtest.Each(t, os.DirFS("../../testdata/invalid/mixed-job"), func(t *testing.T, _ string, data []byte) {
		j, list := ReadFor(c, "job.yaml", data)
		if j != nil {
			t.Error("a job with faults was taken")
		}
		diagtest.Compare(t, "job.yaml", data, list)
	})
}

// A job without faults is read and checked; one whose text is no YAML is not
// checked.
func TestReadFor(t *testing.T) {
	c := smallShop(t)
	good := "number: 1\ncustomer: {name: A}\nevent: {name: B}\ndates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, " +
		"event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}\ntents: [{id: a, family: hip, size: 10x10}]\ndelivery: {distance: 8 mi}\n"
	if j, list := ReadFor(c, "job.yaml", []byte(good)); j == nil || len(list) > 0 {
		t.Errorf("got %v", list)
	}
	if j, list := ReadFor(c, "job.yaml", []byte(strings.Replace(good, "[{id", "{id", 1))); j != nil || len(list) != 1 {
		t.Errorf("got %v", list)
	}
}
