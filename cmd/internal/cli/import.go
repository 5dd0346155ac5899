package cli

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"tentwright/catalog/diag"
	"tentwright/workbook/listing"
)

// importFlags is what the command import may be told.
type importFlags struct {
	mapping           string
	write, skip, json bool
}

// maxListBytes bounds what is read of a list as text.
const maxListBytes = 16 << 20

// importHelp explains the command and the mapping file.
const importHelp = `Reads a list that you keep in a spreadsheet and says of every row what it changes
in the shop, or why it is refused. With --write the changes go into the shop's
files: only those figures change, comments and order stay, and each file as it
was is kept beside it, ending in .old. Nothing is written when a row is refused,
unless --skip-refused is given.

A small file says which column is what and how numbers are written; nothing is
guessed:

  into: items              # or parts, or sizes
  key: Code                # the heading of the column with the ids
  decimal: point           # or comma: what stands before the cents
  thousands: comma         # or none (if left out), point, space, apostrophe
  fields:
    - {heading: Price, field: price}
    - {heading: Our cost, field: cost}
  csv: {separator: semicolon, encoding: windows-1252}   # of a list as text:
                           # comma, semicolon or tab; utf-8 or windows-1252

Fields of items: name, price, cost, describe, sub_hire.cost, sub_hire.markup;
of parts: name, owned, weight, replacement, bin; of sizes: price, cost, owned.
The key of a size is FAMILY:SIZE, as "tentwright list tents" prints it.

Further lines, where they are needed:

  sheet: Prices 2027       # of a workbook; otherwise its first sheet is read
  key_is: name             # the key column has names instead of ids
  key_size: Size           # sizes: the key has the family, this column the size
  currency: "$"            # to be left out of amounts
  skip_empty: yes          # an empty cell leaves the field as it is
  places: 2                # decimals of amounts (otherwise the currency's)
  round: yes               # round to that many instead of refusing more
  add: {section: Linen, unit: each, period: event, tax: rental, kind: hire}
                           # rows with new ids become new items with these fields

A field of weights may have unit: lb (oz, g, kg, t) for cells without one; a
mark-up needs written: percent (25) or fraction (0.25, as a cell shown in percent
holds it).`

// newImport is the command that takes a list of the shop's own over into the
// shop.
func newImport(a *app) *cobra.Command {
	var f importFlags
	cmd := &cobra.Command{
		Use:   "import LIST.xlsx|LIST.csv --map MAP.yaml",
		Short: "Take a price list or a stock list of your own into the shop",
		Long:  importHelp,
		Example: `  tentwright import prices.xlsx --map prices.yaml --shop my-yard
  tentwright import stock.csv --map stock.yaml --shop my-yard --write`,
		Args: oneList,
		RunE: func(_ *cobra.Command, args []string) error { return a.takeList(args[0], &f) },
	}
	cmd.Flags().StringVar(&f.mapping, "map", "", "the `MAP.yaml` that says which column is what")
	cmd.Flags().BoolVar(&f.write, "write", false, "write the changes into the shop's files")
	cmd.Flags().BoolVar(&f.skip, "skip-refused", false, "take the other rows when some are refused")
	cmd.Flags().BoolVar(&f.json, "json", false, "print the rows as JSON")
	return cmd
}

// oneList wants the name of a list.
func oneList(_ *cobra.Command, args []string) error {
	switch {
	case len(args) == 0:
		return misuse(`see "tentwright import --help"`, "a list is missing, such as prices.xlsx or stock.csv")
	case len(args) > 1:
		return misuse("import one list at a time", "one list was expected; then came %q", args[1])
	case !endsIn(args[0], ".xlsx", ".csv"):
		return misuse("save it in a spreadsheet program as .xlsx or .csv", "%q does not end like a list, in .xlsx or .csv", args[0])
	}
	return nil
}

// takeList holds a list against the shop and, if told so, writes what changes.
func (a *app) takeList(path string, f *importFlags) error {
	m, mapping, err := readMapping(f.mapping)
	if err != nil {
		return err
	}
	s, err := a.findShop(filepath.Dir(path), ".")
	if err != nil {
		return err
	}
	if f.write && s.dir == builtIn {
		return fileError(`make a shop with "tentwright new DIR" and name it with --shop`, "the built-in shop cannot be changed")
	}
	if err := s.load(); err != nil {
		return err
	}
	t, err := a.readList(path, m, mapping)
	if err != nil {
		return err
	}
	r, list := listing.Take(m, t, s.catalog)
	if r == nil {
		return faults("list "+path, list, joined(t.Source, s.source))
	}
	refused := r.Count(listing.Refused)
	write := f.write && len(r.Changed) > 0 && (refused == 0 || f.skip)
	if write {
		if err := a.replaceShop(s, r.Changed); err != nil {
			return err
		}
	}
	if err := a.tellList(path, r, write, f); err != nil {
		return err
	}
	if refused > 0 && !f.skip {
		return &failure{code: Faults, problem: fmt.Sprintf("list %s has %s; nothing was written", path, refusedRows(refused)),
			advice: "put them right, or take the others with --skip-refused"}
	}
	return nil
}

// refusedRows is "1 refused row" or "2 refused rows".
func refusedRows(n int) string {
	if n == 1 {
		return "1 refused row"
	}
	return fmt.Sprintf("%d refused rows", n)
}

// readMapping reads the file of --map; it gives its bytes too.
func readMapping(path string) (*listing.Mapping, *jobFile, error) {
	if path == "" {
		return nil, nil, misuse(`write one as "tentwright import --help" shows and name it with --map`, "a mapping file is missing, which says what the columns are")
	}
	data, err := readPlain(path, "mapping file")
	if err != nil {
		return nil, nil, err
	}
	f := &jobFile{path: path, data: data}
	m, list := listing.ReadMapping(path, data)
	if m == nil {
		return nil, nil, faults("mapping "+path, list, f.source)
	}
	return m, f, nil
}

// readList reads the cells of a list.
func (a *app) readList(path string, m *listing.Mapping, mapping *jobFile) (*listing.Table, error) {
	var t *listing.Table
	var list diag.List
	src := mapping.source
	if endsIn(path, ".xlsx") {
		book, err := a.readBook(path)
		if err != nil {
			return nil, err
		}
		t, list = listing.Sheet(path, book.found, m.Sheet)
	} else {
		data, err := readPlain(path, "list")
		if err != nil {
			return nil, err
		}
		t, list = listing.CSV(path, data, m)
		src = joined(src, func(file string) []byte {
			if file != path {
				return nil
			}
			return data
		})
	}
	if t == nil {
		return nil, faults("list "+path, list, src)
	}
	return t, nil
}

// readPlain reads a file of moderate size.
func readPlain(path, what string) ([]byte, error) {
	switch info, err := os.Stat(path); {
	case err != nil:
		return nil, fileError("", "%s %q cannot be read: %s", what, path, cause(err))
	case !info.Mode().IsRegular():
		return nil, fileError("", "%s %q is no ordinary file", what, path)
	case info.Size() > maxListBytes:
		return nil, fileError("", "%s %q has %d MB; at most %d MB were expected", what, path, info.Size()>>20, maxListBytes>>20)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fileError("", "%s %q cannot be read: %s", what, path, cause(err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, maxListBytes))
	if err != nil {
		return nil, fileError("", "%s %q cannot be read: %s", what, path, cause(err))
	}
	return data, nil
}

// rowReport is a row of a list as JSON.
type rowReport struct {
	At      string         `json:"at"`
	Key     string         `json:"key"`
	ID      string         `json:"id"`
	Near    string         `json:"near"`
	State   string         `json:"state"`
	Changes []changeReport `json:"changes"`
	Faults  []faultReport  `json:"faults"`
}

// changeReport is a changed field as JSON.
type changeReport struct {
	At    string `json:"at"`
	Field string `json:"field"`
	Old   string `json:"old"`
	New   string `json:"new"`
	Look  bool   `json:"look"` // far from the old amount
}

// faultReport is why a row is refused, as JSON.
type faultReport struct {
	At      string `json:"at"`
	Field   string `json:"field"`
	Code    string `json:"code"`
	Message string `json:"message"`
	Advice  string `json:"advice"`
}

// tellList prints every row and what came of them all.
func (a *app) tellList(path string, r *listing.Result, written bool, f *importFlags) error {
	if f.json {
		return a.json(struct {
			List    string      `json:"list"`
			Written bool        `json:"written"`
			Rows    []rowReport `json:"rows"`
		}{path, written, rowReports(r)})
	}
	for i := range r.Rows {
		a.printRow(&r.Rows[i])
	}
	var parts []string
	for _, s := range listing.States() {
		if n := r.Count(s); n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, s))
		}
	}
	if len(parts) == 0 {
		parts = []string{"none below the headings"}
	}
	a.printf("rows of %s: %s\n", path, strings.Join(parts, ", "))
	switch {
	case written:
		for name := range r.Changed {
			a.printf("wrote %s\n", name)
		}
	case len(r.Changed) == 0 && r.Count(listing.Refused) == 0:
		a.printf("nothing to write: the shop has it all\n")
	case !f.write:
		a.printf("nothing was written; --write writes the changes\n")
	}
	return nil
}

// printRow prints one row, with its changes or its faults.
func (a *app) printRow(r *listing.Row) {
	name := r.Key
	if r.ID != "" && r.ID != r.Key {
		name += " (" + r.ID + ")"
	}
	a.printf("%s: %s: %s", r.Pos, name, r.State)
	for i, c := range r.Changes {
		a.printf("%s %s", map[bool]string{true: ":", false: ","}[i == 0], c)
	}
	if r.State == listing.Added && r.Near != "" {
		a.printf(" (not %s?)", r.Near)
	}
	a.printf("\n")
	for _, p := range r.Faults {
		a.printf("  %s\n", strings.ReplaceAll(p.String(), "\n", "\n  "))
	}
}

// rowReports is the rows as JSON.
func rowReports(r *listing.Result) []rowReport {
	rows := []rowReport{}
	for i := range r.Rows {
		row := &r.Rows[i]
		out := rowReport{row.Pos.String(), row.Key, row.ID, row.Near, string(row.State), []changeReport{}, []faultReport{}}
		for _, c := range row.Changes {
			out.Changes = append(out.Changes, changeReport{c.Pos.String(), c.Field, c.Old, c.New, c.Look})
		}
		for _, p := range row.Faults {
			out.Faults = append(out.Faults, faultReport{p.Pos.String(), p.Path, p.Code, p.Message, p.Advice})
		}
		rows = append(rows, out)
	}
	return rows
}
