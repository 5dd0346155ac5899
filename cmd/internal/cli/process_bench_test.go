//go:build linux

package cli_test

import (
	"os/exec"
	"path/filepath"
	"slices"
	"syscall"
	"testing"
	"time"
)

// BenchmarkProcess starts the built program anew for each quote with its
// workbook, whole and without the record that a requote needs.
func BenchmarkProcess(b *testing.B) {
	b.Run("whole", func(b *testing.B) { benchmarkProcess(b) })
	b.Run("without-record", func(b *testing.B) { benchmarkProcess(b, "--without", "record") })
}

// benchmarkProcess reports the median time and the most memory of any process,
// which only Linux counts in kB.
func benchmarkProcess(b *testing.B, flags ...string) {
	dir := b.TempDir()
	program, book := filepath.Join(dir, "tentwright"), filepath.Join(dir, "dinner.xlsx")
	if said, err := exec.Command("go", "build", "-o", program, "tentwright/cmd/tentwright").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, said)
	}
	file := filepath.Join("..", "..", "..", "testdata", "jobs", "dinner.yaml")
	const runs = 20
	var times []time.Duration
	var most int64
	for b.Loop() {
		for range runs {
			cmd := exec.Command(program, append([]string{"quote", file, "-o", book, "--force"}, flags...)...)
			start := time.Now()
			if said, err := cmd.CombinedOutput(); err != nil {
				b.Fatalf("%v: %s", err, said)
			}
			times = append(times, time.Since(start))
			if used, ok := cmd.ProcessState.SysUsage().(*syscall.Rusage); ok {
				most = max(most, used.Maxrss)
			}
		}
	}
	slices.Sort(times)
	b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "ms/process")
	b.ReportMetric(float64(most)/1024, "MB-peak")
	b.ReportMetric(0, "ns/op")
}
