package cli

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"

	"tentwright/catalog"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// expectedKinds is what the program takes without a command.
const expectedKinds = "a job (.yaml), a filled intake form or a quote workbook (.xlsx) was expected"

// otherKind says what to do with a file that is neither a job nor a workbook.
func otherKind(path string) error {
	switch {
	case ofOurWords(path):
		return misuse("mend the file that it is about, save it, and drop that one", "%q holds words about another file", path)
	case endsIn(path, ".csv", ".tsv"):
		return misuse(`a list of prices or stock goes through "tentwright import"; see "tentwright import --help"`, "%q is a list as text; %s", path, expectedKinds)
	case endsIn(path, ".ods", ".fods", ".xls", ".xlsb"):
		return misuse("open it in a spreadsheet program, save it as .xlsx, and drop that one", "%q is a workbook in another format; %s", path, expectedKinds)
	case endsIn(path, ".txt"):
		return misuse("a job written as text is saved under a name that ends in .yaml", "%q does not end like a job; %s", path, expectedKinds)
	}
	return misuse(`see "tentwright help"`, "nothing can be done with %q; %s", path, expectedKinds)
}

// droppedFolder says what to do with a folder.
func droppedFolder(path string) error {
	if hasCompany(path) {
		return misuse(`look for faults in it with "tentwright check `+path+`"`, "%q is the folder of a shop; %s", path, expectedKinds)
	}
	return misuse("drop the files in it, one or several", "%q is a folder; %s", path, expectedKinds)
}

// hasCompany tells whether a folder is a shop.
func hasCompany(dir string) bool {
	info, err := os.Stat(filepath.Join(dir, company))
	return err == nil && info.Mode().IsRegular()
}

// intoLine is the line that every mapping of a list has, and no job.
var intoLine = regexp.MustCompile(`(?m)^into[ \t]*:`)

// noJob tells what else a file is that ends like a job; nil if it may be one.
func (f *jobFile) noJob() error {
	dir, name := filepath.Dir(f.path), filepath.Base(f.path)
	switch {
	case catalog.IsFile(name) && hasCompany(dir):
		return misuse(`look for faults in the shop with "tentwright check `+dir+`"`, "%q is a file of a shop; a job was expected", f.path)
	case intoLine.Match(f.data):
		return misuse(`give it with the list, "tentwright import LIST.xlsx --map `+f.path+`"`, "%q says which column of a list is what; a job was expected", f.path)
	}
	return nil
}

// notOurs is a workbook that is neither a form nor a quote.
func notOurs(path string, f *sheet.Found) error {
	what, advice := madeOf(f)
	if what == "" {
		return &failure{code: Faults, problem: path + " is neither a filled intake form nor a quote workbook",
			advice: `make a form with "tentwright intake"; a list of prices or stock goes through "tentwright import"`}
	}
	return &failure{code: Faults, problem: path + " is " + what, advice: advice}
}

// madeOf tells which of the workbooks that are made of a quote this is, and what
// to do instead; two empty texts for any other. These files carry no mark of
// ours, since they leave the house, and are known by their sheets.
func madeOf(f *sheet.Found) (what, advice string) {
	switch {
	case f.Sheet(workbook.SheetFinal) != nil && f.Sheet(workbook.SheetMending) != nil:
		return "the close-out of a quote, which is not read again", "count and note in the workbook of the quote, BOOK.xlsx, and close that out again"
	case f.Sheet(workbook.SheetCompare) != nil && f.Sheet(workbook.SheetLoads) != nil:
		return "a comparison of two quotes, which is not read again", "change the workbook of the quote, BOOK.xlsx, and compare again"
	case len(f.Sheets) == 1 && f.Sheets[0].Name == workbook.SheetQuote && says(f.Sheets[0], "Subtotal"):
		return "the customer's file of a quote, which is not read again", "mark the same choices in the workbook of the quote, BOOK.xlsx, and requote that"
	}
	return "", ""
}

// says tells whether a cell of the sheet holds the text.
func says(s *sheet.FoundSheet, text string) bool {
	return slices.ContainsFunc(s.Rows, func(row []sheet.FoundCell) bool {
		return slices.ContainsFunc(row, func(c sheet.FoundCell) bool { return c.Text == text })
	})
}
