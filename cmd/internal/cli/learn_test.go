package cli

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// type-actual BOOK TIMES [KEY=HOURS]...: types beside every task that has hours
// so many times as many, to two places, or what stands behind its key. The
// library of the format writes the file anew, as an office's program does.
func typeActual(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: type-actual BOOK TIMES [KEY=HOURS]...")
	}
	times, err := strconv.ParseFloat(args[1], 64)
	ts.Check(err)
	ts.Check(actualInto(ts.MkAbs(args[0]), times, args[2:]))
}

// actualInto edits a workbook in place.
func actualInto(path string, times float64, typed []string) error {
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	found, err := xlsx.Read(path, data)
	if err != nil {
		return err
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		return err
	}
	defer f.Close()
	keys, hours, actual := found.Names["task_key"], found.Names["task_hours"], found.Names["task_actual"]
	s := found.Sheet(keys.Sheet)
	for row := keys.R1; row <= keys.R2; row++ {
		var v any = math.Round(s.At(row, hours.C1).Number*times*100) / 100
		for _, t := range typed {
			if key, value, _ := strings.Cut(t, "="); key == s.At(row, keys.C1).Text {
				if v = value; value == "" {
					v = nil
				} else if n, err := strconv.ParseFloat(value, 64); err == nil {
					v = n
				}
			}
		}
		if v == 0.0 {
			continue
		}
		if err := f.SetCellValue(keys.Sheet, sheet.Ref(row, actual.C1), v); err != nil {
			return err
		}
	}
	return f.SaveAs(path)
}

// season writes workbooks of jobs with actual hours, and gives their names.
func season(tb testing.TB, dir string, books int) []string {
	tb.Helper()
	a, _, errs := testApp()
	var names []string
	for i := range books {
		job := []string{"garden", "dinner", "fairground"}[i%3]
		data, err := os.ReadFile("../../../testdata/jobs/" + job + ".yaml")
		if err != nil {
			tb.Fatal(err)
		}
		number := fmt.Sprintf("number: %s-%03d\n", job, i)
		_, rest, _ := strings.Cut(string(data), "number: ")
		_, rest, _ = strings.Cut(rest, "\n")
		file := filepath.Join(dir, fmt.Sprintf("%03d.yaml", i))
		book := strings.TrimSuffix(file, ".yaml") + ".xlsx"
		if err := os.WriteFile(file, []byte(number+rest), 0o644); err != nil {
			tb.Fatal(err)
		}
		if code := a.run(newRoot(a), []string{"quote", file, "-o", book}); code != Done {
			tb.Fatalf("exit code %d: %s", code, errs)
		}
		if err := actualInto(book, 1.2+0.01*float64(i%7), nil); err != nil {
			tb.Fatal(err)
		}
		names = append(names, book)
	}
	return names
}

// What is proposed does not hang on which workbook is read first, nor on the order
// in which they stand on the line.
func TestLearnOrder(t *testing.T) {
	names := season(t, t.TempDir(), 4)
	run := func(names ...string) string {
		a, out, errs := testApp()
		if code := a.run(newRoot(a), append([]string{"learn", "--json"}, names...)); code != Done {
			t.Fatalf("exit code %d: %s", code, errs)
		}
		return out.String()
	}
	want := run(names...)
	if !strings.Contains(want, `"state": "change"`) {
		t.Errorf("no change in\n%s", want)
	}
	for range 3 {
		if got := run(names...); got != want {
			t.Fatal("the same workbooks give something else")
		}
	}
	if got := run(names[2], names[0], names[3], names[1]); got != want {
		t.Error("another order gives something else")
	}
}

// What was said of workbooks by workers comes in the order of the workbooks, and
// no bar is drawn where there is no terminal.
func TestLearnTellsInOrder(t *testing.T) {
	dir := t.TempDir()
	var args []string
	for i := range 30 {
		name := filepath.Join(dir, fmt.Sprintf("%02d.xlsx", i))
		if err := os.WriteFile(name, []byte(strings.Repeat("x", 100*(30-i))), 0o644); err != nil {
			t.Fatal(err)
		}
		args = append(args, name)
	}
	a, out, errs := testApp()
	if code := a.run(newRoot(a), append([]string{"learn"}, args...)); code != Faults || out.Len() > 0 {
		t.Errorf("exit code %d, result %q", code, out)
	}
	at := 0
	for _, name := range args {
		next := strings.Index(errs.String(), name)
		if next < at {
			t.Fatalf("%s stands out of order in\n%s", name, errs)
		}
		at = next
	}
	if strings.ContainsAny(errs.String(), "\r\x1b") {
		t.Errorf("a bar was drawn into %q", errs)
	}
}

// Minutes of one system of units are no minutes of the other: the workbook is told
// with the shop.
func TestLearnUnits(t *testing.T) {
	metric := filepath.Join("..", "..", "..", "testdata", "shops", "metric")
	names := season(t, t.TempDir(), 1)
	a, out, errs := testApp()
	code := a.run(newRoot(a), append([]string{"learn", "--shop", metric}, names...))
	if want := names[0] + " counts in imperial units; those of the shop " + metric + ", metric, were expected"; code != Faults || out.Len() > 0 || !strings.Contains(errs.String(), want) {
		t.Errorf("exit code %d, said %q; %q was expected", code, errs, want)
	}
}

// Whatever a file holds, it is a workbook that is learned from, or one of which a
// person is told why not.
func FuzzLearn(f *testing.F) {
	f.Chdir(f.TempDir())
	a, _, errs := testApp()
	for _, args := range []string{"quote --tent hip:20x20 --guests 30 --date 2026-06-20 --miles 3 --save job.yaml", "quote job.yaml -o book.xlsx --customer customer.xlsx", "intake -o form.xlsx"} {
		if code := a.run(newRoot(a), strings.Fields(args)); code != Done {
			f.Fatalf("%s: exit code %d: %s", args, code, errs)
		}
	}
	if err := actualInto("book.xlsx", 1.5, nil); err != nil {
		f.Fatal(err)
	}
	for _, name := range []string{"book.xlsx", "customer.xlsx", "form.xlsx", "job.yaml"} {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
		f.Add(data[:len(data)/2])
		f.Add(data[:len(data)-20])
	}
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, data []byte) {
		t.Chdir(t.TempDir())
		if err := os.WriteFile("any.xlsx", data, 0o644); err != nil {
			t.Fatal(err)
		}
		a, out, errs := testApp()
		code := a.run(newRoot(a), []string{"learn", "any.xlsx"})
		if code != Done && code != Faults || (code == Done) != (out.Len() > 0) || code == Faults && errs.Len() == 0 {
			t.Errorf("exit code %d, result %q, said %q", code, out, errs)
		}
	})
}

// BenchmarkLearn reads a season of 200 workbooks.
func BenchmarkLearn(b *testing.B) {
	names := season(b, b.TempDir(), 200)
	for b.Loop() {
		a, _, errs := testApp()
		if code := a.run(newRoot(a), append([]string{"learn"}, names...)); code != Done {
			b.Fatalf("exit code %d: %s", code, errs)
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N*len(names))*1000, "ms/book")
}
