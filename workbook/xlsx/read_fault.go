package xlsx

import (
	"bytes"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Fault is why a file could not be read, in words for the person who has to
// put it right: What is wrong, and as Advice what to do.
type Fault struct{ File, What, Advice string }

// Error is "file: what; advice".
func (f *Fault) Error() string {
	return f.File + ": " + f.What + "; " + f.Advice
}

// What people are told to do.
const (
	adviceCopy    = "copy it again from where it came from, or open it in a spreadsheet program and save it as .xlsx"
	adviceRepair  = "open it in a spreadsheet program, let it repair the file and save it as .xlsx"
	adviceSaveAs  = "open it in a spreadsheet program and save it as .xlsx"
	adviceUnlock  = "open it in a spreadsheet program and take the password off: Save As..., without a password"
	adviceChoose  = "choose the workbook, a file that ends in .xlsx"
	adviceSmaller = "delete the sheets, rows and columns that are not needed and save it again"
)

// fault makes a fault; the file's name is put in by Read.
func fault(what, advice string) *Fault { return &Fault{What: what, Advice: advice} }

// damaged is a file with a part that cannot be read. where says which, such as
// `the sheet "Rates"`.
func damaged(where string) *Fault { return fault(where+" is damaged", adviceRepair) }

// signs are the first bytes of files that people take for a workbook.
var signs = []struct{ start, what string }{
	{"%PDF", "this is a PDF, not a workbook"},
	{"\x89PNG", "this is a picture, not a workbook"},
	{"\xFF\xD8\xFF", "this is a picture, not a workbook"},
	{"GIF8", "this is a picture, not a workbook"},
	{"{\\rtf", "this is a text document, not a workbook"},
	{"\x1F\x8B", "this is a packed file, not a workbook"},
	{"7z\xBC\xAF", "this is a packed file, not a workbook"},
	{"Rar!", "this is a packed file, not a workbook"},
}

// oleSign starts the container of the formats before .xlsx, and of every
// workbook with a password.
const oleSign = "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"

// notZip tells what a file is that is no zip file; nil for a zip file.
func notZip(data []byte) *Fault {
	if len(data) == 0 {
		return fault("the file is empty", adviceCopy)
	}
	for _, s := range signs {
		if bytes.HasPrefix(data, []byte(s.start)) {
			return fault(s.what, adviceChoose)
		}
	}
	switch {
	case bytes.HasPrefix(data, []byte("PK")):
		return nil
	case bytes.HasPrefix(data, []byte(oleSign)):
		return oldFile(data)
	case onlyZeros(data):
		return fault("the file holds nothing but zeros: it was not copied to its end", adviceCopy)
	}
	if text, ok := readable(data); ok {
		return textFile(text)
	}
	return fault("this is not a workbook", adviceChoose)
}

// oldFile tells what is in the older container. Its directory has one entry
// in each 128 bytes, which starts with a name in two-byte characters.
func oldFile(data []byte) *Fault {
	entry := func(name string) bool {
		var wide []byte
		for _, c := range []byte(name + "\x00") {
			wide = append(wide, c, 0)
		}
		for at := 0; ; {
			i := bytes.Index(data[at:], wide)
			if i < 0 {
				return false
			}
			if at += i; at%128 == 0 {
				return true
			}
			at++
		}
	}
	switch {
	case entry("EncryptedPackage"):
		return fault("the workbook is locked with a password", adviceUnlock)
	case entry("WordDocument"), entry("PowerPoint Document"):
		return fault("this is a document of another kind, not a workbook", adviceChoose)
	}
	return fault("this is a workbook in the old .xls format", adviceSaveAs)
}

func onlyZeros(data []byte) bool {
	for _, b := range data {
		if b != 0 {
			return false
		}
	}
	return true
}

// readable is the start of a file as text, if it is text.
func readable(data []byte) (string, bool) {
	head := data[:min(len(data), 4096)]
	if text, ok := wideText(head); ok {
		return text, true
	}
	for _, c := range head {
		if c < ' ' && !blank(c) && c != '\f' {
			return "", false
		}
	}
	return string(bytes.TrimPrefix(head, []byte("\xEF\xBB\xBF"))), true
}

// wideText turns text in two-byte characters, told by its mark, into a string.
func wideText(data []byte) (string, bool) {
	big := bytes.HasPrefix(data, []byte("\xFE\xFF"))
	if !big && !bytes.HasPrefix(data, []byte("\xFF\xFE")) {
		return "", false
	}
	units := make([]uint16, 0, len(data)/2)
	for i := 2; i+1 < len(data); i += 2 {
		lo, hi := data[i], data[i+1]
		if big {
			lo, hi = hi, lo
		}
		units = append(units, uint16(hi)<<8|uint16(lo))
	}
	out := make([]byte, 0, len(units))
	for _, r := range utf16.Decode(units) {
		out = utf8.AppendRune(out, r)
	}
	return string(out), true
}

// textFile tells kinds of text apart.
func textFile(text string) *Fault {
	lower := strings.ToLower(strings.TrimLeft(text, " \t\r\n"))
	switch {
	case strings.HasPrefix(lower, "<?xml") && strings.Contains(lower, "office:spreadsheet"):
		return fault("this is a workbook in an old XML format", adviceSaveAs)
	case strings.Contains(lower, "urn:oasis:names:tc:opendocument"):
		return fault("this is an OpenDocument file", adviceSaveAs)
	case strings.HasPrefix(lower, "<!doctype html"), strings.HasPrefix(lower, "<html"):
		return fault("this is a web page, not a workbook", adviceSaveAs)
	}
	return fault("this is a text file such as CSV, not a workbook", adviceSaveAs)
}
