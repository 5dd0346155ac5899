package quote_test

import (
	"reflect"
	"strings"
	"testing"

	"tentwright/quote"

	"github.com/google/go-cmp/cmp"
)

// The names of a report and their order are what other programs rely on: one
// may be added, none may change or go. A name with ? is left out where empty.
const reportNames = `
Report: shop demonstration_prices currency units job totals checks tents orders counts needs parts out back tasks windows skills price_lines taxes
ReportUnits: length distance area weight volume
ReportJob: number revision customer customer_contact customer_address customer_phone customer_email customer_class tax_exempt event guests use event_address tax_place site_contact dates distance delivery_zone delivery_free loadings site wind heat? power? plot? labour_charge discount_percent discount_reason show_prices payments notes office_notes
ReportDates: quoted signed? deliver event_from event_to strike collect charged_days days_out
ReportChoice: key option factor
ReportWind: gust terrain
ReportWarmth: inside outside hours tents
ReportSupply: source distance hours
ReportPlot: width depth north obstacles
ReportObstacle: name x y width depth radius
ReportPayment: date amount note
ReportTotals: hire subtotal tax total deposit balance received due cost margin margin_percent hours valid_until balance_by
ReportCheck: key title state value limit rule advice
ReportTent: id name family size count leg area ground sides joins? join_side? stakes ballast footprint_length footprint_width discount_percent uses place?
ReportSide: side wall length panels doors no_stakes gutter ground
ReportPanel: part count
ReportUse: use area
ReportPlace: x y turn
ReportOrder: key section name item? tent? quantity ordered optional chosen from_count? discount_percent note? at?
ReportCount: key name driver tent? per order? many amount
ReportNeed: key part source rule? count? order? of per min quantity
ReportPart: part name bin unit counted spare spare_percent spare_min total pack pack_holds packs full_packs part_pack weight_each weight replacement_charge?
ReportWay: weight trips shares
ReportTrip: key vehicle name number turn towed_by? riders weight payload volume room longest licence_flags
ReportShare: part trip order quantity packs weight volume
ReportTask: key name phase window skill count amount minutes_each minutes_fixed site_factors factor hours
ReportWindow: window name crew smallest_crew days worked_before week_before hours hours_each hours_each_day overtime_by_day overtime_by_week
ReportSkill: window skill hours overtime cost bill
ReportLine: key section kind name quantity ordered unit base period? factor off_by_quantity off_by_class off_by_hand off_job offer amount cost_each cost tax_class
ReportTax: tax name rate_percent taxable amount
`

func TestReportNames(t *testing.T) {
	var lines []string
	reportLines(reflect.TypeFor[quote.Report](), map[string]bool{}, &lines)
	if diff := cmp.Diff(strings.Split(strings.TrimSpace(reportNames), "\n"), lines); diff != "" {
		t.Errorf("names of the report changed (-want +got):\n%s", diff)
	}
}

// reportLines writes one line for a type and for each that it holds.
func reportLines(r reflect.Type, seen map[string]bool, lines *[]string) {
	for r.Kind() == reflect.Slice || r.Kind() == reflect.Pointer {
		r = r.Elem()
	}
	if r.Kind() != reflect.Struct || seen[r.Name()] {
		return
	}
	seen[r.Name()] = true
	line := r.Name() + ":"
	for i := range r.NumField() {
		line += " " + strings.Replace(r.Field(i).Tag.Get("json"), ",omitempty", "?", 1)
	}
	*lines = append(*lines, line)
	for i := range r.NumField() {
		reportLines(r.Field(i).Type, seen, lines)
	}
}
