package xlsx_test

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"strings"
	"testing"

	"tentwright/workbook/xlsx"
)

// ole is a file in the older container with the given entries in its
// directory; [MS-CFB] 2.2 and 2.6.1.
func ole(entries ...string) []byte {
	data := make([]byte, 1024)
	copy(data, "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1")
	for _, name := range entries {
		entry := make([]byte, 128)
		for i := range len(name) {
			entry[2*i] = name[i]
		}
		data = append(data, entry...)
	}
	return data
}

// locked sets the mark of a password on all parts; APPNOTE.TXT 4.4.4, bit 0.
func locked(data []byte) []byte {
	data = bytes.Clone(data)
	for _, head := range []struct {
		sign string
		at   int
	}{{"PK\x03\x04", 6}, {"PK\x01\x02", 8}} {
		for from := 0; ; {
			i := bytes.Index(data[from:], []byte(head.sign))
			if i < 0 {
				break
			}
			data[from+i+head.at] |= 1
			from += i + 4
		}
	}
	return data
}

const aCell = `<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>`

func TestReadBadFiles(t *testing.T) {
	good := handmade(t, aCell, nil)
	changed := func(part, text string) []byte { return handmade(t, aCell, map[string]string{part: text}) }
	content := func(s string) []byte { return handmade(t, s, nil) }
	cells := func(s string) []byte { return content("<sheetData>" + s + "</sheetData>") }
	for _, c := range []struct {
		name string
		data []byte
		want string // in the message
	}{
		{"empty", nil, "the file is empty"},
		{"zeros", make([]byte, 500), "nothing but zeros"},
		{"CSV", []byte("code,pieces\nFR-2040,2\n"), "CSV, not a workbook; open it in a spreadsheet program and save it as .xlsx"},
		{"CSV in wide characters", []byte("\xFF\xFEc\x00,\x00d\x00"), "CSV"},
		{"PDF", []byte("%PDF-1.7\n"), "a PDF, not a workbook"},
		{"PNG", []byte("\x89PNG\r\n\x1a\n\x00"), "a picture"},
		{"JPEG", []byte("\xFF\xD8\xFF\xE0\x00"), "a picture"},
		{"web page", []byte("<html><table>"), "a web page"},
		{"old XML", []byte(`<?xml version="1.0"?><Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet">`), "old XML format"},
		{"flat OpenDocument", []byte(`<?xml version="1.0"?><office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0">`), "OpenDocument"},
		{"other bytes", []byte{1, 2, 3, 0, 4}, "this is not a workbook"},
		{"xls", ole("Root Entry", "Workbook"), "old .xls format; open it in a spreadsheet program and save it as .xlsx"},
		{"password", ole("Root Entry", "EncryptionInfo", "EncryptedPackage"), "locked with a password; open it in a spreadsheet program and take the password off: Save As..."},
		{"document in the older container", ole("Root Entry", "WordDocument"), "a document of another kind"},
		{"ods", zipped(t, map[string]string{"mimetype": "application/vnd.oasis.opendocument.spreadsheet", "content.xml": "<a/>"}), ".ods); open it in a spreadsheet program and save it as .xlsx"},
		{"odt", zipped(t, map[string]string{"mimetype": "application/vnd.oasis.opendocument.text"}), "not a workbook"},
		{"xlsb", zipped(t, map[string]string{"[Content_Types].xml": "<Types/>", "xl/workbook.bin": "x"}), ".xlsb"},
		{"cut off", good[:len(good)/2], "not copied to its end"},
		{"start only", []byte("PK\x03\x04"), "not copied to its end"},
		{"plain zip", zipped(t, map[string]string{"photo.jpg": "x"}), "not a workbook"},
		{"zip of nothing", zipped(t, nil), "not a workbook"},
		{"docx", zipped(t, map[string]string{"[Content_Types].xml": "<Types/>", "_rels/.rels": rels("officeDocument>word/document.xml"), "word/document.xml": "<w:document><w:body/></w:document>"}), "not a workbook"},
		{"zip with a password", locked(good), "packed with a password"},
		{"no list of sheets", changed("xl/workbook.xml", ""), "the list of sheets is missing"},
		{"broken list of sheets", changed("xl/workbook.xml", "<workbook><sheets></workbook>"), "the list of sheets is damaged"},
		{"no sheets", changed("xl/workbook.xml", "<workbook/>"), "no sheet with cells"},
		{"sheet without a part", changed("xl/worksheets/sheet1.xml", ""), `the sheet "Work" is missing`},
		{"sheet without a reference", changed("xl/_rels/workbook.xml.rels", rels()), `the sheet "Work" is missing`},
		{"sheet cut off", changed("xl/worksheets/sheet1.xml", "<worksheet><sheetData><row>"), `the sheet "Work" is damaged`},
		{"sheet of something else", changed("xl/worksheets/sheet1.xml", "<html/>"), `the sheet "Work" is damaged`},
		{"sheet of nothing", changed("xl/worksheets/sheet1.xml", " "), `the sheet "Work" is damaged`},
		{"elements crossed", cells("<row><c><v>1</c></v></row>"), `the sheet "Work" is damaged`},
		{"attribute without marks", cells("<row r=1/>"), `the sheet "Work" is damaged`},
		{"unknown entity", cells("<row><c><v>&foo;</v></c></row>"), `the sheet "Work" is damaged`},
		{"document type", changed("xl/worksheets/sheet1.xml", `<!DOCTYPE worksheet [<!ENTITY a "b">]><worksheet/>`), `the sheet "Work" is damaged`},
		{"too deep", content(strings.Repeat("<a>", 300) + strings.Repeat("</a>", 300)), `the sheet "Work" is damaged`},
		{"no such row", cells(`<row r="x"/>`), `the sheet "Work" is damaged`},
		{"row below the last", cells(`<row r="1048577"><c><v>1</v></c></row>`), `the sheet "Work" is damaged`},
		{"column behind the last", cells(`<row><c r="XFE1"><v>1</v></c></row>`), `the sheet "Work" is damaged`},
		{"no such text", cells(`<row><c r="B4" t="s"><v>7</v></c></row>`), `the cell B4 of the sheet "Work" is damaged`},
		{"broken texts", changed("xl/sharedStrings.xml", "<sst><si>"), "the list of texts is damaged"},
		{"broken styles", changed("xl/styles.xml", "<styleSheet><"), "the list of styles is damaged"},
		{"old characters", changed("xl/sharedStrings.xml", `<?xml version="1.0" encoding="windows-1252"?><sst/>`), "character set"},
		{"long cell", cells(`<row><c t="str"><v>` + strings.Repeat("a", 1<<20+1) + `</v></c></row>`), `the cell A1 of the sheet "Work" holds more than 1 MB`},
		{"many sheets", changed("xl/workbook.xml", "<workbook><sheets>"+strings.Repeat(`<sheet name="a" id="r1"/>`, 501)+"</sheets></workbook>"), "more than 500 sheets"},
		{"many cells", manySheets(t, `<row><c r="XFD1"><v>1</v></c></row>`, 130), "more than 2 million cells"},
		{"far rows", manySheets(t, `<row><c r="A1048576"><v>1</v></c></row>`, 5), "more than 2 million cells"},
		{"many widths", content("<cols>" + strings.Repeat(`<col min="1" max="200" width="9"/>`, 20_001) + "</cols>"), "more than 4 million"},
		{"swelling formulas", cells(`<row r="1"><c r="A1"><f t="shared" si="0">` + strings.Repeat("A1+", 1<<17) + `1</f></c></row>` +
			strings.Repeat(`<row><c><f t="shared" si="0"/></c></row>`, 800)), "more than 300 MB"},
		{"thousands of parts", manyParts(t), "thousands of files"},
	} {
		t.Run(c.name, func(t *testing.T) {
			found, err := xlsx.Read("work.xlsx", c.data)
			var f *xlsx.Fault
			if found != nil || !errors.As(err, &f) {
				t.Fatalf("got %v, %v; want a fault", found, err)
			}
			if !strings.HasPrefix(err.Error(), "work.xlsx: "+f.What+"; "+f.Advice) || f.What == "" || f.Advice == "" {
				t.Errorf("message %q is not made of file, what and advice", err)
			}
			if !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %q, want %q in it", err, c.want)
			}
			for _, word := range []string{"zip:", "XML syntax", "EOF", "flate", "checksum"} {
				if strings.Contains(err.Error(), word) {
					t.Errorf("%q holds the word %q, which says nothing in an office", err, word)
				}
			}
		})
	}
}

// manySheets lists the same rows as many sheets.
func manySheets(t *testing.T, rows string, n int) []byte {
	return handmade(t, "<sheetData>"+rows+"</sheetData>", map[string]string{
		"xl/workbook.xml": "<workbook><sheets>" + strings.Repeat(`<sheet name="a" id="r1"/>`, n) + "</sheets></workbook>",
	})
}

func manyParts(t *testing.T) []byte {
	p := map[string]string{}
	for i := range 10_001 {
		p[fmt.Sprint(i)] = ""
	}
	return zipped(t, p)
}

// A file that unpacks to far more than it says must not fill the memory,
// whether its directory tells the size or another.
func TestReadSwellingFile(t *testing.T) {
	for _, c := range []struct {
		megabytes int
		lie       bool
		want      string
	}{{400, false, "unpacks to more than 300 MB"}, {3, true, "damaged"}} {
		var out bytes.Buffer
		z := zip.NewWriter(&out)
		w, err := z.Create("xl/workbook.xml")
		if err != nil {
			t.Fatal(err)
		}
		room := bytes.Repeat([]byte(" "), 1<<20)
		for range c.megabytes {
			if _, err := w.Write(room); err != nil {
				t.Fatal(err)
			}
		}
		if err := z.Close(); err != nil {
			t.Fatal(err)
		}
		data := out.Bytes()
		if c.lie {
			i := bytes.Index(data, []byte("PK\x01\x02"))
			binary.LittleEndian.PutUint32(data[i+24:], 1024)
		}
		_, err = xlsx.Read("work.xlsx", data)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%d MB, lie %v: got %v, want %q", c.megabytes, c.lie, err, c.want)
		}
	}
}

// Every way of cutting a file off is told, and none is taken for a whole file.
func TestReadCutFile(t *testing.T) {
	data := handmade(t, aCell, nil)
	for n := range data {
		var f *xlsx.Fault
		if _, err := xlsx.Read("work.xlsx", data[:n]); !errors.As(err, &f) {
			t.Fatalf("cut after %d bytes: got %v, want a fault", n, err)
		}
	}
}
