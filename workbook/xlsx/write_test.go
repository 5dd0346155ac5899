package xlsx_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// keep leaves the books in a folder, to look at them in a spreadsheet program.
var keep = flag.String("keep", "", "folder to leave the written books in")

func write(t testing.TB, b *sheet.Book) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestSameBookGivesSameBytes(t *testing.T) {
	first := write(t, sample(t))
	for range 8 {
		if !bytes.Equal(first, write(t, sample(t))) {
			t.Fatal("two writes of one book differ")
		}
	}
	if *keep != "" {
		if err := os.WriteFile(filepath.Join(*keep, "sample.xlsx"), first, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
