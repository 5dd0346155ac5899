package job

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Faults of form and ids that the shop does not have come together, and what
// only follows from a fault is not reported beside it.
func TestMixedFaultsOfJobs(t *testing.T) {
	c := smallShop(t)
	files, err := filepath.Glob("../../testdata/invalid/mixed-job/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no fixtures found", err)
	}
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			wants := strings.Split(string(data), "\n")
			j, list := ReadFor(c, "job.yaml", data)
			if j != nil {
				t.Error("a job with faults was taken")
			}
			for n, line := range wants {
				_, wants[n], _ = strings.Cut(line, "# want: ")
			}
			for _, p := range list {
				if want := wants[p.Pos.Line-1]; want == "" || !strings.Contains(p.String(), want) {
					t.Errorf("not wanted: %s", p)
				} else {
					wants[p.Pos.Line-1] = ""
				}
			}
			if n := slices.IndexFunc(wants, func(want string) bool { return want != "" }); n >= 0 {
				t.Errorf("line %d: nothing says %q", n+1, wants[n])
			}
		})
	}
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
