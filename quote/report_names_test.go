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
Report: shop demonstration_prices currency units job totals checks tents orders counts needs parts out back tasks windows skills price_lines taxes dates occupancy anchorage? site_plan power schedule? lifts
ReportUnits: length distance area weight volume speed force pressure
ReportJob: number revision customer customer_contact customer_address customer_phone customer_email customer_class tax_exempt event guests use event_address tax_place site_contact access parking dates distance delivery_zone delivery_free loadings site wind heat? power? plot? labour_charge hours weather? tries discount_percent discount_reason show_prices payments notes office_notes
ReportDates: quoted signed? deliver event_from event_to strike collect charged_days days_out
ReportChoice: key option factor
ReportWind: gust terrain
ReportWarmth: inside outside hours tents
ReportSupply: source distance hours
ReportPlot: width depth north obstacles
ReportObstacle: name kind? x y width depth radius
ReportHours: window crews from until ready inspect stay
ReportWeather: temperature humidity
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
ReportDay: key name who? needed earliest? latest? exact rule state? stop note? source?
ReportEnd: day? from days count roll? term? skipped
ReportOff: day name
ReportOccupancy: code use use_given width_unit people guests_by_floor guests_by_exits wheelchair_spaces signs_needed signs emergency_lights_needed emergency_lights extinguishers_needed extinguishers tents_with_permit tents
ReportOccupancyTent: tent count area people guests exits_needed exit_width_least exits sides_with_exits total_width_needed total_width people_by_exits aisle_width signs extinguishers permit floors exits_at
ReportFloor: use rest area area_each people
ReportExit: side kind count width_each
ReportAnchorage: method source gust gust_of_job gust_limit terrain safety_stake safety_ballast missing refused tents actions
ReportRefusal: tent? why
ReportHeld: tent planned roof_angle mean_height blocked coefficient_down coefficient_up pressure own_weight greatest_use_percent legs
ReportLeg: leg sides surface lift_area sideways_area own_weight lift sideways guy_rise guy_run pull way part? count customary_count each group_factor friction basis need capacity use_percent
ReportAction: action what gust? mean? beaufort?
ReportPlan: plot_given x y width depth north tents distances faults
ReportStanding: number tent copy? x y turn place_given corners footprint stakes nearest? nearest_by?
ReportPoint: x y
ReportPlanDistance: kind tent other is wanted
ReportPlanFault: kind tent other words missing
ReportPower: heat_unit light_unit missing heat loads load_va load_watts light supply gear fuels planned
ReportHeating: tents need output
ReportWarm: tent roof_area wall_area volume open_sides need_each need output heaters
ReportBurner: item count burns
ReportLoad: part count va_each va lumens
ReportLight: lumens area level wanted
ReportCurrent: legs volts circuits kva kva_capacity box boxes feeder feeders_each feeder_amps feeder_drop_percent cord_drop_percent drop_percent
ReportCircuit: group leg va on
ReportOn: part count
ReportGear: item kind needed ordered planned
ReportFuel: item heat_an_hour generators_an_hour needed ordered planned
ReportPlannedItem: item quantity why
ReportSchedule: windows cautions
ReportCrewPlan: window crews leads days_asked finish ready_by inspection? minutes minutes_at_least person_minutes_at_tasks person_minutes_paid person_minutes_idle plans_compared critical_chain days tasks people crew_sizes spread?
ReportMoment: day date? at
ReportShift: day date call arrive leave end breaks
ReportBreak: name from to paid
ReportStint: key kind name tent? crew hands minutes start finish spells people critical after
ReportSpell: day from to
ReportPerson: number crew lead driver drives? rides_in? skills days
ReportOwnShift: call end minutes_at_tasks minutes_paid
ReportSize: people days nights finish in_time person_minutes_paid person_minutes_overtime wages beds cost asked cheapest
ReportSpread: runs half_sure ninety_sure mean_minutes standard_deviation in_time_percent
ReportCrewCaution: key window? text source? severe
ReportLifts: parts unjudged raises missing
ReportLift: part lift count pieces_together machine weight limit_of_one horizontal vertical distance asymmetry frequency coupling index people
ReportRaise: key tent raising side legs jacks by_jacks people
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
