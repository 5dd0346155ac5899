package workbook

import (
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// JobField is one text or day of a job that the office changes on the sheet
// Job. The cell that holds it has the field's name.
type JobField struct {
	Name    string // defined name of its cell
	Path    string // in a job file
	Label   string
	Explain string
	Counted bool // figures were computed from it; a change wants a new quote
	Text    *TextField
	Whole   func(*job.Job) *int       // of a count
	Day     func(*job.Job) *unit.Date // of a day
	None    bool                      // there may be no day
	List    func(*job.Job) *[]string  // of lines with commas between
}

// TextField is where a field of words is kept, and the most characters it takes.
type TextField struct {
	Of   func(*job.Job) *string
	Most int
}

// JobFields lists the fields in the order in which the sheet shows them.
func JobFields() []JobField {
	text := func(most int, of func(*job.Job) *string) *TextField { return &TextField{of, most} }
	return []JobField{
		{Name: "job_customer_name", Path: "customer.name", Label: "Customer", Explain: "who pays, as the quote is addressed", Text: text(120, func(j *job.Job) *string { return &j.Customer.Name })},
		{Name: "job_customer_contact", Path: "customer.contact", Label: "Contact", Explain: "whom to ask for", Text: text(250, func(j *job.Job) *string { return &j.Customer.Contact })},
		{Name: "job_customer_address", Path: "customer.address", Label: "Address", Explain: "lines with commas between", List: func(j *job.Job) *[]string { return &j.Customer.Address }},
		{Name: "job_customer_phone", Path: "customer.phone", Label: "Phone", Text: text(250, func(j *job.Job) *string { return &j.Customer.Phone })},
		{Name: "job_customer_email", Path: "customer.email", Label: "Email", Text: text(250, func(j *job.Job) *string { return &j.Customer.Email })},
		{Name: "job_customer_class", Path: "customer.class", Label: "Customer class", Explain: "an id of the shop's classes; empty for the first", Counted: true, Text: text(60, func(j *job.Job) *string { return &j.Customer.Class })},
		{Name: "job_event_name", Path: "event.name", Label: "Event", Explain: "what the tents are for", Text: text(120, func(j *job.Job) *string { return &j.Event.Name })},
		{Name: "job_guests", Path: "event.guests", Label: "Guests", Explain: "as many as the tents and chairs are for", Whole: func(j *job.Job) *int { return &j.Event.Guests }},
		{Name: "job_event_address", Path: "event.address", Label: "Place", Explain: "where to deliver; lines with commas between", List: func(j *job.Job) *[]string { return &j.Event.Address }},
		{Name: "job_event_contact", Path: "event.site_contact", Label: "Contact on site", Explain: "who opens the gate", Text: text(250, func(j *job.Job) *string { return &j.Event.Contact })},
		{Name: "job_event_access", Path: "event.access", Label: "Access", Explain: "the way in: gate, width, hours, keys", Text: text(250, func(j *job.Job) *string { return &j.Event.Access })},
		{Name: "job_event_parking", Path: "event.parking", Label: "Parking", Explain: "where vehicles stand once they are unloaded", Text: text(250, func(j *job.Job) *string { return &j.Event.Parking })},
		{Name: "job_tax_place", Path: "event.tax_place", Label: "Place for tax", Explain: "a place that the shop's taxes name", Counted: true, Text: text(250, func(j *job.Job) *string { return &j.Event.Place })},
		{Name: "job_date_quoted", Path: "dates.quoted", Label: "Quoted on", Counted: true, Day: func(j *job.Job) *unit.Date { return &j.Dates.Quoted }},
		{Name: "job_date_signed", Path: "dates.signed", Label: "Order signed", Explain: "empty: not yet", None: true, Day: func(j *job.Job) *unit.Date { return &j.Dates.Signed }},
		{Name: "job_date_deliver", Path: "dates.deliver", Label: "Delivery", Counted: true, Day: func(j *job.Job) *unit.Date { return &j.Dates.Deliver }},
		{Name: "job_date_from", Path: "dates.event_from", Label: "Event from", Counted: true, Day: func(j *job.Job) *unit.Date { return &j.Dates.From }},
		{Name: "job_date_to", Path: "dates.event_to", Label: "Event to", Counted: true, Day: func(j *job.Job) *unit.Date { return &j.Dates.To }},
		{Name: "job_date_strike", Path: "dates.strike", Label: "Taken down", Counted: true, Day: func(j *job.Job) *unit.Date { return &j.Dates.Strike }},
		{Name: "job_date_collect", Path: "dates.collect", Label: "Collection", Counted: true, Day: func(j *job.Job) *unit.Date { return &j.Dates.Collect }},
		{Name: "job_discount_reason", Path: "discount.reason", Label: "Reason of the discount", Explain: "why the whole hire is cheaper", Text: text(250, func(j *job.Job) *string { return &j.Discount.Reason })},
		{Name: "job_notes", Path: "notes", Label: "Notes", Explain: "printed on the quote", Text: text(4000, func(j *job.Job) *string { return &j.Notes })},
		{Name: "job_office_notes", Path: "office_notes", Label: "Office notes", Explain: "never leave the office", Text: text(4000, func(j *job.Job) *string { return &j.Internal })},
	}
}

// Shows is what the field holds, as a cell has it: a text, or a day.
func (f *JobField) Shows(j *job.Job) any {
	switch {
	case f.Day != nil && f.Day(j).IsZero():
		return nil
	case f.Day != nil:
		return *f.Day(j)
	case f.Whole != nil:
		return *f.Whole(j)
	case f.List != nil:
		return strings.Join(*f.List(j), ", ")
	}
	return *f.Text.Of(j)
}
