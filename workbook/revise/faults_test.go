package revise_test

import (
	"strings"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// What can be read but does not fit the job or the shop is told with the cell
// that it was typed into.
func TestFaultsHaveTheirCells(t *testing.T) {
	day := func(serial float64) sheet.FoundCell {
		return sheet.FoundCell{Kind: sheet.FoundNumber, Number: serial, Day: true}
	}
	for _, x := range []struct {
		job, name string // as placeIn has it
		cell      sheet.FoundCell
		says      string
	}{
		{"dinner", "job_discount", num(150), "100"},
		{"dinner", "rate_waiver", num(-3), "0"},
		{"dinner", "rate_wet", num(0.2), "1"},
		{"dinner", "job_guests", num(-4), "-4"},
		{"dinner", "job_zone", txt("nowhere"), `"nowhere"`},
		{"dinner", "job_tax_place", txt("nowhere"), `"nowhere"`},
		{"dinner", "job_customer_class", txt("friends"), `"friends"`},
		{"dinner", "job_show", txt("nothing"), "line"},
		{"dinner", "job_customer_name", txt(""), "missing"},
		{"dinner", "job_date_strike", day(46000), "before"},
		{"dinner", "window_crew/install", num(9999), "9999"},
		{"dinner", "build_quantity/L:1", num(2.5), "whole"},
		{"dinner", "build_hand/L:2", num(101), "100"},
		{"dinner", "build_id/L:3", txt("sidewall-solid"), "sidewall-solid"},
		{"fairground", "tents_quantity/T:stage", num(9000), "500"},
		{"fairground", "tents_hand/T:stage", num(101), "100"},
		{"fairground", "tent_leg/stage", txt("3 ft"), "legs"},
		{"fairground", "tent_front/produce", txt("paper"), `"paper"`},
		{"fairground", "tent_left/crafts", txt("paper"), `"paper"`},
		{"fairground", "tent_size/crafts", txt("30x60"), "equal sides"},
		{"fairground", "site_surface_degree", txt("lava"), `"lava"`},
		{"fairground", "site_stalls.surface_degree", txt("lava"), `"lava"`},
		{"fairground", "minutes_frame_poles", num(-1), "0"},
		{"fairground", "zones_flat/near", num(-1), "0"},
		{"fairground", "item_price/chair-folding", num(-1), "0"},
	} {
		f := workbook.Layout(demoQuote(t, x.job)).Found()
		if x.name == "site_stalls.surface_degree" {
			if _, ok := f.Names[x.name]; !ok {
				for name := range f.Names {
					if strings.HasPrefix(name, "site_") && strings.Contains(name, "stalls") && strings.HasSuffix(name, "_degree") {
						x.name = name
					}
				}
			}
		}
		p := placeIn(t, f, x.name, 0)
		f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = x.cell
		b, list := revise.Open("book.xlsx", f)
		if b != nil {
			var r *revise.Result
			if r, list = b.Revise(nil); r != nil {
				t.Errorf("%s: %q was taken: %v", x.name, x.cell.Text, r.Changes)
				continue
			}
		}
		at := sheet.Ref(p.R1, p.C1)
		if list = list.Faults(); len(list) == 0 || list[0].Pos.Sheet != p.Sheet || list[0].Pos.Cell != at || !strings.Contains(list[0].Message, x.says) {
			t.Errorf("%s: said %v; a fault of %s!%s with %q was expected", x.name, list, p.Sheet, at, x.says)
		}
		for _, other := range list[min(1, len(list)):] {
			t.Errorf("%s: also %v", x.name, other)
		}
	}
}
